package planner

import (
	"cmp"
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// setRead is one set of the log beside what was printed for it.
type setRead struct {
	program.SetRead
	item *program.Prescription // nil: nothing like it was printed
	nth  int                   // of its item's sets, from 0

	told     bool // by a line of the log, which did not leave it to the card
	doubtful bool // nothing is said of its form, and a later set of its line broke
}

// short says that a hold stopped before its printed seconds, or a repeated lean before
// its repetitions.
func (s *setRead) short() bool {
	if s.finds() { // RPE ends a try
		return false
	}
	if s.Done.Reps > 0 {
		return s.arm() && s.Done.Reps < s.Printed
	}
	return s.Printed > 0 && s.Done.Seconds < float64(s.Printed) && s.said()
}

// seconds on straight arms: a repeated lean has three a repetition.
func (s *setRead) seconds() float64 {
	if s.Done.Seconds == 0 && s.arm() {
		return float64(program.SecondsPerRep * s.Done.Reps)
	}
	return s.Done.Seconds
}

// said says that the log gives a length at all.
func (s *setRead) said() bool {
	return s.Done.Seconds > 0 || s.Done.Reps > 0 || s.Done.Clean == program.CleanNo
}

func (s *setRead) main() bool { return s.item != nil && isMain(s.item) }

// arm reports whether straight-arm work was printed for a set.
func (s *setRead) arm() bool { return s.item != nil && isArm(s.item) }

// dayRead is one day of the log.
type dayRead struct {
	date    program.Date
	printed *program.Session // what it did; nil: not on the plan
	shifted bool             // printed for another day of the week
	whole   bool             // done as printed, at least in part
	entries []program.Entry
	sets    []setRead
	pains   []program.Pain // said of the day as a whole
}

// weekPrinted is a week as it hung on the wall, and the days it was done on.
type weekPrinted struct {
	start program.Date
	*program.Week
	days []*dayRead
}

// wallWeek is a week as it hung on the wall: when it began, by the last version made
// by then, or else by the first that has it; from a day on as a version made in the
// middle of it changed the cards still to come.
func wallWeek(versions []program.PlanVersion, monday program.Date) *program.Week {
	var found *program.Week
	for i := range versions {
		w := weekAt(versions[i].Weeks, monday)
		switch on := versions[i].On; {
		case w == nil:
		case found == nil || on <= monday:
			found = w
		case on <= monday+6 && toCome(w, on) != nil:
			merged := *w
			merged.Sessions = slices.DeleteFunc(slices.Clone(found.Sessions), func(s program.Session) bool { return s.Date >= on })
			merged.Sessions = append(merged.Sessions, toCome(w, on).Sessions...)
			found = &merged
		}
	}
	return found
}

// daysOf gathers the entries of a log by day, in order. A morning is no day of
// training: see review_mornings.go.
func daysOf(log *program.Log, from, to program.Date) []*dayRead {
	entries := slices.DeleteFunc(slices.Clone(log.Entries), func(e program.Entry) bool { return e.Morning || e.Date < from || e.Date > to })
	slices.SortStableFunc(entries, func(a, b program.Entry) int { return cmp.Compare(a.Date, b.Date) })
	var days []*dayRead
	for _, e := range entries {
		if len(days) == 0 || days[len(days)-1].date != e.Date {
			days = append(days, &dayRead{date: e.Date})
		}
		d := days[len(days)-1]
		d.entries = append(d.entries, e)
		d.whole = d.whole || e.AsPrinted
	}
	return days
}

// match gives each day of a week its printed session: the one of its date, or
// else the first that no other day has done. Days beyond those are extra.
func (w *weekPrinted) match() {
	if w.Week == nil {
		w.Week = &program.Week{Start: w.start} // nothing was printed for it
	}
	taken := make([]bool, len(w.Sessions))
	for _, d := range w.days {
		for i := range w.Sessions {
			if w.Sessions[i].Date == d.date {
				d.printed, taken[i] = &w.Sessions[i], true
			}
		}
	}
	for _, d := range w.days {
		if at := slices.Index(taken, false); d.printed == nil && at >= 0 {
			d.printed, d.shifted, taken[at] = &w.Sessions[at], true, true
		}
	}
	marks := found{}
	for _, d := range w.days {
		d.read(w.Week, marks)
	}
}

// read lays the day's entries beside its printed session, in an order that does
// not depend on the order of the lines.
func (d *dayRead) read(week *program.Week, marks found) {
	var items []program.Prescription
	if d.printed != nil {
		items = d.printed.Items
	}
	byExercise := map[string][]setRead{}
	var names []string
	for i := range d.entries {
		e := &d.entries[i]
		if e.AsPrinted {
			for _, s := range e.Sets {
				d.pains = append(d.pains, s.Pain)
			}
			continue
		}
		if !slices.Contains(names, e.Exercise) {
			names = append(names, e.Exercise)
		}
		byExercise[e.Exercise] = append(byExercise[e.Exercise], written(e)...)
	}
	slices.SortFunc(names, func(a, b string) int {
		return cmp.Or(cmp.Compare(placeIn(items, a), placeIn(items, b)), cmp.Compare(a, b))
	})
	for _, name := range names {
		d.add(byExercise[name], slotsOf(items, week, name), marks)
	}
	if d.whole {
		d.addPrinted(items, names, marks)
	}
	slices.SortStableFunc(d.sets, func(a, b setRead) int {
		return cmp.Compare(placeIn(items, a.Exercise), placeIn(items, b.Exercise))
	})
}

// written are an entry's sets; in a cell of several the order is the number.
func written(e *program.Entry) []setRead {
	var out []setRead
	for i, s := range e.Sets {
		if s.Number == 0 && len(e.Sets) > 1 {
			s.Number = i + 1
		}
		read := setRead{told: true, SetRead: program.SetRead{Date: e.Date, Exercise: e.Exercise, Step: e.Step, Ahead: e.Ahead, Scale: e.Scale, Done: s, Place: e.Place}}
		if e.RigGiven {
			read.Rig = e.Rig
			read.Rig.Bands = slices.Clone(e.Rig.Bands)
		}
		read.rigGiven(e)
		read.doubtful = s.Clean == program.CleanUnsaid && slices.ContainsFunc(e.Sets[i:], broke)
		out = append(out, read)
	}
	return out
}

func broke(s program.SetDone) bool { return s.Clean == program.CleanNo }

// rigPrinted is the strap of a set that names no rig: the printed one hung.
const rigPrinted = -1.0

func (s *setRead) rigGiven(e *program.Entry) {
	switch {
	case !e.RigGiven:
		s.Rig = program.Rig{Drop: rigPrinted}
	case e.Rig.Pull > 0: // the strap is as long as that takes
	case !e.DropGiven && !e.Rig.Free():
		s.Rig.Drop = ladder.DropPrinted
	}
}

// placeIn is where an exercise comes in a session; after all that are printed
// where it does not.
func placeIn(items []program.Prescription, exercise string) int {
	for i := range items {
		if items[i].Exercise == exercise {
			return i
		}
	}
	return len(items)
}
