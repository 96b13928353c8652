package planner

import (
	"slices"
	"testing"
	"time"

	"gatepost/program"
)

// kept is Maren's first plan with some wishes, hung and kept, and some weeks of it done as
// printed.
func kept(t *testing.T, weeks []int, wishes ...program.Wish) (program.Assessment, []program.PlanVersion, program.Program) {
	t.Helper()
	a := maren(t)
	a.Training.Away, a.Wishes = nil, wishes
	p, problems := Plan(library(t), &a)
	if problems.Stop() {
		t.Fatal(problems)
	}
	a.Log = asPrinted(&p, weeks...)
	return a, []program.PlanVersion{Version(&p, 1, a.Measured)}, p
}

// A week set by hand stays in the weeks ahead when the log is read, and once it is over the
// plan goes on from the last week of its own: whoever held the tuck, free, for a week in
// between is back on the half-open tuck.
func TestASetWeekIsReadBack(t *testing.T) {
	tuck := program.Wish{Kind: program.WishSet, Week: 3, Step: "tuck", Hold: 10, Sets: 3, Rig: &program.Rig{Drop: program.AnyDrop}}
	a, wall, first := kept(t, []int{0, 1}, tuck)
	review, p, _ := Read(library(t), &a, wall, first.Weeks[1].Start+6)
	if w := p.Weeks[2]; w.Step != "tuck" || w.Hold != 10 || w.Sets != 3 || !w.ByCoach || !w.Rig.Free() {
		t.Errorf("%+v", w)
	}
	is(t, review.Wishes[0], program.WishDone)
	a, wall, first = kept(t, []int{0, 1, 2}, tuck)
	review, p, _ = Read(library(t), &a, wall, first.Weeks[2].Start+6)
	if w := p.Weeks[2]; w.Step != "tuck" || !w.ByCoach {
		t.Errorf("what hung has changed: %+v", w)
	}
	for _, w := range p.Weeks[3:5] {
		if w.Step != first.Weeks[1].Step {
			t.Errorf("week %d goes on with %s", w.Number, w.Step)
		}
	}
	is(t, review.Wishes[0], program.WishOver, noteWishPast)
}

// In the week that has begun the card of a day still to come has one exercise in place of
// another, and what the coach says; it is named to print. What is set or added begins with
// the week after.
func TestTheWeekThatHasBegun(t *testing.T) {
	a, wall, first := kept(t, []int{0})
	a.Log.Entries = append(a.Log.Entries, program.Entry{Date: first.Weeks[1].Sessions[0].Date, AsPrinted: true})
	last := first.Weeks[1].Sessions[2]
	i := slices.IndexFunc(last.Items, func(it program.Prescription) bool { return it.Role == program.RoleTrunk })
	a.Wishes = program.Wishes{
		{Kind: program.WishInstead, From: last.Date, To: last.Date, Exercise: last.Items[i].Exercise, Use: "forearm-plank"},
		{Kind: program.WishSay, From: last.Date - 7, To: last.Date, Text: "Film it."},
		{Kind: program.WishSet, Week: 2, Sets: 2},
	}
	review, p, _ := Read(library(t), &a, wall, last.Date-3)
	s := sessionOn(&p.Weeks[1], last.Date)
	if !byCoach(s, "forearm-plank") || itemOf(s, last.Items[i].Exercise) != nil || !slices.Equal(s.Say, []string{"Film it."}) {
		t.Errorf("%+v", s)
	}
	if before := sessionOn(&p.Weeks[1], last.Date-4); len(before.Say) > 0 {
		t.Errorf("said on a day that is over: %+v", before)
	}
	if !slices.Contains(review.PrintNow, last.Date) {
		t.Errorf("to print: %v", review.PrintNow)
	}
	is(t, review.Wishes[0], program.WishDone)
	is(t, review.Wishes[1], program.WishDone)
	is(t, review.Wishes[2], program.WishOver, noteWishBegun)
}

// A log read on a Monday, before the week has begun, plans that day anew: what the coach says
// for it is on its card.
func TestMondaysWordsAreOnMondaysCard(t *testing.T) {
	a, wall, first := kept(t, []int{0})
	on := first.Weeks[1].Start
	a.Training.Days = []time.Weekday{time.Monday, time.Wednesday, time.Friday}
	a.Wishes = program.Wishes{{Kind: program.WishSay, From: on, To: on, Text: "Film it."}}
	review, p, _ := Read(library(t), &a, wall, on)
	if s := sessionOn(&p.Weeks[1], on); s == nil || !slices.Equal(s.Say, []string{"Film it."}) {
		t.Errorf("%+v", s)
	}
	is(t, review.Wishes[0], program.WishDone)
}

// What is written after a plan was kept waits for the next one; words do not.
func TestWishesWaitForTheNextPlan(t *testing.T) {
	a, wall, first := kept(t, []int{0})
	a.Plans = wall
	a.Wishes = program.Wishes{
		{Kind: program.WishAvoid, Exercise: "hollow-hold"},
		{Kind: program.WishSet, Week: 4, Sets: 2},
		{Kind: program.WishSay, From: first.Weeks[2].Start, To: first.Weeks[2].Start + 6, Text: "Film it."},
		{Kind: program.WishAvoid, Exercise: "ring-row"}, // which is not there anyway
	}
	on, _ := Wall(library(t), &a)
	is(t, on.Program.Wishes[0], program.WishWaits, noteWishKept)
	is(t, on.Program.Wishes[1], program.WishWaits, noteWishKept)
	is(t, on.Program.Wishes[2], program.WishDone)
	is(t, on.Program.Wishes[3], program.WishDone)
	if len(on.Program.Weeks[2].Sessions[0].Say) != 1 || holdsExercise(&on.Next.Weeks[2], "hollow-hold") {
		t.Error("words are not on the wall, or what is avoided is in the next plan")
	}
	is(t, on.Next.Wishes[0], program.WishDone)
}

// After five of ten at the wrists nothing is added to them until they are quiet, and the
// week that is set comes back in steps: pain goes before every wish.
func TestPainGoesBeforeWishes(t *testing.T) {
	a, wall, first := kept(t, []int{0, 1},
		program.Wish{Kind: program.WishSet, Week: 3, Hold: 12, Sets: 5},
		program.Wish{Kind: program.WishAdd, Days: []time.Weekday{1, 3, 5}, Exercise: "push-up", Sets: 2})
	n := len(a.Log.Entries) - 1
	a.Log.Entries[n].Sets = []program.SetDone{{Pain: program.Pain{Given: true, Wrists: 6, Elbows: -1, Shoulders: -1, Other: -1}}}
	review, p, _ := Read(library(t), &a, wall, first.Weeks[1].Start+6)
	for _, it := range items(&p.Weeks[2]) {
		if isMain(&it) && it.Hold*it.Sets > 12*3 || it.Exercise == "push-up" {
			t.Errorf("week 3: %+v", it)
		}
	}
	for i, r := range review.Wishes {
		if r.State == program.WishDone {
			t.Errorf("wish %d is done", i)
		}
	}
}
