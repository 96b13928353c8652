package intake

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"

	"gatepost/program"

	"gopkg.in/yaml.v3"
)

// scalar is the single value as it was written, surrounding space taken off.
func (v value) scalar() (string, bool) {
	if v.node.Kind != yaml.ScalarNode {
		v.wrong("is a list or group; one value is wanted", "Write %s", v.example())
		return "", false
	}
	v.checkSwallowed()
	return strings.TrimSpace(v.node.Value), true
}

// checkSwallowed warns where the rest of an unquoted value may have become a
// comment unawares, as in "name: A #1 plan".
func (v value) checkSwallowed() {
	at := v.here()
	line := []rune(at.Text)
	end := at.Column - 1 + len([]rune(v.node.Value))
	if v.node.Style != 0 || end > len(line) {
		return
	}
	rest := strings.TrimLeft(string(line[end:]), " ")
	if len(rest) > 1 && rest[0] == '#' && !strings.ContainsAny(rest[1:2], " \t#") {
		at.Column += len([]rune(v.node.Value)) + len(line[end:]) - len([]rune(rest))
		v.doubt(at, fmt.Sprintf("the value ends before %s, which is read as a comment", quote(rest)),
			fmt.Sprintf("If it belongs to the value, put all of it in quotes: %s: %q. If not, put a space after #.", v.name(), v.node.Value+" "+rest))
	}
}

// maxText is the longest text of one line: a name, a contact.
const maxText = 200

// text reads words that must not be empty.
func text(into *string) read {
	return func(v value) {
		if optionalText(into)(v); *into == "" && v.node.Kind == yaml.ScalarNode && strings.TrimSpace(v.node.Value) == "" {
			v.wrong("is empty", "Fill it in, for example: %s", v.example())
		}
	}
}

// optionalText reads words; "" means there are none.
func optionalText(into *string) read {
	return func(v value) {
		s, ok := v.scalar()
		switch {
		case !ok:
		case v.node.Tag != "!!str":
			v.wrong(fmt.Sprintf("is read as a number, date or yes/no, not as words: %s", quote(s)), "Put it in quotes: %q", s)
		case len([]rune(s)) > maxText:
			v.wrong("is too long", "At most %d characters fit.", maxText)
		case strings.ContainsFunc(s, unicode.IsControl):
			v.wrong("has a line break or another control character in it", "Write it on one line: %s", v.example())
		default:
			*into = s
		}
	}
}

// prose reads Markdown of several lines.
func prose(into *string) read {
	return func(v value) {
		if v.node.Kind != yaml.ScalarNode || v.node.Tag != "!!str" {
			v.wrong("is not text", "Write %s", v.example())
			return
		}
		*into = v.node.Value
	}
}

// choice reads one of a few words.
func choice[T ~string](into *T, allowed ...T) read {
	return func(v value) {
		s, ok := v.scalar()
		if !ok {
			return
		}
		for _, a := range allowed {
			if fold(s) == fold(string(a)) {
				*into = a
				return
			}
		}
		var words []string
		for _, a := range allowed {
			words = append(words, string(a))
		}
		v.say(v.here(), fmt.Sprintf("%s is not one of the words for %s", quote(s), quote(v.name())), offer(s, words))
	}
}

// yesNo reads true or false.
func yesNo(into *bool) read {
	return func(v value) {
		s, ok := v.scalar()
		if ok && s != "true" && s != "false" {
			v.say(v.here(), fmt.Sprintf("%s is neither true nor false", quote(s)), fmt.Sprintf("Write %s", v.example()))
		}
		*into = s == "true"
	}
}

// plainNumber is the only form of a number: no exponent, no leading zero, no
// underscore, which YAML would each read in its own way.
var (
	plainNumber  = regexp.MustCompile(`^(0|[1-9][0-9]{0,8})(\.[0-9]{1,6})?$`)
	leadingZero  = regexp.MustCompile(`^0[0-9]`)
	decimalComma = regexp.MustCompile(`^[0-9]+,[0-9]+$`)
	belowZero    = regexp.MustCompile(`^-[0-9]`)
)

// number reads a number that has no unit.
func number(into *float64, least, most float64) read {
	return func(v value) {
		s, ok := v.scalar()
		if !ok {
			return
		}
		x, fault := parseNumber(s)
		switch {
		case fault != "":
			v.say(v.here(), fmt.Sprintf("%s %s", quote(s), fault), fmt.Sprintf("Write a plain number, for example: %s", v.example()))
		case x < least || x > most:
			v.say(v.here(), fmt.Sprintf("%s is out of range", quote(s)), fmt.Sprintf("%s lies between %s and %s.", quote(v.name()), short(least), short(most)))
		default:
			*into = x
		}
	}
}

