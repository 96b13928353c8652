package planner

import (
	"cmp"
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/strength"
)

// # Reading back
//
// Read lays a client's log beside the plans that hung on the wall and plans the
// weeks ahead anew. Versions are those plans, the oldest first; without any, the
// plan made from the assessment hung there. On is the day of the review.
//
//   - Weeks that are over stay as they were printed; one in which nothing was
//     done has become a week away. A week begun stays as it hangs. The weeks
//     ahead are planned on the median of the new estimate, under every promise of
//     Plan, with what was done (and not what was printed) as the work behind.
//   - Sessions missed in a week that was otherwise trained are dropped, and
//     nothing is made up. A session done on another day of its week counts as
//     that day's. A week with nothing done moves the work back: the weeks ahead
//     go on from the estimate as it is, and the rhythm of deloads starts anew.
//     After two such weeks straight-arm work restarts at seven tenths.
//   - Days ill cost two per cent a week, other weeks off one (see strength); what
//     was lost comes back at one per cent a week.
//   - A gate that was tried and not passed repeats the week, twice at most; then
//     one step of help comes back for two weeks. A gate that is passed opens the
//     next step as soon as some rig keeps it trainable.
//   - A joint with pain of three or more in two weeks, or rising over two weeks,
//     counts as sore.
//   - Bands, joints, days and the goal are those of the assessment as it is now.
//     One measured anew begins a new block, as does the end of the old one; the
//     work behind still bounds the work ahead.
//
// A client without a log gets the plan of Plan, to the byte.
func Read(lib *program.Library, a *program.Assessment, versions []program.PlanVersion, on program.Date) (program.Review, program.Program, program.Problems) {
	out, p, problems := begin(lib, a)
	review := program.Review{Client: out.Client, On: on}
	if p == nil {
		review.Withheld = out.Withheld
		return review, out, problems
	}
	versions = slices.Clone(versions)
	slices.SortStableFunc(versions, func(x, y program.PlanVersion) int { return cmp.Compare(x.Version, y.Version) })
	var first program.Program
	if len(versions) == 0 || len(a.Log.Entries) == 0 {
		first, _ = Plan(lib, a)
	}
	if len(versions) == 0 {
		if review.Withheld = first.Withheld; len(first.Weeks) == 0 {
			return review, first, problems
		}
		versions = []program.PlanVersion{Version(&first, 1, min(a.Measured, out.Start))}
	}
	r := newReading(p, versions, on)
	gates := r.gatesRead()
	pains, eased := r.painFlags()
	r.review(&review, gates, pains)
	if len(a.Log.Entries) == 0 {
		out = first
	} else {
		r.replan(&out, &eased, gates)
	}
	r.finish(&review, &out)
	return review, out, problems
}

// Review is what Read learns.
func Review(lib *program.Library, a *program.Assessment, versions []program.PlanVersion, on program.Date) program.Review {
	review, _, _ := Read(lib, a, versions, on)
	return review
}

// Replan is the plan that Read makes.
func Replan(lib *program.Library, a *program.Assessment, versions []program.PlanVersion, on program.Date) program.Program {
	_, p, _ := Read(lib, a, versions, on)
	return p
}

// replan plans the weeks ahead.
func (r *reading) replan(out *program.Program, eased *program.Assessment, gates []program.GateRead) {
	r.athlete = eased
	start := r.block
	r.limits = newLimits(eased, start)
	r.plan.past = r.behind(gates)
	r.plan.weeks = r.calendar(start)
	if len(r.plan.weeks) == 0 { // the block is over: the next begins
		start = r.from
		r.limits = newLimits(eased, start)
		r.plan.past = r.nextBlock()
		r.plan.weeks = r.calendar(start)
	}
	out.Start = start
	if len(r.plan.weeks) == 0 {
		out.Withheld = []program.Note{note(noteAlwaysAway)}
		return
	}
	if len(r.days) == 0 && len(r.weeks) == 0 { // nothing to read yet
		r.plan.past.read = false
	}
	r.fill(out, r.notes())
	out.From, out.Version = r.now(), r.wall[len(r.wall)-1].Version
	if len(changes(r.wall[len(r.wall)-1].Weeks, out.Weeks, out.From)) > 0 {
		out.Version++
	}
}

