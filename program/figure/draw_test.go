package figure_test

import (
	"encoding/xml"
	"io"
	"math"
	"reflect"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/figure"
)

func TestEveryStanceDraws(t *testing.T) {
	for _, s := range append(stances(t), worked(t)...) {
		d := figure.Draw(s.Stance, figure.Options{Help: "4 kg", Hands: "hands", Mass: "centre", Toes: "3 kg"})
		if d.Empty() {
			t.Errorf("%s: nothing drawn", s.name)
		}
		holdsEverything(t, s.name, d)
		if w := d.Width(); w < 0.5*s.Height || w > 1.6*s.Height {
			t.Errorf("%s: %.2f m wide for a body of %.2f m", s.name, w, s.Height)
		}
	}
	if d := figure.Draw(program.Stance{}, figure.Options{}); !d.Empty() {
		t.Error("no figure was drawn as one")
	}
}

// holdsEverything looks at every curve at eight places.
func holdsEverything(t *testing.T, name string, d figure.Drawing) {
	t.Helper()
	for _, s := range d.Shapes {
		for _, p := range flat(s.Paths) {
			for _, at := range p {
				if math.IsNaN(at.X) || math.IsNaN(at.Y) || at.X < d.Min.X-1e-9 || at.X > d.Max.X+1e-9 || at.Y < d.Min.Y-1e-9 || at.Y > d.Max.Y+1e-9 {
					t.Fatalf("%s: %v lies outside %v to %v", name, at, d.Min, d.Max)
				}
			}
		}
	}
	for _, l := range d.Labels {
		if !(l.At.X >= d.Min.X && l.At.X <= d.Max.X && l.At.Y >= d.Min.Y && l.At.Y <= d.Max.Y) {
			t.Errorf("%s: label %q lies outside", name, l.Text)
		}
	}
}

// flat turns curves into many short lines by the Bernstein polynomials.
func flat(paths []figure.Path) [][]figure.Point {
	var all [][]figure.Point
	for _, p := range paths {
		points, from := []figure.Point{p.From}, p.From
		for _, c := range p.Curves {
			for i := 1; i <= 8; i++ {
				v := float64(i) / 8
				u := 1 - v
				a, b, e, f := u*u*u, 3*u*u*v, 3*u*v*v, v*v*v
				points = append(points, figure.Point{X: a*from.X + b*c.A.X + e*c.B.X + f*c.To.X, Y: a*from.Y + b*c.A.Y + e*c.B.Y + f*c.To.Y})
			}
			from = c.To
		}
		all = append(all, points)
	}
	return all
}

// winding counts how often outlines run around a point (textbook: crossings of
// a ray, with their direction).
func winding(paths [][]figure.Point, at figure.Point) int {
	n := 0
	for _, p := range paths {
		for i, a := range p {
			b := p[(i+1)%len(p)]
			if (a.Y > at.Y) == (b.Y > at.Y) || at.X >= a.X+(at.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
				continue
			}
			if b.Y > a.Y {
				n++
			} else {
				n--
			}
		}
	}
	return n
}

// The drawn body is the one in balance: every joint that is drawn where it is
// lies within dark flesh, and nothing dark is further than a hand's breadth
// from the line between two joints.
func TestFleshIsAroundTheJoints(t *testing.T) {
	for _, s := range stances(t) {
		var dark [][]figure.Point
		for _, shape := range figure.Draw(s.Stance, figure.Options{}).Shapes {
			if shape.Ink == figure.Near {
				dark = append(dark, flat(shape.Paths)...)
			}
		}
		joints := map[string]program.Point{"elbow": s.Elbow, "shoulder": s.Shoulder, "hip": s.Hip, "head": s.Head}
		if s.KneesOut[0] == 0 && s.KneesOut[1] == 0 && s.Toes[0] == s.Toes[1] {
			joints["knee"], joints["ankle"] = s.Knees[0], s.Ankles[0]
		}
		for name, at := range joints {
			if winding(dark, at) < 1 {
				t.Errorf("%s: the %s is not in the body", s.name, name)
			}
		}
	}
}

// Source: de Leva (1996), Table 4, lengths as shares of stature: upper arm,
// forearm, thigh, shank. Legs out of the plane are measured in space.
func TestSegmentsAreAsLongAsTheTableSays(t *testing.T) {
	table := map[program.Sex][4]float64{
		program.SexFemale: {.1586, .1523, .2124, .2528},
		program.SexMale:   {.1618, .1545, .2425, .2529},
	}
	for _, s := range stances(t) {
		want := table[s.sex]
		got := [4]float64{length(s.Shoulder, s.Elbow, 0), length(s.Elbow, s.Wrist, 0)}
		road, _ := library(t).RoadMap("planche")
		step, ok := road.Step(s.step)
		if ok && step.Pose.Legs[1].Hip == 0 && step.Pose.Legs[1].Knee == 0 { // square to the trunk the table's length is not kept
			got[2] = length(s.Hip, s.Knees[1], s.KneesOut[1])
			got[3] = length(s.Knees[1], s.Ankles[1], s.AnklesOut[1]-s.KneesOut[1])
		} else {
			want[2], want[3] = 0, 0
		}
		for i := range want {
			if math.Abs(got[i]/s.Height-want[i]) > 0.0001 {
				t.Errorf("%s: segment %d is %.4f of stature, the table says %.4f", s.name, i, got[i]/s.Height, want[i])
			}
		}
	}
}

