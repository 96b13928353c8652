package planner

import (
	"cmp"
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/strength"
)

// notes say why the weeks ahead are what they are.
func (r *reading) notes() []program.Note {
	var notes []program.Note
	p := r.next
	b := &p.past
	if b.off > 0 {
		notes = append(notes, note(noteWeeksOff, count("weeks", b.off)))
	} else { // a session since: what the next week says
		notes = append(notes, p.back(b.over())...)
	}
	if b.repeat {
		notes = append(notes, note(noteRepeat, step("step", b.step)))
	}
	if b.moreHelp {
		notes = append(notes, note(noteHelpBack, step("step", b.step)))
	}
	if b.open {
		notes = append(notes, note(noteGateOpen, step("step", b.step)))
	}
	if b.rest.until >= r.on {
		notes = append(notes, p.restNotes()...)
	}
	if b.rest.until != 0 && p.stageBack(max(b.rest.from, b.rest.until+1)) != backNone {
		notes = append(notes, note(noteWayBack, date("from", b.rest.until+1)))
	}
	for _, b := range r.athlete.Bands {
		if b.Retired != 0 && hangs(r.wall[len(r.wall)-1].Weeks, b.Name, max(b.Retired, r.from)) {
			notes = append(notes, note(noteBandRetired, text("band", b.Name), date("from", b.Retired)))
		}
	}
	for _, key := range countedSore(&p.athlete.Health, &r.athlete.Health) {
		notes = append(notes, note(noteEased, word("joint", key)))
	}
	if n := len(b.fell); n > 0 {
		notes = append(notes, b.fell[n-1].notes()...)
	}
	return notes
}

// hangs reports whether some card of weeks from a day on names a band.
func hangs(weeks []program.Week, band string, from program.Date) bool {
	return slices.ContainsFunc(weeks, func(w program.Week) bool {
		return slices.ContainsFunc(w.Sessions, func(s program.Session) bool {
			return s.Date >= from && slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return slices.Contains(i.Rig.Bands, band) })
		})
	})
}

// review fills in what was done and learned.
func (r *reading) review(out *program.Review, gates []program.GateRead, pains []program.Flag) {
	r.done(out)
	out.Pace = r.pace()
	out.Doubted, out.Unread = r.est.doubted, r.est.unread
	out.Offsets = r.body.Known(r.est.state)
	out.Moves = most(r.est.moves[min(r.since, len(r.est.moves)):])
	out.Gates, out.Asks = gates, r.asks(gates)
	out.Flags = r.flags(pains, gates, out.Asks, out.Ended)
	then, wall := r.believedAt(r.then), &r.wall[len(r.wall)-1]
	if out.Before, out.ForecastBefore = then.capacity(), wall.Forecasts; !r.foretells(wall) {
		out.ForecastBefore = then.forecasts()
	}
	out.GoalBefore = r.goalOf(out.ForecastBefore)
}

// done fills in how far the plan on the wall has come, and what was done of it.
func (r *reading) done(out *program.Review) {
	wall := &r.wall[len(r.wall)-1]
	out.Version, out.Weeks = wall.Version, len(wall.Weeks)
	for i := range wall.Weeks {
		if wall.Weeks[i].Start <= r.on {
			out.Week = i + 1
		}
	}
	out.Ended = len(wall.Weeks) > 0 && r.from > wall.Weeks[len(wall.Weeks)-1].Start
	out.Sessions, out.Done, out.Missed = r.sessions()
	out.Last, out.Progress = r.last(), r.progress
}

// movesShown is how many sets a review names.
const movesShown = 8

// most are the moves that went furthest.
func most(moves []move) []program.Move {
	moves = slices.Clone(moves)
	slices.SortStableFunc(moves, func(a, b move) int { return cmp.Compare(math.Abs(b.moved), math.Abs(a.moved)) })
	var out []program.Move
	for _, m := range moves[:min(len(moves), movesShown)] {
		out = append(out, program.Move{Set: m.set.SetRead, Moved: m.moved})
	}
	return out
}

// believedAt is the plan as of a moment, with the weeks that hung on the wall for the
// time after it.
func (r *reading) believedAt(m moment) *holds {
	p := &holds{season: season{measures: r.measures}}
	p.past = past{state: m.state, career: m.career, lost: m.lost, off: m.off, tested: r.est.tested, shown: r.shown()}
	if m.at < r.from {
		p.past.shown = nil
	}
	p.weeks, p.behind = nil, r.wall[len(r.wall)-1].Weeks
	var counted []int
	for _, w := range r.wall[len(r.wall)-1].Weeks {
		p.weeks = append(p.weeks, recalled(&w))
		if w.Start < m.at {
			p.past.weeks = append(p.past.weeks, w)
			continue
		}
		counted = append(counted, w.HalfSeconds)
	}
	if p.past.over() == len(p.weeks) {
		p.past.weeks, p.weeks = nil, []week{{start: m.at, kind: program.WeekTest, straight: make([]program.Date, 3)}}
	}
	p.look = outlook{state: m.state, path: strength.NewPath(m.state, p.schedule(p.weeks, counted))}
	return p
}

// goalOf is what forecasts say of the goal.
func (c *client) goalOf(forecasts []program.Forecast) program.GoalForecast {
	last, goal := forecasts[len(forecasts)-1], &c.athlete.Goal
	return program.GoalForecast{Step: goal.Step, Hold: int(goal.Hold + 0.5), By: goal.By, Chance: last.Chance, Met: last.Held}
}

// foretells reports whether a plan was kept with what it said of the goal's step.
func (r *reading) foretells(wall *program.PlanVersion) bool {
	n := len(wall.Forecasts)
	return n > 0 && wall.Forecasts[n-1].Step == r.athlete.Goal.Step
}

// changesTo are those of new weeks against the plan on the wall.
func (r *reading) changesTo(weeks []program.Week) []program.Change {
	return changes(r.wall[len(r.wall)-1].Weeks, weeks, r.nextCard())
}

// finish adds what the new plan changes.
func (r *reading) finish(out *program.Review, p *program.Program) {
	out.Withheld, out.Notes, out.Wishes = p.Withheld, nil, p.Wishes
	if len(p.Withheld) == 0 && p.From != 0 {
		out.Notes = r.notes()
		out.Changes = r.changesTo(p.Weeks)
	}
	if len(p.Withheld) == 0 { // what the plan prints, the review says
		out.After, out.ForecastAfter, out.GoalAfter = p.Capacity, p.Forecasts, p.Goal
	} else {
		now := r.believedAt(r.moment(r.from))
		out.After, out.ForecastAfter = now.capacity(), now.forecasts()
		out.GoalAfter = now.goalOf(out.ForecastAfter)
	}
	out.NextTest = r.nextTest(p.Weeks, func(i program.Prescription) bool { return i.Max || i.Check })
}

// nextTest is the first day from the review on that has a test; 0 where none has.
func (r *reading) nextTest(weeks []program.Week, test func(program.Prescription) bool) program.Date {
	for _, w := range weeks {
		for _, s := range w.Sessions {
			if s.Date >= r.on && slices.ContainsFunc(s.Items, test) {
				return s.Date
			}
		}
	}
	return 0
}
