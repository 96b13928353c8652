package planner

import (
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// stage is where the main work of a build week is done: a rung of the ladder,
// or the floor (−1); short where only short sets are possible there; gate in its
// gate week.
type stage struct {
	rung  int
	short bool
	gate  bool
}

const onTheFloor = -1

// stages decides each build week's step. Other weeks keep the last one.
func (rt *route) stages() []stage {
	out := make([]stage, len(rt.weeks))
	now, entered := rt.resumed()
	for i := rt.past.over(); i < len(rt.weeks); i++ {
		if rt.stepsBack(i, now) {
			out[i] = rt.enterableBelow(now.rung, i) // and then on with the step as it was
			continue
		}
		if w := rt.weeks[i]; w.kind == program.WeekBuild && !(entered && rt.limits.elbowSore) {
			next := rt.stageFor(i, now.rung)
			if next.rung > now.rung {
				next = rt.gateFirst(out, now, next, i)
			} else {
				next.gate = rt.gateHere(out, next, i)
			}
			now, entered = next, true
		}
		out[i] = now
	}
	if !rt.builds() { // a block of one test week
		first := rt.stageFor(rt.past.over(), now.rung)
		for i := range out {
			out[i] = first
		}
	}
	return out
}

// enterableBelow is the nearest step below a rung that some rig makes main work in a week.
func (rt *route) enterableBelow(rung, week int) stage {
	for r := rung - 1; r >= 0; r-- {
		for _, short := range []bool{false, true} {
			if rt.enterable(r, week, short) {
				return stage{rung: r, short: short}
			}
		}
	}
	return stage{rung: onTheFloor}
}

// stageFor decides one week's step; it never goes back from the current one. Ten
// seconds of the wanted step come first, then ten of an earlier one, free, then short
// sets; each at an effort that trains, as long as there is one.
func (rt *route) stageFor(week, current int) stage {
	want := max(current, rt.forecastStep(week))
	if current == onTheFloor {
		want = max(want, rt.testedStep(week))
	} else if back, _ := rt.returning(week); back || rt.comingBack(week) || rt.buildsBefore(week) < rt.past.stays() {
		want = current // after weeks off or pain, or the gate was tried and not passed
	}
	lowest := max(current, 0)
	for _, least := range []int{mainLeast, shortLeast} {
		for r := want; r >= lowest; r-- {
			back := r < want && r != current && !rt.limits.elbowSore
			if rt.trains(r, week, least, back) {
				return stage{rung: r, short: least < mainLeast}
			}
		}
	}
	for _, short := range []bool{false, true} { // too easy is better than nothing
		for r := want; r >= lowest; r-- {
			if rt.enterable(r, week, short) {
				return stage{rung: r, short: short}
			}
		}
	}
	return stage{rung: onTheFloor}
}

// trains reports whether some rig that keeps serving, or the free hold, gives a hold of
// so many seconds in a week, at an effort that trains.
func (rt *route) trains(rung, week, least int, free bool) bool {
	r := &rt.body.Steps[rung]
	for _, o := range r.Aids() {
		if free && !o.Rig.Free() {
			break
		}
		if w := rt.at(r, o, week); w.hold >= w.whole(least) && rt.slack(w, week) == 0 && rt.keeps(r, o, week, least < mainLeast) {
			return true
		}
	}
	return false
}

// forecastStep is the first step whose free hold is predicted to be shorter than
// its gate's and the reserve; the hardest where none is.
func (rt *route) forecastStep(week int) int {
	last := rt.hardestStep()
	for i := range last {
		if !rt.beyondGate(i, week) && rt.body.Steps[i].Load > rt.past.passed {
			return i
		}
	}
	return last
}

// beyondGate says that a free hold is predicted to last a gate's seconds and the
// reserve.
func (rt *route) beyondGate(rung, week int) bool {
	return rt.pastGate(&rt.body.Steps[rung], week)
}

// pastGate is beyondGate of any step of the road map.
func (rt *route) pastGate(r *ladder.Rung, week int) bool {
	return rt.look.maxHold(r.Free(), week) >= 10*(r.Gate.Hold+reserve)
}

// testedStep is the hardest step that a test has held free for as long as a short set,
// where some rig gives eight seconds of it that train: what was tested is not passed
// over. A goal that is due in the block may have been held with bands. Joints that are
// sore, and the young, begin where the forecast says.
func (rt *route) testedStep(week int) int {
	for r := rt.hardestStep(); r >= 0 && !rt.limits.gentle; r-- {
		if (rt.testedFree(r) || rt.testedGoal(r, week)) && rt.trains(r, week, testedHold, false) {
			return r
		}
	}
	return onTheFloor
}

// testedFree reports whether a test held a step free for five seconds, and the tests
// together do not say that four are out of reach.
func (rt *route) testedFree(rung int) bool {
	r := &rt.body.Steps[rung]
	return rt.look.state.At(rt.body.Site(r)).MaxHold(r.Load) >= deloadLeast && slices.ContainsFunc(rt.athlete.Tests, func(t program.Hold) bool {
		return t.Step == r.ID && t.Rig.Free() && t.Scale == 0 && t.Seconds >= shortLeast
	})
}

// testedGoal reports whether a step is the goal, due in the block and next to where work
// would begin else, and a test held it for ten seconds with bands, four of them within
// reach without: what its day asks for is trained, with less help as it goes (our
// judgement).
func (rt *route) testedGoal(rung, week int) bool {
	r := &rt.body.Steps[rung]
	if rung < len(rt.body.Steps)-1 || !rt.dueIn() || rt.look.state.At(rt.body.Site(r)).MaxHold(r.Load) < deloadLeast {
		return false
	}
	if rung > 0 && !rt.testedFree(rung-1) && rt.forecastStep(week) < rung-1 {
		return false
	}
	return slices.ContainsFunc(rt.athlete.Tests, func(t program.Hold) bool {
		return t.Step == r.ID && t.Scale == 0 && t.Seconds >= mainLeast
	})
}

// enterable says whether one rig keeps a rung trainable (or good for short sets)
// in this and every later build week of the block.
func (rt *route) enterable(rung, week int, short bool) bool {
	r := &rt.body.Steps[rung]
	for _, o := range r.Aids() {
		if rt.keeps(r, o, week, short) {
			return true
		}
	}
	return false
}

func (rt *route) keeps(r *ladder.Rung, o ladder.Aid, week int, short bool) bool {
	for v := rt.past.over(); v < len(rt.weeks); v++ {
		if v != week && !rt.counts(v, week) {
			continue
		}
		if w := rt.at(r, o, v); !w.trainable() && !(short && w.hold > 0) {
			return false
		}
	}
	return true
}

// counts says whether what is entered in one week must be trainable in another:
// in later build weeks; with sore elbows in every week that trains, since they
// keep to one rig for the whole block.
func (sn *season) counts(v, week int) bool {
	if sn.limits.elbowSore {
		return sn.weeks[v].kind != program.WeekAway
	}
	return v > week && sn.weeks[v].kind == program.WeekBuild
}
