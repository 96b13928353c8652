package planner

import (
	"slices"
	"testing"

	"gatepost/program"
)

// ratedSets are main sets of ten printed seconds, so many of them short, at one RPE.
func ratedSets(n, short int, rpe float64) []setRead {
	item := &program.Prescription{Role: program.RoleMain, Step: "tuck", Hold: 10, StraightArm: true}
	sets := make([]setRead, n)
	for i := range sets {
		sets[i] = setRead{SetRead: program.SetRead{Step: "tuck", Printed: 10, Done: program.SetDone{Seconds: 10, RPE: rpe}}, item: item}
		if i < short {
			sets[i].Done.Seconds = 7
		}
	}
	return sets
}

// What the last two weeks' main sets say: from eight on, more than one in five that stopped
// short; from six rated on, a mean of nine or more, and none over six. Not in the first week
// of a log, in which everything is new, and not of sets of two weeks ago (our judgement).
func TestEffortIsLookedAt(t *testing.T) {
	for name, c := range map[string]struct {
		sets       []setRead
		ago, began int // days
		want       []string
	}{
		"six at nine":         {ratedSets(6, 0, 9), 1, 7, []string{flagRPEHigh}},
		"six a little easier": {ratedSets(6, 0, 8.9), 1, 7, nil},
		"five at nine":        {ratedSets(5, 0, 9), 1, 7, nil},
		"in the first week":   {ratedSets(6, 0, 9), 1, 6, nil},
		"thirteen days ago":   {ratedSets(6, 0, 9), 13, 20, []string{flagRPEHigh}},
		"fourteen days ago":   {ratedSets(6, 0, 9), 14, 20, nil},
		"six at six":          {ratedSets(6, 0, 6), 1, 7, []string{flagRPELow}},
		"one of them harder":  {append(ratedSets(5, 0, 6), ratedSets(1, 0, 6.5)...), 1, 7, nil},
		"two of eight short":  {ratedSets(8, 2, 7.5), 1, 7, []string{flagSetsShort}},
		"two of seven":        {ratedSets(7, 2, 7.5), 1, 7, nil},
		"two of ten":          {ratedSets(10, 2, 7.5), 1, 7, nil},
		"three of fourteen":   {ratedSets(14, 3, 7.5), 1, 7, []string{flagSetsShort}},
	} {
		on := monday + 40
		di := diary{on: on, days: []*dayRead{{date: on - program.Date(c.began)}, {date: on - program.Date(c.ago), sets: c.sets}}}
		var got []string
		for _, f := range di.effortFlags() {
			got = append(got, f.Note.Code)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}

// A third of the sessions missed in two weeks is said, and one alone is not; after ten days
// without a word that is what is said (our judgement). Sessions are on Mondays, Wednesdays
// and Fridays.
func TestMissedSessionsAreSaid(t *testing.T) {
	lib, a := library(t), maren(t)
	a.Training.Away = nil
	p, _ := Plan(lib, &a)
	wall := []program.PlanVersion{Version(&p, 1, a.Measured)}
	start := p.Weeks[0].Start
	for name, c := range map[string]struct {
		done []program.Date
		on   program.Date
		want string
	}{
		"one of six":          {[]program.Date{0, 2, 4, 7, 9}, 13, ""},
		"two of six":          {[]program.Date{0, 2, 4, 7}, 13, flagMissed},
		"nine days of nobody": {[]program.Date{0, 2, 4}, 13, flagMissed},
		"ten days":            {[]program.Date{0, 2, 4}, 14, flagSilent},
	} {
		b := a
		for _, day := range c.done {
			b.Log.Entries = append(b.Log.Entries, program.Entry{Date: start + day, AsPrinted: true})
		}
		review, _, _ := Read(lib, &b, wall, start+c.on)
		for _, code := range []string{flagMissed, flagSilent} {
			if slicesHasFlag(review.Flags, code) != (code == c.want) {
				t.Errorf("%s: %v, want %q", name, review.Flags, c.want)
			}
		}
	}
}
