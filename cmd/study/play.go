//go:build study

package main

import (
	"errors"
	"os"
	"path/filepath"

	"gatepost/cmd/study/lives"
	"gatepost/cmd/study/people"
	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/planner"
)

// hurts is pain that a demo client meets in a week, at every set, so that the
// reviews have something to see (invented).
var hurts = map[string]map[int]program.Pain{
	"anselm": {5: elbows(1), 6: elbows(2), 7: elbows(3), 8: elbows(2), 9: elbows(1)},
	"joss":   {2: wrists(2), 4: wrists(1)},
}

func elbows(n int) program.Pain {
	return program.Pain{Given: true, Wrists: -1, Elbows: n, Shoulders: -1, Other: -1}
}
func wrists(n int) program.Pain {
	return program.Pain{Given: true, Wrists: n, Elbows: -1, Shoulders: -1, Other: -1}
}

// play lets the demo clients do weeks of what hangs on their walls. The log at the end
// of each is written as a file, DIR/<client>/<Sunday>.csv.
func play(studio *program.Studio, folder string, weeks int, seed uint64) error {
	for i := range studio.Clients {
		c := studio.Clients[i]
		if err := os.MkdirAll(filepath.Join(folder, c.Slug), 0o777); err != nil {
			return err
		}
		err := playOne(studio, c, weeks, seed+uint64(i)<<24, func(sunday program.Date, log []byte) error {
			return os.WriteFile(filepath.Join(folder, c.Slug, sunday.String()+".csv"), log, 0o666)
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// playOne lets one client live; keep gets the log as a file would hold it.
func playOne(studio *program.Studio, a program.Assessment, weeks int, seed uint64, keep func(program.Date, []byte) error) error {
	a.Log, a.Plans = program.Log{}, nil
	printed, problems := planner.Plan(&studio.Library, &a)
	if problems.Stop() || len(printed.Weeks) == 0 {
		return errors.New(a.Slug + " has no program")
	}
	p := people.Of(people.Base(), &studio.Library, a, printed.Capacity.Held12, seed)
	wall := []program.PlanVersion{planner.Version(&printed, 1, a.Measured)}
	var file []byte
	for n := range weeks {
		w := lives.WeekOf(&printed, wall[0].Weeks[0].Start+program.Date(7*n))
		if w == nil {
			return nil // the block is over, and the next begins with an assessment
		}
		done := p.Do(w).Entries
		for i := range done {
			for j := range done[i].Sets {
				if pain := hurts[a.Slug][n+1]; pain.Given {
					done[i].Sets[j].Pain = pain
				}
			}
		}
		added, problems := intake.AddToLog(studio, &a, "log.csv", file, done)
		if problems.Stop() {
			return errors.New(a.Slug + ": " + problems[0].Message)
		}
		file = append(file, added.Bytes...)
		if err := keep(w.Start+6, file); err != nil {
			return err
		}
		a.Log.Entries = append(a.Log.Entries, done...)
		sunday := w.Start + 6
		if _, printed, _ = planner.Read(&studio.Library, &a, wall, sunday); printed.Version > wall[len(wall)-1].Version {
			wall = append(wall, planner.Version(&printed, printed.Version, sunday))
		}
	}
	return nil
}
