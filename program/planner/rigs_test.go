package planner

import (
	"testing"

	"pgregory.net/rapid"
)

// The rigs chosen cost as little as the best of all ways through, tried one by
// one.
func TestRigsAgainstExhaustiveSearch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		menus := menusDrawn.Draw(t, "weeks")
		got := chooseRigs(menus)
		want, found := bill{}, false
		everyWay(menus, nil, func(picks []int) {
			if b, ok := priced(menus, picks); ok && (!found || b.less(want)) {
				want, found = b, true
			}
		})
		if found != (got != nil) {
			t.Fatalf("found a way: %v, chosen: %v", found, got)
		}
		if !found {
			return
		}
		b, ok := priced(menus, got)
		if !ok || b != want {
			t.Errorf("chose %v for %+v (allowed %v), best is %+v", got, b, ok, want)
		}
	})
}

var menusDrawn = rapid.Custom(func(t *rapid.T) []menu {
	helps := rapid.SliceOfN(rapid.IntRange(0, 4), 4, 4).Draw(t, "helps")
	menus := make([]menu, rapid.IntRange(1, 6).Draw(t, "weeks"))
	step := 0
	for i := range menus {
		if rapid.IntRange(0, 3).Draw(t, "next") == 0 {
			step++
		}
		menus[i].step = step
		if menus[i].gate = rapid.IntRange(0, 5).Draw(t, "gate") == 0; menus[i].gate {
			menus[i].choices = []choice{{hold: 10}}
			continue
		}
		for rig := range helps {
			if rapid.IntRange(0, 4).Draw(t, "usable") > 0 {
				menus[i].choices = append(menus[i].choices, choice{rig: rig, help: helps[rig], hold: rapid.IntRange(10, 15).Draw(t, "hold")})
			}
		}
	}
	return menus
})

func everyWay(menus []menu, picks []int, try func([]int)) {
	if len(picks) == len(menus) {
		try(picks)
		return
	}
	for i := range menus[len(picks)].choices {
		everyWay(menus, append(picks[:len(picks):len(picks)], i), try)
	}
}

// priced adds up a way's bill by the rules as written: within a step help never
// rises and a rig stays two weeks, unless the step has only one.
func priced(menus []menu, picks []int) (bill, bool) {
	var b bill
	for i, pick := range picks {
		c := menus[i].choices[pick]
		b.help += c.help
		b.off += max(c.hold-12, 12-c.hold)
		if i == 0 {
			continue
		}
		before := menus[i-1].choices[picks[i-1]]
		if menus[i].step != menus[i-1].step {
			b.changes++
			continue
		}
		if before.rig == c.rig {
			continue
		}
		b.changes++
		opened := i == 1 || menus[i-2].step != menus[i-1].step || menus[i-2].choices[picks[i-2]].rig != before.rig
		ends := i == len(menus)-1
		if gate := menus[i].gate || menus[i-1].gate; gate {
			opened, ends = false, ends && !menus[i].gate
		}
		if c.help > before.help || opened || ends {
			return b, false
		}
	}
	return b, true
}

func BenchmarkPlan(b *testing.B) {
	lib, a := library(b), maren(b)
	for b.Loop() {
		Plan(lib, &a)
	}
}
