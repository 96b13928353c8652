package planner

import (
	"slices"
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
		b, problems := ladder.New(&a, &hung, nil)
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

// lever is a client of the front lever who has shown its entry, all but what a test changes.
func lever(t *testing.T, change func(*program.Assessment)) program.Program {
	t.Helper()
	a := maren(t)
	a.Goal = program.Goal{Skill: "front-lever", Step: "advanced-tuck", Hold: 8, By: monday + 360}
	a.Kit, a.Bands, a.Hanging = []string{"pull-up bar"}, nil, program.Hanging{}
	a.Tests = []program.Hold{{Exercise: "still-hang", Seconds: 40}, {Exercise: "shoulder-blade-pull", Reps: 12}, {Exercise: "chin-up", Reps: 9}}
	change(&a)
	p, problems := Plan(library(t), &a)
	if problems.Stop() || len(p.Weeks) != 12 {
		t.Fatal(problems, p.Withheld)
	}
	return p
}

// Sore wrists hang, which keeps them straight, and still push nothing on flat hands: without
// handles the pushing that balances the hang is on the forearms, and so is the preparation
// (common practice).
func TestSoreWristsOfAHangPushOnForearms(t *testing.T) {
	p := lever(t, func(a *program.Assessment) { a.Health.Wrists = program.JointSore })
	seen := map[string]int{}
	for _, w := range p.Weeks {
		for _, it := range items(&w) {
			seen[it.Exercise]++
		}
	}
	if seen["pseudo-planche-push-up"]+seen["push-up"]+seen["scapular-push-up"] > 0 || seen["forearm-rock"] == 0 || seen["forearm-scapular-push-up"] == 0 {
		t.Errorf("sore wrists without handles: %v", seen)
	}
}

// Who has no chin-up lowers slowly from the bar: four repetitions, one more every second
// build week to six and then a set more, and no chin-up before one was shown. A dose that
// stood still for a block trains nothing (common practice).
func TestTheWayToAChinUpMovesOn(t *testing.T) {
	p := lever(t, func(a *program.Assessment) { a.Tests = a.Tests[:2] })
	var got [][2]int
	for _, w := range p.Weeks {
		if w.Kind != program.WeekBuild {
			continue
		}
		for _, it := range w.Sessions[0].Items {
			if it.Role == program.RoleStrength {
				got = append(got, [2]int{it.Sets, it.Reps})
				if it.Exercise != "slow-lowering-pull-up" {
					t.Errorf("week %d: %s", w.Number, it.Exercise)
				}
			}
		}
	}
	want := [][2]int{{3, 4}, {3, 4}, {3, 5}, {3, 5}, {3, 6}, {3, 6}, {4, 5}, {4, 5}, {4, 6}}
	if !slices.Equal(got, want) {
		t.Errorf("sets and repetitions by build week: %v, want %v", got, want)
	}
}
