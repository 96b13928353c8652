package mechanics

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

var underBar = Support{Hang: true, Height: 2.2}

// lever is a pose of the front lever's road map: shoulder blades drawn down 3 cm.
func lever(p Pose, rounding float64) Pose {
	p.Rounding, p.Depression = rounding, 0.03
	return p
}

var levers = []struct {
	name       string
	pose       Pose
	women, men float64 // share of the full position
}{
	{"tuck", lever(legs(120, 0, 150), 0.06), .59, .57},
	{"open tuck", lever(legs(105, 0, 120), 0.04), .67, .65},
	{"advanced tuck", lever(legs(90, 0, 90), 0.02), .75, .735},
	{"one leg", lever(halfLay(), 0.02), .80, .79},
	{"wide-open tuck", lever(legs(60, 0, 90), 0.01), .86, .86},
	{"straddle", lever(legs(0, 50, 0), 0), .885, .885},
	{"half lay", lever(legs(0, 0, 90), 0), .915, .92},
	{"narrow straddle", lever(legs(0, 30, 0), 0), .957, .957},
	{"full", lever(Pose{}, 0), 1, 1},
}

// meanBodies are those of the tables of hangs, presses and lifts.
func meanBodies(t testing.TB) (woman, man Body) {
	return mustBody(t, Female, 58, 1.66, 0), mustBody(t, Male, 73, 1.76, 0)
}

// Source: computed with a second model, written independently, from de Leva 1996. The
// arms hang 22° (tuck) to 39 and 41° (full) off the vertical.
func TestSharesOfTheFrontLever(t *testing.T) {
	woman, man := meanBodies(t)
	full := lever(Pose{}, 0)
	for _, c := range levers {
		for _, b := range []struct {
			name string
			body Body
			want float64
		}{{"women", woman, c.women}, {"men", man, c.men}} {
			h := Solve(b.body, c.pose, underBar, nil)
			near(t, c.name+", "+b.name, h.Torque/Solve(b.body, full, underBar, nil).Torque, b.want, 0.006)
			if lean := h.Lean / degree; lean < 21.5 || lean > 41.5 {
				t.Errorf("%s, %s: arms %.1f° off the vertical", c.name, b.name, lean)
			}
		}
	}
	near(t, "tuck, women's arms°", Solve(woman, levers[0].pose, underBar, nil).Lean/degree, 22, 0.5)
	near(t, "full, women's arms°", Solve(woman, full, underBar, nil).Lean/degree, 39, 0.5)
	near(t, "full, men's arms°", Solve(man, full, underBar, nil).Lean/degree, 41, 0.5)
}

// Source: as above, from the bar to the hip 0.46 to 0.63 m. So a loop of one metre is
// slack, whatever is said of an anchor above the hands or where the bar's height is not
// known; from a beam 10 cm over the bar as well.
func TestALoopOfAMetreIsSlackBetweenBarAndHip(t *testing.T) {
	woman, man := meanBodies(t)
	for _, c := range levers {
		for _, b := range []Body{woman, man} {
			free := Solve(b, c.pose, underBar, nil)
			h := Solve(b, c.pose, underBar, &Rig{Bands: []Curve{thick}, Anchor: 2.4})
			unknown := Solve(b, c.pose, Support{Hang: true}, &Rig{Bands: []Curve{thick}, Height: 2.4})
			beam := Solve(b, c.pose, underBar, &Rig{Bands: []Curve{thick}, Height: 2.3})
			if unknown.Help != 0 || beam.Help != 0 || beam.BandLength < h.BandLength+0.05 || beam.BandLength > h.BandLength+0.1 {
				t.Errorf("%s: unknown bar %.1f N, beam %.1f N at %.2f m", c.name, unknown.Help, beam.Help, beam.BandLength)
			}
			if h.Help != 0 || h.Torque != free.Torque || h.Strain != 0 {
				t.Errorf("%s: %.1f N of help at %.2f m", c.name, h.Help, h.BandLength)
			}
			if h.BandLength < 0.44 || h.BandLength > 0.64 {
				t.Errorf("%s: %.3f m from bar to hip", c.name, h.BandLength)
			}
		}
	}
}

