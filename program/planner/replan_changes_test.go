package planner

import (
	"reflect"
	"slices"
	"testing"
	"time"

	"gatepost/program"
)

// Of a week that has begun, printed as three or four holds of eleven seconds a day, the review
// says what is left. Elbows at 6 on the Friday before: Wednesday is leans, and Friday
// six sets in ten of ten seconds, .65 of 16.4. At 6 on its Wednesday: Friday rests.
func TestBegunWeekSaysWhatIsLeft(t *testing.T) {
	lib, a := library(t), maren(t)
	a.Training.Away = nil
	p, _ := Plan(lib, &a)
	wall := []program.PlanVersion{Version(&p, 1, a.Measured)}
	monday := p.Weeks[4].Start
	done := asPrinted(&p, 0, 1, 2, 3).Entries
	for name, c := range map[string]struct {
		log   []program.Entry
		on    program.Date
		notes []program.Note
		cards []program.Date
	}{
		"before it": {[]program.Entry{painful(monday-3, 6)}, monday + 1, []program.Note{note(changeHold, seconds("before", 11), seconds("after", 10)), note(changeSets, count("before", 4), count("after", 2))}, []program.Date{monday + 2, monday + 4}},
		"in it":     {[]program.Entry{{Date: monday, AsPrinted: true}, painful(monday+2, 6)}, monday + 2, []program.Note{note(changeNone)}, []program.Date{monday + 4}},
	} {
		a.Log.Entries = append(slices.Clone(done[:len(done)-1]), c.log...)
		review, _, _ := Read(lib, &a, wall, c.on)
		want := program.Change{Week: 5, Start: monday, Notes: c.notes, Cards: c.cards}
		if got := review.Changes[0]; !reflect.DeepEqual(got, want) {
			t.Errorf("%s: %+v, wanted %+v", name, got, want)
		}
	}
}

// A goal that comes down to a step below the work that hangs leaves that work behind: the
// week has main work at the new goal, sets of 10 to 15 s of some 22, and not none because a
// band had more of it (26 s a step above).
func TestALowerGoalHasMainWork(t *testing.T) {
	lib := library(t)
	a := program.Assessment{
		Slug: "someone", Measured: january(16), Kit: []string{"parallettes", "pull-up bar"},
		Athlete:  program.Athlete{Name: "Some One", Sex: program.SexMale, Born: program.NewDate(2012, 1, 8), Mass: 61, Height: 1.86, ArmSpan: 1.86},
		Training: program.Training{Experience: 1, Since: january(9), Days: []time.Weekday{time.Tuesday, time.Sunday}, Minutes: 60},
		Health:   program.Health{Wrists: program.JointFine, Elbows: program.JointFine, Shoulders: program.JointFine, Guardian: "Some Body"},
		Bands: []program.Band{
			{Name: "one", Rest: 1, Pulls: []program.Pull{{At: 1.3, Force: 73}, {At: 1.6, Force: 109.5}, {At: 1.9, Force: 138.7}}},
			{Name: "two", Rest: 1, Pulls: []program.Pull{{At: 1.3, Force: 62}, {At: 1.6, Force: 93}, {At: 1.9, Force: 117.8}}},
		},
		Hanging: program.Hanging{Anchor: 1.92, Offset: -0.04, Support: 0.1, Drops: []float64{0, 0.2}},
		Tests: []program.Hold{
			{Step: "tuck", Seconds: 33},
			{Step: "one-leg-half-lay", Rig: program.Rig{Bands: []string{"one"}}, Seconds: 2},
			{Exercise: "planche-lean", Ahead: 0.24, Seconds: 1},
		},
		Goal: program.Goal{Skill: "planche", Step: "full", Hold: 6, By: program.NewDate(2027, 2, 4)},
	}
	p, _ := Plan(lib, &a)
	wall := []program.PlanVersion{Version(&p, 1, a.Measured)}
	a.Goal.Step = "tuck"
	a.Log.Entries = []program.Entry{{Date: january(19), AsPrinted: true}}
	_, now, _ := Read(lib, &a, wall, january(22))
	if was, w := &p.Weeks[1], &now.Weeks[1]; was.Step != "half-open-tuck" || w.Step != "tuck" || w.Sets < 3 || w.Hold < 10 || w.Hold > 15 {
		t.Errorf("%s before, then %s %d × %d s", was.Step, w.Step, w.Sets, w.Hold)
	}
}
