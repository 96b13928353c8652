package mechanics

import "math"

// PressJoints are the places of the joints of a press that Press weighs. The origin
// is the wrist, on what the hands stand on. X ahead is the way the fingers point: of a
// body upside down the back faces ahead and the belly behind, where its feet come down.
// Elbows that are bent point behind and out to the sides, so the side view shortens the
// arms. Toes are the balls of the feet where those stand on something, since the toes
// beyond them bend.
//
// Arms overhead lift the shoulder blades, so the head is nearer to the shoulders than
// in Press, by as much as puts the crown of an upright body PressTravel above the
// floor. It moves the centre of mass by less than a centimetre.
func (b Body) PressJoints(p PressPose) (Joints, error) {
	press, err := b.Press(p)
	if err != nil {
		return Joints{}, err
	}
	frame := frameOf(press.Slope, false)
	up := Point{Y: 1}
	switch {
	case p.Rest.upright():
		up = frame.tail
	case p.Trunk == 0:
		up = frame.belly.times(-1)
	}
	shoulder := Point{}.along(up, b.armLength(p.Elbows))
	return b.pressed(p.Rest, shoulder, Pose{Pitch: press.Slope, Legs: Both(legOn(p.Rest, press.Hips))}, frame.tail.times(-1)), nil
}

// PressBottom are the joints of the same press at its lowest point: the crown touches a
// pad, or the floor below raised hands, ahead of the hands, so that hands and head make
// a triangle; the feet have stayed where they were, or have slid down the wall, and a
// free body leans until it balances again. The pad is in m. Raised hands let the
// shoulders down to them and no further. A straight line on toes or knees lowers its
// chest and gives ErrStand.
func (b Body) PressBottom(p PressPose, pad float64) (Joints, error) {
	if _, err := b.PressDepth(pad, p.Hands); err != nil {
		return Joints{}, err
	}
	p.Elbows = 0
	top, err := b.PressJoints(p)
	if err != nil || !p.Rest.upright() && p.Trunk == 0 {
		return Joints{}, ErrStand
	}
	low := func(height float64) (j Joints) { j, err = b.sunk(p, &top, height); return j }
	height, _ := root(func(height float64) float64 { return low(height).Crown.Y - pad + p.Hands }, 0, top.Shoulder.Y)
	j := low(height)
	return j, err
}

const (
	onward = 0.5                // m the shoulders go ahead for each that they sink (our judgement; it puts the crown ahead of the fingertips)
	nod    = 25 * math.Pi / 180 // the head off the upright where the hairline touches the floor, as in a headstand (our judgement)
	flare  = 45 * math.Pi / 180 // the elbows out to the sides; wider is a fault (our judgement)
	nodded = 45 * math.Pi / 180 // and at most, where the trunk slopes
)

// skullDepth is how far the back of the head is from its axis, share of stature (common
// practice: a head is 1/9 of stature deep).
const skullDepth = 0.055

// sunk has the shoulders at a height, m above the hands.
func (b *Body) sunk(p PressPose, top *Joints, height float64) (Joints, error) {
	shoulder := Point{onward * (top.Shoulder.Y - height), height}
	if p.Rest == HeelsAtWall { // the head stays before the wall
		shoulder.X = min(shoulder.X, p.Gap-skullDepth*b.Height-b.Head.Length*math.Sin(nod))
	}
	pose := Pose{Pitch: math.Pi / 2, Legs: Both(legOn(p.Rest, 0))}
	switch legs, wall := b.touching(p); {
	case p.Rest == Nothing:
		pose.Pitch, _ = root(func(pitch float64) float64 {
			pose.Pitch = pitch
			return b.pressed(p.Rest, shoulder, pose, Point{math.Sin(nod), -math.Cos(nod)}).CoM.X - top.CoM.X
		}, 0, math.Pi/2)
	case p.Rest.upright():
		pose.Pitch += math.Asin((wall - shoulder.X) / (b.Trunk.Length + legs))
	default:
		contact := top.Toes[0]
		if p.Rest == OnKnees {
			contact = top.Knees[0]
		}
		hip := corner(contact, shoulder, b.legTo(p.Rest), b.Trunk.Length, 1)
		pose.Pitch = math.Atan2(hip.Y-shoulder.Y, shoulder.X-hip.X)
		pose.Legs = Both(legOn(p.Rest, pose.Pitch+math.Atan2(hip.Y-contact.Y, hip.X-contact.X)))
	}
	if math.IsNaN(pose.Pitch) {
		return Joints{}, ErrStand
	}
	sin, cos := math.Sincos(max(nod, min(nodded, math.Pi/2-pose.Pitch)))
	return b.pressed(p.Rest, shoulder, pose, Point{sin, -cos}), nil
}

// pressed lays out a pose on arms that are as bent as the shoulder is near, above
// wrists at the origin, its head along a direction from C7.
func (b *Body) pressed(rest Rest, shoulder Point, pose Pose, head Point) Joints {
	s := b.shapeOf(&pose, false)
	tail := frameOf(pose.Pitch, false).tail
	at := func(p Point) Point { return shoulder.plus(p) }
	j := Joints{
		Fingers: Point{X: b.FingerTip}, Shoulder: shoulder,
		Elbow: corner(Point{}, shoulder, b.Forearm.Length, b.UpperArm.Length, math.Cos(flare)),
		C7:    at(s.c7.along(tail, b.shrug())), Hip: at(s.hip), Anchor: at(s.hip), Attached: at(s.hip),
	}
	j.Head, j.Crown = j.C7.along(head, b.Head.CoM), j.C7.along(head, b.Head.Length)
	for i, l := range s.legs {
		j.Knees[i], j.Ankles[i], j.Toes[i] = at(l.knee), at(l.ankle), at(l.toe)
		if rest == OnToes {
			j.Toes[i] = at(l.ball(b))
		}
	}
	upper, fore := j.Elbow.plus(shoulder.times(-1)), j.Elbow.times(-1)
	whole := Point{}.along(shoulder, s.mass).plus(s.moment).
		along(j.Head.plus(at(s.head).times(-1)), b.Head.Mass).
		along(shoulder.along(upper, b.UpperArm.CoM/b.UpperArm.Length), 2*b.UpperArm.Mass).
		along(j.Elbow.along(fore, b.Forearm.CoM/b.Forearm.Length), 2*b.Forearm.Mass).
		along(Point{X: b.Hand.CoM}, 2*b.Hand.Mass)
	j.CoM = whole.times(1 / b.segmentMass())
	return j
}

// shrug is how much nearer the head is to the shoulders with the arms overhead, m.
func (b *Body) shrug() float64 {
	crown, _ := b.PressTravel()
	return b.Neck + b.Head.Length + crown - b.armLength(0)
}

// corner is where two bones meet that reach from a to c, on the left of that way: the
// first is from long, the second to, and of their bend the side view sees a share.
// Bones too short for it lie straight, and not quite on c.
func corner(a, c Point, from, to, seen float64) Point {
	way := c.plus(a.times(-1))
	d := math.Hypot(way.X, way.Y)
	along := (from*from - to*to + d*d) / (2 * d)
	out := seen * math.Sqrt(max(0, from*from-along*along))
	unit := way.times(1 / d)
	return a.along(unit, along).along(Point{-unit.Y, unit.X}, out)
}
