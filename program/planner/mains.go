package planner

import (
	"slices"

	"gatepost/program"
)

// mains is each week's main work: rigs chosen over all build weeks of a stretch
// together; deload and test weeks keep the rig of the build week before.
func (rt *route) mains() []work {
	rt.gateless = false
	out, ok := rt.mainsAt(rt.stages())
	if !ok { // with a gate week's free hold no way of bands leads through
		rt.gateless = true
		out, ok = rt.mainsAt(rt.stages())
	}
	if !ok { // nor with what other plans allow: each week is held to them afterwards
		rt.least = nil
		out, _ = rt.mainsAt(rt.stages())
	}
	return out
}

// mainsAt are the works of stages; not ok where no choice of rigs leads through them.
func (rt *route) mainsAt(stages []stage) (out []work, ok bool) {
	var weeks []candidates
	var works [][]work
	for i := rt.past.over(); i < len(rt.weeks); i++ {
		if rt.weeks[i].kind == program.WeekBuild && stages[i].rung != onTheFloor {
			c, choices := rt.candidatesFor(stages[i], i)
			weeks, works = append(weeks, c), append(works, choices)
		}
	}
	picks := rt.pick(weeks)
	if len(picks) < len(weeks) {
		return nil, false
	}
	out = make([]work, len(rt.weeks))
	last, next, first := rt.past.main(), 0, -1
	resumed := !last.none()
	for i := rt.past.over(); i < len(rt.weeks); i++ {
		w := rt.weeks[i]
		if w.kind == program.WeekBuild && first < 0 {
			if first = i; stages[i].rung == onTheFloor {
				last = work{} // what was done before has no say on the floor
			}
		}
		switch {
		case w.kind == program.WeekBuild && stages[i].rung == onTheFloor:
			last = rt.floorWeek(last, i)
		case w.kind == program.WeekBuild:
			last, next = works[next][picks[next]], next+1
		case first < 0 && resumed:
			last = rt.still(last, stages[i], i)
		case first < 0 && !rt.builds():
			last = rt.alone(stages[i], i)
		}
		if w.kind != program.WeekBuild {
			last.gate, last.hold = false, min(last.hold, last.most()) // a gate's ten repetitions are no easy week's
		}
		if out[i] = last; w.kind != program.WeekBuild && !last.aid.HangsIn(w.start) {
			out[i] = rt.alone(stages[i], i)
		}
	}
	if resumed {
		return out, true
	}
	for i := rt.past.over(); i < first; i++ { // easy weeks before the first build week
		out[i] = rt.again(out[first], i)
	}
	return out, true
}

// builds says whether the block has a build week at all.
func (rt *route) builds() bool {
	return rt.firstBuild() >= 0
}

// floorWeek is a build week on the floor. Sore elbows keep to one lean, chosen
// for the week of the block in which the client is weakest.
func (rt *route) floorWeek(last work, week int) work {
	if !rt.limits.elbowSore {
		return rt.further(last, rt.onFloor(week), week)
	}
	if last.none() {
		weakest := week
		for i := rt.past.over(); i < len(rt.weeks); i++ {
			if rt.look.low[i] < rt.look.low[weakest] {
				weakest = i
			}
		}
		last = rt.onFloor(weakest)
	}
	return rt.again(last, week)
}

// again is the same work in another week.
func (h *holds) again(w work, week int) work {
	w.max = h.look.maxHold(w.aid, week)
	w.share = h.look.shareHeld(w.max)
	w.hold, w.gate = w.whole(max(deloadLeast, min(h.longest(&w, week), w.hold))), false
	return w
}

// pick chooses the rigs; sore elbows keep one rig for the whole block.
func (rt *route) pick(weeks []candidates) []int {
	if rt.limits.elbowSore {
		if picks := constant(weeks); picks != nil {
			return picks
		}
	}
	hung := rt.hung(weeks)
	if picks := chooseRigs(append(hung, weeks...)); picks != nil {
		return picks[len(hung):]
	}
	return chooseRigs(weeks)
}

// hung is the rig of the last build week as weeks of one choice, where the first
// week to plan goes on with its step: so a rig stays two weeks and help does not
// rise from one printed version to the next either, as long as that rig will do.
func (rt *route) hung(weeks []candidates) []candidates {
	last := rt.past.main()
	if len(weeks) == 0 || last.floor != nil || weeks[0].step != rt.index(last.rung) {
		return nil
	}
	for i, o := range rt.body.Steps[weeks[0].step].Aids() {
		if rt.past.hangs(last.rung, o) {
			c := candidates{step: weeks[0].step, choices: []choice{{rig: i, help: o.Help, hold: middleHold}}}
			return []candidates{c, c}[:min(2, rt.past.rigged)]
		}
	}
	return nil
}

// constant is the rig that costs least of those that serve every week.
func constant(weeks []candidates) []int {
	if len(weeks) == 0 {
		return nil
	}
	var best []int
	var least cost
	for _, c := range weeks[0].choices {
		var sum cost
		picks := make([]int, 0, len(weeks))
		for _, w := range weeks {
			if j := slices.IndexFunc(w.choices, func(d choice) bool { return d.rig == c.rig }); j >= 0 {
				picks, sum = append(picks, j), sum.plus(w.choices[j].cost())
			}
		}
		if len(picks) == len(weeks) && (best == nil || sum.less(least)) {
			best, least = picks, sum
		}
	}
	return best
}

// candidatesFor lists a week's choices at its stage.
func (rt *route) candidatesFor(s stage, week int) (candidates, []work) {
	if s.gate {
		return rt.gateOnly(s, week)
	}
	c := candidates{step: s.rung}
	var works []work
	r := &rt.body.Steps[s.rung]
	for i, o := range r.Aids() {
		w := rt.at(r, o, week)
		if w.hold == 0 || rt.limits.elbowSore && !rt.keeps(r, o, week, true) || rt.tooLittle(r, o, week) {
			continue
		}
		c.choices = append(c.choices, choice{rig: i, help: o.Help, hold: w.hold, short: max(0, w.least()-w.hold), slack: rt.slack(w, week)})
		works = append(works, w)
	}
	return c, works
}

// alone is the main work of a block without a build week.
func (rt *route) alone(s stage, week int) work {
	if s.rung == onTheFloor {
		return rt.onFloor(week)
	}
	c, works := rt.candidatesFor(s, week)
	if len(works) == 0 { // strength lost while away, or bands that are gone
		return rt.onFloor(week)
	}
	return works[constant([]candidates{c})[0]]
}
