package view_test

import (
	"math"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// progressOf draws the fixture's log with what was noted on its weeks' mornings.
func progressOf(t *testing.T, mornings ...program.Pain) view.Progress {
	t.Helper()
	r := viewtest.Review()
	for i, pain := range mornings {
		r.Progress[i].Mornings = pain
	}
	v, problems := view.NewProgress(viewtest.Coach(), viewtest.Library(), viewtest.Program(), r)
	if problems != nil {
		t.Fatal(problems)
	}
	return v
}

// Mornings are a second mark among the joints, the worst of each week, and a week
// without one has none. Of all that nothing is public.
func TestMorningsAreAMarkOfTheCoachsChart(t *testing.T) {
	none := progressOf(t)
	quiet := program.Pain{Given: true}
	some := progressOf(t, quiet, program.Pain{}, program.Pain{Given: true, Wrists: 1, Elbows: 4, Shoulders: -1, Other: -1})
	if diff := cmp.Diff(none.Public, some.Public, cmpopts.EquateNaNs()); diff != "" {
		t.Errorf("the public charts know of mornings:\n%s", diff)
	}
	if diff := cmp.Diff(none, progressOf(t, quiet), cmpopts.EquateNaNs()); diff != "" {
		t.Errorf("a morning of nothing is drawn:\n%s", diff)
	}
	last := len(some.Coach) - 1
	before, joints := none.Coach[last].Series, some.Coach[last].Series
	if len(joints) != len(before)+1 || joints[len(before)].Form != view.SeriesSpots || joints[len(before)].Name != "mornings" {
		t.Fatalf("the joints are %+v", joints)
	}
	values := joints[len(before)].Values
	if values[0] != 0 || !math.IsNaN(values[1]) || values[2] != 4 {
		t.Errorf("mornings of %v", values[:3])
	}
}
