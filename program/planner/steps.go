package planner

import (
	"slices"

	"gatepost/program"
)

// reserve is how many seconds beyond a gate's a free hold must be predicted
// before the next step is trained: the gate is trained before it is tested.
const reserve = 6

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
func (p *plan) stages() []stage {
	out := make([]stage, len(p.weeks))
	now, entered := p.resumed()
	for i := p.past.over(); i < len(p.weeks); i++ {
		if p.stepsBack(i, now) {
			out[i] = p.enterableBelow(now.rung, i) // and then on with the step as it was
			continue
		}
		if w := p.weeks[i]; w.kind == program.WeekBuild && !(entered && p.limits.elbowSore) {
			next := p.stageFor(i, now.rung)
			if next.rung > now.rung {
				next = p.gateFirst(out, now, next, i)
			} else {
				next.gate = p.gateHere(out, next, i)
			}
			now, entered = next, true
		}
		out[i] = now
	}
	if !p.builds() { // a block of one test week
		first := p.stageFor(p.past.over(), now.rung)
		for i := range out {
			out[i] = first
		}
	}
	return out
}

// enterableBelow is the nearest step below a rung that some rig makes main work in a week.
func (p *plan) enterableBelow(rung, week int) stage {
	for r := rung - 1; r >= 0; r-- {
		for _, short := range []bool{false, true} {
			if p.enterable(r, week, short) {
				return stage{rung: r, short: short}
			}
		}
	}
	return stage{rung: onTheFloor}
}

// stageFor decides one week's step; it never goes back from the current one. Ten
// seconds of the wanted step come first, then ten of an earlier one, free, then short
// sets; each at an effort that trains, as long as there is one.
func (p *plan) stageFor(week, current int) stage {
	want := max(current, p.forecastStep(week))
	if current == onTheFloor {
		want = max(want, p.testedStep(week))
	} else if back, _ := p.returning(week); back || p.comingBack(week) || p.buildsBefore(week) < p.past.stays() {
		want = current // after weeks off or pain, or the gate was tried and not passed
	}
	lowest := max(current, 0)
	for _, least := range []int{mainLeast, shortLeast} {
		for r := want; r >= lowest; r-- {
			back := r < want && r != current && !p.limits.elbowSore
			if p.trains(r, week, least, back) {
				return stage{rung: r, short: least < mainLeast}
			}
		}
	}
	for _, short := range []bool{false, true} { // too easy is better than nothing
		for r := want; r >= lowest; r-- {
			if p.enterable(r, week, short) {
				return stage{rung: r, short: short}
			}
		}
	}
	return stage{rung: onTheFloor}
}

// trains reports whether some rig that keeps serving, or the free hold, gives a hold of
// so many seconds in a week, at an effort that trains.
func (p *plan) trains(rung, week, least int, free bool) bool {
	r := &p.body.ladder[rung]
	for _, o := range r.rigs() {
		if free && !o.rig.Free() {
			break
		}
		if w := p.at(r, o, week); w.hold >= least && p.slack(w, week) == 0 && p.keeps(r, o, week, least < mainLeast) {
			return true
		}
	}
	return false
}

// forecastStep is the first step whose free hold is predicted to be shorter than
// its gate's and the reserve; the goal where none is.
func (p *plan) forecastStep(week int) int {
	last := len(p.body.ladder) - 1
	for i := range p.body.ladder[:last] {
		if !p.beyondGate(i, week) && p.body.ladder[i].load > p.past.passed {
			return i
		}
	}
	return last
}

// beyondGate says that a free hold is predicted to last a gate's seconds and the
// reserve.
func (p *plan) beyondGate(rung, week int) bool {
	r := &p.body.ladder[rung]
	return p.look.maxHold(r.heldFree(), week) >= 10*(r.Gate.Hold+reserve)
}

// testedStep is the hardest step that a test has held free for as long as a short set,
// where some rig gives eight seconds of it that train: what was tested is not passed
// over. A goal that is due in the block may have been held with bands. Joints that are
// sore, and the young, begin where the forecast says.
func (p *plan) testedStep(week int) int {
	for r := len(p.body.ladder) - 1; r >= 0 && p.limits.effort == usualEffort; r-- {
		if (p.testedFree(r) || p.testedGoal(r, week)) && p.trains(r, week, testedHold, false) {
			return r
		}
	}
	return onTheFloor
}

// testedHold is the shortest main hold of a step that is begun because of a test, s.
const testedHold = 8

// testedFree reports whether a test held a step free for five seconds, and the tests
// together do not say that four are out of reach.
func (p *plan) testedFree(rung int) bool {
	r := &p.body.ladder[rung]
	return p.look.state.At(p.body.site(r)).MaxHold(r.load) >= deloadLeast && slices.ContainsFunc(p.athlete.Tests, func(t program.Hold) bool {
		return t.Step == r.ID && t.Rig.Free() && t.Scale == 0 && t.Seconds >= shortLeast
	})
}

// testedGoal reports whether a step is the goal, due in the block and next to where work
// would begin else, and a test held it for ten seconds with bands, four of them within
// reach without: what its day asks for is trained, with less help as it goes (our
// judgement).
func (p *plan) testedGoal(rung, week int) bool {
	r := &p.body.ladder[rung]
	if rung < len(p.body.ladder)-1 || !p.dueIn() || p.look.state.At(p.body.site(r)).MaxHold(r.load) < deloadLeast {
		return false
	}
	if rung > 0 && !p.testedFree(rung-1) && p.forecastStep(week) < rung-1 {
		return false
	}
	return slices.ContainsFunc(p.athlete.Tests, func(t program.Hold) bool {
		return t.Step == r.ID && t.Scale == 0 && t.Seconds >= mainLeast
	})
}

// enterable says whether one rig keeps a rung trainable (or good for short sets)
// in this and every later build week of the block.
func (p *plan) enterable(rung, week int, short bool) bool {
	r := &p.body.ladder[rung]
	for _, o := range r.rigs() {
		if p.keeps(r, o, week, short) {
			return true
		}
	}
	return false
}

func (p *plan) keeps(r *rung, o option, week int, short bool) bool {
	for v := p.past.over(); v < len(p.weeks); v++ {
		if v != week && !p.counts(v, week) {
			continue
		}
		if w := p.at(r, o, v); !w.trainable() && !(short && w.hold > 0) {
			return false
		}
	}
	return true
}

// counts says whether what is entered in one week must be trainable in another:
// in later build weeks; with sore elbows in every week that trains, since they
// keep to one rig for the whole block.
func (p *plan) counts(v, week int) bool {
	if p.limits.elbowSore {
		return p.weeks[v].kind != program.WeekAway
	}
	return v > week && p.weeks[v].kind == program.WeekBuild
}
