package strength

import (
	"math"
	"slices"
)

// Index of the four parts of a state's covariance.
const (
	iC = iota
	iRho
	iKappa
	iDay
	parts
)

// Noise of the filter. All values are our judgement, found by simulation: with
// them four ranges in five cover the truth four times in five.
const (
	tuckAhead      = 0.1   // an untested client holds a tuck's load e^0.1 above twelve seconds
	capacitySpread = 0.35  // sd of ln C12 before any test
	daySpread      = 0.03  // sd of a day's form
	stepSpread     = 0.02  // doubt added by a change of position without an offset
	rigSpread      = 0.015 // doubt added by a change of rig alone, without an offset
	modelSpread    = 0.02  // torque model and bands: no log can tell; offsets stand in for it
	elsewhere      = 0.03  // a step not trained now, without an offset
	weekSpread     = 0.008 // drift of ln C in a trained week
	restSpread     = 0.012 // drift of ln C in a week with nothing done

	// RateSpread is the sd of the own gain's logarithm, a coefficient of
	// variation of 0.7: sqrt(ln(1 + 0.7²)) = 0.631. Our judgement; in 585 people
	// the SD of isometric gains was as large as the mean (Hubal 2005).
	RateSpread = 0.631

	// KnownEndurance is the sd of ln k at or below which the client's own k is
	// used. Our judgement.
	KnownEndurance = 0.20

	// RestLoss is what a week with nothing done takes off ln C in the filter. Our judgement.
	RestLoss = 0.010
)

// State is what is believed of one client at one moment: the mean and covariance
// of (C, Rho, Kappa, Day), and of the offsets of what was held so far. It is a
// value: passing it on copies what later changes. Start from [Prior] or [PriorUntested]; the zero State
// is not of use.
type State struct {
	C     float64 // ln of the torque held twelve seconds, N·m
	Rho   float64 // ln of the own rate of gain over the law's
	Kappa float64 // ln of the endurance constant k, per minute
	Day   float64 // form of the day last observed, in ln C

	// P is the covariance, in the order C, Rho, Kappa, Day.
	P [parts][parts]float64

	// Doubted lists, by their place in the last day's list, the observations
	// that were too far from belief to be used.
	Doubted []int

	// Moved says, for each observation of the last day's list, how far it moved C.
	Moved []float64

	offsets []offset  // in the order met; copied, never changed in place
	among   []float64 // covariance of the offsets: the lower triangle, row by row
	here    [2]int    // offsets of the site of the present set
	heres   int       // how many
	usual   float64   // endurance assumed until the own is known, per minute; 0: TypicalK
	sited   bool      // as seen from a site, see At
	gated   bool      // what lies too far from belief is doubted

	position, rig string // where the last set was held
	placed        bool   // whether there was a last set
	astray        int    // doubted observations in a row; the sign is their side
}

// Prior is the belief before the tests of a client whose tuck has this ln of
// effective load. The median client can hold a load a tenth above it.
func Prior(lnTuck float64) State {
	return prior(lnTuck+tuckAhead, capacitySpread)
}

// PriorUntested is the belief about a client who has held nothing yet: the
// median holds three quarters of a tuck's load for twelve seconds, sd 0.35. Our
// judgement: the toes on the floor carry the rest, and most people who train
// hold a tuck within a year.
func PriorUntested(lnTuck float64) State {
	return prior(lnTuck+math.Log(0.75), capacitySpread)
}

func prior(c, spread float64) State {
	s := State{C: clamp(c, leastC, mostC), Kappa: math.Log(TypicalK)}
	s.P[iC][iC] = spread * spread
	s.P[iRho][iRho] = RateSpread * RateSpread
	s.P[iKappa][iKappa] = typicalSpread * typicalSpread
	s.P[iDay][iDay] = daySpread * daySpread
	return s
}

// Repeating is the belief about somebody who repeats a load and does not hold it: a
// repetition counts [SecondsPerRepetition], and with RepeatedK the curve of holds is that
// of Epley's equation.
func (s State) Repeating() State {
	s.Kappa, s.usual = math.Log(RepeatedK), RepeatedK
	s.P[iKappa][iKappa] = repeatedSpread * repeatedSpread
	return s
}

