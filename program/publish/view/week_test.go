package view

import (
	"testing"

	"gatepost/program"
)

// Whoever is on the floor has tries every week; a week is said to test something only
// where it is the block's last.
func TestTriesAreNoTests(t *testing.T) {
	s := words()
	s.lib.Words["week.tests"] = "tested: {what}"
	w := program.Week{Kind: program.WeekBuild, Sessions: []program.Session{{Items: []program.Prescription{
		{Exercise: "toe-assisted-tuck", Role: program.RoleTest, Sets: 3, Try: true}}}}}
	if got := s.test(w); got != "" {
		t.Errorf("a build week: %q", got)
	}
	if w.Kind = program.WeekTest; s.test(w) == "" {
		t.Error("the test week tests nothing")
	}
}

// Where steps are counted, what is done on the floor before them is held all the same: two to
// three leans of fifteen seconds, and of a lift as many sets of five.
func TestLeansBeforeALiftAreHeld(t *testing.T) {
	s := words()
	for key, text := range map[string]string{"amount.holds_range": "{least}–{sets} × {hold} s", "amount.reps_range": "{least}–{sets} × {reps}"} {
		s.lib.Words[key] = text
	}
	s.road = &program.RoadMap{Load: program.LoadLift}
	w := program.Week{Sets: 3, SetsLeast: 2, Hold: 15, Ahead: 0.09}
	if got, want := s.setsRange(w), "2–3 × 15 s"; got != want {
		t.Errorf("%s of a lean, want %s", got, want)
	}
	w.Step, w.Ahead = "block-40", 0
	if got, want := s.setsRange(w), "2–3 × 5"; got != want {
		t.Errorf("%s of a lift, want %s", got, want)
	}
}
