package planner

import (
	"fmt"
	"slices"
	"testing"

	"gatepost/program"
)

// painful is a session done as printed that left this much pain at the elbows.
func painful(date program.Date, elbows int) program.Entry {
	return program.Entry{Date: date, AsPrinted: true, Sets: []program.SetDone{{Pain: program.Pain{Given: true, Wrists: -1, Elbows: elbows, Shoulders: -1, Other: -1}}}}
}

func morningAt(date program.Date, elbows int) program.Entry {
	e := painful(date, elbows)
	e.AsPrinted, e.Morning = false, true
	return e
}

// loading are the exercises of a session that load elbows with straight arms or under
// a push, by their names in the library.
func loading(s *program.Session) []string {
	var out []string
	for _, item := range s.Items {
		switch item.Exercise {
		case "tuck-hold", "half-open-tuck-hold", "open-tuck-hold", "advanced-tuck-hold", "planche-lean", "tuck-on-scale",
			"pseudo-planche-push-up", "raised-pseudo-planche-push-up", "wall-push-up", "band-straight-arm-raise",
			"dumbbell-straight-arm-raise", "floor-straight-arm-press", "wall-straight-arm-press",
			"band-straight-arm-pull", "floor-straight-arm-pull", "active-hang":
			out = append(out, item.Exercise)
		}
	}
	return out
}

// Elbows at 6 on Wednesday and 5 the next morning: whatever loads them with straight
// arms or under a push goes from the cards up to Sunday, three days after the morning,
// and those cards are named to print, also in the week that has begun. Then leans, three
// light sessions, three nearly full ones (common practice; the numbers are our judgement).
func TestElbowsAtSix(t *testing.T) {
	lib, a := library(t), maren(t)
	a.Training.Away = nil
	p, _ := Plan(lib, &a)
	monday := p.Weeks[4].Start
	a.Log = asPrinted(&p, 0, 1, 2, 3)
	a.Log.Entries = append(a.Log.Entries, program.Entry{Date: monday, AsPrinted: true}, painful(monday+2, 6), morningAt(monday+3, 5))
	if len(loading(sessionOn(&p.Weeks[4], monday+4))) < 2 {
		t.Fatal("Friday was to load the elbows")
	}
	review, q, _ := Read(lib, &a, []program.PlanVersion{Version(&p, 1, a.Measured)}, monday+3)
	friday := sessionOn(&q.Weeks[4], monday+4)
	if got := loading(friday); len(got) > 0 || !hasNote(friday.Dropped, noteJointRests) {
		t.Errorf("Friday still holds %v; dropped %v", got, friday.Dropped)
	}
	if len(friday.Items) < 3 {
		t.Errorf("nothing is left of Friday: %v", friday.Items)
	}
	if !slices.Contains(review.PrintNow, monday+4) {
		t.Errorf("cards to print: %v, without Friday %s", review.PrintNow, monday+4)
	}
	next := &q.Weeks[5]
	first := sessionOn(next, monday+7)
	for _, item := range first.Items {
		if item.Role == program.RoleMain || item.Load > 0.5 {
			t.Errorf("the first session back holds %s at %.2f of the maximum", item.Exercise, item.Load)
		}
	}
	sets := 0
	for _, d := range []program.Date{monday + 9, monday + 11, monday + 14} {
		w := &q.Weeks[int(d-p.Start)/7]
		for _, item := range sessionOn(w, d).Items {
			if item.Role == program.RoleAhead {
				t.Errorf("%s: heavy work on the way back", d)
			}
			if isMain(&item) {
				sets += item.Sets
				if 100*float64(item.Hold) > 65*item.MaxHold {
					t.Errorf("%s: %d s of %.1f", d, item.Hold, item.MaxHold)
				}
			}
		}
	}
	if sets == 0 {
		t.Error("no main work on the light days")
	}
}

