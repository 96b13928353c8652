package view

import (
	"bytes"
	"regexp"
	"slices"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view/viewtest"
)

// replanned is the fixture's block as three plans in a row. The second, made on
// the Friday of week 5, has found week 3 untrained, asks for more on a Monday,
// trains on Thursday instead of Wednesday, and ends a week earlier; the third,
// a week later, has the Wednesday back, and less on another day.
func replanned() []program.PlanVersion {
	first := viewtest.Program()
	plans := []program.PlanVersion{{Version: 1, On: first.Measured, Weeks: first.Weeks}}
	next := func(on program.Date, change func(weeks []program.Week) []program.Week) {
		plans = append(plans, program.PlanVersion{Version: len(plans) + 1, On: on, Weeks: change(viewtest.Program().Weeks)})
	}
	second := func(weeks []program.Week) []program.Week {
		weeks[2].Sessions, weeks[2].Kind = nil, program.WeekAway
		weeks[5].Sessions[0].Items[4].Sets++
		weeks[6].Sessions[1].Date++
		return weeks[:11]
	}
	next(program.NewDate(2027, 2, 12), second)
	next(program.NewDate(2027, 2, 19), func(weeks []program.Week) []program.Week {
		weeks = second(weeks)
		weeks[6].Sessions[1].Date--
		weeks[7].Sessions[0].Items[3].Sets--
		return weeks
	})
	return plans
}

// written are the plans' calendars as each of them hung on the wall.
func written(t *testing.T, plans []program.PlanVersion) [][]byte {
	t.Helper()
	var all [][]byte
	for n := range plans {
		p := viewtest.Program()
		p.Weeks, p.Version = plans[n].Weeks, plans[n].Version
		v, problems := New(viewtest.Coach(), viewtest.Library(), p, plans[:n+1]...)
		if problems != nil {
			t.Fatal(problems)
		}
		all = append(all, Calendar(v))
	}
	return all
}

// entry is an event as a file has it.
type entry struct {
	day, uid, number, stamp, changed, state, summary, text string
}

func (e entry) String() string {
	return strings.Join([]string{e.day, e.number, e.changed, e.state}, " ")
}

func entries(calendar []byte) []entry {
	text := strings.ReplaceAll(string(calendar), "\r\n ", "")
	var all []entry
	for _, event := range strings.Split(text, "BEGIN:VEVENT")[1:] {
		value := func(name string) string {
			return regexp.MustCompile(`(?m)^` + name + `[:;](?:VALUE=DATE:)?(.*)\r$`).FindStringSubmatch(event)[1]
		}
		all = append(all, entry{value("DTSTART"), value("UID"), value("SEQUENCE"), value("DTSTAMP"), value("LAST-MODIFIED")[:8],
			value("STATUS"), value("SUMMARY"), value("DESCRIPTION")})
	}
	return all
}

// touched are the days that are not as the first plan had them.
func touched(all []entry) []string {
	var lines []string
	for _, e := range all {
		if e.number != "0" {
			lines = append(lines, e.String())
		}
	}
	return lines
}

// Each day has the number of the plan that changed it; those after the day of the
// plan that are no more are called off, those before it stay as they were.
func TestCalendarFollowsThePlan(t *testing.T) {
	all := written(t, replanned())
	for n, want := range [][]string{
		nil,
		{"20270215 1 20270212 CONFIRMED", "20270224 1 20270212 CANCELLED", "20270225 1 20270212 CONFIRMED",
			"20270329 1 20270212 CANCELLED", "20270402 1 20270212 CANCELLED"},
		{"20270215 1 20270212 CONFIRMED", "20270224 2 20270219 CONFIRMED", "20270225 2 20270219 CANCELLED", "20270301 2 20270219 CONFIRMED",
			"20270329 1 20270212 CANCELLED", "20270402 1 20270212 CANCELLED"},
	} {
		events := entries(all[n])
		if got := touched(events); !slices.Equal(got, want) {
			t.Errorf("plan %d:\n%s\nwant\n%s", n+1, strings.Join(got, "\n"), strings.Join(want, "\n"))
		}
		stamp := []string{"20270104", "20270212", "20270219"}[n] + "T000000Z"
		missed := 0
		for _, e := range events {
			if e.stamp != stamp {
				t.Errorf("plan %d: %s is stamped %s", n+1, e, e.stamp)
			}
			if e.day >= "20270125" && e.day < "20270201" {
				missed++
			}
			if gone := strings.HasPrefix(e.summary, "Cancelled: "); gone != (e.state == "CANCELLED") || gone && strings.Contains(e.text, "×") {
				t.Errorf("%s reads %q, %q", e, e.summary, e.text)
			}
		}
		if want := 3 * min(1, 1-min(n, 1)); missed != want {
			t.Errorf("plan %d has %d events in the week that was missed", n+1, missed)
		}
	}
}

