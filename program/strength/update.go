package strength

import (
	"math"
	"slices"
)

// This file is the filter's arithmetic: the surplus of a set over its load, and
// the four ways in which a set can tell of it.

// vector is a column in the order C, Rho, Kappa, Day.
type vector [parts]float64

// column of the covariance, or a sum of several: the four parts, then the offsets.
type column struct {
	parts   vector
	offsets []float64
}

// surplus is how far, in ln, the capacity believed lies above what the hold
// would need: its mean, its sensitivities, and the two variances.
type surplus struct {
	mean  float64 // m
	ph    column  // P h
	total float64 // V = hᵀPh + R
}

// surplus of holding the observation's load for t seconds, with the noise of
// letting go taken at slopeAt seconds.
func (s State) surplus(o Observation, t, slopeAt float64) surplus {
	k := math.Exp(s.Kappa)
	n12, n, ns := margin(Reference, k), margin(t, k), margin(slopeAt, k)
	tired := setTiring * float64(max(o.Index, 0))
	if o.Max {
		tired = 0
	}
	h := vector{1, 0, bend(n12) - bend(n), 1}
	u := surplus{mean: s.C + n12 + s.Day - tired - math.Log(o.Load) - n, ph: s.times(h)}
	u.total = noise(slope(ns, k))
	for i := range parts {
		u.total += h[i] * u.ph.parts[i]
	}
	for _, l := range s.here[:s.heres] {
		u.mean -= s.offsets[l].mean
		u.total -= u.ph.offsets[l]
	}
	return u
}

// times is P h, where h is −1 at the offsets of the present site.
func (s *State) times(h vector) column {
	var c column
	for i := range parts {
		for j := range parts {
			c.parts[i] += s.P[i][j] * h[j]
		}
	}
	if len(s.offsets) == 0 {
		return c
	}
	c.offsets = make([]float64, len(s.offsets))
	for l := range s.offsets {
		for j := range parts {
			c.offsets[l] += s.offsets[l].with[j] * h[j]
		}
	}
	for _, m := range s.here[:s.heres] {
		for i := range parts {
			c.parts[i] -= s.offsets[m].with[i]
		}
		for l := range c.offsets {
			c.offsets[l] -= s.covariance(l, m)
		}
	}
	return c
}

// noise is R, the variance of one set whose margin rises by slope a second.
func noise(slope float64) float64 {
	let := stopNoise * slope
	return setNoise*setNoise + let*let
}

// apply moves the mean along P h by shift/√V and takes share of P h hᵀ P / V off
// the covariance. Where endurance is only considered and not learned (Schmidt's
// filter) its mean and variance stay and its covariances follow.
func (s State) apply(u surplus, shift, share float64, learnK bool) State {
	kappa, pkk := s.Kappa, s.P[iKappa][iKappa]
	s = s.along(u.ph, shift/math.Sqrt(u.total), share/u.total)
	if !learnK {
		s.Kappa, s.P[iKappa][iKappa] = kappa, pkk
	}
	return s
}

// along moves the mean along a column by so much, and takes so much of the
// column's square off the covariance.
func (s State) along(c column, by, less float64) State {
	s.C += c.parts[iC] * by
	s.Rho += c.parts[iRho] * by
	s.Kappa += c.parts[iKappa] * by
	s.Day += c.parts[iDay] * by
	for i := range parts {
		for j := range parts {
			s.P[i][j] -= c.parts[i] * c.parts[j] * less
		}
	}
	s.offsets, s.among = slices.Clone(s.offsets), slices.Clone(s.among)
	n := 0
	for l, v := range c.offsets {
		o := &s.offsets[l]
		o.mean += v * by
		for i := range parts {
			o.with[i] -= v * c.parts[i] * less
		}
		for m := range l + 1 {
			s.among[n] -= v * c.offsets[m] * less
			n++
		}
	}
	return s
}

// take uses one observation in the way its kind asks; believed is false when it
// was doubted and left out.
func (s State) take(o Observation, later bool) (next State, believed bool) {
	t := o.Seconds
	switch {
	case t < notHeld:
		return s.atMost(o, notHeld)
	case o.Broken && o.Failed && o.RPE >= brokenRPE:
		return s.exact(o, math.Max(notHeld, t-brokenForm/2), false, false)
	case o.Broken:
		return s.between(o, math.Max(0, t-brokenForm), t, t)
	case o.AtLeast:
		return s.atLeast(o, t)
	case o.Max:
		learn := o.Pair || t <= longestTest
		return s.exact(o, t, learn, learn && later)
	case o.Failed && o.RPE >= brokenRPE:
		return s.exact(o, t+failedExtra, false, false)
	case o.RPE >= easyRPE:
		left := perRPE * (10 - math.Min(o.RPE, 10))
		return s.between(o, t+math.Max(0, left-rpeBelow), mostLasting(t, o.RPE), t+left)
	case o.RPE > 0:
		return s.atLeast(o, leastLasting(t, o.RPE))
	case o.Failed:
		return s.between(o, t, t+easyExtra, t)
	}
	return s.unsaid(o, t)
}

