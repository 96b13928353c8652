package intake

import (
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
			l.fault(l.at(c), "too_many_sets", "most", strconv.Itoa(maxSets))
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
		l.fault(l.at(c), "hold_long", "hold", l.words.number(x))
		return 0, false
	case c == columnReps && (x > maxReps || x != float64(int(x))):
		l.fault(l.at(c), "reps_many", "reps", l.words.number(x))
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
	x, wrong := logNumber(written)
	if wrong == nil {
		l.numbers[written] = x
		return x, true
	}
	for _, s := range []string{written, cell} { // a date may have been cut at its spaces
		if damaged := damage(s); damaged != nil {
			wrong = damaged
		}
	}
	l.fault(l.at(c), wrong...)
	return 0, false
}

var (
	oneDecimal = regexp.MustCompile(`^[0-9]+,[0-9]$`)
	withCommas = regexp.MustCompile(`^[0-9]+(,[0-9]+)+$`)
	withSigns  = regexp.MustCompile(`^[0-9]+([/;|+][0-9]+)+$`)
)

func logNumber(s string) (x float64, wrong fault) {
	switch {
	case oneDecimal.MatchString(s):
		s = strings.Replace(s, ",", ".", 1)
	case withCommas.MatchString(s):
		return 0, fault{"commas", "written", quote(s), "spaced", strings.ReplaceAll(s, ",", " ")}
	case withSigns.MatchString(s):
		return 0, fault{"signs", "written", quote(s)}
	}
	x, none := parseNumber(s)
	switch {
	case none == "":
		return x, nil
	case belowZero.MatchString(s):
		return 0, fault{"below_zero", "written", quote(s)}
	case leadingZero.MatchString(s):
		return 0, fault{"leading_zero", "written", quote(s)}
	}
	return 0, fault{"not_number", "written", quote(s)}
}

// damages are what spreadsheets make of numbers and dates.
var damages = []struct {
	form *regexp.Regexp
	key  string
}{
	{regexp.MustCompile(`^#+$`), "sheet_narrow"},
	{regexp.MustCompile(`^#[A-Z/0!?]+`), "sheet_error"},
	{regexp.MustCompile(`^[0-9]+([.,][0-9]+)?[eE][+-]?[0-9]+$`), "sheet_science"},
	{regexp.MustCompile(`^[0-9]{1,2}[-. /]+\p{L}{3,}\.?([-. /]+[0-9]{2,4})?$|^\p{L}{3,}\.?[-. /]+[0-9]{1,4}$`), "sheet_date"},
	{regexp.MustCompile(`^[0-9]{1,4}[-./][0-9]{1,2}[-./][0-9]{1,4}$`), "sheet_date"},
	{regexp.MustCompile(`^[0-9]{1,2}-[0-9]{1,2}$`), "between"},
}

// damage says what a spreadsheet did to a number; nil where it did nothing.
func damage(cell string) fault {
	for _, d := range damages {
		if d.form.MatchString(cell) {
			return fault{d.key, "written", quote(cell)}
		}
	}
	return nil
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
				l.fault(l.at(columnPain), "pain_not", "written", quote(written))
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
	l.fault(l.at(columnPain), "no_joint", "written", quote(joint), "offer", l.offer(joint, l.words.jointNames))
	return false
}

// ofTen reads a whole number from 0 to 10, also written as 2/10.
func (l *logLine) ofTen(cell, written string) (int, bool) {
	x, ok := l.number(columnPain, cell, strings.TrimSuffix(written, "/10"))
	if ok && (x > 10 || x != float64(int(x))) {
		l.fault(l.at(columnPain), "pain_range", "pain", l.words.number(x))
		return 0, false
	}
	return int(x), ok
}
