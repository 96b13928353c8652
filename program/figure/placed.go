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
	for i := range pictures {
		all[i] = Show(pictures[i], o)
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

// Of a hand and a foot, shares of stature (our judgement).
var (
	palm     = []station{{.10, .016, .016}, {.40, .018, .015}, {.75, .011, .010}, {1, .005, .004}}
	heelCord = station{1.03, .017, .019} // where the shank ends on a foot that is square to it
	toes     = []station{{-.35, .010, .011}, {.3, .010, .011}, {1, .006, .006}}
)

// sole and instep are the outline of a foot that is square to its shank, from the ankle along
// the foot, and up from what it stands on, or from the ankle: ankles are not equally high in
// women and men (de Leva 1996).
var (
	sole   = []struct{ along, up float64 }{{-.037, .022}, {-.033, .006}, {-.020, .0005}, {.018, .0025}, {.050, .0005}, {.066, .003}}
	instep = []struct{ along, up float64 }{{.014, .022}, {-.016, .020}, {-.029, .006}}
)

// heelRound is the heel's half thickness, share of stature; its middle is given.
const heelRound = .018

// pointed is from which angle on a foot is one line with its shank.
const pointed = 0.82 // its cosine

// legOf is a leg with its foot.
func (n *person) legOf(l *program.PlacedLeg) []Path {
	h, k, a, t := n.see(l.Hip), n.see(l.Knee), n.see(l.Ankle), n.see(l.Toe)
	lower := bone{k, a, shank}
	var paths []Path
	bones := []bone{{h, k, thigh}}
	if n.fromSide() && cosine(minus(a, k), minus(t, a)) < pointed {
		lower.shape = append(shank[:len(shank):len(shank)], heelCord)
		paths = n.footOf(l)
		bones = append(bones, lower)
	} else {
		bones = append(bones, lower, bone{a, t, foot})
		paths = append(paths, disc(n.see(l.Heel), n.flesh(heelRound)))
	}
	if !bent(h, k, a) {
		return append(paths, n.skin(bones...))
	}
	bones[0].shape = append(thigh[:len(thigh):len(thigh)], knee)
	bones[1].shape = append([]station{shin}, bones[1].shape...)
	return append(paths, n.skin(bones[0]), n.skin(bones[1:]...))
}

// cosine of the angle between two directions.
func cosine(p, q Point) float64 { u, v := unit(p), unit(q); return u.X*v.X + u.Y*v.Y }

// footOf is a foot that stands: the sole between heel and ball, and the toes ahead of it.
func (n *person) footOf(l *program.PlacedLeg) []Path {
	a, heel, ball, tip := n.see(l.Ankle), n.see(l.Heel), n.see(l.Ball), n.see(l.Toe)
	long := unit(minus(ball, heel)) // not quite along the sole: the heel is rounder
	slant := math.Asin(math.Min(1, n.flesh(.006)/distance(heel, ball)))
	u := plus(times(math.Cos(slant), long), times(math.Sin(slant), turned(long)))
	up := turned(u)
	high := (a.X-heel.X)*up.X + (a.Y-heel.Y)*up.Y + n.flesh(heelRound)
	at := func(x, y float64) Point { return along(along(a, u, n.flesh(x)), up, y) }
	var points []Point
	for _, s := range sole {
		points = append(points, at(s.along, n.flesh(s.up)-high))
	}
	points = append(points, at(.062, n.flesh(.023)-high), at(.034, (n.flesh(.030)-high)/2+n.flesh(.004)))
	for _, s := range instep {
		points = append(points, at(s.along, n.flesh(s.up)))
	}
	return []Path{counterClockwise(round(points)), n.skin(bone{ball, tip, toes})}
}

// armOf is an arm with its hand.
func (n *person) armOf(a *program.PlacedArm) []Path {
	s, e, w := n.see(a.Shoulder), n.see(a.Elbow), n.see(a.Wrist)
	upper, lower := bone{s, e, upperArm}, []bone{{e, w, forearm}}
	var paths []Path
	switch {
	case a.Hand == program.ClosedHand:
		lower = append(lower, bone{w, n.see(a.Grip), fist})
	case a.Hand == program.FlatHand && n.fromSide():
		paths = append(paths, n.flat(a))
	default:
		lower = append(lower, bone{w, n.see(a.Tip), palm})
	}
	if bent(s, e, w) {
		upper.shape = append(upperArm[:len(upperArm):len(upperArm)], elbow)
		lower[0].shape = append([]station{cubit}, forearm...)
		paths = append(paths, n.skin(upper))
	} else {
		lower = append([]bone{upper}, lower...)
	}
	if len(lower) > 1 && bent(lower[len(lower)-2].from, lower[len(lower)-1].from, lower[len(lower)-1].to) { // the wrist
		paths = append(paths, n.skin(lower[len(lower)-1]))
		lower = lower[:len(lower)-1]
	}
	paths = append(paths, n.skin(lower...))
	if a.Hand == program.FlatHand && n.fromSide() {
		for i := range paths {
			paths[i].restOn(w, flatly(a.Away))
		}
	}
	return paths
}

// flat is a hand that lies on something.
func (n *person) flat(a *program.PlacedArm) Path {
	w, tip, away := n.see(a.Wrist), n.see(a.Tip), flatly(a.Away)
	reach, u := distance(w, tip), unit(minus(tip, w))
	at := func(x, up float64) Point { return along(along(w, u, x), away, n.flesh(up)) }
	return counterClockwise(smooth(n.handOn(reach, at)))
}

// restOn flattens what would be below a place on a surface.
func (p *Path) restOn(at, away Point) {
	lift := func(q Point) Point {
		if below := (q.X-at.X)*away.X + (q.Y-at.Y)*away.Y; below < 0 {
			return along(q, away, -below)
		}
		return q
	}
	p.From = lift(p.From)
	for i, c := range p.Curves {
		p.Curves[i] = Curve{lift(c.A), lift(c.B), lift(c.To)}
	}
}

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
	p := disc(Point{}, 1)
	v := turned(u)
	at := func(q Point) Point { return along(along(centre, u, q.X*length), v, q.Y*across) }
	out := Path{From: at(p.From)}
	for _, c := range p.Curves {
		out.Curves = append(out.Curves, Curve{at(c.A), at(c.B), at(c.To)})
	}
	return counterClockwise(out)
}