// unsaid learns from a set done without a word what one of RPE 7.5 ± 1.5 would say,
// and nothing where more was believed anyway: easy work is not rated hard by silence.
func (s State) unsaid(o Observation, t float64) (State, bool) {
	if s.surplus(o, t+unsaidMost, t+unsaidMost).mean > 0 {
		s.astray = 0
		return s, true
	}
	next, believed := s.between(o, t, t+unsaidMost, t+unsaidLeft)
	if believed && next.C < s.C { // silence is no bad news
		s.astray = 0
		return s, true
	}
	return next, believed
}

// mostLasting is how long a hold would have lasted at most that ended after t seconds
// with an RPE.
func mostLasting(t, rpe float64) float64 {
	left := leftAt(math.Min(rpe, 10), leftWide)
	return t + math.Max(t, feltInSeconds)*left/(1-left)
}

// leastLasting is how long a hold would have lasted at least that ended after t seconds
// with an RPE below 6.
func leastLasting(t, rpe float64) float64 {
	return math.Max(t+easyExtra, t/(1-leftAt(math.Max(rpe, leastRPE), -leftWide)))
}

// leftAt is the share of a hold that was left at an RPE, so many sd off the mean.
func leftAt(rpe, sds float64) float64 {
	below := 9 - rpe
	return (leftMean + leftMeans*below + sds*(leftSpread+leftSpreads*below)) / leftOf
}

func (s State) exact(o Observation, t float64, learnK, jacobian bool) (State, bool) {
	u := s.surplus(o, t, t)
	if s.gated && math.Abs(u.mean) > gateWidth*math.Sqrt(u.total) {
		return s.doubt(o, -u.mean, func(s State) State {
			u := s.surplus(o, t, t)
			return s.apply(u, -u.mean/math.Sqrt(u.total), 1, learnK)
		})
	}
	if jacobian {
		s = s.jacobian(o, t)
		u = s.surplus(o, t, t)
	}
	s.astray = 0
	return s.apply(u, -u.mean/math.Sqrt(u.total), 1, learnK), true
}

// jacobian corrects for the density of seconds against that of surplus: a stray
// second weighs more where the curve is steep, and without this the constant
// learned from many tests sinks.
func (s State) jacobian(o Observation, t float64) State {
	k := math.Exp(s.Kappa)
	n := margin(t, k)
	let := stopNoise * slope(n, k)
	f := 1 - let*let/(noise(slope(n, k))+s.P[iDay][iDay])
	j := f / ((1 + n) * (1 + n))
	q := 2 * f * n / math.Pow(1+n, 4)
	col := column{parts: s.P[iKappa]}
	for l := range s.offsets {
		col.offsets = append(col.offsets, s.offsets[l].with[iKappa])
	}
	d := 1 + q*s.P[iKappa][iKappa]
	return s.along(col, j/d, q/d)
}

func (s State) atLeast(o Observation, t float64) (State, bool) { return s.oneSided(o, t, 1) }

func (s State) atMost(o Observation, t float64) (State, bool) { return s.oneSided(o, t, -1) }

// oneSided learns that the surplus at t seconds is above zero (side 1) or below
// it (side −1).
func (s State) oneSided(o Observation, t, side float64) (State, bool) {
	use := func(s State) State {
		u := s.surplus(o, t, t)
		a := side * u.mean / math.Sqrt(u.total)
		l := mills(a)
		return s.apply(u, side*l, l*(l+a), false)
	}
	u := s.surplus(o, t, t)
	if s.gated && side*u.mean/math.Sqrt(u.total) < -gateWidth {
		return s.doubt(o, side, use)
	}
	s.astray = 0
	return use(s), true
}

// between learns that the hold would have lasted from a to b seconds.
func (s State) between(o Observation, a, b, slopeAt float64) (State, bool) {
	use := func(s State) (State, float64) {
		u, hi := s.surplus(o, a, slopeAt), s.surplus(o, b, slopeAt)
		root := math.Sqrt(u.total)
		mean, variance, z := truncated(-u.mean/root, -hi.mean/root)
		return s.apply(u, mean, 1-variance, false), z
	}
	next, z := use(s)
	if z < gateChance {
		middle := s.surplus(o, slopeAt, slopeAt)
		return s.doubt(o, -middle.mean, func(s State) State {
			next, z := use(s)
			if z < gateChance {
				u := s.surplus(o, slopeAt, slopeAt)
				return s.apply(u, -u.mean/math.Sqrt(u.total), 1, false)
			}
			return next
		})
	}
	next.astray = 0
	return next, true
}

// doubt leaves an unlikely observation out and counts it; side is the sign of
// what it would have us believe. The third in a row on one side is believed,
// after capacity has been made less certain.
func (s State) doubt(o Observation, side float64, use func(State) State) (State, bool) {
	if side > 0 {
		s.astray = max(s.astray, 0) + 1
	} else {
		s.astray = min(s.astray, 0) - 1
	}
	if max(s.astray, -s.astray) < believeAt {
		return s, false
	}
	s.astray = 0
	s.P[iC][iC] += surprise * surprise
	return use(s), true
}
