package planner

import (
	"math"
	"testing"

	"gatepost/program"
)

const inAndOut = "planche-lean-in-and-out"

// Lighter leans are gone into and out of, five to eight times at three seconds (four once
// in a while), at a mark that moves by half hands of four centimetres; what finds strength
// out stays a hold (common practice).
func TestLeansByRepetitions(t *testing.T) {
	lib, a := library(t), maren(t)
	p, _ := Plan(lib, &a)
	first, n := 0.0, 0
	for _, w := range p.Weeks {
		for _, it := range items(&w) {
			if it.Exercise != inAndOut {
				if it.Role == program.RoleSecond && it.Ahead > 0 {
					t.Errorf("week %d: a lean of %d s beside the main work is held", w.Number, it.Hold)
				}
				continue
			}
			n++
			if first == 0 {
				first = it.Ahead
			}
			half := math.Round(100*(it.Ahead-first)) / 4
			if it.Role != program.RoleSecond || it.Reps < 4 || it.Reps > 8 || it.Hold != 3*it.Reps || half != math.Trunc(half) {
				t.Errorf("week %d: %s, %d × %d in %d s, %.0f cm after %.0f", w.Number, it.Role, it.Sets, it.Reps, it.Hold, 100*it.Ahead, 100*first)
			}
		}
	}
	if n < 10 {
		t.Errorf("%d repeated leans in twelve weeks", n)
	}
}

// Sore joints keep still: held, and for no more seconds than they would be repeated.
func TestSoreJointsHoldTheirLeans(t *testing.T) {
	for name, sore := range map[string]func(*program.Assessment){
		"elbows": func(a *program.Assessment) { a.Health.Elbows = program.JointSore },
		"wrists": func(a *program.Assessment) { a.Health.Wrists = program.JointSore },
	} {
		lib, a := library(t), maren(t)
		sore(&a)
		p, _ := Plan(lib, &a)
		for _, w := range p.Weeks {
			for _, it := range items(&w) {
				if it.Exercise == inAndOut {
					t.Errorf("sore %s, week %d: %d repetitions of a lean", name, w.Number, it.Reps)
				}
			}
		}
	}
}

// A set of repetitions is work, three seconds each, and no evidence: whatever its RPE,
// strength is read as without. Five of eight are too few, and the next card asks for no
// more than five.
func TestRepeatedLeansAreWorkAndNoTest(t *testing.T) {
	lib, a := library(t), maren(t)
	a.Training.Away = nil
	p, _ := Plan(lib, &a)
	wall := []program.PlanVersion{Version(&p, 1, a.Measured)}
	var day program.Session
	var lean program.Prescription
	for _, s := range p.Weeks[0].Sessions {
		for _, it := range s.Items {
			if it.Exercise == inAndOut {
				day, lean = s, it
			}
		}
	}
	read := func(reps int, rpe float64) (program.Review, program.Program) {
		b := a
		e := program.Entry{Date: day.Date, Exercise: inAndOut, Ahead: lean.Ahead}
		for range lean.Sets {
			e.Sets = append(e.Sets, program.SetDone{Reps: reps, RPE: rpe, Clean: program.CleanYes})
		}
		b.Log.Entries = append(b.Log.Entries, e)
		r, q, problems := Read(lib, &b, wall, p.Weeks[0].Start+6)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		return r, q
	}
	easy, _ := read(lean.Reps, 5)
	hard, _ := read(lean.Reps, 9)
	if easy.After.Held12 != hard.After.Held12 {
		t.Errorf("%.1f N·m at RPE 5, %.1f at 9: a repeated lean was read as a test", easy.After.Held12, hard.After.Held12)
	}
	if got, want := easy.Progress[0].HalfSeconds, lean.Sets*(work{hold: 24, share: lean.Load}).halfSeconds(); lean.Reps != 8 || got != want {
		t.Errorf("%d half seconds of %d × %d, wanted %d", got, lean.Sets, lean.Reps, want)
	}
	_, q := read(5, 9)
	for _, it := range items(&q.Weeks[1]) {
		if it.Exercise == inAndOut && it.Ahead == lean.Ahead && it.Reps > 5 {
			t.Errorf("the week after asks for %d, five were reached", it.Reps)
		}
	}
}

// A lean that broke comes back by half a hand, four centimetres; on sore elbows as far as it
// takes to load them with three quarters of the maximum at the most.
func TestALeanThatBrokeOnSoreElbows(t *testing.T) {
	for _, c := range []struct {
		elbows program.Joint
		most   float64 // m
		load   float64
	}{{program.JointFine, 0.24, 1}, {program.JointSore, 0.24, 0.75}} {
		a := maren(t)
		a.Health.Elbows = c.elbows
		p := retraced(library(t), &a)
		w := p.leanAt(p.floorRung(program.RungLean), p.leans[len(p.leans)-1], 0)
		back := p.nearer(w, 0.28, 0)
		if back.share > c.load || back.aid.Ahead > c.most+1e-9 || c.elbows == program.JointFine && back.aid.Ahead < c.most-1e-9 {
			t.Errorf("elbows %s: from 28 cm back to %.0f cm at %.2f of the maximum", c.elbows, 100*back.aid.Ahead, back.share)
		}
		if c.elbows == program.JointSore && back.aid.Ahead > 0.22 {
			t.Errorf("nothing is taken back on sore elbows: %.0f cm", 100*back.aid.Ahead)
		}
	}
}
