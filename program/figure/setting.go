package figure

import (
	"math"

	"gatepost/program"
)

// Sizes of a wall and a board, m (our judgement).
const (
	wallThick  = 0.05
	wallHigh   = 0.55 // above the crown
	boardThick = 0.03
	edgeHigh   = 0.12 // under one end of the board; a scale on a block under the other
	boardOver  = 0.12 // of the board beyond its edges
	bodyDepth  = 0.115
	below      = 0.12 // of an arrow: the baseline of what it measures
	wording    = 0.085
)

// AtWall is a stance before a wall that the crown touches, with the distance
// from wall to wrist crease marked on the floor. It wants flat hands.
func AtWall(s program.Stance, distance string) Drawing {
	d := Draw(s, Options{Plain: true})
	if d.Empty() {
		return d
	}
	b := bodyOf(&s)
	wall := b.crownEdge()
	d.add(Shape{Ink: Line, Paths: []Path{rectangle(Point{X: wall, Y: b.Floor}, Point{X: wall + wallThick, Y: s.Crown.Y + wallHigh})}})
	low := b.Floor - 0.10
	arrow(&d, Point{X: s.Wrist.X, Y: low}, Point{X: wall, Y: low})
	d.label(Label{Text: distance, At: Point{X: wall + wallThick, Y: low - below}, Align: End, Size: wording, Ink: Accent})
	d.add(Shape{Ink: Accent, Stroke: true, Width: fine, Dash: dash, Paths: []Path{
		polygon(Point{X: s.Wrist.X, Y: low - 0.03}, Point{X: s.Wrist.X, Y: s.Shoulder.Y}),
		polygon(s.Shoulder, Point{X: s.Shoulder.X, Y: b.Floor}),
	}})
	return d
}

// crownEdge is how far ahead the head's outline reaches.
func (b *body) crownEdge() float64 {
	edge := math.Inf(-1)
	for _, c := range b.head().Curves {
		edge = max(edge, c.To.X)
	}
	return edge
}

// OnBoard is a lying stance on a reaction board: an edge under the soles, a scale
// on a block under the other end, the board's length and the balance point marked.
func OnBoard(s program.Stance, length, point, scale string) Drawing {
	if !s.Drawn() {
		return Drawing{}
	}
	top := -bodyDepth * s.Height / 1.7
	far := s.Crown.X - 0.14
	bottom := top - boardThick
	s.Floor = bottom - edgeHigh
	d := Draw(s, Options{Plain: true})
	d.add(Shape{Ink: Line, Paths: []Path{
		rectangle(Point{X: far - boardOver, Y: bottom}, Point{X: boardOver, Y: top}),
		polygon(Point{Y: bottom}, Point{X: -0.05, Y: s.Floor}, Point{X: 0.05, Y: s.Floor}),
		polygon(Point{X: far, Y: bottom}, Point{X: far - 0.02, Y: bottom - 0.04}, Point{X: far + 0.02, Y: bottom - 0.04}),
		rectangle(Point{X: far - 0.15, Y: bottom - 0.08}, Point{X: far + 0.15, Y: bottom - 0.04}),
		rectangle(Point{X: far - 0.12, Y: s.Floor}, Point{X: far + 0.12, Y: bottom - 0.088}),
	}})
	b := bodyOf(&s)
	b.massAt(&d, s.CoM)
	d.add(Shape{Ink: Line, Stroke: true, Width: lineThick, Paths: []Path{
		polygon(Point{X: far - 2*boardOver, Y: s.Floor}, Point{X: 2 * boardOver, Y: s.Floor})}})
	arrow(&d, Point{X: far, Y: s.Floor - 0.12}, Point{Y: s.Floor - 0.12})
	arrow(&d, Point{X: s.CoM.X, Y: 0.30}, Point{Y: 0.30})
	d.label(Label{Text: length, At: Point{X: far / 2, Y: s.Floor - 0.12 - below}, Align: Middle, Size: wording, Ink: Accent})
	d.label(Label{Text: point, At: Point{X: s.CoM.X / 2, Y: 0.30 - below}, Align: Middle, Size: wording, Ink: Accent})
	d.add(Shape{Ink: Accent, Stroke: true, Width: fine, Dash: dash, Paths: []Path{
		polygon(s.CoM, Point{X: s.CoM.X, Y: 0.33}), polygon(Point{Y: top}, Point{Y: 0.33})}})
	d.label(Label{Text: scale, At: Point{X: far + 0.18, Y: bottom - 0.10}, Size: wording, Ink: Accent})
	return d
}

// arrow measures a level distance.
func arrow(d *Drawing, from, to Point) {
	const head = 0.035
	d.add(Shape{Ink: Accent, Stroke: true, Width: fine, Paths: []Path{polygon(from, to)}})
	d.add(Shape{Ink: Accent, Paths: []Path{
		counterClockwise(polygon(from, Point{X: from.X + head, Y: from.Y + head/2}, Point{X: from.X + head, Y: from.Y - head/2})),
		counterClockwise(polygon(to, Point{X: to.X - head, Y: to.Y + head/2}, Point{X: to.X - head, Y: to.Y - head/2})),
	}})
}
