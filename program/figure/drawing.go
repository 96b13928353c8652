package figure

import (
	"math"

	"gatepost/program"
)

// Point is a place in a drawing, in metres.
type Point = program.Point

// Drawing is a picture as geometry.
type Drawing struct {
	Min, Max Point // hold every shape, strokes with half their width, and where labels stand
	Shapes   []Shape
	Labels   []Label

	begun bool // the box holds something
}

// Ink is what a shape is drawn with.
type Ink int

const (
	Near   Ink = iota // the dark tone
	Far               // the same, lighter
	Line              // floor, support, axes: thin and dark
	Accent            // band, plumb line, marks: the second ink
	Paper             // what is behind everything
)

// Shape is outlines filled together (non-zero winding), or strokes.
type Shape struct {
	Ink    Ink
	Paths  []Path
	Stroke bool
	Width  float64 // m, of a stroke; 0: the thinnest line the ink can draw
	Dash   float64 // m, length of a dash and of a gap; 0: no gaps
	Edge   float64 // m of paper left free around the shape, drawn before it; 0: none
}

// Path is a run of curves; filled, it closes with a straight line.
type Path struct {
	From   Point
	Curves []Curve
}

// Curve is a cubic Bézier piece to To. A straight piece has A where it starts
// and B equal to To.
type Curve struct{ A, B, To Point }

// Align says which part of a label stands at its point.
type Align int

const (
	Start Align = iota
	Middle
	End
)

// Label is text of the caller's at a point on its baseline.
type Label struct {
	Text  string
	At    Point
	Align Align
	Size  float64 // m, type size; 0: whatever is readable where it is drawn
	Ink   Ink     // Line, Accent, or Paper on a dark bar
	Bold  bool
}

// Width and Height of the box, m.
func (d *Drawing) Width() float64  { return d.Max.X - d.Min.X }
func (d *Drawing) Height() float64 { return d.Max.Y - d.Min.Y }

// Scale is the largest scale at which the drawing fits a box of these sides.
func (d *Drawing) Scale(width, height float64) float64 {
	return math.Min(width/d.Width(), height/d.Height())
}

// Empty says that there is nothing to draw.
func (d *Drawing) Empty() bool { return len(d.Shapes) == 0 }

// add puts a shape on top and widens the box for it.
func (d *Drawing) add(s Shape) {
	d.Shapes = append(d.Shapes, s)
	half := 0.0
	if s.Stroke {
		half = s.Width / 2
	}
	for _, p := range s.Paths {
		d.hold(p.From, half)
		for _, c := range p.Curves {
			for _, at := range [3]Point{c.A, c.B, c.To} {
				d.hold(at, half)
			}
		}
	}
}

// label puts a label on, if there is anything to say.
func (d *Drawing) label(l Label) {
	if l.Text != "" {
		d.hold(l.At, 0)
		d.Labels = append(d.Labels, l)
	}
}

// hold widens the box to a point and a margin around it.
func (d *Drawing) hold(p Point, margin float64) {
	if !d.begun {
		d.Min, d.Max, d.begun = p, p, true
	}
	d.Min = Point{X: math.Min(d.Min.X, p.X-margin), Y: math.Min(d.Min.Y, p.Y-margin)}
	d.Max = Point{X: math.Max(d.Max.X, p.X+margin), Y: math.Max(d.Max.Y, p.Y+margin)}
}
