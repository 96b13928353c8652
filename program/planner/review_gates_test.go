package planner

import (
	"testing"

	"gatepost/program"
)

// tuckGate is the gate of the tuck: 3 × 10 s, two days 48 hours apart, the last
// set at RPE 9 or less, pain of two at most.
var tuckGate = program.StepGate{Step: "tuck", Gate: program.Gate{Sets: 3, Hold: 10, RPEMax: 9, Sessions: 2, Apart: 48, PainMax: 2}}

// freeSets are sets of the tuck on a day after the first Monday, as a log has
// them: clean, the last with its RPE.
func freeSets(day int, rpe float64, seconds ...float64) program.Entry {
	e := program.Entry{Date: monday + program.Date(day), Exercise: "tuck-hold", Step: "tuck", RigGiven: true}
	for i, s := range seconds {
		e.Sets = append(e.Sets, program.SetDone{Number: i + 1, Seconds: s, RPE: rpe, Clean: program.CleanYes})
	}
	return e
}

func bent(e program.Entry, bend func(*program.Entry)) program.Entry {
	bend(&e)
	return e
}

// The rule of the gate (common practice, our numbers): sets and seconds, free,
// clean, the RPE of the last set, pain, two days 48 hours apart.
func TestGates(t *testing.T) {
	good := func(day int) program.Entry { return freeSets(day, 8, 10, 11, 10) }
	narrow := program.Rig{Bands: []string{"narrow"}}
	for _, c := range []struct {
		name    string
		lines   []program.Entry
		state   program.GateState
		on      program.Date
		failing string // the criterion that is not met
	}{
		{"two good days", []program.Entry{good(0), good(2)}, program.GatePassed, monday + 2, ""},
		{"one good day", []program.Entry{good(0)}, program.GateOpen, 0, "sessions"},
		{"two days in a row are one", []program.Entry{good(0), good(1)}, program.GateOpen, 0, "sessions"},
		{"a third day in a row is two days after the first", []program.Entry{good(0), good(1), good(2)}, program.GatePassed, monday + 2, ""},
		{"two sets only", []program.Entry{freeSets(0, 8, 10, 12), freeSets(2, 8, 10, 12)}, program.GateOpen, 0, "free"},
		{"a second short", []program.Entry{freeSets(0, 8, 10, 10, 9), freeSets(2, 8, 10, 10, 9)}, program.GateOpen, 0, "hold"},
		{"a short set and three long ones", []program.Entry{freeSets(0, 8, 9, 10, 10, 10), good(2)}, program.GatePassed, monday + 2, ""},
		{"last set too hard", []program.Entry{good(0), freeSets(2, 9.5, 10, 10, 10)}, program.GateOpen, 0, "sessions"},
		{"RPE not written", []program.Entry{freeSets(0, 0, 10, 10, 10), freeSets(2, 0, 10, 10, 10)}, program.GateOpen, 0, "rpe"},
		{"not clean", []program.Entry{bent(good(0), func(e *program.Entry) { e.Sets[1].Clean = program.CleanNo }), good(2)}, program.GateOpen, 0, "sessions"},
		{"nobody says clean", []program.Entry{bent(good(0), func(e *program.Entry) { e.Sets[1].Clean = "" })}, program.GateOpen, 0, "clean"},
		{"with a band", []program.Entry{bent(good(0), func(e *program.Entry) { e.Rig = narrow }), bent(good(2), func(e *program.Entry) { e.Rig = narrow })}, program.GateOpen, 0, "free"},
		{"pain of three", []program.Entry{bent(good(0), func(e *program.Entry) {
			e.Sets[0].Pain = program.Pain{Given: true, Wrists: 3, Elbows: -1, Shoulders: -1, Other: -1}
		})}, program.GateOpen, 0, "pain"},
		{"pain of two", []program.Entry{bent(good(0), func(e *program.Entry) { e.Sets[0].Pain = program.Pain{Given: true, Wrists: 2} }), good(2)}, program.GatePassed, monday + 2, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := readingOf(t, c.lines, nil)
			g := r.gateRead(tuckGate)
			if g.State != c.state || g.On != c.on {
				t.Errorf("%s on %s, wanted %s on %s", g.State, g.On, c.state, c.on)
			}
			for _, k := range g.Criteria {
				if k.Name == c.failing && k.Met {
					t.Errorf("%s counts as met", k.Name)
				}
			}
		})
	}
}

