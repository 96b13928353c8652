package intake

import (
	"math"
	"regexp"
	"slices"
	"strings"

	"gatepost/program"
)

// leanReach is how far ahead of the wrists a shoulder may lean, in centimetres: at
// less than one it is none, and beyond sixty no arm is long enough (our judgement).
const (
	leastLean = 1.0
	mostLean  = 60.0
)

// withUnit is a number and a unit, if of another quantity: 18 deg is no date.
var withUnit = regexp.MustCompile(`^[0-9]+ \p{Ll}+$`)

// readAhead reads how far a lean went, where it was not as printed.
func (l *logLine) readAhead(e *program.Entry) {
	written := l.cell(columnAhead)
	if written == "" || isDash(written) {
		return
	}
	x, wrong := l.words.lean(written)
	switch {
	case wrong != nil:
		l.fault(l.at(columnAhead), wrong...)
		return
	case e.Step != "":
		l.fault(l.at(columnAhead), "ahead_step", "written", quote(e.Step))
		return
	case e.Exercise != "" && !slices.Contains(l.known.leans, e.Exercise):
		l.fault(l.at(columnAhead), "ahead_no_lean", "written", quote(e.Exercise))
		return
	}
	e.Ahead = x
}

// lean reads a length, a plain number being one in centimetres, to the millimetre.
func (w *logWords) lean(written string) (x float64, wrong fault) {
	s := strings.ReplaceAll(written, ",", ".")
	if _, fault := parseNumber(s); fault == "" {
		s += " cm"
	}
	x, none := length.parse(s)
	switch cm := 100 * x; {
	case none != "" && len(strings.Fields(written)) > 1 && allNumbers(strings.Fields(written)):
		return 0, fault{"ahead_several", "written", quote(written)}
	case none != "":
		if wrong := damage(written); wrong != nil && !withUnit.MatchString(written) {
			return 0, wrong
		}
		return 0, fault{"ahead_not", "written", quote(written)}
	case cm < leastLean:
		return 0, fault{"ahead_short", "written", quote(written)}
	case cm > mostLean+1e-9:
		return 0, fault{"ahead_far", "lean", w.number(math.Round(10*cm) / 10), "most", w.number(mostLean)}
	}
	return math.Round(1000*x) / 1000, nil
}

func allNumbers(fields []string) bool {
	return !slices.ContainsFunc(fields, func(s string) bool { _, fault := parseNumber(s); return fault != "" })
}

// aheadCell writes how far a lean went.
func aheadCell(e *program.Entry) string {
	if e.Ahead == 0 {
		return ""
	}
	return inCentimetres(e.Ahead)
}
