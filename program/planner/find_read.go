package planner

import (
	"cmp"
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// knownMarks are what was shown of marks, in tests or in the log: of each measure, and of
// steps that are done on pads or from a block.
type knownMarks struct {
	measures []program.Measure
	steps    []string
}

func (k *knownMarks) add(measure program.Measure, step string) {
	if measure != program.MeasureNone {
		k.measures = append(k.measures, measure)
	}
	if step != "" {
		k.steps = append(k.steps, step)
	}
}

// have reports whether a measure is known, or the step that it helps at.
func (k knownMarks) have(measure program.Measure, step string) bool {
	onHeight := measure == program.MeasurePad || measure == program.MeasureBlock
	return slices.Contains(k.measures, measure) || onHeight && slices.Contains(k.steps, step)
}

// marks are those that are known.
func (sn *season) marks() knownMarks {
	k := knownMarks{slices.Clip(sn.past.marks.measures), slices.Clip(sn.past.marks.steps)}
	for i := range sn.athlete.Tests {
		if t := &sn.athlete.Tests[i]; t.Seconds > 0 || t.Reps > 0 {
			measure, _ := measuredBy(t.Rig, t.Ahead, t.Scale)
			k.add(measure, t.Step)
		}
	}
	return k
}

// marks are those that some line of the log tells of; what was only ticked off as printed
// was not written down.
func (di *diary) marks() (k knownMarks) {
	for _, d := range di.days {
		for i := range d.sets {
			s := &d.sets[i]
			repeated := s.Done.Seconds == 0 && s.Step == "" && !s.finds() // which is practice, and tells nothing
			if !s.told || !s.said() || repeated {
				continue
			}
			measure, _ := measuredBy(s.Rig, s.Ahead, s.Scale)
			k.add(measure, s.Step)
		}
	}
	return k
}

// reached is how far work at marks came: the farthest lean, m, and the least on a scale, N,
// that were done whole and clean. The zero reached bounds nothing.
type reached struct{ lean, scale float64 }

func (to *reached) add(s *setRead) {
	if to.lean = max(to.lean, s.Ahead); s.Scale > 0 && (to.scale == 0 || s.Scale < to.scale) {
		to.scale = s.Scale
	}
}

// reached is that of somebody who has found a mark and never held a step off the floor.
func (r *reading) reached() (far reached) {
	if slices.ContainsFunc(r.athlete.Tests, func(t program.Hold) bool { return t.Seconds > 0 || t.Reps > 0 }) {
		return reached{}
	}
	found := false
	for _, d := range r.days {
		for i := range d.sets {
			s := &d.sets[i]
			switch whole := s.seconds() >= 1 && !s.short() && !s.doubtful && !broke(s.Done); {
			case !whole:
			case s.Step != "" && s.Scale == 0:
				return reached{}
			default:
				far.add(s)
				found = found || s.finds()
			}
		}
	}
	if !found {
		return reached{}
	}
	return far
}

// justFound reports whether the last week found the mark that work is at: what hangs was
// printed before anybody knew it.
func (ds *doses) justFound(w *work) bool {
	over := ds.past.over()
	if over == 0 {
		return false
	}
	measure, _ := measured(w.aid)
	for _, s := range ds.past.weeks[over-1].Sessions {
		if slices.ContainsFunc(s.Items, func(i program.Prescription) bool { m, _ := i.Measured(); return i.Find.Any() && m == measure }) {
			return ds.known.have(measure, w.step())
		}
	}
	return false
}

// findsAhead are the measures whose marks are found in the week that has begun, on a day
// still to come.
func (r *reading) findsAhead() (all []program.Measure) {
	for _, w := range r.weeks {
		for _, s := range w.Sessions {
			for _, item := range s.Items {
				if item.Find.Any() && s.Date > r.on {
					measure, _ := item.Measured()
					all = append(all, measure)
				}
			}
		}
	}
	return all
}

// stillSought are the marks that cards find that hang already.
func (lo *layout) stillSought() (all []sought) {
	for _, measure := range lo.past.finds {
		all = append(all, sought{measure: measure, week: -1})
	}
	return all
}

// finds reports whether a set is a try at a mark.
func (s *setRead) finds() bool { return s.item != nil && s.item.Find.Any() }

// findsAt is the printed try that a set names a mark of, −1 for none.
func (s *setRead) findsAt(slots []*program.Prescription, used []bool) int {
	measure, at := measuredBy(s.Rig, s.Ahead, s.Scale)
	for i, item := range slots {
		its, _ := item.Measured()
		if !used[i] && measure == its && slices.ContainsFunc(item.Find.Marks, func(m program.Mark) bool { return math.Abs(m.At-at) < 1e-6 }) {
			return i
		}
	}
	return -1
}

// atMark takes over from a find what the log leaves out of a try: the first has the first
// mark, and so on. It was to end by its RPE, so that it is never short.
func (s *setRead) atMark() {
	marks := s.item.Find.Marks
	there := s.item.Moved(marks[min(s.nth, len(marks)-1)].At)
	if s.Ahead == 0 {
		s.Ahead = there.Ahead
	}
	if s.Scale == 0 {
		s.Scale = there.Scale
	}
	switch s.Rig.Drop {
	case rigPrinted:
		s.Rig = there.Rig
	case ladder.DropPrinted:
		s.hungAs(there.Rig)
	}
	if s.Step == "" {
		s.Step = s.item.Step
	}
	if s.Printed = s.item.Hold; s.Done.Reps > 0 {
		s.Printed = s.item.Reps
	}
}

// found are the marks that the finds of a week came to, as far as it is read.
type found map[program.Measure]float64

// note takes over the mark of a try: the last good one, or the first there is.
func (f found) note(s *setRead) {
	if !s.finds() {
		return
	}
	measure, at := measuredBy(s.Rig, s.Ahead, s.Scale)
	_, known := f[measure]
	if good := !broke(s.Done) && s.seconds() > 0 && s.Done.RPE <= float64(s.item.Find.RPE); good || !known {
		f[measure] = at
	}
}

// made is a printed item as the mark that was found makes it, by the table on its card: so
// it was done, where the log does not say otherwise.
func (f found) made(item *program.Prescription) *program.Prescription {
	measure, _ := item.Measured()
	at, known := f[measure]
	if !known || len(item.Found) == 0 {
		return item
	}
	row := slices.MinFunc(item.Found, func(a, b program.Found) int {
		return cmp.Compare(math.Abs(a.Mark-at), math.Abs(b.Mark-at))
	})
	moved := item.Moved(row.At)
	return &moved
}

// tryCounted is what a try weighs: the first of a find all of it, since nobody has to
// write down more than the last good mark.
func (s *setRead) tryCounted() int {
	if s.nth > 0 {
		return 0
	}
	return triesCounted(s.item)
}
