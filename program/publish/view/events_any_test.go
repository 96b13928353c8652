package view

import (
	"bytes"
	"fmt"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view/viewtest"
	_ "gatepost/program/steady"

	"pgregory.net/rapid"
)

// Over plans of any kind: a day has one UID in all of them, and no other day has
// it; a day that reads otherwise than in the calendar before has a higher number,
// one that reads the same has the same; and no number, stamp or day of a change
// ever falls.
func TestCalendarsNeverFallBehind(t *testing.T) {
	lib, coach := viewtest.Library(), viewtest.Coach()
	rapid.Check(t, func(t *rapid.T) {
		p := viewtest.Program()
		plans := []program.PlanVersion{{Version: 1, On: p.Measured, Weeks: p.Weeks}}
		for n := range rapid.IntRange(1, 4).Draw(t, "plans") {
			on := plans[n].On + program.Date(rapid.IntRange(0, 21).Draw(t, "days later"))
			plans = append(plans, program.PlanVersion{Version: n + 2, On: on, Weeks: otherWeeks(t)})
		}
		held := map[string]entry{}
		for n := range plans {
			p.Weeks = plans[n].Weeks
			v, _ := New(coach, lib, p, plans[:n+1]...)
			calendar := Calendar(v)
			if again, _ := New(coach, lib, p, plans[:n+1]...); !bytes.Equal(calendar, Calendar(again)) {
				t.Fatal("two runs differ")
			}
			for _, e := range entries(calendar) {
				if old, ok := held[e.uid]; ok {
					follows(t, old, e)
				}
				held[e.uid] = e
			}
			for _, old := range held {
				dead := old.day >= basic(plans[n].On) && old.state == "CONFIRMED" && old.stamp != basic(plans[n].On)+"T000000Z"
				if dead {
					t.Fatalf("plan %d leaves %s standing", n+1, old)
				}
			}
		}
	})
}

func follows(t *rapid.T, old, e entry) {
	same := old.summary == e.summary && old.text == e.text && old.state == e.state
	if old.day != e.day || e.number < old.number || e.stamp < old.stamp || e.changed < old.changed || same != (e.number == old.number) {
		t.Fatalf("%s %q\nbecame %s %q", old, old.summary, e, e.summary)
	}
}

// otherWeeks is the fixture's block with some days moved, dropped or changed, and
// perhaps begun later.
func otherWeeks(t *rapid.T) []program.Week {
	weeks := viewtest.Program().Weeks
	later := program.Date(7 * rapid.SampledFrom([]int{0, 0, 0, 5}).Draw(t, "weeks later"))
	for i := range weeks {
		w := &weeks[i]
		w.Start += later
		var kept []program.Session
		for _, s := range w.Sessions {
			s.Date += later
			switch rapid.SampledFrom([]string{"", "", "", "gone", "moved", "more"}).Draw(t, fmt.Sprint(s.Date)) {
			case "gone":
				continue
			case "moved":
				s.Date++
			case "more":
				s.Items[len(s.Items)-1].Sets++
			}
			kept = append(kept, s)
		}
		w.Sessions = kept
	}
	return weeks
}
