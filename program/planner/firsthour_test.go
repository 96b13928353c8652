package planner

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"gatepost/program"
)

// hourFor is the first hour with a client, its tests and notes as short lines.
func hourFor(t testing.TB, a program.Assessment) (h program.FirstHour, tests []string) {
	t.Helper()
	p, problems := Plan(library(t), &a)
	if problems.Stop() {
		t.Fatal(problems)
	}
	h = FirstHour(library(t), &a, &p)
	for _, test := range h.Tests {
		line := test.Exercise
		switch {
		case test.Find.Any():
			line += " found"
		case test.Try:
			line += " tried"
		case test.Max:
			line += " to its end"
		case test.Check:
			line += " with care"
		}
		if len(test.Rig.Bands) > 0 {
			line += ", " + strings.Join(test.Rig.Bands, "+")
		}
		tests = append(tests, line)
	}
	return h, tests
}

func codes(notes []program.Note) []string {
	var all []string
	for _, n := range notes {
		all = append(all, n.Code)
	}
	return all
}

// What a coach would test of some clients in a first hour, in this order, and what not.
func TestFirstHourTestsWhatSaysMost(t *testing.T) {
	studio, _ := repo()
	of := func(slug string) program.Assessment {
		a := studio.Clients[slices.IndexFunc(studio.Clients, func(a program.Assessment) bool { return a.Slug == slug })]
		a.Log, a.Plans = program.Log{}, nil
		return a
	}
	untested := of("maren")
	untested.Tests = nil
	young := of("maren")
	young.Athlete.Born, young.Health.Guardian = monday-365*14, "G. Name"
	uncleared := of("maren")
	uncleared.Health.Conditions = []string{"glaucoma"}
	hanging := of("runa")
	hanging.Tests = nil
	for name, c := range map[string]struct {
		client program.Assessment
		tests  []string
		leave  []string // codes among those
	}{
		// holds a tuck for 19 s and an advanced tuck under a band: the step between says most
		"maren": {of("maren"), []string{"half-open-tuck-hold to its end", "half-open-tuck-hold, narrow"}, []string{hourLeavePair, hourLeaveHeld, hourLeaveFar}},
		// nothing held, sore wrists, a scale: feet stay down first
		"joss":                     {of("joss"), []string{"planche-lean found", "tuck-on-scale", "toe-assisted-tuck tried"}, []string{hourLeaveSore}},
		"nothing tested":           {untested, []string{"planche-lean-in-and-out found", "tuck-hold tried, middle"}, nil},
		"under 16":                 {young, nil, []string{hourLeaveYouth}},
		"a condition, not cleared": {uncleared, []string{}, []string{hourLeaveCleared}},
		// a hang, nothing shown: the entry, and no step
		"hanging": {hanging, []string{"still-hang with care", "shoulder-blade-pull", "chin-up"}, []string{hourLeaveEntry}},
	} {
		h, tests := hourFor(t, c.client)
		if c.tests != nil && !slices.Equal(tests, c.tests) {
			t.Errorf("%s: %q, want %q", name, tests, c.tests)
		}
		for _, code := range c.leave {
			if !slices.Contains(codes(h.Leave), code) {
				t.Errorf("%s: %s is not said: %s", name, code, codes(h.Leave))
			}
		}
	}
}

// Whoever is tested at all: three tests at the most, but for an entry; nothing to its end
// for the young and the sore; no free hold that is likely under six seconds, which is
// strain, or over twenty-five, which says little of strength.
func TestFirstHourIsGentle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := clients.Draw(t, "client")
		a.Log, a.Plans = program.Log{}, nil
		studio, _ := repo()
		p, problems := Plan(&studio.Library, &a)
		if problems.Stop() {
			t.Skip("no plan")
		}
		h := FirstHour(&studio.Library, &a, &p)
		if len(p.Withheld) > 0 && (len(h.Tests) > 0 || len(h.Warmup) > 0) {
			t.Error("tested before it is settled")
		}
		age := a.Measured.YearsSince(a.Athlete.Born)
		sore := a.Health.Wrists == program.JointSore || a.Health.Elbows == program.JointSore || a.Health.Shoulders == program.JointSore
		for _, test := range h.Tests {
			what := fmt.Sprintf("%s %s %.1f s", test.Exercise, test.Step, test.MaxHold)
			if test.Why.Code != hourWhyEntry && len(h.Tests) > 3 {
				t.Errorf("%d tests", len(h.Tests))
			}
			if test.Max && (age < 16 || sore) {
				t.Errorf("%s to its end, at %d years, sore: %v", what, age, sore)
			}
			if test.Why.Code == hourWhyStep && (test.MaxHold < 5.95 || test.MaxHold > 25.05) {
				t.Error(what)
			}
			if age < 16 && len(a.Kit) == 0 && test.Exercise == "tuck-hold" {
				t.Error(what + " on flat hands")
			}
		}
	})
}

// The form for somebody of whom nothing is known has a test of every road map, the gentlest
// of each: of what hangs a hang, of what is upside down a line, of the planche a lean.
func TestBlankHour(t *testing.T) {
	var got []string
	for _, test := range BlankHour(library(t)).Tests {
		got = append(got, test.Skill+": "+test.Exercise)
	}
	slices.Sort(got)
	want := []string{"free-handstand: lying-handstand-line", "front-lever: still-hang", "handstand-push-up: wall-handstand-line",
		"planche: planche-lean", "press-to-handstand: wall-handstand-line"}
	if !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}

// What an assessment leaves open is asked: each thing that is missing once, and nothing that
// is written.
func TestFirstHourAsksWhatIsOpen(t *testing.T) {
	full := maren(t)
	full.Athlete.BalancePoint, full.Training.Since = 0.91, monday-100
	full.Health.Conditions, full.Health.ClearedBy = []string{"a heart murmur"}, program.Clearance{Name: "Dr. N.", On: monday}
	h, _ := hourFor(t, full)
	if got := codes(h.Ask); !slices.Equal(got, []string{hourGoal, hourCleared}) {
		t.Errorf("full: %s", got)
	}
	for _, code := range []string{hourStraddle, hourArmSpan, hourBalancePoint} {
		if slices.Contains(codes(h.Ranges), code) {
			t.Errorf("full: %s is measured already", code)
		}
	}
	bare := full
	bare.Athlete.ArmSpan, bare.Athlete.Straddle, bare.Athlete.BalancePoint, bare.Athlete.Born = 0, 0, 0, monday-365*60
	bare.Training.Since, bare.Training.Other, bare.Health = 0, nil, program.Health{Wrists: program.JointSore, Elbows: program.JointFine, Shoulders: program.JointFine}
	bare.Bands = slices.Clone(bare.Bands)
	bare.Bands[0].Pulls = bare.Bands[0].Pulls[:2]
	h, _ = hourFor(t, bare)
	if got, want := codes(h.Ask), []string{hourGoal, hourConditions, hourSore, hourBreak, hourOther, hourEyes}; !slices.Equal(got, want) {
		t.Errorf("bare: %s, want %s", got, want)
	}
	for _, code := range []string{hourStraddle, hourArmSpan, hourBalancePoint} {
		if !slices.Contains(codes(h.Ranges), code) {
			t.Errorf("bare: nobody measures: %s", code)
		}
	}
	if got := codes(h.Rig); !slices.Contains(got, hourPulls) || !slices.Contains(got, hourAnchor) {
		t.Errorf("bare: %s", got)
	}
}
