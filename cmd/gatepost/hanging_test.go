package main

import (
	"math"
	"os"
	"testing"

	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/mechanics"
)

// leverShares are what each step of the front lever asks of the full position, for women
// of 58 kg and 1.66 m and men of 73 kg and 1.76 m with a straddle of 100 degrees. Source:
// computed from de Leva 1996 with a second model, written independently.
var leverShares = []struct {
	step       string
	women, men float64
}{
	{"tuck", .59, .57}, {"open-tuck", .67, .65}, {"advanced-tuck", .75, .735}, {"one-leg", .80, .79},
	{"wide-open-tuck", .86, .86}, {"straddle", .885, .885}, {"half-lay", .915, .92},
	{"narrow-straddle", .957, .957}, {"full", 1, 1},
}

// The road map as it is shipped is the one of the table, step by step.
func TestTheFrontLeverLoadsAsItsTableSays(t *testing.T) {
	studio, problems := intake.Read(os.DirFS("../.."), builtIn, nil)
	road, ok := studio.Library.RoadMap("front-lever")
	if problems.Stop() || !ok || len(road.Steps) != len(leverShares) {
		t.Fatal("no front lever of nine steps", problems)
	}
	woman, _ := mechanics.NewBody(mechanics.Female, 58, 1.66, 0, 0)
	man, _ := mechanics.NewBody(mechanics.Male, 73, 1.76, 0, 0)
	torque := func(b mechanics.Body, p program.Pose) float64 {
		pose := mechanics.Pose{Rounding: p.Rounding, Depression: p.Depression}
		for i, leg := range p.Legs {
			pose.Legs[i] = mechanics.Leg{Hip: leg.Hip, Abduction: leg.Abduct, Knee: leg.Knee}
			if leg.Straddle {
				pose.Legs[i].Abduction = 50 * math.Pi / 180
			}
		}
		return mechanics.Solve(b, pose, mechanics.Support{Hang: true}, nil).Torque
	}
	full := road.Steps[len(road.Steps)-1].Pose
	for i, want := range leverShares {
		step := road.Steps[i]
		women, men := torque(woman, step.Pose)/torque(woman, full), torque(man, step.Pose)/torque(man, full)
		if step.ID != want.step || math.Abs(women-want.women) > .02 || math.Abs(men-want.men) > .02 {
			t.Errorf("step %d, %s: %.3f of women, %.3f of men; the table has %s, %.3f and %.3f",
				i+1, step.ID, women, men, want.step, want.women, want.men)
		}
	}
}
