package planner

import (
	"maps"
	"slices"

	"gatepost/program"
)

// # What did not come off
//
// What is done beside the straight-arm work moves on by weeks (progress.go), whatever the log
// says of it; where a set was cut short, broke or left nothing, it goes back by a move. The
// minutes that this leaves are left free: another exercise that had no room would make bad
// news more work.

// fallen are exercises that did not come off, and what for they were done.
type fallen map[string]program.Role

// fell are the exercises of which a set went worse than was asked in a week.
func (w *weekPrinted) fell() fallen {
	out := fallen{}
	for _, d := range w.days {
		for i := range d.sets {
			if s := &d.sets[i]; s.fell() {
				out[s.Exercise] = s.item.Role
			}
		}
	}
	return out
}

// notes name the exercises, but for what was only tested.
func (f fallen) notes() []program.Note {
	var which []program.Value
	for _, id := range slices.Sorted(maps.Keys(f)) {
		if f[id] != program.RoleTest {
			which = append(which, exercise("exercises", id))
		}
	}
	if len(which) == 0 {
		return nil
	}
	return []program.Note{note(noteFell, which...)}
}

// fell reports whether a set of what moves on by weeks was cut short, broke or went to its end.
func (s *setRead) fell() bool {
	return s.item != nil && s.Step == "" && s.item.Ahead == 0 && s.Printed > 0 && s.said() &&
		(s.short() || s.Done.Reps > 0 && s.Done.Reps < s.Printed || broke(s.Done) || s.Done.RPE >= toughRPE)
}

// fall takes exercises, and what has come to them by harder moves, one move back from a week
// with so many build weeks up to it; what is where it began begins anew.
func (x *exercises) fall(fallen fallen, builds int) {
	for exercise, role := range fallen {
		for id, came := range x.came {
			if x.leadsTo(id, exercise, mostMoves) {
				x.back[id] = min(x.back[id]+movesBy(role), builds-came)
			}
		}
	}
}

// mostMoves are the harder moves that a block of sixteen weeks has room for, and more.
const mostMoves = 4

// leadsTo reports whether an exercise is another one, or comes to it by so many harder moves.
func (x *exercises) leadsTo(id, harder string, moves int) bool {
	e, ok := x.lib.Exercise(id)
	return id == harder || ok && moves > 0 && slices.ContainsFunc(e.Harder, func(h string) bool { return x.leadsTo(h, harder, moves-1) })
}

// noteLower notes what an exercise, which has come to a dose of itself or of a harder one, goes
// back to on a day, where it did not come off.
func (x *exercises) noteLower(e, now *program.Exercise, dose program.Dose, d day, role program.Role) {
	delete(x.lower, now.ID)
	if back := x.back[e.ID]; back > 0 {
		low, less := x.progressed(e, d, role, back)
		x.lower[now.ID] = lowered{low, dose, less}
	}
}

// lowered is an exercise and its dose that others go back to.
type lowered struct {
	*program.Exercise
	from, to program.Dose
}

// goBack takes what did not come off back, in a session whose parts are chosen.
func (x *exercises) goBack(items []program.Prescription) {
	for i := range items {
		item := &items[i]
		low, ok := x.lower[item.Exercise]
		if !ok || item.Role == program.RolePrepare || item.Role == program.RoleTest || low.StraightArm && !item.StraightArm {
			continue
		}
		asDosed := item.Hold == low.from.Hold && item.Reps == low.from.Reps
		if !asDosed && low.ID != item.Exercise {
			continue
		}
		item.Exercise, item.StraightArm, item.EachSide = low.ID, low.StraightArm, low.EachSide
		if item.Sets = min(item.Sets, max(1, low.to.Sets)); asDosed {
			item.Hold, item.Reps, item.Rest = low.to.Hold, low.to.Reps, low.to.Rest
		} else { // another rule has made it less
			item.Hold, item.Reps = min(item.Hold, low.to.Hold), min(item.Reps, low.to.Reps)
		}
	}
}
