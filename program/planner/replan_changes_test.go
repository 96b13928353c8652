package planner

import (
	"reflect"
	"slices"
	"testing"

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
