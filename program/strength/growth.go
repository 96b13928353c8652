package strength

import "math"

const (
	// DeloadShare is the share of a build week's gain made in a deload week; the
	// week of the test counts as one. Our judgement.
	DeloadShare = 1.0 / 3

	// Scheduled is the share of the scheduled gain that forecasts count on: the
	// rest goes to missed sessions and weeks ill. Our judgement.
	Scheduled = 0.8

	returnAge = 4.0  // age, in weeks, of one who is winning back old strength (our judgement)
	returnAll = 0.80 // share of the former best up to which all strength comes back so fast,
	returnEnd = 0.90 // and from which none does
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

// WeekGain is the law's gain of a full build week for this career at capacity c
// (ln C12). Below eight tenths of the former best it is that of somebody four weeks
// in, from nine tenths on that of the training age, and between them it goes over
// evenly: so a former best never slows growth, and whoever starts a week stronger
// ends it stronger.
func (k Career) WeekGain(l Law, c float64, sessions int) float64 {
	usual := l.WeekGain(k.Age, sessions)
	if !(k.Best > 0) {
		return usual
	}
	quick := l.WeekGain(math.Min(k.Age, returnAge), sessions)
	end := math.Log(returnEnd * k.Best)
	return usual + (quick-usual)*clamp((end-c)/math.Log(returnEnd/returnAll), 0, 1)
}

// WorkFactor is the share of a week's gain that so many counted seconds of
// straight-arm work earn, where the present spell starts with so many: the root of
// their ratio, 1 at most. Nothing counted, nothing gained. Our judgement: the first
// set earns most.
func WorkFactor(counted, start float64) float64 {
	switch {
	case !(counted > 0):
		return 0
	case !(start > counted):
		return 1
	}
	return math.Sqrt(counted / start)
}
