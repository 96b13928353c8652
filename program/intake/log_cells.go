package intake

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"gatepost/program"
)

// Limits of what a cell may hold: our judgement, wide enough for every athlete,
// narrow enough to catch a value in the wrong column.
const (
	maxSets  = 20
	maxHold  = 300 // s, as in a test
	longStep = 60  // s: a step held longer than this is nearly always a slip
	maxReps  = 200
	unsaid   = -1 // a dash in place of a number
)

// amounts are the sets of one cell.
type amounts struct {
	n int
	x [maxSets]float64
}

var timesForm = regexp.MustCompile(`^([0-9]{1,2})\s*[x×*]\s*(\S.*)$`)

// amounts reads seconds or repetitions: one, one a set, or 4 x 12.
func (l *logLine) amounts(c column) (a amounts, ok bool) {
	cell := l.cell(c)
	times := 1
	if strings.ContainsAny(cell, "x×*") {
		if m := timesForm.FindStringSubmatch(cell); m != nil {
			times, _ = strconv.Atoi(m[1])
			cell = m[2]
		}
	}
	for written := range strings.FieldsSeq(cell) {
		if written = strings.TrimRight(written, ",;"); written == "s" || written == "" {
			continue
		}
		x, ok := l.amount(c, cell, written)
		if !ok {
			return amounts{}, false
		}
		if times < 1 || times > maxSets || a.n+times > maxSets {
			l.fault(l.at(c), "these are too many sets for one line", fmt.Sprintf("At most %d fit; look at the spaces, or write a line a set.", maxSets))
			return amounts{}, false
		}
		for range times {
			a.x[a.n] = x
			a.n++
		}
	}
	return a, true
}

// amount reads the number of one set.
func (l *logLine) amount(c column, cell, written string) (float64, bool) {
	if isDash(written) {
		return unsaid, true
	}
	if n := len(written); n > 1 && written[n-1] == 's' && '0' <= written[n-2] && written[n-2] <= '9' {
		written = written[:n-1] // 12s
	}
	x, ok := l.number(c, cell, written)
	switch {
	case !ok:
		return 0, false
	case c == columnHold && x > maxHold:
		l.fault(l.at(c), fmt.Sprintf("a hold of %s s is not possible", short(x)), "The column has seconds; look for a missing space between two sets.")
		return 0, false
	case c == columnReps && (x > maxReps || x != float64(int(x))):
		l.fault(l.at(c), fmt.Sprintf("%s repetitions are not possible", short(x)), "The column has whole numbers; look for a missing space between two sets.")
		return 0, false
	}
	return x, true
}

func isDash(s string) bool { return s == "-" || s == "–" || s == "—" }

// number reads a plain number with a decimal point or comma. cell is all that
// stands in the column.
func (l *logLine) number(c column, cell, written string) (float64, bool) {
	if x, known := l.numbers[written]; known {
		return x, true
	}
	x, message, advice := logNumber(written)
	if message == "" {
		l.numbers[written] = x
		return x, true
	}
	for _, s := range []string{written, cell} { // a date may have been cut at its spaces
		if m, a := damage(s); m != "" {
			message, advice = m, a
		}
	}
	l.fault(l.at(c), message, advice)
	return 0, false
}

var (
	oneDecimal = regexp.MustCompile(`^[0-9]+,[0-9]$`)
	withCommas = regexp.MustCompile(`^[0-9]+(,[0-9]+)+$`)
	withSigns  = regexp.MustCompile(`^[0-9]+([/;|+][0-9]+)+$`)
)

func logNumber(s string) (x float64, message, advice string) {
	switch {
	case oneDecimal.MatchString(s):
		s = strings.Replace(s, ",", ".", 1)
	case withCommas.MatchString(s):
		return 0, fmt.Sprintf("%s could be several sets or a fraction", quote(s)),
			fmt.Sprintf("Write %s for several sets, with spaces; a fraction has a point.", strings.ReplaceAll(s, ",", " "))
	case withSigns.MatchString(s):
		return 0, fmt.Sprintf("%s is not a number", quote(s)), "Write several sets with spaces between them: 12 12 11 9"
	}
	x, fault := parseNumber(s)
	if fault != "" {
		return 0, fmt.Sprintf("%s %s", quote(s), fault), "Write a number, or one a set with spaces between them: 12 12 11 9"
	}
	return x, "", ""
}

