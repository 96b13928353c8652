package figure

import "math"

// Sizes of what a press stands at, m (our judgement).
const (
	boxHalf   = 0.17
	blockHalf = 0.13
	padHalf   = 0.16
	padAhead  = 0.04 // of its middle beyond the fingertips
	boxEdge   = 0.10 // of a box before the toes
	wallOver  = 0.12 // of a wall above the toes
)

// raised is what flat hands, toes, knees or the head come down to, besides the floor,
// and the wall.
func (b *body) raised(d *Drawing) {
	low := b.Floor - lineThick/2
	block := func(from, to, top float64) {
		top -= lineThick / 2
		d.add(Shape{Ink: Line, Stroke: true, Width: lineThick, Paths: []Path{polygon(
			Point{X: from, Y: low}, Point{X: from, Y: top}, Point{X: to, Y: top}, Point{X: to, Y: low})}})
	}
	if b.Pad > 0 {
		left, right := b.pad()
		d.add(Shape{Ink: Far, Paths: []Path{rectangle(Point{X: left, Y: b.Floor}, Point{X: right, Y: b.Floor + b.Pad})}})
	}
	if b.Box > 0 {
		front := b.boxFront()
		block(front-2*boxHalf, front, b.Floor+b.Box)
	}
	if b.Floor < 0 && b.onFlatHands() {
		middle := (b.Wrist.X + b.Fingers.X) / 2
		block(middle-blockHalf, middle+blockHalf, 0)
	}
	if b.Wall != 0 {
		face, top := b.face(), math.Max(b.Toes[0].Y, b.Toes[1].Y)+wallOver
		d.add(Shape{Ink: Line, Paths: []Path{rectangle(Point{X: face, Y: low}, Point{X: face + math.Copysign(wallThick, b.Wall), Y: top})}})
	}
}

// standing are the edges of box, pad and wall on the floor.
func (b *body) standing() []float64 {
	var all []float64
	if b.Box > 0 {
		all = append(all, b.boxFront()-2*boxHalf)
	}
	if b.Pad > 0 {
		_, right := b.pad()
		all = append(all, right)
	}
	if b.Wall != 0 {
		all = append(all, b.face())
	}
	return all
}

// pad reaches from between the hands to where the head comes down, and not into a wall.
func (b *body) pad() (left, right float64) {
	middle := b.Fingers.X + padAhead
	if right = middle + padHalf; b.Wall > 0 {
		right = math.Min(right, b.face())
	}
	return middle - padHalf, right
}

// face is where a wall stands: as said, or where the flesh reaches further.
func (b *body) face() float64 {
	face := b.Wall
	for _, p := range append(b.leg(b.near, false), b.trunk()...) {
		for _, c := range p.Curves {
			if c.To.X/b.Wall > face/b.Wall {
				face = c.To.X
			}
		}
	}
	return face
}

// boxFront is the edge of the box under toes or knees on the side of the hands.
func (b *body) boxFront() float64 {
	if knee := b.Knees[b.near]; bent(b.Hip, knee, b.Ankles[b.near]) {
		return knee.X + boxEdge
	}
	return b.Toes[b.near].X + boxEdge
}