// A gate with a longer set after the others: one set more, or all as long.
func TestGateWithALongerSet(t *testing.T) {
	gate := tuckGate
	gate.Hold, gate.Single, gate.Sessions = 8, 10, 1
	for _, c := range []struct {
		seconds []float64
		state   program.GateState
	}{
		{[]float64{8, 8, 8, 10}, program.GatePassed},
		{[]float64{8, 8, 10}, program.GateOpen},
		{[]float64{10, 10, 10}, program.GatePassed},
		{[]float64{8, 8, 8, 9}, program.GateOpen},
	} {
		if g := readingOf(t, []program.Entry{freeSets(0, 8, c.seconds...)}, nil).gateRead(gate); g.State != c.state {
			t.Errorf("%v: %s, wanted %s", c.seconds, g.State, c.state)
		}
	}
}

// A week that asks for the gate and does not pass it is repeated, twice at most;
// then one step of help comes back, for two build weeks.
func TestGateNotPassed(t *testing.T) {
	lib := library(t)
	for _, c := range []struct {
		weeks  int
		repeat bool
		help   bool
	}{{1, true, false}, {2, true, false}, {3, false, true}} {
		a := maren(t)
		a.Training.Away = nil
		wall := gateWall(t, lib, &a)
		for w := range c.weeks {
			a.Log.Entries = append(a.Log.Entries, bent(freeSets(7*w, 9, 10, 10, 8), func(e *program.Entry) { e.RigGiven = false }))
		}
		on := monday + program.Date(7*c.weeks) - 1
		review, p, _ := Read(lib, &a, wall, on)
		if hasNote(review.Notes, noteRepeat) != c.repeat || hasNote(review.Notes, noteHelpBack) != c.help {
			t.Errorf("after %d weeks: %v", c.weeks, review.Notes)
		}
		next := &p.Weeks[c.weeks]
		for i := c.weeks; next.Kind != program.WeekBuild; i++ {
			next = &p.Weeks[i]
		}
		if next.Step != "tuck" || (next.Help > 0) != c.help {
			t.Errorf("after %d weeks the next is %s with %.1f N", c.weeks, next.Step, next.Help)
		}
	}
}

// Help that came back after three weeks stays for two build weeks, the fifth and the sixth
// after a deload; then the gate is asked again. A step that is repeated stays for one.
func TestHelpThatCameBackStays(t *testing.T) {
	lib, a := library(t), maren(t)
	a.Training.Away = nil
	wall := gateWall(t, lib, &a)
	for w := range 3 {
		a.Log.Entries = append(a.Log.Entries, bent(freeSets(7*w, 9, 10, 10, 8), func(e *program.Entry) { e.RigGiven = false }))
	}
	_, p, _ := Read(lib, &a, wall, monday+20)
	for number, want := range map[int]struct{ help, gate bool }{5: {true, false}, 6: {true, false}, 7: {false, true}} {
		if w := p.Weeks[number-1]; w.Step != "tuck" || w.Help > 0 != want.help || w.Gate != want.gate {
			t.Errorf("week %d: %s with %.1f N, gate %v", number, w.Step, w.Help, w.Gate)
		}
	}
	for i, behind := range []past{{}, {repeat: true}, {moreHelp: true}} {
		if got := behind.stays(); got != i {
			t.Errorf("%d build weeks on the step, wanted %d", got, i)
		}
	}
}

// Help comes back once: the week trained with it begins the count of tries anew.
func TestHelpComesBackOnce(t *testing.T) {
	lib := library(t)
	a := maren(t)
	a.Training.Away = nil
	wall := gateWall(t, lib, &a)
	for w := range 3 {
		a.Log.Entries = append(a.Log.Entries, bent(freeSets(7*w, 9, 10, 10, 8), func(e *program.Entry) { e.RigGiven = false }))
	}
	on := monday + 20
	_, p, _ := Read(lib, &a, wall, on)
	back := weekAt(p.Weeks, on+1)
	for back.Kind != program.WeekBuild {
		back = weekAt(p.Weeks, back.Start+7)
	}
	if back.Help == 0 {
		t.Fatal("no help has come back")
	}
	wall = append(wall, Version(&p, 2, on))
	for _, s := range back.Sessions {
		a.Log.Entries = append(a.Log.Entries, program.Entry{Date: s.Date, AsPrinted: true})
	}
	review, p, _ := Read(lib, &a, wall, back.Start+6)
	next := weekAt(p.Weeks, back.Start+7)
	if next == nil || hasNote(review.Notes, noteHelpBack) || next.Step == back.Step && next.Help > back.Help {
		t.Errorf("after a week with %.1f N the next has %.1f: %v", back.Help, next.Help, review.Notes)
	}
}