// Wrists at 7 after presses at the wall, and at 6 the next morning: no press and no push on
// the cards of the three days after, and from then on none on flat hands, as long as they
// count as sore; on a box with handles it goes on (common practice: neutral wrists first).
func TestWristsAtSevenStopPresses(t *testing.T) {
	lib, a := library(t), maren(t)
	a.Training.Away = nil
	a.Goal = program.Goal{Skill: "handstand-push-up", Step: "raised-hands-5", Reps: 3, Hold: 9, By: monday + 360}
	a.Bands, a.Kit = nil, []string{"wall", "box", "parallettes"}
	a.Tests = []program.Hold{{Exercise: "wall-handstand-line", Seconds: 60}, {Exercise: "push-up", Reps: 25}, {Step: "lowering", Reps: 15, Seconds: 45}}
	flat := []string{"push-up", "pike-push-up", "wall-handstand-lowering", "wall-handstand-push-up", "chest-to-wall-push-up"}
	hurt := program.Pain{Given: true, Wrists: 7, Elbows: -1, Shoulders: -1, Other: -1}
	p, _ := Plan(lib, &a)
	if first := sessionOn(&p.Weeks[0], monday+2); !slices.ContainsFunc(first.Items, func(i program.Prescription) bool { return slices.Contains(flat, i.Exercise) }) {
		t.Fatal("Wednesday was to press on flat hands")
	}
	next := hurt
	next.Wrists = 6
	a.Log.Entries = []program.Entry{{Date: monday, AsPrinted: true, Sets: []program.SetDone{{Pain: hurt}}}, {Date: monday + 1, Morning: true, Sets: []program.SetDone{{Pain: next}}}}
	_, q, _ := Read(lib, &a, []program.PlanVersion{Version(&p, 1, a.Measured)}, monday+1)
	for _, day := range []program.Date{monday + 2, monday + 4} {
		for _, item := range sessionOn(&q.Weeks[0], day).Items {
			if item.Step != "" || slices.Contains(flat, item.Exercise) {
				t.Errorf("%s still has %s", day, item.Exercise)
			}
		}
	}
	presses := false
	for i := range q.Weeks[1:] {
		for _, item := range items(&q.Weeks[1+i]) {
			presses = presses || item.Role == program.RoleMain
			if slices.Contains(flat, item.Exercise) {
				t.Errorf("week %d has %s on sore wrists", i+2, item.Exercise)
			}
		}
	}
	if !presses || !hasNote(q.Notes, noteOmitWrists) {
		t.Errorf("presses %v; notes %v", presses, q.Notes)
	}
}

// A session that hurt again, or a morning after it that was not quiet, stays where it
// was on the way back; quiet ones go on.
func TestWayBackWaitsForQuiet(t *testing.T) {
	lib, a := library(t), maren(t)
	a.Training.Away = nil
	p, _ := Plan(lib, &a)
	monday := p.Weeks[1].Start
	wall := []program.PlanVersion{Version(&p, 1, a.Measured)}
	stage := func(on program.Date, more ...program.Entry) stageBack {
		b := a
		b.Log = asPrinted(&p, 0)
		b.Log.Entries = append(append(b.Log.Entries, painful(monday, 5)), more...)
		_, behind, _ := begin(lib, &b)
		r := newReading(behind, wall, on)
		return newPlan(behind, r.behind(nil), r.block).stageBack(on + 1)
	}
	done := func(day int) program.Entry { return program.Entry{Date: monday + program.Date(day), AsPrinted: true} }
	for name, c := range map[string]struct {
		log  []program.Entry
		want stageBack
	}{
		"nothing since":                        {nil, backLeans},
		"one quiet session":                    {[]program.Entry{done(4)}, backLight},
		"two":                                  {[]program.Entry{done(4), done(7)}, backLight},
		"one that hurt: 3":                     {[]program.Entry{painful(monday+4, 3)}, backLeans},
		"one with a morning of 1 two days on":  {[]program.Entry{done(4), morningAt(monday+6, 1)}, backLeans},
		"one with a morning of 1 on the third": {[]program.Entry{done(4), morningAt(monday+7, 1)}, backLight},
		"one with quiet mornings":              {[]program.Entry{done(4), morningAt(monday+5, 0), morningAt(monday+6, 0)}, backLight},
	} {
		if got := stage(monday+8, c.log...); got != c.want {
			t.Errorf("%s: stage %d, want %d", name, got, c.want)
		}
	}
	days := []int{4, 7, 9, 11, 14, 16, 18} // one of leans, three light, three nearly full
	for n, want := range []stageBack{backLeans, backLight, backLight, backLight, backNear, backNear, backNear, backNone} {
		var log []program.Entry
		for _, day := range days[:n] {
			log = append(log, done(day))
		}
		if got := stage(monday+19, log...); got != want {
			t.Errorf("after %d quiet sessions: stage %d, want %d", n, got, want)
		}
	}
}

// Three whole days without straight-arm work after the last day or morning that stops
// it: pain of five of ten in a session, three above usual in the morning (common
// practice; the numbers are our judgement).
func TestThreeDaysOfRest(t *testing.T) {
	for name, c := range map[string]struct {
		log   []program.Entry
		until program.Date
	}{
		"five in a session":            {[]program.Entry{painful(monday, 5)}, monday + 3},
		"and five the morning after":   {[]program.Entry{painful(monday, 5), morningAt(monday+1, 5)}, monday + 4},
		"three in the morning":         {[]program.Entry{morningAt(monday+1, 3)}, monday + 4},
		"four in a session":            {[]program.Entry{painful(monday, 4)}, 0},
		"two in the morning":           {[]program.Entry{morningAt(monday+1, 2)}, 0},
		"five on Monday and Wednesday": {[]program.Entry{painful(monday, 5), painful(monday+2, 5)}, monday + 5},
	} {
		if got := readingOf(t, c.log, nil).restAfter().until; got != c.until {
			t.Errorf("%s: rest until %s, want %s", name, got, c.until)
		}
	}
}

