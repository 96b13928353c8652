package planner

import (
	"slices"

	"gatepost/program"
)

// printed is a week as the client will read it, after those that were printed so far.
func (lo *layout) printed(i, lastBuild int, session *int) program.Week {
	w := lo.laidOut(i, lastBuild, *session)
	if !w.ByCoach && lo.vary(i, &w) {
		w = lo.laidOut(i, lastBuild, *session)
	}
	lo.findMarks(&w)
	*session += len(w.Sessions)
	lo.comeIn(i, &w)
	return w
}

func (lo *layout) laidOut(i, lastBuild, session int) program.Week {
	w := &lo.weeks[i]
	out := program.Week{
		Number: i + 1, Start: w.start, Kind: w.kind,
		Capacity: lo.look.mid[i], Provisional: lo.provisional(i),
	}
	main, byCoach := lo.mainOf(i)
	if !main.none() && w.kind != program.WeekAway {
		out.Step, out.Exercise = main.step(), main.exercise()
		out.Rig, out.Help = main.aid.Rig, float64(main.aid.Help)/10
		out.Ahead, out.Scale = main.aid.Ahead, main.aid.Scale
		out.MaxHold, out.Hold, out.Rest = float64(main.max)/10, main.hold, mainRest
		out.Effort, out.Gate, out.ByCoach = lo.limits.effortIn(i), main.gate, byCoach
		out.Stance = lo.figure(main)
	}
	out.Sessions = lo.sessions(i, session)
	if lo.comingBack(i) {
		easeWeek(&out)
	}
	lo.inRepetitions(&out)
	lo.inAndOut(&out)
	lo.tally(&out)
	lo.markByHand(&out)
	out.Notes = lo.weekNotes(&out, lastBuild)
	return out
}

// sessions are a week's days in order. The days between straight-arm days are
// filled last: how much they pull follows from how much the others push.
func (lo *layout) sessions(i, number int) []program.Session {
	w, l := &lo.weeks[i], &lo.loads[i]
	out := make([]program.Session, len(w.days))
	check := lo.opensWithCheck(i)
	spare := 0    // pulling sets in halves that the week's pushing still allows
	rear := false // a single set of pulling is for the rear shoulder next
	for j, date := range w.days {
		d := lo.day(i, date, number+j, check)
		if !d.straight {
			continue
		}
		d.rear = rear
		out[j] = lo.session(d)
		lo.easeBack(&out[j], i)
		rear = rear != (setsAgainst(out[j].Items) == 1)
		l.keep(slices.Index(w.straight, date), out[j].Items)
		check = check && !d.check
		spare += spareAgainst(out[j].Items)
	}
	between := len(w.days) - len(w.straight)
	for j, date := range w.days {
		d := lo.day(i, date, number+j, false)
		if d.straight {
			continue
		}
		if d.against = max(0, min(againstBetween, spare/2/between)); d.kind == program.WeekDeload {
			d.against = half(d.against)
		}
		d.rear = rear
		out[j] = lo.session(d)
		lo.easeBack(&out[j], i)
		rear = rear != (setsAgainst(out[j].Items) == 1)
	}
	return out
}

// setsAgainst are those that balance the work.
func setsAgainst(items []program.Prescription) int {
	n := 0
	for _, item := range items {
		if item.Role.Against() {
			n += item.Sets
		}
	}
	return n
}

// spareAgainst is how many half sets against the work a session leaves to others, for
// them to stay within one and a half times the work.
func spareAgainst(items []program.Prescription) int {
	spare := -2 * setsAgainst(items)
	for _, item := range items {
		if weighed(item.Role) {
			spare += 3 * item.Sets
		}
	}
	return spare
}

// day gathers what a session needs to know.
func (lo *layout) day(i int, date program.Date, number int, check bool) day {
	w := &lo.weeks[i]
	d := day{date: date, kind: w.kind, load: lo.loadOnDay(i, date), number: number, week: i, builds: lo.buildsIn(i)}
	if at := slices.Index(w.straight, date); at >= 0 {
		d.straight, d.fresh = true, date == w.fresh
		d.part = w.parts()[at]
		d.sets = lo.setsOnDay(i, at, d.load)
		d.check = check && (d.sets.main > 0 || len(lo.open) > 0)
		d.open = lo.opens(i, at)
	}
	last := lo.weeks[len(lo.weeks)-1].test
	d.test = date == last
	d.hard = !d.test && slices.Contains(w.hard, date)
	d.clear = !d.test && date > last-program.Date(lo.limits.testRest)
	return d
}

// opensAfterDeload says that a build week follows an easy one: its first main
// work is a check hold, which resets the estimate.
func (sn *season) opensAfterDeload(i int) bool {
	return i > 0 && sn.weeks[i].kind == program.WeekBuild && sn.weeks[i-1].kind != program.WeekBuild
}

