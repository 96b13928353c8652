package mechanics

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Source: common practice, a scale under the toes in a lean on flat hands: 26 %
// of body weight with the arms vertical, 13 to 15 % with the shoulder 20 cm
// ahead of the wrist, nothing at 35 cm (1.66 m tall) or 41 cm (1.81 m). The sex
// is not given with those heights; women's and men's tables are taken.
func TestToesOnAScale(t *testing.T) {
	for _, c := range []struct {
		name  string
		body  Body
		limit float64
	}{
		{"1.66 m", mustBody(t, Female, 58, 1.66, 0), 0.35},
		{"1.81 m", mustBody(t, Male, 75, 1.81, 0), 0.41},
	} {
		near(t, c.name+", arms vertical", c.body.PlancheLean(0, Support{}).Toes, 0.26, 0.015)
		near(t, c.name+", 20 cm", c.body.PlancheLean(0.20, Support{}).Toes, 0.14, 0.02)
		near(t, c.name+", limit", c.body.LeanLimit(Support{}), c.limit, 0.015)
	}
}

// Source: Eckel et al. 2017, hands carry 72 % of body weight at the top of a
// push-up. The feet there stand on their balls, here on pointed toes.
func TestTopOfAPushUp(t *testing.T) {
	near(t, "hands", mustBody(t, Unspecified, 70, 1.74, 0).PlancheLean(0, Support{}).Hands, 0.72, 0.04)
}

// At the limit a lean has become a free hold of the same straight, sloping body.
func TestLeanEndsInAFreeHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBody(t)
		s := rapid.SampledFrom([]Support{{AtWrist: true}, {Grip: true}, {Grip: true, Height: 0.1}, {Ahead: 0.03}}).Draw(t, "support")
		limit := b.LeanLimit(s)
		lean := b.PlancheLean(limit, s)
		if math.Abs(lean.Toes) > 1e-9 {
			t.Fatalf("toes carry %v at the limit %v", lean.Toes, limit)
		}
		free := Solve(b, Pose{Rounding: 0.02, Depression: 0.02, Pitch: lean.Pitch}, s, nil)
		if math.Abs(free.Torque-lean.Torque) > 1e-6 || math.Abs(free.ShoulderAhead-limit) > 1e-9 {
			t.Errorf("lean %+v at %v, free %+v", lean, limit, free)
		}
	})
}

func TestFurtherLeansWeighMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBody(t)
		limit := b.LeanLimit(Support{})
		near := rapid.Float64Range(0, 0.95).Draw(t, "near") * limit
		far := near + 0.05*limit
		n, f := b.PlancheLean(near, Support{}), b.PlancheLean(far, Support{})
		if !(f.Torque > n.Torque && f.Toes < n.Toes && f.Arm > n.Arm && f.ShoulderHeight < n.ShoulderHeight) {
			t.Errorf("%v m: %+v\n%v m: %+v", near, n, far, f)
		}
		if math.Abs(n.Toes+n.Hands-1) > 1e-12 {
			t.Errorf("toes %v and hands %v do not carry the body", n.Toes, n.Hands)
		}
	})
}

// The toes stay on the floor: raised hands tilt the body more.
func TestRaisedHands(t *testing.T) {
	b := mustBody(t, Female, 58, 1.66, 0)
	flat, raised := b.PlancheLean(0.2, onBar), b.PlancheLean(0.2, Support{Grip: true, Height: 0.10})
	line := b.Trunk.Length*0.98 - 0.02 + b.Thigh.Length + b.Shank.Length + b.Foot.Length
	near(t, "sine of the flat slope", -math.Sin(flat.Pitch)*line, flat.ShoulderHeight, 1e-12)
	near(t, "sine of the raised slope", -math.Sin(raised.Pitch)*line, raised.ShoulderHeight+0.10, 1e-12)
	near(t, "shoulder above the grip", raised.ShoulderHeight, flat.ShoulderHeight, 1e-12)
}

func TestNobodyLeansHanging(t *testing.T) {
	b := mustBody(t, Female, 58, 1.66, 0)
	if b.PlancheLean(0.2, Support{Hang: true}) != b.PlancheLean(0.2, Support{}) {
		t.Error("a lean stands on its hands whatever the support says")
	}
}

func TestLeanBeyondTheArms(t *testing.T) {
	b := mustBody(t, Female, 58, 1.66, 0)
	for _, ahead := range []float64{-2, 2} {
		if l := b.PlancheLean(ahead, Support{}); math.IsNaN(l.Torque) || l.ShoulderHeight < 0 {
			t.Errorf("%v m: %+v", ahead, l)
		}
	}
}

// The drawn lean is the weighed one: toes on the floor, the arm and the slope as
// reported, and hands and toes sharing the weight on either side of the centre
// of mass (the lever law).
func TestJointsOfALean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBody(t)
		s := rapid.SampledFrom([]Support{{}, {Grip: true, Height: 0.1}, {Ahead: 0.03}}).Draw(t, "support")
		ahead := rapid.Float64Range(0, 0.9).Draw(t, "part") * b.LeanLimit(s)
		lean, j := b.PlancheLean(ahead, s), b.LeanJoints(ahead, s)
		if math.Abs(j.Toes[0].Y+s.Height) > 1e-9 || math.Abs(j.Shoulder.Y-lean.ShoulderHeight) > 1e-9 {
			t.Errorf("toes %v, shoulder %v, lean %+v", j.Toes[0], j.Shoulder, lean)
		}
		if carried := j.CoM.X / j.Toes[0].X; math.Abs(carried-lean.Toes) > 1e-9 {
			t.Errorf("the lever law gives the toes %v, the lean %v", carried, lean.Toes)
		}
	})
}

// Toes on a scale: the lever law again; with nothing on the scale, a free hold.
func TestToesCarriedByAScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, s := anyBody(t), anySupport(t)
		s.Hang = false
		p := legs(120, 0, 150)
		if free := Solve(b, p, s, nil); free.Unbalanced || math.Abs(b.ToesCarried(p, s, 0).CoM.X-free.Joints.CoM.X) > 1e-9 {
			t.Errorf("an empty scale moves the body")
		}
		force := rapid.Float64Range(5, 0.25*b.Mass*Gravity).Draw(t, "force")
		j := b.ToesCarried(p, s, force)
		if got := b.segmentMass() * Gravity * j.CoM.X / j.Toes[0].X; math.Abs(got-force) > 1e-6 {
			t.Errorf("the lever law gives the toes %v N, the scale reads %v N", got, force)
		}
	})
}
