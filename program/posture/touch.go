package posture

import (
	"math"

	"gatepost/program"
)

// landmark is a place of the body that touches things, or that goes through none.
type landmark int

const (
	onBack landmark = iota // on the curve of the back, so far along it
	inHead                 // under the crown
	atElbow
	atWrist
	atGrip
	atKnuckle // of a hand that lies on something
	inThigh   // its middle
	atKnee
	atAnkle
	atHeel
	atBall
	atToe
)

// spot is a landmark with the flesh around it.
type spot struct {
	landmark landmark
	flesh    float64 // share of stature
	down     float64 // of what is on the back from the shoulders (0) to the hips (1); of the head share of stature
}

// round is a spot of a body that is placed, m.
type round struct {
	at space
	r  float64
}

// Flesh around joints, shares of stature: the half thicknesses that package figure draws.
const (
	seatRound  = .058
	backRound  = .066
	chest      = .060
	headRound  = .054
	crownRound = .061
	kneeRound  = .022
	kneeLies   = .028 // where the shin lies as well
	shinRound  = .022
	elbowLies  = .024
	knuckles   = .009
	wristLies  = .020
	fistRound  = .025
	heelLies   = heelRound
)

// bowed is from where on a back lies on its curve and no longer from shoulders to hips, rad
// (our judgement).
const bowed = 12 * math.Pi / 180

var (
	closed   = []spot{{landmark: atGrip}}
	curled   = []spot{{onBack, .058, .62}}
	touching = map[program.Part][]spot{
		program.PartHands:     {{landmark: atWrist}},
		program.PartFingers:   {{atKnuckle, knuckles, 0}},
		program.PartFists:     {{atGrip, fistRound, 0}},
		program.PartForearms:  {{atElbow, elbowLies, 0}, {atWrist, wristLies, 0}},
		program.PartElbows:    {{atElbow, elbowLies, 0}},
		program.PartFeet:      {{atHeel, heelLies, 0}, {atBall, ballRound, 0}},
		program.PartToes:      {{atBall, ballRound, 0}},
		program.PartTips:      {{atToe, tipRound, 0}},
		program.PartHeels:     {{atHeel, heelLies, 0}},
		program.PartShins:     {{atKnee, kneeLies, 0}, {atAnkle, shinRound, 0}},
		program.PartKnees:     {{atKnee, kneeRound, 0}},
		program.PartThighs:    {{inThigh, .044, 0}},
		program.PartSeat:      {{onBack, seatRound, 1}},
		program.PartBack:      {{onBack, backRound, .24}, {onBack, seatRound, 1}},
		program.PartShoulders: {{onBack, backRound, .15}},
		program.PartBelly:     {{onBack, chest, .24}, {onBack, .052, 1}}, // thighs lie as well
		program.PartHead:      {{inHead, headRound, .068}},
		program.PartCrown:     {{inHead, crownRound, crownRound}},
	}

	// What goes through no floor and no wall: of the trunk, of a side, and of a hand that
	// does not lie flat.
	solidTrunk = []spot{{inHead, headRound, .068}, {onBack, chest, .24}, {onBack, .054, .6}, {onBack, .044, 1}}
	solidSide  = []spot{{atElbow, .018, 0}, {atKnee, .021, 0}, {atHeel, heelLies, 0}, {atBall, ballRound, 0}, {atToe, tipRound, 0}}
	solidHand  = []spot{{atWrist, .015, 0}, {atGrip, .018, 0}}
)

// spotOf is a spot of one side.
type spotOf struct {
	spot
	side int
}

// spotsOf are what touches of a part on one side.
func (f *form) spotsOf(part program.Part, side int) []spot {
	switch {
	case part == program.PartHands && f.hands[side] == program.ClosedHand:
		return closed
	case part == program.PartBack && f.spine > bowed:
		return curled
	}
	return touching[part]
}

// round is where a spot is.
func (s spotOf) round(p *program.Placed) round { return round{s.at(p), s.flesh * p.Height} }

func (s spotOf) at(p *program.Placed) space {
	a, l := &p.Arms[s.side], &p.Legs[s.side]
	switch s.landmark {
	case onBack:
		return spineAt(p, s.down)
	case inHead:
		return along(p.Crown, unit(minus(p.C7, p.Crown)), s.down*p.Height)
	case atElbow:
		return a.Elbow
	case atWrist:
		return a.Wrist
	case atGrip:
		return a.Grip
	case atKnuckle:
		return a.Knuckle
	case inThigh:
		return mix(.5, l.Hip, .5, l.Knee)
	case atKnee:
		return l.Knee
	case atAnkle:
		return l.Ankle
	case atHeel:
		return l.Heel
	case atBall:
		return l.Ball
	}
	return l.Toe
}

// spineAt is a place along the back, from the shoulders (0) to the hips (1).
func spineAt(p *program.Placed, t float64) space {
	chord := minus(p.Hip, p.Top)
	bulge := t * (1 - t) * math.Sqrt(dot(chord, chord)) * p.Spine / 2
	return along(along(p.Top, chord, t), p.Front, -bulge)
}

func unit(p space) space {
	d := math.Sqrt(dot(p, p))
	if d == 0 {
		return p
	}
	return mix(1/d, p, 0, p)
}

// solids are what goes through no floor and no wall.
func (f *form) solids() (all []spotOf) {
	add := func(side int, spots []spot) {
		for _, s := range spots {
			all = append(all, spotOf{s, side})
		}
	}
	add(0, solidTrunk)
	for side, hand := range f.hands {
		if add(side, solidSide); hand == program.OpenHand || hand == program.ClosedHand {
			add(side, solidHand)
		}
	}
	return all
}
