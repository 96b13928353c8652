package figure

import (
	"encoding/xml"
	"math"
	"strings"
	"testing"

	"gatepost/program"
)

// leaning is a stance made by hand: straight from toes to crown, 10 cm of lean.
func leaning() program.Stance {
	at := func(x, y float64) Point { return Point{X: x, Y: y} }
	return program.Stance{
		Height: 1.7, Fingers: at(.18, 0), Wrist: at(0, 0), Elbow: at(.05, .27), Shoulder: at(.1, .53),
		C7: at(.28, .56), Head: at(.4, .58), Crown: at(.5, .6), Hip: at(-.38, .36),
		Knees: [2]Point{at(-.75, .23), at(-.75, .23)}, Ankles: [2]Point{at(-1.17, .08), at(-1.17, .08)},
		Toes: [2]Point{at(-1.35, .02), at(-1.35, .02)}, CoM: at(-.3, .4), ToesCarry: 150,
	}
}

func lying() program.Stance {
	at := func(x float64) Point { return Point{X: -x} }
	return program.Stance{
		Height: 1.7, Shoulder: at(1.38), Elbow: at(1.1), Wrist: at(.85), Fingers: at(.66), C7: at(1.5), Head: at(1.6), Crown: at(1.7),
		Hip: at(.9), Knees: [2]Point{at(.47), at(.47)}, Ankles: [2]Point{at(.05), at(.05)},
		Toes: [2]Point{{X: 0, Y: .15}, {X: 0, Y: .15}}, CoM: at(.94),
	}
}

// A mark on the floor is only right if the head touches the wall and nothing of
// the body goes through it.
func TestTheCrownTouchesTheWall(t *testing.T) {
	s := leaning()
	b := bodyOf(&s)
	wall := b.crownEdge()
	head := math.Inf(-1)
	for _, c := range b.head().Curves {
		head = math.Max(head, c.To.X)
	}
	if math.Abs(wall-head) > .001 {
		t.Errorf("wall at %.3f, head to %.3f", wall, head)
	}
	if d := AtWall(s, "x"); d.Max.X > wall+wallThick+.15 {
		t.Errorf("something stands %.3f m beyond the wall", d.Max.X-wall)
	}
}

// The board is measured from the soles, at the origin, to the crown and beyond.
func TestTheBoardCarriesTheWholeBody(t *testing.T) {
	s := lying()
	d := OnBoard(s, "L", "point", "scale")
	if d.Min.X > s.Crown.X-.1 || d.Max.X < boardOver {
		t.Errorf("from %.2f to %.2f", d.Min.X, d.Max.X)
	}
	words := map[string]bool{}
	for _, l := range d.Labels {
		words[l.Text] = true
	}
	if !words["L"] || !words["point"] || !words["scale"] {
		t.Errorf("labels: %v", d.Labels)
	}
}

func TestSettingsAreDrawings(t *testing.T) {
	for name, d := range map[string]Drawing{"wall": AtWall(leaning(), "a < b"), "board": OnBoard(lying(), "a", "b", "c")} {
		svg := SVG(d, name, "told", SVGOptions{Prefix: name})
		if err := xml.Unmarshal(svg, new(struct{})); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if len(svg) > 6<<10 || strings.Contains(string(svg), "NaN") || strings.Contains(string(svg), "style=") {
			t.Errorf("%s: %d bytes\n%s", name, len(svg), svg)
		}
	}
	if d := AtWall(program.Stance{}, "x"); !d.Empty() {
		t.Error("nothing was drawn")
	}
	if d := OnBoard(program.Stance{}, "", "", ""); !d.Empty() {
		t.Error("nothing was drawn")
	}
}
