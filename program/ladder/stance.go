package ladder

import (
	"math"

	"gatepost/program"
	"gatepost/program/mechanics"
)

// stance is a step as a figure shows it: a hold, a press before it goes down, a lift as
// the toes come off, or the middle of a lowering.
func (b *Body) stance(r *Rung, o Aid) program.Stance {
	switch {
	case b.load == program.LoadPress, b.load == program.LoadBalance:
		return b.pressed(r.Press, o.Rig.Pad)
	case b.load == program.LoadLift && r.Lift.Lower:
		return b.lifted(r.Step)
	case b.load == program.LoadLift:
		return b.liftedOff(r.Step, max(o.Rig.Block, r.Lift.Block))
	}
	s := b.place(&r.pose, o.Hold.Joints)
	if o.Help > 0 {
		s.Help, s.Anchor, s.Strap = o.Hold.Help, program.Point(o.Hold.Joints.Anchor), o.Rig.Drop
		if placed(o.Rig.At) != mechanics.AtHip {
			s.Acts = program.Point(o.Hold.Joints.Attached)
		}
	}
	return s
}

// Figure is what an aid shows: of a step, or without one the lean.
func (b *Body) Figure(r *Rung, o Aid) program.Stance {
	switch {
	case r == nil:
		return b.lean(o.Ahead)
	case o.Scale > 0:
		s := b.place(&r.pose, b.ToesCarried(r.pose, b.support, o.Scale))
		s.ToesCarry = o.Scale
		return s
	}
	return b.stance(r, o)
}

// lean is the stance of a planche lean, in m ahead of the wrist crease.
func (b *Body) lean(ahead float64) program.Stance {
	s := b.place(&mechanics.Pose{Rounding: leanRounding}, b.LeanJoints(ahead, b.support))
	s.ToesCarry = b.Weight * b.PlancheLean(ahead, b.support).Toes
	return s
}

// leanRounding is how round the back is drawn in a lean; mechanics holds it so.
const leanRounding = 0.02

// place takes the joints over, and how far out the legs are: what runs along the
// body is turned out by the abduction, what runs square to it stays.
func (b *Body) place(pose *mechanics.Pose, j mechanics.Joints) program.Stance {
	s := program.Stance{
		Height:  b.Height,
		Fingers: program.Point(j.Fingers), Wrist: program.Point(j.Wrist),
		Elbow: program.Point(j.Elbow), Shoulder: program.Point(j.Shoulder),
		C7: program.Point(j.C7), Head: program.Point(j.Head), Crown: program.Point(j.Crown),
		Hip: program.Point(j.Hip), CoM: program.Point(j.CoM),
		Rounding: pose.Rounding, Floor: -b.support.Height,
		Grip: b.support.Grip, Hang: b.support.Hang,
	}
	for i, leg := range pose.Legs {
		out := math.Sin(leg.Abduction)
		thigh, shank := out*math.Cos(leg.Hip), out*math.Cos(leg.Hip-leg.Knee)
		s.Knees[i], s.Ankles[i], s.Toes[i] = program.Point(j.Knees[i]), program.Point(j.Ankles[i]), program.Point(j.Toes[i])
		s.KneesOut[i] = thigh * b.Thigh.Length
		s.AnklesOut[i] = s.KneesOut[i] + shank*b.Shank.Length
		s.ToesOut[i] = s.AnklesOut[i] + shank*b.Foot.Length
	}
	return s
}

// pressed is a press with straight arms as a figure shows it, over a pad in m; nothing
// where nobody stands so.
func (b *Body) pressed(p program.Press, pad float64) program.Stance {
	j, err := b.PressJoints(pressPose(p))
	s := b.stood(p, pad, j, err)
	if s.Drawn() && rests[p.Rest] == mechanics.OnToes {
		press, _ := b.Press(pressPose(p))
		s.ToesCarry = (1 - press.Hands) * b.Weight
	}
	return s
}

// pressedLow is the same press with the crown on the pad, or on the floor.
func (b *Body) pressedLow(p program.Press, pad float64) program.Stance {
	j, err := b.PressBottom(pressPose(p), pad)
	return b.stood(p, pad, j, err)
}

// stood is what a press stands on and at.
func (b *Body) stood(p program.Press, pad float64, j mechanics.Joints, err error) program.Stance {
	if err != nil {
		return program.Stance{}
	}
	s := b.place(&mechanics.Pose{}, j)
	s.Floor, s.Grip, s.Hang = -p.Hands, false, false
	s.Pad = pad
	switch p.Rest {
	case program.PressAtWall:
		s.Wall = -p.Gap
	case program.PressHeels:
		s.Wall = p.Gap
	case program.PressFree:
	default:
		s.Box = p.Feet
	}
	return s
}

// liftedOff is a lift as the toes come off a block, m above the floor; nothing where
// nobody gets there. Both feet stand on it side by side, so that no view from above
// parts them.
func (b *Body) liftedOff(s *program.Step, block float64) program.Stance {
	pose := b.folded(s)
	l, ok := b.lift(s, block)
	if !ok {
		return program.Stance{}
	}
	pose.Legs = mechanics.Both(mechanics.Leg{Hip: l.Fold})
	out := b.onTheHands(&pose, l.Off.Joints)
	out.Box = block
	return out
}

// lifted is the middle of a lift, the legs level.
func (b *Body) lifted(s *program.Step) program.Stance {
	pose := b.folded(s)
	l, ok := b.lift(s, s.Lift.Block)
	if !ok {
		return program.Stance{}
	}
	for i := range pose.Legs {
		pose.Legs[i] = mechanics.Leg{Hip: l.Middle.Pitch, Abduction: s.Lift.Open / 2}
	}
	return b.onTheHands(&pose, l.Middle.Joints)
}

// onTheHands is a body on flat hands, whatever stands in the client's kit, with straight
// legs that are as far out to the sides wherever they point.
func (b *Body) onTheHands(pose *mechanics.Pose, j mechanics.Joints) program.Stance {
	s := b.place(pose, j)
	s.Floor, s.Grip, s.Hang = 0, false, false
	for i, leg := range pose.Legs {
		out := math.Sin(leg.Abduction)
		s.KneesOut[i] = out * b.Thigh.Length
		s.AnklesOut[i] = s.KneesOut[i] + out*b.Shank.Length
		s.ToesOut[i] = s.AnklesOut[i] + out*b.Foot.Length
	}
	return s
}

// pressPose is a press as mechanics poses it, arms straight.
func pressPose(p program.Press) mechanics.PressPose {
	return mechanics.PressPose{Rest: rests[p.Rest], Trunk: p.Trunk, Feet: p.Feet, Hands: p.Hands, Gap: p.Gap}
}
