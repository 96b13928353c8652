package posture

import (
	"math"

	"gatepost/program"
	"gatepost/program/mechanics"
)

// carried reports whether feet, a grip or hands alone carry the body. What else it leans on
// or is pulled by is not weighed.
func (p *placing) carried() bool {
	for i := range p.touch {
		t := &p.touch[i]
		for _, part := range t.Parts {
			of, _ := part.Side()
			standing := t.Kind != program.ThingWall && (of == program.PartFeet || of == program.PartToes || of == program.PartHands)
			hanging := t.Kind == program.ThingBar || t.Kind == program.ThingRings
			if !standing && !hanging && t.Kind != program.ThingDumbbells {
				return false
			}
		}
	}
	return len(p.carry) > 0
}

// missBalance is how far the centre of mass is beside what carries it.
func (p *placing) missBalance(body *laid, s *squares) {
	low, high := p.carry[0], p.carry[0]
	x := func(s spotOf) float64 { return s.at(&body.Placed).X }
	for _, s := range p.carry {
		if x(s) < x(low) {
			low = s
		}
		if x(s) > x(high) {
			high = s
		}
	}
	com, edge := 0.0, high
	p.eachMass(body, func(_ landmark, _ int, at space, share float64) { com += share * at.X })
	off := math.Max(0, com-x(high))
	if com < x(low) {
		off, edge = com-x(low), low
	}
	if off == 0 {
		return
	}
	if s.slopes {
		p.eachMass(body, func(on landmark, side int, at space, share float64) { body.goes(s, on, side, at, alongX, steady*share) })
		body.spotGoes(s, edge, alongX, -steady)
	}
	s.add(steady * off)
}

// eachMass goes through the segments: the place that each goes along with, its centre and
// its share of all mass.
func (p *placing) eachMass(body *laid, do func(on landmark, side int, at space, share float64)) {
	b := p.body
	add := func(on landmark, side int, m mechanics.Segment, from, to space) {
		do(on, side, mix(1-m.CoM/m.Length, from, m.CoM/m.Length, to), m.Mass/b.Mass)
	}
	add(inHead, 0, b.Head, body.C7, body.Crown)
	add(onBack, 0, b.Trunk, body.Top, body.Hip)
	for i := range body.Arms {
		a, l := &body.Arms[i], &body.Legs[i]
		add(atElbow, i, b.UpperArm, a.Shoulder, a.Elbow)
		add(atWrist, i, b.Forearm, a.Elbow, a.Wrist)
		add(atGrip, i, b.Hand, a.Wrist, a.Grip)
		add(atKnee, i, b.Thigh, l.Hip, l.Knee)
		add(atAnkle, i, b.Shank, l.Knee, l.Ankle)
		add(atToe, i, b.Foot, l.Ankle, l.Toe)
	}
}
