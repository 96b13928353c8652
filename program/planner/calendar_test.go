package planner

import (
	"slices"
	"testing"
	"time"

	"gatepost/program"
)

// clientOf is maren without days away, bent.
func clientOf(t *testing.T, bend ...func(*program.Assessment)) program.Assessment {
	t.Helper()
	a := maren(t)
	a.Training.Away, a.Training.Other = nil, nil
	for _, b := range bend {
		b(&a)
	}
	return a
}

// programOf is a client's first program.
func programOf(t *testing.T, a program.Assessment) program.Program {
	t.Helper()
	p, problems := Plan(library(t), &a)
	if problems.Stop() || len(p.Withheld) > 0 {
		t.Fatal(problems, p.Withheld)
	}
	return p
}

func on(days ...time.Weekday) func(*program.Assessment) {
	return func(a *program.Assessment) { a.Training.Days = days }
}

func minutes(n int) func(*program.Assessment) {
	return func(a *program.Assessment) { a.Training.Minutes = n }
}

// untrained has held nothing, owns nothing and wants a tuck.
func untrained(a *program.Assessment) {
	noBands(a)
	a.Tests, a.Kit, a.Training.Experience, a.Training.Since = nil, nil, 0, 0
	a.Goal.Step = "tuck"
}

func soreWrists(a *program.Assessment) { a.Health.Wrists = program.JointSore }

func soreElbows(a *program.Assessment) { a.Health.Elbows = program.JointSore }

// aged is so many years old on the day of the tests, on which the birthday lies.
func aged(years int) func(*program.Assessment) {
	return func(a *program.Assessment) {
		m := a.Measured.Time()
		a.Athlete.Born, a.Health.Guardian = program.NewDate(m.Year()-years, m.Month(), m.Day()), "A. Parent"
	}
}

// dayBefore moves a birthday to the day after the tests: a year younger.
func dayBefore(a *program.Assessment) { a.Athlete.Born++ }

// kinds writes a block as one letter a week.
func kinds(p *program.Program) string {
	var out []byte
	for _, w := range p.Weeks {
		out = append(out, w.Kind[0])
	}
	return string(out)
}

const (
	sun, mon, tue, wed, thu, fri, sat = time.Sunday, time.Monday, time.Tuesday, time.Wednesday, time.Thursday, time.Friday, time.Saturday
)

