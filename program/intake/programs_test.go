package intake

import (
	"testing"
	"testing/fstest"
	"time"

	"gatepost/program"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

const openHours = `title: Open hours
blurb: |
  Three days a week,
  no bands.
goal: {skill: Planche, step: Advanced tuck, hold: 10 s}
days: 3
minutes: 60
kit: [Parallettes]
`

// A public program, value by value.
func TestPublicProgram(t *testing.T) {
	folder := sound(t)
	folder["content/programs/open-hours.yaml"] = &fstest.MapFile{Data: []byte(openHours)}
	studio, problems := Read(folder, library(t), nil)
	if len(problems) > 0 || len(studio.Public) != 1 {
		t.Fatalf("%d programs\n%s", len(studio.Public), reported(problems))
	}
	want := program.PublicProgram{ID: "open-hours", Title: "Open hours", Blurb: "Three days a week, no bands.",
		Goal: program.Goal{Skill: "planche", Step: "advanced-tuck", Hold: 10},
		Training: program.Training{Minutes: 60,
			Days: []time.Weekday{time.Monday, time.Wednesday, time.Friday}},
		Kit: []string{"parallettes"}, Hanging: program.Hanging{Support: 0.10, Drops: []float64{0}},
		File: "content/programs/open-hours.yaml"}
	if diff := cmp.Diff(want, studio.Public[0], cmpopts.IgnoreFields(program.PublicProgram{}, "Places")); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// Programs belong to the coach: what lies among the built-in files is not read.
func TestNoProgramIsBuiltIn(t *testing.T) {
	builtIn := library(t)
	builtIn["content/programs/open-hours.yaml"] = &fstest.MapFile{Data: []byte(openHours)}
	if studio, _ := Read(sound(t), builtIn, nil); len(studio.Public) != 0 {
		t.Errorf("%d programs were taken from what is built in", len(studio.Public))
	}
}

// However many days a week, they lie as far apart as so many can: no two next
// to each other up to three, Sunday to Monday included.
func TestUsualDays(t *testing.T) {
	for i, days := range usualDays {
		if len(days) != i+1 {
			t.Errorf("%d days: %v", i+1, days)
		}
		for j, day := range days {
			next := days[(j+1)%len(days)]
			if apart := (int(next-day) + 7) % 7; len(days) <= 3 && len(days) > 1 && apart < 2 {
				t.Errorf("%d days: %v and %v", i+1, day, next)
			}
		}
	}
}
