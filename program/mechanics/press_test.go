package mechanics

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func mustPress(t testing.TB, b Body, p PressPose) Press {
	t.Helper()
	out, err := b.Press(p)
	if err != nil {
		t.Fatalf("%+v: %v", p, err)
	}
	return out
}

// Source: computed with a second model, written independently, from de Leva 1996:
// force through both hands as a share of body weight. Where the feet help it counts
// all of the push, against a wall what is moved, the body less forearms and hands.
func TestPressesOfTheRoadMap(t *testing.T) {
	woman, man := meanBodies(t)
	for _, c := range []struct {
		trunk, feet float64
		women, men  float64
	}{
		{45, 0, .60, .64},
		{60, 0.30, .76, .75},
		{75, 0.45, .82, .82},
		{80, 0.60, .84, .84},
		{90, 0.75, .88, .87},
		{90, 0.90, .88, .87},
	} {
		pose := PressPose{Trunk: c.trunk * degree, Feet: c.feet}
		name := fmt.Sprintf("trunk %g°, feet at %g m", c.trunk, c.feet)
		near(t, name+", women", mustPress(t, woman, pose).Hands, c.women, 0.02)
		near(t, name+", men", mustPress(t, man, pose).Hands, c.men, 0.02)
	}
	near(t, "floor, hips°", mustPress(t, woman, PressPose{Trunk: 45 * degree}).Hips/degree, 120, 6)
	wall := PressPose{Rest: AtWall, Gap: 0.15}
	near(t, "wall, women", mustPress(t, woman, wall).Moved, .96, 0.005)
	near(t, "wall, men", mustPress(t, man, wall).Moved, .955, 0.005)
	wall.Rest = HeelsAtWall
	near(t, "back to the wall, men", mustPress(t, man, wall).Moved, .955, 0.005)
	near(t, "free, men", mustPress(t, man, PressPose{Rest: Nothing}).Moved, .955, 0.005)
}

// Source: Ebben and others 2011, J Strength Cond Res 25:2891, peak force of push-ups
// as a share of body mass (study confirmed, values from memory). Bodies are straight;
// elbows bent by 60° stand for halfway down (our judgement). Straight ones do nearly
// as well.
func TestPushUpsOnAForcePlate(t *testing.T) {
	woman, man := meanBodies(t)
	for _, c := range []struct {
		name string
		pose PressPose
		want float64
	}{
		{"floor", PressPose{}, .64},
		{"knees", PressPose{Rest: OnKnees}, .49},
		{"feet on 30 cm", PressPose{Feet: 0.3048}, .70},
		{"feet on 61 cm", PressPose{Feet: 0.6096}, .74},
		{"hands on 30 cm", PressPose{Hands: 0.3048}, .55},
		{"hands on 61 cm", PressPose{Hands: 0.6096}, .41},
	} {
		c.pose.Elbows = 60 * degree
		near(t, c.name+", women", mustPress(t, woman, c.pose).Hands, c.want, 0.03)
		near(t, c.name+", men", mustPress(t, man, c.pose).Hands, c.want, 0.03)
		c.pose.Elbows = 0
		near(t, c.name+", arms straight", (mustPress(t, woman, c.pose).Hands+mustPress(t, man, c.pose).Hands)/2, c.want, 0.05)
	}
}

// Statics by hand: a bar of even weight on its toes, weightless arms square to it at
// its end, carries half of its weight across the bar there.
func TestPressOfAnEvenBar(t *testing.T) {
	const length, arm = 1.5, 0.5
	b := Body{
		Mass: 60, Height: 1.7, Trunk: Segment{Mass: 60, Length: length, CoM: length / 2},
		UpperArm: Segment{Length: arm / 2}, Forearm: Segment{Length: arm / 2},
		Foot: Segment{Length: 1e-9},
	}
	p := mustPress(t, b, PressPose{})
	slope := math.Atan2(arm, length)
	near(t, "slope", p.Slope, -slope, 1e-6)
	near(t, "hands", p.Hands, math.Cos(slope)*math.Cos(slope)/2, 1e-6)
	near(t, "hip on the floor", p.HipHeight, 0, 1e-6)
}

// Higher feet put more on the hands, higher hands less; a wall's push grows with the
// gap. Everything stays finite, and between nothing and the whole body.
func TestPressesOfAnyBody(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBody(t)
		p := PressPose{
			Rest:   rapid.SampledFrom([]Rest{OnToes, OnKnees, AtWall, HeelsAtWall, Nothing}).Draw(t, "rest"),
			Trunk:  rapid.SampledFrom([]float64{0, 0.3, 0.8, 1.2, math.Pi / 2}).Draw(t, "trunk"),
			Elbows: rapid.Float64Range(0, 2.4).Draw(t, "elbows"),
			Feet:   rapid.Float64Range(0, 1.2).Draw(t, "feet"),
			Hands:  rapid.Float64Range(0, 0.8).Draw(t, "hands"),
			Gap:    rapid.Float64Range(0, 1).Draw(t, "gap"),
		}
		out, err := b.Press(p)
		if err != nil {
			if !errors.Is(err, ErrStand) || out != (Press{}) {
				t.Errorf("%+v, %v", out, err)
			}
			return
		}
		if !(out.Hands > 0 && out.Hands <= 1 && out.Moved > 0 && out.Moved < out.Hands && out.HipHeight > 0 && out.Wall >= 0 && out.Wall < 1) {
			t.Errorf("%+v gives %+v", p, out)
		}
		if out.Hips < 0 || out.Hips > 150*degree+1e-12 {
			t.Errorf("hips bent %.0f°", out.Hips/degree)
		}
	})
}

func TestHigherFeetWeighMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBody(t)
		feet, hands := rapid.Float64Range(0, 0.4).Draw(t, "feet"), rapid.Float64Range(0, 0.6).Draw(t, "hands")
		low, high := mustPressRapid(t, b, PressPose{Feet: feet}), mustPressRapid(t, b, PressPose{Feet: feet + 0.05})
		if high.Slope > 0 {
			return // past level the feet no longer add
		}
		up := mustPressRapid(t, b, PressPose{Hands: hands + 0.05})
		if !(high.Hands > low.Hands && up.Hands < mustPressRapid(t, b, PressPose{Hands: hands}).Hands) {
			t.Errorf("feet at %.2f: %.3f, 5 cm up %.3f", feet, low.Hands, high.Hands)
		}
	})
}

func mustPressRapid(t *rapid.T, b Body, p PressPose) Press {
	out, err := b.Press(p)
	if err != nil {
		t.Fatalf("%+v: %v", p, err)
	}
	return out
}

func TestNobodyStandsSo(t *testing.T) {
	b := mustBody(t, Female, 58, 1.66, 0)
	for name, p := range map[string]PressPose{
		"the feet hang in the air":       {Trunk: 90 * degree},
		"hips folded past 150°":          {Trunk: 80 * degree, Feet: 0.17},
		"hips bent backwards":            {Trunk: 10 * degree, Feet: 1.5},
		"trunk past upright":             {Trunk: 2, Feet: 0.5},
		"hands higher than anyone leans": {Hands: 1.6},
		"feet high above the shoulders":  {Feet: 1.4},
		"a wall out of reach":            {Rest: AtWall, Gap: 2.2},
		"a wall behind the hands":        {Rest: AtWall, Gap: -0.1},
		"no number":                      {Feet: math.NaN()},
	} {
		if out, err := b.Press(p); !errors.Is(err, ErrStand) {
			t.Errorf("%s: %+v, %v", name, out, err)
		}
	}
}