// A deload every fourth week, every third for who needs it often; once or twice a
// week after eight training days and five weeks, or after six days (our judgement).
func TestDeloadRhythm(t *testing.T) {
	for name, c := range map[string]struct {
		client program.Assessment
		want   string
	}{
		"three days a week":             {clientOf(t), "bbbdbbbdbbbt"},
		"five days a week":              {clientOf(t, on(mon, tue, wed, thu, fri)), "bbbdbbbdbbbt"},
		"two days a week":               {clientOf(t, on(tue, fri)), "bbbbbdbbbbbt"},
		"one day a week":                {clientOf(t, on(sun)), "bbbbbbbbdbbt"},
		"44 years":                      {clientOf(t, aged(45), dayBefore), "bbbdbbbdbbbt"},
		"45 years":                      {clientOf(t, aged(45)), "bbdbbdbbdbbt"},
		"46 years":                      {clientOf(t, aged(46)), "bbdbbdbbdbbt"},
		"16 years":                      {clientOf(t, aged(16)), "bbbdbbbdbbbt"},
		"15 years":                      {clientOf(t, aged(16), dayBefore), "bbdbbdbbdbbt"},
		"sore wrists":                   {clientOf(t, soreWrists), "bbdbbdbbdbbt"},
		"sore elbows":                   {clientOf(t, soreElbows), "bbdbbdbbdbbt"},
		"sore shoulders":                {clientOf(t, func(a *program.Assessment) { a.Health.Shoulders = program.JointSore }), "bbdbbdbbdbbt"},
		"sore wrists, two days a week":  {clientOf(t, soreWrists, on(tue, fri)), "bbbdbbbdbbbt"},
		"sore wrists, one day a week":   {clientOf(t, soreWrists, on(sun)), "bbbbbbdbbbbt"},
		"15 years, one day a week":      {clientOf(t, aged(15), on(sun)), "bbbbbbdbbbbt"},
		"45 years, one day a week":      {clientOf(t, aged(45), on(sun)), "bbbbbbdbbbbt"},
		"back after years, three days":  {clientOf(t, back(2)), "bbdbbdbbdbbt"},
		"back for 12 weeks, three days": {clientOf(t, back(12)), "bbdbbdbbdbbt"},
		"back for 14 weeks, three days": {clientOf(t, back(14)), "bbbdbbbdbbbt"},
		"one day a week, sixteen weeks": {clientOf(t, on(sun), func(a *program.Assessment) { a.Training.Weeks = 16 }), "bbbbbbbbdbbbbbbt"},
		"away in week seven, one day": {clientOf(t, on(sun), func(a *program.Assessment) {
			a.Training.Away = []program.Interval{{From: monday + 42, To: monday + 48}}
		}), "bbbbbbabbbbt"},
	} {
		p := programOf(t, c.client)
		if got := kinds(&p); got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
}

// back is somebody in so many weeks of a new spell, who once held a straddle.
func back(weeks int) func(*program.Assessment) {
	return func(a *program.Assessment) {
		a.Training.Experience, a.Training.Since = 150, a.Measured-program.Date(7*weeks)
		a.Training.Best = &program.Hold{Step: "straddle", Seconds: 8}
	}
}

// mainDaysOf are the weekdays of a block on which main work is done, the test's week
// aside: it may have no other day before the test.
func mainDaysOf(p *program.Program) []time.Weekday {
	var days []time.Weekday
	for _, w := range p.Weeks[:len(p.Weeks)-1] {
		for _, s := range w.Sessions {
			main := slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return i.Role == program.RoleMain })
			if main && !slices.Contains(days, s.Date.Weekday()) {
				days = append(days, s.Date.Weekday())
			}
		}
	}
	slices.Sort(days)
	return days
}

// Hard training elsewhere leaves its day and the day after without main work, where
// the client's days allow (common practice).
func TestNoMainWorkOnHardDays(t *testing.T) {
	for name, c := range map[string]struct {
		client program.Assessment
		want   []time.Weekday
	}{
		"Monday, three days":           {clientOf(t, hard(mon)), []time.Weekday{wed, fri}},
		"Tuesday spoils Wednesday":     {clientOf(t, hard(tue)), []time.Weekday{mon, fri}},
		"Friday":                       {clientOf(t, hard(fri)), []time.Weekday{mon, wed}},
		"Monday and Wednesday":         {clientOf(t, hard(mon, wed)), []time.Weekday{fri}},
		"Monday, two days":             {clientOf(t, hard(mon), on(mon, thu)), []time.Weekday{thu}},
		"Sunday, with days to choose":  {clientOf(t, hard(sun), on(mon, tue, thu, sat)), []time.Weekday{tue, sat}},
		"every day: nothing to choose": {clientOf(t, hard(sun, mon, tue, wed, thu, fri, sat)), []time.Weekday{mon, fri}},
		"the only day":                 {clientOf(t, hard(mon), on(mon)), []time.Weekday{mon}},
		"not hard: as without it": {clientOf(t, func(a *program.Assessment) {
			a.Training.Other = []program.OtherTraining{{Day: mon, What: "bell practice"}}
		}), []time.Weekday{mon, fri}},
		"four days, hard in the weekend": {clientOf(t, hard(sat), on(mon, tue, thu, fri)), []time.Weekday{mon, thu}},
	} {
		p := programOf(t, c.client)
		if got := mainDaysOf(&p); !slices.Equal(got, c.want) {
			t.Errorf("%s: main work on %v, want %v", name, got, c.want)
		}
		if len(p.Other) != len(c.client.Training.Other) {
			t.Errorf("%s: the program knows of %d other trainings", name, len(p.Other))
		}
	}
}

