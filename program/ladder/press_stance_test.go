package ladder

import (
	"math"
	"testing"

	"gatepost/program"
	"gatepost/program/mechanics"
)

func pressBody(t *testing.T) *Body {
	t.Helper()
	b, err := mechanics.NewBody(mechanics.Female, 58, 1.66, 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	return &Body{Body: b, Weight: 568.8, support: mechanics.Support{Grip: true, Height: 0.10}}
}

// A woman of 58 kg and 1.66 m. In a pike on the floor .60 of 569 N is on her hands, by a
// second model (within .02); her crown hangs 26 cm above the floor (our judgement). The
// parallettes of her holds are not there.
func TestWhatAPressStandsOn(t *testing.T) {
	const degree = math.Pi / 180
	b := pressBody(t)
	for _, c := range []struct {
		name                        string
		press                       program.Press
		pad                         float64
		floor, box, wall, toesCarry float64
	}{
		{"pike", program.Press{Rest: program.PressOnToes, Trunk: 45 * degree}, 0, 0, 0, 0, 228},
		{"box pike", program.Press{Rest: program.PressOnToes, Trunk: 90 * degree, Feet: .80}, 0, 0, .80, 0, 68},
		{"wall, pads", program.Press{Rest: program.PressHeels, Gap: .28}, .15, 0, 0, .28, 0},
		{"raised hands", program.Press{Rest: program.PressAtWall, Gap: .20, Hands: .10}, 0, -.10, 0, -.20, 0},
		{"free", program.Press{Rest: program.PressFree}, 0, 0, 0, 0, 0},
	} {
		top, low := b.pressed(c.press, c.pad), b.pressedLow(c.press, c.pad)
		for _, s := range []program.Stance{top, low} {
			if !s.Drawn() || s.Grip || s.Hang || s.Floor != c.floor || s.Box != c.box || s.Wall != c.wall || s.Pad != c.pad {
				t.Errorf("%s: %+v", c.name, s)
			}
		}
		if math.Abs(top.ToesCarry-c.toesCarry) > .02*b.Weight || low.ToesCarry != 0 {
			t.Errorf("%s: toes carry %.0f N, then %.0f, wanted %.0f", c.name, top.ToesCarry, low.ToesCarry, c.toesCarry)
		}
		if math.Abs(low.Crown.Y-c.floor-c.pad) > 1e-9 {
			t.Errorf("%s: the crown comes down to %.3f m", c.name, low.Crown.Y)
		}
	}
	if s := b.pressed(program.Press{Rest: program.PressFree}, 0); math.Abs(s.Crown.Y-.26) > .01 {
		t.Errorf("the crown hangs at %.3f m", s.Crown.Y)
	}
	for name, s := range map[string]program.Stance{
		"feet in the air":          b.pressed(program.Press{Rest: program.PressOnToes, Trunk: 90 * degree}, 0),
		"pad as high as the crown": b.pressedLow(program.Press{Rest: program.PressFree}, .27),
		"a push-up":                b.pressedLow(program.Press{Rest: program.PressOnToes}, 0),
	} {
		if s.Drawn() {
			t.Errorf("%s is drawn", name)
		}
	}
}

// A page can show a press before it goes down and with the crown on the floor, of a body
// of 1.738 m whose toes are 15 cm behind its wrists.
func TestPressesAreIllustrated(t *testing.T) {
	road := &program.RoadMap{ID: "bell", Hands: program.HandsSupport, Load: program.LoadPress, Steps: []program.Step{
		{ID: "wall", Press: program.Press{Rest: program.PressAtWall, Gap: .15}}}}
	found := map[string]program.Stance{}
	for _, i := range Illustrations(road) {
		found[i.Name] = i.Stance
	}
	top, low := found["bell/wall"], found["bell/wall/low"]
	if math.Abs(top.Toes[0].X+.15) > 1e-9 || math.Abs(low.Crown.Y) > 1e-9 || top.Crown.Y < .20 {
		t.Errorf("high %+v\nlow %+v", top, low)
	}
	if s := found["bell/wall/band"]; s.Drawn() {
		t.Error("a press hangs in a band")
	}
}
