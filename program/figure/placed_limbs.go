package figure

import (
	"math"

	"gatepost/program"
)

// Of a hand and a foot, shares of stature (our judgement).
var (
	raised   = []station{{-.20, .016, .018}, {.30, .017, .015}, {.80, .012, .011}, {1.1, .008, .008}} // a palm over its fingers
	fingers  = []station{{-.30, .009, .009}, {.3, .009, .009}, {1, .006, .006}}
	palm     = []station{{.10, .016, .016}, {.40, .018, .015}, {.75, .011, .010}, {1, .005, .004}}
	heelCord = station{1.03, .017, .019} // where the shank ends on a foot that is square to it
	footLong = []station{{-.08, .014, .014}, {.2, .019, .019}, {.6, .021, .021}, {1, .010, .010}}
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

// legOf is a leg with its foot.
func (n *person) legOf(l *program.PlacedLeg) []Path {
	h, k, a := n.see(l.Hip), n.see(l.Knee), n.see(l.Ankle)
	upper, lower := bone{h, k, thigh}, bone{k, a, append(shank[:len(shank):len(shank)], heelCord)}
	paths := n.footOf(l)
	if !bent(h, k, a) {
		return append(paths, n.skin(upper, lower))
	}
	upper.shape = append(thigh[:len(thigh):len(thigh)], knee)
	lower.shape = append([]station{shin}, lower.shape...)
	return append(paths, n.skin(upper), n.skin(lower))
}

// footOf is a foot: the sole between heel and ball, and the toes ahead of it; not from the
// side a round along it.
func (n *person) footOf(l *program.PlacedLeg) []Path {
	a, heel, ball, tip := n.see(l.Ankle), n.see(l.Heel), n.see(l.Ball), n.see(l.Toe)
	if !n.fromSide() {
		return []Path{n.skin(bone{heel, tip, footLong}), disc(heel, n.flesh(heelRound)), disc(ball, n.flesh(heelRound)), disc(a, n.flesh(heelRound))}
	}
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
	case a.Hand == program.FingerHand:
		paths = append(paths, n.skin(bone{w, n.see(a.Knuckle), raised}), n.skin(bone{n.see(a.Knuckle), n.see(a.Tip), fingers}))
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
