package view

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"gatepost/program"

	"pgregory.net/rapid"
)

// sidedWeeks draws a block in which some work is done one side at a time.
func sidedWeeks(t *rapid.T) []program.Week {
	day := program.NewDate(2027, 1, 4)
	var weeks []program.Week
	for range rapid.IntRange(1, 16).Draw(t, "weeks") {
		w := program.Week{Start: day}
		for range rapid.IntRange(0, 3).Draw(t, "sessions") {
			session := program.Session{Date: day}
			for _, role := range []program.Role{program.RoleAhead, program.RoleMain, program.RolePull} {
				session.Items = append(session.Items, program.Prescription{
					Exercise: rapid.SampledFrom([]string{"lay", "row"}).Draw(t, "exercise"), Role: role,
					Sets: rapid.IntRange(1, 6).Draw(t, "sets"), Hold: 10, EachSide: rapid.Bool().Draw(t, "each side")})
			}
			w.Sessions = append(w.Sessions, session)
			day += 2
		}
		day = w.Start + 7
		weeks = append(weeks, w)
	}
	return weeks
}

// leftMore counts by exercise how many sets more the left side gets in a block.
func leftMore(weeks []program.Week, turns turns) map[string]int {
	more := map[string]int{}
	for _, w := range weeks {
		for _, s := range w.Sessions {
			for i := range s.Items {
				if work, is := oddOf(s.Date, &s.Items[i]); is && turns[work] {
					more[work.exercise]--
				} else if is {
					more[work.exercise]++
				}
			}
		}
	}
	return more
}

// Whatever days are odd, no side of an exercise is ever more than a set ahead.
func TestSidesEvenOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		weeks := sidedWeeks(t)
		turns := turns{}.after(weeks)
		for n := range weeks {
			for exercise, more := range leftMore(weeks[:n+1], turns) {
				if more < 0 || more > 1 {
					t.Fatalf("%s: the left is %d sets ahead after week %d", exercise, more, n+1)
				}
			}
		}
	})
}

// A new plan leaves the sides of what any plan before it had: that card may be on
// paper. Planned again unchanged, nothing moves at all.
func TestCardsOnPaperKeepTheirSides(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		first, second := sidedWeeks(t), sidedWeeks(t)
		hung := turns{}.after(first)
		later := hung.after(second)
		for work, right := range hung {
			if was, stands := later.after(first)[work]; !stands || was != right {
				t.Fatalf("%v changed sides", work)
			}
		}
		if !maps.Equal(hung, hung.after(first)) || !maps.Equal(later, later.after(second)) {
			t.Fatal("the same plan moves sides")
		}
	})
}

// A day less, and the next that is new makes up for it.
func TestNewDaysMakeUpForDaysThatWent(t *testing.T) {
	day := program.NewDate(2027, 1, 4)
	week := func(sets ...int) []program.Week {
		w := program.Week{}
		for i, n := range sets {
			w.Sessions = append(w.Sessions, program.Session{Date: day + program.Date(i), Items: []program.Prescription{
				{Exercise: "lay", Role: program.RoleMain, Sets: n, Hold: 10, EachSide: true}}})
		}
		return []program.Week{w}
	}
	hung := turns{}.after(week(5, 5, 4, 4, 4))
	next := week(4, 5, 3, 3, 4)
	var got []Side
	for _, s := range next[0].Sessions {
		if work, is := oddOf(s.Date, &s.Items[0]); is {
			got = append(got, begins(hung.after(next)[work]))
		}
	}
	if want := []Side{Right, Left, Left}; !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// What is written, and where: the side that begins comes first, and a card's sets
// have letters. Tests and check holds are single holds and have no turns.
func TestOddSidesInWords(t *testing.T) {
	s := newSpeech(program.Coach{}, &program.Library{Words: program.Words{
		"amount.holds": "{sets} × {hold} s", "amount.sides": "{half} a side", "amount.left_only": "left only", "amount.right_only": "right only",
		"amount.left_first": "left {more}, right {fewer}", "amount.right_first": "right {more}, left {fewer}",
		"card.left": "L", "card.right": "R", "rig.free": "free",
	}}, &program.Program{})
	sided := func(sets int) program.Prescription {
		return program.Prescription{Exercise: "lay", Step: "lay", Role: program.RoleMain, Sets: sets, Hold: 10, EachSide: true}
	}
	check, test := sided(1), sided(1)
	check.Check, check.Role, test.Max, test.Role = true, program.RoleTest, true, program.RoleTest
	session := program.Session{Date: 1, Items: []program.Prescription{sided(5), check, test}}
	for i, sets := range []int{3, 4, 1} {
		item := sided(sets)
		item.Role = []program.Role{program.RoleAhead, program.RoleSecond, program.RoleStrength}[i]
		session.Items = append(session.Items, item)
	}
	weeks := []program.Week{{Sessions: []program.Session{session}}}
	var lines, letters []string
	for _, item := range s.weeks(weeks, turns{}.after(weeks))[0].Sessions[0].Items {
		if item.RoleKey != program.RoleTest {
			lines = append(lines, item.Line)
		} else if item.Sides != "" {
			t.Errorf("a test of %q", item.Sides)
		}
		letters = append(letters, strings.Join(s.sidesInTurn(item), ""))
	}
	want := []string{"5 × 10 s, left 3, right 2, free", "3 × 10 s, right 2, left 1, free", "4 × 10 s, 2 a side, free", "1 × 10 s, left only, free"}
	if !slices.Equal(lines, want) {
		t.Errorf("got %q", lines)
	}
	if got := strings.Join(letters, " "); got != "LRLRL   RLR  L" {
		t.Errorf("letters %q", got)
	}
}

func TestGateSetsOfTwoSides(t *testing.T) {
	for _, c := range []struct {
		sets, sides int
		key, last   string
	}{{3, 0, "gate.sets", "3"}, {4, 2, "gate.sets_each_side", "2"}, {5, 2, "gate.sets_odd_sides", "2"}, {1, 2, "gate.sets", "3"}} {
		key, pairs := GateSets(program.Gate{Sets: c.sets, Hold: 10}, c.sides)
		if key != c.key || pairs[len(pairs)-1] != c.last {
			t.Errorf("%d sets of %d sides: %s %v", c.sets, c.sides, key, pairs)
		}
	}
}
