package strength

import (
	"math"
	"testing"
)

// grid is the same belief without the filter's straight lines: a plain product
// of prior and likelihoods over a lattice of C, Kappa and Day, for observations
// of one day. Each set's chance is written down from its meaning alone.
type grid struct {
	c, kappa, day, weight []float64
}

func newGrid(s State) grid {
	var g grid
	span := func(i, n int, wide float64) float64 { return wide * (2*float64(i)/float64(n-1) - 1) }
	sdC, sdK, sdD := math.Sqrt(s.P[iC][iC]), math.Sqrt(s.P[iKappa][iKappa]), daySpread
	b := s.P[iC][iKappa] / s.P[iKappa][iKappa] // C given Kappa
	sdC = math.Sqrt(sdC*sdC - b*b*sdK*sdK)
	for i := range 241 {
		for j := range 41 {
			for l := range 31 {
				x, y, z := span(i, 241, 4), span(j, 41, 3.5), span(l, 31, 3.5)
				g.kappa = append(g.kappa, s.Kappa+sdK*y)
				g.c = append(g.c, s.C+b*sdK*y+sdC*x)
				g.day = append(g.day, sdD*z)
				g.weight = append(g.weight, math.Exp(-(x*x+y*y+z*z)/2))
			}
		}
	}
	return g
}

// learn multiplies by the chance of each node; it is given the surplus in
// standard deviations of one set, at the hold of so many seconds.
func (g grid) learn(o Observation, chance func(z func(seconds, slopeAt float64) float64) float64) {
	for i := range g.weight {
		k := math.Exp(g.kappa[i])
		g.weight[i] *= chance(func(seconds, slopeAt float64) float64 {
			sd := math.Hypot(0.015, 0.7*slope(margin(slopeAt, k), k))
			tired := 0.004 * float64(o.Index)
			return (g.c[i] + margin(12, k) + g.day[i] - tired - math.Log(o.Load) - margin(seconds, k)) / sd
		})
	}
}

func (g grid) moments() (mean, sd float64) {
	var sum, first, second float64
	for i, w := range g.weight {
		sum, first, second = sum+w, first+w*g.c[i], second+w*g.c[i]*g.c[i]
	}
	mean = first / sum
	return mean, math.Sqrt(second/sum - mean*mean)
}

// One exact test against the posterior summed over the lattice. A density of
// surplus in standard deviations needs the width of each node's own noise.
func TestFilterAgainstGridOnATest(t *testing.T) {
	s := workedPrior()
	s.P[iC][iC] = 0.12 * 0.12 // narrow enough for the lattice to resolve the result
	g := newGrid(s)
	o := workedTests[0]
	for i := range g.weight {
		k := math.Exp(g.kappa[i])
		sd := math.Hypot(0.015, 0.7*slope(margin(14, k), k))
		m := g.c[i] + margin(12, k) + g.day[i] - math.Log(o.Load) - margin(14, k)
		g.weight[i] *= density(m/sd) / sd
	}
	mean, sd := g.moments()
	s = s.Assess(workedTests[:1])
	near(t, "c", s.C, mean, 0.003)
	near(t, "sd c", math.Sqrt(s.P[iC][iC]), sd, 0.002)
}

// A training day: three rated or unrated sets and a failed one.
func TestFilterAgainstGridOnADay(t *testing.T) {
	s := workedWeek()
	g := newGrid(s)
	check := func(sets int) {
		t.Helper()
		mean, sd := g.moments()
		day := s.Observe(workedSets[:sets])
		near(t, "c", day.C, mean, 0.005)                      // wide intervals bend more than a straight line shows
		near(t, "sd c", math.Sqrt(day.P[iC][iC]), sd, 0.0026) // straight lines are a little too sure
	}
	type scale = func(seconds, slopeAt float64) float64
	g.learn(workedSets[0], func(z scale) float64 { return below(z(12.25, 18.25)) - below(z(31.4, 18.25)) })
	check(1)
	g.learn(workedSets[1], func(z scale) float64 { return below(z(12, 17)) - below(z(26.6, 17)) })
	check(2)
	g.learn(workedSets[2], func(z scale) float64 { return below(z(12, 12)) })
	check(3)
	g.learn(workedSets[3], func(z scale) float64 { return density(z(10.5, 10.5)) })
	check(4)
}