// A gate passed early opens the next step.
func TestGatePassedEarly(t *testing.T) {
	lib := library(t)
	a := maren(t)
	a.Training.Away = nil
	wall := gateWall(t, lib, &a)
	for _, day := range []int{0, 2} {
		a.Log.Entries = append(a.Log.Entries, freeSets(day, 8.5, 10, 10, 10))
	}
	review, p, _ := Read(lib, &a, wall, monday+6)
	if p.Weeks[1].Step == "tuck" || !slicesHasFlag(review.Flags, flagGatePassed) {
		t.Errorf("the next week is %s, flags %v", p.Weeks[1].Step, review.Flags)
	}
}

func slicesHasFlag(flags []program.Flag, code string) bool {
	for _, f := range flags {
		if f.Code == code {
			return true
		}
	}
	return false
}

// gateWall is a plan that asks for the tuck's gate, free, every week.
func gateWall(t *testing.T, lib *program.Library, a *program.Assessment) []program.PlanVersion {
	t.Helper()
	a.Tests = []program.Hold{{Step: "tuck", Seconds: 14.5}}
	p, _ := Plan(lib, a)
	p = deep(p)
	for w := range p.Weeks {
		week := &p.Weeks[w]
		week.Step, week.Exercise, week.Rig, week.Help, week.Hold, week.Kind = "tuck", "tuck-hold", program.Rig{}, 0, 10, program.WeekBuild
		week.Gate = true
		eachMain(week, func(i *program.Prescription) {
			i.Step, i.Exercise, i.Rig, i.Help, i.Hold, i.Sets, i.Role, i.Check = "tuck", "tuck-hold", program.Rig{}, 0, 10, 3, program.RoleMain, false
		})
	}
	return []program.PlanVersion{Version(&p, 1, a.Measured)}
}

func eachMain(w *program.Week, bend func(*program.Prescription)) {
	for s := range w.Sessions {
		for i := range w.Sessions[s].Items {
			if item := &w.Sessions[s].Items[i]; isMain(item) {
				bend(item)
			}
		}
	}
}

// readingOf reads lines beside a plan; without one, the plan of the assessment.
func readingOf(t *testing.T, lines []program.Entry, change func(*program.Assessment)) *reading {
	t.Helper()
	lib := library(t)
	a := maren(t)
	a.Log.Entries = lines
	if change != nil {
		change(&a)
	}
	p, _ := Plan(lib, &a)
	_, behind, _ := begin(lib, &a)
	on := a.Measured
	for _, e := range lines {
		on = max(on, e.Date)
	}
	return newReading(behind, []program.PlanVersion{Version(&p, 1, a.Measured)}, on)
}

// Who went on to the next step before the gate of the one before was shown goes back
// for it after one or two build weeks, easy ones not counted; after three the harder
// step stays (our judgement).
func TestGateLeftOpen(t *testing.T) {
	r := readingOf(t, nil, nil)
	gate := program.Week{Kind: program.WeekBuild, Step: "tuck", Gate: true}
	build := program.Week{Kind: program.WeekBuild, Step: "half-open-tuck"}
	easy := program.Week{Kind: program.WeekDeload, Step: "half-open-tuck"}
	for _, c := range []struct {
		name  string
		weeks []program.Week
		state program.GateState
		want  string
	}{
		{"one week on", []program.Week{gate, build}, program.GateOpen, "tuck"},
		{"two weeks on", []program.Week{gate, build, build}, program.GateOpen, "tuck"},
		{"two and an easy one", []program.Week{gate, build, easy, build}, program.GateOpen, "tuck"},
		{"three weeks on", []program.Week{gate, build, build, build}, program.GateOpen, ""},
		{"passed", []program.Week{gate, build}, program.GatePassed, ""},
	} {
		b := past{step: "half-open-tuck", weeks: c.weeks}
		if got := r.leftOpen(&b, []program.GateRead{{StepGate: tuckGate, State: c.state}}); got != c.want {
			t.Errorf("%s: back for %q, want %q", c.name, got, c.want)
		}
	}
}