// whole reads a whole number that has no unit.
func whole(into *int, least, most int) read {
	return func(v value) {
		var x float64
		before := len(v.problems)
		number(&x, float64(least), float64(most))(v)
		switch {
		case len(v.problems) > before && v.problems[len(v.problems)-1].Place == v.here():
		case x != float64(int(x)):
			v.wrong("is not a whole number", "Write, for example: %s", v.example())
		default:
			*into = int(x)
		}
	}
}

// parseNumber reads a plain number, or says what is wrong with it.
func parseNumber(s string) (x float64, fault string) {
	switch {
	case plainNumber.MatchString(s):
		x, _ = strconv.ParseFloat(s, 64)
		return x, ""
	case belowZero.MatchString(s):
		return 0, "is below zero"
	case leadingZero.MatchString(s):
		return 0, "begins with a zero, which some programs read as octal"
	case decimalComma.MatchString(s):
		return 0, "has a comma; the decimal sign here is a point"
	}
	return 0, "is not a plain number"
}

// short writes a number without needless digits.
func short(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }

// date reads an ISO 8601 calendar date between two years.
func date(into *program.Date, firstYear, lastYear int) read {
	return func(v value) {
		if s, ok := v.scalar(); ok {
			*into, _ = v.date(s, firstYear, lastYear)
		}
	}
}

// date reads a date out of the value, or notes what is wrong.
func (v value) date(s string, firstYear, lastYear int) (program.Date, bool) {
	d, err := program.ParseDate(s)
	switch {
	case err != nil:
		v.say(v.here(), fmt.Sprintf("%s is not a date", quote(s)), dateAdvice(s, v.example()))
		return 0, false
	case d.Time().Year() < firstYear || d.Time().Year() > lastYear:
		v.say(v.here(), fmt.Sprintf("%s is not a likely date", d), fmt.Sprintf("%s lies between %d and %d.", quote(v.name()), firstYear, lastYear))
		return 0, false
	}
	return d, true
}

var isoShape = regexp.MustCompile(`^\d{4}-\d\d-\d\d$`)

func dateAdvice(s, example string) string {
	if t, err := time.Parse("2006-1-2", strings.ReplaceAll(s, "/", "-")); err == nil {
		return fmt.Sprintf("Write year-month-day with two digits each: %s", t.Format(time.DateOnly))
	}
	if isoShape.MatchString(s) {
		return "There is no such day in the calendar."
	}
	return "Write year-month-day: " + example
}

// interval reads an ISO 8601 interval of days, both ends included; a single
// date is one day.
func interval(into *program.Interval) read {
	return func(v value) {
		s, ok := v.scalar()
		if !ok {
			return
		}
		from, to, two := strings.Cut(s, "/")
		if !two {
			to = from
		}
		a, okA := v.date(strings.TrimSpace(from), 2000, 2150)
		if !okA {
			return
		}
		b, okB := v.date(strings.TrimSpace(to), 2000, 2150)
		switch {
		case !okB:
		case b < a:
			v.say(v.here(), fmt.Sprintf("the interval ends on %s, before it starts", b), "Write the earlier day first: "+fmt.Sprintf("%s/%s", b, a))
		case b-a > 366:
			v.say(v.here(), "the interval is longer than a year", "Assess again after a break of this length.")
		default:
			*into = program.Interval{From: a, To: b}
		}
	}
}

var weekdays = []string{"monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"}

// weekday reads mon … sun, or the whole name.
func weekday(into *time.Weekday) read {
	return func(v value) {
		s, ok := v.scalar()
		if !ok {
			return
		}
		for i, day := range weekdays {
			if fold(s) == day || fold(s) == day[:3] {
				*into = time.Weekday((i + 1) % 7)
				return
			}
		}
		v.say(v.here(), fmt.Sprintf("%s is not a day of the week", quote(s)), offer(s, weekdays))
	}
}

// fromMonday sorts days in the order of the week.
func fromMonday(days []time.Weekday) {
	slices.SortFunc(days, func(a, b time.Weekday) int { return int(a+6)%7 - int(b+6)%7 })
}
