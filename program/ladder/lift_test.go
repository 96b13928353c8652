package ladder

import (
	"math"
	"testing"

	"gatepost/program"
)

// rising is a road map of lifts, and a woman of 58 kg and 1.66 m with some blocks.
func rising(goal string, fold float64, blocks ...float64) (*program.Assessment, *program.RoadMap) {
	lift := func(id string, block float64, lower bool) program.Step {
		return program.Step{ID: id, Lift: program.Lift{Stance: 60 * degree, Open: 100 * degree, Block: block, Lower: lower}}
	}
	a := woman(goal)
	a.Athlete.Fold, a.Hanging.Blocks = fold*degree, blocks
	return &a, &program.RoadMap{ID: "rise", Hands: program.HandsSupport, Load: program.LoadLift,
		Steps: []program.Step{lift("40", .40, false), lift("30", .30, false), lift("down", 0, true), lift("floor", 0, false)}}
}

// A step is left out where nobody has its block, to two centimetres (our judgement), and
// can be read all the same; a step on a block is helped by higher ones.
func TestBlocksOfSteps(t *testing.T) {
	a, road := rising("floor", 130, .10, .31, .35)
	b, problems := New(a, road, nil)
	if len(problems) > 0 || len(b.All) != 4 || len(b.Steps) != 3 {
		t.Fatal(problems, len(b.All), len(b.Steps))
	}
	for i, want := range []struct {
		step   string
		blocks []float64
	}{{"30", []float64{0, .31, .35}}, {"down", []float64{0, .10, .31, .35}}, {"floor", []float64{0, .10, .31, .35}}} {
		r := &b.Steps[i]
		var got []float64
		for _, aid := range r.Aids() {
			got = append(got, aid.Rig.Block)
		}
		if r.ID != want.step || len(got) != len(want.blocks) {
			t.Errorf("%s on %v", r.ID, got)
		}
	}
	test := program.Hold{Step: "40", Seconds: 9}
	if o, ok := b.Observe(&test); !ok || math.Abs(o.Load-b.All[0].Load) > 1e-9 {
		t.Errorf("a test from 40 cm: %+v", o)
	}
}

// Ten degrees of fold, from 120 on, take .05 off .65 of a full planche at the floor, as a
// block of 10 cm does (computed with a statics model that is not ours; it is .60 for
// both); from 130 on .03 off .60. Past about 145 degrees there is nothing to gain.
func TestWhatAFoldIsWorth(t *testing.T) {
	for fold, want := range map[float64]struct{ saves, block, off float64 }{120: {.05 / .65, .10, .02}, 130: {.03 / .60, .06, .02}, 155: {}} {
		a, road := rising("floor", fold)
		b, _ := New(a, road, nil)
		cues := b.Cues(0)
		if want.saves == 0 {
			if len(cues) != 0 {
				t.Errorf("from %.0f°: %+v", fold, cues)
			}
			continue
		}
		if len(cues) != 1 || cues[0].Cue != "fold" || math.Abs(cues[0].Saves-want.saves) > .025 || math.Abs(cues[0].Rig.Block-want.block) > want.off {
			t.Errorf("from %.0f°: %+v", fold, cues)
		}
	}
}

// The toes stand on the block as they come off it, the middle over the hands, whatever
// grips the client has; a lowering is drawn halfway, the legs level.
func TestLiftsAreDrawn(t *testing.T) {
	a, road := rising("floor", 130, .20, .40)
	a.Kit, a.Hanging.Support = []string{Parallettes}, .10
	b, _ := New(a, road, nil)
	for i := range b.All {
		r := &b.All[i]
		s := b.Figure(r, r.Free())
		switch {
		case !s.Drawn() || s.Grip || s.Floor != 0 || s.Box != r.Lift.Block || math.Abs(s.CoM.X) > 1e-9:
			t.Errorf("%s: %+v", r.ID, s)
		case r.Lift.Lower:
			if math.Abs(s.Toes[0].Y-s.Hip.Y) > 1e-9 || s.ToesOut[0] < .5 {
				t.Errorf("%s: toes at %.2f m, %.2f out", r.ID, s.Toes[0].Y, s.ToesOut[0])
			}
		case math.Abs(s.Toes[0].Y-r.Lift.Block) > 1e-9 || s.Shoulder.X < s.Fingers.X && r.ID == "floor":
			t.Errorf("%s: toes at %.2f m, shoulders at %.2f", r.ID, s.Toes[0].Y, s.Shoulder.X)
		}
	}
	helped := b.All[3].Aids()[1]
	if s := b.Figure(&b.All[3], helped); helped.Rig.Block != s.Box || math.Abs(s.Toes[0].Y-.20) > 1e-9 {
		t.Errorf("from a block: %+v", s)
	}
}

// A lean of 18 cm for 15 s tells less of a lift than of a planche, and of a press nothing:
// that is measured in newtons.
func TestLeansTellLittleOfLifts(t *testing.T) {
	a, road := rising("floor", 130)
	road.Rungs = []program.Rung{{Kind: program.RungLean, Exercise: "lean"}}
	lean := program.Hold{Exercise: "lean", Ahead: .18, Seconds: 15}
	b, _ := New(a, road, nil)
	if o, ok := b.Observe(&lean); !ok || o.More < .25 {
		t.Errorf("%+v", o)
	}
	push := &program.RoadMap{ID: "push", Hands: program.HandsSupport, Load: program.LoadPress, Steps: []program.Step{{ID: "floor", Press: program.Press{Trunk: 45 * degree}}}}
	b, _ = New(a, push, nil)
	if o, ok := b.Observe(&lean); ok {
		t.Errorf("%+v", o)
	}
}

// However deep the fold, closed legs ask more than the straddle: whoever lifts two in a
// straddle does not lift five with the legs together (common practice).
func TestClosedLegsAreNeverTheEasierLift(t *testing.T) {
	for _, fold := range []float64{120, 130, 140, 150, 160} {
		a, road := rising("together", fold)
		road.Steps = append(road.Steps, program.Step{ID: "together", Lift: program.Lift{}, Allowance: 1.25})
		b, problems := New(a, road, nil)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		load := map[string]float64{}
		for i := range b.All {
			load[b.All[i].ID] = b.All[i].Load
		}
		if load["floor"] == 0 || load["together"] <= load["floor"] {
			t.Errorf("fold %.0f°: %.1f N·m in a straddle, %.1f together", fold, load["floor"], load["together"])
		}
	}
}
