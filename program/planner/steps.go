package planner

import "gatepost/program"

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

// stageFor decides one week's step; it never goes back from the current one.
func (p *plan) stageFor(week, current int) stage {
	want := max(current, p.forecastStep(week))
	if current != onTheFloor && p.buildsBefore(week) < p.past.stays() {
		want = current // the gate was tried and not passed
	}
	lowest := max(current, 0)
	if p.enterable(want, week, false) {
		return stage{rung: p.unlessTooEasy(want, lowest, week)}
	}
	for r := want - 1; r >= lowest; r-- {
		if p.enterable(r, week, false) && p.leastHelp(r, week).max <= tooEasy {
			return stage{rung: r}
		}
	}
	for r := want; r >= lowest; r-- {
		if p.enterable(r, week, true) {
			return stage{rung: r, short: true}
		}
	}
	return stage{rung: p.easiest(lowest, week)}
}

// easiest takes a step that is too easy over none at all.
func (p *plan) easiest(lowest, week int) int {
	for r := len(p.body.ladder) - 1; r >= lowest; r-- {
		if p.enterable(r, week, false) {
			return r
		}
	}
	return onTheFloor
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
	return p.look.maxHold(r.rigs[0], week) >= 10*(r.Gate.Hold+reserve)
}

// unlessTooEasy steps back to the rung before, free, where the least help makes
// the wanted step easier than that.
func (p *plan) unlessTooEasy(want, lowest, week int) int {
	least := p.leastHelp(want, week)
	if least.max <= tooEasy || want-1 < lowest {
		return want
	}
	before := p.at(&p.body.ladder[want-1], p.body.ladder[want-1].rigs[0], week)
	if before.trainable() && before.max < least.max && p.enterable(want-1, week, false) {
		return want - 1
	}
	return want
}

// enterable says whether one rig keeps a rung trainable (or good for short sets)
// in this and every later build week of the block.
func (p *plan) enterable(rung, week int, short bool) bool {
	r := &p.body.ladder[rung]
	for _, o := range r.rigs {
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

// leastHelp is the trainable work with the least help at a rung.
func (p *plan) leastHelp(rung, week int) work {
	var best work
	r := &p.body.ladder[rung]
	for _, o := range r.rigs {
		if w := p.at(r, o, week); w.trainable() && (best.none() || o.help < best.option.help) {
			best = w
		}
	}
	return best
}
