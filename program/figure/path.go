package figure

import "math"

func plus(p, q Point) Point               { return Point{X: p.X + q.X, Y: p.Y + q.Y} }
func minus(p, q Point) Point              { return Point{X: p.X - q.X, Y: p.Y - q.Y} }
func times(k float64, p Point) Point      { return Point{X: k * p.X, Y: k * p.Y} }
func along(p, u Point, d float64) Point   { return Point{X: p.X + d*u.X, Y: p.Y + d*u.Y} }
func distance(p, q Point) float64         { return math.Hypot(q.X-p.X, q.Y-p.Y) }
func between(p, q Point, t float64) Point { return Point{X: p.X + t*(q.X-p.X), Y: p.Y + t*(q.Y-p.Y)} }

// unit is p's direction; nothing has none.
func unit(p Point) Point {
	d := math.Hypot(p.X, p.Y)
	if d == 0 {
		return Point{}
	}
	return times(1/d, p)
}

// turned is a direction turned counter-clockwise by a right angle.
func turned(p Point) Point { return Point{X: -p.Y, Y: p.X} }

func (p Path) moved(by Point) Path {
	return p.through(func(q Point) Point { return plus(q, by) })
}

// through is a path with every point taken somewhere else.
func (p Path) through(to func(Point) Point) Path {
	out := Path{From: to(p.From), Curves: make([]Curve, len(p.Curves))}
	for i, c := range p.Curves {
		out.Curves[i] = Curve{to(c.A), to(c.B), to(c.To)}
	}
	return out
}

// rest flattens what would be below a height.
func (p *Path) rest(y float64) {
	p.From.Y = math.Max(p.From.Y, y)
	for i := range p.Curves {
		c := &p.Curves[i]
		c.A.Y, c.B.Y, c.To.Y = math.Max(c.A.Y, y), math.Max(c.B.Y, y), math.Max(c.To.Y, y)
	}
}

// lineTo adds a straight piece.
func (p *Path) lineTo(q Point) {
	from := p.From
	if n := len(p.Curves); n > 0 {
		from = p.Curves[n-1].To
	}
	p.Curves = append(p.Curves, Curve{from, q, q})
}

// polygon joins points with straight lines.
func polygon(points ...Point) Path {
	p := Path{From: points[0]}
	for _, q := range points[1:] {
		p.lineTo(q)
	}
	return p
}

// rectangle has its corners at two points.
func rectangle(a, b Point) Path {
	return polygon(a, Point{X: b.X, Y: a.Y}, b, Point{X: a.X, Y: b.Y})
}

// round is a closed smooth curve through points.
func round(points []Point) Path {
	n := len(points)
	p := Path{From: points[0]}
	for i := range n {
		p.Curves = append(p.Curves, piece(points[(i+n-1)%n], points[i], points[(i+1)%n], points[(i+2)%n]))
	}
	return p
}

// smooth is an open smooth curve through points.
func smooth(points []Point) Path {
	p := Path{From: points[0]}
	last := len(points) - 1
	for i := range last {
		p.Curves = append(p.Curves, piece(points[max(i-1, 0)], points[i], points[i+1], points[min(i+2, last)]))
	}
	return p
}

// piece joins b and c; at each it runs parallel to the line between its
// neighbours. Control points lie a third of the way, however unequal the
// distances are, so that the curve makes no loops.
func piece(a, b, c, d Point) Curve {
	third := distance(b, c) / 3
	return Curve{along(b, unit(minus(c, a)), third), along(c, unit(minus(d, b)), -third), c}
}

// disc is a circle as four curves. Published: the usual control length for a
// quarter circle, 4(√2−1)/3 of the radius, is off by 0.03 % at most.
func disc(centre Point, r float64) Path {
	p := Path{From: Point{X: centre.X + r, Y: centre.Y}}
	p.quarters(centre, Point{X: r}, 4)
	return p
}

// quarters adds quarter circles counter-clockwise from centre+arm.
func (p *Path) quarters(centre, arm Point, n int) {
	k := 4 * (math.Sqrt2 - 1) / 3
	for range n {
		next := turned(arm)
		from, to := plus(centre, arm), plus(centre, next)
		p.Curves = append(p.Curves, Curve{along(from, next, k), along(to, arm, k), to})
		arm = next
	}
}

// counterClockwise turns a path round where it runs clockwise, so that outlines
// that overlap add up under the non-zero rule.
func counterClockwise(p Path) Path {
	area, at := 0.0, p.From
	for _, c := range p.Curves {
		area += at.X*c.To.Y - c.To.X*at.Y
		at = c.To
	}
	if area += at.X*p.From.Y - p.From.X*at.Y; area >= 0 {
		return p
	}
	back := Path{From: at}
	for i := len(p.Curves) - 1; i >= 0; i-- {
		to := p.From
		if i > 0 {
			to = p.Curves[i-1].To
		}
		back.Curves = append(back.Curves, Curve{p.Curves[i].B, p.Curves[i].A, to})
	}
	return back
}
