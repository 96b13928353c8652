package planner

import (
	"cmp"
	"slices"

	"gatepost/program"
)

// # Leans by repetitions
//
// Beside the main work a lean is gone into from the pike and out of again, three seconds a
// repetition, at a mark that moves by half hands (common practice). It is practice and
// strength, and finds nothing out: main work, check holds and tests stay holds. Joints that
// are sore, and weeks on the way back, keep still as well (our judgement).

// leanRepsLeast is the fewest repetitions of a set: five, and once one less where a dose
// would stand still. Shorter sets stay holds. Twenty-five seconds make eight.
const leanRepsLeast = 4

// repeatedLean is the exercise in which a week's lean is repeated; empty where it is held.
func (sn *season) repeatedLean(week int) string {
	floor := sn.floorRung(program.RungLean)
	if floor == nil || floor.Repeated == "" || sn.limits.elbowSore || sn.limits.neutralOnly || sn.comingBack(week) {
		return ""
	}
	if back, _ := sn.returning(week); back {
		return ""
	}
	if e, ok := sn.lib.Exercise(floor.Repeated); !ok || !sn.can(e) {
		return ""
	}
	return floor.Repeated
}

// onMark keeps a lean that is repeated on its mark until the mark can move by half a hand,
// and to whole repetitions. It lies where the block's first such lean lay.
func (ds *doses) onMark(w work, week int, which func(*load) work) work {
	if !isLean(w) || ds.repeatedLean(week) == "" {
		return w
	}
	hold := fullReps(w.hold)
	if first := slices.IndexFunc(ds.loads[:week], func(l load) bool { return isLean(which(&l)) }); first >= 0 {
		at, mark := centimetres(w.aid.Ahead), centimetres(which(&ds.loads[first]).aid.Ahead)
		if off := (at - mark) % centimetres(halfHand); off > 0 {
			w = ds.leanAt(w.floor, ds.body.LeanOf(float64(at-off)/100), week)
		}
	}
	w.hold = hold
	return w
}

func isLean(w work) bool { return w.floor != nil && w.floor.Kind == program.RungLean }

// printedAs is the exercise that work is printed as.
func (sn *season) printedAs(w work, role program.Role, week int) string {
	if role == program.RoleSecond && isLean(w) {
		return cmp.Or(sn.repeatedLean(week), w.exercise())
	}
	return w.exercise()
}

// heldAs is the exercise in which a lean that is repeated is held; others are what they are.
func (c *client) heldAs(exercise string) string {
	if floor := c.floorRung(program.RungLean); floor != nil && floor.Repeated == exercise {
		return floor.Exercise
	}
	return exercise
}

// inAndOut prints a week's lighter leans as repetitions.
func (lo *layout) inAndOut(w *program.Week) {
	repeated := lo.repeatedLean(w.Number - 1)
	if repeated == "" {
		return
	}
	held := lo.heldAs(repeated)
	for i := range w.Sessions {
		for j := range w.Sessions[i].Items {
			item := &w.Sessions[i].Items[j]
			if item.Role == program.RoleSecond && item.Exercise == held && item.Hold >= leanRepsLeast*program.SecondsPerRep {
				item.Exercise = repeated
				countReps(item)
			}
		}
	}
}
