package planner

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"gatepost/cmd/study/people"
	"gatepost/program"
	"gatepost/program/ladder"
)

// planned makes a client's program and skips those who may not have one. Properties draw
// the same clients one after the other, so programs are kept.
func planned(t *rapid.T, lib *program.Library, a *program.Assessment) program.Program {
	who, err := json.Marshal(a)
	if err != nil {
		t.Fatal(err)
	}
	made, ok := plannedOnce[string(who)]
	if !ok {
		if len(plannedOnce) == 500 { // more than an ordinary run draws: a long one would fill the memory
			clear(plannedOnce)
		}
		made.program, made.problems = Plan(lib, a)
		plannedOnce[string(who)] = made
	}
	if made.problems.Stop() {
		t.Fatalf("problems: %v", made.problems)
	}
	if len(made.program.Withheld) > 0 {
		t.Skip("no program: ", made.program.Withheld[0].Code)
	}
	return made.program
}

var plannedOnce = map[string]struct {
	program  program.Program
	problems program.Problems
}{}

// Every invariant holds for every client, whatever the skill.
func TestInvariants(t *testing.T) {
	lib := library(t)
	for _, skill := range everySkill(lib) {
		t.Run(skill.id, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				a := skill.clients.Draw(t, "client")
				p := planned(t, lib, &a)
				for _, c := range checkers {
					for _, fault := range c.check(lib, &a, &p) {
						t.Errorf("%s: %s", c.name, fault)
					}
				}
			})
		})
	}
}

// 10: the same input gives the same bytes.
func TestSameInputSameBytes(t *testing.T) {
	lib := library(t)
	rapid.Check(t, func(t *rapid.T) {
		a := clients.Draw(t, "client")
		if string(bytesOfProgram(planned(t, lib, &a))) != string(bytesOf(lib, a)) {
			t.Error("two plans of one assessment differ")
		}
	})
}

func bytesOf(lib *program.Library, a program.Assessment) []byte {
	p, _ := Plan(lib, &a)
	return bytesOfProgram(p)
}

func bytesOfProgram(p program.Program) []byte {
	b, err := json.Marshal(p)
	if err != nil {
		panic(err)
	}
	return b
}

// Short sets are for steps at which no rig allows ten seconds of .60 of the maximum
// or more (.50 for those who train gently) in all weeks of the step: fifteen seconds of
// thirty train nothing that short sets do not, and a rig stays two weeks.
func TestShortSetsOnlyWhereNoRigAllowsMore(t *testing.T) {
	lib := library(t)
	rapid.Check(t, func(t *rapid.T) {
		a := clients.Draw(t, "client")
		out := planned(t, lib, &a)
		p := retraced(lib, &a)
		for i, w := range out.Weeks {
			at := slices.IndexFunc(p.body.Steps, func(r ladder.Rung) bool { return r.ID == w.Step })
			if w.Kind != program.WeekBuild || w.Gate || w.Hold >= mainLeast || w.Hold == 0 || at < 0 {
				continue
			}
			r := &p.body.Steps[at] // sore joints may be held to a lower step than is retraced
			for _, o := range r.Aids() {
				if allowsTen(p, out.Weeks, r, o) {
					t.Errorf("week %d holds %s %d s, but %v allows ten", i+1, w.Step, w.Hold, o.Rig)
				}
			}
		}
	})
}

// allowsTen reports whether a rig gives ten seconds and the effort in every build week
// of a step; after a gate week no help comes back.
func allowsTen(p *plan, weeks []program.Week, r *ladder.Rung, o ladder.Aid) bool {
	for i, w := range weeks {
		if w.Kind != program.WeekBuild || w.Step != r.ID {
			continue
		}
		other := p.at(r, o, i)
		if w.Gate && !o.Rig.Free() || other.hold < 10 || 10*float64(other.hold) < (w.Effort-0.10)*float64(other.max) && !p.limits.elbowSore {
			return false
		}
	}
	return true
}

// Nobody is sent on to the next step without having been asked for the gate before,
// unless the bands allow no free week there.
func TestEveryStepLeftHasItsGateWeek(t *testing.T) {
	lib := library(t)
	rapid.Check(t, func(t *rapid.T) {
		a := clients.Draw(t, "client")
		out := planned(t, lib, &a)
		if _, unasked := stepsLeft(&out); unasked != "" && !retraced(lib, &a).gateless {
			t.Errorf("the gate of the %s was not asked for", unasked)
		}
	})
	left, gateless := 0, 0
	for i := range uint64(400) {
		a := people.Draw(people.Base(), lib, "planche", 5000, i).Client
		out, _ := Plan(lib, &a)
		n, unasked := stepsLeft(&out)
		if left += n; unasked != "" {
			gateless++
		}
	}
	if left < 20 || 20*gateless > left {
		t.Errorf("of %d steps left %d without a gate week", left, gateless)
	}
}

// stepsLeft counts the steps that a program leaves for the next, and names one left
// without its gate week.
func stepsLeft(p *program.Program) (left int, unasked string) {
	shown, before := map[string]bool{}, ""
	for _, w := range p.Weeks {
		if w.Kind != program.WeekBuild || w.Step == "" || w.Scale > 0 || hasNote(w.Notes, noteComeback) {
			continue // after weeks off the step before comes back
		}
		if before != "" && w.Step != before {
			if left++; !shown[before] {
				unasked = before
			}
		}
		shown[w.Step] = shown[w.Step] || w.Gate
		before = w.Step
	}
	return left, unasked
}

// retraced is the plan behind a program, to ask it what else was possible.
func retraced(lib *program.Library, a *program.Assessment) *plan {
	_, m, _ := begin(lib, a)
	p, _ := firstPlan(m, blockStart(a))
	p.fill(&program.Program{}, nil)
	return p
}

// What the form shows is in balance: the band helps, and the lean is as far as it
// says (shoulder ahead of the wrist crease).
func TestShownStances(t *testing.T) {
	banded, lean := ladder.Shown(library(t), "")
	if !banded.Drawn() || banded.Help < 20 || banded.Anchor.Y < banded.Hip.Y {
		t.Errorf("the band helps by %.0f N from %v", banded.Help, banded.Anchor)
	}
	if ahead := lean.Shoulder.X - lean.Wrist.X; math.Abs(ahead-0.20) > 0.001 {
		t.Errorf("the lean is %.3f m", ahead)
	}
}
