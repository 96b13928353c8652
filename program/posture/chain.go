package posture

import (
	"math"

	"gatepost/program"
	"gatepost/program/mechanics"
)

type space = program.Space

func minus(p, q space) space            { return space{X: p.X - q.X, Y: p.Y - q.Y, Z: p.Z - q.Z} }
func along(p, u space, d float64) space { return space{X: p.X + d*u.X, Y: p.Y + d*u.Y, Z: p.Z + d*u.Z} }
func mix(a float64, p space, b float64, q space) space {
	return space{X: a*p.X + b*q.X, Y: a*p.Y + b*q.Y, Z: a*p.Z + b*q.Z}
}
func cross(p, q space) space {
	return space{X: p.Y*q.Z - p.Z*q.Y, Y: p.Z*q.X - p.X*q.Z, Z: p.X*q.Y - p.Y*q.X}
}
func dot(p, q space) float64 { return p.X*q.X + p.Y*q.Y + p.Z*q.Z }

// What a solver may move: where the hips are, how the trunk leans and the head nods, and of
// each side five joints.
const (
	atX = iota
	atY
	trunk
	neck
	firstOfSide
	ofSide = 5
	moved  = firstOfSide + 2*ofSide
)

// movedJoints are the joints of a side, in the order of what may be moved.
var movedJoints = [ofSide]program.Bend{program.BendShoulder, program.BendElbow, program.BendHip, program.BendKnee, program.BendAnkle}

// What of a side stays as it is said: angles, and the shoulders' way up and ahead.
const (
	out = iota
	turn
	wrist
	fingers
	apart
	up
	ahead
	heldOfSide
)

// heldJoints are their names.
var heldJoints = [heldOfSide]program.Bend{program.BendOut, program.BendTurn, program.BendWrist, program.BendFingers, program.BendApart, program.ShoulderUp, program.ShoulderAhead}

// form is what stays as it is said while a body is placed.
type form struct {
	body  *mechanics.Body
	spine float64
	held  [2][heldOfSide]float64
	hands [2]program.Hand
	lies  [2]space // of a flat hand: away from what it lies on
	toes  [2]space // of a foot on its ball: likewise
}

// Widths that the side view does not need, shares of stature (common practice: shoulders
// are a quarter of stature wide, joint to joint a little less; hips as in package figure).
const (
	halfShoulders = .105
	halfHips      = .045
)

// Of a foot, shares of stature from the ankle along it and up: middles of the rounds of
// heel and ball, and the tip. The sole is as far below as mechanics says ankles are high.
const (
	heelBack, heelRound = .022, .018
	ballRound, tipRound = .012, .007
	toesLong            = .040 // from the ball to the tip
)

// Of a hand: the palm's share of it (common practice: a half), and by how much it is lifted
// while the fingers lie, rad (our judgement: what a trained hand lifts).
const (
	palmLong  = .5
	palmLifts = 40 * math.Pi / 180
)

// laid is a body with the axes that elbows turn about, and knees and ankles. All other
// joints turn about the side view's own.
type laid struct {
	program.Placed
	elbows, knees [2]space
}

// lay is a body in a form with what may be moved at q.
func (f *form) lay(q []float64) (p laid) {
	b := f.body
	sin, cos := math.Sincos(q[trunk])
	up, front := space{X: sin, Y: cos}, space{X: cos, Y: -sin}
	p.Height, p.Front, p.Spine, p.Hip = b.Height, front, f.spine, space{X: q[atX], Y: q[atY]}
	p.Top = along(p.Hip, up, b.Trunk.Length*(1-f.spine*f.spine/24))
	chest := turnedBy(up, front, f.spine/2)
	p.C7 = along(p.Top, chest, b.Neck)
	head := turnedBy(up, front, f.spine/2+q[neck])
	p.Head, p.Crown = along(p.C7, head, b.Head.CoM), along(p.C7, head, b.Head.Length)
	for i, side := range [2]float64{1, -1} {
		f.arm(&p, i, side, up, front, q)
		f.leg(&p, i, side, up, front, q)
	}
	return p
}

