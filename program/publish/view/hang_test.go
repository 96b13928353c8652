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
		v, _ := view.New(viewtest.Coach(), lib, p)
		if !strings.Contains(v.Where, c.want) || strings.Contains(v.Where, c.not) {
			t.Errorf("%q", v.Where)
		}
	}
}
