package posture

import (
	"gatepost/program"
)

// axis is one of the side view's.
type axis int

const (
	alongX axis = atX
	alongY axis = atY
)

func (a axis) of(p space) float64 {
	if a == alongX {
		return p.X
	}
	return p.Y
}

// fixed is a level that nothing moves.
var fixed = level{known: true}

// chains are the joints between the trunk and a place: from which one of a side on, and
// how many. The neck is not one of a side.
var chains = [...]struct{ first, count int }{
	onBack: {}, inHead: {}, atElbow: {0, 1}, atWrist: {0, 2}, atGrip: {0, 2}, atKnuckle: {0, 2},
	inThigh: {2, 1}, atKnee: {2, 1}, atAnkle: {2, 2}, atHeel: {2, 3}, atBall: {2, 3}, atToe: {2, 3},
}

var (
	sideways = space{Z: 1}
	forward  = space{Z: -1} // what trunk and neck turn about
)

// gap adds how far a spot is off along an axis, weighed, and how that changes.
func (b *laid) gap(s *squares, o spotOf, a axis, weight, off float64, l level) {
	if s.slopes {
		b.spotGoes(s, o, a, weight)
		if !l.known {
			s.goes(l.q, -weight)
		}
	}
	s.add(weight * off)
}

// spotGoes says how a spot goes along an axis with all that may be moved.
func (b *laid) spotGoes(s *squares, o spotOf, a axis, weight float64) {
	at := o.at(&b.Placed)
	switch {
	case o.landmark == atToe && b.Legs[o.side].Away != (space{}):
		at = b.Legs[o.side].Ball // toes that are bent go along with it
	case o.landmark == atKnuckle:
		at = b.Arms[o.side].Wrist // and a hand that lies with its wrist
	}
	b.goes(s, o.landmark, o.side, at, a, weight)
}

// goes says how a place of the body goes along an axis with all that may be moved.
func (b *laid) goes(s *squares, on landmark, side int, at space, a axis, weight float64) {
	turns := func(q int, about, from space) { s.goes(q, weight*a.of(cross(about, minus(at, from)))) }
	s.goes(int(a), weight)
	turns(trunk, forward, b.Hip)
	if on == inHead {
		turns(neck, forward, b.C7)
	}
	for k := range chains[on].count {
		joint := chains[on].first + k
		about, from := b.joint(side, joint)
		turns(firstOfSide+ofSide*side+joint, about, from)
	}
}

// joint is what a joint of a side turns about, and where it is.
func (b *laid) joint(side, joint int) (about, at space) {
	a, l := &b.Arms[side], &b.Legs[side]
	switch movedJoints[joint] {
	case program.BendShoulder:
		return sideways, a.Shoulder
	case program.BendElbow:
		return b.elbows[side], a.Elbow
	case program.BendHip:
		return sideways, l.Hip
	case program.BendKnee:
		return b.knees[side], l.Knee
	}
	return b.knees[side], l.Ankle
}
