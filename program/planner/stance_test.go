package planner

import (
	"math"
	"testing"

	"gatepost/program"
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
