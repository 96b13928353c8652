package intake

import (
	"regexp"
	"strconv"
	"time"

	"gatepost/program"
)

// readDate reads the line's date.
func (l *logLine) readDate(e *program.Entry) {
	s := l.cell(columnDate)
	if s == l.lastWritten && s != "" { // most lines have the date of the one above
		e.Date = l.lastDay
		return
	}
	if s == "" {
		l.fault(l.at(columnDate), "no_date")
		return
	}
	d, wrong := logDate(s, l.known.dates)
	if wrong == nil && (d.Time().Year() < earliest || d.Time().Year() > latest) {
		wrong = fault{"date_unlikely", "written", quote(s), "earliest", strconv.Itoa(earliest), "latest", strconv.Itoa(latest)}
	}
	if wrong != nil {
		l.fault(l.at(columnDate), wrong...)
		return
	}
	e.Date = d
	l.lastWritten, l.lastDay = s, d
}

const yearFirstExample = "2027-01-11"

var (
	yearFirst   = regexp.MustCompile(`^(\d{4})[-./](\d{1,2})[-./](\d{1,2})\.?$`)
	yearLast    = regexp.MustCompile(`^(\d{1,2})[-./] ?(\d{1,2})[-./] ?(\d{4}|\d{2})$`)
	dayAndMonth = regexp.MustCompile(`^[0-9]{1,2}[-./ ]+(\p{L}{3,}\.?|[0-9]{1,2}\.?)$|^\p{L}{3,}\.?[-./ ]+[0-9]{1,2}$`)
	dayNumber   = regexp.MustCompile(`^[34567]\d{4}$`)
)

// logDate reads a date of numbers: year first, or in the studio's order. One
// that reads as two different days is asked about, never guessed.
func logDate(s string, order program.DateOrder) (program.Date, fault) {
	if m := yearFirst.FindStringSubmatch(s); m != nil {
		return civil(s, number3(m[1], m[2], m[3]))
	}
	m := yearLast.FindStringSubmatch(s)
	if m == nil {
		return 0, noDate(s)
	}
	year := m[3]
	if len(year) == 2 {
		year = "20" + year // 01/02/27: nobody logs the sets of 1927
	}
	dayFirst, monthFirst := number3(year, m[2], m[1]), number3(year, m[1], m[2])
	switch {
	case order == program.DayFirst:
		return civil(s, dayFirst)
	case order == program.MonthFirst:
		return civil(s, monthFirst)
	case dayFirst == monthFirst || monthFirst[1] > 12:
		return civil(s, dayFirst)
	case dayFirst[1] > 12:
		return civil(s, monthFirst)
	}
	first, _ := civil(s, dayFirst)
	second, _ := civil(s, monthFirst)
	return 0, fault{"date_two_days", "written", quote(s), "first", first.String(), "second", second.String()}
}

func number3(year, month, day string) (n [3]int) {
	for i, s := range []string{year, month, day} {
		n[i], _ = strconv.Atoi(s) // digits by the forms above
	}
	return n
}

// civil is the day of a year, month and day, where the calendar has it.
func civil(s string, n [3]int) (program.Date, fault) {
	t := time.Date(n[0], time.Month(n[1]), n[2], 0, 0, 0, 0, time.UTC)
	if t.Year() != n[0] || int(t.Month()) != n[1] || t.Day() != n[2] {
		return 0, fault{"date_no_day", "written", quote(s), "example", yearFirstExample}
	}
	return program.NewDate(t.Date()), nil
}

// noDate knows what spreadsheets make of dates. Their day numbers count from
// 1899-12-30, the usual default (common knowledge among them).
func noDate(s string) fault {
	if dayNumber.MatchString(s) {
		n, _ := strconv.Atoi(s)
		day := program.NewDate(1899, time.December, 30) + program.Date(n)
		return fault{"date_number", "written", quote(s), "day", day.String()}
	}
	if dayAndMonth.MatchString(s) {
		return fault{"date_no_year", "written", quote(s), "example", yearFirstExample}
	}
	if damaged := damage(s); damaged != nil && s[0] == '#' {
		return damaged
	}
	return fault{"date_not", "written", quote(s), "example", yearFirstExample}
}
