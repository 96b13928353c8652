package planner

import (
	"slices"

	"gatepost/program"
)

// # Gate weeks
//
// A gate that no card asks for is not shown by a client who trains alone (played
// through with the demo clients: none was, in twelve weeks). So the last build week
// on a step is its gate week: on each main day the main work is the gate itself,
// free, with its sets and seconds, and nothing heavy comes before it. Where that is
// not within reach in the last week, the step after it waits. The goal's own gate
// has its week once the forecast would move on, were there a step after it. The block's
// last build week is one too, of whatever step was trained until then: nothing else is
// left to train it for, and its few sets begin the taper (our judgement). Who trains once
// a week has the last two.
//
// A gate week asks for all of the gate on each main day, or it is none. Where the gate
// wants a longer set after the others, that is the day's last. The lighter
// work gives way to it; where even then the minutes or the week's straight-arm seconds
// have no room, the gate waits, and so does the step after it. The last set of the
// second day is an open one: held until two seconds are left, it shows who is ahead.
//
// Once a log is read, a gate week that was done without everything written counts
// as asked for, and one that was tried and not passed is repeated.

// gateFirst puts the gate of the step worked on before the next one: into the
// last build week on it, and where that is not enough into this week, which then
// stays there.
func (rt *route) gateFirst(stages []stage, now, next stage, week int) stage {
	switch {
	case now.rung == onTheFloor || rt.asked(stages, now.rung):
		return next
	case rt.past.unanswered && rt.body.Steps[now.rung].ID == rt.past.step:
		return stage{rung: now.rung}
	case rt.gateless:
		return next
	}
	if last := rt.buildBefore(week); last >= 0 && stages[last].rung == now.rung && rt.canShow(now.rung, last) {
		if stages[last].gate = true; rt.asked(stages, now.rung) {
			return next
		}
	}
	return stage{rung: now.rung, gate: rt.canShow(now.rung, week)}
}

// gateHere says that a week which stays on its step is a gate week: repeated, since
// the gate was tried and not passed, the goal's, or the block's last.
func (rt *route) gateHere(stages []stage, s stage, week int) bool {
	if s.rung == onTheFloor || rt.gateless || !rt.canShow(s.rung, week) {
		return false
	}
	if rt.past.repeat && rt.buildsBefore(week) == 0 {
		return true
	}
	last := s.rung == rt.hardestStep() && rt.beyondGate(s.rung, week)
	return (last || rt.closes(stages, s.rung, week)) && !rt.past.unanswered && !rt.asked(stages, s.rung)
}

// closes reports whether a week goes on with a step that was trained in the one before and
// is the block's last build week, or, where a week has one main day and the gate wants two,
// one of the last two; not where help came back.
func (sn *season) closes(stages []stage, rung, week int) bool {
	before, trained := sn.buildBefore(week), sn.body.Steps[rung].ID == sn.past.step
	if before >= 0 {
		trained = stages[before].rung == rung
	}
	after := 0
	for i := week + 1; i < len(sn.weeks); i++ {
		if sn.weeks[i].kind == program.WeekBuild {
			after += sn.mainDays(i)
		}
	}
	return trained && after < max(1, sn.body.Steps[rung].Gate.Sessions) && sn.buildsBefore(week) >= sn.past.stays()
}

// asked says that a step's gate is passed, or is asked for on as many days as it
// wants: in the weeks behind, and in those planned so far.
func (sn *season) asked(stages []stage, rung int) bool {
	r := &sn.body.Steps[rung]
	days := 0
	if sn.past.step == r.ID {
		days = sn.past.gateDays
	}
	for i, s := range stages {
		if s.gate && s.rung == rung {
			days += sn.mainDays(i)
		}
	}
	return r.Load <= sn.past.passed || days >= max(1, r.Gate.Sessions)
}

// mainDays is on how many days a week does its main work.
func (sn *season) mainDays(week int) int {
	n := 0
	for _, part := range sn.weeks[week].parts() {
		if part != partLight {
			n++
		}
	}
	return n
}

