package intake

import (
	"math"
	"testing"

	"gatepost/program"

	"github.com/google/go-cmp/cmp"
)

// What is written of a press is what is read: three seconds a repetition (common
// practice), lengths in metres, angles in radians, pads the lowest first.
func TestPressIsRead(t *testing.T) {
	studio, a := clientOfCase(t, "press-sound")
	m, _ := studio.Library.RoadMap("push")
	box, wall, down := m.Steps[1], m.Steps[2], m.Steps[3]
	if want := (program.Press{Rest: "toes", Trunk: 75 * math.Pi / 180, Feet: 0.6}); m.Load != "press" || box.Press != want {
		t.Errorf("%v, box: %+v", m.Load, box.Press)
	}
	if want := (program.Gate{Sets: 3, Hold: 24, Reps: 8, RPEMax: 8, Sessions: 2, Apart: 48, PainMax: 2}); box.Gate != want {
		t.Errorf("gate: %+v", box.Gate)
	}
	if want := (program.Press{Rest: "wall", Gap: 0.15, Hands: 0.05}); wall.Press != want || !down.Press.Lower {
		t.Errorf("wall: %+v, down: %+v", wall.Press, down.Press)
	}
	if diff := cmp.Diff([]program.Purpose{"row", "rear shoulder", "pull-up"}, m.Against); diff != "" || m.Strength[0] != "push" {
		t.Error(m.Strength, diff)
	}
	if a.Goal.Hold != 15 || a.Goal.Reps != 5 || a.Hanging.Anchor != 0 || a.Training.Best.Reps != 3 || a.Training.Best.Rig.Pad != 0.05 {
		t.Errorf("%+v\n%+v\n%+v", a.Goal, a.Hanging, a.Training.Best)
	}
	if diff := cmp.Diff([]float64{0.05, 0.10, 0.15}, a.Hanging.Pads); diff != "" {
		t.Error(diff)
	}
	if x := a.Tests[0]; x.Step != "wall" || x.Reps != 4 || x.Seconds != 0 || x.Rig.Pad != 0.10 || x.Rig.Free() {
		t.Errorf("%+v", x)
	}
	if x := a.Tests[2]; x.Step != "box" || x.Reps != 9 || !x.Stopped {
		t.Errorf("%+v", x)
	}
	if g := studio.Public[0].Goal; g.Reps != 5 || g.Hold != 15 {
		t.Errorf("%+v", g)
	}
	if e := a.Log.Entries; e[0].Rig.Pad != 0.10 || e[0].Sets[2].Reps != 4 || len(e[1].Sets) != 3 || e[2].Rig.Pad != 0.05 || e[3].Sets[0].Clean != program.CleanNo || !e[4].Rig.Free() {
		t.Errorf("%+v", e)
	}
}
