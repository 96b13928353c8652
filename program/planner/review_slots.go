package planner

import (
	"cmp"
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// slotsOf are the printed sets of an exercise that day; where the day has none,
// those of the week, since a session may have been done on another day.
func slotsOf(items []program.Prescription, week *program.Week, exercise string) []*program.Prescription {
	var slots []*program.Prescription
	take := func(items []program.Prescription) {
		for i := range items {
			if items[i].Exercise == exercise {
				for range items[i].Sets {
					slots = append(slots, &items[i])
				}
			}
		}
	}
	take(items)
	for i := range week.Sessions {
		if len(slots) > 0 {
			break
		}
		take(week.Sessions[i].Items)
	}
	return slots
}

// add lays the sets of one exercise beside its printed sets: the first beside
// the first. A set with a rig of its own takes the next printed set with that
// rig, where there is one.
func (d *dayRead) add(sets []setRead, slots []*program.Prescription, marks found) {
	slots = withTries(sets, slots)
	used := make([]bool, len(slots))
	for i := range sets {
		s := &sets[i]
		if at := s.slot(slots, used); at >= 0 {
			used[at] = true
			s.item = slots[at]
			s.nth = at - slices.Index(slots, s.item)
			if s.Rig.Drop == rigPrinted && s.Ahead == 0 && s.Scale == 0 {
				s.item = marks.made(s.item)
			}
		}
		s.fit()
		marks.note(s)
		d.sets = append(d.sets, *s)
	}
}

// withTries sorts the sets of one exercise, and leaves of a find's printed sets as many as
// can be among these: RPE ends a find before its last mark, and one good mark is all that
// has to be written, so that sets which are missing were tries, and the work is whole. What
// is longer than a try is none.
func withTries(sets []setRead, slots []*program.Prescription) []*program.Prescription {
	tries := func(item *program.Prescription) bool { return item.Find.Any() }
	at, try := slices.IndexFunc(slots, tries), math.MaxInt
	if at >= 0 {
		try = slots[at].Hold
	}
	slices.SortFunc(sets, func(a, b setRead) int { return compareSets(a, b, try) })
	works := slices.DeleteFunc(slices.Clone(slots), tries)
	if at < 0 || len(works) == 0 {
		return slots
	}
	least := 0
	if slices.ContainsFunc(sets, func(s setRead) bool { return !s.longer(try) }) {
		least = 1
	}
	tried := min(max(least, len(sets)-len(works)), len(slots)-len(works))
	return slices.Insert(works, at, slots[at:at+tried]...)
}

// longer reports whether a set is longer than a try of so many seconds.
func (s *setRead) longer(try int) bool {
	return max(s.Done.Seconds, float64(program.SecondsPerRep*s.Done.Reps)) > float64(try)
}

// slot is the printed set that a set is laid beside, −1 for none. One more than was
// printed takes the last that has seconds: nobody asked it for two seconds to the end.
func (s *setRead) slot(slots []*program.Prescription, used []bool) int {
	if at := s.findsAt(slots, used); at >= 0 {
		return at
	}
	free, last := -1, len(slots)-1
	for last > 0 && isOpen(*slots[last]) {
		last--
	}
	for i := range slots {
		if used[i] {
			continue
		}
		same := s.Rig.Drop == rigPrinted || ladder.SameRig(s.Rig, slots[i].Rig)
		if same && (s.Scale == 0 || s.Scale == slots[i].Scale) {
			return i
		}
		if free < 0 {
			free = i
		}
	}
	if free >= 0 {
		return free
	}
	return last
}

// fit takes over from the printed set what the log leaves out.
func (s *setRead) fit() {
	if s.item == nil {
		return
	}
	if s.finds() {
		s.atMark()
		return
	}
	switch s.Rig.Drop {
	case rigPrinted:
		s.Rig = s.item.Rig
	case ladder.DropPrinted:
		s.hungAs(s.item.Rig)
	}
	if s.Step == "" {
		s.Step = s.item.Step
	}
	s.Ahead, s.Scale = cmp.Or(s.Ahead, s.item.Ahead), cmp.Or(s.Scale, s.item.Scale)
	switch {
	case s.Ahead != s.item.Ahead, s.Scale != s.item.Scale:
		// leant otherwise than was printed, or with other weight on the toes: the seconds were not asked of it
	case s.item.Step != "" && !ladder.SameRig(s.Rig, s.item.Rig):
		// held with other help than was printed: the seconds were not asked of it
	case s.Done.Reps > 0:
		s.Printed = s.item.Reps
	default:
		s.Printed = s.item.Hold
	}
}

// hungAs takes over a printed strap, and of the same band the printed pull.
func (s *setRead) hungAs(printed program.Rig) {
	s.Rig.Drop = printed.Drop
	if slices.Equal(s.Rig.Bands, printed.Bands) {
		s.Rig.Pull = printed.Pull
	}
}

// match gives a week's days their printed sessions, and its sets the straps that
// neither the log nor the week has: those that hung last.
func (r *reading) match(w *weekPrinted) {
	w.match()
	for _, d := range w.days {
		for i := range d.sets {
			if s := &d.sets[i]; s.Rig.Drop == ladder.DropPrinted {
				s.hungAs(r.lastRig(s))
			}
		}
	}
}

// lastRig is the rig last printed for an exercise with the bands of a set, or one on the
// only strap that the client has; on dropPrinted where nobody knows.
func (r *reading) lastRig(s *setRead) program.Rig {
	for i := len(r.weeks) - 1; i >= 0; i-- {
		for j := len(r.weeks[i].Sessions) - 1; j >= 0; j-- {
			for _, item := range r.weeks[i].Sessions[j].Items {
				if item.Exercise == s.Exercise && ladder.SameRig(s.Rig, item.Rig) {
					return item.Rig
				}
			}
		}
	}
	if lengths := r.body.Hanging.Lengths(); len(lengths) == 1 {
		return program.Rig{Drop: lengths[0]}
	}
	return program.Rig{Drop: ladder.DropPrinted}
}

// compareSets orders the sets of one exercise: by number, the unnumbered after those; then
// what is longer than a try after what may be one, else the longer first.
func compareSets(a, b setRead, try int) int {
	number := func(n int) int {
		if n == 0 {
			return 1 << 20
		}
		return n
	}
	work := func(s *setRead) int {
		if s.longer(try) {
			return 1
		}
		return 0
	}
	return cmp.Or(
		cmp.Compare(number(a.Done.Number), number(b.Done.Number)),
		cmp.Compare(work(&a), work(&b)),
		cmp.Compare(b.Done.Seconds, a.Done.Seconds),
		cmp.Compare(b.Done.Reps, a.Done.Reps),
		cmp.Compare(a.Done.RPE, b.Done.RPE),
		cmp.Compare(a.Done.Clean, b.Done.Clean),
		slices.Compare(a.Rig.Bands, b.Rig.Bands), cmp.Compare(a.Rig.Drop, b.Rig.Drop),
		cmp.Compare(b.Rig.Pad+b.Rig.Block+b.Rig.Pull, a.Rig.Pad+a.Rig.Block+a.Rig.Pull),
		cmp.Compare(a.Ahead, b.Ahead), cmp.Compare(b.Scale, a.Scale),
		cmp.Compare(a.Done.Pain.Worst(), b.Done.Pain.Worst()),
	)
}

// addPrinted adds the printed sets of a session done as printed, but for the
// exercises that the day's other lines speak of. A maximal hold has no printed
// seconds, so that nothing is known of it.
func (d *dayRead) addPrinted(items []program.Prescription, spoken []string, marks found) {
	for i := range items {
		item := marks.made(&items[i])
		if slices.Contains(spoken, item.Exercise) || item.Hold == 0 && item.Reps == 0 || item.Try || item.Find.Any() {
			continue
		}
		for n := range item.Sets {
			s := setRead{item: item}
			s.SetRead = program.SetRead{Date: d.date, Exercise: item.Exercise, Step: item.Step, Rig: item.Rig, Ahead: item.Ahead, Scale: item.Scale, Printed: item.Hold}
			s.Done = program.SetDone{Number: n + 1, Seconds: float64(item.Hold)}
			if item.Reps > 0 && item.Step == "" {
				s.Done.Seconds, s.Done.Reps, s.Printed = 0, item.Reps, item.Reps
			}
			d.sets = append(d.sets, s)
		}
	}
}
