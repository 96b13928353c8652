package intake

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"gatepost/program"
)

// date reads a calendar date between two years.
func date(into *program.Date, firstYear, lastYear int) read {
	return func(v value) {
		if s, ok := v.scalar(); ok {
			*into, _ = v.date(s, firstYear, lastYear)
		}
	}
}

// date reads a date out of the value, or notes what is wrong.
func (v value) date(s string, firstYear, lastYear int) (program.Date, bool) {
	d, wrong := wholeDate(s, v.dates, v.example())
	switch {
	case wrong != nil:
		v.fault(wrong...)
		return 0, false
	case d.Time().Year() < firstYear || d.Time().Year() > lastYear:
		v.fault("iso_unlikely", "day", d.String(), "name", quote(v.name()), "least", strconv.Itoa(firstYear), "most", strconv.Itoa(lastYear))
		return 0, false
	}
	return d, true
}

var fourDigits = regexp.MustCompile(`[0-9]{4}`)

// wholeDate reads a date as a log does, but with all digits of its year: nobody can tell
// the 85 of a birthday.
func wholeDate(s string, order program.DateOrder, example string) (program.Date, fault) {
	d, wrong := logDate(s, order)
	if !fourDigits.MatchString(s) || wrong != nil && !slices.Contains([]string{"date_two_days", "date_no_day"}, wrong[0]) {
		return 0, fault{"iso_form", "written", quote(s), "example", example}
	}
	return d, wrong
}

// daysWritten are one day or two, each in any form that has all digits of its year: what
// stands between them may be a slash, but may as well stand within them.
var daysWritten = regexp.MustCompile(`^(` + dayWritten + `)(?:\s*(?:/|-|–|to|bis)\s*(` + dayWritten + `))?$`)

const dayWritten = `\d{4}-\d{1,2}-\d{1,2}|\d{1,2}[/.]\d{1,2}[/.]\d{4}`

// interval reads an ISO 8601 interval of days, both ends included, or two days as a log has
// them; a single date is one day.
func interval(into *program.Interval) read {
	return func(v value) {
		s, ok := v.scalar()
		if !ok {
			return
		}
		from, to, _ := strings.Cut(s, "/")
		if m := daysWritten.FindStringSubmatch(s); m != nil {
			from, to = m[1], m[2]
		}
		if to == "" {
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
			v.fault("interval_back", "to", b.String(), "line", fmt.Sprintf("%s/%s", b, a))
		case b-a > 366:
			v.fault("interval_long")
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
		v.fault("not_weekday", "written", quote(s), "offer", offerIn(v.words(), s, weekdays))
	}
}

// fromMonday sorts days in the order of the week.
func fromMonday(days []time.Weekday) {
	slices.SortFunc(days, func(a, b time.Weekday) int { return int(a+6)%7 - int(b+6)%7 })
}
