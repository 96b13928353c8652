package planner

import (
	"math"
	"testing"

	"gatepost/program"
	"gatepost/program/ladder"
	"gatepost/program/mechanics"
)

// Every week with main work has a figure, with the help that is prescribed, and
// every figure balances by the lever law: the hands carry at the origin, what
// the bands lift and the toes bear is taken off at its place.
func TestStancesOfTheBlock(t *testing.T) {
	studio, _ := repo()
	lib := library(t)
	kinds := map[string]int{}
	for _, a := range studio.Clients {
		a.Share = program.SharePrint // drawn to the kilogram
		bare := a
		bare.Kit, bare.Bands, bare.Tests = nil, nil, nil // leans, on flat hands
		bare.Health.Wrists = program.JointFine
		for _, a := range []program.Assessment{a, bare} {
			p, _ := Plan(lib, &a)
			for _, w := range p.Weeks {
				kinds[checkStance(t, &a, &w)]++
			}
			for _, s := range p.Steps {
				balanced(t, s.ID, a.Athlete.Mass, &s.Stance)
			}
		}
	}
	if kinds["band"]*kinds["free"]*kinds["toes"] == 0 {
		t.Errorf("not every kind of week is there: %v", kinds)
	}
}

func checkStance(t *testing.T, a *program.Assessment, w *program.Week) string {
	t.Helper()
	if w.Stance.Drawn() != (w.Exercise != "") {
		t.Errorf("%s week %d: exercise %q, drawn %v", a.Slug, w.Number, w.Exercise, w.Stance.Drawn())
	}
	if !w.Stance.Drawn() {
		return "none"
	}
	if math.Abs(w.Stance.Help-w.Help) > 0.051 { // printed help is rounded to 0.1 N
		t.Errorf("%s week %d: help %v N, drawn %v N", a.Slug, w.Number, w.Help, w.Stance.Help)
	}
	balanced(t, a.Slug, a.Athlete.Mass, &w.Stance)
	switch {
	case w.Stance.Help > 0:
		return "band"
	case w.Stance.ToesCarry > 0:
		return "toes"
	}
	return "free"
}

// balanced adds up the moments about the hands. The female table's masses sum
// to 99.99 %, hence the tolerance.
func balanced(t *testing.T, name string, mass float64, s *program.Stance) {
	t.Helper()
	toes := (s.Toes[0].X + s.Toes[1].X) / 2
	moment := mass*mechanics.Gravity*s.CoM.X - s.ToesCarry*toes
	if s.Help > 0 {
		sideways := s.Help * (s.Anchor.X - s.Hip.X) / (s.Anchor.Y - s.Hip.Y)
		moment += s.Hip.Y*sideways - s.Hip.X*s.Help
	}
	if math.Abs(moment) > 0.05 {
		t.Errorf("%s: %.3f N·m are left over about the hands: %+v", name, moment, *s)
	}
}

// A boy of 15 with short arms, sore wrists and nothing but the flat floor: level, his
// knees would be under it in the advanced tuck. Whatever is drawn of him stays two
// centimetres above it, the hips rise for that, and the coach is asked for handles.
// On parallettes there is nothing to ask.
func TestBodyFitsTheRoom(t *testing.T) {
	boy := maren(t)
	boy.Athlete = program.Athlete{Name: "Toby", Sex: program.SexMale, Born: program.NewDate(2011, 6, 1), Mass: 50, Height: 1.65, ArmSpan: 1.58}
	boy.Health = program.Health{Wrists: program.JointSore, Elbows: program.JointFine, Shoulders: program.JointFine, Guardian: "A. Parent"}
	boy.Training.Days, boy.Training.Experience = boy.Training.Days[:1], 10
	boy.Goal.Step = "advanced-tuck"
	noBands(&boy)
	boy.Tests = nil
	for name, kit := range map[string][]string{"floor": nil, "parallettes": {ladder.Parallettes}} {
		boy.Kit = kit
		p, problems := Plan(library(t), &boy)
		if problems.Stop() || len(p.Steps) == 0 {
			t.Fatal(problems)
		}
		stances := map[string]program.Stance{}
		for _, l := range p.Steps {
			stances[l.ID] = l.Stance
		}
		for _, w := range p.Weeks {
			if w.Stance.Drawn() && w.Step != "" {
				stances["the week's "+w.Step] = w.Stance
			}
		}
		for id, s := range stances {
			for i := range s.Knees {
				if low := min(s.Knees[i].Y, s.Toes[i].Y) - s.Floor; low < 0.0199 {
					t.Errorf("%s, %s: %.1f cm above the floor", name, id, 100*low)
				}
			}
		}
		asked := hasNote(p.Asks, noteHandles)
		if goal := stances["advanced-tuck"]; asked != (name == "floor") || (goal.Hip.Y > goal.Shoulder.Y+0.02) != asked {
			t.Errorf("%s: handles asked for: %v; hips at %.3f, shoulders at %.3f", name, asked, goal.Hip.Y, goal.Shoulder.Y)
		}
	}
}
