package planner

import (
	"slices"
	"testing"

	"gatepost/program"
)

// From the wrist circles a reader knows sore wrists, from deloads in week 3 that somebody
// is sore, under 16 or from 45 on; what is usual tells nothing.
func TestWhatASharedPlanTells(t *testing.T) {
	of := func(born int, wrists, elbows program.Joint, older int) []string {
		a := maren(t)
		a.Athlete.Born, a.Health.Wrists, a.Health.Elbows = program.NewDate(born, 1, 4), wrists, elbows
		a.Rules.Older = older
		return Tells(&a)
	}
	fine, sore, injured := program.JointFine, program.JointSore, program.JointInjured
	for _, c := range []struct {
		got, want []string
	}{
		{of(1991, fine, fine, 0), nil},
		{of(2011, fine, fine, 0), nil}, // 16 on the day of the tests
		{of(2012, fine, fine, 0), []string{"youth"}},
		{of(1983, fine, fine, 0), nil}, // 44
		{of(1982, fine, fine, 0), []string{"older"}},
		{of(1985, fine, fine, 40), []string{"older"}}, // as this coach's rules have it
		{of(1982, sore, injured, 0), []string{"wrists", "elbows", "older"}},
	} {
		if !slices.Equal(c.got, c.want) {
			t.Errorf("%v, want %v", c.got, c.want)
		}
	}
	a := maren(t)
	has := func(exercise string) bool {
		p, _ := Plan(library(t), &a)
		return slices.ContainsFunc(p.Weeks[0].Sessions[0].Items, func(i program.Prescription) bool { return i.Exercise == exercise })
	}
	if has("wrist-circles") {
		t.Error("wrists that are fine have the circles")
	}
	if a.Health.Wrists = sore; !has("wrist-circles") {
		t.Error("sore wrists have no circles")
	}
}