func length(p, q program.Point, out float64) float64 {
	return math.Hypot(math.Hypot(q.X-p.X, q.Y-p.Y), out)
}

// The drawn hands carry under the drawn centre of mass, within 1 mm on a figure
// as wide as an A3 sheet (ISO 216: 420 mm).
func TestHandsAreUnderTheCentreOfMass(t *testing.T) {
	for _, s := range stances(t) {
		d := figure.Draw(s.Stance, figure.Options{})
		scale := 0.420 / d.Width()
		tip, mass := marks(t, s.name, d)
		if off := scale * math.Abs(tip.X-mass.X); off > 0.001 {
			t.Errorf("%s: the centre of mass is %.1f mm beside the hands", s.name, 1000*off)
		}
		if off := scale * math.Hypot(mass.X-s.CoM.X, mass.Y-s.CoM.Y); off > 0.001 {
			t.Errorf("%s: the mark is %.1f mm beside the centre of mass", s.name, 1000*off)
		}
		hand := []program.Point{s.Wrist, s.Fingers}
		if !s.Grip && !s.Hang && !(hand[0].X < tip.X && tip.X < hand[1].X) {
			t.Errorf("%s: the hand, %v, does not lie over its mark", s.name, hand)
		}
	}
}

// marks finds the tip of the first wedge and the middle of the disc.
func marks(t *testing.T, name string, d figure.Drawing) (tip, mass figure.Point) {
	t.Helper()
	found := 0
	for _, s := range d.Shapes {
		if s.Ink != figure.Accent || s.Stroke {
			continue
		}
		found++
		p := s.Paths[0]
		if s.Edge > 0 {
			far := p.Curves[1].To // a disc's far side
			mass = figure.Point{X: (p.From.X + far.X) / 2, Y: (p.From.Y + far.Y) / 2}
			continue
		}
		tip = p.From // or the corner that is nearer to the hands' height
		for _, c := range p.Curves {
			if math.Abs(c.To.Y) < math.Abs(tip.Y) {
				tip = c.To
			}
		}
	}
	if found != 2 {
		t.Fatalf("%s: %d marks", name, found)
	}
	return tip, mass
}

func TestTheSameStanceTheSameDrawing(t *testing.T) {
	for _, s := range append(stances(t), worked(t)...) {
		a, b := figure.Draw(s.Stance, figure.Options{}), figure.Draw(s.Stance, figure.Options{})
		if !reflect.DeepEqual(a, b) {
			t.Errorf("%s: two drawings", s.name)
		}
	}
}

// With a band: strands up to the anchor, or torn off where there is no room.
func TestBandsReachTheirAnchor(t *testing.T) {
	drawn := 0
	for _, s := range worked(t) {
		if s.Help == 0 {
			continue
		}
		drawn++
		whole := figure.Draw(s.Stance, figure.Options{Help: "4 kg"})
		torn := figure.Draw(s.Stance, figure.Options{Help: "4 kg", Headroom: 0.35})
		free := s.Stance
		free.Help = 0
		bare := figure.Draw(free, figure.Options{})
		if whole.Max.Y < s.Anchor.Y || torn.Max.Y > math.Max(bare.Max.Y, s.Hip.Y+0.45) {
			t.Errorf("%s: anchor %.2f m, drawn to %.2f m; torn off at %.2f m", s.name, s.Anchor.Y, whole.Max.Y, torn.Max.Y)
		}
		if len(whole.Labels) != 1 || whole.Labels[0].Text != "4 kg" {
			t.Errorf("%s: labels %v", s.name, whole.Labels)
		}
	}
	if drawn == 0 {
		t.Error("no demo client hangs a band")
	}
}

func TestLeansStandOnHandsAndToes(t *testing.T) {
	leans := 0
	for _, s := range worked(t) {
		if s.ToesCarry == 0 || s.Toes[0].Y > s.Floor+0.01 {
			continue
		}
		leans++
		if math.Abs(s.Toes[0].Y-s.Floor) > 0.001 || s.Toes[0].X > s.CoM.X || s.CoM.X > 0.001 {
			t.Errorf("%s: toes %v, centre of mass %v, floor %v", s.name, s.Toes[0], s.CoM, s.Floor)
		}
	}
	if leans == 0 {
		t.Error("nobody leans")
	}
}

// parsed reads an SVG with the standard library and gathers its attributes.
func parsed(t *testing.T, name string, svg []byte) (elements []xml.StartElement, text string) {
	t.Helper()
	r := xml.NewDecoder(strings.NewReader(string(svg)))
	var words strings.Builder
	for {
		token, err := r.Token()
		if err == io.EOF {
			return elements, words.String()
		}
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		switch e := token.(type) {
		case xml.StartElement:
			elements = append(elements, e.Copy())
		case xml.CharData:
			words.Write(e)
		}
	}
}
