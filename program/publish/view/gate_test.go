package view_test

import (
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

// A gate week is called so wherever its weeks stand, and its cards on the days that
// show the gate: they ask for it and offer nothing harder. Other days are as ever.
func TestGateWeek(t *testing.T) {
	p := viewtest.Program()
	w := &p.Weeks[1]
	w.Gate = true
	w.Notes = append(w.Notes, program.Note{Code: "gate-week", Values: []program.Value{
		{Name: "step", Kind: program.ValueStep, Text: w.Step}, {Name: "sets", Kind: program.ValueCount, Number: 3},
		{Name: "hold", Kind: program.ValueSeconds, Number: 10}, {Name: "days", Kind: program.ValueCount, Number: 2}}})
	v, problems := view.New(viewtest.Coach(), viewtest.Library(), p)
	if problems.Stop() {
		t.Fatal(problems)
	}
	if got := v.Weeks[1]; got.Kind != "Gate" || got.KindKey != program.WeekBuild || got.Asked == "" || v.Weeks[0].Asked != "" {
		t.Errorf("%q of kind %q: %q", got.Kind, got.KindKey, got.Asked)
	}
	shown := 0
	for _, c := range v.Cards {
		gate := false
		for _, item := range c.Items {
			gate = gate || c.Number == 2 && item.RoleKey == program.RoleMain && item.StepID != ""
			if gate && item.RoleKey == program.RoleMain && item.Harder != "" {
				t.Errorf("%s: harder than a gate: %q", c.Date, item.Harder)
			}
		}
		if gate {
			shown++
		}
		if (c.Kind == "Gate") != gate || (c.Note == viewtest.Words()["card.gate_today"]) != gate {
			t.Errorf("%s, shows a gate: %v, is called %q and says %q", c.Date, gate, c.Kind, c.Note)
		}
	}
	if shown == 0 {
		t.Error("no card shows the gate")
	}
}

// A gate week of one day asks for one day, and says how many the gate wants.
func TestGateWeekOfOneDay(t *testing.T) {
	p := viewtest.Program()
	w := &p.Weeks[1]
	w.Gate = true
	w.Notes = []program.Note{{Code: "gate-week", Values: []program.Value{
		{Name: "step", Kind: program.ValueStep, Text: w.Step}, {Name: "sets", Kind: program.ValueCount, Number: 3},
		{Name: "hold", Kind: program.ValueSeconds, Number: 12}, {Name: "days", Kind: program.ValueCount, Number: 1}}},
		{Code: "gate-days", Values: []program.Value{{Name: "days", Kind: program.ValueCount, Number: 2}}}}
	v, problems := view.New(viewtest.Coach(), viewtest.Library(), p)
	const want = "Gate week: on one day the open tuck is shown free, 3 × 12 s, filmed from the side. Shown: sign the day. Not yet: repeat the week. " +
		"The gate asks for 2 such days, and this week has fewer: the others come in other weeks."
	if got := plain(v.Weeks[1].Asked); problems.Stop() || got != want {
		t.Errorf("%v: %q", problems, got)
	}
}

// The open set of a gate is no check hold: chart, session and card call it what it is,
// and say what counts at the least.
func TestOpenSetIsNoCheckHold(t *testing.T) {
	p := viewtest.Program()
	w := &p.Weeks[1]
	w.Gate = true
	s := &w.Sessions[1]
	s.Items = append(s.Items, program.Prescription{Exercise: w.Exercise, Step: w.Step, Role: program.RoleTest, Sets: 1, Check: true})
	last := len(s.Items) - 1
	read := func() (string, view.Item) {
		v, problems := view.New(viewtest.Coach(), viewtest.Library(), p)
		if problems.Stop() {
			t.Fatal(problems)
		}
		return v.Weeks[1].Check, v.Weeks[1].Sessions[1].Items[last]
	}
	if week, item := read(); week != "check hold" || item.Role != "Test" {
		t.Errorf("without an open set: %q, %q", week, item.Role)
	}
	w.Notes = append(w.Notes, program.Note{Code: "open-set", Values: []program.Value{{Name: "hold", Kind: program.ValueSeconds, Number: 12}}})
	const amount = "One open set: 12 s at the least, until two seconds are left"
	if week, item := read(); week != "gate's open set" || item.Role != "Gate's open set" || plain(item.Amount) != amount {
		t.Errorf("%q, %q, %q", week, item.Role, item.Amount)
	}
}

// A gate week with a longer set says all of its sets wherever its main work stands, and
// in its note.
func TestGateWeekWithALongerSet(t *testing.T) {
	p := viewtest.Program()
	p.Gates[0].Gate = program.Gate{Sets: 3, Hold: 8, Single: 10, RPEMax: 9, Sessions: 2, Apart: 48, PainMax: 2}
	w := &p.Weeks[1]
	w.Gate, w.Sets, w.SetsLeast, w.Hold = true, 4, 4, 8
	w.Notes = append(w.Notes, program.Note{Code: "gate-week-longer", Values: []program.Value{
		{Name: "step", Kind: program.ValueStep, Text: w.Step}, {Name: "sets", Kind: program.ValueCount, Number: 3},
		{Name: "hold", Kind: program.ValueSeconds, Number: 8}, {Name: "days", Kind: program.ValueCount, Number: 2},
		{Name: "longer", Kind: program.ValueSeconds, Number: 10}}})
	v, problems := view.New(viewtest.Coach(), viewtest.Library(), p)
	if problems.Stop() {
		t.Fatal(problems)
	}
	got := v.Weeks[1]
	const dose, asked = "3\u00a0×\u00a08\u00a0s, then one of 10\u00a0s", "Gate week: on 2 days the open tuck is shown free, " +
		"3\u00a0×\u00a08\u00a0s, then one of 10\u00a0s, filmed from the side. Shown: sign it. Not yet: repeat the week."
	if got.Main != "3\u00a0×\u00a08\u00a0s" || got.Then != "then one of 10\u00a0s" || got.Range != dose || got.Asked != asked {
		t.Errorf("%q, %q, %q, %q", got.Main, got.Then, got.Range, got.Asked)
	}
}
