package mechanics

import "testing"

var onBar = Support{Grip: true}

// legs returns a pose with two equal legs, angles in degrees.
func legs(hip, abduction, knee float64) Pose {
	return Pose{Legs: Both(Leg{hip * degree, abduction * degree, knee * degree})}
}

// shaped returns the pose with a spine rounded and shoulders drawn down, as in
// the planche road map.
func shaped(p Pose, rounding float64) Pose {
	p.Rounding, p.Depression = rounding, 0.02
	return p
}

// halfLay has one leg straight and one tucked.
func halfLay() Pose {
	return Pose{Legs: [2]Leg{{Hip: 120 * degree, Knee: 150 * degree}, {}}}
}

// Source: values computed before this package was written, by another program
// from de Leva 1996, for a woman of 58 kg, 1.66 m, arm span 1.68 m on a grip.
func TestPlancheStepsOnAGrip(t *testing.T) {
	b := mustBody(t, Female, 58, 1.66, 1.68)
	full := Solve(b, shaped(Pose{}, 0.02), onBar, nil).Torque
	for _, c := range []struct {
		step                string
		pose                Pose
		torque, share, lean float64
	}{
		{"tuck", shaped(legs(120, 0, 150), 0.08), 117.3, 0.593, 21.9},
		{"advanced tuck", shaped(legs(90, 0, 90), 0.04), 148.7, 0.752, 28.2},
		{"one-leg half lay", shaped(halfLay(), 0.04), 159.0, 0.804, 30.3},
		{"open half lay", shaped(legs(0, 50, 90), 0.02), 164.7, 0.833, 31.5},
		{"straddle", shaped(legs(0, 50, 0), 0.02), 175.4, 0.887, 33.8},
		{"full", shaped(Pose{}, 0.02), 197.7, 1, 38.9},
	} {
		h := Solve(b, c.pose, onBar, nil)
		near(t, c.step+", torque", h.Torque, c.torque, 0.06)
		near(t, c.step+", share of full", h.Torque/full, c.share, 0.0006)
		near(t, c.step+", lean°", h.Lean/degree, c.lean, 0.06)
	}
}

// Source: as above, the whole road map, share of the full position. The men's
// are for 73 kg, 1.741 m, span equal to height; shares hardly depend on size.
func TestSharesOfThePlancheRoadMap(t *testing.T) {
	woman, man := mustBody(t, Female, 58, 1.66, 1.68), mustBody(t, Male, 73, 1.741, 0)
	for _, c := range []struct {
		step       string
		pose       Pose
		women, men float64
	}{
		{"tuck", shaped(legs(120, 0, 150), 0.08), 0.593, 0.572},
		{"half-open tuck", shaped(legs(112, 0, 135), 0.07), 0.635, 0.615},
		{"open tuck", shaped(legs(105, 0, 120), 0.06), 0.673, 0.655},
		{"advanced tuck", shaped(legs(90, 0, 90), 0.04), 0.752, 0.737},
		{"one-leg half lay", shaped(halfLay(), 0.04), 0.804, 0.794},
		{"open half lay", shaped(legs(0, 50, 90), 0.02), 0.833, 0.834},
		{"straddle", shaped(legs(0, 50, 0), 0.02), 0.887, 0.884},
		{"closed half lay", shaped(legs(0, 0, 90), 0.02), 0.916, 0.923},
		{"narrow straddle", shaped(legs(0, 30, 0), 0.02), 0.958, 0.956},
	} {
		near(t, c.step+", women", share(woman, c.pose), c.women, 0.001)
		near(t, c.step+", men", share(man, c.pose), c.men, 0.001)
	}
}

// share is a pose's torque over the full position's of the road map.
func share(b Body, p Pose) float64 {
	return Solve(b, p, onBar, nil).Torque / Solve(b, shaped(Pose{}, 0.02), onBar, nil).Torque
}

// winter is Winter's table (2009, Table 4.1, after Dempster 1955) with the
// lengths of Drillis & Contini 1966, without the segments this model has and
// that table lumps: head and trunk are one.
func winter(mass, height float64) Body {
	segment := func(share, length, com float64) Segment {
		return Segment{share * mass, length * height, com * length * height}
	}
	return Body{
		Mass: mass, Height: height,
		Trunk:    segment(0.578, 0.288, 1-0.66),
		UpperArm: segment(0.028, 0.186, 0.436),
		Forearm:  segment(0.016, 0.146, 0.430),
		Hand:     segment(0.006, 0.108, 0.506),
		Thigh:    segment(0.100, 0.245, 0.433),
		Shank:    segment(0.0465, 0.246, 0.433),
		Foot:     segment(0.0145, 0.09, 0.5),
	}
}

