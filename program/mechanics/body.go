package mechanics

import (
	"errors"
	"fmt"
	"math"
)

// Sex chooses the segment table.
type Sex int

// The zero value is Unspecified: the mean of the female and the male table.
const (
	Unspecified Sex = iota
	Female
	Male
)

// Segment is one rigid part of the body: one limb, not the pair.
type Segment struct {
	Mass   float64 // kg
	Length float64 // m, between its endpoints
	CoM    float64 // m, centre of mass from the endpoint named in Body
}

// Body is a person as segments. NewBody makes one; fields may be set by hand to
// try another segment table.
type Body struct {
	Mass, Height float64 // kg, m, as measured

	Head  Segment // from C7 to the crown
	Trunk Segment // from mid-shoulder to mid-hip

	UpperArm, Forearm, Hand Segment // from the shoulder, the elbow, the wrist (to the third knuckle)
	Thigh, Shank, Foot      Segment // from the hip, the knee, the ankle (to the toe tip)

	Neck        float64 // m, from the shoulder line to C7, along the trunk's axis
	AnkleHeight float64 // m, from the sole to the ankle, standing
	FingerTip   float64 // m, from the wrist to the tip of the middle finger
	Heel        float64 // m, from the ankle back to the heel, along the foot
}

// NewBody scales the segment table of the given sex to mass (kg) and height (m).
// Arm span in m scales the arms; zero means equal to height. Balance point is
// the height of the centre of mass above the soles in m, measured lying on a
// reaction board with the arms down; zero means not measured. Otherwise mass is
// moved between legs and trunk until StandingCoM agrees, and a *BalanceError is
// returned where that would change the legs by more than 15 % of their mass.
// Numbers that are not positive give ErrBadBody.
func NewBody(sex Sex, mass, height, armSpan, balancePoint float64) (Body, error) {
	if armSpan == 0 {
		armSpan = height
	}
	for _, v := range []float64{mass, height, armSpan} {
		if !(v > 0) || math.IsInf(v, 0) {
			return Body{}, ErrBadBody
		}
	}
	b := scaled(tableFor(sex), mass, height, armSpan)
	if balancePoint == 0 {
		return b, nil
	}
	return b.balanced(balancePoint)
}

func scaled(t table, mass, height, armSpan float64) Body {
	segment := func(r row, unit float64) Segment {
		return Segment{Mass: r.mass * mass, Length: r.length * unit, CoM: r.com * r.length * unit}
	}
	b := Body{
		Mass: mass, Height: height,
		Head: segment(t.head, height), Trunk: segment(t.trunk, height),
		UpperArm: segment(t.upperArm, armSpan), Forearm: segment(t.forearm, armSpan), Hand: segment(t.hand, armSpan),
		Thigh: segment(t.thigh, height), Shank: segment(t.shank, height), Foot: segment(t.foot, height),
		Neck:      (t.trunkC7 - t.trunk.length) * height,
		FingerTip: t.handLength * armSpan,
		Heel:      t.heelToAnkle * height,
	}
	b.Head.CoM = b.Head.Length - b.Head.CoM // the table counts from the crown
	b.Foot.Length -= b.Heel                 // the table counts from the heel
	b.Foot.CoM -= b.Heel
	b.AnkleHeight = height - b.Head.Length - t.trunkC7*height - b.Thigh.Length - b.Shank.Length
	return b
}

// ErrBadBody says that mass, height or arm span is not a positive number.
var ErrBadBody = errors.New("mechanics: mass, height and arm span must be positive")

// BalanceError says that a measured balance point is too far from what the
// segments give to be put down to build: most likely it was measured wrong.
type BalanceError struct {
	Model    float64 // m, standing centre of mass of the unchanged segments
	Measured float64 // m
	Shift    float64 // share of leg mass that would have to move from legs to trunk; negative: to the legs
}

func (e *BalanceError) Error() string {
	return fmt.Sprintf("mechanics: balance point %.3f m does not fit a body whose segments give %.3f m (leg mass off by %.0f %%)",
		e.Measured, e.Model, 100*e.Shift)
}

// maxShift bounds how much leg mass a balance point may move (our judgement:
// past it a wrong reading is likelier than such a build).
const maxShift = 0.15

// balanced moves mass between legs and trunk until StandingCoM is measured.
func (b Body) balanced(measured float64) (Body, error) {
	model := b.StandingCoM()
	legs := 2 * (b.Thigh.Mass + b.Shank.Mass + b.Foot.Mass)
	legsCoM := 2 * b.legMoment() / legs
	moved := (measured - model) * b.segmentMass() / (b.trunkHeight() - legsCoM)
	shift := moved / legs
	if !(shift >= -maxShift && shift <= maxShift) {
		return Body{}, &BalanceError{Model: model, Measured: measured, Shift: shift}
	}
	b.Trunk.Mass += moved
	for _, s := range []*Segment{&b.Thigh, &b.Shank, &b.Foot} {
		s.Mass *= 1 - shift
	}
	return b, nil
}

// StandingCoM is the height of the centre of mass above the soles in m, standing
// straight with the arms down.
func (b Body) StandingCoM() float64 {
	hip := b.hipHeight()
	shoulder := hip + b.Trunk.Length
	elbow := shoulder - b.UpperArm.Length
	wrist := elbow - b.Forearm.Length
	moment := b.Head.Mass*(shoulder+b.Neck+b.Head.CoM) + b.Trunk.Mass*b.trunkHeight() + 2*b.legMoment() +
		2*(b.UpperArm.Mass*(shoulder-b.UpperArm.CoM)+b.Forearm.Mass*(elbow-b.Forearm.CoM)+b.Hand.Mass*(wrist-b.Hand.CoM))
	return moment / b.segmentMass()
}

func (b Body) hipHeight() float64   { return b.AnkleHeight + b.Shank.Length + b.Thigh.Length }
func (b Body) trunkHeight() float64 { return b.hipHeight() + b.Trunk.Length - b.Trunk.CoM }

// legMoment is one standing leg's first moment about the soles, kg·m. The flat
// foot's centre of mass lies halfway up to the ankle (our judgement: it moves
// the body's by less than a millimetre).
func (b Body) legMoment() float64 {
	return b.Thigh.Mass*(b.hipHeight()-b.Thigh.CoM) +
		b.Shank.Mass*(b.AnkleHeight+b.Shank.Length-b.Shank.CoM) +
		b.Foot.Mass*b.AnkleHeight/2
}

// segmentMass is the sum of the segments: the female table's shares add up to
// 99.99 %.
func (b Body) segmentMass() float64 {
	return b.mobileMass() + 2*(b.UpperArm.Mass+b.Forearm.Mass+b.Hand.Mass)
}

// mobileMass is everything but the arms.
func (b Body) mobileMass() float64 {
	return b.Head.Mass + b.Trunk.Mass + 2*(b.Thigh.Mass+b.Shank.Mass+b.Foot.Mass)
}
