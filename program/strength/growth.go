package strength

import "math"

const (
	// DeloadShare is the share of a build week's gain made in a deload week; the
	// week of the test counts as one. Our judgement.
	DeloadShare = 1.0 / 3

	// Scheduled is the share of the scheduled gain that forecasts count on: the
	// rest goes to missed sessions and weeks ill. Our judgement.
	Scheduled = 0.8

	returnAge   = 4.0  // age, in weeks, of one who is winning back old strength (our judgement)
	returnShare = 0.90 // up to this share of the former best
)

// Law is how fast capacity grows at own gain 1: a build week with three sessions
// adds R0 / (1 + a/Tau) to ln C at a training age of a weeks. The zero Law is
// [DefaultLaw].
type Law struct {
	R0  float64 // first week's gain, ln units
	Tau float64 // weeks of training after which the rate has halved
}

// DefaultLaw is our judgement, held against published figures: in twelve weeks
// with every fourth a deload, at [Scheduled], a newcomer gains 0.181 in ln C,
// that is 20 %; published means of isometric strength are 16 to 22 % (Hubal et
// al. 2005, from memory).
var DefaultLaw = Law{R0: 0.030, Tau: 14}

// WeekGain is the gain in ln C of a full build week at own gain 1, for a training
// age in weeks of this kind of work and the straight-arm sessions of the week.
func (l Law) WeekGain(age float64, sessions int) float64 {
	if !(l.R0 > 0) || !(l.Tau > 0) {
		l = DefaultLaw
	}
	if !(age > 0) {
		age = 0
	}
	return l.R0 / (1 + age/l.Tau) * SessionsFactor(sessions)
}

// SessionsFactor is what a number of straight-arm sessions a week is worth
// against three: 0 → 0, 1 → 0.5, 2 → 0.85, 3 → 1, more → 1.05. Our judgement.
func SessionsFactor(n int) float64 {
	factors := [...]float64{0, 0.5, 0.85, 1, 1.05}
	return factors[min(max(n, 0), len(factors)-1)]
}

// Career is how long a client has done this kind of work, and from where they
// come back.
type Career struct {
	Age  float64 // weeks of this kind of work, all spells together
	Best float64 // after a lay-off of six months or more: the torque, N·m, once held twelve seconds; 0 = none
}

// AgeAt is the training age, in weeks, that counts at capacity c (ln C12): four
// weeks at most until nine tenths of the former best is back.
func (k Career) AgeAt(c float64) float64 {
	if k.Best > 0 && c < math.Log(returnShare*k.Best) {
		return math.Min(k.Age, returnAge)
	}
	return k.Age
}
