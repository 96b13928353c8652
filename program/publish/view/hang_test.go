package view_test

import (
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

// Who hangs has the hands on the bar: no card sends them to a spot under the anchor,
// and the coach reads no empty sentence under the rig.
func TestWhoHangsHasNoSpot(t *testing.T) {
	lib := viewtest.Library()
	lib.RoadMaps[0].Hands = program.HandsHang
	p := viewtest.Program()
	for i := range p.Weeks {
		p.Weeks[i].Stance = program.Stance{Height: 1.7, Hang: true}
	}
	v, problems := view.New(viewtest.Coach(), lib, p)
	if problems.Stop() {
		t.Fatal(problems)
	}
	for _, c := range v.Cards {
		for _, item := range c.Items {
			if strings.Contains(item.Spot, "anchor") {
				t.Errorf("%s, %s: %q", c.Date, item.Name, item.Spot)
			}
		}
	}
	words := v.ForCoach.RigWords
	if len(words) == 0 || strings.Contains(strings.Join(words, "\n"), "\n.") {
		t.Errorf("under the rig: %q", words)
	}
}

// Whoever hangs starts at the bar, and builds no support on the floor.
func TestWhoHangsStartsAtTheBar(t *testing.T) {
	lib, p := viewtest.Library(), viewtest.Program()
	lib.RoadMaps[0].Hands = program.HandsHang
	for _, c := range []struct {
		untested  bool
		want, not string
	}{{true, "starts at the bar", "ground"}, {false, "builds up to the first step", "floor"}} {
		p.Capacity.Untested, p.Place = c.untested, ""
		for i := range p.Weeks {
			p.Weeks[i].Step, p.Weeks[i].Exercise = "", "planche-lean"
		}
		v, _ := view.New(viewtest.Coach(), lib, p)
		if !strings.Contains(v.Where, c.want) || strings.Contains(v.Where, c.not) {
			t.Errorf("%q", v.Where)
		}
	}
}

// A hang loads elbows and shoulders before wrists, so that cards ask about them first, and
// the cautions name them (common practice).
func TestWhoHangsIsAskedAboutElbowsFirst(t *testing.T) {
	lib := viewtest.Library()
	lib.RoadMaps[0].Hands = program.HandsHang
	v, _ := view.New(viewtest.Coach(), lib, viewtest.Program())
	if got := strings.Join(v.CardText.Joints, " "); got != "elbows shoulders wrists" {
		t.Errorf("cards ask about %s", got)
	}
	if got := strings.Join(v.Advice.Cautions, "\n"); !strings.Contains(got, "Elbows and shoulders adapt") || strings.Contains(got, "Wrists") {
		t.Errorf("cautions: %s", got)
	}
	for _, c := range v.CueWorth {
		if strings.Contains(c.Cue, "floor") {
			t.Errorf("who hangs is told %q", c.Cue)
		}
	}
}

// The form of who hangs has the entry in its first rows, room for repetitions, and
// neither a lean nor a support.
func TestTheSheetOfWhoHangs(t *testing.T) {
	lib := viewtest.Library()
	lib.RoadMaps[0].Hands = program.HandsHang
	lib.RoadMaps[0].Entry = []program.Hold{{Exercise: "still-hang", Seconds: 30}, {Exercise: "chin-up", Reps: 8}}
	sheet, problems := view.NewSheet(viewtest.Coach(), lib, lib.RoadMaps[0].ID)
	if problems.Stop() {
		t.Fatal(problems)
	}
	if got := plain(strings.Join(sheet.Tests.First, "; ")); got != "still hang, 30 s; chin up, 8 reps" {
		t.Errorf("the first rows are %q", got)
	}
	for _, label := range append(sheet.Tests.Columns, sheet.Rig.Fields[0].Label, sheet.Panels.Second.Title) {
		if strings.Contains(label, "Lean") || strings.Contains(label, "Support") {
			t.Errorf("who hangs is asked for %q", label)
		}
	}
}

// A test of repetitions is no order to do exactly so many, and no easier exercise stands
// beside it.
func TestARepetitionTestIsOpen(t *testing.T) {
	p := viewtest.Program()
	day := &p.Weeks[0].Sessions[0]
	day.Items = append(day.Items, program.Prescription{Exercise: "chin-up", Role: program.RoleTest, Sets: 1, Reps: 8, Rest: 180})
	v, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
	items := v.Cards[0].Items
	got := items[len(items)-1]
	if plain(got.Amount) != "One set, as many as stay clean; 8 are enough" || got.Easier != "" || got.Harder != "" {
		t.Errorf("%q, easier %q, harder %q", got.Amount, got.Easier, got.Harder)
	}
}
