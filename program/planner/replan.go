package planner

import (
	"slices"

	"gatepost/program"
)

// Read lays a client's log beside the plans that hung on the wall and plans the
// weeks ahead anew. Versions are those plans, the oldest first; without any, the
// plan made from the assessment hung there (First). On is the day of the review.
//
//   - Weeks that are over stay as they were printed; one in which nothing was
//     done has become a week away. A week begun stays as it hangs. The weeks
//     ahead are planned from the new estimate, under every promise of Plan and
//     with its reserve, with what was done (and not what was printed) as the work
//     behind.
//   - Sessions missed in a week that was otherwise trained are dropped, and
//     nothing is made up; where half the sessions were done the week may be printed
//     again as it was, and only what was done lets it rise. A session done on
//     another day of its week counts as that day's. A week with nothing done moves
//     the work back: the weeks ahead go on from the estimate as it is, and the
//     rhythm of deloads starts anew.
//     After two such weeks straight-arm work restarts at seven tenths.
//   - Days ill cost two per cent a week, other weeks off one (see strength); what
//     was lost comes back at one per cent a week.
//   - A gate that was tried and not passed repeats the week, twice at most; then
//     one step of help comes back for two weeks, and the gate has its week again
//     later. A gate that is passed, or signed by the coach, opens the next step as
//     soon as some rig keeps it trainable; one that nobody was asked for gets its gate
//     week first, and one that lacks only words is asked for again.
//   - Pain of five or more, or a morning that stops straight-arm work, takes that work
//     off the cards of the next three days, also in the week that has begun; then it
//     comes back session by session, each after quiet mornings (wayback.go).
//   - After two weeks off, or one in bed, work comes back over the step before, from
//     seven tenths of the sets (comeback.go); what hangs of a week that has begun meanwhile
//     is light. So is a card whose hold nobody reached for two weeks (wayback.go).
//   - The coming week's straight-arm work stays as it hangs while it serves (calm.go).
//   - A rig stays two build weeks at least, and help does not rise, while ten
//     seconds with it are no more than three quarters of the predicted maximum.
//   - A joint with pain of three or more in two weeks, or rising over two weeks,
//     counts as sore; so does one that was three above its usual on a morning of the
//     last week, or above it on two mornings running.
//   - Bands, joints, days and the goal are those of the assessment as it is now.
//     One measured anew begins a new block, as does the end of the old one; the
//     work behind still bounds the work ahead.
//
// A client without a session in the log gets the plan of Plan, to the byte, unless
// a morning says that a joint is sore.
//
// Passed are the steps whose gates the coach signs with this review, whatever the
// log says of them; those that earlier versions keep are read with them.
func Read(lib *program.Library, a *program.Assessment, versions []program.PlanVersion, on program.Date, passed ...string) (program.Review, program.Program, program.Problems) {
	out, m, problems := begin(lib, a)
	review := program.Review{Client: out.Client, On: on}
	if m == nil {
		review.Withheld = out.Withheld
		return review, out, problems
	}
	kept := byVersion(versions)
	if m.road.Load == program.LoadBalance {
		m.readPractice(&review, &out, kept, passed)
		return review, out, problems
	}
	var first program.Program
	if len(kept) == 0 || nothingDone(&a.Log) {
		first, _ = Plan(lib, a)
	}
	wall := kept
	if len(kept) == 0 {
		if review.Withheld = first.Withheld; len(first.Weeks) == 0 {
			return review, first, problems
		}
		hung := first
		if retiredSince(a) {
			hung, _ = First(lib, a)
		}
		wall = []program.PlanVersion{Version(&hung, 1, min(a.Measured, out.Start))}
	}
	r := newReading(m, wall, on)
	r.sign(wall, on, passed)
	gates := r.gatesRead()
	pains, eased := r.painFlags()
	r.review(&review, gates, pains)
	if nothingDone(&a.Log) && r.restAfter().until == 0 {
		out = first
	} else {
		r.replan(&out, &eased, gates)
	}
	r.finish(&review, &out)
	review.PrintNow = out.ToPrint(review.Changes, kept, review.Version)
	return review, out, problems
}