// General readers hold the first plan's calendar and take in the next, or get them
// in the wrong order: what is left is the latest plan, with no dead session, and
// of days that had passed what was planned then.
func TestTheNewerCalendarWins(t *testing.T) {
	plans := replanned()
	all := written(t, plans)
	var want []string
	latest := entries(all[2])
	for _, e := range append(slices.Clone(latest), entries(all[0])[6:9]...) {
		want = append(want, strings.Join([]string{iso(e.day), e.number, e.state, e.uid}, "|"))
	}
	slices.Sort(want)
	for name := range readers {
		t.Run(name, func(t *testing.T) {
			for _, order := range [][]int{{0, 1, 2}, {2, 1, 0}, {0, 2, 1}, {2, 0}} {
				var in []byte
				for _, n := range order {
					in = append(in, all[n]...)
				}
				var got []string
				for _, line := range strings.Split(strings.TrimSpace(read(t, name, in)), "\n")[1:] {
					f := strings.Split(line, "|")
					got = append(got, strings.Join([]string{f[1], f[5], f[6], f[7]}, "|"))
				}
				if !slices.Equal(got, want) {
					t.Errorf("taken in as %v:\n%s\nwant\n%s", order, strings.Join(got, "\n"), strings.Join(want, "\n"))
				}
			}
		})
	}
}

func iso(basic string) string { return basic[:4] + "-" + basic[4:6] + "-" + basic[6:] }

// The same weeks at another time of day are another plan's: the days to come have its
// number (RFC 5545, 3.8.7.4: SEQUENCE grows with a significant revision, and RFC 5546,
// 2.1.4, counts DTSTART among them), those before it keep the time they had.
func TestAnotherTimeOfDay(t *testing.T) {
	p := viewtest.Program()
	plans := []program.PlanVersion{
		{Version: 1, On: p.Measured, Weeks: p.Weeks, Clock: program.Clock{Time: 18 * 60}},
		{Version: 2, On: program.NewDate(2027, 2, 12), Weeks: p.Weeks, Clock: program.Clock{Time: 19*60 + 30, Remind: 60}},
		{Version: 3, On: program.NewDate(2027, 2, 19), Weeks: p.Weeks},
	}
	all := written(t, plans)
	for n, want := range [][]string{
		{"DTSTART:20270111T180000", "DTSTART:20270215T180000", "SEQUENCE:0"},
		{"DTSTART:20270111T180000", "DTSTART:20270215T193000", "SEQUENCE:1", "TRIGGER:-PT60M", "LAST-MODIFIED:20270212T000000Z"},
		{"DTSTART:20270111T180000", "DTSTART:20270215T193000", "DTSTART;VALUE=DATE:20270222", "SEQUENCE:2"},
	} {
		for _, line := range want {
			if !bytes.Contains(all[n], []byte("\r\n"+line+"\r\n")) {
				t.Errorf("plan %d lacks %s", n+1, line)
			}
		}
		if got := bytes.Count(all[n], []byte("\r\nSEQUENCE:0\r\n")); n > 0 && got != 14 {
			t.Errorf("plan %d: %d of the 14 days before the second plan are as they were", n+1, got)
		}
	}
}

// A plan kept as it hung, or with new words for old notes, changes no byte of the
// calendar but what names the plan.
func TestTheFirstPlanKept(t *testing.T) {
	lib, p := viewtest.Library(), viewtest.Program()
	bare, _ := New(viewtest.Coach(), lib, p)
	kept, _ := New(viewtest.Coach(), lib, p, program.PlanVersion{Version: 1, On: p.Measured, Weeks: p.Weeks})
	if !bytes.Equal(Calendar(bare), Calendar(kept)) {
		t.Error("keeping the first plan changed its calendar")
	}
	weeks := viewtest.Program().Weeks
	weeks[0].Notes = []program.Note{{Code: "of-another-time"}}
	plans := []program.PlanVersion{{Version: 1, On: p.Measured, Weeks: weeks}, {Version: 2, On: p.Measured + 9, Weeks: p.Weeks}}
	if _, problems := New(viewtest.Coach(), lib, p, plans...); problems != nil {
		t.Errorf("a note that nobody prints: %v", problems)
	}
}

// A card that hangs keeps its sides when a day before it goes: it is the same
// card, and the calendar says so.
func TestSidesStayAcrossPlans(t *testing.T) {
	odd := func(weeks []program.Week) []program.Week {
		for i := range weeks {
			for _, s := range weeks[i].Sessions {
				for k := range s.Items {
					if s.Items[k].Role == program.RoleMain {
						s.Items[k].EachSide, s.Items[k].Sets = true, 5
					}
				}
			}
		}
		return weeks
	}
	p := viewtest.Program()
	before := odd(viewtest.Program().Weeks)
	p.Weeks = odd(p.Weeks)
	p.Weeks[5].Sessions = p.Weeks[5].Sessions[1:]
	plans := []program.PlanVersion{{Version: 1, On: p.Measured, Weeks: before}, {Version: 2, On: program.NewDate(2027, 2, 12), Weeks: p.Weeks}}
	v, _ := New(viewtest.Coach(), viewtest.Library(), p, plans...)
	if got := touched(entries(Calendar(v))); !slices.Equal(got, []string{"20270215 1 20270212 CANCELLED"}) {
		t.Errorf("touched: %v", got)
	}
	first, _ := New(viewtest.Coach(), viewtest.Library(), &program.Program{Skill: p.Skill, Weeks: before, Start: p.Start})
	was, is := first.Weeks[8].Sessions[0].Items, v.Weeks[8].Sessions[0].Items
	if was[4].Sides == "" || was[4].Sides != is[4].Sides || v.Cards[len(v.Cards)-2].Items[0].Sides != first.Cards[len(first.Cards)-2].Items[0].Sides {
		t.Errorf("was %q, is %q", was[4].Sides, is[4].Sides)
	}
}
