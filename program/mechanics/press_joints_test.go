package mechanics

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func mustJoints(t testing.TB, b Body, p PressPose) Joints {
	t.Helper()
	j, err := b.PressJoints(p)
	if err != nil {
		t.Fatalf("%+v: %v", p, err)
	}
	return j
}

func mustBottom(t testing.TB, b Body, p PressPose, pad float64) Joints {
	t.Helper()
	j, err := b.PressBottom(p, pad)
	if err != nil {
		t.Fatalf("%+v onto %g m: %v", p, pad, err)
	}
	return j
}

func apart(p, q Point) float64 { return math.Hypot(p.X-q.X, p.Y-q.Y) }

// By hand from de Leva 1996 for a woman of 1.66 m: arm (.1586 + .1523) · 1.66 = .516,
// trunk .476, thigh .353, shank .420, ankle to toe tip (.1316 − .035) · 1.66 = .160, to the
// ball .095 (.7 of the foot less the heel). The crown is 26 cm up, as far as it travels.
func TestPlacesOfAPress(t *testing.T) {
	b := mustBody(t, Female, 58, 1.66, 0)
	for _, c := range []struct {
		name      string
		got, want Point
	}{
		{"free, shoulder", mustJoints(t, b, PressPose{Rest: Nothing}).Shoulder, Point{0, .516}},
		{"free, fingertips", mustJoints(t, b, PressPose{Rest: Nothing}).Fingers, Point{.163, 0}},
		{"free, hip", mustJoints(t, b, PressPose{Rest: Nothing}).Hip, Point{0, .993}},
		{"free, toes", mustJoints(t, b, PressPose{Rest: Nothing}).Toes[1], Point{0, 1.925}},
		{"free, crown", mustJoints(t, b, PressPose{Rest: Nothing}).Crown, Point{0, .262}},
		{"belly to the wall, toes", mustJoints(t, b, PressPose{Rest: AtWall, Gap: .15}).Toes[0], Point{-.15, 1.919}},
		// heels 3.8 cm deep at the ankle: .112 / (.516 + .476 + .353 + .420) of the way ahead
		{"back to the wall, ankle", mustJoints(t, b, PressPose{Rest: HeelsAtWall, Gap: .15}).Ankles[0], Point{.112, 1.761}},
		// the leg of .867 down by .243 from the hip: .832 back
		{"box, balls of the feet", mustJoints(t, b, PressPose{Trunk: 90 * degree, Feet: .75}).Toes[0], Point{-.832, .75}},
		{"pike, hip", mustJoints(t, b, PressPose{Trunk: 45 * degree}).Hip, Point{-.337, .853}},
		{"pike, balls of the feet", mustJoints(t, b, PressPose{Trunk: 45 * degree}).Toes[0], Point{-.492, 0}},
		// √(1.343² + .516² − .3²) from the wrists
		{"push-up on hands 30 cm up, balls of the feet", mustJoints(t, b, PressPose{Hands: .3}).Toes[0].plus(Point{Y: .3}), Point{-1.407, 0}},
	} {
		near(t, c.name+", ahead", c.got.X, c.want.X, 0.002)
		near(t, c.name+", up", c.got.Y, c.want.Y, 0.002)
	}
}

// Statics by hand: what is drawn turns nobody about the toes when the hands carry the
// share that a second model gives (see TestPressesOfTheRoadMap), and about the wrists
// when the wall pushes. Within .03: a raised shoulder blade moves the head.
func TestWhatIsDrawnIsInBalance(t *testing.T) {
	woman, man := meanBodies(t)
	for _, c := range []struct{ trunk, feet, women, men float64 }{
		{45, 0, .60, .64}, {60, .30, .76, .75}, {75, .45, .82, .82}, {80, .60, .84, .84}, {90, .75, .88, .87}, {90, .90, .88, .87},
	} {
		pose := PressPose{Trunk: c.trunk * degree, Feet: c.feet}
		hers, his := mustJoints(t, woman, pose), mustJoints(t, man, pose)
		near(t, "share on her hands", 1-hers.CoM.X/hers.Toes[0].X, c.women, 0.03)
		near(t, "share on his hands", 1-his.CoM.X/his.Toes[0].X, c.men, 0.03)
	}
	for _, p := range []PressPose{{}, {Feet: .3}, {Hands: .3}, {Rest: OnKnees}} {
		j, press := mustJoints(t, woman, p), mustPress(t, woman, p)
		on := j.Toes[0]
		if p.Rest == OnKnees {
			on = j.Knees[0]
		}
		level := press.Hands * j.Shoulder.X / j.Shoulder.Y // the push goes along the arms
		near(t, "moment about toes or knees", on.Y*level-on.X*press.Hands, j.CoM.X-on.X, 0.01)
	}
	for _, rest := range []Rest{AtWall, HeelsAtWall} {
		p := PressPose{Rest: rest, Gap: .25}
		j, at := mustJoints(t, man, p), 0.0
		if at = j.Toes[0].Y; rest == HeelsAtWall {
			at = j.Ankles[0].Y
		}
		near(t, "moment about the wrists", mustPress(t, man, p).Wall*at, math.Abs(j.CoM.X), 0.01)
	}
}

