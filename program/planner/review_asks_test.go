package planner

import (
	"testing"

	"gatepost/program"
)

// gateWeekDone is maren at the end of her first gate week: its sets as long as asked,
// with an RPE of 8 for each and one word, or none, about the form.
func gateWeekDone(t *testing.T, form program.Clean) (a program.Assessment, p program.Program, week int) {
	lib := library(t)
	a = maren(t)
	a.Training.Away, a.Training.Weeks = nil, 16
	p, _ = Plan(lib, &a)
	for week = range p.Weeks {
		if p.Weeks[week].Gate {
			break
		}
		a.Log.Entries = append(a.Log.Entries, asPrinted(&p, week).Entries...)
	}
	if !p.Weeks[week].Gate {
		t.Fatal("no gate week")
	}
	for _, s := range p.Weeks[week].Sessions {
		a.Log.Entries = append(a.Log.Entries, program.Entry{Date: s.Date, AsPrinted: true})
		if s.HoldsMain() {
			gate := gateOf(lib, &p, p.Weeks[week].Step)
			e := program.Entry{Date: s.Date, Exercise: p.Weeks[week].Exercise, Step: p.Weeks[week].Step, RigGiven: true}
			for range gate.Sets {
				e.Sets = append(e.Sets, program.SetDone{Seconds: float64(gate.Hold), RPE: 8, Clean: form})
			}
			a.Log.Entries = append(a.Log.Entries, e)
		}
	}
	return a, p, week
}

func nextBuild(p *program.Program) *program.Week {
	for i := range p.Weeks {
		if w := &p.Weeks[i]; w.Start >= p.From && w.Kind == program.WeekBuild {
			return w
		}
	}
	return &program.Week{}
}

// Nobody moves on without the gate: where nobody wrote whether the form was clean the
// step stays, its gate is asked for again, and the review asks for the words. Written,
// or signed by the coach, it opens the next step.
func TestGateWaitsForWords(t *testing.T) {
	lib := library(t)
	for _, c := range []struct {
		name   string
		form   program.Clean
		passed bool
		moves  bool
		asks   int
	}{
		{"no word about form", program.CleanUnsaid, false, false, 2},
		{"signed by the coach", program.CleanUnsaid, true, true, 0},
		{"clean", program.CleanYes, false, true, 0},
		{"broken", program.CleanNo, false, false, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			a, p, week := gateWeekDone(t, c.form)
			step := p.Weeks[week].Step
			var passed []string
			if c.passed {
				passed = []string{step}
			}
			wall := []program.PlanVersion{Version(&p, 1, a.Measured)}
			review, q, _ := Read(lib, &a, wall, p.Weeks[week].Start+6, passed...)
			next := nextBuild(&q)
			if moved := next.Step != step; moved != c.moves || c.asks > 0 && !next.Gate {
				t.Errorf("after it %s, gate %v", next.Step, next.Gate)
			}
			if len(review.Asks) != c.asks {
				t.Errorf("asks %v", review.Asks)
			}
			for _, ask := range review.Asks {
				if ask.Values[2].Text != "lacks.clean" {
					t.Errorf("asks for %s", ask.Values[2].Text)
				}
			}
		})
	}
}

// What the coach signed is kept with the plan, so that the next review knows it.
func TestSignedGateStaysPassed(t *testing.T) {
	lib := library(t)
	a, p, week := gateWeekDone(t, program.CleanUnsaid)
	step, sunday := p.Weeks[week].Step, p.Weeks[week].Start+6
	wall := []program.PlanVersion{Version(&p, 1, a.Measured)}
	_, q, _ := Read(lib, &a, wall, sunday, step)
	kept := Version(&q, 2, sunday)
	kept.Passed = []string{step}
	review, r, _ := Read(lib, &a, append(wall, kept), sunday+7)
	for _, g := range review.Gates {
		if g.Step == step && (g.State != program.GatePassed || !g.Signed || g.On != sunday) {
			t.Errorf("the gate is %s, signed %v on %s", g.State, g.Signed, g.On)
		}
	}
	if next := nextBuild(&r); next.Step == step {
		t.Errorf("back on %s", next.Step)
	}
}

// After two gate weeks without a word the gate is not printed a third time; the step
// stays all the same.
func TestGateIsNotAskedForEver(t *testing.T) {
	lib := library(t)
	a, p, week := gateWeekDone(t, program.CleanUnsaid)
	step, wall := p.Weeks[week].Step, []program.PlanVersion{Version(&p, 1, a.Measured)}
	for n := range 2 {
		sunday := p.Weeks[week+n].Start + 6
		_, q, _ := Read(lib, &a, wall, sunday)
		wall = append(wall, Version(&q, n+2, sunday))
		a.Log.Entries = append(a.Log.Entries, asPrinted(&q, week+n+1).Entries...)
	}
	_, q, _ := Read(lib, &a, wall, p.Weeks[week+2].Start+6)
	if next := nextBuild(&q); next.Step != step || next.Gate {
		t.Errorf("after three weeks without a word: %s, gate %v", next.Step, next.Gate)
	}
}

// A goal is shown only by clean sets.
func TestGoalIsShownByCleanSets(t *testing.T) {
	lib := library(t)
	for form, want := range map[program.Clean]bool{program.CleanYes: true, program.CleanUnsaid: false, program.CleanNo: false} {
		a := maren(t)
		a.Training.Away = nil
		p, _ := Plan(lib, &a)
		a.Log.Entries = []program.Entry{{Date: p.Weeks[0].Sessions[0].Date, Exercise: "straddle-hold", Step: "straddle", RigGiven: true,
			Sets: []program.SetDone{{Number: 1, Seconds: 11, RPE: 9, Clean: form}}}}
		review, _, _ := Read(lib, &a, nil, p.Weeks[0].Start+6)
		shown := false
		for _, f := range review.Flags {
			shown = shown || f.Code == flagGoalShown
		}
		if shown != want || review.GoalAfter.Met != want {
			t.Errorf("form %q: shown %v, met %v", form, shown, review.GoalAfter.Met)
		}
	}
}