// turnedBy is a direction turned toward another one, square to it.
func turnedBy(u, toward space, angle float64) space {
	sin, cos := math.Sincos(angle)
	return mix(cos, u, sin, toward)
}

// swung is a limb's direction in the side view, and the one its front faces, flexed forward
// from pointing down the trunk.
func swung(up, front space, angle float64) (along, forward space) {
	sin, cos := math.Sincos(angle)
	return mix(-cos, up, sin, front), mix(sin, up, cos, front)
}

func (f *form) arm(p *laid, i int, side float64, trunkUp, front space, q []float64) {
	b, held, at := f.body, &f.held[i], firstOfSide+ofSide*i
	down, forward := swung(trunkUp, front, q[at])
	outward := space{Z: side}
	sinOut, cosOut := math.Sincos(held[out])
	upper, inward := mix(cosOut, down, sinOut, outward), mix(sinOut, down, -cosOut, outward)
	bends := turnedBy(forward, inward, held[turn])
	sin, cos := math.Sincos(q[at+1])
	fore, palm := mix(cos, upper, sin, bends), mix(-sin, upper, cos, bends)
	hand := turnedBy(fore, palm, held[wrist])
	p.elbows[i] = cross(fore, palm)

	a := &p.Arms[i]
	a.Shoulder = along(along(along(p.Top, trunkUp, held[up]), front, held[ahead]), outward, halfShoulders*b.Height)
	a.Elbow = along(a.Shoulder, upper, b.UpperArm.Length)
	a.Wrist = along(a.Elbow, fore, b.Forearm.Length)
	a.Thumb = palm
	point := hand
	if a.Hand = f.hands[i]; a.Hand == program.FlatHand || a.Hand == program.FingerHand {
		a.Away = f.lies[i]
		point = space{X: -a.Away.Y, Y: a.Away.X}
		if dot(point, palm) < 0 {
			point = mix(-1, point, 0, point)
		}
		point = turnedBy(point, outward, held[fingers])
		hand = point
	}
	if a.Hand == program.FingerHand {
		hand = turnedBy(point, a.Away, -palmLifts)
	}
	a.Grip, a.Knuckle = along(a.Wrist, hand, b.Hand.CoM), along(a.Wrist, hand, palmLong*b.FingerTip)
	a.Tip = along(a.Knuckle, point, (1-palmLong)*b.FingerTip)
}

func (f *form) leg(p *laid, i int, side float64, up, front space, q []float64) {
	b, at := f.body, firstOfSide+ofSide*i+2
	down, forward := swung(up, front, q[at])
	outward := space{Z: side}
	sinOut, cosOut := math.Sincos(f.held[i][apart])
	thigh := mix(cosOut, down, sinOut, outward)
	sin, cos := math.Sincos(q[at+1])
	shank, shin := mix(cos, thigh, -sin, forward), mix(sin, thigh, cos, forward)
	sin, cos = math.Sincos(q[at+2])
	foot, instep := mix(cos, shin, sin, shank), mix(-cos, shank, sin, shin)
	p.knees[i] = cross(shin, shank)

	l := &p.Legs[i]
	h := b.Height
	l.Hip = along(p.Hip, outward, halfHips*h)
	l.Knee = along(l.Hip, thigh, b.Thigh.Length)
	l.Ankle = along(l.Knee, shank, b.Shank.Length)
	l.Heel = along(along(l.Ankle, foot, -heelBack*h), instep, heelRound*h-b.AnkleHeight)
	l.Ball = along(along(l.Ankle, foot, b.Foot.Length-toesLong*h), instep, ballRound*h-b.AnkleHeight)
	if l.Away = f.toes[i]; l.Away == (space{}) {
		l.Toe = along(along(l.Ball, foot, (toesLong-tipRound)*h), instep, (tipRound-ballRound)*h)
		return
	}
	toes := space{X: -l.Away.Y, Y: l.Away.X} // bent back toward the instep
	if dot(toes, instep) < 0 {
		toes = mix(-1, toes, 0, toes)
	}
	l.Toe = along(along(l.Ball, toes, (toesLong-tipRound)*h), l.Away, (tipRound-ballRound)*h)
}