// Replan is the plan that Read makes.
func Replan(lib *program.Library, a *program.Assessment, versions []program.PlanVersion, on program.Date) program.Program {
	_, p, _ := Read(lib, a, versions, on)
	return p
}

// First is the plan that hung on the wall first: that of the assessment, made while the
// bands were whole that were retired since.
func First(lib *program.Library, a *program.Assessment) (program.Program, program.Problems) {
	whole := *a
	whole.Bands = slices.Clone(a.Bands)
	for i := range whole.Bands {
		if b := &whole.Bands[i]; b.Retired > a.Measured {
			b.Retired = 0
		}
	}
	return Plan(lib, &whole)
}

func retiredSince(a *program.Assessment) bool {
	return slices.ContainsFunc(a.Bands, func(b program.Band) bool { return b.Retired > a.Measured })
}

// replan plans the weeks ahead for joints as the log has them.
func (r *reading) replan(out *program.Program, eased *program.Assessment, gates []program.GateRead) {
	m := r.measures.nowAs(eased, r.block)
	out.Start = r.block
	p := newPlan(&m, r.behind(gates), r.block)
	if len(p.weeks) == 0 { // the block is over: the next begins
		out.Start, m = r.from, r.measures.nowAs(eased, r.from)
		p = newPlan(&m, nextBlock(p.past), r.from)
	}
	if len(p.weeks) == 0 {
		withhold(out, eased, note(noteAlwaysAway))
		return
	}
	r.next, p.compared = p, r.without != news{}
	p.onWall = r.wall[len(r.wall)-1].Weeks
	p.gentlerThan = r.otherPlans(p)
	p.fill(out, r.notes())
	r.number(out, p)
}

// number gives a plan made anew the version it has on the wall, or the next where
// something changed.
func (r *reading) number(out *program.Program, p *plan) {
	out.From, out.Version = p.now(), r.wall[len(r.wall)-1].Version
	if r.signedNow > 0 || len(r.changesTo(out.Weeks)) > 0 {
		out.Version++
	}
}

// behind is what the weeks that are over leave to the plan.
func (r *reading) behind(gates []program.GateRead) past {
	e := r.est
	b := past{on: r.on, before: r.earlier, state: e.state, career: e.career, lost: e.lost, off: e.off, tested: e.tested}
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
		b.counted, b.fell = append(b.counted, r.countedIn(i, w)), append(b.fell, w.fell())
		if kind == program.WeekBuild && (!week.ByCoach || b.last.main.none()) { // else it goes on from the last week of its own
			last := r.loadOf(&week)
			if b.rigged++; last.main.rung == nil || !b.hangs(last.main.rung, last.main.aid) {
				b.rigged = 1
			}
			b.lastOf = week.Number
			b.last, b.sets, b.step = last, total(last.sets), week.Step
			if week.Scale > 0 {
				b.step = ""
			}
		}
	}
	b.rest, b.short = r.restAfter(), r.tooLong()
	b.reached = r.reached()
	b.marks, b.finds = r.marks(), r.findsAhead()
	for _, w := range b.weeks {
		for _, day := range recalled(&w).straight {
			if b.rest.until != 0 && day >= b.rest.from {
				b.rest.begun = append(b.rest.begun, day)
			}
		}
	}
	r.gatesBehind(&b, gates)
	b.shown = r.shown()
	return b
}

// countedIn is a week's counted work: done, and still to do where it has only
// begun, and never more than was printed, so that a zealous week buys nothing.
//
// Sessions missed, up to half of the week's, count as well, but for no more than ten
// elevenths of what was printed in all: the week may be printed again, and does not
// rise. Else every missed session would shrink the weeks after it, and those who
// miss one in five came down to a third of their work within a year (simulated).
func (r *reading) countedIn(i int, w *weekPrinted) int {
	done, missed := r.progress[i].HalfSeconds, 0
	sessions, gone := 0, 0
	for j := range w.Sessions {
		s := &w.Sessions[j]
		n := countedOf(s)
		if n == 0 {
			continue
		}
		sessions++
		switch {
		case s.Date > r.on:
			done += n
		case !w.did(s):
			missed, gone = missed+n, gone+1
		}
	}
	if 2*gone <= sessions {
		done = max(done, min(done+missed, (10*w.HalfSeconds+10)/11))
	}
	return min(done, w.HalfSeconds)
}

