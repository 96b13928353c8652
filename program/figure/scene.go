package figure

import "math"

// Sizes of what stands around a body, m. Common practice: a rail of 3 cm, 40 cm
// long; the rest our judgement.
const (
	railThick = 0.03
	railHalf  = 0.20
	postThick = 0.02
	lineThick = 0.010 // floor, bar, scale
	fine      = 0.008 // band, plumb line
	dash      = 0.03
	overhang  = 0.12 // of the floor beyond the body
	bandHalf  = 0.010
)

// ground is what the hands and toes stand on, beside the floor.
func (b *body) ground(d *Drawing) {
	if b.Grip && !b.Hang {
		d.add(Shape{Ink: Line, Paths: b.parallette()})
	}
	if b.ToesCarry > 0 && b.Box == 0 && b.lowest() > b.Floor+0.01 {
		b.scale(d)
	}
	b.raised(d)
}

// floor is drawn over the hands and toes, so that nothing left free breaks it; in a
// hang it is the bar, seen from its end.
func (b *body) floor(d *Drawing) {
	if b.Hang {
		d.add(Shape{Ink: Line, Paths: []Path{disc(Point{}, railThick/2)}, Edge: b.flesh(edge)})
		return
	}
	left, right := b.span()
	for _, x := range b.standing() {
		left, right = math.Min(left, x), math.Max(right, x)
	}
	d.add(floorLine(left-overhang, right+overhang, b.Floor))
}

// span is how far the joints reach.
func (b *body) span() (left, right float64) {
	left, right = math.Inf(1), math.Inf(-1)
	for _, p := range []Point{b.Fingers, b.Wrist, b.Crown, b.Hip, b.Toes[0], b.Toes[1], b.Knees[0], b.Knees[1]} {
		left, right = math.Min(left, p.X), math.Max(right, p.X)
	}
	return left, right
}

// floorLine has its upper side at a height.
func floorLine(left, right, y float64) Shape {
	y -= lineThick / 2
	return Shape{Ink: Line, Stroke: true, Width: lineThick, Paths: []Path{polygon(Point{X: left, Y: y}, Point{X: right, Y: y})}}
}

// parallette is a rail on two posts, seen from the side.
func (b *body) parallette() []Path {
	top, foot := railThick/2, math.Min(b.Floor, -railThick/2)-lineThick/2
	paths := []Path{rectangle(Point{X: -railHalf, Y: -top}, Point{X: railHalf, Y: top})}
	for _, x := range []float64{-0.7 * railHalf, 0.7 * railHalf} {
		paths = append(paths, rectangle(Point{X: x - postThick/2, Y: foot}, Point{X: x + postThick/2}))
	}
	return paths
}

// lowest is the height of the lowest toes.
func (b *body) lowest() float64 { return math.Min(b.Toes[0].Y, b.Toes[1].Y) }

// scale is a bathroom scale, on a box where the toes are high.
func (b *body) scale(d *Drawing) {
	const half, thick = 0.15, 0.03
	top, x := b.lowest()-b.flesh(.007), b.Toes[b.near].X
	under := math.Max(b.Floor, top-thick)
	if under > b.Floor {
		box := polygon(Point{X: x - 0.8*half, Y: under}, Point{X: x - 0.8*half, Y: b.Floor},
			Point{X: x + 0.8*half, Y: b.Floor}, Point{X: x + 0.8*half, Y: under})
		d.add(Shape{Ink: Line, Stroke: true, Width: lineThick, Paths: []Path{box}})
	}
	d.add(Shape{Ink: Line, Paths: []Path{rectangle(Point{X: x - half, Y: under}, Point{X: x + half, Y: top})}})
}

// banded says that there is a band to draw.
func (b *body) banded() bool { return b.Help > 0 && distance(b.Anchor, b.acts()) > 0 }

// acts is where the band acts.
func (b *body) acts() Point {
	if Point(b.Acts) == (Point{}) {
		return b.Hip
	}
	return Point(b.Acts)
}

// strands are the two sides of a loop between where the strap ends and the body,
// and the strap itself.
func (b *body) strands(o Options) (near, far, strap Path) {
	at, top := b.acts(), b.Anchor
	room := at.Y + o.Headroom
	if b.Hang { // the hands are above what hangs
		room = o.Headroom
	}
	if o.Headroom > 0 && top.Y > room {
		top = between(at, b.Anchor, (room-at.Y)/(b.Anchor.Y-at.Y))
	}
	whole, shown := distance(b.Anchor, at), distance(top, at)
	end := between(b.Anchor, at, math.Min(1, b.Strap/whole))
	if distance(end, at) > shown {
		end = top
	}
	side := times(bandHalf, turned(unit(minus(at, b.Anchor))))
	under := at
	if at == b.Hip {
		under = along(at, b.belly, b.flesh(.050))
	}
	near = polygon(minus(end, side), minus(under, side))
	far = polygon(plus(end, side), plus(at, side))
	return near, far, polygon(top, end)
}

// slackHalf is half the width of a loop that hangs slack, m (our judgement: what is told
// apart from the plumb line).
const slackHalf = 0.045

// slack is the loop that hangs from the bar and lifts nothing.
func (b *body) slack() (near, far Path) {
	low := Point{Y: -b.Slack}
	near = polygon(Point{}, Point{X: -slackHalf, Y: low.Y + slackHalf}, low)
	return near, polygon(Point{}, Point{X: slackHalf, Y: low.Y + slackHalf}, low)
}

// bandBehind is the far strand and the strap, bandBefore the near strand.
func (b *body) bandBehind(d *Drawing, o Options) {
	if b.Slack > 0 {
		_, far := b.slack()
		d.add(Shape{Ink: Accent, Stroke: true, Width: fine, Paths: []Path{far}})
	}
	if !b.banded() {
		return
	}
	_, far, strap := b.strands(o)
	d.add(Shape{Ink: Accent, Stroke: true, Width: fine, Paths: []Path{far}})
	if distance(strap.From, strap.Curves[0].To) > 0.001 {
		d.add(Shape{Ink: Accent, Stroke: true, Width: fine, Dash: dash / 2, Paths: []Path{strap}})
	}
	if strap.From != b.Anchor {
		d.add(torn(strap.From))
	} else {
		bar := disc(along(b.Anchor, Point{Y: 1}, railThick/2), railThick/2)
		d.add(Shape{Ink: Line, Paths: []Path{bar}})
	}
}

// torn is the sign that a line goes on: two slanted strokes across it.
func torn(at Point) Shape {
	const w, h = 0.03, 0.012
	stroke := polygon(Point{X: at.X - w, Y: at.Y - h}, Point{X: at.X + w, Y: at.Y + h})
	return Shape{Ink: Accent, Stroke: true, Width: fine, Paths: []Path{stroke, stroke.moved(Point{Y: -2 * h})}}
}

func (b *body) bandBefore(d *Drawing, o Options) {
	if b.Slack > 0 {
		near, _ := b.slack()
		d.add(Shape{Ink: Accent, Stroke: true, Width: fine, Edge: b.flesh(edge) / 2, Paths: []Path{near}})
	}
	if b.banded() {
		near, _, _ := b.strands(o)
		d.add(Shape{Ink: Accent, Stroke: true, Width: fine, Edge: b.flesh(edge) / 2, Paths: []Path{near}})
	}
}
