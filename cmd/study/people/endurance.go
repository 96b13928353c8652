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
// where it can't be held. Of what is repeated it is what the repetitions take.
func (p *Person) Longest(load, form float64) float64 {
	if !(load > 0) {
		return longestHold
	}
	return max(0, p.lasts(p.C+p.margin(12)+form-math.Log(load)))
}

// LongestLean is the same of a lean, which is held in every skill.
func (p *Person) LongestLean(load, form float64) float64 {
	if !(load > 0) {
		return longestHold
	}
	return max(0, Lasts(p.C+Margin(12, p.held)+form-math.Log(load), p.held))
}

// lasts is Lasts of this person and skill, and margin its inverse.
func (p *Person) lasts(margin float64) float64 {
	if p.repeats {
		return perRep * p.K * repetitions(margin)
	}
	return Lasts(margin, p.K)
}

func (p *Person) margin(seconds float64) float64 {
	if p.repeats {
		return below(seconds / perRep / p.K)
	}
	return Margin(seconds, p.K)
}

const (
	perRep   = 3            // s that one repetition takes (common practice)
	halfRep  = perRep / 2.0 // equations are of whole repetitions that were done: on average half of one more would have been
	mostReps = 60           // as often as anybody does anything here
)

// repetitions is how often a load is done that lies so far, in ln, below the one that is
// done once, or runs on below that as Lasts does: Wathan's equation (1994, from memory), so
// many per cent of it are 48.8 + 53.8 e^(−0.075 n). Package strength goes by another one.
func repetitions(margin float64) float64 {
	left := (math.Exp(-margin) - 0.488) / 0.538
	if left < math.Exp(-0.075*mostReps) {
		return mostReps
	}
	return -math.Log(left) / 0.075
}

// below is the inverse of repetitions.
func below(n float64) float64 { return -math.Log(0.488 + 0.538*math.Exp(-0.075*n)) }
