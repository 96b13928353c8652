package program

import (
	"testing"
	"time"
)

// ISO 8601 weeks begin on Monday, and week 1 holds 4 January. The dates are the
// usual traps at the turn of a year, computed by the standard's rule.
func TestMondayAgainstISOWeeks(t *testing.T) {
	for _, c := range []struct {
		date, monday string
		year, week   int
	}{
		{"2024-12-30", "2024-12-30", 2025, 1},
		{"2026-01-01", "2025-12-29", 2026, 1},
		{"2026-12-31", "2026-12-28", 2026, 53},
		{"2027-01-03", "2026-12-28", 2026, 53},
		{"2027-01-04", "2027-01-04", 2027, 1},
		{"2020-12-31", "2020-12-28", 2020, 53},
	} {
		d, err := ParseDate(c.date)
		if err != nil {
			t.Fatal(err)
		}
		if got := d.Monday().String(); got != c.monday {
			t.Errorf("%s: Monday %s, want %s", c.date, got, c.monday)
		}
		if y, w := d.Monday().Time().ISOWeek(); y != c.year || w != c.week {
			t.Errorf("%s: week %d of %d, want %d of %d", c.date, w, y, c.week, c.year)
		}
	}
}

func TestDatesCountDays(t *testing.T) {
	d := NewDate(2028, time.February, 28)
	for _, want := range []string{"2028-02-28", "2028-02-29", "2028-03-01"} { // a leap year
		if d.String() != want {
			t.Errorf("%s, want %s", d, want)
		}
		d++
	}
	if NewDate(1970, 1, 1) != 0 || Date(0).String() != "" {
		t.Error("day 0 is 1970-01-01 and is written as nothing")
	}
	if _, err := ParseDate("2027-02-29"); err == nil {
		t.Error("2027 has no 29 February")
	}
}

func TestYearsSinceCountsBirthdays(t *testing.T) {
	born := NewDate(2009, 6, 15)
	for _, c := range []struct {
		on   Date
		want int
	}{{NewDate(2027, 6, 14), 17}, {NewDate(2027, 6, 15), 18}, {NewDate(2028, 1, 1), 18}} {
		if got := c.on.YearsSince(born); got != c.want {
			t.Errorf("%s: %d years, want %d", c.on, got, c.want)
		}
	}
}

func TestIntervalHasBothEnds(t *testing.T) {
	v := Interval{NewDate(2027, 2, 15), NewDate(2027, 2, 21)}
	for d, want := range map[Date]bool{v.From - 1: false, v.From: true, v.To: true, v.To + 1: false} {
		if v.Has(d) != want {
			t.Errorf("%s: %v", d, !want)
		}
	}
}
