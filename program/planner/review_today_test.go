package planner_test

import (
	"testing"

	"gatepost/program"
	"gatepost/program/planner"
)

// What is printed for the day of the reading is not missed yet: on Saturday evening it is
// still to come, on Sunday it is. After three weeks without a line all six sessions that
// were printed since are open, not only those of the last two weeks.
func TestTodayIsNotMissed(t *testing.T) {
	c := readPanel(t, []string{"testdata/panel/34-press-beginner.txt"})[0]
	a := *c.assessment
	tuesday := a.Measured + 1
	a.Log.Entries = []program.Entry{{Date: tuesday, AsPrinted: true}}
	for on, want := range map[program.Date]int{tuesday + 4: 0, tuesday + 5: 1} {
		if r, _, _ := planner.Read(c.library, &a, nil, on); r.Done != 1 || r.Missed != want {
			t.Errorf("on %s: %d done, %d missed, want 1 and %d", on, r.Done, r.Missed, want)
		}
	}
	r, _, _ := planner.Read(c.library, &a, nil, tuesday+23)
	if len(r.Flags) != 1 || r.Flags[0].Note.Code != "flag-silent" || r.Flags[0].Note.Values[1].Number != 6 {
		t.Errorf("after three weeks: %v", r.Flags)
	}
}

// Four of ten at the wrists, and again next morning: the session of the day after has
// nothing on flat hands, rocking on all fours among it; it still pulls.
func TestRestingWristsCarryNothing(t *testing.T) {
	c := readPanel(t, []string{"testdata/panel/34-press-beginner.txt"})[0]
	a := *c.assessment
	tuesday := a.Measured + 1
	sore := program.Pain{Given: true, Wrists: 4, Elbows: -1, Shoulders: -1, Other: -1}
	a.Log.Entries = []program.Entry{
		{Date: tuesday, Exercise: "push-up", Sets: []program.SetDone{{Number: 1, Reps: 2, RPE: 9, Pain: sore}}},
		{Date: tuesday + 3, Morning: true, Sets: []program.SetDone{{Pain: sore}}},
	}
	p := planner.Replan(c.library, &a, nil, tuesday+3)
	got := p.Weeks[0].Sessions[1]
	pulls := false
	for _, item := range got.Items {
		pulls = pulls || item.Role == program.RolePull
		if item.Exercise == "wrist-rocks" || item.Exercise == "push-up" || item.Exercise == "scapular-push-up" {
			t.Errorf("%s has %s", got.Date, item.Exercise)
		}
	}
	if !pulls {
		t.Errorf("nothing is pulled: %+v", got.Items)
	}
}
