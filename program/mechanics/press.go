package mechanics

import (
	"errors"
	"math"
)

// Rest is what carries the part of a pressing body that its hands do not.
type Rest int

// The zero value is the toes: the balls of pointed feet, on a floor or a box.
const (
	OnToes      Rest = iota
	OnKnees          // bent square, the shanks up
	AtWall           // toes against a wall, the belly to it, hands near it; the wall does not rub
	HeelsAtWall      // the same with the heels and the back
	Nothing          // free, over the hands
)

// PressPose is how a body stands on its hands and on something else to press
// itself up. Heights are from the floor.
//
// With a Trunk the arms are upright, the knees straight, and the hips bend as far
// as the feet's height asks. Without one the body is a straight line: against a
// wall or free it lies in one line with the arms, on toes or knees the arms are
// square to it and it slopes as the heights ask.
type PressPose struct {
	Rest   Rest
	Trunk  float64 // rad, from the shoulders up to the hips, above the horizontal; 0: a straight line
	Elbows float64 // rad of flexion; 0 straight
	Feet   float64 // m, what toes or knees stand on
	Hands  float64 // m, what the hands stand on
	Gap    float64 // m, from the wrists to the wall
}

// Press is what a pose asks of both arms. Shares are of body weight.
type Press struct {
	Hands     float64 // upward part of the push through both hands
	Moved     float64 // Hands less the weight of forearms and hands, which stand still: what the elbows press
	Wall      float64 // push of the wall, level
	Hips      float64 // rad the hips are bent; 0 straight
	Slope     float64 // rad, from the shoulders up to the hips, above the horizontal
	HipHeight float64 // m above the floor
}

// ErrStand says that nobody stands in a pose: feet, knees or hands do not reach or
// would carry nothing, or the hips would have to bend backwards or past 150°.
var ErrStand = errors.New("mechanics: nobody stands so: the feet do not reach, carry nothing, or the hips bend too far")

const (
	deepest = 150 * math.Pi / 180 // rad the hips bend at most (our judgement)
	tilted  = -math.Pi / 6        // rad a straight body on its toes slopes down to the shoulders at most (our judgement)
)

// Press works out a pose by the lever law about toes or knees. The hands' push
// goes along the arms, so that it does not turn the shoulders. Against a wall and
// free the hands carry the whole body, whatever the slope. A pose in which nobody
// stands gives ErrStand.
func (b Body) Press(p PressPose) (Press, error) {
	switch {
	case p.Rest.upright():
		return b.inLine(p)
	case p.Trunk != 0:
		return b.bent(p)
	}
	return b.straight(p)
}

// bent has upright arms, and hips that bend down to what the feet stand on.
func (b *Body) bent(p PressPose) (Press, error) {
	arm := b.armLength(p.Elbows)
	hip := p.Hands + arm + b.Trunk.Length*math.Sin(p.Trunk)
	hips := p.Trunk + math.Asin((hip-b.contactHeight(p))/b.legTo(p.Rest))
	if !(p.Trunk > 0 && p.Trunk <= math.Pi/2 && hips >= 0 && hips <= deepest) {
		return Press{}, ErrStand
	}
	return b.levered(p.Rest, Pose{Pitch: p.Trunk, Legs: Both(legOn(p.Rest, hips))}, 0, arm, hip)
}

// straight has arms square to a straight body.
func (b *Body) straight(p PressPose) (Press, error) {
	arm, line := b.armLength(p.Elbows), b.Trunk.Length+b.legTo(p.Rest)
	slope := math.Asin((p.Hands-b.contactHeight(p))/math.Hypot(line, arm)) + math.Atan2(arm, line)
	if !(slope >= tilted && slope < math.Pi/2) {
		return Press{}, ErrStand
	}
	hip := p.Hands + arm*math.Cos(slope) - b.Trunk.Length*math.Sin(slope)
	return b.levered(p.Rest, Pose{Pitch: -slope, Legs: Both(legOn(p.Rest, 0))}, slope, arm, hip)
}

