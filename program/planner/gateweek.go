package planner

import "gatepost/program"

// # Gate weeks
//
// A gate that no card asks for is not shown by a client who trains alone (played
// through with the demo clients: none was, in twelve weeks). So the last build week
// on a step is its gate week: on each main day the main work is the gate itself,
// free, with its sets and seconds, and nothing heavy comes before it. Where that is
// not within reach in the last week, the step after it waits. The goal's own gate
// has its week once the forecast would move on, were there a step after it.
//
// Once a log is read, a gate week that was done without everything written counts
// as asked for, and one that was tried and not passed is repeated.

// gateFirst puts the gate of the step worked on before the next one: into the
// last build week on it, and where that is not enough into this week, which then
// stays there.
func (p *plan) gateFirst(stages []stage, now, next stage, week int) stage {
	if now.rung == onTheFloor || p.gateless || p.asked(stages, now.rung) {
		return next
	}
	if last := p.buildBefore(week); last >= 0 && stages[last].rung == now.rung && p.canShow(now.rung, last) {
		if stages[last].gate = true; p.asked(stages, now.rung) {
			return next
		}
	}
	return stage{rung: now.rung, gate: p.canShow(now.rung, week)}
}

// gateHere says that a week which stays on its step is a gate week: repeated, since
// the gate was tried and not passed, or the goal's.
func (p *plan) gateHere(stages []stage, s stage, week int) bool {
	if s.rung == onTheFloor || p.gateless || !p.canShow(s.rung, week) {
		return false
	}
	if p.past.repeat && p.buildsBefore(week) == 0 {
		return true
	}
	goal := s.rung == len(p.body.ladder)-1
	return goal && p.beyondGate(s.rung, week) && !p.asked(stages, s.rung)
}

// asked says that a step's gate is passed, or is asked for on as many days as it
// wants: in the weeks behind, and in those planned so far.
func (p *plan) asked(stages []stage, rung int) bool {
	r := &p.body.ladder[rung]
	days := 0
	if p.past.step == r.ID {
		days = p.past.gateDays
	}
	for i, s := range stages {
		if s.gate && s.rung == rung {
			days += p.mainDays(i)
		}
	}
	return r.load <= p.past.passed || days >= max(1, r.Gate.Sessions)
}

// mainDays is on how many days a week does its main work.
func (p *plan) mainDays(week int) int {
	n := 0
	for _, part := range p.weeks[week].parts() {
		if part != partLight {
			n++
		}
	}
	return n
}

// canShow says that a gate's seconds are within the effort of a week. Sore elbows
// never come here: they keep to one step and one rig.
func (p *plan) canShow(rung, week int) bool {
	r := &p.body.ladder[rung]
	return held(p.limits.mostEffortIn(week), p.look.maxHold(r.rigs[0], week)) >= gateSeconds(r.Gate)
}

// gateSeconds are what a gate week's sets last: those of the longer set, where a
// gate asks for one.
func gateSeconds(g program.Gate) int { return max(g.Hold, g.Single) }

// buildBefore is the last build week to plan before another, −1 where there is none.
func (p *plan) buildBefore(week int) int {
	for i := week - 1; i >= p.past.over(); i-- {
		if p.weeks[i].kind == program.WeekBuild {
			return i
		}
	}
	return -1
}

// gateMenu is the one choice of a gate week: the gate.
func (p *plan) gateMenu(s stage, week int) (menu, []work) {
	r := &p.body.ladder[s.rung]
	w := p.at(r, r.rigs[0], week)
	w.hold, w.short, w.gate = gateSeconds(r.Gate), false, true
	return menu{step: s.rung, gate: true, choices: []choice{{hold: w.hold}}}, []work{w}
}
