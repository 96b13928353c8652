package strength

import "math"

const (
	// TypicalK is the endurance constant assumed while the client's own is not
	// known, per minute. Our judgement: published 0.96 ± 0.29 for elbow flexors
	// (Ma et al., Ergonomics 2018;61:806–817), and other published curves for
	// shoulder and whole-body work imply 0.35 to 1.6.
	TypicalK = 1.05

	// RepeatedK is the endurance constant, per minute, of repetitions that count three
	// seconds each: with it shares are within .012 of Epley's equation, 1/(1 + n/30)
	// (Boyd Epley 1985, from memory), from one to sixteen repetitions (computed).
	RepeatedK = 0.78

	// repeatedSpread is the sd of its ln (our judgement).
	repeatedSpread = 0.25

	// typicalSpread is the sd of ln k before any test (our judgement, as above).
	typicalSpread = 0.40

	// Reference is the hold, in seconds, at which capacity is stated: the middle
	// of what is trained and tested (our judgement).
	Reference = 12.0

	// longestMargin caps ln(capacity/load): beyond it, at a twentieth of the
	// maximum, no curve was ever measured and times are not worth printing.
	longestMargin = 3.0
)

// LambertW returns the principal branch of Lambert's function for x ≥ 0, the w
// with w·eʷ = x, to full precision. It returns 0 for x ≤ 0 and NaN, and +Inf for
// +Inf. Two steps of Fritsch's iteration (Fritsch, Shafer, Crowley 1973, CACM
// algorithm 443; from memory) follow a start that is good to a few per cent.
func LambertW(x float64) float64 {
	switch {
	case !(x > 0):
		return 0
	case math.IsInf(x, 1):
		return x
	case x < 1e-8:
		return x - x*x
	}
	l := math.Log1p(x)
	w := l * (1 - math.Log1p(l)/(2+l))
	for range 2 {
		z := math.Log(x/w) - w
		q := 2 * (1 + w) * (1 + w + 2*z/3)
		w *= 1 + z/(1+w)*(q-z)/(q-2*z)
	}
	return w
}

// Share returns the share of the instant maximum (0 to 1) whose maximal hold
// lasts t seconds, for an endurance constant k per minute; k = 0 means TypicalK.
// Holds of no length, or less, have share 1.
// Source: Ma et al. 2009, inverted: f = exp(−W(k t)).
func Share(t, k float64) float64 { return math.Exp(-margin(t, k)) }

// HoldTime returns how many seconds a share f of the instant maximum can be held,
// the inverse of [Share]. It is 0 for f ≥ 1. Shares below e⁻³ (a twentieth) are
// counted as e⁻³, which is about an hour; so are 0, negative shares and NaN.
func HoldTime(f, k float64) float64 {
	if !(f > 0) {
		return secondsAt(longestMargin, k)
	}
	return secondsAt(-math.Log(f), k)
}

// MaxHold returns the maximal hold in seconds of a load, in N·m, by a client who
// can hold c12 N·m for twelve seconds. It is 0 where the load is beyond the
// instant maximum, and capped as [HoldTime] is. k = 0 means TypicalK.
func MaxHold(c12, load, k float64) float64 {
	switch {
	case !(c12 > 0):
		return 0
	case !(load > 0):
		return secondsAt(longestMargin, k)
	}
	return secondsAt(math.Log(c12/load)+margin(Reference, k), k)
}

// LoadFor returns the load in N·m that a client who can hold c12 N·m for twelve
// seconds can hold for t seconds: the inverse of [MaxHold].
func LoadFor(c12, t, k float64) float64 {
	return c12 * math.Exp(margin(Reference, k)-margin(t, k))
}

// margin is n(t, k): ln of instant maximum over the load held t seconds.
func margin(t, k float64) float64 { return LambertW(usableK(k) * t / 60) }

// secondsAt is the hold at margin x: t = x·eˣ/k minutes.
func secondsAt(x, k float64) float64 {
	if !(x > 0) {
		return 0
	}
	x = math.Min(x, longestMargin)
	return 60 * x * math.Exp(x) / usableK(k)
}

// slope is the margin's growth per second of hold, ∂n/∂t, at margin n; written
// so that t = 0 needs no division: n/t = (k/60)·e⁻ⁿ.
func slope(n, k float64) float64 { return usableK(k) / 60 * math.Exp(-n) / (1 + n) }

// bend is ∂n/∂ln k = n/(1+n).
func bend(n float64) float64 { return 1 - 1/(1+n) }

// usableK reads zero, negative and NaN as typical endurance, and keeps the rest
// within a hundredfold of it, so that nothing overflows.
func usableK(k float64) float64 {
	if !(k > 0) {
		return TypicalK
	}
	return math.Min(math.Max(k, TypicalK/100), TypicalK*100)
}
