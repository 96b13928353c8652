package mechanics

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

const degree = math.Pi / 180

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s = %.5g, want %.5g ± %.2g", what, got, want, within)
	}
}

func mustBody(t testing.TB, sex Sex, mass, height, span float64) Body {
	t.Helper()
	b, err := NewBody(sex, mass, height, span, 0)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Source: de Leva 1996, Table 4: the printed mass shares add up to 99.99 %
// (women) and 100.00 % (men).
func TestSegmentMassesAddUp(t *testing.T) {
	near(t, "women", mustBody(t, Female, 100, 1.7, 0).segmentMass(), 99.99, 1e-9)
	near(t, "men", mustBody(t, Male, 100, 1.7, 0).segmentMass(), 100.00, 1e-9)
}

// Source: de Leva 1996, Table 4, lengths in mm of the two samples (women 1.735 m,
// men 1.741 m). The ratios used here were rounded to four places.
func TestSegmentLengthsOfThePublishedSamples(t *testing.T) {
	women, men := mustBody(t, Female, 61.9, 1.735, 0), mustBody(t, Male, 73, 1.741, 0)
	for _, c := range []struct {
		what               string
		women, men         float64
		wantWomen, wantMen float64
	}{
		{what: "head", women: women.Head.Length, men: men.Head.Length, wantWomen: 243.7, wantMen: 242.9},
		{what: "trunk", women: women.Trunk.Length, men: men.Trunk.Length, wantWomen: 497.9, wantMen: 515.5},
		{what: "upper arm", women: women.UpperArm.Length, men: men.UpperArm.Length, wantWomen: 275.1, wantMen: 281.7},
		{what: "forearm", women: women.Forearm.Length, men: men.Forearm.Length, wantWomen: 264.3, wantMen: 268.9},
		{what: "hand", women: women.Hand.Length, men: men.Hand.Length, wantWomen: 78.0, wantMen: 86.2},
		{what: "wrist to fingertip", women: women.FingerTip, men: men.FingerTip, wantWomen: 170.1, wantMen: 187.9},
		{what: "thigh", women: women.Thigh.Length, men: men.Thigh.Length, wantWomen: 368.5, wantMen: 422.2},
		{what: "shank", women: women.Shank.Length, men: men.Shank.Length, wantWomen: 438.6, wantMen: 440.3},
		{what: "foot", women: women.Foot.Length + women.Heel, men: men.Foot.Length + men.Heel, wantWomen: 228.3, wantMen: 258.1},
		{what: "shoulder line to C7", women: women.Neck, men: men.Neck, wantWomen: 116.9, wantMen: 87.8},
	} {
		near(t, c.what+", women, mm", 1000*c.women, c.wantWomen, 0.15)
		near(t, c.what+", men, mm", 1000*c.men, c.wantMen, 0.15)
	}
}

// Source: de Leva 1996, Table 4. All three trunk rows put the trunk's centre of
// mass 309.6 mm (women) and 293.3 mm (men) above mid-hip.
func TestTrunkCoMAgreesWithTheOtherTrunkRows(t *testing.T) {
	women, men := mustBody(t, Female, 61.9, 1.735, 0), mustBody(t, Male, 73, 1.741, 0)
	near(t, "women, mm", 1000*(women.Trunk.Length-women.Trunk.CoM), 309.6, 0.2)
	near(t, "men, mm", 1000*(men.Trunk.Length-men.Trunk.CoM), 293.3, 0.2)
}

// Source: de Leva 1996, Table 4, rows with other endpoints: vertex–mid-gonion,
// elbow–stylion, wrist–third fingertip, knee–lateral malleolus. Length in mm times
// share must put each centre of mass where the rows used here do.
func TestCoMsAgreeWithRowsOfOtherEndpoints(t *testing.T) {
	women, men := mustBody(t, Female, 61.9, 1.735, 0), mustBody(t, Male, 73, 1.741, 0)
	for _, c := range []struct {
		what                  string
		got, length, fraction float64
	}{
		{"head, women", women.Head.Length - women.Head.CoM, 200.2, .5894},
		{"head, men", men.Head.Length - men.Head.CoM, 203.3, .5976},
		{"forearm, women", women.Forearm.CoM, 262.4, .4592},
		{"forearm, men", men.Forearm.CoM, 266.9, .4608},
		{"hand, women", women.Hand.CoM, 170.1, .3427},
		{"hand, men", men.Hand.CoM, 187.9, .3624},
		{"shank, women", women.Shank.CoM, 432.3, .4416},
		{"shank, men", men.Shank.CoM, 434.0, .4459},
	} {
		near(t, c.what+", mm", 1000*c.got, c.length*c.fraction, 0.15)
	}
}

// Source: computed elsewhere from de Leva 1996, Table 4: 0.554 H (women) and
// 0.556 H (men) above the soles. Reaction-board surveys agree that it lies at
// 0.55 to 0.57 of stature (from memory).
func TestStandingCoM(t *testing.T) {
	near(t, "women", mustBody(t, Female, 61.9, 1.735, 0).StandingCoM()/1.735, 0.554, 0.0005)
	near(t, "men", mustBody(t, Male, 73, 1.741, 0).StandingCoM()/1.741, 0.556, 0.0005)
}

func TestUnspecifiedIsTheMeanOfBothTables(t *testing.T) {
	women, men := mustBody(t, Female, 60, 1.7, 0), mustBody(t, Male, 60, 1.7, 0)
	both := mustBody(t, Unspecified, 60, 1.7, 0)
	near(t, "trunk mass", both.Trunk.Mass, (women.Trunk.Mass+men.Trunk.Mass)/2, 1e-12)
	near(t, "thigh length", both.Thigh.Length, (women.Thigh.Length+men.Thigh.Length)/2, 1e-12)
	near(t, "neck", both.Neck, (women.Neck+men.Neck)/2, 1e-12)
}

func TestArmSpanScalesTheArmsOnly(t *testing.T) {
	usual, long := mustBody(t, Male, 73, 1.741, 0), mustBody(t, Male, 73, 1.741, 1.741*1.05)
	near(t, "upper arm", long.UpperArm.Length/usual.UpperArm.Length, 1.05, 1e-12)
	near(t, "hand", long.Hand.CoM/usual.Hand.CoM, 1.05, 1e-12)
	near(t, "trunk", long.Trunk.Length, usual.Trunk.Length, 0)
	near(t, "thigh", long.Thigh.Length, usual.Thigh.Length, 0)
}

func TestBalancePointIsMet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plain := anyBody(t)
		measured := plain.StandingCoM() + rapid.Float64Range(-0.015, 0.015).Draw(t, "moved")
		b, err := plain.balanced(measured)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(b.StandingCoM()-measured) > 1e-9 {
			t.Errorf("standing centre of mass %v, measured %v", b.StandingCoM(), measured)
		}
		if math.Abs(b.segmentMass()-plain.segmentMass()) > 1e-9 {
			t.Errorf("mass went from %v to %v", plain.segmentMass(), b.segmentMass())
		}
		higher := measured > plain.StandingCoM()
		if lighter := b.Thigh.Mass < plain.Thigh.Mass; lighter != higher && measured != plain.StandingCoM() {
			t.Errorf("balance point higher: %v, legs lighter: %v", higher, lighter)
		}
	})
}

