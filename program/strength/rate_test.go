package strength

import (
	"math"
	"testing"
)

// fast is somebody known to gain at three times the law's rate: ln 3 is 1.0986.
func fast() State {
	s := Prior(math.Log(100))
	s.Rho, s.P[iRho][iRho] = math.Log(3), 0.01
	return s
}

// Who gained at three times the law's rate is a year later at e^(−0.199 + 1.2976 e⁻¹),
// 1.32 times, and after three years at 0.87 times, beside a mean of one: our judgement
// of how long a good year lasts. Weeks off count as weeks.
func TestOwnRateDriftsBack(t *testing.T) {
	s := fast()
	for week := 1; week <= 156; week++ {
		if week%3 == 0 {
			s = s.Rested(0)
		} else {
			s = s.Trained(0.01)
		}
		switch week {
		case 4: // hardly anything within a month
			near(t, "rate after four weeks", math.Exp(s.Rho), 2.72, 0.01)
		case 52:
			near(t, "rate after a year", math.Exp(s.Rho), 1.32, 0.01)
			near(t, "its spread", math.Sqrt(s.P[iRho][iRho]), 0.588, 0.001)
		case 156:
			near(t, "rate after three years", math.Exp(s.Rho), 0.87, 0.01)
			near(t, "its spread", math.Sqrt(s.P[iRho][iRho]), 0.630, 0.001)
		}
	}
}

// Of equal weeks the spread of the ln of what is gained falls from that of one week's
// rate, 0.631, as that of a mean over w weeks does: by Ornstein and Uhlenbeck's formula
// 0.631·√(2 (T − 1 + e⁻ᵀ))/T with T = w/52. A rate that never changed would stay at
// 0.631, and what is gained would be as doubtful after three years as after a week.
func TestSpreadOfWhatIsGained(t *testing.T) {
	o := Prior(math.Log(100)).ungrown()
	for w := 1; w <= 520; w++ {
		e := math.Exp(-(o.mean + o.variance/2))
		o = o.week(e) // equal expected terms
		want, known := map[int]float64{1: 0.631, 52: 0.5413, 156: 0.4257, 520: 0.2677}[w]
		if _, sd := o.logNormal(); known && math.Abs(sd-want) > 0.005 {
			t.Errorf("after %d weeks the spread is %.4f, wanted %.4f", w, sd, want)
		}
	}
}

// Filter and forecast are of one mind: a year of weeks passed one by one, or forecast
// from its start, end at the same median and nearly the same spread.
func TestFilterAndForecastAgreeOnAYear(t *testing.T) {
	s := fast()
	p := Path{State: s, Gains: []float64{0}, grown: []grown{s.ungrown()}}
	for w := range 52 {
		gain := 0.01 / (1 + float64(w)/20)
		s = s.Trained(gain)
		p.Gains, p.grown = append(p.Gains, p.Gains[w]+gain), append(p.grown, p.grown[w].week(gain))
	}
	near(t, "median", math.Log(p.Quantile(52, 0.5)), s.C, 0.05) // the filter takes each week at its median
	low, high := s.Range(0.8)
	near(t, "range", math.Log(p.Quantile(52, 0.9)/p.Quantile(52, 0.1)), math.Log(high/low), 0.06)
}
