package intake

import (
	"math"
	"testing"

	"gatepost/program"

	"github.com/google/go-cmp/cmp"
)

// What is written of a lift is what is read: three seconds a repetition (common practice),
// lengths in metres, angles in radians between the legs, blocks the lowest first.
func TestLiftIsRead(t *testing.T) {
	const degree = math.Pi / 180
	studio, a := clientOfCase(t, "lift-sound")
	m, _ := studio.Library.RoadMap("rise")
	for i, want := range []struct {
		stance, open, block float64
		lower               bool
	}{{60, 100, .40, false}, {60, 100, .20, false}, {60, 0, 0, true}, {60, 100, 0, false}, {0, 0, 0, false}} {
		got := m.Steps[i].Lift
		if math.Abs(got.Stance-want.stance*degree)+math.Abs(got.Open-want.open*degree) > 1e-12 || got.Block != want.block || got.Lower != want.lower {
			t.Errorf("%s: %+v", m.Steps[i].ID, got)
		}
	}
	if g := m.Steps[0].Gate; m.Load != program.LoadLift || g.Hold != 9 || g.Reps != 3 || g.RPEMax != 8 {
		t.Errorf("%s %+v", m.Load, g)
	}
	if lean, fold := m.Entry[1], m.Entry[2]; lean.Ahead != 0.18 || lean.Seconds != 15 || math.Abs(fold.Fold-130*degree) > 1e-12 {
		t.Errorf("%+v %+v", lean, fold)
	}
	if diff := cmp.Diff([]program.Purpose{"fold", "straddle"}, m.Mobility); diff != "" {
		t.Error(diff)
	}
	if math.Abs(a.Athlete.Fold-132*degree) > 1e-12 || a.Goal.Hold != 6 || a.Training.Best.Rig.Block != 0.10 {
		t.Errorf("%+v\n%+v\n%+v", a.Athlete, a.Goal, a.Training.Best)
	}
	if diff := cmp.Diff([]float64{0.10, 0.21, 0.40}, a.Hanging.Blocks); diff != "" {
		t.Error(diff)
	}
	if x := a.Tests[1]; x.Step != "floor" || x.Reps != 4 || x.Rig.Block != 0.21 || x.Rig.Free() {
		t.Errorf("%+v", x)
	}
	if e := a.Log.Entries; e[0].Rig.Block != 0.10 || e[0].Sets[2].Reps != 2 || len(e[1].Sets) != 3 || e[2].Rig.Block != 0.21 || e[3].Rig.Block != 0.125 || !e[4].Rig.Free() {
		t.Errorf("%+v", e)
	}
	if p := a.Plans[0].Weeks[0].Sessions[0].Items[0]; p.Rig.Block != 0.1 {
		t.Errorf("%+v", p)
	}
}