// TypicalEndurance says that the client's own endurance is not known well
// enough: [State.K] is then the typical one, and no instant maximum is shown.
func (s State) TypicalEndurance() bool {
	return s.P[iKappa][iKappa] > KnownEndurance*KnownEndurance
}

// K is the endurance constant to use, per minute.
func (s State) K() float64 {
	switch {
	case !s.TypicalEndurance():
		return math.Exp(s.Kappa)
	case s.usual > 0:
		return s.usual
	}
	return TypicalK
}

// C12 is the torque, N·m, that can be held twelve seconds, in the median.
func (s State) C12() float64 { return math.Exp(s.C) }

// Maximum is the instant maximum in N·m; known is false, and the torque 0, while
// only typical endurance is assumed.
func (s State) Maximum() (torque float64, known bool) {
	if s.TypicalEndurance() {
		return 0, false
	}
	return math.Exp(s.C + margin(Reference, s.K())), true
}

// Range is the central range of C12, in N·m, that covers with chance p (0.8 for
// the ends of early and late), the model's own doubt of two per cent included.
func (s State) Range(p float64) (low, high float64) {
	sd := math.Sqrt(s.P[iC][iC] + s.unless(modelSpread))
	z := quantile((1 + math.Min(math.Max(p, 0), 1)) / 2)
	return math.Exp(s.C - z*sd), math.Exp(s.C + z*sd)
}

// unless is a doubt's variance, which a site's offsets stand in for.
func (s State) unless(doubt float64) float64 {
	if s.sited {
		return 0
	}
	return doubt * doubt
}

// MaxHold is the predicted maximal hold, in seconds, of a load in N·m, at the
// median; of a load at a site ask [State.At]. It is 0 where the load is out of reach, never NaN.
func (s State) MaxHold(load float64) float64 {
	return MaxHold(s.C12(), load, s.K())
}

// Trained passes a week with straight-arm work. The gain is that of the law for
// the sessions done (see [Law.WeekGain]; a deload week a third of it), in ln C at
// own gain 1.
func (s State) Trained(gain float64) State {
	f := math.Exp(clamp(s.Rho, -fastest, fastest)) * clamp(gain, 0, mostInWeek)
	s.C += f
	return s.pass(f, weekSpread)
}

// Rested passes a week in which nothing was done; loss, in ln C, is zero or
// more, usually [RestLoss].
func (s State) Rested(loss float64) State {
	s.C -= clamp(loss, 0, mostInWeek)
	return s.pass(0, restSpread)
}

// pass is a week's F P Fᵀ + Q, where F = 1 but for F_cρ = f and F_ρρ = kept.
func (s State) pass(f, spread float64) State {
	for i := range parts {
		s.P[i][iC] += f * s.P[i][iRho]
	}
	for j := range parts {
		s.P[iC][j] += f * s.P[iRho][j]
	}
	for i := range parts {
		s.P[i][iRho] *= kept
		s.P[iRho][i] *= kept
	}
	s.offsets = slices.Clone(s.offsets)
	for l := range s.offsets {
		s.offsets[l].with[iC] += f * s.offsets[l].with[iRho]
		s.offsets[l].with[iRho] *= kept
	}
	s.Rho = usual + kept*(s.Rho-usual)
	s.P[iC][iC] += spread * spread
	s.P[iRho][iRho] += RateSpread * RateSpread * (1 - kept*kept)
	return s
}

// Bounds that only nonsense reaches: a torque between e⁻¹⁰ and e²⁰ N·m, a rate
// twenty times the law's, a week that gains or loses a tenth.
const (
	leastC, mostC = -10.0, 20.0
	fastest       = 3.0
	mostInWeek    = 0.1
)

// clamp keeps x within bounds; NaN becomes the lower one.
func clamp(x, low, high float64) float64 {
	if !(x > low) {
		return low
	}
	return math.Min(x, high)
}
