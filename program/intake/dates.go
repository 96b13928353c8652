package intake

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"time"

	"gatepost/program"
)

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