// On the way back a light day has six sets in ten, each at most 65 in a hundred of the
// longest hold, and a nearly full one all of them at 72; nothing heavier than the main
// work, nothing to its end (our judgement).
func TestWayBackInNumbers(t *testing.T) {
	main := program.Prescription{Role: program.RoleMain, Step: "tuck", Sets: 5, Hold: 13, MaxHold: 18, Load: 0.7, StraightArm: true}
	test := program.Prescription{Role: program.RoleTest, Step: "tuck", Sets: 1, Max: true, MaxHold: 18, Load: 0.7, StraightArm: true}
	ahead := main
	ahead.Role = program.RoleAhead
	row := program.Prescription{Role: program.RolePull, Sets: 4, Reps: 8}
	p := &plan{}
	for name, c := range map[string]struct {
		item       program.Prescription
		stage      stageBack
		sets, hold int
	}{
		"light":       {main, backLight, 3, 11},
		"nearly full": {main, backNear, 5, 12},
		"a light row": {row, backLight, 4, 0},
		"a test":      {test, backLight, 1, 11},
		"heavy work":  {ahead, backNear, 0, 0},
		"leans only":  {main, backLeans, 0, 0},
	} {
		got, ok := p.easedItem(c.item, c.stage)
		if ok != (c.sets > 0) || ok && (got.Sets != c.sets || got.Hold != c.hold || got.Max) {
			t.Errorf("%s: kept %v, %d × %d s, want %d × %d s", name, ok, got.Sets, got.Hold, c.sets, c.hold)
		}
	}
}

// On Wednesday, with Monday's session missed, five sets of ten seconds are still to come on
// Friday; eased to three, they are what the week counts. What Monday and Wednesday lose by
// the way back was not counted before.
func TestMissedSessionsLoseNothingTwice(t *testing.T) {
	p := capableOf(t, 20, nil)
	w := program.Week{Number: 1, Start: p.weeks[0].start, Kind: program.WeekBuild, HalfSeconds: 300}
	for _, day := range []program.Date{0, 2, 4} {
		w.Sessions = append(w.Sessions, program.Session{Date: w.Start + day, Items: []program.Prescription{
			{Exercise: "tuck-hold", Step: "tuck", Role: program.RoleMain, Sets: 5, Hold: 10, StraightArm: true, MaxHold: 20, Load: 0.8}}})
	}
	p.past.weeks, p.past.counted = []program.Week{w}, []int{100}
	p.past.rest = rest{joints: 1, on: w.Start + 2, from: w.Start + 2, until: w.Start - 3, sessions: 1, begun: []program.Date{w.Start + 2, w.Start + 4}}
	if p.easeBegun(); p.past.counted[0] != 60 || p.past.weeks[0].HalfSeconds != 220 {
		t.Errorf("%d half seconds counted of %d, want 60 of 220", p.past.counted[0], p.past.weeks[0].HalfSeconds)
	}
}

// Elbows that rest are turned, and curl nothing: no band, be it light. Wrists that rest leave
// curls as they are.
func TestElbowsThatRestCurlNothing(t *testing.T) {
	const wrists, elbows = jointSet(1), jointSet(2)
	p := capableOf(t, 20, nil)
	for _, c := range []struct {
		joints   jointSet
		exercise string
		role     program.Role
		want     string
	}{
		{elbows, "light-band-curl", program.RolePrepare, "forearm-turns 2 × 8"},
		{elbows, "band-curl", program.RolePull, ""},
		{wrists, "light-band-curl", program.RolePrepare, "light-band-curl 2 × 10"},
		{wrists, "band-curl", program.RolePull, "band-curl 2 × 10"},
	} {
		p.past.rest.joints = c.joints
		got := ""
		if item, ok := p.easedItem(program.Prescription{Exercise: c.exercise, Role: c.role, Sets: 2, Reps: 10}, backRest); ok {
			got = fmt.Sprintf("%s %d × %d", item.Exercise, item.Sets, item.Reps)
		}
		if got != c.want {
			t.Errorf("joints %b rest, %s: %q, wanted %q", c.joints, c.exercise, got, c.want)
		}
	}
}

// So it is on a day of practice: the light curl before it becomes turns.
func TestElbowsThatRestBeforePracticeAreTurned(t *testing.T) {
	p := &practice{plan: capableOf(t, 20, nil)}
	day := p.weeks[0].start
	p.past.rest = rest{joints: 2, from: day, until: day}
	s := program.Session{Date: day, Items: []program.Prescription{
		{Exercise: "light-band-curl", Role: program.RolePrepare, Sets: 2, Reps: 10},
		{Exercise: "hollow-hold", Role: program.RoleTrunk, Sets: 3, Hold: 20}, {Exercise: "band-row", Role: program.RolePull, Sets: 3, Reps: 10}}}
	p.easePractice(&s)
	var got []string
	for _, item := range s.Items {
		got = append(got, item.Exercise)
	}
	if want := []string{"forearm-turns", "hollow-hold"}; !slices.Equal(got, want) {
		t.Errorf("%v, wanted %v", got, want)
	}
}
