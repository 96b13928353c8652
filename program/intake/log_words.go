package intake

import "gatepost/program"

// What may stand in place of an exercise, in any case. Like the names of the
// columns they are the same in every language.
const (
	doneWord    = "done"
	morningWord = "morning"
)

// readDone reads a session done as printed; its pain is kept in a set of its own.
func (l *logLine) readDone(e *program.Entry) {
	e.AsPrinted = true
	if l.refusesNumbers("done means as printed, and has no numbers", "Name the exercise that these are of, in a line of its own.") {
		return
	}
	if l.cell(columnPain) != "" {
		e.Sets = l.sets(1)
		l.readPain(e.Sets)
	}
}

// readMorning reads how the joints felt; as of a session done, in a set of its
// own. Whoever writes a morning has looked, so that an empty cell is 0 at all
// joints; a dash says that nobody did.
func (l *logLine) readMorning(e *program.Entry) {
	e.Morning = true
	if l.refusesNumbers("morning is about the joints, and has no numbers of a session",
		"Joints stand under pain, as in: wrists 0 elbows 3; what was done has lines of its own, with their date.") {
		return
	}
	e.Sets = l.sets(1)
	switch written := l.cell(columnPain); {
	case written == "":
		e.Sets[0].Pain = program.Pain{Given: true}
	case isDash(written):
		l.fault(l.at(columnPain), "the line says nothing of the morning", "Write joints with their numbers, as in: wrists 0 elbows 3; or take the line away.")
	default:
		e.Sets[0].Pain, _ = l.pain(written)
	}
}

// refusesNumbers finds what only a line about an exercise can have, and says so.
func (l *logLine) refusesNumbers(message, advice string) bool {
	for _, c := range []column{columnSet, columnBands, columnHold, columnReps, columnRPE, columnClean} {
		if l.cell(c) != "" {
			l.fault(l.at(c), message, advice)
			return true
		}
	}
	return false
}
