package figure

import (
	"math"

	"gatepost/program"
)

// From the side a hand that is turned out only looks short. So both hands are shown from
// above as well, in a frame over the drawing: what is ahead lies to the right, as in the
// drawing, and a dashed line from each wrist says where ahead is.
const (
	turnedLeast = 15 * math.Pi / 180 // less is not seen
	handsLarge  = 2.0                // so many times as large as the body: on a card its hand is 1 mm long
	handsApart  = 1.1                // and so many times as far apart
	handsAir    = .05                // m, to the frame and to the body
	aheadLong   = 1.2                // of a hand's length
)

// Of a hand from above, shares of its length (our judgement): the palm's half width, and the
// middle of each finger across with its tip; then the thumb from and to.
var (
	handPalm  = []station{{-.04, .13, .13}, {.10, .19, .19}, {.42, .21, .20}, {.54, .17, .17}}
	handRod   = []station{{-.15, .048, .048}, {.5, .055, .055}, {.92, .045, .045}, {1, .020, .020}}
	handTips  = []struct{ across, to float64 }{{.155, .90}, {.052, 1}, {-.052, .96}, {-.152, .80}}
	handThumb = [2]Point{{X: .16, Y: .14}, {X: .52, Y: .40}}
)

// turnedOut reports whether a body's hands lie turned.
func turnedOut(p *program.Placed) bool {
	a := &p.Arms[0]
	return a.Hand == program.FlatHand && a.Away.Y > .9 && math.Abs(math.Atan2(a.Tip.Z-a.Wrist.Z, a.Tip.X-a.Wrist.X)) > turnedLeast
}

// hands are a body's hands from above, over the end of the drawing that is lower.
func (n *person) hands(d *Drawing) {
	above := *n
	above.Placed = &program.Placed{Height: n.Placed.Height, View: program.FromAbove}
	above.view = program.FromAbove
	var lines, skin []Path
	var frame Drawing
	for i := range n.Arms {
		line, hand := above.handFrom(&n.Arms[i])
		lines, skin = append(lines, line), append(skin, hand...)
	}
	frame.add(Shape{Paths: append(lines[:len(lines):len(lines)], skin...)})
	width, height := frame.Width()+2*handsAir, frame.Height()+2*handsAir
	left, low := d.shelf(width)
	by := Point{X: left + handsAir - frame.Min.X, Y: low + 2*handsAir - frame.Min.Y}
	corner := Point{X: left, Y: low + handsAir}
	d.add(Shape{Ink: Line, Stroke: true, Width: fine, Paths: []Path{around(corner, plus(corner, Point{X: width, Y: height}))}})
	d.add(Shape{Ink: Line, Stroke: true, Width: fine, Dash: dash, Paths: moved(lines, by)})
	d.add(Shape{Ink: Near, Paths: moved(skin, by)})
}

// handFrom is one hand and where ahead of its wrist is.
func (n *person) handFrom(a *program.PlacedArm) (ahead Path, hand []Path) {
	w, tip := n.see(a.Wrist), n.see(a.Tip)
	u, long := unit(minus(tip, w)), handsLarge*distance(w, tip)
	w.Y *= handsApart
	tip = along(w, u, long)
	thumb := turned(u) // of the right hand it is on the left
	if a.Shoulder.Z < 0 {
		thumb = times(-1, thumb)
	}
	at := func(x, across float64) Point { return along(along(w, u, long*x), thumb, long*across) }
	rod := func(from, to Point, shape []station) Path { return n.skinned(from, to, long, shape) }
	hand = append(hand, rod(w, tip, handPalm), rod(at(handThumb[0].X, handThumb[0].Y), at(handThumb[1].X, handThumb[1].Y), handRod))
	for _, f := range handTips {
		hand = append(hand, rod(at(.45, f.across), at(f.to, f.across), handRod))
	}
	return polygon(w, plus(w, Point{X: aheadLong * long})), hand
}

// around is the outline of a box.
func around(a, b Point) Path {
	p := rectangle(a, b)
	p.lineTo(a)
	return p
}

// skinned is one outline, its thickness shares of a length.
func (n *person) skinned(from, to Point, long float64, shape []station) Path {
	scaled := make([]station, len(shape))
	for i, s := range shape {
		scaled[i] = station{s.at, s.front * long / n.Stance.Height, s.back * long / n.Stance.Height}
	}
	return n.skin(bone{from, to, scaled})
}

// shelf is where something so wide stands lowest over a drawing, at its left or right end.
func (d *Drawing) shelf(width float64) (left, low float64) {
	over := func(from, to float64) float64 {
		high := math.Inf(-1)
		for _, s := range d.Shapes {
			for _, p := range s.Paths {
				at := p.From
				for _, c := range p.Curves {
					for i := range 9 {
						q := between(at, c.To, float64(i)/8)
						if from <= q.X && q.X <= to {
							high = math.Max(high, math.Max(q.Y, math.Max(c.A.Y, c.B.Y)))
						}
					}
					at = c.To
				}
			}
		}
		return high
	}
	left, right := d.Min.X, d.Max.X-width
	if a, b := over(left, left+width), over(right, right+width); a <= b {
		return left, a
	} else {
		return right, b
	}
}
