package planner

import (
	"slices"
	"testing"

	"gatepost/program"
)

// Nobody presses with the feet on a box that is not there, nor at a wall on sore wrists,
// whose hands lie flat there; nor do those wrists practise push-ups on the floor for the
// entry (common practice: flat hands wait until wrists are quiet).
func TestStepsAreLeftOutForKitAndWrists(t *testing.T) {
	shown := []program.Hold{{Exercise: "wall-handstand-line", Seconds: 60}, {Exercise: "push-up", Reps: 25}, {Step: "pike", Reps: 12}}
	for _, c := range []struct {
		name, goal string
		kit        []string
		wrists     program.Joint
		tests      []program.Hold
		never      []string
		presses    bool
	}{
		{"no box", "wall", []string{"wall"}, program.JointFine, shown, []string{"raised-pike-push-up", "box-pike-push-up"}, true},
		{"a box", "wall", []string{"wall", "box"}, program.JointFine, shown, nil, true},
		{"sore, on handles", "box-pike", []string{"box", "wall", "parallettes"}, program.JointSore, shown, []string{"wall-handstand-lowering", "wall-handstand-push-up"}, true},
		{"sore, towards a wall", "wall", []string{"box", "wall", "parallettes"}, program.JointSore, shown, []string{"wall-handstand-lowering", "wall-handstand-push-up"}, false},
		{"sore, before the entry", "wall", []string{"wall"}, program.JointSore, shown[:1], []string{"push-up", "wall-handstand-line"}, false},
	} {
		a := maren(t)
		a.Goal = program.Goal{Skill: "handstand-push-up", Step: c.goal, Reps: 3, Hold: 9, By: monday + 360}
		a.Bands, a.Kit, a.Tests, a.Health.Wrists = nil, c.kit, c.tests, c.wrists
		p, problems := Plan(library(t), &a)
		if problems.Stop() || len(p.Weeks) == 0 {
			t.Fatal(c.name, problems, p.Withheld)
		}
		presses := false
		for _, w := range p.Weeks {
			for _, it := range items(&w) {
				if slices.Contains(c.never, it.Exercise) {
					t.Errorf("%s: week %d has the %s", c.name, w.Number, it.Exercise)
				}
				presses = presses || it.Role == program.RoleMain
			}
		}
		if presses != c.presses {
			t.Errorf("%s: presses %v", c.name, presses)
		}
	}
}