// hard is hard training elsewhere on some weekdays.
func hard(days ...time.Weekday) func(*program.Assessment) {
	return func(a *program.Assessment) {
		for _, d := range days {
			a.Training.Other = append(a.Training.Other, program.OtherTraining{Day: d, What: "peal ringing", Hard: true})
		}
	}
}

// A day of hard training elsewhere, and the day after, is short where other days hold
// the main work: two thirds of the minutes at most and no strength drill, and the card
// says so. Where every day is hard nothing is left out for it (our judgement).
func TestHardDaysAreShort(t *testing.T) {
	lasting := func(minutes int) func(*program.Assessment) {
		return func(a *program.Assessment) { a.Training.Minutes = minutes }
	}
	for name, c := range map[string]struct {
		client program.Assessment
		short  []time.Weekday
		most   int // min
		said   bool
	}{
		"Monday":               {clientOf(t, hard(mon), lasting(60)), []time.Weekday{mon}, 40, true},
		"Monday, half an hour": {clientOf(t, hard(mon), lasting(30)), []time.Weekday{mon}, 20, true},
		"Monday, forty min":    {clientOf(t, hard(mon), lasting(40)), []time.Weekday{mon}, 27, true},
		"Tuesday":              {clientOf(t, hard(tue), lasting(60)), []time.Weekday{wed}, 40, true},
		"a day between others": {clientOf(t, hard(sun), on(mon, tue, thu, sat), lasting(60)), []time.Weekday{mon}, 40, false},
		"every day":            {clientOf(t, hard(sun, mon, tue, wed, thu, fri, sat), lasting(60)), nil, 60, false},
		"the only day":         {clientOf(t, hard(mon), on(mon), lasting(60)), nil, 60, false},
	} {
		p := programOf(t, c.client)
		drills := 0
		for _, w := range p.Weeks[:len(p.Weeks)-1] {
			for _, s := range w.Sessions {
				short := slices.Contains(c.short, s.Date.Weekday())
				drill := slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return i.Role == program.RoleStrength })
				if short && (drill || s.Minutes > c.most || s.Minutes < 10) {
					t.Errorf("%s: %s is %d min, drill %v; at most %d min", name, s.Date, s.Minutes, drill, c.most)
				}
				if said := hasNote(s.Dropped, noteHardDay); said != (short && c.said) {
					t.Errorf("%s: %s says so: %v", name, s.Date, said)
				}
				if drill {
					drills++
				}
			}
		}
		if drills < 8 {
			t.Errorf("%s: %d drills in a block", name, drills)
		}
	}
}

// Who names all seven days is asked for a day of rest; six leave one (common practice).
func TestAsksForADayOfRest(t *testing.T) {
	for n, want := range map[int]bool{1: false, 6: false, 7: true} {
		p := programOf(t, clientOf(t, on([]time.Weekday{mon, tue, wed, thu, fri, sat, sun}[:n]...)))
		if got := hasNote(p.Asks, noteNoRest); got != want {
			t.Errorf("%d days a week: asks for a day of rest %v", n, got)
		}
	}
}

// A week with five days away is a deload, whatever is left of it; one with four is
// trained as planned (our judgement).
func TestWeeksPartlyAway(t *testing.T) {
	for days, want := range map[program.Date]byte{2: 'b', 4: 'b', 5: 'd', 6: 'd'} {
		a := clientOf(t, on(mon, wed, sun))
		week := blockStart(&a) + 7
		a.Training.Away = []program.Interval{{From: week, To: week + days - 1}}
		p := programOf(t, a)
		if got := kinds(&p)[1]; got != want {
			t.Errorf("%d days away: the second week is %c, want %c", days, got, want)
		}
	}
}
