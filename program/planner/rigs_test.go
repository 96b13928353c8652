package planner

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// The rigs chosen cost as little as the best of all ways through, tried one by
// one.
func TestRigsAgainstExhaustiveSearch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		weeks := weeksDrawn.Draw(t, "weeks")
		got := chooseRigs(weeks)
		want, found := cost{}, false
		everyWay(weeks, nil, func(picks []int) {
			if b, ok := priced(weeks, picks); ok && (!found || slices.Compare(inOrderOfWeight(b), inOrderOfWeight(want)) < 0) {
				want, found = b, true
			}
		})
		if found != (got != nil) {
			t.Fatalf("found a way: %v, chosen: %v", found, got)
		}
		if !found {
			return
		}
		b, ok := priced(weeks, got)
		if !ok || b != want {
			t.Errorf("chose %v for %+v (allowed %v), best is %+v", got, b, ok, want)
		}
	})
}

// Of rigs that are alike otherwise the one is hung with which twelve seconds are held.
func TestTheMiddleHoldIsChosen(t *testing.T) {
	week := candidates{choices: []choice{{rig: 0, hold: 11}, {rig: 1, hold: 12}, {rig: 2, hold: 13}}}
	if got := chooseRigs([]candidates{week, week}); !slices.Equal(got, []int{1, 1}) {
		t.Errorf("chose %v", got)
	}
}

var weeksDrawn = rapid.Custom(func(t *rapid.T) []candidates {
	helps := append([]int{0}, rapid.SliceOfN(rapid.IntRange(0, 4), 3, 3).Draw(t, "helps")...)
	slices.Sort(helps) // as a step's rigs are, free first
	weeks := make([]candidates, rapid.IntRange(1, 6).Draw(t, "weeks"))
	step := 0
	for i := range weeks {
		if rapid.IntRange(0, 3).Draw(t, "next") == 0 {
			step++
		}
		weeks[i].step = step
		if weeks[i].gate = rapid.IntRange(0, 5).Draw(t, "gate") == 0; weeks[i].gate {
			weeks[i].choices = []choice{{hold: 10}}
			continue
		}
		for rig := range helps {
			if rapid.IntRange(0, 4).Draw(t, "usable") > 0 {
				hold := rapid.IntRange(7, 15).Draw(t, "hold")
				weeks[i].choices = append(weeks[i].choices, choice{rig: rig, help: helps[rig], hold: hold, short: max(0, 10-hold), slack: max(0, rapid.IntRange(-9, 3).Draw(t, "slack"))})
			}
		}
	}
	return weeks
})

// inOrderOfWeight is a cost, what weighs most first: effort, length, help, changes, and
// the distance from twelve seconds.
func inOrderOfWeight(c cost) []int { return []int{c.slack, c.short, c.help, c.changes, c.off} }

func everyWay(weeks []candidates, picks []int, try func([]int)) {
	if len(picks) == len(weeks) {
		try(picks)
		return
	}
	for i := range weeks[len(picks)].choices {
		everyWay(weeks, append(picks[:len(picks):len(picks)], i), try)
	}
}

// priced adds up a way's cost by the rules as written: within a step help never
// rises and a rig stays two weeks, unless the step has only one.
func priced(weeks []candidates, picks []int) (cost, bool) {
	var b cost
	for i, pick := range picks {
		c := weeks[i].choices[pick]
		b.slack += c.slack
		b.short += max(0, 10-c.hold)
		b.help += c.help
		b.off += max(c.hold-12, 12-c.hold)
		if i == 0 {
			continue
		}
		before := weeks[i-1].choices[picks[i-1]]
		if weeks[i].step != weeks[i-1].step {
			b.changes++
			continue
		}
		if before.rig == c.rig {
			continue
		}
		b.changes++
		opened := i == 1 || weeks[i-2].step != weeks[i-1].step || weeks[i-2].choices[picks[i-2]].rig != before.rig
		ends := i == len(weeks)-1
		if gate := weeks[i].gate || weeks[i-1].gate; gate {
			opened, ends = false, ends && !weeks[i].gate
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
