package figure

import "math"

// Sizes of marks, shares of stature.
const (
	massMark = 0.021
	handMark = 0.030
)

// plumb is the line from the centre of mass down to the floor, or up to the bar.
func (b *body) plumb(d *Drawing) {
	foot := Point{X: b.CoM.X, Y: b.Floor}
	if b.Hang {
		foot.Y = 0
	}
	line := polygon(b.CoM, foot)
	d.add(Shape{Ink: Accent, Stroke: true, Width: fine, Dash: dash, Edge: b.flesh(edge) / 4, Paths: []Path{line}})
}

// marks are the centre of mass, the point where the hands carry, and the toes
// where something carries them.
func (b *body) marks(d *Drawing) {
	wedges := []Path{b.wedge(0)}
	if b.ToesCarry > 0 {
		wedges = append(wedges, b.wedge(b.Toes[b.near].X))
	}
	d.add(Shape{Ink: Accent, Paths: wedges})
	b.massAt(d, b.CoM)
}

// wedge points at the support, from below the floor, or from above a bar.
func (b *body) wedge(x float64) Path {
	tip, down := Point{X: x, Y: b.Floor - lineThick}, -b.flesh(handMark)
	if b.Hang {
		tip, down = Point{X: x, Y: railThick}, -down
	}
	return counterClockwise(polygon(tip, Point{X: x - down/2, Y: tip.Y + down}, Point{X: x + down/2, Y: tip.Y + down}))
}

// massAt draws the sign for a centre of mass: a disc with two opposite quarters
// left free (common practice in engineering drawings).
func (b *body) massAt(d *Drawing, at Point) {
	r := b.flesh(massMark)
	d.add(Shape{Ink: Accent, Paths: []Path{disc(at, r)}, Edge: b.flesh(edge) / 2})
	var quarters []Path
	for _, arm := range []Point{{X: r - fine}, {X: fine - r}} {
		p := Path{From: at}
		p.lineTo(plus(at, arm))
		p.quarters(at, arm, 1)
		quarters = append(quarters, p)
	}
	d.add(Shape{Ink: Paper, Paths: quarters})
}

// letterWide is how wide a letter is at the most, of its size (our judgement).
const letterWide = 0.6

// words are the caller's labels at band, hands, centre of mass and toes.
func (b *body) words(d *Drawing, o Options) {
	say := func(text string, at Point, align Align) {
		d.label(Label{Text: text, At: at, Align: align, Size: o.Text, Ink: Accent})
	}
	below := b.Floor - b.flesh(handMark) - 0.07
	if b.Hang {
		below = b.flesh(handMark) + railThick + 0.03
	}
	say(o.Hands, Point{Y: below}, Middle)
	if b.banded() {
		near, _, _ := b.strands(o)
		at := between(near.From, b.Hip, 0.35)
		switch {
		case b.Hang: // arms and legs are on both sides
			say(o.Help, Point{X: -b.flesh(.06), Y: -railThick}, End)
		case math.Max(b.Toes[0].Y, b.Toes[1].Y) > b.Hip.Y+0.15: // the legs are in the way
			say(o.Help, plus(at, Point{X: 0.05}), Start)
		default:
			say(o.Help, plus(at, Point{X: -0.04}), End)
		}
	}
	if b.ToesCarry > 0 {
		at, align := Point{X: b.Toes[b.near].X, Y: below}, Middle
		if half := letterWide / 2 * o.Text * float64(len(o.Toes)); at.X-half < d.Min.X { // nothing stands further out than the toes
			at.X, align = d.Min.X, Start
		}
		say(o.Toes, at, align)
	}
	say(o.Mass, Point{X: b.CoM.X - 0.06, Y: b.CoM.Y - b.flesh(.13)}, End)
}