// asText is how to keep a spreadsheet from meddling.
const asText = "Format the column as text there, and type the value again, as in: 12 12 11 9"

// damages are what spreadsheets make of numbers and dates.
var damages = []struct {
	form    *regexp.Regexp
	message string
	advice  string
}{
	{regexp.MustCompile(`^#+$`), "%s is what a spreadsheet shows where a column is too narrow; the value is gone", "Widen the column there, and save it again."},
	{regexp.MustCompile(`^#[A-Z/0!?]+`), "%s is a spreadsheet's error", "Mend the formula there, and save it again."},
	{regexp.MustCompile(`^[0-9]+([.,][0-9]+)?[eE][+-]?[0-9]+$`), "%s is a number in a spreadsheet's scientific form", asText},
	{regexp.MustCompile(`^[0-9]{1,2}[-. /]+\p{L}{3,}\.?([-. /]+[0-9]{2,4})?$|^\p{L}{3,}\.?[-. /]+[0-9]{1,4}$`), "%s is a date that a spreadsheet made of numbers", asText},
	{regexp.MustCompile(`^[0-9]{1,4}[-./][0-9]{1,2}[-./][0-9]{1,4}$`), "%s is a date that a spreadsheet made of numbers", asText},
	{regexp.MustCompile(`^[0-9]{1,2}-[0-9]{1,2}$`), "%s is neither one number nor two", "Write 8.5 for something between 8 and 9, and several sets with spaces: 12 12 11 9"},
}

// damage says what a spreadsheet did to a number; empty where it did nothing.
func damage(cell string) (message, advice string) {
	for _, d := range damages {
		if d.form.MatchString(cell) {
			return fmt.Sprintf(d.message, quote(cell)), d.advice
		}
	}
	return "", ""
}

// joints are the words for where it hurts, as they are written; of each, any
// beginning will do.
var joints = []string{"wrists", "elbows", "shoulders", "other"}

// pain reads pain of ten: a number alone, or joints with numbers.
func (l *logLine) pain(written string) (p program.Pain, ok bool) {
	if p, known := l.pains[written]; known {
		return p, true
	}
	p = program.Pain{Given: true}
	if written != "0" && !slices.Contains(l.words.none, fold(written)) {
		p.Wrists, p.Elbows, p.Shoulders, p.Other = unsaid, unsaid, unsaid, unsaid
		if !l.somePain(&p, written) {
			if !l.wrong {
				l.fault(l.at(columnPain), fmt.Sprintf("%s is not a pain", quote(written)), "Write a number from 0 to 10, or joints with their numbers: wrists 2 elbows 1")
			}
			return p, false
		}
	}
	l.pains[written] = p
	return p, true
}

func (l *logLine) somePain(p *program.Pain, written string) (ok bool) {
	fields := strings.FieldsFunc(written, func(r rune) bool { return strings.ContainsRune(" :=,", r) })
	if len(fields) == 1 && !unicode.IsLetter([]rune(written)[0]) {
		p.Other, ok = l.ofTen(written, fields[0])
		return ok
	}
	ok = len(fields) > 0 && len(fields)%2 == 0
	for i := 0; ok && i < len(fields); i += 2 {
		ok = l.jointPain(p, written, fields[i], fields[i+1])
	}
	return ok
}

func (l *logLine) jointPain(p *program.Pain, cell, joint, number string) bool {
	into := []*int{&p.Wrists, &p.Elbows, &p.Shoulders, &p.Other}
	if i := l.words.joint(joint); i >= 0 {
		if *into[i] != unsaid {
			return false
		}
		x, ok := l.ofTen(cell, number)
		*into[i] = x
		return ok
	}
	l.fault(l.at(columnPain), fmt.Sprintf("there is no joint %s here", quote(joint)), offer(joint, joints))
	return false
}

// ofTen reads a whole number from 0 to 10, also written as 2/10.
func (l *logLine) ofTen(cell, written string) (int, bool) {
	x, ok := l.number(columnPain, cell, strings.TrimSuffix(written, "/10"))
	if ok && (x > 10 || x != float64(int(x))) {
		l.fault(l.at(columnPain), fmt.Sprintf("pain of %s of ten is not possible", short(x)), "Pain is a whole number from 0 to 10.")
		return 0, false
	}
	return int(x), ok
}
