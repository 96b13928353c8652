package mechanics

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Every hold balances: moments are summed again here, segment by segment, from
// the joints that a drawing would use.
func TestHoldsBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, p, s := anyBody(t), anyPose(t), anySupport(t)
		var rig *Rig
		if rapid.Bool().Draw(t, "banded") {
			rig = anyRig(t)
			rig.At = rapid.SampledFrom([]Place{AtHip, AtThigh, AtAnkle}).Draw(t, "at")
		}
		h := Solve(b, p, s, rig)
		if h.Unbalanced {
			return
		}
		weight := b.Mass * Gravity
		if m := momentAbout(Point{}, everything(b, p, h, s), h, rig); math.Abs(m) > 1e-8*weight {
			t.Errorf("moment about the support %v N·m", m)
		}
		if m := momentAbout(h.Joints.Shoulder, withoutArms(b, p, h), h, rig); math.Abs(m-h.Torque) > 1e-8*weight {
			t.Errorf("torque %v, moment about the shoulder %v", h.Torque, m)
		}
	})
}

// weight is a mass at a place.
type weight struct {
	mass float64
	at   Point
}

func between(mass float64, from, to Point, share float64) weight {
	return weight{mass, Point{from.X + share*(to.X-from.X), from.Y + share*(to.Y-from.Y)}}
}

func withoutArms(b Body, p Pose, h Hold) []weight {
	j := h.Joints
	// Depression draws the shoulder down the trunk, so the trunk starts above it.
	span := b.Trunk.Length*(1-p.Rounding) - p.Depression
	start := between(0, j.Hip, j.Shoulder, (span+p.Depression)/span).at
	w := []weight{{b.Head.Mass, j.Head}, between(b.Trunk.Mass, start, j.Hip, b.Trunk.CoM/b.Trunk.Length)}
	for i := range j.Knees {
		w = append(w,
			between(b.Thigh.Mass, j.Hip, j.Knees[i], b.Thigh.CoM/b.Thigh.Length),
			between(b.Shank.Mass, j.Knees[i], j.Ankles[i], b.Shank.CoM/b.Shank.Length),
			between(b.Foot.Mass, j.Ankles[i], j.Toes[i], b.Foot.CoM/b.Foot.Length))
	}
	return w
}

func everything(b Body, p Pose, h Hold, s Support) []weight {
	j := h.Joints
	hand := weight{2 * b.Hand.Mass, Point{X: j.Wrist.X + b.Hand.CoM}}
	if s.Grip || s.Hang || s.AtWrist {
		hand.at.X = 0
	}
	return append(withoutArms(b, p, h), hand,
		between(2*b.UpperArm.Mass, j.Shoulder, j.Elbow, b.UpperArm.CoM/b.UpperArm.Length),
		between(2*b.Forearm.Mass, j.Elbow, j.Wrist, b.Forearm.CoM/b.Forearm.Length))
}

// momentAbout sums gravity and bands, positive where it turns the feet down.
func momentAbout(o Point, ws []weight, h Hold, rig *Rig) float64 {
	var m float64
	for _, w := range ws {
		m -= w.mass * Gravity * (w.at.X - o.X)
	}
	if rig == nil {
		return m
	}
	at := h.Joints.Attached
	way := Point{h.Joints.Anchor.X - at.X, h.Joints.Anchor.Y - at.Y}
	distance := math.Hypot(way.X, way.Y)
	for _, c := range rig.Bands {
		f := c.Force(distance-rig.Drop) / distance
		m += (at.X-o.X)*way.Y*f - (at.Y-o.Y)*way.X*f
	}
	return m
}

// Bands up to half of body weight leave one balance to find, whatever the pose:
// the turning moment changes sign once between arms level behind and ahead.
func TestThereIsOneBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, p, s, rig := anyBody(t), anyPose(t), anySupport(t), anyRig(t)
		h := Solve(b, p, s, rig)
		if h.Unbalanced || h.Help > b.Mass*Gravity/2 {
			return
		}
		c := newChain(&b, &p, s)
		changes, before := 0, c.turning(rig, -math.Pi/2) > 0
		for i := 1; i <= 60; i++ {
			now := c.turning(rig, math.Pi*(float64(i)/60-0.5)) > 0
			if now != before {
				changes++
			}
			before = now
		}
		if changes != 1 {
			t.Errorf("%d balances, one of them %+v", changes, h)
		}
	})
}
