package planner

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"gatepost/program"
)

// What a coach writes by hand for double progression (common practice): a little more
// every second week, to half as much again, then a set more or the harder move.
func TestDoubleProgression(t *testing.T) {
	harder := program.Exercise{ID: "harder", Trains: []program.Purpose{program.ForTrunk}, Dose: program.Dose{Sets: 3, Reps: 6}}
	for _, c := range []struct {
		name   string
		dose   program.Dose
		harder []string
		role   program.Role
		want   string // week by week, or every other week
	}{
		{"repetitions", program.Dose{Sets: 3, Reps: 8}, nil, program.RoleTrunk, "3×8 3×8 3×9 3×9 3×10 3×10 3×11 3×11 3×12 3×12 4×9 4×9 4×10"},
		{"never beyond fifteen", program.Dose{Sets: 2, Reps: 14}, nil, program.RoleTrunk, "2×14 2×14 2×15 2×15 3×14 3×14 3×15"},
		{"seconds", program.Dose{Sets: 3, Hold: 25}, nil, program.RoleTrunk, "3×25 3×25 3×30 3×30 3×35 3×35 4×30 4×30 4×35"},
		{"short holds", program.Dose{Sets: 3, Hold: 10}, nil, program.RoleTrunk, "3×10 3×10 3×12 3×12 3×14 3×14 4×12"},
		{"five sets at most", program.Dose{Sets: 4, Hold: 10}, nil, program.RoleTrunk, "4×10 4×10 4×12 4×12 4×14 4×14 5×12 5×12 5×14 5×14 4×10"},
		{"the harder move", program.Dose{Sets: 3, Hold: 20}, []string{"harder"}, program.RoleTrunk, "3×20 3×20 3×25 3×25 3×30 3×30 harder 3×6 harder 3×6 harder 3×7"},
		{"pulling, heavier from the start", program.Dose{Sets: 3, Reps: 4}, nil, program.RolePull, "3×4 3×4 3×4 3×5 3×5 3×5 3×6 3×6 3×6 3×4"},
	} {
		e := program.Exercise{ID: "it", Trains: []program.Purpose{program.ForTrunk}, Dose: c.dose, Harder: c.harder}
		x := exercises{client: &client{lib: &program.Library{Exercises: []program.Exercise{e, harder}}, athlete: &program.Assessment{}}, came: map[string]int{"it": 0}}
		var got []string
		for week := range strings.Count(c.want, "×") {
			item := x.dose(day{kind: program.WeekBuild, straight: true, builds: week}, &e, c.role)
			name := strings.TrimPrefix(item.Exercise+" ", "it ")
			got = append(got, fmt.Sprintf("%s%d×%d", name, item.Sets, item.Reps+item.Hold))
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%s:\n%s, want\n%s", c.name, s, c.want)
		}
		if item := x.dose(day{kind: program.WeekDeload, builds: 9}, &e, c.role); item.Exercise != "it" || item.Reps+item.Hold != c.dose.Reps+c.dose.Hold || item.Sets != c.dose.Sets/2 {
			t.Errorf("%s: the deload has %+v", c.name, item)
		}
	}
}

// A joint that is sore is not given the harder move, and who was off for two weeks
// begins anew.
func TestProgressionAfterBadNews(t *testing.T) {
	straddles := func(p *program.Program) (out []string) {
		for _, w := range p.Weeks {
			for _, it := range items(&w) {
				if it.Exercise == "prone-straddle" && w.Kind == program.WeekBuild {
					out = append(out, fmt.Sprintf("%d×%d", it.Sets, it.Reps))
					break
				}
			}
		}
		return out
	}
	well := programOf(t, clientOf(t))
	off := programOf(t, clientOf(t, func(a *program.Assessment) {
		a.Training.Away = []program.Interval{{From: monday + 28, To: monday + 41}}
	}))
	if got := strings.Join(straddles(&well), " "); got != "3×6 3×6 3×7 3×7 3×8 3×8 3×9 3×9 4×7" {
		t.Error("well:", got)
	}
	if got := strings.Join(straddles(&off), " "); got != "3×6 3×6 3×7 3×7 3×6 3×6 3×7 3×7" {
		t.Error("two weeks off:", got)
	}

	lib := &program.Library{Exercises: []program.Exercise{
		{ID: "it", Trains: []program.Purpose{program.ForPush}, Harder: []string{"harder"}, Dose: program.Dose{Sets: 3, Hold: 20}},
		{ID: "harder", Trains: []program.Purpose{program.ForPush}, Loads: []string{"wrists", "elbows"}, Dose: program.Dose{Sets: 3, Reps: 6}},
	}}
	for joint, want := range map[program.Joint]string{program.JointFine: "harder", program.JointSore: "it", program.JointInjured: "it"} {
		a := program.Assessment{Health: program.Health{Elbows: joint}}
		x := exercises{client: &client{lib: lib, athlete: &a}, came: map[string]int{"it": 0}}
		if got := x.dose(day{kind: program.WeekBuild, builds: 6}, &lib.Exercises[0], program.RoleStrength); got.Exercise != want {
			t.Errorf("elbows %s: %s", joint, got.Exercise)
		}
	}
}