// countedOf is a session's counted work, half seconds.
func countedOf(s *program.Session) int {
	sum := 0
	for _, item := range s.Items {
		sum += counted(item)
	}
	return sum
}

// did says that a day of the log did a printed session.
func (w *weekPrinted) did(s *program.Session) bool {
	return slices.ContainsFunc(w.days, func(d *dayRead) bool { return d.printed == s })
}

// stanceOf draws a printed week's main work again.
func (c *client) stanceOf(w *program.Week) program.Stance {
	for _, s := range w.Sessions {
		for i := range s.Items {
			if isMain(&s.Items[i]) {
				return c.figure(c.workOf(&s.Items[i]))
			}
		}
	}
	return program.Stance{}
}

// gatesBehind is what the gates ask of the weeks ahead.
func (r *reading) gatesBehind(b *past, gates []program.GateRead) {
	if open := r.leftOpen(b, gates); open != "" {
		b.step, b.open = open, true
	}
	for _, s := range r.signed {
		b.passed = max(b.passed, r.loadOfStep(s.step))
	}
	for _, g := range gates {
		if g.State == program.GatePassed {
			b.passed = max(b.passed, r.loadOfStep(g.Step))
		}
		if g.Step != b.step {
			continue
		}
		if g.State == program.GateNotYet {
			b.repeat, b.moreHelp = g.Tries <= repeats, g.Tries > repeats
		} else {
			b.gateDays, b.unanswered = countingDays(&g), r.gateWeeks(g.Step) >= gateWeeksAsked
		}
	}
}

// leftOpen is the step that the client left for the one worked on now, a week or two
// ago, although its gate was asked for and is not passed; empty where there is none.
// Nobody moves on without the gate.
func (r *reading) leftOpen(b *past, gates []program.GateRead) string {
	since, asked := 0, ""
	for i := len(b.weeks) - 1; i >= 0 && asked == ""; i-- {
		switch w := &b.weeks[i]; {
		case w.Kind != program.WeekBuild:
		case w.Step == b.step:
			since++
		case w.Gate && r.rungBelow(w.Step) < r.rungBelow(b.step):
			asked = w.Step
		default:
			return ""
		}
	}
	for _, g := range gates {
		if g.Step == asked && g.State != program.GatePassed && since <= openWeeks {
			return asked
		}
	}
	return ""
}

// loadOfStep is what a step of the road map weighs for this body, N·m; 0 where it
// has none of that name.
func (c *client) loadOfStep(id string) float64 {
	for i := range c.body.All {
		if c.body.All[i].ID == id {
			return c.body.All[i].Load
		}
	}
	return 0
}

// gateWeeks are those of a step that were done.
func (r *reading) gateWeeks(step string) int {
	n := 0
	for _, w := range r.weeks {
		if w.Gate && w.Step == step && len(w.days) > 0 {
			n++
		}
	}
	return n
}

// countingDays is on how many days a gate was shown.
func countingDays(g *program.GateRead) int {
	n := 0
	for _, d := range g.Days {
		if d.Counts {
			n++
		}
	}
	return n
}

// shown are the free holds of the goal's seconds in the log that are written as clean:
// what nobody saw is not shown.
func (di *diary) shown() []shown {
	var out []shown
	for _, d := range di.days {
		for i := range d.sets {
			s := &d.sets[i]
			if s.Step == "" || !s.Rig.Free() || s.Done.Clean != program.CleanYes || s.Done.Seconds < di.athlete.Goal.Hold || s.item != nil && s.item.Scale > 0 {
				continue
			}
			for j := range di.body.All {
				if g := &di.body.All[j]; g.ID == s.Step {
					out = append(out, shown{g.Load, d.date})
				}
			}
		}
	}
	return out
}

// nextBlock begins a block after the one on the wall: the same strength, all
// weeks so far as work behind.
func nextBlock(b past) past {
	for i := range b.weeks {
		w := &b.weeks[i]
		b.before = append(b.before, weekDoneOf(w, w.Kind, b.counted[i]))
	}
	b.weeks, b.counted, b.last, b.lastOf, b.repeat, b.moreHelp = nil, nil, load{}, 0, false, false
	return b
}
