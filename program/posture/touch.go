package posture

import (
	"math"

	"gatepost/program"
)

// round is a part of the body that can touch: a middle with the flesh around it, m.
type round struct {
	at space
	r  float64
}

// Flesh around joints, shares of stature: the half thicknesses that package figure draws.
const (
	seatRound = .058
	backRound = .066
	chest     = .060
	headRound = .054
	kneeRound = .022
	kneeLies  = .028 // where the shin lies as well
	shinRound = .022
	elbowLies = .024
	wristLies = .020
	fistRound = .022
	heelLies  = heelRound
)

// spineAt is a place along the back, from the shoulders (0) to the hips (1).
func spineAt(p *program.Placed, t float64) space {
	chord := minus(p.Hip, p.Top)
	bulge := t * (1 - t) * math.Sqrt(dot(chord, chord)) * p.Spine / 2
	return along(along(p.Top, chord, t), p.Front, -bulge)
}

// bowed is from where on a back lies on its curve and no longer from shoulders to hips, rad
// (our judgement).
const bowed = 12 * math.Pi / 180

// rounds are what touches of a part, on one side.
func rounds(p *program.Placed, part program.Part, side int) []round {
	h, a, l := p.Height, &p.Arms[side], &p.Legs[side]
	one := func(at space, r float64) []round { return []round{{at, r * h}} }
	switch part {
	case program.PartHands:
		if a.Hand == program.ClosedHand {
			return one(a.Grip, 0)
		}
		return one(a.Wrist, 0)
	case program.PartFists:
		return one(a.Grip, fistRound)
	case program.PartForearms:
		return []round{{a.Elbow, elbowLies * h}, {a.Wrist, wristLies * h}}
	case program.PartElbows:
		return one(a.Elbow, elbowLies)
	case program.PartFeet:
		return []round{{l.Heel, heelLies * h}, {l.Ball, ballRound * h}}
	case program.PartToes:
		return one(l.Ball, ballRound)
	case program.PartTips:
		return one(l.Toe, tipRound)
	case program.PartHeels:
		return one(l.Heel, heelLies)
	case program.PartShins:
		return []round{{l.Knee, kneeLies * h}, {l.Ankle, shinRound * h}}
	case program.PartKnees:
		return one(l.Knee, kneeRound)
	case program.PartThighs:
		return one(mix(.5, l.Hip, .5, l.Knee), .044)
	case program.PartBack:
		if p.Spine > bowed {
			return one(spineAt(p, .62), .058)
		}
		return []round{{spineAt(p, .24), backRound * h}, {spineAt(p, 1), seatRound * h}}
	case program.PartShoulders:
		return one(spineAt(p, .15), backRound)
	case program.PartBelly:
		return []round{{spineAt(p, .24), chest * h}, {spineAt(p, 1), .044 * h}}
	case program.PartHead:
		return one(along(p.Crown, unit(minus(p.C7, p.Crown)), .068*h), headRound)
	case program.PartCrown:
		return one(p.Crown, 0)
	}
	return one(p.Hip, seatRound)
}

func unit(p space) space {
	d := math.Sqrt(dot(p, p))
	if d == 0 {
		return p
	}
	return mix(1/d, p, 0, p)
}

// solid are the parts that go through no floor and no wall.
func solid(p *program.Placed) []round {
	all := []round{rounds(p, program.PartHead, 0)[0], {spineAt(p, .24), chest * p.Height}, {spineAt(p, .6), .054 * p.Height}, {p.Hip, .044 * p.Height}}
	for i := range p.Arms {
		a, l := &p.Arms[i], &p.Legs[i]
		all = append(all, round{a.Elbow, .018 * p.Height}, round{l.Knee, .021 * p.Height}, round{l.Heel, heelLies * p.Height}, round{l.Ball, ballRound * p.Height}, round{l.Toe, tipRound * p.Height})
		if a.Hand != program.FlatHand {
			all = append(all, round{a.Wrist, .015 * p.Height}, round{a.Grip, .018 * p.Height})
		}
	}
	return all
}