// bottoms are presses that the crown ends, on women and men of middle height.
var bottoms = []PressPose{
	{Trunk: 45 * degree}, {Trunk: 60 * degree, Feet: .3}, {Trunk: 75 * degree, Feet: .45}, {Trunk: 90 * degree, Feet: .75},
	{Rest: AtWall, Gap: .15}, {Rest: HeelsAtWall, Gap: .28}, {Rest: Nothing},
}

// Common practice: hands and head make a triangle, as in a headstand, so the crown comes
// down ahead of the fingertips (16 and 19 cm from the wrists); with the back to a wall at
// least between them. Feet stay where they are. An upright body sinks about as far as
// TestTravelToTheCrown says; a sloping head starts higher.
func TestTheCrownComesDownAheadOfTheHands(t *testing.T) {
	woman, man := meanBodies(t)
	for _, b := range []Body{woman, man} {
		for _, p := range bottoms {
			top, low := mustJoints(t, b, p), mustBottom(t, b, p, 0)
			least := b.FingerTip
			if p.Rest == HeelsAtWall {
				least = 0.15
			}
			if low.Crown.X < least || low.Crown.X > least+0.10 {
				t.Errorf("%+v: crown %.3f m ahead of the wrists", p, low.Crown.X)
			}
			near(t, "crown", low.Crown.Y, 0, 1e-9)
			if p.Trunk > 0 {
				near(t, "feet stay", apart(low.Toes[0], top.Toes[0]), 0, 1e-9)
			}
			if sunk := top.Shoulder.Y - low.Shoulder.Y; sunk < .23 || sunk > .31 {
				t.Errorf("%+v: the shoulders sink %.3f m", p, sunk)
			}
		}
		near(t, "toes at the wall", mustBottom(t, b, bottoms[4], 0).Toes[0].X, -.15, 1e-9)
		near(t, "free, over the wrists", mustBottom(t, b, bottoms[6], 0).CoM.X, 0, 0.002)
		near(t, "pad", mustBottom(t, b, bottoms[4], .15).Crown.Y, .15, 1e-9)
		raised := PressPose{Rest: AtWall, Gap: .15, Hands: .10}
		near(t, "floor below raised hands", mustBottom(t, b, raised, 0).Crown.Y, -.10, 1e-9)
		raised.Hands = 0.6
		near(t, "shoulders at the hands", mustBottom(t, b, raised, 0).Shoulder.Y, 0, 1e-9)
	}
	for name, err := range map[string]error{
		"pad as high as the crown": errOf(woman.PressBottom(bottoms[6], .27)),
		"pad below the floor":      errOf(woman.PressBottom(bottoms[6], -.1)),
	} {
		if !errors.Is(err, ErrTravel) {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, err := range map[string]error{
		"a push-up has no crown":  errOf(woman.PressBottom(PressPose{}, 0)),
		"feet in the air":         errOf(woman.PressJoints(PressPose{Trunk: 90 * degree})),
		"feet in the air, low":    errOf(woman.PressBottom(PressPose{Trunk: 90 * degree}, 0)),
		"heels deeper than a gap": errOf(woman.PressJoints(PressPose{Rest: HeelsAtWall, Gap: .02})),
	} {
		if !errors.Is(err, ErrStand) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func errOf(_ Joints, err error) error { return err }

// Nobody's bones change their length: top and bottom, whatever the body. Bent elbows lie
// out to the sides, so that both bones of an arm look shorter, by the same way out.
func TestBonesKeepTheirLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBody(t)
		p := rapid.SampledFrom(bottoms).Draw(t, "pose")
		p.Hands = rapid.SampledFrom([]float64{0, 0, 0.1}).Draw(t, "hands")
		for _, low := range []bool{false, true} {
			j, err := b.PressJoints(p)
			if low {
				j, err = b.PressBottom(p, rapid.Float64Range(0, 0.15).Draw(t, "pad"))
			}
			if err != nil {
				continue
			}
			for name, c := range map[string]struct {
				from, to Point
				want     float64
			}{
				"trunk": {j.Shoulder, j.Hip, b.Trunk.Length}, "head": {j.C7, j.Crown, b.Head.Length},
				"thigh": {j.Hip, j.Knees[0], b.Thigh.Length}, "shank": {j.Knees[1], j.Ankles[1], b.Shank.Length},
			} {
				if got := apart(c.from, c.to); !(math.Abs(got-c.want) < 1e-9) {
					t.Errorf("%+v, low %v: %s %.4f m, bone %.4f m", p, low, name, got, c.want)
				}
			}
			fore, upper := apart(Point{}, j.Elbow), apart(j.Elbow, j.Shoulder)
			out := b.Forearm.Length*b.Forearm.Length - fore*fore
			if other := b.UpperArm.Length*b.UpperArm.Length - upper*upper; !(out > -1e-9 && math.Abs(other-out) < 1e-9) {
				t.Errorf("%+v, low %v: elbows %.4f and %.4f m² out", p, low, out, other)
			}
			if !low && out > 1e-9 {
				t.Errorf("%+v: straight arms are bent", p)
			}
		}
	})
}
