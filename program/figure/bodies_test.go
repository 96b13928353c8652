package figure_test

import (
	"crypto/rand"
	"fmt"
	"os"
	"sync"
	"testing"

	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/ladder"
	"gatepost/program/planner"
)

// repo reads the library and the demo studio of this repository.
var repo = sync.OnceValues(func() (program.Studio, program.Problems) {
	root := os.DirFS("../..")
	return intake.Read(root, root, rand.Reader)
})

func library(t testing.TB) *program.Library {
	t.Helper()
	studio, problems := repo()
	if problems.Stop() {
		t.Fatal("the repository's own content does not read: ", problems)
	}
	return &studio.Library
}

// posed is a stance with what it is of.
type posed struct {
	name string
	step string
	sex  program.Sex
	program.Stance
}

// stances are every step of every road map whose steps are held, on two bodies, gripping,
// on the floor and hanging; bodies upside down are looked at in upside_test.go.
func stances(t testing.TB) []posed {
	t.Helper()
	var all []posed
	for _, road := range library(t).RoadMaps {
		if road.Load.Repeats() || road.Load == program.LoadBalance {
			continue
		}
		for _, sex := range []program.Sex{program.SexFemale, program.SexMale} {
			hung := road
			hung.Hands = program.HandsHang
			for _, s := range ladder.Reference(&road, sex) {
				all = append(all, posed{fmt.Sprint(sex, " grip ", s.ID), s.ID, sex, s.Stance})
			}
			for _, s := range ladder.Reference(&hung, sex) {
				all = append(all, posed{fmt.Sprint(sex, " hang ", s.ID), s.ID, sex, s.Stance})
			}
			for _, step := range road.Steps {
				s := onFloor(t, road.ID, step.ID, sex)
				all = append(all, posed{fmt.Sprint(sex, " floor ", step.ID), step.ID, sex, s})
			}
		}
	}
	return all
}

// onFloor is the goal's stance of a client without parallettes.
func onFloor(t testing.TB, skill, step string, sex program.Sex) program.Stance {
	t.Helper()
	a := program.Assessment{
		Measured: program.NewDate(2027, 1, 4),
		Athlete:  program.Athlete{Name: "A", Sex: sex, Born: program.NewDate(1990, 1, 1), Mass: 60, Height: 1.70},
		Goal:     program.Goal{Skill: skill, Step: step, Hold: 10, By: program.NewDate(2027, 4, 4)},
		Health:   program.Health{Wrists: program.JointFine, Elbows: program.JointFine, Shoulders: program.JointFine},
	}
	a.Training.Days = append(a.Training.Days, a.Measured.Weekday())
	a.Training.Minutes = 60
	p, _ := planner.Plan(library(t), &a)
	if len(p.Steps) == 0 {
		t.Fatalf("no plan for %s: %v", step, p.Withheld)
	}
	return p.Steps[len(p.Steps)-1].Stance
}

// worked are the stances of the demo clients' weeks: bands, leans, scales.
func worked(t testing.TB) []posed {
	t.Helper()
	studio, _ := repo()
	lib := library(t)
	var all []posed
	add := func(a program.Assessment) {
		p, _ := planner.Plan(lib, &a)
		for _, w := range p.Weeks {
			if w.Stance.Drawn() {
				all = append(all, posed{fmt.Sprint(a.Slug, " week ", w.Number), w.Step, a.Athlete.Sex, w.Stance})
			}
		}
	}
	for _, a := range studio.Clients {
		add(a)
		a.Bands, a.Tests, a.Kit = nil, nil, nil // leans on the floor
		a.Health.Wrists = program.JointFine
		add(a)
	}
	return all
}
