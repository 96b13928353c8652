package main

import (
	"fmt"
	"testing"

	"gatepost/program/intake"

	"github.com/google/go-cmp/cmp"
)

// What a page takes down of an item is read back as that item: its exercise or step,
// and what helped as it was printed.
func TestAnswersAreReadBack(t *testing.T) {
	studio := demoStudio(t, nil)
	kinds := map[string]int{}
	for i := range studio.Clients {
		a := &studio.Clients[i]
		c := (&making{studio: &studio}).client(a)
		for w, week := range c.program.Weeks {
			for s, session := range week.Sessions {
				for n := range session.Items {
					p, answer := &session.Items[n], c.view.Weeks[w].Sessions[s].Items[n].Answer
					bands, ahead := answer.Bands, answer.Lean
					if last := len(answer.Marks) - 1; last >= 0 {
						bands, ahead = answer.Marks[last].Bands, answer.Marks[last].Lean
						kinds["find"]++
					}
					hold, reps := "7", ""
					switch {
					case answer.Tries:
						hold, reps = "9", "4 of 10"
						kinds["tries"]++
					case answer.Reps:
						hold, reps = "", "7"
						kinds["reps"]++
					case p.Step != "":
						kinds["step"]++
					}
					if answer.Lean != "" {
						kinds["lean"]++
					}
					line := fmt.Sprintf("%s,%s,%s,%s,%s,%s\n", session.Date, answer.Exercise, bands, hold, reps, ahead)
					log, problems := intake.ReadNewLines(&studio, a, "paste", []byte("date,exercise,bands,hold_s,reps,ahead\n"+line), nil)
					if problems.Stop() || len(log.Entries) != 1 {
						t.Fatalf("%s: %q is read as %d entries: %v", a.Slug, line, len(log.Entries), problems)
					}
					e := log.Entries[0]
					if e.Exercise != p.Exercise || p.Scale == 0 && e.Step != p.Step {
						t.Errorf("%s: %q is read as %s %s, want %s %s", a.Slug, line, e.Exercise, e.Step, p.Exercise, p.Step)
					}
					if answer.Bands != "" && !p.Find.Any() && intake.RigCell(e.Rig) != intake.RigCell(p.Rig) {
						t.Errorf("%s: %q has the rig %s", a.Slug, line, cmp.Diff(p.Rig, e.Rig))
					}
				}
			}
		}
	}
	for _, kind := range []string{"step", "lean", "reps"} {
		if kinds[kind] == 0 {
			t.Errorf("no item of the demo studio is a %s", kind)
		}
	}
	t.Log(kinds)
}
