package planner

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"gatepost/program"
)

// Three weeks with nothing done: the two weeks after them are on the step before, or on
// the same step with more help, with at most seven sets in ten; no new step and no gate
// for three; and each says why (our judgement, near common practice).
func TestThreeWeeksOff(t *testing.T) {
	lib, a := library(t), maren(t)
	a.Training.Away, a.Training.Weeks, a.Goal.By = nil, 16, a.Measured+400
	p, _ := Plan(lib, &a)
	a.Log = asPrinted(&p, 0, 1, 2, 3, 4)
	_, q, _ := Read(lib, &a, []program.PlanVersion{Version(&p, 1, a.Measured)}, p.Weeks[7].Start+6)
	last := &p.Weeks[4]
	for n := range 3 {
		w := &q.Weeks[8+n]
		if w.Kind == program.WeekAway {
			t.Fatalf("week %d is away", w.Number)
		}
		easier := w.Step == last.Step && w.Help > last.Help+0.05 || rungAt(&q, w.Step) < rungAt(&q, last.Step)
		if n < 2 && !easier {
			t.Errorf("week %d holds %s with %.1f N, before %s with %.1f N", w.Number, w.Step, w.Help, last.Step, last.Help)
		}
		if sets := armSets(w); n < 2 && 10*sets > 7*armSets(last) {
			t.Errorf("week %d has %d sets, before %d", w.Number, sets, armSets(last))
		}
		if rungAt(&q, w.Step) > rungAt(&q, last.Step) || w.Gate {
			t.Errorf("week %d is on %s, gate %v", w.Number, w.Step, w.Gate)
		}
		if w.Kind == program.WeekBuild && !hasNote(w.Notes, noteComeback) {
			t.Errorf("week %d does not say why", w.Number)
		}
	}
}

// A beginner without a wall, one session and then four weeks off: what comes before the lift
// is back in two sets of three, and after two weeks it moves on, 20 s to 25.
func TestFourWeeksOffDoNotStopTheFirstSteps(t *testing.T) {
	var got []string
	p := planOf(t, func(a *program.Assessment) {
		a.Goal = program.Goal{Skill: "press-to-handstand", Step: "block-40", Reps: 1, Hold: 3, By: a.Measured + 200}
		a.Tests, a.Training.Best, a.Kit, a.Bands, a.Training.Days = nil, nil, nil, nil, []time.Weekday{time.Thursday}
		a.Training.Away = []program.Interval{{From: blockStart(a) + 7, To: blockStart(a) + 34}}
	})
	for _, w := range p.Weeks[:9] {
		for _, it := range items(&w) {
			if it.Exercise == "lying-handstand-line" && it.Role == program.RoleStrength {
				got = append(got, fmt.Sprintf("%d: %d × %d", w.Number, it.Sets, it.Hold))
			}
		}
	}
	if want := []string{"1: 3 × 20", "6: 2 × 20", "7: 2 × 20", "8: 2 × 25", "9: 2 × 25"}; !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}

// Three weeks off, and then one session: the review still says why the weeks ahead are
// smaller, and so does the plan.
func TestOneSessionAfterWeeksOff(t *testing.T) {
	lib, a := library(t), maren(t)
	a.Training.Away, a.Training.Weeks, a.Goal.By = nil, 16, a.Measured+400
	p, _ := Plan(lib, &a)
	a.Log = asPrinted(&p, 0, 1, 2, 3, 4, 8)
	a.Log.Entries = slices.DeleteFunc(a.Log.Entries, func(e program.Entry) bool { return e.Date > p.Weeks[8].Sessions[0].Date })
	r, q, _ := Read(lib, &a, []program.PlanVersion{Version(&p, 1, a.Measured)}, p.Weeks[8].Start+6)
	for _, notes := range [][]program.Note{r.Notes, q.Notes} {
		i := slices.IndexFunc(notes, func(n program.Note) bool { return n.Code == noteComeback })
		if i < 0 || notes[i].Values[0].Number != 3 || notes[i].Values[1].Number != 0.7 || hasNote(notes, noteWeeksOff) {
			t.Errorf("%+v", notes)
		}
	}
}

