package program

import (
	"fmt"
	"time"
)

// Date is a civil day, counted from 1970-01-01 (day 0). It has no clock and no
// time zone, so that the same input gives the same bytes anywhere.
// The zero Date is "not given"; no client is measured on that day.
type Date int

// NewDate gives the Date of a civil year, month and day.
func NewDate(year int, month time.Month, day int) Date {
	return Date(time.Date(year, month, day, 0, 0, 0, 0, time.UTC).Unix() / 86400)
}

// ParseDate reads an ISO 8601 calendar date, YYYY-MM-DD, and nothing else.
func ParseDate(s string) (Date, error) {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil {
		return 0, fmt.Errorf("%q is not a date", s)
	}
	return NewDate(t.Date()), nil
}

// Time is the day's midnight in UTC.
func (d Date) Time() time.Time { return time.Unix(int64(d)*86400, 0).UTC() }

// String is the ISO 8601 form, YYYY-MM-DD; empty for the zero Date.
func (d Date) String() string {
	if d == 0 {
		return ""
	}
	return d.Time().Format(time.DateOnly)
}

// MarshalText writes the ISO 8601 form, so that JSON carries dates people read.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads the ISO 8601 form; an empty text is the zero Date.
func (d *Date) UnmarshalText(text []byte) (err error) {
	if *d = 0; len(text) > 0 {
		*d, err = ParseDate(string(text))
	}
	return err
}

// Weekday is the day of the week.
func (d Date) Weekday() time.Weekday { return d.Time().Weekday() }

// Monday is the first day of the date's ISO 8601 week.
func (d Date) Monday() Date { return d - Date((int(d.Weekday())+6)%7) }

// Month is the middle of the date's month, for who is not to know the day; of the zero
// Date the zero Date.
func (d Date) Month() Date {
	if d == 0 {
		return 0
	}
	year, month, _ := d.Time().Date()
	return NewDate(year, month, 15)
}

// YearsSince counts full years from an earlier date, as a birthday does.
func (d Date) YearsSince(born Date) int {
	a, b := born.Time(), d.Time()
	years := b.Year() - a.Year()
	if b.Month() < a.Month() || b.Month() == a.Month() && b.Day() < a.Day() {
		years--
	}
	return years
}

// Interval is a stretch of days with both ends included.
type Interval struct{ From, To Date }

// Has says whether a day lies in the interval.
func (v Interval) Has(d Date) bool { return v.From <= d && d <= v.To }
