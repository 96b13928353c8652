package planner

import (
	"slices"

	"gatepost/program"
)

// readPractice lays the log of a skill of balance beside the plans that hung on the wall, and
// plans the weeks ahead: on the next step where the gate was shown, on the one below where hardly a
// try reached in two weeks, else on the same. No belief is kept; joints, weeks off and the
// cards that change are looked at as for any other skill.
func (m *measures) readPractice(review *program.Review, out *program.Program, kept []program.PlanVersion, passed []string) {
	first := *out
	wall := kept
	if len(kept) == 0 || nothingDone(&m.athlete.Log) {
		anew := *m
		anew.practise(&first)
	}
	if len(kept) == 0 {
		if review.Withheld = first.Withheld; len(first.Weeks) == 0 {
			*out = first
			return
		}
		wall = []program.PlanVersion{Version(&first, 1, min(m.athlete.Measured, out.Start))}
	}
	r := besideWall(m, wall, review.On)
	r.sign(wall, r.on, passed)
	r.practisedWeeks()
	way := r.wayOf()
	pains, eased := r.painFlags()
	r.practiceReview(review, &way, pains)
	if nothingDone(&m.athlete.Log) && r.restAfter().until == 0 {
		*out = first
	} else {
		r.practiceAhead(out, &way, &eased)
	}
	r.practiceFinish(review, out, &way)
	review.PrintNow = out.ToPrint(review.Changes, kept, review.Version)
}

// practisedWeeks matches the weeks up to the first one ahead with what was done.
func (r *reading) practisedWeeks() {
	for monday := min(blockStart(r.athlete), r.block); monday < r.from; monday += 7 {
		w := &weekPrinted{start: monday, Week: wallWeek(r.wall, monday)}
		for _, d := range r.days {
			if d.date >= monday && d.date < monday+7 {
				w.days = append(w.days, d)
			}
		}
		w.match()
		read := program.WeekRead{Start: monday, Number: w.Number, Kind: w.Kind, HoldPrinted: w.Hold, Pain: noPain, Mornings: r.worstMornings(monday)}
		r.tally(w, &read)
		read.Tries, read.HoldDone = r.triedIn(w)
		r.weeks, r.progress = append(r.weeks, w), append(r.progress, read)
	}
}

// triedIn are the tries of a week's best day at its step, and the longest of the week, s.
func (r *reading) triedIn(w *weekPrinted) (tries program.Tries, longest float64) {
	for i := range r.body.Steps {
		s := r.body.Steps[i].Step
		if s.ID != w.Step {
			continue
		}
		tries = bestDay(w.days, s).Tries
		for _, d := range w.days {
			t, _ := daysTries(d, s)
			longest = max(longest, t.best)
		}
	}
	return tries, longest
}

// practiceReview fills in what was done and shown.
func (r *reading) practiceReview(out *program.Review, way *way, pains []program.Flag) {
	r.done(out)
	last := len(r.body.Steps) - 1
	for i := range r.body.Steps {
		worked := slices.ContainsFunc(r.weeks, func(w *weekPrinted) bool { return w.start >= r.block && w.Step == r.body.Steps[i].ID })
		if worked || i == way.at || i == last || way.shown[i] != 0 {
			out.Gates = append(out.Gates, r.triesGate(i, way))
		}
	}
	flags := append(slices.Clone(pains), r.wayFlags(way, out.Gates)...)
	if out.Ended {
		flags = append(flags, program.Flag{Level: program.FlagAct, Note: note(flagBlockOver)})
	}
	flags = append(flags, r.attendanceFlags()...)
	slices.SortStableFunc(flags, func(a, b program.Flag) int { return int(b.Level - a.Level) })
	out.Flags = flags
}

