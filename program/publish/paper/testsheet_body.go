package paper

import (
	"math"
	"slices"

	"gatepost/program/figure"
)

// Two bodies that carry nothing on their hands, and so have no statics to be drawn
// from: one lying on its back, seen from the side, and one lying prone, seen from
// above. Lengths in m of a body of 1.7 m; places common practice, thickness our
// judgement.

// limb is a part that tapers from a radius at one end to another at the other.
func limb(a, b figure.Point, ra, rb float64) figure.Shape {
	angle := math.Atan2(b.Y-a.Y, b.X-a.X)
	on := func(c figure.Point, r, turn float64) figure.Point {
		sin, cos := math.Sincos(angle + turn)
		return figure.Point{X: c.X + r*cos, Y: c.Y + r*sin}
	}
	const quarter, round = math.Pi / 2, 0.5523 // control length of a quarter circle
	path := figure.Path{From: on(a, ra, -quarter)}
	line := func(to figure.Point) {
		from := path.From
		if n := len(path.Curves); n > 0 {
			from = path.Curves[n-1].To
		}
		path.Curves = append(path.Curves, figure.Curve{A: from, B: to, To: to})
	}
	arc := func(c figure.Point, r, turn float64) {
		from, to := on(c, r, turn), on(c, r, turn+quarter)
		path.Curves = append(path.Curves, figure.Curve{A: on(from, r*round, turn+quarter), B: on(to, r*round, turn), To: to})
	}
	line(on(b, rb, -quarter))
	arc(b, rb, -quarter)
	arc(b, rb, 0)
	line(on(a, ra, quarter))
	arc(a, ra, quarter)
	arc(a, ra, 2*quarter)
	return figure.Shape{Paths: []figure.Path{path}}
}

// supine lies from the soles at x = 0 to the crown, its back at y = 0.
var supine = []figure.Shape{
	limb(figure.Point{X: .06, Y: .05}, figure.Point{X: .03, Y: .22}, .035, .018), // foot
	limb(figure.Point{X: .07, Y: .06}, figure.Point{X: .48, Y: .08}, .035, .055),
	limb(figure.Point{X: .48, Y: .08}, figure.Point{X: .90, Y: .09}, .055, .080),
	limb(figure.Point{X: .90, Y: .10}, figure.Point{X: 1.34, Y: .115}, .095, .110),
	limb(figure.Point{X: 1.38, Y: .11}, figure.Point{X: 1.50, Y: .10}, .050, .045),
	limb(figure.Point{X: 1.54, Y: .11}, figure.Point{X: 1.62, Y: .11}, .085, .075), // head
	{Edge: 0.008, Paths: slices.Concat(
		limb(figure.Point{X: .84, Y: .07}, figure.Point{X: 1.08, Y: .06}, .026, .034).Paths,
		limb(figure.Point{X: 1.08, Y: .06}, figure.Point{X: 1.35, Y: .12}, .034, .046).Paths)}, // arm
}

// prone lies with the legs apart, the hip at the origin, half the angle to each
// side of the line of the trunk; seen from above.
func prone(half float64) []figure.Shape {
	var all []figure.Shape
	for _, side := range []float64{-1, 1} {
		sin, cos := math.Sincos(half)
		leg := func(r float64) figure.Point { return figure.Point{X: -r * cos, Y: side * (0.09 + r*sin)} }
		all = append(all, limb(leg(0), leg(.42), .080, .055), limb(leg(.42), leg(.83), .055, .032), limb(leg(.83), leg(.98), .032, .016),
			limb(figure.Point{X: .50, Y: side * .17}, figure.Point{X: .72, Y: side * .36}, .048, .036),
			limb(figure.Point{X: .72, Y: side * .36}, figure.Point{X: .92, Y: side * .22}, .036, .026))
	}
	return append(all, limb(figure.Point{X: .02}, figure.Point{X: .42}, .150, .165),
		limb(figure.Point{X: .50}, figure.Point{X: .64}, .055, .050), limb(figure.Point{X: .70}, figure.Point{X: .78}, .082, .080))
}

// drawingOf frames shapes.
func drawingOf(low, high figure.Point, shapes []figure.Shape) figure.Drawing {
	return figure.Drawing{Min: low, Max: high, Shapes: shapes}
}

// straddle is a body from above with the angle between its legs.
func (p *testSheet) straddle(b Box) {
	const half = 50 * math.Pi / 180
	at := p.place(drawingOf(figure.Point{X: -.75, Y: -1}, figure.Point{X: .96, Y: 1}, prone(half)), b)
	var arc []Point
	for i := range 21 {
		sin, cos := math.Sincos(half * (float64(i)/10 - 1))
		arc = append(arc, at.at(figure.Point{X: 0.11 - 0.55*cos, Y: 0.55 * sin}))
	}
	apex := figure.Point{X: 0.11} // where the lines of the legs meet
	sin, cos := math.Sincos(half)
	p.add(Stroke{Points: []Point{at.at(figure.Point{X: apex.X - 1.2*cos, Y: 1.2 * sin}), at.at(apex), at.at(figure.Point{X: apex.X - 1.2*cos, Y: -1.2 * sin})},
		Width: 0.3, Dash: 0.8, Tone: Accent}, Stroke{Points: arc, Width: 0.5, Tone: Accent})
}
