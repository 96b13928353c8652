package strength

import "math"

// mixture is the law of x = mean + slope·z + gain·e^(gainSD·z) + sd·y with z and y
// standard normal: capacity, or its surplus over a need, when what is gained is
// log-normal. Given z it is normal.
type mixture struct {
	mean, slope, sd float64
	gain, gainSD    float64
}

// The trapezoid rule in z: for a normal density it converges faster than any
// power of the step.
const (
	nodes    = 61
	nodeStep = 0.15
	firstZ   = -nodeStep * (nodes / 2)
)

var nodeWeight = func() (w [nodes]float64) {
	sum := 0.0
	for i := range w {
		w[i] = density(firstZ + nodeStep*float64(i))
		sum += w[i]
	}
	for i := range w {
		w[i] /= sum
	}
	return w
}()

// above is the chance that x ≥ 0.
func (m mixture) above() float64 {
	if m.gain == 0 {
		return below(m.mean / math.Hypot(m.sd, m.slope))
	}
	at, rise := m.mean+firstZ*m.slope, nodeStep*m.slope
	grown, ratio := m.gain*math.Exp(firstZ*m.gainSD), math.Exp(nodeStep*m.gainSD)
	sum := 0.0
	for _, weight := range nodeWeight {
		switch y := (at + grown) / m.sd; {
		case y > 5:
			sum += weight
		case y > -5:
			sum += weight * below(y)
		}
		at += rise
		grown *= ratio
	}
	return math.Min(sum, 1)
}

// quantile is the value x lies below with chance q.
func (m mixture) quantile(q float64) float64 {
	z := quantile(q)
	spread := math.Hypot(m.sd, m.slope+m.gain*m.gainSD)
	guess := m.mean + m.gain + z*spread
	if m.gain == 0 {
		return guess
	}
	excess := func(x float64) float64 { // falls as x rises
		moved := m
		moved.mean -= x
		return moved.above() - below(-z)
	}
	low, high := guess-spread/4, guess+spread/4
	fl, fh := excess(low), excess(high)
	for step := spread / 2; fl < 0 && step < 1e3; step *= 2 {
		low -= step
		fl = excess(low)
	}
	for step := spread / 2; fh > 0 && step < 1e3; step *= 2 {
		high += step
		fh = excess(high)
	}
	return root(low, high, fl, fh, 1e-6, excess)
}

// root finds, to within a tolerance, where a function that is positive at low, fl, and
// negative at high, fh, crosses zero, by false position with Illinois' correction. Where it
// does not cross, it is the end nearer to that.
func root(low, high, fl, fh, tolerance float64, f func(float64) float64) float64 {
	switch {
	case !(fl > 0):
		return low
	case !(fh < 0):
		return high
	}
	for range 60 {
		if high-low < tolerance {
			break
		}
		mid := low + (high-low)*fl/(fl-fh)
		switch fm := f(mid); {
		case math.Abs(fm) < 1e-7:
			return mid
		case fm > 0:
			low, fl, fh = mid, fm, fh/2
		default:
			high, fh, fl = mid, fm, fl/2
		}
	}
	return (low + high) / 2
}