// opensWithCheck says that a week begins with a check hold; a gate is test enough, so is a
// mark to be found, and the first weeks after some off are no time for one.
func (ds *doses) opensWithCheck(i int) bool {
	_, easy := ds.returning(i)
	main := &ds.loads[i].main
	return ds.opensAfterDeload(i) && !main.gate && !easy && !ds.loads[i].hand && !ds.unfound(main.aid, main.step())
}

// provisional weeks stand until a check hold has spoken.
func (ds *doses) provisional(i int) bool {
	for j := ds.past.over() + 1; j <= i; j++ {
		if ds.opensAfterDeload(j) && !ds.main[j].none() {
			return true
		}
	}
	return false
}

// tally counts what the sessions hold in the end.
func (lo *layout) tally(w *program.Week) {
	for _, s := range w.Sessions {
		mains := 0
		for _, item := range s.Items {
			if item.Role == program.RoleMain || w.Kind == program.WeekBuild && isMain(&item) {
				mains += item.Sets
			}
			w.HalfSeconds += counted(item)
		}
		countDay(w, mains)
	}
	if w.Sets == 0 { // a test week of one day
		w.Hold, w.Rest, w.MaxHold, w.Effort = 0, 0, 0, 0
	}
}

// countDay has a week say the most and the fewest main sets of a day that has some.
func countDay(w *program.Week, sets int) {
	w.Sets = max(w.Sets, sets)
	if sets > 0 && (w.SetsLeast == 0 || sets < w.SetsLeast) {
		w.SetsLeast = sets
	}
}

// counted is an item's straight-arm work in half seconds.
func counted(item program.Prescription) int {
	switch {
	case !isCounted(item.Role):
		return 0
	case item.Find.Any():
		return triesCounted(&item)
	}
	return item.Sets * work{hold: item.Hold, share: item.Load}.halfSeconds()
}

// weekNotes say what changes in a week and what gave way.
func (lo *layout) weekNotes(w *program.Week, lastBuild int) []program.Note {
	var out []program.Note
	i := w.Number - 1
	l := &lo.loads[i]
	if w.Kind == program.WeekDeload && daysAway(lo.athlete, w.Start) >= deloadAway {
		out = append(out, note(noteAwayDeload))
	}
	if lo.opensWithCheck(i) && !l.main.none() {
		out = append(out, note(noteCheckHold))
	}
	if w.Kind == program.WeekBuild && slices.ContainsFunc(w.Sessions, checksEntry) {
		out = append(out, note(noteEntryCheck))
	}
	if w.Kind != program.WeekBuild || l.main.none() {
		return out
	}
	switch {
	case l.main.gate: // says that it is free, and what for
		g := l.main.rung.Gate
		days := min(g.Sessions, lo.mainDays(i))
		asks := note(noteGateWeek, step("step", l.main.step()), count("sets", g.Sets), seconds("hold", float64(g.Hold)), count("days", days))
		if g.Single > 0 {
			asks.Code, asks.Values = noteGateLonger, append(asks.Values, seconds("longer", float64(g.Single)))
		}
		if out = append(out, asks); slices.ContainsFunc(w.Sessions, opened) {
			out = append(out, note(noteOpenSet, seconds("hold", float64(longestSet(g)))))
		}
		if days < g.Sessions {
			out = append(out, note(noteGateDays, count("days", g.Sessions)))
		}
	case w.ByCoach:
	case lastBuild >= 0:
		out = append(out, lo.change(lo.main[lastBuild], l.main)...)
	}
	out = append(out, lo.back(i)...)
	if l.main.short {
		out = append(out, note(noteShortSets, step("step", l.main.step())))
	}
	if w.SetsLeast < mainSetsLeast && w.SetsLeast > 0 {
		out = append(out, note(noteFewerSets, count("sets", w.SetsLeast)))
	}
	return out
}

// opened reports whether a session holds an open set.
func opened(s program.Session) bool { return slices.ContainsFunc(s.Items, isOpen) }

// change says what is new against the last build week.
func (ds *doses) change(before, now work) []program.Note {
	switch {
	case now.rung != nil && (before.rung == nil || before.rung.ID != now.rung.ID):
		return []program.Note{note(noteNewStep, step("step", now.step()))}
	case now.aid.Rig.Free() && !before.aid.Rig.Free():
		return []program.Note{note(noteFree, step("step", now.step()))}
	case now.aid.Help < before.aid.Help:
		return []program.Note{note(noteLessHelp, newtons("help", float64(now.aid.Help)/10))}
	case now.rung != nil && now.aid.Help > before.aid.Help: // only from the log: planned anew
		return []program.Note{note(noteMoreHelp, newtons("help", float64(now.aid.Help)/10))}
	}
	return nil
}
