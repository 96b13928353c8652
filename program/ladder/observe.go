package ladder

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gatepost/program"
	"gatepost/program/strength"
)

// Observe turns one test into a load held for a time.
func (b *Body) Observe(t *program.Hold) (strength.Observation, bool) {
	o := strength.Observation{Seconds: TestSeconds(t), Max: !t.Stopped, AtLeast: t.Stopped}
	if b.load == program.LoadBalance {
		return o, false
	}
	if t.Step == "" && t.Exercise == b.toesID && t.Scale > 0 {
		first := &b.All[0]
		b.Held(&o, first, first.Carried(first.Free(), t.Scale))
		return o, o.Load > 0
	}
	if t.Step == "" {
		if t.Ahead <= 0 || b.load == program.LoadPress { // which is measured in newtons
			return o, false
		}
		b.Leant(&o, t.Exercise, t.Ahead)
		return o, o.Load > 0
	}
	for i := range b.All {
		if r := &b.All[i]; r.ID == t.Step {
			b.Held(&o, r, r.Carried(b.Named(r, t.Rig), t.Scale))
		}
	}
	return o, o.Load > 0
}

// Held fills in the load and the site of a step held with an aid.
func (b *Body) Held(o *strength.Observation, r *Rung, aid Aid) {
	o.Load, o.Model, o.Position, o.Rig = aid.Load, strength.StepModel, r.ID, RigName(aid.Rig)
	if aid.Scale > 0 {
		o.Model, o.Position = strength.ToesModel, onToes(r)
	}
}

// leanLift is how far a lean held still is off as a measure of lifts: strengths that go
// together by .7, of .35 each (our judgement).
const leanLift = 0.25

// leanRead is how well a lean's distance is read, in m (our judgement).
const leanRead = 0.01

// Leant fills in the load and the site of a lean.
func (b *Body) Leant(o *strength.Observation, exercise string, ahead float64) {
	o.Load, o.Model, o.Position = b.PlancheLean(ahead, b.support).Torque, strength.LeanModel, exercise
	o.More = min(1, b.PlancheLean(ahead+leanRead, b.support).Torque/o.Load-1)
	if b.load == program.LoadLift {
		o.More = math.Hypot(o.More, leanLift)
	}
}

// TestSeconds is the hold's length; repetitions count three seconds each (common
// practice), which agrees with the endurance model to 0.09 in share.
func TestSeconds(t *program.Hold) float64 {
	if t.Reps > 0 {
		return strength.HoldOf(float64(t.Reps))
	}
	return t.Seconds
}

// A pair of holds that measures endurance, in seconds.
const (
	pairShortLeast, pairShortMost = 5, 8
	pairLongLeast, pairLongMost   = 45, 90
)

// PairUp marks maximal holds of one day that measure endurance: one step, two rigs
// (free is one), one of 45 to 90 s and one of 5 to 8 s. The statics know both loads.
func PairUp(day []strength.Observation) {
	within := func(s, least, most float64) bool { return least <= s && s <= most }
	for i := range day {
		for j := range day {
			long, short := &day[i], &day[j]
			if long.Max && short.Max && long.Position == short.Position && long.Rig != short.Rig &&
				long.Load < short.Load && within(long.Seconds, pairLongLeast, pairLongMost) &&
				within(short.Seconds, pairShortLeast, pairShortMost) {
				long.Pair, short.Pair = true, true
			}
		}
	}
}

// RigName tells rigs apart; empty for none.
func RigName(r program.Rig) string {
	if r.Free() {
		return ""
	}
	if r.Pull > 0 {
		return fmt.Sprintf("%s@%.1fN", strings.Join(r.Bands, "+"), r.Pull)
	}
	if h := max(r.Pad, r.Block); h > 0 {
		return fmt.Sprintf("on@%.3f", h)
	}
	return fmt.Sprintf("%s@%.3f", strings.Join(r.Bands, "+"), r.Drop)
}

// DropPrinted is the strap of bands of which nobody says on what they hung: as printed.
const DropPrinted = -2.0

// SameRig reports whether what is given is a printed rig, on a strap, or with a pull, that
// may be unsaid.
func SameRig(given, printed program.Rig) bool {
	if len(given.Bands) != len(printed.Bands) || given.Pad != printed.Pad || given.Block != printed.Block {
		return false
	}
	for _, b := range given.Bands {
		if !slices.Contains(printed.Bands, b) {
			return false
		}
	}
	if given.Pull != printed.Pull && !(given.Pull == 0 && given.Drop == DropPrinted) {
		return false
	}
	return given.Free() || given.Drop == DropPrinted || given.Drop == printed.Drop
}

// HungAs is the aid of a rig; not ok where a band is no longer the client's.
func (b *Body) HungAs(r *Rung, rig program.Rig) (Aid, bool) {
	o := b.Named(r, rig)
	return o, len(o.Rig.Bands) == len(rig.Bands)
}
