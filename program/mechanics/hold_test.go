package mechanics

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// With gravity alone the centre of mass lies over the support, or under it.
func TestFreeHoldsHaveTheirCoMOverTheHands(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := Solve(anyBody(t), anyPose(t), anySupport(t), nil)
		if !h.Unbalanced && math.Abs(h.Joints.CoM.X) > 1e-12 {
			t.Errorf("centre of mass %v m ahead of the support", h.Joints.CoM.X)
		}
	})
}

func TestTorqueFallsWithTheStraddle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBody(t)
		narrow := rapid.Float64Range(0, 80).Draw(t, "narrow")
		wide := narrow + rapid.Float64Range(0.1, 10).Draw(t, "more")
		knee := rapid.Float64Range(0, 90).Draw(t, "knee")
		less, more := Solve(b, legs(0, wide, knee), onBar, nil), Solve(b, legs(0, narrow, knee), onBar, nil)
		if less.Torque >= more.Torque || less.Lean >= more.Lean {
			t.Errorf("%v°: %v N·m, %v°: %v N·m", narrow, more.Torque, wide, less.Torque)
		}
	})
}

func TestTorqueFallsWithRoundingAndDepression(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, p := anyBody(t), anyPose(t)
		p.Pitch = 0
		rounder, lower := p, p
		rounder.Rounding += 0.02
		lower.Depression += 0.02
		plain := Solve(b, p, onBar, nil).Torque
		if Solve(b, rounder, onBar, nil).Torque >= plain || Solve(b, lower, onBar, nil).Torque >= plain {
			t.Error("rounding or depression did not lower the torque")
		}
	})
}

// Torque is a mass times a length, lean is neither: twice the mass doubles the
// torque, and a body half as large again leans the same.
func TestScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPose(t)
		p.Depression = 0
		small, _ := NewBody(Female, 50, 1.4, 1.4, 0)
		heavy, _ := NewBody(Female, 100, 1.4, 1.4, 0)
		tall, _ := NewBody(Female, 50, 2.1, 2.1, 0)
		a, m, l := Solve(small, p, onBar, nil), Solve(heavy, p, onBar, nil), Solve(tall, p, onBar, nil)
		if math.Abs(m.Torque-2*a.Torque) > 1e-9 || math.Abs(l.Torque-1.5*a.Torque) > 1e-9 {
			t.Errorf("torques %v, twice the mass %v, half as tall again %v", a.Torque, m.Torque, l.Torque)
		}
		if math.Abs(m.Lean-a.Lean) > 1e-9 || math.Abs(l.Lean-a.Lean) > 1e-9 {
			t.Errorf("leans %v %v %v", a.Lean, m.Lean, l.Lean)
		}
	})
}

// Statics do not know up from down: a hanging lever is the supported one with
// heights reversed.
func TestHangingIsThePictureTurnedOver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, p := anyBody(t), anyPose(t)
		below, above := Solve(b, p, onBar, nil), Pose(p)
		above.Pitch = -p.Pitch
		h := Solve(b, above, Support{Hang: true}, nil)
		if math.Abs(h.Torque-below.Torque) > 1e-9 || math.Abs(h.Lean-below.Lean) > 1e-9 ||
			math.Abs(h.HipHeight+below.HipHeight) > 1e-9 || math.Abs(h.Joints.Knees[0].Y+below.Joints.Knees[0].Y) > 1e-9 {
			t.Errorf("supported %+v, hanging %+v", below, h)
		}
	})
}

// In a handstand every joint is stacked over the hands.
func TestHandstandNeedsNoTorque(t *testing.T) {
	h := Solve(mustBody(t, Male, 73, 1.741, 0), Pose{Pitch: math.Pi / 2}, onBar, nil)
	near(t, "torque", h.Torque, 0, 1e-9)
	near(t, "lean", h.Lean, 0, 1e-9)
	if h.Joints.Toes[0].Y < 2 {
		t.Errorf("toes %v m above the grip", h.Joints.Toes[0].Y)
	}
}

// A drawing joins the joints by segments of the client's own lengths.
func TestJointsAreSegmentsApart(t *testing.T) {
	b := mustBody(t, Female, 58, 1.66, 1.68)
	apart := func(p, q Point) float64 { return math.Hypot(p.X-q.X, p.Y-q.Y) }
	j := Solve(b, legs(120, 0, 150), Support{}, nil).Joints
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"fingers to wrist", j.Fingers.X - j.Wrist.X, b.FingerTip},
		{"wrist to elbow", apart(j.Wrist, j.Elbow), b.Forearm.Length},
		{"elbow to shoulder", apart(j.Elbow, j.Shoulder), b.UpperArm.Length},
		{"shoulder to C7", j.C7.X - j.Shoulder.X, b.Neck},
		{"C7 to crown", j.Crown.X - j.C7.X, b.Head.Length},
		{"shoulder to hip", j.Shoulder.X - j.Hip.X, b.Trunk.Length},
		{"hip to knee", apart(j.Hip, j.Knees[0]), b.Thigh.Length},
		{"knee to ankle", apart(j.Knees[0], j.Ankles[0]), b.Shank.Length},
		{"ankle to toe", apart(j.Ankles[0], j.Toes[0]), b.Foot.Length},
	} {
		near(t, c.what, c.got, c.want, 1e-12)
	}
	straight := Solve(b, Pose{}, onBar, nil).Joints
	near(t, "crown to sole", straight.Crown.X-straight.Ankles[1].X+b.AnkleHeight, b.Height, 1e-12)
	near(t, "grip in line with the arm", apart(straight.Wrist, Point{}), b.Hand.CoM, 1e-12)
}

