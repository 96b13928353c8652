package strength

import (
	"math"
	"testing"
)

// kinOf is a skill whose tests left ln C so far above what was believed of it, with
// such a standard deviation.
func kinOf(correlation, above, sd float64) Kin {
	k := Kin{Correlation: correlation, Prior: Prior(math.Log(200)), Tested: Prior(math.Log(200))}
	k.Tested.C += above
	k.Tested.P[iC][iC] = sd * sd
	return k
}

// The law of one part of a bivariate normal, given the other (T. W. Anderson, An
// Introduction to Multivariate Statistical Analysis, section 2.5): mean μ₁ + ρ(σ₁/σ₂)(x₂ − μ₂),
// variance σ₁²(1 − ρ²). Both skills have a prior sd of .35. Worked by hand.
func TestAStrengthTellsOfAnother(t *testing.T) {
	for _, c := range []struct {
		about     string
		kin       []Kin
		times, sd float64 // of the median, and of ln C after
	}{
		{"nothing known", nil, 1, .35},
		// .35 √(1 − .25) = .30311; e^(.5 × .2) = 1.10517
		{"known exactly, correlation .5", []Kin{kinOf(.5, .2, 0)}, 1.10517, .30311},
		// .35 √(1 − .49) = .24995; e^(−.7 × .2) = .86936
		{"known exactly, correlation .7, weaker", []Kin{kinOf(.7, -.2, 0)}, .86936, .24995},
		// .35 √(1 − .16) = .32078; e^(.4 × .2) = 1.08329
		{"known exactly, correlation .4", []Kin{kinOf(.4, .2, 0)}, 1.08329, .32078},
		// .1225 (1 − .25 (1 − .0049/.1225)) = .0931, whose root is .30512
		{"known to .07", []Kin{kinOf(.5, .2, .07)}, 1.10517, .30512},
		{"no correlation", []Kin{kinOf(0, .5, 0)}, 1, .35},
		{"tests that told nothing", []Kin{kinOf(.7, 0, .35)}, 1, .35},
		// Shares told .25 and .16: precision 1 + 1/3 + 4/21 = 1.52381, .35/√1.52381 = .28353;
		// pull .5×.2/.75 + .4×.2/.84 = .22857, over 1.52381 = .15, e^.15 = 1.16183
		{"two skills", []Kin{kinOf(.5, .2, 0), kinOf(.4, .2, 0)}, 1.16183, .28353},
	} {
		before := Prior(math.Log(100))
		after := before.Sharing(c.kin)
		near(t, c.about+": the median", after.C12()/before.C12(), c.times, 1e-5)
		near(t, c.about+": the sd", math.Sqrt(after.P[iC][iC]), c.sd, 1e-5)
		near(t, c.about+": the rate", after.P[iRho][iRho], before.P[iRho][iRho], 0)
	}
}

// What was tested at the skill itself outweighs all else: a fourfold difference elsewhere moves
// it by less than three hundredths (our judgement of little).
func TestOwnTestsOutweighOthers(t *testing.T) {
	test := one(Observation{Load: 100, Seconds: 12, Max: true, Model: StepModel, Position: "tuck"})
	alone := Prior(math.Log(100)).Assess(test)
	for _, above := range []float64{-.7, .7} { // half, and double, of what was believed elsewhere
		shared := Prior(math.Log(100)).Sharing([]Kin{kinOf(.5, above, .05)}).Assess(test)
		if d := math.Abs(shared.C - alone.C); d > .03 {
			t.Errorf("%+.1f elsewhere moves what was tested by %.3f", above, d)
		}
	}
}
