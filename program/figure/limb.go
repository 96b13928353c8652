package figure

import "slices"

// station is a place along a body part: how far along, as a share of its length
// (beyond 0 and 1 is allowed), and how thick it is to the front and to the back,
// as shares of stature.
type station struct{ at, front, back float64 }

// Thicknesses are half of what a calliper would find from the side, as shares of
// stature. Common practice: girths of trained adults of 1.74 m, divided by 2π and
// by stature; thigh 55 cm, knee 37, calf 37, ankle 23, upper arm 30, forearm 27,
// wrist 17, neck 37; chest and hip depth 23 cm. How they are split between front
// and back is our judgement.
var (
	thigh = []station{{-.08, .034, .040}, {.16, .047, .050}, {.5, .043, .044}, {.86, .032, .032}}
	knee  = station{1.06, .021, .021} // where the thigh ends, bent
	shin  = station{-.05, .024, .022} // where the shank begins, bent
	shank = []station{{.12, .029, .033}, {.32, .027, .040}, {.62, .021, .029}, {.92, .017, .019}}
	foot  = []station{{.06, .019, .023}, {.40, .018, .014}, {.75, .012, .011}, {1, .005, .008}}

	upperArm = []station{{-.20, .024, .024}, {.02, .039, .040}, {.40, .033, .033}, {.85, .026, .026}}
	elbow    = station{1.06, .018, .018} // where the upper arm ends, bent
	cubit    = station{-.05, .020, .020} // where the forearm begins, bent
	forearm  = []station{{.22, .029, .027}, {.62, .022, .022}, {.92, .016, .017}}
	fist     = []station{{.45, .023, .021}, {1.05, .025, .022}, {1.5, .014, .013}}
)

// bone is a body part from one joint to another with its thickness.
type bone struct {
	from, to Point
	shape    []station
}

// skin is one outline around bones that run on from each other.
func (b *body) skin(bones ...bone) Path {
	var front, back []Point
	for _, part := range bones {
		out := b.front(unit(minus(part.to, part.from)))
		for _, s := range part.shape {
			at := between(part.from, part.to, s.at)
			front = append(front, along(at, out, b.flesh(s.front)))
			back = append(back, along(at, out, -b.flesh(s.back)))
		}
	}
	slices.Reverse(back)
	return counterClockwise(round(append(front, back...)))
}

// bent says that a joint is too bent for one outline to run around it smoothly.
func bent(a, joint, c Point) bool {
	u, v := unit(minus(joint, a)), unit(minus(c, joint))
	return u.X*v.X+u.Y*v.Y < 0.75
}

// Liberties of the view, our judgement, so that near and far can be told apart.
const (
	rise      = 0.17  // how far a point is moved up for each metre it lies behind the plane of the near side
	hipsApart = 0.09  // between the hip joints, share of stature
	legsApart = 0.014 // how far ahead the far leg is drawn, share of stature
	armsApart = 0.022 // how far ahead the far arm is drawn, share of stature
)

// leg is one leg as seen a little from above and ahead: what is out to the near
// side is moved down, what is out to the far side up.
func (b *body) leg(i int, far bool) []Path {
	seen := func(p Point, out float64) Point {
		if far {
			return plus(p, Point{X: b.flesh(legsApart), Y: rise * (b.flesh(hipsApart) + out)})
		}
		return plus(p, Point{Y: -rise * out})
	}
	h, k := seen(b.Hip, 0), seen(b.Knees[i], b.KneesOut[i])
	a, t := seen(b.Ankles[i], b.AnklesOut[i]), seen(b.Toes[i], b.ToesOut[i])
	lower := []bone{{k, a, shank}, {a, t, foot}}
	if !bent(h, k, a) {
		return []Path{b.skin(append([]bone{{h, k, thigh}}, lower...)...)}
	}
	lower[0].shape = append([]station{shin}, shank...)
	return []Path{b.skin(bone{h, k, append(thigh[:len(thigh):len(thigh)], knee)}), b.skin(lower...)}
}

// arm is an arm and its hand, on the floor or around a bar.
func (b *body) arm(by Point) []Path {
	lower, hands := []bone{{b.Elbow, b.Wrist, forearm}}, []Path{}
	if b.Grip || b.Hang {
		lower = append(lower, bone{b.Wrist, Point{}, fist})
	} else {
		hands = append(hands, b.hand())
	}
	upper := bone{b.Shoulder, b.Elbow, upperArm}
	paths := hands
	if bent(b.Shoulder, b.Elbow, b.Wrist) {
		upper.shape = append(upperArm[:len(upperArm):len(upperArm)], elbow)
		lower[0].shape = append([]station{cubit}, forearm...)
		paths = append(paths, b.skin(upper), b.skin(lower...))
	} else {
		paths = append(paths, b.skin(append([]bone{upper}, lower...)...))
	}
	for i := range paths {
		if b.onFlatHands() {
			paths[i].rest(b.Wrist.Y)
		}
		paths[i] = paths[i].moved(by)
	}
	return paths
}

// onFlatHands says that the origin lies under a flat hand. Lying, it does not.
func (b *body) onFlatHands() bool { return !b.Grip && !b.Hang && b.Fingers.X > 0 }

// hand lies flat, its fingers ahead.
func (b *body) hand() Path {
	at := func(x, up float64) Point { return Point{X: b.Wrist.X + x, Y: b.Wrist.Y + b.flesh(up)} }
	return counterClockwise(smooth(b.handOn(b.Fingers.X-b.Wrist.X, at)))
}

// handOn is the outline of a hand that lies on something and reaches so far from the wrist.
func (b *body) handOn(reach float64, at func(x, up float64) Point) []Point {
	heel := b.flesh(.018)
	return []Point{at(reach, 0), at(.97*reach, .008), at(.66*reach, .013), at(.42*reach, .021),
		at(0, .034), at(-heel, .024), at(-heel-b.flesh(.004), .008), at(-heel, 0)}
}
