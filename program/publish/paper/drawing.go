package paper

import (
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

// bodyOf draws a stance; headroom is how many m of band are shown above the hip.
func bodyOf(s program.Stance, o figure.Options) body {
	return body{figure.Draw(s, o), s.Floor}
}

// above and below are how far the drawing reaches from its floor, in m.
func (b *body) above() float64 { return b.Max.Y - b.floor }
func (b *body) below() float64 { return b.floor - b.Min.Y }

// stand puts a body on a floor line at a height of the page, its left edge at x.
func (ts *typesetter) stand(b body, x, floor, scale float64) []Mark {
	return ts.drawn(b.Drawing, Box{x, floor - scale*b.above(), scale * b.Width(), scale * b.Height()})
}
