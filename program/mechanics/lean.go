package mechanics

import "math"

// Lean is a planche lean: toes on the floor, body straight from shoulder to
// pointed toes, arms straight, shoulder ahead of the wrists.
type Lean struct {
	Torque         float64 // N·m about the shoulder line, both shoulders
	Arm            float64 // rad, the arm off the vertical
	Toes           float64 // share of body weight on the toes; negative past LeanLimit, where no such lean exists
	Hands          float64 // share of body weight on the hands
	Pitch          float64 // rad, body axis against the horizontal; negative: feet below the shoulders
	ShoulderHeight float64 // m above the hands' support
}

// leanPose is how a straight body is held in a lean (our judgement; the same as
// in the straight-legged holds of the planche road map).
var leanPose = Pose{Rounding: 0.02, Depression: 0.02}

// PlancheLean puts the shoulder ahead of the wrist (flat hands) or of the grip
// by a distance in m, as Hold.ShoulderAhead counts it. Flat hands carry at the
// wrist unless s.Ahead says otherwise: with the toes helping, the weight sits
// over the heel of the hand, and that is what readings of a scale under the
// toes agree with (common practice: 26 % of body weight with the arms vertical,
// 13 to 15 % at 20 cm). Ahead is taken as at most the arm's length; s.Hang means
// nothing here.
func (b Body) PlancheLean(ahead float64, s Support) Lean {
	s.Hang, s.AtWrist = false, s.Ahead == 0
	pose := leanPose
	c := newChain(&b, &pose, s)
	arm := math.Asin(max(-1, min(1, ahead/c.arm)))
	height := c.arm * math.Cos(arm)

	line := -c.shape.legs[0].toe.X // shoulder to toes
	pose.Pitch = -math.Asin(max(-1, min(1, (height+s.Height)/line)))
	c = newChain(&b, &pose, s)
	toe := c.shape.legs[0].toe.X
	toes := (c.fixed + c.swing*math.Sin(arm)) / (c.shoulder(arm).X + toe) // kg
	share := toes / b.segmentMass()
	return Lean{
		Torque: Gravity * (toes*toe - c.shape.moment.X),
		Arm:    arm, Toes: share, Hands: 1 - share,
		Pitch: pose.Pitch, ShoulderHeight: height,
	}
}

// LeanLimit is how far ahead the shoulder is, in m, when the toes carry nothing
// any more: from there on the lean is a free hold.
func (b Body) LeanLimit(s Support) float64 {
	reach := b.UpperArm.Length + b.Forearm.Length
	if s.Grip {
		reach += b.Hand.CoM
	}
	limit, _ := root(func(ahead float64) float64 { return -b.PlancheLean(ahead, s).Toes }, 0, reach)
	return limit
}

// LeanJoints are the places of a lean's joints, of the lean that PlancheLean
// weighs; the floor is s.Height below the origin.
func (b Body) LeanJoints(ahead float64, s Support) Joints {
	lean := b.PlancheLean(ahead, s)
	s.Hang, s.AtWrist = false, s.Ahead == 0
	pose := leanPose
	pose.Pitch = lean.Pitch
	c := newChain(&b, &pose, s)
	return c.joints(lean.Arm)
}

// ToesCarried are the places of the joints where something under the toes, a
// scale, carries a force in N: the body balances with less lean than a free hold.
func (b Body) ToesCarried(p Pose, s Support, force float64) Joints {
	c := newChain(&b, &p, s)
	toe := (c.shape.legs[0].toe.X + c.shape.legs[1].toe.X) / 2
	mass := force / Gravity
	sin := (mass*(toe-c.ahead) - c.fixed) / (c.swing - mass*c.arm)
	return c.joints(math.Asin(max(-1, min(1, sin))))
}
