package people

import "math"

// longestHold is as long as anybody holds anything here, s.
const longestHold = 600

// Lasts is how many seconds a load is held that lies so far, in ln, below the instant
// maximum: 60/k · m·eᵐ. Above the maximum it runs on below zero, so that what is out of
// reach by a little and by a lot differ.
func Lasts(margin, k float64) float64 {
	margin = max(margin, -1) // below that the curve turns
	return min(longestHold, 60/k*margin*math.Exp(margin))
}

// Margin is how far, in ln, the instant maximum lies above a load that is held so many
// seconds: the inverse of Lasts, by halving.
func Margin(seconds, k float64) float64 {
	low, high := -1.0, math.Log1p(max(0, k*seconds/60))
	for range 60 {
		if mid := (low + high) / 2; 60/k*mid*math.Exp(mid) < seconds {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// Longest is the longest hold of a load, N·m, on a day and in a set of some form; 0
// where it can't be held.
func (p *Person) Longest(load, form float64) float64 {
	if !(load > 0) {
		return longestHold
	}
	return max(0, Lasts(p.C+Margin(12, p.K)+form-math.Log(load), p.K))
}
