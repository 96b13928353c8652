package intake

import (
	"fmt"
	"strings"

	"gatepost/program"
)

// readSets reads the sets of the line, with what is said of each.
func (l *logLine) readSets(e *program.Entry) {
	holds, heldOK := l.amounts(columnHold)
	reps, countedOK := l.amounts(columnReps)
	if !heldOK || !countedOK {
		return // how many sets there are is not known
	}
	if holds.n > 0 && reps.n > 0 {
		l.fault(l.at(columnReps), "a set is held or counted, not both", "Leave hold_s or reps empty.")
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
	longest := 0.0
	missing := holds.n+reps.n == 0
	for i, s := range e.Sets {
		longest = max(longest, s.Seconds)
		missing = missing || holds.n > 0 && holds.x[i] == unsaid || reps.n > 0 && reps.x[i] == unsaid
	}
	switch {
	case e.Step != "" && reps.n > 0:
		l.fault(l.at(columnReps), "a step is held, not counted", "Write the seconds of each set under hold_s.")
	case reps.n > 0 && dose.Reps == 0 && dose.Hold > 0:
		l.doubt(l.at(columnReps), fmt.Sprintf("%s is held, and counted here", e.Exercise), "If these are seconds, write them under hold_s.")
	case holds.n > 0 && dose.Hold == 0 && dose.Reps > 0:
		l.doubt(l.at(columnHold), fmt.Sprintf("%s is counted, and held here", e.Exercise), "If these are repetitions, write them under reps.")
	case e.Step != "" && longest > longStep:
		l.doubt(l.at(columnHold), fmt.Sprintf("a step held for %s s is unusual", short(longest)), "Look for a missing space between two sets, or a value in the wrong column.")
	case missing:
		l.doubt(l.start(), "a set stands here without seconds or repetitions", "It is kept so; fill it in if the card has it.")
	}
}

// readNumber reads the number of a set, and numbers those of a whole exercise.
func (l *logLine) readNumber(sets []program.SetDone) {
	cell := l.cell(columnSet)
	switch {
	case cell != "" && len(sets) > 1:
		l.fault(l.at(columnSet), "a set's number stands beside several sets", "Leave it empty: they are numbered in their order.")
	case cell != "":
		x, ok := l.number(columnSet, cell, cell)
		if ok && (x < 1 || x > 50 || x != float64(int(x))) {
			l.fault(l.at(columnSet), fmt.Sprintf("there is no set %s", short(x)), "Sets are numbered from 1.")
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
	if message, advice := damage(l.cell(c)); message != "" {
		l.fault(l.at(c), message, advice)
		return 0, false
	}
	l.fault(l.at(c), fmt.Sprintf("%d values of %s stand beside %s", parts, c, plural(sets, "set")), "Write one for the last set, or one a set; - stands for one not said.")
	return 0, false
}

func (l *logLine) readRPE(sets []program.SetDone) {
	cell := l.cell(columnRPE)
	if l.words.saysPain(cell) {
		l.fault(l.at(columnRPE), fmt.Sprintf("%s is about pain, and RPE is effort", quote(cell)),
			"Pain has a place of its own: the column pain, or the question about it after the last exercise, as in: elbows 3. RPE is a number from 1 to 10.")
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
			l.fault(l.at(columnRPE), fmt.Sprintf("an effort of %s is not possible", short(x)), "RPE is a number from 1 to 10: 10 is all there was, 9 is one more second or two, or one more repetition.")
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
			l.fault(l.at(columnClean), fmt.Sprintf("%s is neither yes nor no", quote(parts[i])), "Write yes where the form held to the end, no where it broke.")
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
		l.fault(l.at(columnClean), "a set that was not held at all can't have been clean", "Write no, or - where nothing was seen.")
		return false
	}
	if said == program.CleanNo && s.Clean == program.CleanUnsaid && s.Seconds == 0 && s.Reps == 0 {
		l.fault(l.at(columnClean), "a set broke, and its seconds or repetitions are not here", "Write them, or 0 where the set was not held at all.")
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