// canShow says that a gate's seconds are within the effort of a week. Sore elbows
// never come here: they keep to one step and one rig.
func (rt *route) canShow(rung, week int) bool {
	r := &rt.body.Steps[rung]
	back, _ := rt.returning(week)
	return rt.setFor(week) < 0 && rt.shownHere(rung, week) && rt.mainDays(week) > 0 && !back && !rt.comingBack(week) && held(rt.limits.mostEffortIn(week), rt.look.maxHold(r.Free(), week)) >= longestSet(r.Gate) && rt.hasRoom(rung, week)
}

// crowded is a gate week that had no room for its gate: the session's minutes were too
// few, or else the week's seconds.
type crowded struct {
	rung, week int
	minutes    bool
}

// hasRoom reports whether a gate has not been tried in a week in vain; minutes that are
// too few once are so in every week.
func (rt *route) hasRoom(rung, week int) bool {
	return !slices.ContainsFunc(rt.noRoom, func(c crowded) bool { return c.rung == rung && (c.minutes || c.week == week) })
}

// asksGate reports whether a week, if it is a gate week, has all sets of the gate on
// each main day.
func (ds *doses) asksGate(week int) bool {
	l := &ds.loads[week]
	for i, part := range ds.weeks[week].parts() {
		if l.main.gate && part != partLight && l.sets[i].main < allSets(l.main.rung.Gate) {
			return false
		}
	}
	return true
}

// shortOfGate reports whether a gate week came out with shorter sets than its gate's,
// since another plan asks for no longer ones on that day.
func shortOfGate(main *work, w *program.Week) bool {
	return main.gate && slices.ContainsFunc(w.Sessions, func(s program.Session) bool {
		return slices.ContainsFunc(s.Items, func(i program.Prescription) bool {
			return i.Role == program.RoleMain && i.Hold < main.rung.Gate.Hold
		})
	})
}

// opens reports whether a straight-arm day closes with an open set: the second main day
// of a gate week, of those who may test.
func (ds *doses) opens(week, day int) bool {
	mains := 0
	for _, part := range ds.weeks[week].parts()[:day+1] {
		if part != partLight {
			mains++
		}
	}
	return ds.limits.maxTests && ds.loads[week].main.gate && mains == 2 && ds.weeks[week].parts()[day] != partLight
}

// waits are notes of the gates that no week of the block had room for.
func (rt *route) waits(weeks []program.Week) []program.Note {
	var out []program.Note
	for rung := range rt.body.Steps {
		i := slices.IndexFunc(rt.noRoom, func(c crowded) bool { return c.rung == rung })
		r := &rt.body.Steps[rung]
		if i < 0 || slices.ContainsFunc(weeks, func(w program.Week) bool { return w.Gate && w.Step == r.ID }) {
			continue
		}
		code := noteGateSeconds
		if rt.noRoom[i].minutes {
			code = noteGateMinutes
		}
		out = append(out, note(code, step("step", r.ID), count("sets", r.Gate.Sets), seconds("hold", float64(r.Gate.Hold))))
	}
	return out
}

// longestSet is what the longest set of a gate lasts: the one after the others, where a
// gate asks for one.
func longestSet(g program.Gate) int { return max(g.Hold, g.Single) }

// allSets are all sets that a gate asks for on a day, a longer one among them.
func allSets(g program.Gate) int {
	if g.Single > 0 {
		return g.Sets + 1
	}
	return g.Sets
}

// buildBefore is the last build week to plan before another, −1 where there is none.
func (sn *season) buildBefore(week int) int {
	for i := week - 1; i >= sn.past.over(); i-- {
		if sn.weeks[i].kind == program.WeekBuild {
			return i
		}
	}
	return -1
}

// gateOnly is the one choice of a gate week: the gate.
func (rt *route) gateOnly(s stage, week int) (candidates, []work) {
	r := &rt.body.Steps[s.rung]
	w := rt.at(r, r.Aids()[0], week)
	w.hold, w.short, w.gate = r.Gate.Hold, false, true
	return candidates{step: s.rung, gate: true, choices: []choice{{hold: w.hold}}}, []work{w}
}
