package figure

import (
	"math"
	"slices"

	"gatepost/program"
)

// Show is a picture of an exercise as a drawing; no picture gives an empty one. It has
// no marks, and of a band in a stance so much is shown above the body as o says.
func Show(p program.Picture, o Options) Drawing {
	if p.Stance.Drawn() {
		o.Plain = true
		return Draw(p.Stance, o)
	}
	var d Drawing
	if p.Placed.Height == 0 {
		return d
	}
	n := newPerson(&p.Placed)
	n.behind(&d)
	if n.fromSide() {
		n.profile(&d)
	} else {
		n.inTheRound(&d)
	}
	n.before(&d)
	return d
}

// Frames are the pictures of an exercise in frames of one size, so that they are drawn to
// one scale, and what has not moved is at one place.
func Frames(pictures []program.Picture, o Options) []Drawing {
	all := make([]Drawing, len(pictures))
	var frame Drawing
	from := slices.IndexFunc(pictures, func(p program.Picture) bool {
		return p.Placed.Height > 0 && p.Placed.View == "" && turnedOut(&p.Placed)
	})
	for i := range pictures {
		if all[i] = Show(pictures[i], o); i == from {
			newPerson(&pictures[i].Placed).hands(&all[i])
		}
		frame.hold(all[i].Min, 0)
		frame.hold(all[i].Max, 0)
	}
	for i := range all {
		all[i].Min, all[i].Max = frame.Min, frame.Max
	}
	return all
}

// person is a placed body as a view sees it.
type person struct {
	*program.Placed
	body
	view program.View
}

func newPerson(p *program.Placed) *person {
	n := &person{Placed: p, view: p.View}
	if n.view == "" {
		n.view = program.FromSide
	}
	s := &program.Stance{Height: p.Height, Shoulder: n.see(p.Top), Hip: n.see(p.Hip), C7: n.see(p.C7), Head: n.see(p.Head), Crown: n.see(p.Crown)}
	n.body = body{Stance: s, far: 1, tail: unit(minus(s.Hip, s.Shoulder)), turn: 1, placed: true, curve: p.Spine}
	n.belly = n.front(n.tail)
	return n
}

func (n *person) fromSide() bool { return n.view == program.FromSide }

// high is how far above the floor's level a body is looked at from high, rad.
const high = 40 * math.Pi / 180

// see is a place as the view sees it.
func (n *person) see(p program.Space) Point {
	switch n.view {
	case program.FromFront:
		return Point{X: -p.Z, Y: p.Y}
	case program.FromBack:
		return Point{X: p.Z, Y: p.Y}
	case program.FromAbove:
		return Point{X: p.X, Y: -p.Z}
	case program.FromHigh:
		return Point{X: -p.Z, Y: math.Cos(high)*p.Y - math.Sin(high)*p.X}
	}
	return Point{X: p.X, Y: p.Y}
}

// depth is how near a place is to who looks.
func (n *person) depth(p program.Space) float64 {
	switch n.view {
	case program.FromFront:
		return p.X
	case program.FromBack:
		return -p.X
	case program.FromAbove:
		return p.Y
	case program.FromHigh:
		return math.Sin(high)*p.Y + math.Cos(high)*p.X
	}
	return p.Z
}

// profile is a body from the side, drawn from the far side to the near one.
func (n *person) profile(d *Drawing) {
	far := moved(n.legOf(&n.Legs[1]), n.aside(legsApart, Point{}))
	if arm := &n.Arms[1]; arm.Hand == program.FlatHand {
		far = append(far, moved(n.armOf(arm), n.aside(armsApart, Point(flatly(arm.Away))))...)
	} else {
		far = append(far, moved(n.armOf(arm), n.aside(armsApart, Point{}))...)
	}
	free := n.flesh(edge)
	d.add(Shape{Ink: Far, Paths: far})
	d.add(Shape{Ink: Near, Paths: n.trunk(), Edge: free})
	d.add(Shape{Ink: Near, Paths: n.legOf(&n.Legs[0]), Edge: free})
	d.add(Shape{Ink: Near, Paths: n.seat()})
	n.around(d)
	d.add(Shape{Ink: Near, Paths: n.armOf(&n.Arms[0]), Edge: free})
}

func flatly(p program.Space) Point { return Point{X: p.X, Y: p.Y} }

// aside is how far a far limb is drawn beside the near one: ahead, but into no wall, and
// along one that its hand lies on.
func (n *person) aside(share float64, away Point) Point {
	if away.X != 0 {
		return Point{Y: n.flesh(share)}
	}
	ahead := 1.0
	for _, s := range n.Set {
		if s.Kind == program.ThingWall {
			ahead = s.Side
		}
	}
	return Point{X: ahead * n.flesh(share)}
}

func moved(paths []Path, by Point) []Path {
	out := make([]Path, len(paths))
	for i, p := range paths {
		out[i] = p.moved(by)
	}
	return out
}
