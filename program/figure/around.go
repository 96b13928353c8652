package figure

import (
	"math"

	"gatepost/program"
)

// Sizes of what is around a placed body, m (our judgement).
const (
	ringRound  = 0.085
	ringThick  = 0.022
	strapThick = 0.012
	towelThick = 0.022
	plateHalf  = 0.065
	plateThick = 0.055
	gripThick  = 0.022
	tableThick = 0.035
	barHalf    = 0.62
	wallHalf   = 0.95 // of one that is looked at
	postOver   = 0.15
	circleWide = 0.13
	circleFlat = 0.35 // how much less wide one is that is seen from its side
	arrowHead  = 0.075
	movedThick = 0.016
)

// behind are the things behind a body.
func (n *person) behind(d *Drawing) {
	for i := range n.Set {
		s := &n.Set[i]
		from, to := n.see(s.From), n.see(s.To)
		switch s.Kind {
		case program.ThingWall:
			n.wall(d, s)
		case program.ThingBox, program.ThingBlocks:
			n.standing(d, s, false)
		case program.ThingCushion, program.ThingScale:
			n.standing(d, s, true)
		case program.ThingTable:
			if n.fromSide() {
				n.table(d, from, to)
			}
		case program.ThingBand:
			if s.Anchored && n.fromSide() {
				at := n.see(s.Run[0])
				d.add(strokeOf(Line, lineThick, Point{X: at.X}, Point{X: at.X, Y: at.Y + postOver}))
			}
		}
	}
}

// around are the things that hands hold, under the near hand.
func (n *person) around(d *Drawing) {
	for i := range n.Set {
		s := &n.Set[i]
		from, to := n.see(s.From), n.see(s.To)
		switch {
		case s.Kind == program.ThingRings && n.view != program.FromAbove:
			centre := along(from, Point{Y: 1}, ringRound)
			d.add(strokeOf(Line, strapThick, along(centre, Point{Y: 1}, ringRound), to))
			d.add(Shape{Ink: Line, Stroke: true, Width: ringThick, Paths: []Path{disc(centre, ringRound)}})
		case s.Kind == program.ThingHandles && n.fromSide():
			for _, p := range n.rail(from) {
				d.add(Shape{Ink: Line, Paths: []Path{p}})
			}
		case s.Kind == program.ThingBar && n.view == program.FromAbove:
			d.add(strokeOf(Line, railThick, plus(from, Point{Y: barHalf}), plus(from, Point{Y: -barHalf})))
		case s.Kind == program.ThingBar && !n.fromSide():
			d.add(strokeOf(Line, railThick, Point{X: -barHalf, Y: from.Y}, Point{X: barHalf, Y: from.Y}))
		}
	}
}

// before are the things before a body, the floor last.
func (n *person) before(d *Drawing) {
	for i := range n.Set {
		s := &n.Set[i]
		switch s.Kind {
		case program.ThingBar:
			if n.fromSide() {
				d.add(Shape{Ink: Line, Paths: []Path{disc(n.see(s.From), railThick/2)}, Edge: n.flesh(edge)})
			}
		case program.ThingDumbbells:
			n.dumbbell(d, s)
		case program.ThingBand:
			n.strand(d, s, fine*1.5)
		case program.ThingTowel:
			n.strand(d, s, towelThick)
		}
	}
	n.arrows(d)
	if n.OnFloor && n.view != program.FromAbove && n.view != program.FromHigh {
		left, right := d.Min.X, d.Max.X
		d.add(floorLine(left-overhang/2, right+overhang/2, 0))
	}
}

func strokeOf(ink Ink, width float64, points ...Point) Shape {
	return Shape{Ink: ink, Stroke: true, Width: width, Paths: []Path{polygon(points...)}}
}

// wall is one from the side or from above; from the front and the back its outline.
func (n *person) wall(d *Drawing, s *program.Set) {
	face := s.From.X
	switch n.view {
	case program.FromSide:
		d.add(Shape{Ink: Line, Paths: []Path{rectangle(Point{X: face, Y: -lineThick / 2}, Point{X: face - s.Side*wallThick, Y: s.To.Y})}})
	case program.FromAbove:
		d.add(Shape{Ink: Line, Paths: []Path{rectangle(Point{X: face, Y: -wallHalf}, Point{X: face - s.Side*wallThick, Y: wallHalf})}})
	case program.FromFront, program.FromBack:
		d.add(strokeOf(Line, fine/2, Point{X: -wallHalf}, Point{X: -wallHalf, Y: s.To.Y}, Point{X: wallHalf, Y: s.To.Y}, Point{X: wallHalf}))
	}
}

// standing is what is under a part: full, or an outline that is open below.
func (n *person) standing(d *Drawing, s *program.Set, full bool) {
	from, to := Point{X: s.From.X}, Point{X: s.To.X, Y: s.To.Y}
	switch n.view {
	case program.FromAbove:
		from.Y, to.Y = -.25, .25
	case program.FromFront, program.FromBack:
		from.X, to.X = -.25, .25
	}
	if full {
		ink := Far
		if s.Kind == program.ThingScale {
			ink = Line
		}
		d.add(Shape{Ink: ink, Paths: []Path{rectangle(from, to)}})
		return
	}
	low, top := from.Y-lineThick/2, to.Y-lineThick/2
	d.add(strokeOf(Line, lineThick, Point{X: from.X, Y: low}, Point{X: from.X, Y: top}, Point{X: to.X, Y: top}, Point{X: to.X, Y: low}))
}