// Source: lever values computed elsewhere for three published segment tables,
// no rounding or depression: torque over M g H, and the arm's lean with the
// support at the wrist. That program let the hand go on in the arm's line past
// the wrist, which makes up to 0.15° more.
func TestLeversOfThreeSegmentTables(t *testing.T) {
	men, women, win := mustBody(t, Male, 73, 1.741, 0), mustBody(t, Female, 61.9, 1.735, 0), winter(73, 1.741)
	type value struct{ k, lean float64 }
	for _, c := range []struct {
		name            string
		pose            Pose
		men, women, win value
	}{
		{"full", Pose{}, value{.2379, 52.6}, value{.2229, 48.8}, value{.2188, 44.0}},
		{"straddle 30° each", legs(0, 30, 0), value{.2281, 49.6}, value{.2140, 46.3}, value{.2095, 41.7}},
		{"straddle 45° each", legs(0, 45, 0), value{.2165, 46.3}, value{.2035, 43.4}, value{.1984, 39.0}},
		{"straddle 60° each", legs(0, 60, 0), value{.2013, 42.3}, value{.1898, 39.9}, value{.1841, 35.7}},
		{"half lay", legs(0, 0, 90), value{.2205, 47.4}, value{.2053, 43.9}, value{.2004, 39.5}},
		{"advanced tuck", legs(90, 0, 90), value{.1821, 37.5}, value{.1743, 36.1}, value{.1677, 32.1}},
		{"advanced tuck, knees 135°", legs(90, 0, 135), value{.1770, 36.3}, value{.1691, 34.8}, value{.1623, 31.0}},
		{"tuck", legs(120, 0, 150), value{.1519, 30.5}, value{.1476, 29.9}, value{.1397, 26.3}},
	} {
		for _, b := range []struct {
			table string
			body  Body
			want  value
		}{{"men", men, c.men}, {"women", women, c.women}, {"Winter", win, c.win}} {
			h := Solve(b.body, c.pose, Support{AtWrist: true}, nil)
			near(t, c.name+", "+b.table+", k", h.Torque/(b.body.Mass*Gravity*b.body.Height), b.want.k, 0.00006)
			near(t, c.name+", "+b.table+", lean°", h.Lean/degree, b.want.lean, 0.2)
		}
	}
}

// Source: the same levers with the hands as points at the wrist, men's table.
func TestLeanWithPointHands(t *testing.T) {
	b := mustBody(t, Male, 73, 1.741, 0)
	for _, c := range []struct {
		pose Pose
		lean float64
	}{{Pose{}, 52.5}, {legs(0, 45, 0), 46.2}, {legs(90, 0, 90), 37.4}} {
		near(t, "lean°", Solve(b, c.pose, Support{AtWrist: true}, nil).Lean/degree, c.lean, 0.05)
	}
}

// Source: as for the three tables, support 5 cm ahead of the wrist; there the
// hand went on in the arm's line, here it lies flat, which makes up to 0.6° less.
func TestLeanOnTheFloor(t *testing.T) {
	b := mustBody(t, Male, 73, 1.741, 0)
	for _, c := range []struct {
		pose Pose
		lean float64
	}{{Pose{}, 63.0}, {legs(0, 45, 0), 55.0}, {legs(90, 0, 90), 44.8}, {legs(120, 0, 150), 37.1}} {
		h := Solve(b, c.pose, Support{}, nil)
		near(t, "lean°", h.Lean/degree, c.lean, 0.6)
		near(t, "wrist angle°", h.WristAngle/degree, 90+h.Lean/degree, 1e-9)
	}
}

// A share of the full position hardly depends on whose table is used: within
// 0.01 among men, 0.025 between women and men (computed from the same source).
func TestSharesAgreeBetweenTables(t *testing.T) {
	men, women, win := mustBody(t, Male, 73, 1.741, 0), mustBody(t, Female, 61.9, 1.735, 0), winter(73, 1.741)
	plain := func(b Body, p Pose) float64 {
		return Solve(b, p, onBar, nil).Torque / Solve(b, Pose{}, onBar, nil).Torque
	}
	for _, p := range []Pose{legs(0, 45, 0), legs(0, 60, 0), legs(0, 0, 90), legs(90, 0, 90), legs(120, 0, 150)} {
		near(t, "Winter against de Leva's men", plain(win, p), plain(men, p), 0.0115)
		near(t, "women against men", plain(women, p), plain(men, p), 0.025)
	}
}
