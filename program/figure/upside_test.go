package figure_test

import (
	"encoding/xml"
	"math"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/figure"
	"gatepost/program/mechanics"
)

// pressing are presses of a woman of 1.66 m, from straight arms and with the crown down.
func pressing(t *testing.T) []posed {
	t.Helper()
	b, err := mechanics.NewBody(mechanics.Female, 58, 1.66, 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	var all []posed
	for _, c := range []struct {
		name           string
		pose           mechanics.PressPose
		box, wall, pad float64
	}{
		{"pike", mechanics.PressPose{Trunk: math.Pi / 4}, 0, 0, 0},
		{"pike, feet on 30 cm", mechanics.PressPose{Trunk: math.Pi / 3, Feet: .30}, .30, 0, 0},
		{"box pike", mechanics.PressPose{Trunk: math.Pi / 2, Feet: .80}, .80, 0, 0},
		{"back to the wall", mechanics.PressPose{Rest: mechanics.HeelsAtWall, Gap: .28}, 0, .28, 0},
		{"back to the wall, pad", mechanics.PressPose{Rest: mechanics.HeelsAtWall, Gap: .28}, 0, .28, .15},
		{"belly to the wall", mechanics.PressPose{Rest: mechanics.AtWall, Gap: .15}, 0, -.15, 0},
		{"raised hands", mechanics.PressPose{Rest: mechanics.AtWall, Gap: .15, Hands: .15}, 0, -.15, 0},
		{"free", mechanics.PressPose{Rest: mechanics.Nothing}, 0, 0, 0},
	} {
		for _, end := range []string{"", " low"} {
			j, err := b.PressJoints(c.pose)
			if end != "" {
				j, err = b.PressBottom(c.pose, c.pad)
			}
			if err != nil {
				t.Fatal(c.name, end, err)
			}
			s := jointed(&b, &j)
			s.Floor, s.Box, s.Wall, s.Pad = -c.pose.Hands, c.box, c.wall, c.pad
			all = append(all, posed{c.name + end, end, program.SexFemale, s})
		}
	}
	return all
}

func jointed(b *mechanics.Body, j *mechanics.Joints) program.Stance {
	at := func(p mechanics.Point) program.Point { return program.Point(p) }
	s := program.Stance{
		Height: b.Height, Fingers: at(j.Fingers), Wrist: at(j.Wrist), Elbow: at(j.Elbow), Shoulder: at(j.Shoulder),
		C7: at(j.C7), Head: at(j.Head), Crown: at(j.Crown), Hip: at(j.Hip), CoM: at(j.CoM),
	}
	for i := range j.Knees {
		s.Knees[i], s.Ankles[i], s.Toes[i] = at(j.Knees[i]), at(j.Ankles[i]), at(j.Toes[i])
	}
	return s
}

// fleshOf is how far a body's outlines reach.
func fleshOf(d figure.Drawing) (low, high figure.Point) {
	low, high = figure.Point{X: math.Inf(1), Y: math.Inf(1)}, figure.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, s := range d.Shapes {
		if s.Ink != figure.Near {
			continue
		}
		for _, path := range flat(s.Paths) {
			for _, p := range path {
				low = figure.Point{X: math.Min(low.X, p.X), Y: math.Min(low.Y, p.Y)}
				high = figure.Point{X: math.Max(high.X, p.X), Y: math.Max(high.Y, p.Y)}
			}
		}
	}
	return low, high
}

// wallFace is the side of a wall on the side of the body.
func wallFace(d figure.Drawing, wanted float64) (x float64, ok bool) {
	for _, s := range d.Shapes {
		if s.Ink == figure.Line && !s.Stroke && wanted != 0 {
			return s.Paths[0].From.X, true
		}
	}
	return 0, wanted != 0
}

// A wall is touched and not gone through. It stands as far from the wrists as it is said
// to within 3 cm: a gap is that of the feet, and a belly may be there first.
func TestABodyTouchesItsWall(t *testing.T) {
	for _, s := range pressing(t) {
		d := figure.Draw(s.Stance, figure.Options{Plain: true})
		low, high := fleshOf(d)
		if face, ok := wallFace(d, s.Wall); ok {
			reach := high.X
			if s.Wall < 0 {
				reach = low.X
			}
			if math.Abs(reach-face) > 0.01 || math.Abs(face-s.Wall) > 0.03 {
				t.Errorf("%s: the body reaches to %.3f m, the wall stands at %.3f, wanted %.3f", s.name, reach, face, s.Wall)
			}
		}
		if low.Y < s.Floor-0.010 {
			t.Errorf("%s: %.3f m of the body are under the floor", s.name, s.Floor-low.Y)
		}
	}
}

// Upside down with straight arms the head hangs free, a hand's length over the floor; at
// the lowest point it touches the pad, or the floor, ahead of the hands, and is not in it.
func TestTheHeadComesDownToItsPad(t *testing.T) {
	for _, s := range pressing(t) {
		d := figure.Draw(s.Stance, figure.Options{Plain: true})
		top := s.Floor + s.Pad
		under := func(up float64) int {
			n := 0
			for _, shape := range d.Shapes {
				if shape.Ink == figure.Near {
					n += winding(flat(shape.Paths), figure.Point{X: s.Crown.X, Y: top + up})
				}
			}
			return n
		}
		switch {
		case s.step != "" && (under(0.02) == 0 || under(-0.01) != 0):
			t.Errorf("%s: the crown at %.3f m does not lie on %.3f m", s.name, s.Crown.Y, top)
		case s.step == "" && s.Crown.Y < 0.20:
			t.Errorf("%s: the crown hangs %.3f m above the hands", s.name, s.Crown.Y)
		}
	}
}

// strokes are the rectangles open below that stand on the floor, as their left, right
// and top.
func strokes(d figure.Drawing) [][3]float64 {
	var all [][3]float64
	for _, s := range d.Shapes {
		if p := s.Paths[0]; s.Ink == figure.Line && s.Stroke && len(p.Curves) == 3 {
			all = append(all, [3]float64{p.From.X, p.Curves[2].To.X, p.Curves[0].To.Y})
		}
	}
	return all
}

// A box of 30 or 80 cm stands under the feet, blocks of 15 cm under raised hands, and
// nothing where neither is asked for.
func TestBoxesStandUnderFeetAndHands(t *testing.T) {
	for _, s := range pressing(t) {
		d := figure.Draw(s.Stance, figure.Options{Plain: true})
		boxes := strokes(d)
		on, top := s.Toes[0], s.Box
		if s.Floor < 0 {
			on, top = figure.Point{X: 0.08}, 0
		}
		if s.Box == 0 && s.Floor == 0 {
			if len(boxes) > 0 {
				t.Errorf("%s: %v", s.name, boxes)
			}
			continue
		}
		if len(boxes) != 1 || boxes[0][0] > on.X || boxes[0][1] < on.X || math.Abs(boxes[0][2]-top) > 0.01 {
			t.Errorf("%s: %v, wanted one under %.2f, %.2f m high", s.name, boxes, on.X, top)
		}
		if d.Min.X > boxes[0][0]-0.05 {
			t.Errorf("%s: the floor ends at the box", s.name)
		}
	}
}

// Both inks follow: the image for pages is well-formed, and the box holds every shape.
func TestPressesAreDrawings(t *testing.T) {
	for _, s := range pressing(t) {
		d := figure.Draw(s.Stance, figure.Options{Hands: "hands", Mass: "centre"})
		holdsEverything(t, s.name, d)
		svg := figure.SVG(d, s.name, "told", figure.SVGOptions{})
		if err := xml.Unmarshal(svg, new(struct{})); err != nil || len(svg) > 6<<10 || strings.Contains(string(svg), "NaN") {
			t.Errorf("%s: %v, %d bytes", s.name, err, len(svg))
		}
	}
}
