package program

import "strings"

// Figure is one drawing of an exercise as its page says it: what the body rests on or
// holds, and the angles that matter. The second figure of a page is like the first but for
// what it says. Package posture places it on a body.
type Figure struct {
	View   View
	Angles map[Bend]float64    // of both sides, and of the trunk: rad; ShoulderUp and ShoulderAhead m
	Sides  [2]map[Bend]float64 // of the right and of the left, where they differ
	Things []Thing             // what is touched or held, the floor among it
	Slides []Part              // touch the same thing in both figures, and not at the same place
	Moves  []Part              // an arrow says where they came from
	Circle []Part              // an arrow goes round them, or round a forearm's length
	Press  []Part              // an arrow goes from them into what they touch
	Place  Place               // where it is written
}

// View says where a figure is seen from.
type View string

const (
	FromSide  View = "side"  // the right side; also the meaning of ""
	FromFront View = "front" // by somebody whom the body looks at when it stands
	FromBack  View = "back"
	FromAbove View = "above"
	FromHigh  View = "high" // the front and above, between the two
)

// Bend is an angle of a figure. All are nothing in who stands straight, arms hanging,
// and grow forward, or as the joint bends.
type Bend string

const (
	BendTrunk Bend = "trunk" // of the line from hips to shoulders, forward from upright: 90° face down, −90° face up, 180° upside down
	BendSpine Bend = "spine" // how far the chest is bent forward against the pelvis
	BendNeck  Bend = "neck"  // of the head, chin to the chest

	BendShoulder Bend = "shoulder" // of the arm from hanging forward: 90° ahead, 180° overhead
	BendOut      Bend = "out"      // of the arm, away to its side
	BendTurn     Bend = "turn"     // of the upper arm about itself, so that a bent forearm swings inward
	BendElbow    Bend = "elbow"
	BendWrist    Bend = "wrist"   // palm to the forearm
	BendFingers  Bend = "fingers" // of a hand that lies, away to its side from straight ahead
	BendHip      Bend = "hip"
	BendApart    Bend = "apart" // of the leg, away to its side
	BendKnee     Bend = "knee"
	BendAnkle    Bend = "ankle" // toes pointed; a foot square to the shank is nothing

	ShoulderUp    Bend = "shrug" // m, of the shoulders toward the ears
	ShoulderAhead Bend = "reach" // m, of the shoulders forward round the ribs
)

// OfTheTrunk reports whether a joint is one of the trunk, and so of no side.
func (j Bend) OfTheTrunk() bool { return j == BendTrunk || j == BendSpine || j == BendNeck }

// Part is a part of the body that touches something: "hands", or of one side "left hand".
type Part string

const (
	PartHands     Part = "hands"   // palms; on a bar, a ring or a handle the fists around it
	PartFingers   Part = "fingers" // their whole length, the palm lifted
	PartFists     Part = "fists"
	PartForearms  Part = "forearms"
	PartElbows    Part = "elbows"
	PartFeet      Part = "feet" // whole soles
	PartToes      Part = "toes" // balls of the feet, the toes bent
	PartTips      Part = "tips" // of pointed feet
	PartHeels     Part = "heels"
	PartShins     Part = "shins" // and knees
	PartKnees     Part = "knees"
	PartSeat      Part = "seat"
	PartBack      Part = "back"
	PartShoulders Part = "shoulders" // the upper back
	PartBelly     Part = "belly"     // and chest
	PartHead      Part = "head"      // its back, or its front
	PartCrown     Part = "crown"
	PartThighs    Part = "thighs" // their middle, behind
)

// single are the parts that come in pairs, as one of them is called.
var single = []struct {
	one  string
	both Part
}{{"hand", PartHands}, {"fingers", PartFingers}, {"fist", PartFists}, {"forearm", PartForearms}, {"elbow", PartElbows}, {"foot", PartFeet}, {"toes", PartToes},
	{"tip", PartTips}, {"heel", PartHeels}, {"shin", PartShins}, {"knee", PartKnees}, {"thigh", PartThighs}}

// Parts lists every part, for messages that offer the right word.
func Parts() []Part {
	all := []Part{PartSeat, PartBack, PartShoulders, PartBelly, PartHead, PartCrown}
	for _, s := range single {
		all = append(all, s.both, Part("right "+s.one), Part("left "+s.one))
	}
	return all
}

// Side is what a part is one or two of, and the sides it means: 0 right, 1 left.
func (p Part) Side() (of Part, sides []int) {
	side, one, ok := strings.Cut(string(p), " ")
	for _, s := range single {
		switch {
		case s.both == p:
			return p, []int{0, 1}
		case ok && s.one == one && side == "left":
			return s.both, []int{1}
		case ok && s.one == one:
			return s.both, []int{0}
		}
	}
	return p, []int{0}
}

// Thing is something around a body, with the parts that touch it. Its lengths are for
// somebody of 1.74 m; for others it is larger or smaller as they are. Without parts, in a
// second figure, it stands where it stood and nothing touches it.
type Thing struct {
	Kind   ThingKind
	Parts  []Part
	High   float64 // m above the floor, of what is touched of it; of a band its anchor; 0: as high as the parts are
	Ahead  float64 // m, of a band's anchor from where the body is first touched
	Across bool    // of dumbbells: held palms up or down, and seen from the end
	Gone   bool    // what the first figure has, the second has not
}

// ThingKind is what may stand or hang around a body.
type ThingKind string

const (
	ThingFloor     ThingKind = "floor"
	ThingWall      ThingKind = "wall"
	ThingBox       ThingKind = "box" // or a bench, a chair, a step
	ThingCushion   ThingKind = "cushion"
	ThingBlocks    ThingKind = "blocks" // low, under hands or feet
	ThingScale     ThingKind = "scale"
	ThingTable     ThingKind = "table" // held by its edge from below
	ThingBar       ThingKind = "bar"
	ThingRings     ThingKind = "rings"
	ThingHandles   ThingKind = "handles" // parallettes
	ThingDumbbells ThingKind = "dumbbells"
	ThingBand      ThingKind = "band"  // from an anchor to a part, or from part to part
	ThingTowel     ThingKind = "towel" // likewise
)

// Things lists every kind, in the order they are drawn.
var Things = []ThingKind{ThingFloor, ThingWall, ThingBox, ThingCushion, ThingBlocks, ThingScale, ThingTable, ThingBar, ThingRings, ThingHandles, ThingDumbbells, ThingBand, ThingTowel}

// Gripped reports whether hands close around it.
func (k ThingKind) Gripped() bool {
	return k == ThingTable || k == ThingBar || k == ThingRings || k == ThingHandles
}

// Carried reports whether it goes where the hands go, and stands nowhere.
func (k ThingKind) Carried() bool { return k == ThingDumbbells || k == ThingBand || k == ThingTowel }