// wayFlags say which gates were shown lately, and whether the step below comes back.
func (r *reading) wayFlags(way *way, gates []program.GateRead) []program.Flag {
	var flags []program.Flag
	act := func(n program.Note) { flags = append(flags, program.Flag{Level: program.FlagAct, Note: n}) }
	for _, g := range gates {
		switch {
		case g.State != program.GatePassed || g.On <= r.on-lately:
		case g.Step == r.athlete.Goal.Step:
			act(note(flagGoalShown, step("step", g.Step), seconds("hold", float64(g.Hold)), date("on", g.On)))
		default:
			act(note(flagGatePassed, step("step", g.Step), date("on", g.On)))
		}
	}
	if way.fallen >= 0 && way.fellOn > r.on-lately && way.at == way.fallen-1 {
		act(note(flagPracticeBack, step("step", r.body.Steps[way.fallen].ID), step("below", r.body.Steps[way.at].ID)))
	}
	return flags
}

// practiceAhead plans the weeks ahead for joints as the log has them.
func (r *reading) practiceAhead(out *program.Program, way *way, eased *program.Assessment) {
	m := r.measures.nowAs(eased, r.block)
	wall := r.wall[len(r.wall)-1].Weeks
	out.Start = r.block
	p := m.newPractice(r.practiceBehind(), r.block, wall)
	if len(p.weeks) == 0 { // the block is over: the next begins
		out.Start, m = r.from, r.measures.nowAs(eased, r.from)
		p = m.newPractice(nextBlock(p.past), r.from, nil)
	}
	p.at, p.gated = way.at, way.shown[len(way.shown)-1] != 0
	r.next = p.plan
	if p.fill(out); len(p.weeks) > 0 {
		r.number(out, p.plan)
	}
}

// practiceBehind is what the weeks that are over leave to the plan.
func (r *reading) practiceBehind() past {
	b := past{on: r.on, rest: r.restAfter()}
	for _, w := range r.weeks {
		kind := r.kindDone(w)
		if kind == program.WeekAway {
			b.off++
		} else {
			b.off = 0
		}
		if w.start < r.block || w.Number == 0 {
			b.before = append(b.before, weekDone{kind: kind})
			continue
		}
		week := *w.Week
		if kind == program.WeekAway && week.Kind != program.WeekAway {
			week.Kind, week.Sessions, week.Notes = program.WeekAway, nil, []program.Note{note(noteWeekMissed)}
		}
		week.Number, week.Stance = len(b.weeks)+1, r.stanceOf(&week)
		b.weeks, b.counted = append(b.weeks, week), append(b.counted, 0)
	}
	return b
}

// practiceFinish adds what the new plan changes, and why.
func (r *reading) practiceFinish(out *program.Review, p *program.Program, way *way) {
	out.Withheld, out.GoalAfter, out.Wishes = p.Withheld, p.Goal, p.Wishes
	if len(p.Withheld) > 0 {
		return
	}
	out.NextTest = r.nextTest(p.Weeks, func(i program.Prescription) bool { return i.Role == program.RoleTest })
	if p.From != 0 {
		out.Changes, out.Notes = r.changesTo(p.Weeks), r.practiceWhy(way)
	}
}

// practiceWhy says why the weeks ahead are what they are.
func (r *reading) practiceWhy(way *way) (notes []program.Note) {
	p := r.next
	b := &p.past
	at := r.body.Steps[way.at].ID
	switch {
	case way.fallen == way.at+1 && way.fellOn > r.on-lately:
		notes = append(notes, note(notePracticeBack, step("step", at)))
	case way.shown[way.at] == 0 && len(r.open) == 0 && placeOfWeeks(r.wall[len(r.wall)-1].Weeks) == at:
		notes = append(notes, note(notePracticeStay, step("step", at)))
	}
	if b.off > 0 {
		notes = append(notes, note(noteWeeksOff, count("weeks", b.off)))
	}
	if b.rest.until >= r.on {
		notes = append(notes, p.restNotes()...)
	}
	if b.rest.until != 0 {
		notes = append(notes, note(noteWayBack, date("from", b.rest.until+1)))
	}
	for _, key := range countedSore(&p.athlete.Health, &r.athlete.Health) {
		notes = append(notes, note(noteEased, word("joint", key)))
	}
	return notes
}
