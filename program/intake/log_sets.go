package intake

import (
	"strconv"
	"strings"

	"gatepost/program"
)

// readSets reads the sets of the line, with what is said of each.
func (l *logLine) readSets(e *program.Entry) {
	if l.readTries(e) {
		return
	}
	holds, heldOK := l.amounts(columnHold)
	reps, countedOK := l.amounts(columnReps)
	if !heldOK || !countedOK {
		return // how many sets there are is not known
	}
	if holds.n > 0 && reps.n > 0 {
		l.fault(l.at(columnReps), "held_and_counted")
		return
	}
	e.Sets = l.sets(max(1, holds.n, reps.n))
	for i := range holds.n {
		s := &e.Sets[i]
		if s.Seconds = max(0, holds.x[i]); holds.x[i] == 0 {
			s.Clean = program.CleanNo
		}
	}
	for i := range reps.n {
		s := &e.Sets[i]
		if s.Reps = int(max(0, reps.x[i])); reps.x[i] == 0 {
			s.Clean = program.CleanNo
		}
	}
	l.readNumber(e.Sets)
	l.readRPE(e.Sets)
	l.readClean(e.Sets)
	l.readPain(e.Sets)
	if !l.wrong {
		l.checkSets(e, holds, reps)
	}
}

// checkSets compares the sets with what the exercise is.
func (l *logLine) checkSets(e *program.Entry, holds, reps amounts) {
	dose := l.known.kinds[e.Exercise]
	repeated := e.Step != "" && l.known.load.Repeats() // whatever its exercise has as a dose
	longest := 0.0
	missing := holds.n+reps.n == 0
	for i, s := range e.Sets {
		longest = max(longest, s.Seconds)
		missing = missing || holds.n > 0 && holds.x[i] == unsaid || reps.n > 0 && reps.x[i] == unsaid
	}
	switch {
	case repeated && longest > 0:
		l.fault(l.at(columnHold), "step_timed")
	case e.Step != "" && !repeated && reps.n > 0:
		l.fault(l.at(columnReps), "step_counted")
	case !repeated && reps.n > 0 && dose.Reps == 0 && dose.Hold > 0:
		l.doubt(l.at(columnReps), "counted_here", "exercise", e.Exercise)
	case !repeated && holds.n > 0 && dose.Hold == 0 && dose.Reps > 0:
		l.doubt(l.at(columnHold), "held_here", "exercise", e.Exercise)
	case e.Step != "" && longest > longStep:
		l.doubt(l.at(columnHold), "step_long", "hold", l.words.number(longest))
	case missing:
		l.doubt(l.start(), "no_amount")
	}
}

// readNumber reads the number of a set, and numbers those of a whole exercise.
func (l *logLine) readNumber(sets []program.SetDone) {
	cell := l.cell(columnSet)
	switch {
	case cell != "" && len(sets) > 1:
		l.fault(l.at(columnSet), "number_beside")
	case cell != "":
		x, ok := l.number(columnSet, cell, cell)
		if ok && (x < 1 || x > 50 || x != float64(int(x))) {
			l.fault(l.at(columnSet), "no_set", "number", l.words.number(x))
		}
		sets[0].Number = int(x)
	case len(sets) > 1:
		for i := range sets {
			sets[i].Number = i + 1
		}
	}
}

// spread says which set the first of some parts of a cell belongs to: a single
// part is the last set's, otherwise there is one a set.
func (l *logLine) spread(c column, parts, sets int) (first int, ok bool) {
	switch {
	case parts == 0:
		return 0, false
	case parts == 1:
		return sets - 1, true
	case parts == sets:
		return 0, true
	}
	wrong := damage(l.cell(c))
	if wrong == nil {
		wrong = fault{l.words.plural("values", sets), "values", strconv.Itoa(parts), "column", c.String(), "sets", strconv.Itoa(sets)}
	}
	l.fault(l.at(c), wrong...)
	return 0, false
}

func (l *logLine) readRPE(sets []program.SetDone) {
	cell := l.cell(columnRPE)
	if l.words.saysPain(cell) {
		l.fault(l.at(columnRPE), "rpe_pain", "written", quote(cell))
		return
	}
	parts := strings.Fields(cell)
	first, ok := l.spread(columnRPE, len(parts), len(sets))
	for i := 0; ok && i < len(parts); i++ {
		if isDash(parts[i]) {
			continue
		}
		var x float64
		if x, ok = l.number(columnRPE, cell, strings.TrimSuffix(strings.TrimRight(parts[i], ",;"), "/10")); ok && (x < 1 || x > 10) {
			l.fault(l.at(columnRPE), "rpe_range", "rpe", l.words.number(x))
			return
		}
		sets[first+i].RPE = x
	}
}

func (l *logLine) readClean(sets []program.SetDone) {
	parts := strings.Fields(l.cell(columnClean))
	first, ok := l.spread(columnClean, len(parts), len(sets))
	for i := 0; ok && i < len(parts); i++ {
		said, known := l.cleanOf(parts[i])
		if !known {
			l.fault(l.at(columnClean), "clean_not", "written", quote(parts[i]))
			return
		}
		from := first + i
		if len(parts) == 1 && said == program.CleanYes {
			from = 0
		}
		for n := from; n <= first+i; n++ {
			ok = ok && l.setClean(&sets[n], said)
		}
	}
}

// setClean refuses a clean set that was not held at all, and a broken one of
// which nobody knows how long it was.
func (l *logLine) setClean(s *program.SetDone, said program.Clean) bool {
	if s.Clean == program.CleanNo && said == program.CleanYes {
		l.fault(l.at(columnClean), "clean_not_held")
		return false
	}
	if said == program.CleanNo && s.Clean == program.CleanUnsaid && s.Seconds == 0 && s.Reps == 0 {
		l.fault(l.at(columnClean), "broke_unsaid")
		return false
	}
	if said != program.CleanUnsaid {
		s.Clean = said
	}
	return true
}

// cleanOf reads yes and no, as people and check boxes write them.
func (l *logLine) cleanOf(written string) (said program.Clean, known bool) {
	if said, known = l.words.clean[written]; !known { // most are written plainly
		said, known = l.words.clean[fold(strings.TrimRight(written, ",;"))]
	}
	return said, known || isDash(written)
}

func (l *logLine) readPain(sets []program.SetDone) {
	cell := l.cell(columnPain)
	if cell == "" {
		return
	}
	parts := painParts(cell, len(sets))
	first, ok := l.spread(columnPain, len(parts), len(sets))
	for i := 0; ok && i < len(parts); i++ {
		if part := strings.TrimSpace(parts[i]); !isDash(part) {
			sets[first+i].Pain, ok = l.pain(part)
		}
	}
}

// painParts divides a cell by |, or into numbers alone, one a set.
func painParts(cell string, sets int) []string {
	if strings.Contains(cell, "|") {
		return strings.Split(cell, "|")
	}
	fields := strings.Fields(cell)
	for _, f := range fields {
		if !isDash(f) && (f[0] < '0' || f[0] > '9') {
			return []string{cell}
		}
	}
	if len(fields) > 1 {
		return fields
	}
	return []string{cell}
}
