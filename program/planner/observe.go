package planner

import (
	"fmt"
	"slices"
	"strings"

	"gatepost/program"
	"gatepost/program/strength"
)

// observe turns one test into a load held for a time.
func (b *body) observe(t *program.Hold) (strength.Observation, bool) {
	o := strength.Observation{Seconds: testSeconds(t), Max: !t.Stopped, AtLeast: t.Stopped}
	if t.Step == "" && t.Exercise == b.toesID && t.Scale > 0 {
		b.held(&o, &b.all[0], b.all[0].heldFree(), t.Scale)
		return o, o.Load > 0
	}
	if t.Step == "" {
		if t.Ahead <= 0 {
			return o, false
		}
		b.leant(&o, t.Exercise, t.Ahead)
		return o, o.Load > 0
	}
	for i := range b.all {
		if r := &b.all[i]; r.ID == t.Step {
			b.held(&o, r, b.named(r, t.Rig), t.Scale)
		}
	}
	return o, o.Load > 0
}

// held fills in the load and the site of a step held with a rig, and with so many
// newtons on the toes.
func (b *body) held(o *strength.Observation, r *rung, hung option, scale float64) {
	o.Load, o.Model, o.Position, o.Rig = hung.load, strength.StepModel, r.ID, rigName(hung.rig)
	if scale > 0 {
		o.Load -= scale * r.toesReach() * allowance(r.Step)
		o.Model, o.Position = strength.ToesModel, onToes(r)
	}
}

// leanRead is how well a lean's distance is read, in m (our judgement).
const leanRead = 0.01

// leant fills in the load and the site of a lean.
func (b *body) leant(o *strength.Observation, exercise string, ahead float64) {
	o.Load, o.Model, o.Position = b.PlancheLean(ahead, b.support).Torque, strength.LeanModel, exercise
	o.More = min(1, b.PlancheLean(ahead+leanRead, b.support).Torque/o.Load-1)
}

// testSeconds is the hold's length; repetitions count three seconds each (common
// practice), which agrees with the endurance model to 0.09 in share.
func testSeconds(t *program.Hold) float64 {
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

// pairUp marks maximal holds of one day that measure endurance: one step, two rigs
// (free is one), one of 45 to 90 s and one of 5 to 8 s. The statics know both loads.
func pairUp(day []strength.Observation) {
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

func rigName(r program.Rig) string {
	if r.Free() {
		return ""
	}
	return fmt.Sprintf("%s@%.3f", strings.Join(r.Bands, "+"), r.Drop)
}

// dropPrinted is the strap of bands of which nobody says on what they hung: as printed.
const dropPrinted = -2.0

func sameRig(given, printed program.Rig) bool {
	if len(given.Bands) != len(printed.Bands) {
		return false
	}
	for _, b := range given.Bands {
		if !slices.Contains(printed.Bands, b) {
			return false
		}
	}
	return given.Free() || given.Drop == dropPrinted || given.Drop == printed.Drop
}

// hungAs is the option of a rig; not ok where a band is no longer the client's.
func (b *body) hungAs(r *rung, rig program.Rig) (option, bool) {
	o := b.named(r, rig)
	return o, len(o.rig.Bands) == len(rig.Bands)
}
