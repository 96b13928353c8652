package intake

import (
	"fmt"
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

const leanAdvice = "Write centimetres, for example: 18 cm; 18 is read as that, and 7 in too. Words belong under note."

// withUnit is a number and a unit, if of another quantity: 18 deg is no date.
var withUnit = regexp.MustCompile(`^[0-9]+ \p{Ll}+$`)

// readAhead reads how far a lean went, where it was not as printed.
func (l *logLine) readAhead(e *program.Entry) {
	written := l.cell(columnAhead)
	if written == "" || isDash(written) {
		return
	}
	x, message, advice := leanOf(written)
	switch {
	case message != "":
		l.fault(l.at(columnAhead), message, advice)
		return
	case e.Step != "":
		l.fault(l.at(columnAhead), fmt.Sprintf("%s is a step, which has no distance of its own", quote(e.Step)), "Leave ahead empty; a lean has a line of its own, under its exercise.")
		return
	case e.Exercise != "" && !slices.Contains(l.known.leans, e.Exercise):
		l.fault(l.at(columnAhead), fmt.Sprintf("%s is no lean, and has no distance", quote(e.Exercise)), "Leave ahead empty.")
		return
	}
	e.Ahead = x
}

// leanOf reads a length, a plain number being one in centimetres, to the millimetre.
func leanOf(written string) (x float64, message, advice string) {
	s := strings.ReplaceAll(written, ",", ".")
	if _, fault := parseNumber(s); fault == "" {
		s += " cm"
	}
	x, fault := length.parse(s)
	switch cm := 100 * x; {
	case fault != "" && len(strings.Fields(written)) > 1 && allNumbers(strings.Fields(written)):
		return 0, fmt.Sprintf("%s is more than one distance", quote(written)), "A line has one; write a line for each."
	case fault != "":
		if message, advice := damage(written); message != "" && !withUnit.MatchString(written) {
			return 0, message, advice
		}
		return 0, fmt.Sprintf("%s is not a length", quote(written)), leanAdvice
	case cm < leastLean:
		return 0, fmt.Sprintf("%s ahead is no lean", quote(written)), "Leave it empty where the lean was as printed. " + leanAdvice
	case cm > mostLean+1e-9:
		return 0, fmt.Sprintf("a lean of %s cm is not possible", short(math.Round(10*cm)/10)), fmt.Sprintf("Expected at most %s cm, from the wrist crease to the shoulder's plumb line.", short(mostLean))
	}
	return math.Round(1000*x) / 1000, "", ""
}

func allNumbers(fields []string) bool {
	return !slices.ContainsFunc(fields, func(s string) bool { _, fault := parseNumber(s); return fault != "" })
}

// aheadCell writes how far a lean went.
func aheadCell(e *program.Entry) string {
	if e.Ahead == 0 {
		return ""
	}
	return short(math.Round(1000*e.Ahead)/10) + " cm"
}
