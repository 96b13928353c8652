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
