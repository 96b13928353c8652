package paper

import (
	"slices"

	"gatepost/program"
	"gatepost/program/figure"
)

// drawn puts a drawing into a box, as large as it fits, from the box's top-left
// corner: its shapes as a picture that the document holds once, its labels as
// texts of the page.
func (ts *typesetter) drawn(d figure.Drawing, b Box) []Mark {
	if d.Empty() {
		return nil
	}
	scale := d.Scale(b.W, b.H)
	plate := figurePlate(d, b.W, b.H)
	marks := []Mark{Picture{Box{b.X, b.Y, plate.Width, plate.Height}, plate}}
	for _, l := range d.Labels {
		at := Point{b.X + scale*(l.At.X-d.Min.X), b.Y + scale*(d.Max.Y-l.At.Y)}
		marks = append(marks, ts.label(l, at, scale*l.Size/mmPerPoint))
	}
	return marks
}

// label sets a drawing's label on its baseline.
func (ts *typesetter) label(l figure.Label, at Point, size float64) Text {
	t := Text{Lines: []string{ts.clean(l.Text)}, Size: size, Lead: size * mmPerPoint, Tone: inks[l.Ink]}
	if l.Bold {
		t.Face = Bold
	}
	if l.Ink == figure.Line {
		t.Tone = Ink
	}
	w := t.Face.width(t.Lines[0], size)
	t.Box = Box{at.X, at.Y - (t.Lead+t.Face.capHeight(size))/2, w, t.Lead}
	switch l.Align {
	case figure.Middle:
		t.X -= w / 2
	case figure.End:
		t.X -= w
	}
	return t
}

// body is a figure ready to be stood on a line: a drawing with the height of its
// floor.
type body struct {
	figure.Drawing
	floor float64 // m
}

// air is how much is left free below figures that hang, m (our judgement: a line
// that they touch would be a floor).
const air = 0.12

// drawings are what was drawn lately: a client's sheets show the same stances.
var drawings = recent[drawing, figure.Drawing]{most: 64} // those of three clients

type drawing struct {
	program.Stance
	figure.Options
}

// draw draws a stance, with labels whose type a sheet may set.
func draw(s program.Stance, o figure.Options) figure.Drawing {
	d := drawings.of(drawing{s, o}, func() figure.Drawing { return figure.Draw(s, o) })
	d.Labels = slices.Clone(d.Labels)
	return d
}

// bodiesOf draws stances for one line; headroom is how many m of band are shown above
// the hip. What hangs has its bars at one height, and the line below the lowest body:
// the floor is further down than anybody wants to see.
func bodiesOf(stances []program.Stance, o func(i int) figure.Options) []body {
	var bodies []body
	lowest := 0.0
	for i, s := range stances {
		bodies = append(bodies, body{draw(s, o(i)), s.Floor})
		lowest = min(lowest, bodies[i].Min.Y-air)
	}
	for i, s := range stances {
		if s.Hang {
			bodies[i].floor = lowest
		}
	}
	return bodies
}

// above and below are how far the drawing reaches from its floor, in m.
func (b *body) above() float64 { return b.Max.Y - b.floor }
func (b *body) below() float64 { return b.floor - b.Min.Y }

// stand puts a body on a floor line at a height of the page, its left edge at x.
func (ts *typesetter) stand(b body, x, floor, scale float64) []Mark {
	return ts.drawn(b.Drawing, Box{x, floor - scale*b.above(), scale * b.Width(), scale * b.Height()})
}
