package strength

import (
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

// The closed form against plain sampling of its own assumptions: 100,000 clients
// drawn from the state's normal law, each grown week by week at a rate of their own
// that comes back to the law's within the year.
func TestChanceAgainstSampling(t *testing.T) {
	p := workedPath()
	s, random := p.State, rand.New(rand.NewPCG(1, 2))
	at := []struct{ load, seconds, weeks float64 }{{120, 12, 8}, {148.7, 10, 26}, {148.7, 10, 52}, {175, 10, 104}, {148.7, 10, 156}}
	hits := make([]float64, len(at))
	const n = 100000
	l11 := math.Sqrt(s.P[0][0]) // Cholesky factor of the covariance of C, Rho, Kappa
	l21, l31 := s.P[1][0]/l11, s.P[2][0]/l11
	l22 := math.Sqrt(s.P[1][1] - l21*l21)
	l32 := (s.P[2][1] - l31*l21) / l22
	l33 := math.Sqrt(s.P[2][2] - l31*l31 - l32*l32)
	for range n {
		a, b, d := random.NormFloat64(), random.NormFloat64(), random.NormFloat64()
		c, rho, k := s.C+l11*a, s.Rho+l21*a+l22*b, math.Exp(s.Kappa+l31*a+l32*b+l33*d)
		for i, week := 0, 0; i < len(at); week++ {
			for ; i < len(at) && at[i].weeks == float64(week); i++ {
				if c+0.03*random.NormFloat64()+margin(12, k) >= math.Log(at[i].load)+margin(at[i].seconds, k) {
					hits[i]++
				}
			}
			c += math.Exp(rho)*(p.Gains[week+1]-p.Gains[week]) + 0.008*random.NormFloat64()
			rho = -0.199 + (rho+0.199)*math.Exp(-1./52) + 0.631*math.Sqrt(1-math.Exp(-2./52))*random.NormFloat64()
		}
	}
	for i, at := range at {
		t.Logf("week %g: %.4f, sampled %.4f", at.weeks, p.Chance(at.load, at.seconds, at.weeks), hits[i]/n)
		near(t, "chance", p.Chance(at.load, at.seconds, at.weeks), hits[i]/n, 0.01)
	}
}

// The trapezoid rule with 61 nodes against the same rule with 4001.
func TestMixtureAgainstAFinerRule(t *testing.T) {
	for _, m := range []mixture{
		{mean: -0.2, sd: 0.05, gainSD: 0.63, gain: 0.12},
		{mean: -0.5, sd: 0.10, gainSD: 0.63, gain: 0.5},
		{mean: -0.1, sd: 0.03, slope: -0.02, gainSD: 0.6, gain: 0.06},
		{mean: 0.02, sd: 0.03, slope: 0.02, gainSD: 0.6, gain: 0.01},
		{mean: -0.9, sd: 0.04, gainSD: 0.63, gain: 0.5},
	} {
		want := 0.0
		for i := -2000; i <= 2000; i++ {
			z := float64(i) / 333
			want += density(z) / 333 * below((m.mean+m.slope*z+m.gain*math.Exp(m.gainSD*z))/m.sd)
		}
		near(t, "chance", m.above(), want, 5e-4)
	}
}

// Common practice among coaches: a strong newcomer who holds a solid tuck 15 to
// 20 s and gets about ten seconds of advanced tuck with bands holds a straddle in
// half a year to a year, and the full position not before 45 weeks after that.
// Torques and allowances for a woman of 58 kg and 1.66 m: tuck 117.3, advanced
// tuck 148.7, straddle 175.4 × 1.02, full 197.7 × 1.10 N·m. Ten seconds of
// advanced tuck with help mean, for these tucks, that bands carry about 25 N·m.
// Who holds twenty seconds has trained the tuck for some weeks.
func TestForecastAgreesWithCommonPractice(t *testing.T) {
	const tuck, straddle, full = 117.3, 175.4 * 1.02, 197.7 * 1.10
	for _, c := range []struct{ tuckSeconds, help, age float64 }{
		{15, 27, 0}, {15, 27, 4}, {18, 26, 0}, {18, 26, 4}, {20, 23, 4}, {20, 23, 8},
	} {
		s := Prior(math.Log(tuck)).Assess([]Observation{
			{Load: tuck, Seconds: c.tuckSeconds, Max: true, Model: StepModel, Position: "tuck"},
			{Load: 148.7 - c.help, Seconds: 10, Max: true, Model: StepModel, Position: "advanced tuck", Rig: "bands"},
		})
		if len(s.Doubted) > 0 {
			t.Errorf("%+v: tests contradict one another", c)
		}
		p := NewPath(s, Schedule{Career: Career{Age: c.age}})
		early, likely, late := p.At(Site{Model: StepModel, Position: "straddle"}).Arrival(straddle, 10)
		_, fullLikely, _ := p.At(Site{Model: StepModel, Position: "full"}).Arrival(full, 10)
		t.Logf("tuck %g s, %g weeks in: C12 %.1f, straddle %.0f / %.0f / %.0f weeks, full likely %.0f",
			c.tuckSeconds, c.age, s.C12(), early, likely, late, fullLikely)
		if likely < 26 || likely > 52 {
			t.Errorf("%+v: straddle likely after %.1f weeks, practice says 26 to 52", c, likely)
		}
		if fullLikely-likely < 45 {
			t.Errorf("%+v: full %.1f weeks after the straddle, practice says 45 at least", c, fullLikely-likely)
		}
	}
}

func anyPath(r *rapid.T) Path {
	s := Prior(rapid.Float64Range(4, 5.5).Draw(r, "ln tuck"))
	if rapid.Bool().Draw(r, "tested") {
		s = s.Assess([]Observation{{
			Load:    math.Exp(s.C) * rapid.Float64Range(0.8, 1.2).Draw(r, "load"),
			Seconds: float64(rapid.IntRange(0, 30).Draw(r, "seconds")), Max: true,
		}})
	}
	plan := Schedule{Career: Career{Age: rapid.Float64Range(0, 500).Draw(r, "age")}}
	for range rapid.IntRange(0, 16).Draw(r, "weeks") {
		plan.Block = append(plan.Block, Week{
			Kind:     Kind(rapid.IntRange(0, 4).Draw(r, "kind")),
			Sessions: rapid.IntRange(0, 4).Draw(r, "sessions"),
		})
	}
	if rapid.Bool().Draw(r, "returning") {
		plan.Career.Best = math.Exp(s.C) * rapid.Float64Range(0.8, 2).Draw(r, "best")
	}
	return NewPath(s, plan)
}

func TestForecastProperties(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		p := anyPath(r)
		load := p.State.C12() * rapid.Float64Range(0.5, 3).Draw(r, "load of C12")
		seconds := rapid.Float64Range(1, 30).Draw(r, "hold")
		weeks := rapid.Float64Range(0, 200).Draw(r, "at")
		chance := p.Chance(load, seconds, weeks)
		if !(chance >= 0 && chance <= 1) {
			r.Fatalf("chance %g", chance)
		}
		// Doubt of k adds least at twelve seconds, which shows in the far tails.
		if longer := p.Chance(load, seconds+2, weeks); longer > chance+1e-4 {
			r.Fatalf("a longer hold has chance %g, the shorter %g", longer, chance)
		}
		if heavier := p.Chance(load*1.03, seconds, weeks); heavier > chance+1e-12 {
			r.Fatalf("a heavier step has chance %g, the lighter %g", heavier, chance)
		}
		before := 0.0
		for _, q := range []float64{0.001, 0.1, 0.3, 0.5, 0.7, 0.9, 0.999} {
			now := p.Quantile(weeks, q)
			if !(now >= before) || math.IsInf(now, 0) {
				r.Fatalf("quantile %g is %g after %g", q, now, before)
			}
			before = now
		}
	})
}

