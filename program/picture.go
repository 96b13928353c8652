package program

// Picture is one drawing of an exercise on one body: the stance of a road map's step, or
// a figure as it was placed. The zero Picture is none.
type Picture struct {
	Stance Stance
	Placed Placed
}

// Drawn says that there is a picture.
func (p *Picture) Drawn() bool { return p.Stance.Drawn() || p.Placed.Height > 0 }

// Space is a place in metres: X ahead of who stands, Y up, Z to the right.
type Space struct{ X, Y, Z float64 }

// Placed is a figure on a body: where its joints are, and what is around it.
type Placed struct {
	Height float64 // m, stature; what thickness is drawn from
	View   View

	Hip, Top, C7, Head, Crown Space   // of the trunk; Top is between the shoulders at rest
	Front                     Space   // where the chest faces
	Spine                     float64 // rad, how far the chest is bent forward against the pelvis
	Arms                      [2]PlacedArm
	Legs                      [2]PlacedLeg
	Set                       []Set
	OnFloor                   bool    // the floor is drawn; it is at nothing
	Arrows                    []Arrow // how parts have moved since the other figure
	Circles                   []Circle
}

// Arrow is a way from one place to another.
type Arrow struct{ From, To Space }

// Circle is where something goes round, and the axis of that; none is the line of sight.
type Circle struct{ At, Axis Space }

// PlacedArm is one arm, the right one first.
type PlacedArm struct {
	Shoulder, Elbow, Wrist Space
	Grip, Knuckle, Tip     Space // the middle of a closed hand; where fingers begin, and their tips
	Thumb                  Space // where the thumb points to while the elbow bends toward it
	Hand                   Hand
	Away                   Space // of a flat hand: from what it lies on
}

// Hand is how a hand is held.
type Hand int

const (
	OpenHand Hand = iota
	FlatHand
	FingerHand // on its fingers
	ClosedHand
)

// PlacedLeg is one leg.
type PlacedLeg struct {
	Hip, Knee, Ankle Space
	Heel, Ball, Toe  Space // middles of the rounds that the foot stands on, and the tip
	Away             Space // where the toes bend: from what the ball stands on; nothing where they do not
}

// Set is a thing where it stands or hangs.
type Set struct {
	Kind ThingKind
	// Corners of what stands, the lower first; the middle of what is gripped; the axis of a
	// dumbbell; the foot of a wall and its top.
	From, To Space
	Side     float64 // of a wall: −1 where the body is behind it, +1 where it is ahead
	Run      []Space // of a band or towel: what it runs along
	Anchored bool    // its first end is fixed to something
}
