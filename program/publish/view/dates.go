package view

import (
	"strconv"
	"strings"

	"gatepost/program"
)

// date writes a day in full: "30 November 2027".
func (s *speech) date(d program.Date) string {
	if d == 0 {
		return ""
	}
	year, _, day := d.Time().Date()
	return s.say("date.long", "day", strconv.Itoa(day), "month", s.monthName(d), "year", strconv.Itoa(year))
}

// day writes a day of the block: "Monday 11 January".
func (s *speech) day(d program.Date) string {
	return s.say("date.short", "weekday", s.weekday(d), "day", strconv.Itoa(d.Time().Day()), "month", s.monthName(d))
}

// brief writes a day without its year: "11 Jan".
func (s *speech) brief(d program.Date) string {
	return s.say("date.day", "day", strconv.Itoa(d.Time().Day()), "month", s.monthShort(d))
}

// month writes a month of a forecast: "November 2027".
func (s *speech) month(d program.Date) string {
	if d == 0 {
		return ""
	}
	return s.say("date.month", "month", s.monthName(d), "year", strconv.Itoa(d.Time().Year()))
}

// span writes a stretch of days: "11 to 17 Jan", "25 Jan to 7 Feb".
func (s *speech) span(from, to program.Date) string {
	if from.Time().Month() == to.Time().Month() && from.Time().Year() == to.Time().Year() {
		return s.say("date.within", "from", strconv.Itoa(from.Time().Day()),
			"day", strconv.Itoa(to.Time().Day()), "month", s.monthShort(to))
	}
	return s.say("date.span", "from", s.brief(from), "to", s.brief(to))
}

func (s *speech) monthName(d program.Date) string {
	return s.say("month." + strings.ToLower(d.Time().Month().String()))
}

func (s *speech) monthShort(d program.Date) string {
	return s.say("month_short." + strings.ToLower(d.Time().Month().String()))
}

func (s *speech) weekday(d program.Date) string {
	return s.say("weekday." + strings.ToLower(d.Weekday().String()))
}

func (s *speech) weekdayShort(d program.Date) string {
	return s.say("weekday_short." + strings.ToLower(d.Weekday().String()))
}
