package posture_test

import (
	"math"
	"testing"

	"gatepost/program"
)

// Who stands on the hands alone has the centre of mass over them (statics), between the
// wrists and the fingertips, or over the rail to two centimetres. Source: de Leva (1996),
// Table 4, the mean of women and men: masses as shares of the body's, and how far along its
// length a segment's centre of mass is.
func TestWhoStandsOnHandsIsOverThem(t *testing.T) {
	shares := []struct{ mass, at float64 }{{.0681, .4922}, {.4302, .4046}, {.0263, .5763}, {.0150, .4566}, {.0059, .768}, {.1447, .3854}, {.0457, .4374}, {.0133, .4215}}
	seen := 0
	for _, d := range everything(t) {
		low, high, stands := d.hands()
		if !stands {
			continue
		}
		seen++
		moment, mass := 0.0, 0.0
		add := func(k int, from, to program.Space) {
			moment += shares[k].mass * (from.X + shares[k].at*(to.X-from.X))
			mass += shares[k].mass
		}
		add(0, d.Crown, d.C7)
		add(1, d.Top, d.Hip)
		for i := range d.Arms {
			a, l := &d.Arms[i], &d.Legs[i]
			add(2, a.Shoulder, a.Elbow)
			add(3, a.Elbow, a.Wrist)
			add(4, a.Wrist, a.Knuckle)
			add(5, l.Hip, l.Knee)
			add(6, l.Knee, l.Ankle)
			add(7, l.Heel, l.Toe)
		}
		if moment/mass < low || moment/mass > high {
			t.Errorf("%s: the centre of mass is at %.2f m, the hands from %.2f to %.2f", d.name, moment/mass, low, high)
		}
	}
	if seen < 3*4 {
		t.Errorf("only %d stand on their hands alone", seen)
	}
}

// hands are from where to where the hands carry a body that stands on them alone.
func (d *drawn) hands() (low, high float64, alone bool) {
	a := &d.Arms[0]
	for _, thing := range d.whole {
		switch on := len(thing.Parts) == 1 && thing.Parts[0] == program.PartHands; {
		case len(thing.Parts) == 0: // untouched
		case on && thing.Kind == program.ThingFloor:
			low, high, alone = math.Min(a.Wrist.X, a.Tip.X), math.Max(a.Wrist.X, a.Tip.X), true
		case on && thing.Kind == program.ThingHandles:
			low, high, alone = a.Grip.X-.02, a.Grip.X+.02, true
		default:
			return 0, 0, false
		}
	}
	return low, high, alone
}