func TestBalancePointTooFarOff(t *testing.T) {
	for _, measured := range []float64{0.85, 1.00, math.NaN(), math.Inf(1), -1} {
		_, err := NewBody(Female, 58, 1.66, 1.68, measured)
		var e *BalanceError
		if !errors.As(err, &e) {
			t.Fatalf("balance point %v: error %v, want a BalanceError", measured, err)
		}
		near(t, "model", e.Model, 0.554*1.66, 0.001)
	}
	_, err := NewBody(Female, 58, 1.66, 1.68, 1.00)
	var e *BalanceError
	if errors.As(err, &e); !(e.Shift > 0.15) || e.Measured != 1.00 {
		t.Errorf("a balance point far up means lighter legs: %+v", e)
	}
}

func TestBadBody(t *testing.T) {
	for _, c := range [][3]float64{{0, 1.7, 0}, {60, 0, 0}, {60, 1.7, -1}, {math.NaN(), 1.7, 0}, {60, math.Inf(1), 0}} {
		if _, err := NewBody(Female, c[0], c[1], c[2], 0); !errors.Is(err, ErrBadBody) {
			t.Errorf("NewBody(%v): error %v, want ErrBadBody", c, err)
		}
	}
}

// anyBody draws a body of ordinary measures.
func anyBody(t *rapid.T) Body {
	height := rapid.Float64Range(1.35, 2.05).Draw(t, "height")
	b, err := NewBody(Sex(rapid.IntRange(0, 2).Draw(t, "sex")),
		rapid.Float64Range(35, 130).Draw(t, "mass"), height,
		height*rapid.Float64Range(0.95, 1.08).Draw(t, "span"), 0)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// A balance point may move 15 % of the legs' mass (our judgement), and no more.
func TestBalancePointBound(t *testing.T) {
	b := mustBody(t, Female, 58, 1.66, 0)
	hip := b.AnkleHeight + b.Shank.Length + b.Thigh.Length
	legs := 2 * (b.Thigh.Mass + b.Shank.Mass + b.Foot.Mass)
	legsAt := 2 * (b.Thigh.Mass*(hip-b.Thigh.CoM) + b.Shank.Mass*(b.AnkleHeight+b.Shank.Length-b.Shank.CoM) + b.Foot.Mass*b.AnkleHeight/2) / legs
	for share, accepted := range map[float64]bool{0.149: true, -0.149: true, 0.151: false, -0.151: false} {
		point := b.StandingCoM() + share*legs*(hip+b.Trunk.Length-b.Trunk.CoM-legsAt)/(0.9999*58) // the table adds up to 99.99 %
		if _, err := NewBody(Female, 58, 1.66, 0, point); (err == nil) != accepted {
			t.Errorf("%.1f %% of the legs' mass moved, at %.3f m: %v", 100*share, point, err)
		}
	}
}
