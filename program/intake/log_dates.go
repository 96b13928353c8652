package intake

import (
	"fmt"
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
		l.fault(l.at(columnDate), "the line has no date", "Each line has its own: write it here too.")
		return
	}
	d, message, advice := logDate(s, l.known.dates)
	if message == "" && (d.Time().Year() < earliest || d.Time().Year() > latest) {
		message, advice = fmt.Sprintf("%s is not a likely date", quote(s)), fmt.Sprintf("The year lies between %d and %d.", earliest, latest)
	}
	if message != "" {
		l.fault(l.at(columnDate), message, advice)
		return
	}
	e.Date = d
	l.lastWritten, l.lastDay = s, d
}

var (
	yearFirst   = regexp.MustCompile(`^(\d{4})[-./](\d{1,2})[-./](\d{1,2})\.?$`)
	yearLast    = regexp.MustCompile(`^(\d{1,2})[-./] ?(\d{1,2})[-./] ?(\d{4}|\d{2})$`)
	dayAndMonth = regexp.MustCompile(`^[0-9]{1,2}[-./ ]+(\p{L}{3,}\.?|[0-9]{1,2}\.?)$|^\p{L}{3,}\.?[-./ ]+[0-9]{1,2}$`)
	dayNumber   = regexp.MustCompile(`^[34567]\d{4}$`)
)

// logDate reads a date of numbers: year first, or in the studio's order. One
// that reads as two different days is asked about, never guessed.
func logDate(s string, order program.DateOrder) (d program.Date, message, advice string) {
	if m := yearFirst.FindStringSubmatch(s); m != nil {
		return civil(s, number3(m[1], m[2], m[3]))
	}
	m := yearLast.FindStringSubmatch(s)
	if m == nil {
		return 0, fmt.Sprintf("%s is not a date", quote(s)), logDateAdvice(s)
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
	return 0, fmt.Sprintf("%s could be two different days", quote(s)),
		"Say once how dates are written here, in studio.yaml, dates: day-first or dates: month-first; or write the year first: 2027-01-11"
}

func number3(year, month, day string) (n [3]int) {
	for i, s := range []string{year, month, day} {
		n[i], _ = strconv.Atoi(s) // digits by the forms above
	}
	return n
}

// civil is the day of a year, month and day, where the calendar has it.
func civil(s string, n [3]int) (program.Date, string, string) {
	t := time.Date(n[0], time.Month(n[1]), n[2], 0, 0, 0, 0, time.UTC)
	if t.Year() != n[0] || int(t.Month()) != n[1] || t.Day() != n[2] {
		return 0, fmt.Sprintf("%s is no day of the calendar", quote(s)), "Look at the day and the month, and at dates: in studio.yaml; year first is always understood: 2027-01-11"
	}
	return program.NewDate(t.Date()), "", ""
}

// logDateAdvice knows what spreadsheets make of dates. Their day numbers count
// from 1899-12-30, the usual default (common knowledge among them).
func logDateAdvice(s string) string {
	if dayNumber.MatchString(s) {
		n, _ := strconv.Atoi(s)
		return fmt.Sprintf("This is how a spreadsheet counts days: format the column as a date with the year first; here probably %s.", program.NewDate(1899, time.December, 30)+program.Date(n))
	}
	if dayAndMonth.MatchString(s) {
		return "The year is missing; format the column as a date with the year first: 2027-01-11"
	}
	if _, advice := damage(s); advice != "" && s[0] == '#' {
		return advice
	}
	return "Write the year first: 2027-01-11"
}