// table is a top on two legs, its edge where it is held.
func (n *person) table(d *Drawing, edge, end Point) {
	away := math.Copysign(1, end.X-edge.X)
	start := Point{X: edge.X - away*.02, Y: edge.Y}
	d.add(strokeOf(Line, tableThick, start, end))
	for _, x := range []float64{edge.X + away*.12, end.X - away*.06} {
		d.add(strokeOf(Line, lineThick, Point{X: x}, Point{X: x, Y: edge.Y}))
	}
}

// rail is a parallette with its rail at a place.
func (n *person) rail(at Point) []Path {
	b := body{Stance: &program.Stance{Height: n.Placed.Height, Floor: -at.Y}}
	return moved(b.parallette(), at)
}

// dumbbell is a bar with two plates; the further one seen a little from above, as legs are
// of a stance, where the other one is before it.
func (n *person) dumbbell(d *Drawing, s *program.Set) {
	far, near := s.From, s.To
	if n.depth(far) > n.depth(near) {
		far, near = near, far
	}
	from, to := n.see(far), n.see(near)
	from.Y += rise * (n.depth(near) - n.depth(far))
	d.add(strokeOf(Line, gripThick, from, to))
	u, long := unit(minus(to, from)), n.long(far, near)
	for _, at := range []Point{between(from, to, .08), between(from, to, .92)} {
		plate := strokeOf(Line, plateThick, along(at, turned(u), plateHalf), along(at, turned(u), -plateHalf))
		if long < .9 {
			round := oval(at, u, plateHalf*math.Sqrt(1-long*long)+plateThick/2*long, plateHalf)
			plate = Shape{Ink: Line, Paths: []Path{round}}
		}
		plate.Edge = n.flesh(edge) / 2
		d.add(plate)
	}
}

// long is how much of the length between two places is seen.
func (n *person) long(p, q program.Space) float64 {
	whole := math.Sqrt((q.X-p.X)*(q.X-p.X) + (q.Y-p.Y)*(q.Y-p.Y) + (q.Z-p.Z)*(q.Z-p.Z))
	return math.Min(1, distance(n.see(p), n.see(q))/whole)
}

// strand is a band or a towel.
func (n *person) strand(d *Drawing, s *program.Set, width float64) {
	points := make([]Point, len(s.Run))
	for i, p := range s.Run {
		points[i] = n.see(p)
	}
	shape := strokeOf(Accent, width, points...)
	shape.Edge = n.flesh(edge) / 2
	d.add(shape)
	if s.Anchored {
		d.add(Shape{Ink: Line, Paths: []Path{disc(points[0], railThick/2)}})
	}
}

// arrows say how parts have moved, and what goes round.
func (n *person) arrows(d *Drawing) {
	for _, a := range n.Arrows {
		from, to := n.see(a.From), n.see(a.To)
		if distance(from, to) < 2*arrowHead { // what moves little
			from = along(to, unit(minus(to, from)), -2*arrowHead)
		}
		n.arrow(d, polygon(from, to), unit(minus(to, from)), to)
	}
	for _, c := range n.Circles {
		n.circle(d, c)
	}
}

// circle goes three quarters round. Of an axis that is seen from its side the near half is
// shown, and a little more.
func (n *person) circle(d *Drawing, c program.Circle) {
	at := n.see(c.At)
	axis := minus(n.see(program.Space{X: c.At.X + c.Axis.X, Y: c.At.Y + c.Axis.Y, Z: c.At.Z + c.Axis.Z}), at)
	begin, u, flat := Point{X: 1}, Point{Y: 1}, 1.0
	if seen := distance(axis, Point{}); seen > .3 {
		begin, u, flat = Point{X: -math.Sqrt2 / 2, Y: math.Sqrt2 / 2}, unit(axis), 1-(1-circleFlat)*seen
	}
	place := func(p Point) Point {
		return along(along(at, turned(u), -circleWide*p.X), u, circleWide*flat*p.Y)
	}
	p := Path{From: begin}
	p.quarters(Point{}, begin, 3)
	p = p.through(place)
	end := p.Curves[2]
	n.arrow(d, p, unit(minus(end.To, end.B)), end.To)
}

// arrow is a line with a head that points along u.
func (n *person) arrow(d *Drawing, p Path, u, tip Point) {
	side := turned(u)
	back := along(tip, u, -arrowHead)
	head := counterClockwise(polygon(along(tip, u, arrowHead/3), along(back, side, arrowHead/2), along(back, side, -arrowHead/2)))
	d.add(Shape{Ink: Accent, Stroke: true, Width: movedThick, Paths: []Path{p}, Edge: n.flesh(edge) / 2})
	d.add(Shape{Ink: Accent, Paths: []Path{head}, Edge: n.flesh(edge) / 2})
}
