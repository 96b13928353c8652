package planner

import (
	"slices"
	"testing"

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
