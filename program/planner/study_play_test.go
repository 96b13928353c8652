package planner

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/strength"
)

var (
	playFolder = flag.String("play", "", "folder for the logs of the demo clients, played week by week")
	playSeed   = flag.Uint64("play.seed", 1, "of the demo clients' lives")
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

// demoPerson gives a demo client a truth that nobody sees.
func demoPerson(t testing.TB, lib *program.Library, a program.Assessment, seed uint64) *person {
	t.Helper()
	a.Log, a.Plans = program.Log{}, nil
	p := &person{seed: seed, lib: lib, athlete: a}
	_, plan, _ := begin(lib, &p.athlete)
	if plan == nil {
		t.Fatalf("%s has no program", a.Slug)
	}
	d := p.dice(forBody)
	p.road, p.body = plan.road, plan.body
	p.goal = &p.body.ladder[len(p.body.ladder)-1]
	state, _ := plan.assess()
	p.c, p.rho = state.C+0.05*d.NormFloat64(), strength.RateSpread/2*d.NormFloat64()
	p.kappa, p.age = state.Kappa+0.2*d.NormFloat64(), a.Training.Experience
	p.keeps, p.rates, p.bias = 0.85+0.15*d.Float64(), 0.6+0.4*d.Float64(), rpeHabit*d.NormFloat64()
	return p
}

// play lets a demo client do weeks of what hangs on the wall and reads the log
// after each; look gets the log as a file would hold it.
func play(t testing.TB, studio *program.Studio, a program.Assessment, seed uint64, weeks int, look func(week int, sunday program.Date, log []byte)) {
	t.Helper()
	l := newLife(demoPerson(t, &studio.Library, a, seed), byLoad)
	a.Log, a.Plans = program.Log{}, nil
	p, _ := Plan(&studio.Library, &a)
	wall := []program.PlanVersion{Version(&p, 1, a.Measured)}
	var file []byte
	for n := range weeks {
		monday := blockStart(&a) + program.Date(7*n)
		w := weekAt(p.Weeks, monday)
		if w == nil {
			return // the block is over, and the next begins with an assessment
		}
		done := l.do(w)
		l.others(&done, w)
		onPaper(&done, hurts[a.Slug][n+1])
		added, problems := intake.AddToLog(studio, &a, "log.csv", file, done.Entries)
		if problems.Stop() {
			t.Fatalf("%s, week %d: %v", a.Slug, n+1, problems)
		}
		file = append(file, added.Bytes...)
		look(n+1, monday+6, file)
		a.Log.Entries = append(a.Log.Entries, done.Entries...)
		if _, p, _ = Read(&studio.Library, &a, wall, monday+6); p.Version > wall[len(wall)-1].Version {
			wall = append(wall, Version(&p, p.Version, monday+6))
		}
	}
}

// others writes the days without straight-arm work, which the study leaves out.
func (l *lifetime) others(log *program.Log, w *program.Week) {
	if len(log.Entries) == 0 {
		return // ill
	}
	for i := range w.Sessions {
		s := &w.Sessions[i]
		d := l.dice(forSession, l.week, int(s.Date))
		if !slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return isArm(&i) }) && d.Float64() <= l.keeps {
			log.Entries = append(log.Entries, program.Entry{Date: s.Date, AsPrinted: true})
		}
	}
}

// onPaper is a log as people write it: sets in their order, without numbers.
func onPaper(log *program.Log, pain program.Pain) {
	for i := range log.Entries {
		for j := range log.Entries[i].Sets {
			set := &log.Entries[i].Sets[j]
			if set.Number = 0; pain.Given {
				set.Pain = pain
			}
		}
	}
}

// The demo clients do twelve weeks, and their logs week by week go into a folder,
// to be read as their coach would (DEVELOPERS.md has the loop):
//
//	go test ./program/planner -run 'TestPlay$' -play /tmp/played
//
// Without a folder they do four, and nothing is kept.
func TestPlay(t *testing.T) {
	folder, weeks := *playFolder, 12
	if folder == "" {
		folder, weeks = t.TempDir(), 4
	}
	library(t)
	studio, _ := repo()
	for _, c := range studio.Clients {
		if err := os.MkdirAll(filepath.Join(folder, c.Slug), 0o777); err != nil {
			t.Fatal(err)
		}
		last := 0
		play(t, &studio, c, *playSeed, weeks, func(week int, sunday program.Date, log []byte) {
			last = week
			name := filepath.Join(folder, c.Slug, fmt.Sprintf("%s.csv", sunday))
			if err := os.WriteFile(name, log, 0o666); err != nil {
				t.Fatal(err)
			}
		})
		if last == 0 {
			t.Errorf("%s did no week", c.Slug)
		}
	}
}