func TestArrivalIsWhereTheChanceIsReached(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		p := anyPath(r)
		load := p.State.C12() * rapid.Float64Range(0.5, 2).Draw(r, "load of C12")
		early, likely, late := p.Arrival(load, 10)
		if !(0 <= early && early <= likely && likely <= late) {
			r.Fatalf("early %g, likely %g, late %g", early, likely, late)
		}
		for week, chance := range map[float64]float64{early: 0.1, likely: 0.5, late: 0.9} {
			if week > 0 && week <= Horizon && week != early && week != likely {
				if got := p.Chance(load, 10, week); math.Abs(got-chance) > 0.01 {
					r.Fatalf("chance at week %g is %g, want %g", week, got, chance)
				}
			}
			if week > Horizon && !math.IsInf(week, 1) {
				r.Fatalf("week %g is past the horizon", week)
			}
		}
	})
}

func TestQuantileIsTheInverseOfTheDistribution(t *testing.T) {
	p := workedPath()
	for _, q := range []float64{0.1, 0.3, 0.5, 0.9} {
		m := p.moment(need{c: math.Log(p.Quantile(26, q)), doubt: modelSpread * modelSpread}, 26)
		near(t, "chance of more", m.above(), 1-q, 2e-4)
	}
	low, high := p.State.Range(0.8)
	near(t, "now, low", p.Quantile(0, 0.1), low, 1e-9)
	near(t, "now, high", p.Quantile(0, 0.9), high, 1e-9)
}

func TestForecastOfNothingAndOfNonsense(t *testing.T) {
	p := NewPath(Prior(math.Log(100)), Schedule{})
	near(t, "no load", p.Chance(0, 10, 5), 1, 0)
	near(t, "no number", p.Chance(math.NaN(), 10, 5), 0, 0)
	near(t, "no end", p.Chance(100, math.Inf(1), 5), 0, 0)
	near(t, "far past the end", p.Chance(150, 10, 1e9), p.Chance(150, 10, Horizon), 0)
	near(t, "before now", p.Chance(150, 10, -3), p.Chance(150, 10, 0), 0)
	if early, _, _ := p.Arrival(1e9, 10); !math.IsInf(early, 1) {
		t.Errorf("a giant's load is forecast for week %g", early)
	}
	if early, likely, late := p.Arrival(50, 5); early+likely+late != 0 {
		t.Errorf("a load held easily now is forecast for %g, %g, %g", early, likely, late)
	}
	still := Path{State: workedDay()}
	if early, _, late := still.Arrival(148.7, 10); !math.IsInf(early, 1) || !math.IsInf(late, 1) {
		t.Error("a path without weeks arrives")
	}
}

func BenchmarkTenSteps(b *testing.B) {
	s := workedDay()
	for b.Loop() {
		p := NewPath(s, Schedule{Block: builds(12, 3), Career: Career{Age: 36}})
		for step := range 10 {
			load := 117 + 11*float64(step)
			p.Arrival(load, 10)
			p.Chance(load, 10, 48)
		}
	}
}

func BenchmarkQuantile(b *testing.B) {
	p := NewPath(workedDay(), Schedule{})
	for b.Loop() {
		p.Quantile(8, 0.3)
	}
}