// Source: as above, in the full position a kilogram at the ankle takes as much off the
// shoulders as 2.7 at the hip.
func TestAKilogramAtTheAnkle(t *testing.T) {
	for _, b := range []Body{mustBody(t, Female, 58, 1.66, 0), mustBody(t, Male, 73, 1.76, 0)} {
		perKilogram := func(at Place) float64 {
			rig := &Rig{Bands: []Curve{{A: 10, B: 10, Rest: 0.3}}, At: at}
			h := Solve(b, lever(Pose{}, 0), underBar, rig)
			return (Solve(b, lever(Pose{}, 0), underBar, nil).Torque - h.Torque) / h.Help
		}
		near(t, "ankle against hip", perKilogram(AtAnkle)/perKilogram(AtHip), 2.7, 0.1)
		if thigh := perKilogram(AtThigh) / perKilogram(AtHip); thigh < 1.2 || thigh > 1.6 {
			t.Errorf("thigh against hip %.2f", thigh)
		}
	}
}

// A band between the hands pulls through the bar: it takes load off the shoulders and
// does not move the arms. Slack it does nothing.
func TestBandsInAHang(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, rig := anyBody(t), anyRig(t)
		rig.Height, rig.Offset = 0, 0
		p := levers[rapid.IntRange(0, len(levers)-1).Draw(t, "lever")].pose
		rig.At = rapid.SampledFrom([]Place{AtHip, AtThigh, AtAnkle}).Draw(t, "at")
		if rapid.Bool().Draw(t, "folded") {
			for i := range rig.Bands {
				rig.Bands[i] = rig.Bands[i].Folded()
			}
		}
		free, h := Solve(b, p, underBar, nil), Solve(b, p, underBar, rig)
		if math.Hypot(h.Joints.Anchor.X, h.Joints.Anchor.Y) > 1e-12 {
			t.Fatalf("the anchor is %v off the bar", h.Joints.Anchor)
		}
		if math.Abs(h.Lean-free.Lean) > 1e-9 || math.IsNaN(h.Torque) || h.Torque > free.Torque+1e-9 {
			t.Errorf("free %+v\nbanded %+v", free, h)
		}
		for _, c := range rig.Bands {
			if h.BandLength > c.Rest {
				return
			}
		}
		if h.Help != 0 || math.Abs(h.Torque-free.Torque) > 1e-12 {
			t.Errorf("slack bands help: %+v", h)
		}
	})
}

// Where the legs differ the band is around the one that reaches further.
func TestBandOnTheStraightLeg(t *testing.T) {
	h := Solve(mustBody(t, Female, 58, 1.66, 0), lever(halfLay(), 0.02), underBar, &Rig{Bands: []Curve{thin}, At: AtAnkle})
	if h.Joints.Attached != h.Joints.Ankles[1] {
		t.Errorf("at %v, the straight leg's ankle at %v", h.Joints.Attached, h.Joints.Ankles[1])
	}
}

// A loop laid double has four strands for two, of half the length.
func TestFoldedLoop(t *testing.T) {
	double := thick.Folded()
	for _, length := range []float64{0.3, 0.6, 0.9, 1.4} {
		near(t, "pull", double.Force(length), 2*thick.Force(2*length), 1e-12)
	}
	if double.Rest != 0.5 || double.Longest != 0.95 {
		t.Errorf("%+v", double)
	}
}

// Heights from the floor: an anchor of 2.15 m over grips of 10 cm is 2.05 m over the
// hands.
func TestAnchorFromTheFloor(t *testing.T) {
	b := mustBody(t, Female, 58, 1.66, 1.68)
	raised := Support{Grip: true, Height: 0.10}
	fromFloor := Solve(b, legs(0, 50, 0), raised, &Rig{Bands: []Curve{thick}, Height: 2.15, Offset: 0.1})
	fromHands := Solve(b, legs(0, 50, 0), raised, &Rig{Bands: []Curve{thick}, Anchor: 2.05, Offset: 0.1})
	near(t, "help", fromFloor.Help, fromHands.Help, 1e-9)
	near(t, "torque", fromFloor.Torque, fromHands.Torque, 1e-9)
	bare := Solve(b, legs(0, 50, 0), raised, &Rig{Height: 2.15, Drop: 0.2})
	near(t, "way without bands", bare.BandLength, 2.15-0.10-bare.HipHeight-0.2, 1e-12)
	near(t, "band, floor to anchor less hip", fromFloor.BandLength, math.Hypot(2.15-0.10-fromFloor.HipHeight, 0.1), 1e-12)
}

// Common practice: a bar that an adult can grip standing is at 1.1 to 1.2 times
// their height, the fingers closed over it.
func TestReach(t *testing.T) {
	for _, b := range []Body{mustBody(t, Female, 58, 1.66, 0), mustBody(t, Male, 73, 1.76, 0)} {
		if r := b.Reach() / b.Height; r < 1.1 || r > 1.2 {
			t.Errorf("reach %.3f of height", r)
		}
	}
}
