package main

import (
	"bufio"
	"bytes"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// A lean carries its distance: the printed one, or the one that was done. Where the
// log has no column for it nobody is asked. Of main work done as printed, effort and
// form are asked once, and of nothing else.
func TestAskedOnTheCard(t *testing.T) {
	studio := demoStudio(t, nil)
	lean := program.Prescription{Exercise: "planche-lean", Role: program.RoleSecond, Ahead: 0.16, Sets: 2, Hold: 14}
	mainLean := lean
	mainLean.Role = program.RoleMain
	trunk := program.Prescription{Exercise: "hollow-hold", Role: program.RoleTrunk, Sets: 2, Hold: 25}
	for _, c := range []struct {
		name      string
		item      program.Prescription
		distances bool
		answers   string
		questions int
		ahead     float64
		rpe       float64
	}{
		{"as printed", lean, true, "\n", 1, 0.16, 0},
		{"other seconds, the printed lean", lean, true, "14 12\n\n8\nyes\n", 4, 0.16, 8},
		{"another lean", lean, true, "14 12\n7 in\n\n\n", 4, 0.178, 0},
		{"a lean that is none, and again", lean, true, "14 12\n70\n18\n\n\n", 5, 0.18, 0},
		{"no column for it", lean, false, "14 12\n8\n\n", 3, 0, 8},
		{"main work as printed", mainLean, true, "\n7.5\nyes\n", 3, 0.16, 7.5},
		{"main work as printed, nothing said", mainLean, true, "\n\n\n", 3, 0.16, 0},
		{"no lean and no main work", trunk, true, "\n", 1, 0, 0},
	} {
		var asked bytes.Buffer
		talk := asking{job: &job{surroundings: surroundings{err: &asked}}, lines: bufio.NewScanner(strings.NewReader(c.answers)),
			studio: &studio, client: &studio.Clients[0], day: program.NewDate(2027, 1, 6), distances: c.distances, main: -1}
		if err := talk.item(&c.item, &view.Item{}); err != nil || len(talk.entries) != 1 {
			t.Fatalf("%s: %v, %d entries\n%s", c.name, err, len(talk.entries), asked.String())
		}
		e := talk.entries[0]
		if got := strings.Count(asked.String(), ": ") - strings.Count(asked.String(), "Enter: "); got != c.questions {
			t.Errorf("%s: %d questions, want %d:\n%s", c.name, got, c.questions, asked.String())
		}
		if e.Ahead != c.ahead || e.Sets[len(e.Sets)-1].RPE != c.rpe {
			t.Errorf("%s: %+v", c.name, e)
		}
	}
}
