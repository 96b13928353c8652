package planner

import (
	"testing"

	"gatepost/program"
	"gatepost/program/ladder"
)

// Heights are from the floor in every case: an anchor at 240 cm is 10 cm above a bar at
// 230 cm, and not 240. A hip hangs about half a metre below a bar, so a loop of one metre
// hangs slack there, and a slack band helps nobody; a loop of forty centimetres pulls.
func TestBandsOfAHangingStepHangFromTheFloorsHeights(t *testing.T) {
	lib, a := library(t), maren(t)
	road, _ := lib.RoadMap("planche")
	hung := *road
	hung.Hands = program.HandsHang
	for rest, helps := range map[float64]bool{1.0: false, 0.4: true} {
		a.Hanging = program.Hanging{Anchor: 2.4, Bar: 2.3, Drops: []float64{0}}
		a.Bands = []program.Band{{Name: "loop", Rest: rest, Pulls: []program.Pull{{At: 1.3 * rest, Force: 40}, {At: 1.6 * rest, Force: 70}, {At: 1.9 * rest, Force: 95}}}}
		b, problems := ladder.New(&a, &hung)
		if problems.Stop() {
			t.Fatal(problems)
		}
		for i := range b.All {
			if n := len(b.All[i].Aids()); (n > 1) != helps {
				t.Errorf("a loop of %.1f m at the %s: %d ways to hang", rest, b.All[i].ID, n)
			}
		}
	}
}

// Sore wrists have a deload every third week where hands carry the body, also in the weeks
// after the block that dates are reckoned with; in a hang they are straight, and it is
// every fourth (our judgement).
func TestSoreWristsDoNotSlowAHang(t *testing.T) {
	lib, a := library(t), maren(t)
	a.Health.Wrists = program.JointSore
	road, _ := lib.RoadMap("planche")
	for hands, want := range map[program.Hands]int{program.HandsSupport: 3, program.HandsHang: 4} {
		p := retraced(lib, &a)
		on := *road
		on.Hands = hands
		p.road = &on
		if got := p.schedule(p.weeks, nil).DeloadEvery; got != want {
			t.Errorf("%s: a deload every %d weeks after the block, want %d", hands, got, want)
		}
	}
}
