package planner

import (
	"slices"

	"gatepost/program"
)

// mains is each week's main work: rigs chosen over all build weeks of a stretch
// together; deload and test weeks keep the rig of the build week before.
func (p *plan) mains() []work {
	p.gateless = false
	out, ok := p.mainsAt(p.stages())
	if !ok { // with a gate week's free hold no way of bands leads through
		p.gateless = true
		out, ok = p.mainsAt(p.stages())
	}
	if !ok { // nor with what other plans allow: each week is held to them afterwards
		p.least = nil
		out, _ = p.mainsAt(p.stages())
	}
	return out
}

// mainsAt are the works of stages; not ok where no choice of rigs leads through them.
func (p *plan) mainsAt(stages []stage) (out []work, ok bool) {
	var weeks []candidates
	var works [][]work
	for i := p.past.over(); i < len(p.weeks); i++ {
		if p.weeks[i].kind == program.WeekBuild && stages[i].rung != onTheFloor {
			c, choices := p.candidatesFor(stages[i], i)
			weeks, works = append(weeks, c), append(works, choices)
		}
	}
	picks := p.pick(weeks)
	if len(picks) < len(weeks) {
		return nil, false
	}
	out = make([]work, len(p.weeks))
	last, next, first := p.past.main(), 0, -1
	resumed := !last.none()
	for i := p.past.over(); i < len(p.weeks); i++ {
		w := p.weeks[i]
		if w.kind == program.WeekBuild && first < 0 {
			if first = i; stages[i].rung == onTheFloor {
				last = work{} // what was done before has no say on the floor
			}
		}
		switch {
		case w.kind == program.WeekBuild && stages[i].rung == onTheFloor:
			last = p.floorWeek(last, i)
		case w.kind == program.WeekBuild:
			last, next = works[next][picks[next]], next+1
		case first < 0 && resumed:
			last = p.still(last, stages[i], i)
		case first < 0 && !p.builds():
			last = p.alone(stages[i], i)
		}
		if w.kind != program.WeekBuild {
			last.gate = false
		}
		if out[i] = last; w.kind != program.WeekBuild && !last.option.hangsIn(w.start) {
			out[i] = p.alone(stages[i], i)
		}
	}
	if resumed {
		return out, true
	}
	for i := p.past.over(); i < first; i++ { // easy weeks before the first build week
		out[i] = p.again(out[first], i)
	}
	return out, true
}

// builds says whether the block has a build week at all.
func (p *plan) builds() bool {
	return p.firstBuild() >= 0
}

// floorWeek is a build week on the floor. Sore elbows keep to one lean, chosen
// for the week of the block in which the client is weakest.
func (p *plan) floorWeek(last work, week int) work {
	if !p.limits.elbowSore {
		return p.onFloor(week)
	}
	if last.none() {
		weakest := week
		for i := p.past.over(); i < len(p.weeks); i++ {
			if p.look.low[i] < p.look.low[weakest] {
				weakest = i
			}
		}
		last = p.onFloor(weakest)
	}
	return p.again(last, week)
}

// again is the same work in another week.
func (p *plan) again(w work, week int) work {
	w.max = p.look.maxHold(w.option, week)
	w.share = p.look.shareHeld(w.max)
	w.hold, w.gate = max(deloadLeast, min(held(p.limits.effortIn(week), w.max), w.hold)), false
	return w
}

// pick chooses the rigs; sore elbows keep one rig for the whole block.
func (p *plan) pick(weeks []candidates) []int {
	if p.limits.elbowSore {
		if picks := constant(weeks); picks != nil {
			return picks
		}
	}
	hung := p.hung(weeks)
	if picks := chooseRigs(append(hung, weeks...)); picks != nil {
		return picks[len(hung):]
	}
	return chooseRigs(weeks)
}

// hung is the rig of the last build week as weeks of one choice, where the first
// week to plan goes on with its step: so a rig stays two weeks and help does not
// rise from one printed version to the next either, as long as that rig will do.
func (p *plan) hung(weeks []candidates) []candidates {
	last := p.past.main()
	if len(weeks) == 0 || last.floor != nil || weeks[0].step != p.index(last.rung) {
		return nil
	}
	for i, o := range p.body.ladder[weeks[0].step].rigs() {
		if p.past.hangs(last.rung, o) {
			c := candidates{step: weeks[0].step, choices: []choice{{rig: i, help: o.help, hold: middleHold}}}
			return []candidates{c, c}[:min(2, p.past.rigged)]
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
func (p *plan) candidatesFor(s stage, week int) (candidates, []work) {
	if s.gate {
		return p.gateOnly(s, week)
	}
	c := candidates{step: s.rung}
	var works []work
	r := &p.body.ladder[s.rung]
	for i, o := range r.rigs() {
		w := p.at(r, o, week)
		if w.hold == 0 || p.limits.elbowSore && !p.keeps(r, o, week, true) || p.tooLittle(r, o, week) {
			continue
		}
		c.choices = append(c.choices, choice{rig: i, help: o.help, hold: w.hold, slack: p.slack(w, week)})
		works = append(works, w)
	}
	return c, works
}

// alone is the main work of a block without a build week.
func (p *plan) alone(s stage, week int) work {
	if s.rung == onTheFloor {
		return p.onFloor(week)
	}
	c, works := p.candidatesFor(s, week)
	if len(works) == 0 { // strength lost while away, or bands that are gone
		return p.onFloor(week)
	}
	return works[constant([]candidates{c})[0]]
}
