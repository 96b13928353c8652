package mechanics

import "math"

// root returns the x in [low, high] where f, which rises through zero, is zero,
// to 1e-12 in x. Where f does not change sign it returns the end nearer to zero
// and false.
//
// Method: false position with the Illinois weight (Dowell & Jarratt 1971, BIT
// 11:168–174; reference from memory), which keeps the bracket and closes both of its ends.
func root(f func(float64) float64, low, high float64) (float64, bool) {
	fLow, fHigh := f(low), f(high)
	if !(fLow <= 0 && fHigh >= 0) {
		if math.Abs(fLow) < math.Abs(fHigh) {
			return low, false
		}
		return high, false
	}
	x, side := low, 0
	for range 100 {
		next := (low*fHigh - high*fLow) / (fHigh - fLow)
		if math.Abs(next-x) < 1e-12 || fHigh == fLow {
			return next, true
		}
		x = next
		switch y := f(x); {
		case y == 0:
			return x, true
		case y > 0:
			high, fHigh = x, y
			if side > 0 {
				fLow /= 2
			}
			side = 1
		default:
			low, fLow = x, y
			if side < 0 {
				fHigh /= 2
			}
			side = -1
		}
	}
	return x, true
}
