package strength

import "math"

// Kin is what is believed of the same client's strength at another skill.
type Kin struct {
	Correlation float64 // of both skills' ln C before any test, −1 to 1
	Prior       State   // of the other skill, before its tests
	Tested      State   // and after them
}

// Sharing is the belief before any test, narrowed by what the client showed at other
// skills, and by no more than the correlation allows. With the logarithms C and C′ of
// both skills normal before the tests, with sd s and s′, tests that leave C′ at a mean of
// m with a variance of v give C
//
//	mean      C + ρ (s/s′) (m − C′)
//	variance  s² (1 − ρ² (1 − v/s′²))
//
// which is the conditional law of the bivariate normal, spread over what the tests leave
// open. Of several skills each is taken to know of the others through C alone, so that
// their precisions add (our judgement: the least that a set of pairs says).
func (s State) Sharing(kin []Kin) State {
	known, pull := 0.0, 0.0 // precision in units of the prior's, and what it pulls by
	for _, k := range kin {
		from, to := k.Prior.P[iC][iC], k.Tested.P[iC][iC]
		told := k.Correlation * k.Correlation * (1 - clamp(to/from, 0, 1)) // of C's variance
		if from == 0 || told >= 1 {
			continue
		}
		known += told / (1 - told)
		pull += k.Correlation * math.Sqrt(s.P[iC][iC]/from) * (k.Tested.C - k.Prior.C) / (1 - told)
	}
	s.C = clamp(s.C+pull/(1+known), leastC, mostC)
	s.P[iC][iC] /= 1 + known
	return s
}

// NoStronger reports whether a belief expects no more than another, neither in the median
// nor at the low end of four chances in five.
func (s State) NoStronger(than State) bool {
	low, _ := s.Range(0.8)
	least, _ := than.Range(0.8)
	return s.C <= than.C && low <= least
}
