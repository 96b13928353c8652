package figure

import (
	"math"
	"slices"

	"gatepost/program"
)

// heap is paths at a depth.
type heap struct {
	depth float64
	paths []Path
}

// inTheRound is a body from the front, the back or above, the nearer parts over the
// others.
func (n *person) inTheRound(d *Drawing) {
	heaps := []heap{{n.depth(mixed(n.Top, n.Hip, .5)), n.wide()}, {n.depth(n.Head), []Path{n.skullFrom()}}}
	for i := range n.Arms {
		a, l := &n.Arms[i], &n.Legs[i]
		heaps = append(heaps, heap{n.depth(mixed(a.Elbow, a.Wrist, .3)), append(n.armOf(a), n.knuckles(a)...)})
		heaps = append(heaps, heap{n.depth(mixed(l.Knee, l.Ankle, .3)), n.legOf(l)})
	}
	slices.SortStableFunc(heaps, func(a, b heap) int {
		switch {
		case a.depth < b.depth-1e-9:
			return -1
		case a.depth > b.depth+1e-9:
			return 1
		}
		return 0
	})
	n.around(d)
	for _, h := range heaps {
		d.add(Shape{Ink: Near, Paths: h.paths, Edge: n.flesh(edge)})
	}
}

func mixed(p, q program.Space, t float64) program.Space {
	return program.Space{X: p.X + t*(q.X-p.X), Y: p.Y + t*(q.Y-p.Y), Z: p.Z + t*(q.Z-p.Z)}
}

// knuckles round off limbs that point at who looks.
func (n *person) knuckles(a *program.PlacedArm) []Path {
	all := []Path{disc(n.see(a.Elbow), n.flesh(.020)), disc(n.see(a.Wrist), n.flesh(.017)), disc(n.see(a.Shoulder), n.flesh(.036))}
	if a.Hand == program.ClosedHand {
		all = append(all, disc(n.see(a.Grip), n.flesh(.024)))
	}
	return all
}

// broad is half the width of a trunk from the shoulders (0) to the hips (1), shares of
// stature (common practice, as for shoulders a quarter of stature wide), the neck before it.
var broad = []station{{at: -.34, front: .028}, {at: -.16, front: .034}, {at: -.06, front: .075}, {at: .02, front: .118}, {at: .14, front: .116},
	{at: .45, front: .090}, {at: .66, front: .080}, {at: .88, front: .094}, {at: 1.02, front: .096}, {at: 1.14, front: .070}, {at: 1.18, front: .030}}

const deep = .058 // half the depth of a trunk

// wide is a trunk that is not seen from the side: its outline along its length, and the
// ovals of chest and hips where it points at who looks.
func (n *person) wide() []Path {
	tail := n.tail
	if distance(n.Stance.Shoulder, n.Stance.Hip) < .02 {
		tail = Point{Y: -1}
	}
	out := turned(tail)
	side, front := n.reach(out)
	var left, right []Point
	for _, s := range broad {
		at, half := between(n.Stance.Shoulder, n.Stance.Hip, s.at), n.flesh(math.Hypot(s.front*side, deep*front*math.Min(1, s.front/.09)))
		left, right = append(left, along(at, out, half)), append(right, along(at, out, -half))
	}
	slices.Reverse(right)
	paths := []Path{counterClockwise(round(append(left, right...)))}
	_, ahead := n.reach(tail)
	for _, t := range []struct{ at, half float64 }{{.06, .116}, {.98, .094}} {
		paths = append(paths, oval(between(n.Stance.Shoulder, n.Stance.Hip, t.at), tail, n.flesh(math.Max(.02, deep*ahead)), n.flesh(math.Hypot(t.half*side, deep*front))))
	}
	return paths
}

// reach is how much of the body's side and of its front a direction of the view is.
func (n *person) reach(u Point) (side, front float64) {
	return n.share(program.Space{Z: 1}, u), n.share(n.Front, u)
}

// share is how much of a direction in space is along one of the view.
func (n *person) share(p program.Space, u Point) float64 {
	q := n.see(p)
	return math.Abs(q.X*u.X + q.Y*u.Y)
}

// skullFrom is a head that is not seen from the side.
func (n *person) skullFrom() Path {
	axis := minus(n.Stance.Crown, n.Stance.C7)
	long := unit(axis)
	if distance(axis, Point{}) < .02 {
		long = Point{Y: 1}
	}
	upright := math.Min(1, distance(axis, Point{})/(.14*n.Placed.Height))
	half := func(u Point, up float64) float64 {
		side, front := n.reach(u)
		return n.flesh(math.Sqrt(math.Pow(.046*side, 2) + math.Pow(.056*front, 2) + math.Pow(.068*up, 2)))
	}
	at := between(n.Stance.Crown, n.Stance.C7, .48)
	return oval(at, long, half(long, upright), half(turned(long), 0))
}

// oval has one half axis along a direction and one across.
func oval(centre, u Point, length, across float64) Path {
	return counterClockwise(disc(Point{}, 1).through(func(q Point) Point {
		return along(along(centre, u, q.X*length), turned(u), q.Y*across)
	}))
}
