package planner

import (
	"slices"

	"gatepost/program"
)

// generalNotes say what shaped the whole program.
func (p *plan) generalNotes(out *program.Program) []program.Note {
	var notes []program.Note
	add := func(when bool, code string, values ...program.Value) {
		if when {
			notes = append(notes, note(code, values...))
		}
	}
	goal, end := out.Goal, p.weeks[len(p.weeks)-1].start+6
	l, h := p.limits, p.athlete.Health
	add(goal.Met, noteGoalMet, step("step", goal.Step), seconds("hold", float64(goal.Hold)))
	add(goal.By < out.Start, noteGoalBefore, date("by", goal.By), date("start", out.Start))
	add(goal.By > end && !goal.Met, noteGoalFar, date("by", goal.By), date("end", end))
	add(goalAhead(out, end), noteGoalAhead, step("step", goal.Step))
	add(p.practised == nil && goal.Chance < unlikely && !goal.Met, noteGoalUnlikely, step("step", goal.Step), date("by", goal.By))
	add(goal.By >= out.Start && len(p.weeks) < p.wished(), noteBlockShort, count("weeks", len(p.weeks)))
	add(!l.hands, noteNoHands)
	add(l.hands && l.neutralOnly, noteNeutral)
	add(l.elbowSore, noteElbows)
	add(sore(h.Shoulders), noteShoulders)
	add(l.age < youthAge, noteYouth)
	add(l.older, noteOlder)
	add(l.returning, noteReturning)
	add(out.Rungs, noteRungs)
	add(out.Capacity.Typical && !out.Capacity.Untested && len(p.open) == 0, noteTypical)
	if most, little := p.littleWork(out.Weeks); little && len(p.open) == 0 && p.practised == nil {
		add(true, noteNoGain, seconds("counted", most))
	}
	deeper := p.road.Load == program.LoadLift && len(out.Cues) > 0 // would save something; in a forecast strength alone grows
	add(deeper && p.athlete.Athlete.Fold > 0 && len(p.open) == 0 && !goal.Met, noteFoldStands, count("fold", degrees(p.athlete.Athlete.Fold)))
	add(len(p.weeks) > 1 && p.provisional(len(p.weeks)-1), noteProvisional)
	for _, id := range p.body.Alike {
		add(true, noteStepDropped, step("step", id))
	}
	notes = slices.Concat(p.entryNotes(), notes, p.waits(out.Weeks), p.mends(), p.exercises.wouldOpen())
	return append(notes, p.bandNotes(out)...)
}

// goalAhead reports whether the goal's likely date is in the block, and work on it only
// behind it: dates reckon with strength, and the plan with gates as well.
func goalAhead(out *program.Program, end program.Date) bool {
	if len(out.Outline) == 0 || len(out.Forecasts) == 0 {
		return false
	}
	goal, stage := out.Forecasts[len(out.Forecasts)-1], out.Outline[len(out.Outline)-1]
	return !goal.Held && goal.Likely != 0 && goal.Likely <= end && stage.Step == goal.Step && stage.From > end
}

func (c *client) wished() int {
	if n := c.athlete.Training.Weeks; n != 0 {
		return n
	}
	return defaultWeeks
}

// slant is the angle off the vertical from which a band's sideways part is
// worth a word: 10 degrees.
const slant = 10 * 3.141592653589793 / 180

// bandNotes warn of rigs that the block uses beyond what was measured, or that
// pull sideways.
func (ds *doses) bandNotes(out *program.Program) []program.Note {
	var beyond, slanted bool
	for i := range out.Weeks {
		if w := ds.loads[i].main; !w.none() && !w.aid.Rig.Free() {
			beyond = beyond || w.aid.Hold.BeyondMeasured
			slanted = slanted || w.aid.Hold.BandAngle > slant && ds.road.Hands != program.HandsHang // there it leads to the bar
		}
	}
	var notes []program.Note
	if beyond {
		notes = append(notes, note(noteBandBeyond))
	}
	if slanted {
		notes = append(notes, note(noteBandSlant))
	}
	return notes
}
