package strength

import "math"

// RateTime is how many weeks the own rate of gain takes to lose all but 1/e of what
// sets it apart from the law's. Our judgement: who gains faster than most in one year
// has about half of that lead in the next (0.54, the correlation of two years' means at
// fifty-two weeks). What makes it fast, room to learn, sleep, work, a plan that happens
// to suit, seldom lasts for years.
const RateTime = 52

// kept is the share of what sets Rho apart that is left after a week.
var kept = math.Exp(-1.0 / RateTime)

// usual is where Rho drifts to: the mean of e^Rho is 1 there, so that rates which come
// and go add up to the law over the years. Drifting to 0 they would add up to 1.22 of it.
const usual = -RateSpread * RateSpread / 2

// grown is what gains at the own rate add up to by the start of a week,
//
//	G = Σ g e^ρ,  ρ next week = usual + kept·(ρ − usual) + noise,
//
// where the noise is such that the spread of ρ is [RateSpread] in the end. Each term is
// log-normal, the sum very nearly so: its mean is the sum of theirs, and the variance of
// its ln that of the mean of ρ, each week weighed by what it is expected to bring
// (Fenton's method, with e^cov − 1 taken as cov). Against sampling it is good to a
// hundredth in chances.
type grown struct {
	mean, variance float64 // of ρ in the week that begins
	left           float64 // of today's ρ by now
	sum            float64 // expected of G
	spread         float64 // variance of Σ e ρ, e being the expected term of a week
	with           float64 // its covariance with ρ in the week that begins
	moved          float64 // by a change of today's ρ
}

// ungrown is today.
func (s State) ungrown() grown {
	return grown{mean: clamp(s.Rho, -fastest, fastest), variance: s.P[iRho][iRho], left: 1}
}

// week passes a week that brings so much at own gain 1.
func (o grown) week(gain float64) grown {
	e := gain * math.Exp(o.mean+o.variance/2)
	o.sum += e
	o.spread += e * (2*o.with + e*o.variance)
	o.with = kept * (o.with + e*o.variance)
	o.moved += e * o.left
	o.left *= kept
	o.mean = usual + kept*(o.mean-usual)
	o.variance = kept*kept*o.variance + RateSpread*RateSpread*(1-kept*kept)
	return o
}

// logNormal are the median of G and the spread of its ln.
func (o grown) logNormal() (median, sd float64) {
	if !(o.sum > 0) {
		return 0, 0
	}
	sd = math.Sqrt(o.spread) / o.sum
	return o.sum * math.Exp(-sd*sd/2), sd
}