// behind is what the weeks that are over leave to the plan.
func (r *reading) behind(gates []program.GateRead) past {
	e := r.est
	b := past{before: r.earlier, state: e.state, career: e.career, lost: e.lost, off: e.off, read: true, tested: e.tested}
	for i, w := range r.weeks {
		if w.start < r.block || w.Number == 0 {
			continue
		}
		week, kind := *w.Week, r.kindDone(w)
		if kind == program.WeekAway && week.Kind != program.WeekAway {
			week.Kind, week.HalfSeconds = program.WeekAway, 0
			week.Sessions, week.Notes = nil, []program.Note{note(noteWeekMissed)}
		}
		week.Number = len(b.weeks) + 1
		week.Stance = r.stanceOf(&week)
		b.weeks = append(b.weeks, week)
		b.counted = append(b.counted, r.countedIn(i, w))
		if kind == program.WeekBuild {
			b.last, b.step = r.loadOf(&week), week.Step
			if week.Scale > 0 {
				b.step = ""
			}
		}
	}
	r.gatesBehind(&b, gates)
	b.shown = r.shown()
	return b
}

// countedIn is a week's counted work: done, and still to do where it has only
// begun, and never more than was printed, so that a zealous week buys nothing.
func (r *reading) countedIn(i int, w *weekPrinted) int {
	done := r.progress[i].HalfSeconds
	for j := range w.Sessions {
		if s := &w.Sessions[j]; s.Date > r.on {
			for _, item := range s.Items {
				done += counted(item)
			}
		}
	}
	return min(done, w.HalfSeconds)
}

// stanceOf draws a printed week's main work again.
func (p *plan) stanceOf(w *program.Week) program.Stance {
	for _, s := range w.Sessions {
		for i := range s.Items {
			if isMain(&s.Items[i]) {
				return p.body.figure(p.workOf(&s.Items[i]))
			}
		}
	}
	return program.Stance{}
}

// gatesBehind is what the gates ask of the weeks ahead.
func (r *reading) gatesBehind(b *past, gates []program.GateRead) {
	for _, g := range gates {
		if g.State == program.GatePassed {
			for i := range r.body.ladder {
				if r.body.ladder[i].ID == g.Step {
					b.passed = max(b.passed, r.body.ladder[i].load)
				}
			}
		}
		if g.Step == b.step && g.State == program.GateNotYet {
			b.repeat, b.moreHelp = g.Tries <= repeats, g.Tries > repeats
		}
	}
}

// shown are the free clean holds of the goal's seconds in the log.
func (r *reading) shown() []shown {
	var out []shown
	for _, d := range r.days {
		for i := range d.sets {
			s := &d.sets[i]
			if s.Step == "" || !s.Rig.Free() || s.Done.Clean == program.CleanNo || s.Done.Seconds < r.athlete.Goal.Hold || s.item != nil && s.item.Scale > 0 {
				continue
			}
			for j := range r.body.all {
				if g := &r.body.all[j]; g.ID == s.Step {
					out = append(out, shown{g.load, d.date})
				}
			}
		}
	}
	return out
}

// nextBlock begins a block after the one on the wall: the same strength, all
// weeks so far as work behind.
func (r *reading) nextBlock() past {
	b := r.plan.past
	for i, w := range b.weeks {
		b.before = append(b.before, weekDone{w.Kind, b.counted[i]})
	}
	b.weeks, b.counted, b.last, b.repeat, b.moreHelp = nil, nil, load{}, false, false
	return b
}

