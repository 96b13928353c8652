package mechanics

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Our judgement: the crown leaves 26 to 28 cm, 52 % of the full travel.
func TestTravelToTheCrown(t *testing.T) {
	woman, man := meanBodies(t)
	for want, b := range map[float64]Body{0.26: woman, 0.28: man} {
		crown, full := b.PressTravel()
		near(t, "crown to floor, m", crown, want, 0.005)
		near(t, "share of the full travel", crown/full, 0.52, 0.001)
	}
}

// Our judgement: what presses onto pads and from raised hands weigh against one whose
// crown touches the floor.
func TestDepths(t *testing.T) {
	woman, man := meanBodies(t)
	for _, c := range []struct{ pad, raised, want float64 }{
		{.15, 0, .75}, {.10, 0, .85}, {.05, 0, .93}, {0, 0, 1},
		{0, .05, 1.06}, {0, .10, 1.12}, {0, .15, 1.18}, {0, .60, 1.25},
	} {
		for _, b := range []Body{woman, man} {
			share, err := b.PressDepth(c.pad, c.raised)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "factor", DepthFactor(share), c.want, 0.02)
		}
	}
}

func TestDeeperWeighsMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		share := rapid.Float64Range(0, 1).Draw(t, "share")
		deeper := share + rapid.Float64Range(0.001, 0.2).Draw(t, "more")
		if f := DepthFactor(deeper) - DepthFactor(share); f < 0 || f == 0 && deeper < 1 {
			t.Errorf("%.3f weighs %.3f, %.3f weighs %.3f", share, DepthFactor(share), deeper, DepthFactor(deeper))
		}
	})
	near(t, "less than no travel", DepthFactor(-1), DepthFactor(0), 0)
	near(t, "more than all", DepthFactor(2), 1.25, 0)
}

func TestPadDeeperThanTheArm(t *testing.T) {
	b := mustBody(t, Female, 58, 1.66, 0)
	for _, c := range [][2]float64{{0.27, 0}, {0.6, 0}, {-0.1, 0}, {0, -0.1}, {math.NaN(), 0}} {
		if share, err := b.PressDepth(c[0], c[1]); !errors.Is(err, ErrTravel) {
			t.Errorf("pad %v, raised %v: %v, %v", c[0], c[1], share, err)
		}
	}
}
