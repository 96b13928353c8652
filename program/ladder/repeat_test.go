package ladder

import (
	"crypto/rand"
	"math"
	"os"
	"testing"

	"gatepost/program"
	"gatepost/program/intake"
)

const degree = math.Pi / 180

func woman(goal string) program.Assessment {
	return program.Assessment{Athlete: program.Athlete{Sex: program.SexFemale, Mass: 58, Height: 1.66}, Goal: program.Goal{Step: goal}}
}

// What presses move as a share of body weight, and what pads take off: computed with a
// statics model that is not ours for a woman of 58 kg and 1.66 m; depth factors are our
// judgement. What the table counts as push of the hands is .04 more than what moves.
func TestWhatPressesAsk(t *testing.T) {
	step := func(id string, p program.Press) program.Step { return program.Step{ID: id, Press: p} }
	road := &program.RoadMap{ID: "push", Hands: program.HandsSupport, Load: program.LoadPress, Steps: []program.Step{
		step("pike", program.Press{Trunk: 45 * degree}), step("box", program.Press{Trunk: 90 * degree, Feet: .75}),
		step("wall", program.Press{Rest: program.PressAtWall, Gap: .15}), step("low", program.Press{Rest: program.PressAtWall, Gap: .15, Hands: .10})}}
	a := woman("low")
	a.Hanging.Pads = []float64{.15, .05, .10}
	b, problems := New(&a, road, nil)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	for i, want := range []float64{.56, .84, .96, .96 * 1.12} {
		if got := b.All[i].Load / b.Weight; math.Abs(got-want) > .02 {
			t.Errorf("%s: %.3f of body weight, want %.2f", b.All[i].ID, got, want)
		}
	}
	wall := b.All[2].Aids()
	for i, want := range []struct{ pad, factor float64 }{{0, 1}, {.05, .93}, {.10, .85}, {.15, .75}} {
		if a := wall[i]; a.Rig.Pad != want.pad || math.Abs(a.Load/b.All[2].Load-want.factor) > .02 || (i == 0) != a.Rig.Free() {
			t.Errorf("on %.0f cm: %+v weighs %.3f, want %.2f", 100*want.pad, a.Rig, a.Load/b.All[2].Load, want.factor)
		}
	}
	if n := len(b.All[3].Aids()); n != 1 {
		t.Errorf("hands raised over the head's way have %d ways", n)
	}
}

// Lifts as shares of the full planche's torque, by block: computed with a statics model
// that is not ours for the same woman, legs 60° apart, hips folded by 130°.
func TestWhatLiftsAsk(t *testing.T) {
	root := os.DirFS("../..")
	studio, _ := intake.Read(root, root, rand.Reader)
	planche, _ := studio.Library.RoadMap("planche")
	a := woman("full")
	full, _ := New(&a, planche, nil)
	a = woman("floor")
	a.Athlete.Fold, a.Hanging.Blocks = 130*degree, []float64{.10, .20, .30, .40}
	b, problems := New(&a, &program.RoadMap{ID: "rise", Hands: program.HandsSupport, Load: program.LoadLift,
		Steps: []program.Step{{ID: "floor", Lift: program.Lift{Stance: 60 * degree}}}}, nil)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	aids := b.All[0].Aids()
	for i, want := range []float64{.60, .54, .47, .39} { // the middle of the lift weighs about .39 itself
		if got := aids[i].Load / full.full; math.Abs(got-want) > .02 || aids[i].Rig.Block != float64(i)/10 {
			t.Errorf("block %.1f m: %.3f of the full planche, want %.2f", aids[i].Rig.Block, got, want)
		}
	}
}

// Nobody stands on a box of three metres: as the goal that stops the plan, as a step on
// the way it is left out, and either is said.
func TestNobodyStandsSo(t *testing.T) {
	road := &program.RoadMap{ID: "push", Hands: program.HandsSupport, Load: program.LoadPress, Steps: []program.Step{
		{ID: "pike", Press: program.Press{Trunk: 45 * degree}}, {ID: "roof", Press: program.Press{Trunk: 45 * degree, Feet: 3}}}}
	for goal, stops := range map[string]bool{"pike": false, "roof": true} {
		a := woman(goal)
		b, problems := New(&a, road, nil)
		if len(problems) != 1 || problems.Stop() != stops || !stops && len(b.All) != 1 {
			t.Errorf("goal %s: %v", goal, problems)
		}
	}
}