// notes say why the weeks ahead are what they are.
func (r *reading) notes() []program.Note {
	var notes []program.Note
	b := &r.plan.past
	if b.off > 0 {
		notes = append(notes, note(noteWeeksOff, count("weeks", b.off)))
	}
	if b.repeat {
		notes = append(notes, note(noteRepeat, step("step", b.step)))
	}
	if b.moreHelp {
		notes = append(notes, note(noteHelpBack, step("step", b.step)))
	}
	for _, j := range joints {
		if *j.state(&r.athlete.Health) != *j.state(&r.asked.Health) {
			notes = append(notes, note(noteEased, word("joint", j.key)))
		}
	}
	return notes
}

// review fills in what was done and learned.
func (r *reading) review(out *program.Review, gates []program.GateRead, pains []program.Flag) {
	wall := &r.wall[len(r.wall)-1]
	out.Version, out.Weeks = wall.Version, len(wall.Weeks)
	for i := range wall.Weeks {
		if wall.Weeks[i].Start <= r.on {
			out.Week = i + 1
		}
	}
	out.Ended = len(wall.Weeks) > 0 && r.from > wall.Weeks[len(wall.Weeks)-1].Start
	out.Sessions, out.Done, out.Missed = r.sessions()
	out.Last, out.Progress, out.Pace = r.last(), r.progress, r.pace()
	out.Doubted, out.Unread = r.est.doubted, r.est.unread
	out.Moves = most(r.est.moves[min(r.since, len(r.est.moves)):])
	out.Gates, out.Flags = gates, r.flags(pains, gates, out.Ended)
	out.Before, out.ForecastBefore, out.GoalBefore = r.outlookAt(r.then)
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

// outlookAt is the estimate and its forecasts at a moment, with the weeks that
// hung on the wall for the time after it.
func (r *reading) outlookAt(m moment) (program.Capacity, []program.Forecast, program.GoalForecast) {
	p := *r.plan
	p.past = past{state: m.state, career: m.career, lost: m.lost, off: m.off, tested: r.est.tested, shown: r.shown()}
	if m.at < r.from {
		p.past.shown = nil
	}
	p.weeks = nil
	for i := range r.wall[len(r.wall)-1].Weeks {
		if w := &r.wall[len(r.wall)-1].Weeks[i]; w.Start >= m.at {
			p.weeks = append(p.weeks, recalled(w))
		}
	}
	if len(p.weeks) == 0 {
		p.weeks = []week{{start: m.at, kind: program.WeekTest, straight: make([]program.Date, 3)}}
	}
	p.look = outlook{state: m.state, path: strength.NewPath(m.state, p.schedule())}
	forecasts := p.forecasts()
	goal := program.GoalForecast{Step: p.athlete.Goal.Step, Hold: int(p.athlete.Goal.Hold + 0.5), By: p.athlete.Goal.By}
	last := &forecasts[len(forecasts)-1]
	goal.Chance, goal.Met = last.Chance, last.Held
	return p.capacity(), forecasts, goal
}

// finish adds what the new plan changes.
func (r *reading) finish(out *program.Review, p *program.Program) {
	out.Withheld, out.Notes = p.Withheld, nil
	wall := &r.wall[len(r.wall)-1]
	if len(p.Withheld) == 0 && p.From != 0 {
		out.Notes = r.notes()
		out.Changes = changes(wall.Weeks, p.Weeks, p.From)
		out.After, out.ForecastAfter, out.GoalAfter = p.Capacity, p.Forecasts, p.Goal
	} else {
		out.After, out.ForecastAfter, out.GoalAfter = r.outlookAt(r.moment(r.from))
	}
	for _, w := range p.Weeks {
		for _, s := range w.Sessions {
			test := slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return i.Max || i.Check })
			if test && s.Date >= r.on && out.NextTest == 0 {
				out.NextTest = s.Date
			}
		}
	}
}