// Who broke off at four of six repetitions in the second week, lost the shape or had nothing
// left, is two build weeks behind from then on, and who did so every week begins anew. What came
// off as printed moves on as it would have (common practice: nobody adds to what did not come off).
func TestWhatDidNotComeOffGoesBackByAMove(t *testing.T) {
	a := clientOf(t)
	first := programOf(t, a)
	var days []program.Entry
	var straddle []program.Date
	for _, w := range first.Weeks[:7] {
		last := len(straddle)
		for _, s := range w.Sessions {
			days = append(days, program.Entry{Date: s.Date, AsPrinted: true})
			if len(straddle) == last && slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return i.Exercise == "prone-straddle" }) && w.Kind == program.WeekBuild {
				straddle = append(straddle, s.Date)
			}
		}
	}
	did := func(on program.Date, s program.SetDone) program.Entry {
		return program.Entry{Date: on, Exercise: "prone-straddle", Sets: []program.SetDone{s}}
	}
	for _, c := range []struct {
		name string
		set  program.SetDone
		on   []program.Date
		want string // of weeks printed anew
	}{
		{"as printed", program.SetDone{Reps: 6, RPE: 7, Clean: program.CleanYes}, straddle[1:2], "3×9 3×9 4×7"},
		{"four of six", program.SetDone{Reps: 4}, straddle[1:2], "3×8 3×8 3×9"},
		{"nothing left", program.SetDone{Reps: 6, RPE: 10}, straddle[1:2], "3×8 3×8 3×9"},
		{"broken", program.SetDone{Reps: 6, Clean: program.CleanNo}, straddle[1:2], "3×8 3×8 3×9"},
		{"broken every week", program.SetDone{Reps: 6, Clean: program.CleanNo}, straddle, "3×6 3×6 3×7"},
	} {
		a.Log.Entries = slices.Clone(days)
		for _, on := range c.on {
			a.Log.Entries = append(a.Log.Entries, did(on, c.set))
		}
		q := Replan(library(t), &a, nil, first.Weeks[7].Start)
		var got []string
		for _, w := range q.Weeks[8:] {
			for _, it := range items(&w) {
				if it.Exercise == "prone-straddle" && w.Kind == program.WeekBuild {
					got = append(got, fmt.Sprintf("%d×%d", it.Sets, it.Reps))
					break
				}
			}
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%s: %s, want %s", c.name, s, c.want)
		}
	}
}

// The review names what did not come off in the last week, once each and in one line; what
// only a test asked for, and what is weeks back, it does not.
func TestTheReviewNamesWhatDidNotComeOff(t *testing.T) {
	a := clientOf(t)
	first := programOf(t, a)
	named := []string{"band-row", "hollow-hold", "prone-straddle"}
	for _, s := range slices.Concat(first.Weeks[0].Sessions, first.Weeks[1].Sessions) {
		for _, item := range s.Items {
			if id := item.Exercise; slices.Contains(named, id) || id == "compression-lift" && s.Date < first.Weeks[1].Start {
				set := program.SetDone{Seconds: float64(item.Hold), Reps: item.Reps, Clean: program.CleanNo}
				a.Log.Entries = append(a.Log.Entries, program.Entry{Date: s.Date, Exercise: id, Sets: []program.SetDone{set}})
			}
		}
	}
	q := Replan(library(t), &a, nil, first.Weeks[2].Start)
	var got []string
	for _, n := range q.Notes {
		for _, v := range n.Values {
			if n.Code == noteFell {
				got = append(got, v.Text)
			}
		}
	}
	if !slices.Equal(got, named) {
		t.Errorf("named %v, want %v", got, named)
	}
	if q = Replan(library(t), &a, nil, first.Weeks[4].Start); hasNote(q.Notes, noteFell) {
		t.Error("two weeks later it is still told")
	}
	if n := (fallen{"still-hang": program.RoleTest}).notes(); n != nil {
		t.Errorf("a test: %v", n)
	}
}

// A single set of fifteen seconds, easy as it is after weeks off, has neither a set nor
// effort to lose: in the fourth week it is thirteen seconds long.
func TestASingleSetDoesNotStandStill(t *testing.T) {
	p := capableOf(t, 100, nil)
	w := program.Week{Kind: program.WeekBuild, Sessions: []program.Session{{Items: []program.Prescription{
		{Exercise: "tuck-hold", Step: "tuck", Role: program.RoleMain, Sets: 1, Hold: 15, StraightArm: true}}}}}
	p.behind = []program.Week{w, w, w}
	tuck := &p.body.Steps[0]
	p.loads[0] = load{main: work{rung: tuck, aid: tuck.Free(), max: 1000, hold: 15}, sets: []daySets{{main: 1}}}
	if changed := p.vary(0, &w); !changed || p.loads[0].main.hold != 13 || p.loads[0].sets[0].main != 1 {
		t.Errorf("changed: %v, %d × %d s", changed, p.loads[0].sets[0].main, p.loads[0].main.hold)
	}
}

// Lighter leans that were meant to last seventeen seconds and are printed with fifteen, as
// long as another plan holds them, are thirteen seconds long in the fourth week.
func TestLighterWorkIsVariedAsPrinted(t *testing.T) {
	p := capableOf(t, 20, func(a *program.Assessment) { a.Health.Elbows = program.JointSore })
	w := program.Week{Kind: program.WeekBuild, Sessions: []program.Session{{Items: []program.Prescription{
		{Exercise: "planche-lean", Role: program.RoleSecond, Sets: 1, Hold: 15, Ahead: 0.02, StraightArm: true}}}}}
	p.behind = []program.Week{w, w, w}
	lean := p.leanAt(p.floorRung(program.RungLean), p.leans[2], 0)
	lean.hold = 17
	p.loads[0] = load{second: lean, sets: []daySets{{second: 1}}}
	if changed := p.vary(0, &w); !changed || p.loads[0].second.hold != 13 {
		t.Errorf("changed: %v, %d s", changed, p.loads[0].second.hold)
	}
}
