package figure

import "math"

// torso is the trunk's thickness over its length from the shoulder (0) to the
// hip (1), and the neck's before it, to the belly and to the back, as shares of stature. Drawn-down, widened
// shoulder blades carry the ribs above the shoulder: the back is the thicker side
// there (our judgement).
var torso = []station{
	{-.50, .026, .026}, {-.26, .031, .036}, {-.02, .050, .060}, {.24, .060, .070}, {.52, .052, .062},
	{.75, .046, .056}, {.96, .046, .064}, {1.10, .034, .050}, {1.15, .010, .024},
}

// saddle is the end of the torso, a little thinner.
var saddle = []station{{.82, .030, .040}, {.89, .0455, .059}, {1, .0445, .063}, {1.10, .030, .047}}

// trunk is neck, torso and head.
func (b *body) trunk() []Path { return []Path{b.spine(torso), b.head()} }

// seat covers where the near thigh joins the trunk, so that what is left free
// around the leg parts it from the belly and not from the hip; the disc rounds
// off a bent hip.
func (b *body) seat() []Path {
	centre := along(along(b.Hip, b.tail, b.flesh(.004)), b.belly, -b.flesh(.009))
	return []Path{b.spine(saddle), disc(centre, b.flesh(.053))}
}

// spine is an outline along the curve of the back.
func (b *body) spine(shape []station) Path {
	n := len(shape)
	points := make([]Point, 2*n)
	for i, s := range shape {
		at := along(between(b.Shoulder, b.Hip, s.at), b.belly, -b.bulge(s.at))
		if s.at < -.1 && b.nods() { // the neck follows the head
			at = between(b.Shoulder, b.Head, s.at/torso[0].at)
		}
		points[i] = along(at, b.belly, b.flesh(s.front))
		points[2*n-1-i] = along(at, b.belly, -b.flesh(s.back))
	}
	return counterClockwise(round(points))
}

// bulge is how far a rounded back stands off the straight line from shoulder to
// hip. An arc that is a share r longer than its chord c rises by c·√(3r/8) in
// the middle (textbook geometry, flat arcs); between it is taken as a parabola.
func (b *body) bulge(t float64) float64 {
	if t <= 0 || t >= 1 {
		return 0
	}
	chord := distance(b.Shoulder, b.Hip)
	if b.placed { // the same arc, given by its angle
		return t * (1 - t) * chord * b.curve / 2
	}
	return 4 * t * (1 - t) * chord * math.Sqrt(3*math.Max(0, b.Rounding)/8)
}

// skull is a head in profile: along from the crown toward the neck, and out
// toward the face, as shares of stature. Common practice: the head is 2/15 of
// stature high and 1/9 deep. No face is drawn.
var skull = []struct{ along, out float64 }{
	{.000, -.008}, {.013, .033}, {.044, .052}, {.078, .054}, {.108, .047}, {.128, .034},
	{.122, .008}, {.100, -.028}, {.068, -.054}, {.024, -.047},
}

// gaze is how far the head is turned back to look ahead, our judgement. In a hang it
// stays in line with the trunk: thrown back it is a fault. One that the joints have turned
// already is left so.
const gaze = 18 * math.Pi / 180

// nods says that the joints have turned the head against the trunk.
func (b *body) nods() bool { return distance(unit(minus(b.C7, b.Crown)), b.tail) > 0.01 }

// head is turned about its own centre of mass, so that it balances as computed.
func (b *body) head() Path {
	down := unit(minus(b.C7, b.Crown)) // from the crown to the neck
	face := b.front(down)
	sin, cos := math.Sincos(gaze)
	if b.Hang || b.placed || b.nods() {
		sin, cos = 0, 1
	}
	axis := plus(times(cos, down), times(sin, face))
	out := plus(times(cos, face), times(-sin, down))
	top := along(b.Head, axis, -distance(b.Crown, b.Head))
	points := make([]Point, len(skull))
	for i, s := range skull {
		points[i] = along(along(top, axis, b.flesh(s.along)), out, b.flesh(s.out))
	}
	return counterClockwise(round(points))
}