// Three weeks off, read on the Tuesday of the week that was to go on as before: Wednesday and
// Friday hang with at most six sets in ten, no set over .65 of what would be held, no heavy
// work and nothing to its end; the week says why, and its cards are named to print. Read a
// second time nothing more goes (our judgement, near common practice).
func TestWeeksOffReadOnATuesday(t *testing.T) {
	lib, a := library(t), maren(t)
	a.Training.Away, a.Training.Weeks, a.Goal.By = nil, 16, a.Measured+400
	p, _ := Plan(lib, &a)
	a.Log = asPrinted(&p, 0, 1, 2, 3, 4)
	tuesday, hung := p.Weeks[8].Start+1, &p.Weeks[8]
	wall := []program.PlanVersion{Version(&p, 1, a.Measured)}
	r, q, _ := Read(lib, &a, wall, tuesday)
	w := &q.Weeks[8]
	onDay := func(w *program.Week, day program.Date) int {
		return armSets(&program.Week{Sessions: []program.Session{*sessionOn(w, day)}})
	}
	for day, sets := range map[program.Date][2]int{tuesday + 1: {3, 1}, tuesday + 3: {4, 2}} { // hung, and now
		if was, now := onDay(hung, day), onDay(w, day); was != sets[0] || now != sets[1] {
			t.Errorf("%s: %d sets, hung were %d; want %d of %d", day, now, was, sets[1], sets[0])
		}
		for _, item := range sessionOn(w, day).Items {
			if item.Max || item.Role == program.RoleAhead || isMain(&item) && 100*float64(item.Hold) > 65*item.MaxHold {
				t.Errorf("%s: %s %d s of %.1f, to its end %v", day, item.Exercise, item.Hold, item.MaxHold, item.Max)
			}
		}
		if !slices.Contains(r.PrintNow, day) {
			t.Errorf("%s is not to be printed: %v", day, r.PrintNow)
		}
	}
	if !hasNote(w.Notes, noteComeback) {
		t.Errorf("the week does not say why: %+v", w.Notes)
	}
	_, again, _ := Read(lib, &a, append(wall, Version(&q, 2, tuesday)), tuesday+1)
	if !sameWeek(&again.Weeks[8], w) {
		t.Error("read again on Wednesday the cards of the week have changed")
	}
}

func rungAt(p *program.Program, step string) int {
	for i, s := range p.Steps {
		if s.ID == step {
			return i
		}
	}
	return -1
}

// How much of the work before comes back in which week, in per cent.
func TestComebackParts(t *testing.T) {
	for _, c := range []struct {
		off  int
		want []int
	}{
		{1, []int{100, 100}},
		{2, []int{70, 70, 100, 100}},
		{3, []int{70, 70, 85, 100}},
		{4, []int{70, 70, 80, 90, 100}},
		{9, []int{70, 70, 80, 90, 100}},
	} {
		p := &plan{}
		p.athlete, p.weeks = &program.Assessment{}, []week{{kind: program.WeekBuild}}
		for range c.off {
			p.weeks = append(p.weeks, week{kind: program.WeekAway})
		}
		for range c.want {
			p.weeks = append(p.weeks, week{kind: program.WeekBuild})
		}
		for n, want := range c.want {
			if got := p.comebackPart(1 + c.off + n); got != want {
				t.Errorf("%d weeks off, week %d back: %d %%, want %d", c.off, n+1, got, want)
			}
		}
	}
}

// A hold of ten seconds breaks at six, four and two on every day of two weeks: the next card of
// the same week asks for six seconds and is named to print. Nine of ten are no reason to print
// anew (our judgement).
func TestHoldsThatBreakEaseTheNextCardOfTheirWeek(t *testing.T) {
	for _, c := range []struct {
		held []float64
		want int
	}{{[]float64{6, 4, 2}, 6}, {[]float64{9, 8, 8}, 10}} {
		lib, a := library(t), maren(t)
		a.Training.Away, a.Training.Weeks, a.Goal.By = nil, 16, a.Measured+400
		p, _ := Plan(lib, &a)
		at := slices.IndexFunc(p.Weeks, func(w program.Week) bool { return w.Gate && w.Hold == 10 })
		w := &p.Weeks[at]
		var over []int
		for i := range at - 2 {
			over = append(over, i)
		}
		a.Log = asPrinted(&p, over...)
		for _, on := range []program.Date{w.Start - 14, w.Start - 7, w.Start} {
			day := program.Entry{Date: on, Exercise: w.Exercise, Step: w.Step, Rig: w.Rig, RigGiven: true}
			for n, s := range c.held {
				day.Sets = append(day.Sets, program.SetDone{Number: n + 1, Seconds: s, RPE: 10})
			}
			a.Log.Entries = append(a.Log.Entries, day)
		}
		r, q, _ := Read(lib, &a, []program.PlanVersion{Version(&p, 1, a.Measured)}, w.Start)
		friday := sessionOn(&q.Weeks[at], w.Start+4)
		for _, item := range friday.Items {
			if item.Role == program.RoleMain && item.Hold != c.want {
				t.Errorf("%v: Friday asks %d × %d s of %s", c.held, item.Sets, item.Hold, item.Exercise)
			}
		}
		if mainSets(friday) == 0 || slices.Contains(r.PrintNow, w.Start+4) != (c.want == 6) {
			t.Errorf("%v: %d sets on Friday, cards to print %v", c.held, mainSets(friday), r.PrintNow)
		}
	}
}