// levered weighs a posed body about its toes or knees. The arms, of a length in m,
// lean by an angle from upright, the hands ahead of the shoulder; hip is the hips'
// height over the floor, m.
func (b *Body) levered(rest Rest, pose Pose, lean, arm, hip float64) (Press, error) {
	s := b.shapeOf(&pose, false)
	contact := s.legs[0].ball(b)
	if rest == OnKnees {
		contact = s.legs[0].knee
	}
	sin, cos := math.Sincos(lean)
	moment := s.moment.X + sin*b.armsMoment(arm) + 2*b.Hand.Mass*b.Hand.CoM // about the shoulder, kg·m
	push := (moment/b.segmentMass() - contact.X) / (-contact.Y*sin - contact.X*cos)
	hands := push * cos
	if !(hands > b.resting() && hands < 1) {
		return Press{}, ErrStand
	}
	return Press{Hands: hands, Moved: hands - b.resting(), Hips: pose.Legs[0].Hip, Slope: pose.Pitch, HipHeight: hip}, nil
}

// upright says that the hands carry the whole body.
func (r Rest) upright() bool { return r == AtWall || r == HeelsAtWall || r == Nothing }

// inLine has body and straight or bent arms in one line, its toes or heels against a
// wall.
func (b *Body) inLine(p PressPose) (Press, error) {
	arm := b.armLength(p.Elbows)
	s := b.shapeOf(&Pose{Pitch: math.Pi / 2}, false)
	legs, wall := b.touching(p)
	line := arm + s.hip.Y + legs
	lean := math.Asin(wall / line)
	if !(math.Abs(lean) < math.Pi/2) || p.Rest == AtWall && lean > 0 || p.Rest == HeelsAtWall && lean < 0 {
		return Press{}, ErrStand
	}
	middle := arm + (s.moment.Y-b.armsMoment(arm))/b.segmentMass() // of the body, from the wrists
	return Press{
		Hands: 1, Moved: 1 - b.resting(), Wall: math.Abs(middle / line * math.Tan(lean)),
		Slope: math.Pi/2 + lean, HipHeight: p.Hands + (arm+s.hip.Y)*math.Cos(lean),
	}, nil
}

// touching is how far down the straight leg the wall is touched, and how far ahead of
// the wrists the middle of the leg is there, m.
func (b *Body) touching(p PressPose) (legs, ahead float64) {
	switch p.Rest {
	case AtWall:
		return b.Thigh.Length + b.Shank.Length + b.Foot.Length, -p.Gap
	case HeelsAtWall:
		return b.Thigh.Length + b.Shank.Length, p.Gap - heelDepth*b.Height
	}
	return b.Thigh.Length + b.Shank.Length, 0
}

// heelDepth is how deep the heel's skin lies behind the ankle of a pointed foot, share
// of stature (our judgement).
const heelDepth = 0.023

// armLength is the distance from shoulder to wrist, m: the law of cosines.
func (b *Body) armLength(elbows float64) float64 {
	upper, fore := b.UpperArm.Length, b.Forearm.Length
	return math.Sqrt(max(0, upper*upper+fore*fore+2*upper*fore*math.Cos(elbows)))
}

// armsMoment is Σ mass × way along the line from shoulder to wrist of both arms, kg·m.
// Bent elbows stick out of that line to either side (a few grams' worth, left out).
func (b *Body) armsMoment(length float64) float64 {
	share := length / (b.UpperArm.Length + b.Forearm.Length)
	along := b.UpperArm.Mass*b.UpperArm.CoM + b.Forearm.Mass*(b.UpperArm.Length+b.Forearm.CoM)
	return 2 * (along*share + b.Hand.Mass*length)
}

// resting is the share of body weight in forearms and hands.
func (b *Body) resting() float64 { return 2 * (b.Forearm.Mass + b.Hand.Mass) / b.segmentMass() }

// legTo is the straight leg's length from the hip to what it rests on, m.
func (b *Body) legTo(rest Rest) float64 {
	if rest == OnKnees {
		return b.Thigh.Length
	}
	return b.Thigh.Length + b.Shank.Length + b.ball()*b.Foot.Length
}

// contactHeight is how high a knee's joint or the ball of the foot is, m.
func (b *Body) contactHeight(p PressPose) float64 {
	if p.Rest == OnKnees {
		return p.Feet + kneeDepth*b.Height
	}
	return p.Feet
}

func legOn(rest Rest, hips float64) Leg {
	if rest == OnKnees {
		return Leg{Hip: hips, Knee: math.Pi / 2}
	}
	return Leg{Hip: hips}
}

// ball is where the ball of the foot lies, as a share of the way from the ankle to
// the toe tip: 0.7 of the whole foot from the heel (common practice).
func (b *Body) ball() float64 { return (0.7*(b.Foot.Length+b.Heel) - b.Heel) / b.Foot.Length }

func (l limb) ball(b *Body) Point { return l.ankle.along(l.toe.plus(l.ankle.times(-1)), b.ball()) }