func TestFlexedHipsPointToTheBelly(t *testing.T) {
	b := mustBody(t, Female, 58, 1.66, 1.68)
	planche, lever := Solve(b, legs(90, 0, 0), onBar, nil).Joints, Solve(b, legs(90, 0, 0), Support{Hang: true}, nil).Joints
	if !(planche.Knees[0].Y < planche.Hip.Y && lever.Knees[0].Y > lever.Hip.Y) {
		t.Error("the belly faces down over the hands and up under them")
	}
}

func TestArmsTooShortToBalance(t *testing.T) {
	b := mustBody(t, Male, 73, 1.741, 1.2)
	h := Solve(b, Pose{}, Support{}, nil)
	if !h.Unbalanced || h.Lean != math.Pi/2 {
		t.Errorf("lean %v, unbalanced %v", h.Lean, h.Unbalanced)
	}
	near(t, "torque all the same", h.Torque/(73*Gravity*1.741), 0.2379, 0.00006)
}

func anyPose(t *rapid.T) Pose {
	leg := func() Leg {
		return Leg{
			Hip:       rapid.Float64Range(0, 125).Draw(t, "hip") * degree,
			Abduction: rapid.Float64Range(0, 70).Draw(t, "abduction") * degree,
			Knee:      rapid.Float64Range(0, 150).Draw(t, "knee") * degree,
		}
	}
	return Pose{
		Legs:       [2]Leg{leg(), leg()},
		Rounding:   rapid.Float64Range(0, 0.1).Draw(t, "rounding"),
		Depression: rapid.Float64Range(0, 0.04).Draw(t, "depression"),
		Pitch:      rapid.Float64Range(-20, 40).Draw(t, "pitch") * degree,
	}
}

func anySupport(t *rapid.T) Support {
	return rapid.SampledFrom([]Support{{}, {Grip: true}, {Hang: true}, {AtWrist: true}, {Ahead: 0.03}}).Draw(t, "support")
}

func TestNothingToHold(t *testing.T) {
	if h := Solve(Body{}, Pose{}, Support{}, nil); !h.Unbalanced {
		t.Errorf("a body without mass balances: %+v", h)
	}
}

// Knees and toes stay two centimetres above the floor (our judgement of what a
// person can train over), a bent knee's own flesh counted: by girth, 37 cm of an
// adult of 1.74 m (common practice), about four. A man of 1.80 m with short arms has
// to raise the hips for an advanced tuck on the flat floor; on parallettes of 10 cm
// nobody here does, and the torques are those of the level body.
func TestHipsRiseOverTheFloor(t *testing.T) {
	advanced := Pose{Legs: Both(Leg{Hip: math.Pi / 2, Knee: math.Pi / 2}), Rounding: 0.04, Depression: 0.02}
	for name, c := range map[string]struct {
		body   Body
		s      Support
		raised bool
	}{
		"short arms, floor":       {mustBody(t, Male, 60, 1.80, 1.70), Support{Clear: true}, true},
		"short arms, parallettes": {mustBody(t, Male, 60, 1.80, 1.70), Support{Clear: true, Grip: true, Height: 0.10}, false},
		"long arms, floor":        {mustBody(t, Female, 58, 1.60, 1.72), Support{Clear: true}, false},
		"nobody asked":            {mustBody(t, Male, 60, 1.80, 1.70), Support{}, false},
	} {
		h, level := Solve(c.body, advanced, c.s, nil), c.s
		level.Clear = false
		free := Solve(c.body, advanced, level, nil)
		lowest := min(h.Joints.Knees[0].Y-0.04*c.body.Height/1.74, h.Joints.Toes[0].Y) + c.s.Height
		switch {
		case c.raised && (lowest < 0.019 || lowest > 0.025 || h.Pitch < 0.1 || h.Joints.Hip.Y <= h.Joints.Shoulder.Y):
			t.Errorf("%s: lowest point at %.3f m, hips at %.3f, shoulders at %.3f", name, lowest, h.Joints.Hip.Y, h.Joints.Shoulder.Y)
		case !c.raised && h != free:
			t.Errorf("%s: raised to a pitch of %.3f", name, h.Pitch)
		}
		near(t, name+": balance", h.Joints.CoM.X, 0, 1e-9)
	}
}

// Band and floor together: the balance holds, and the knees clear it.
func TestHipsRiseUnderABand(t *testing.T) {
	body := mustBody(t, Male, 60, 1.80, 1.70)
	advanced := Pose{Legs: Both(Leg{Hip: math.Pi / 2, Knee: math.Pi / 2}), Rounding: 0.04, Depression: 0.02}
	rig := &Rig{Bands: []Curve{{A: 20, B: 5, Rest: 1, Longest: 2}}, Anchor: 2.15}
	h := Solve(body, advanced, Support{Clear: true}, rig)
	if lowest := min(h.Joints.Knees[0].Y-kneeDepth*1.80, h.Joints.Toes[0].Y); h.Help <= 0 || h.Unbalanced || lowest < 0.0199 {
		t.Errorf("help %.1f N, lowest point %.4f m", h.Help, lowest)
	}
}
