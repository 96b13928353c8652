package posture

import (
	"math"

	"gatepost/program"
	"gatepost/program/mechanics"
)

// overhang is how far a body's centre of mass is beside what carries it, m, where that is
// only its feet, or only its grip. What else it leans on or is pulled by is not weighed.
func (p *placing) overhang(body *program.Placed) float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for i := range p.touch {
		t := &p.touch[i]
		for _, part := range t.Parts {
			of, _ := part.Side()
			standing := t.Kind != program.ThingWall && (of == program.PartFeet || of == program.PartToes)
			hanging := t.Kind == program.ThingBar || t.Kind == program.ThingRings
			if !standing && !hanging && t.Kind != program.ThingDumbbells {
				return 0
			}
		}
		p.eachRound(t, body, func(_ program.Part, _, _ int, at round) {
			low, high = math.Min(low, at.at.X), math.Max(high, at.at.X)
		})
	}
	if low > high {
		return 0
	}
	com := centreOfMass(p.body, body)
	return math.Max(0, low-com) + math.Max(0, com-high)
}

// centreOfMass is that of a placed body, along the floor.
func centreOfMass(b *mechanics.Body, p *program.Placed) float64 {
	moment, mass := 0.0, 0.0
	add := func(s mechanics.Segment, from, to space) {
		moment += s.Mass * (from.X + (to.X-from.X)*s.CoM/s.Length)
		mass += s.Mass
	}
	add(b.Head, p.C7, p.Crown)
	add(b.Trunk, p.Top, p.Hip)
	for i := range p.Arms {
		a, l := &p.Arms[i], &p.Legs[i]
		add(b.UpperArm, a.Shoulder, a.Elbow)
		add(b.Forearm, a.Elbow, a.Wrist)
		add(b.Hand, a.Wrist, a.Grip)
		add(b.Thigh, l.Hip, l.Knee)
		add(b.Shank, l.Knee, l.Ankle)
		add(b.Foot, l.Ankle, l.Toe)
	}
	return moment / mass
}
