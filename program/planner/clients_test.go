package planner

import (
	"crypto/rand"
	"fmt"
	"math"
	"os"
	"slices"
	"sync"
	"testing"
	"time"

	"pgregory.net/rapid"

	"gatepost/program"
	"gatepost/program/intake"
	_ "gatepost/program/steady"
)

// repo reads the library and the demo studio of this repository.
var repo = sync.OnceValues(func() (program.Studio, program.Problems) {
	root := os.DirFS("../..")
	return intake.Read(root, root, rand.Reader)
})

func library(t testing.TB) *program.Library {
	t.Helper()
	studio, problems := repo()
	for _, p := range problems {
		t.Log(p)
	}
	if problems.Stop() {
		t.Fatal("the repository's own content does not read")
	}
	return &studio.Library
}

// maren is a client to bend: mid-way, with bands, three days a week.
func maren(t testing.TB) program.Assessment {
	t.Helper()
	studio, _ := repo()
	for _, c := range studio.Clients {
		if c.Slug == "maren" {
			c.Log, c.Plans, c.Wishes = program.Log{}, nil, nil // each test writes its own
			c.Share = program.SharePrint                       // and knows the body to the kilogram
			return c
		}
	}
	t.Fatal("no demo client maren")
	return program.Assessment{}
}

const monday = program.Date(20822) // 2027-01-04

var allKit = []string{"parallettes", "wall", "pull-up bar", "rings", "dumbbells", "box", "bathroom scale"}

// clients draws any client that intake would let through: heavy and light, with
// and without bands, tests, sore joints, days away, of 13 to 70 years.
var clients = rapid.Custom(func(t *rapid.T) program.Assessment {
	a := program.Assessment{
		Slug: "someone", Measured: monday + program.Date(rapid.IntRange(0, 13).Draw(t, "measured")),
		Athlete: athletes.Draw(t, "athlete"),
		Kit:     subsetOf(t, allKit, "kit"),
		Bands:   rapid.SliceOfN(bandsDrawn, 0, 3).Draw(t, "bands"),
		Hanging: hangings.Draw(t, "hanging"),
		Health:  healths.Draw(t, "health"),
		Places:  program.Places{},
	}
	for i := range a.Bands {
		a.Bands[i].Name = fmt.Sprint("band ", i)
	}
	a.Training = training(t, a.Measured)
	a.Goal = program.Goal{
		Skill: "planche", Step: rapid.SampledFrom(stepIDs).Draw(t, "goal"),
		Hold: float64(rapid.IntRange(3, 20).Draw(t, "goal hold")),
		By:   a.Measured + program.Date(rapid.OneOf(rapid.IntRange(1, 30), rapid.IntRange(30, 1100)).Draw(t, "by")),
	}
	for range rapid.IntRange(0, 3).Draw(t, "tests") {
		a.Tests = append(a.Tests, testDrawn(t, &a))
	}
	return a
})

var stepIDs = []string{"tuck", "half-open-tuck", "open-tuck", "advanced-tuck", "one-leg-half-lay",
	"open-half-lay", "straddle", "closed-half-lay", "narrow-straddle", "full"}

var athletes = rapid.Custom(func(t *rapid.T) program.Athlete {
	height := float64(rapid.IntRange(145, 200).Draw(t, "height")) / 100
	return program.Athlete{
		Name:     "Some One",
		Sex:      rapid.SampledFrom([]program.Sex{program.SexFemale, program.SexMale, program.SexUnspecified}).Draw(t, "sex"),
		Born:     monday - program.Date(365*rapid.IntRange(13, 70).Draw(t, "age")),
		Mass:     float64(rapid.IntRange(40, 130).Draw(t, "mass")),
		Height:   height,
		ArmSpan:  height * float64(rapid.IntRange(95, 107).Draw(t, "span")) / 100,
		Straddle: float64(rapid.SampledFrom([]int{0, 80, 100, 120, 150}).Draw(t, "straddle")) * math.Pi / 180,
	}
})

var bandsDrawn = rapid.Custom(func(t *rapid.T) program.Band {
	force := float64(rapid.IntRange(10, 120).Draw(t, "force"))
	return program.Band{Rest: 1, Pulls: []program.Pull{{At: 1.3, Force: force}, {At: 1.6, Force: force * 1.5}, {At: 1.9, Force: force * 1.9}}}
})

var hangings = rapid.Custom(func(t *rapid.T) program.Hanging {
	return program.Hanging{
		Anchor: float64(rapid.IntRange(180, 260).Draw(t, "anchor")) / 100, Support: 0.10,
		Offset: float64(rapid.IntRange(-20, 20).Draw(t, "offset")) / 100,
		Drops:  []float64{0, 0.2, 0.4}[:rapid.IntRange(1, 3).Draw(t, "drops")],
	}
})

var healths = rapid.Custom(func(t *rapid.T) program.Health {
	joint := rapid.SampledFrom([]program.Joint{program.JointFine, program.JointFine, program.JointFine, program.JointSore, program.JointInjured})
	h := program.Health{Wrists: joint.Draw(t, "wrists"), Elbows: joint.Draw(t, "elbows"), Shoulders: joint.Draw(t, "shoulders")}
	if rapid.IntRange(0, 9).Draw(t, "guardian") > 0 {
		h.Guardian = "Some Body"
	}
	if rapid.IntRange(0, 9).Draw(t, "condition") == 0 {
		h.Conditions = []string{"high blood pressure"}
	}
	if rapid.IntRange(0, 4).Draw(t, "cleared") > 0 {
		h.ClearedBy = program.Clearance{Name: "Some Body", On: monday}
	}
	return h
})

func training(t *rapid.T, measured program.Date) program.Training {
	tr := program.Training{
		Experience: float64(rapid.IntRange(0, 400).Draw(t, "experience")),
		Minutes:    rapid.SampledFrom([]int{20, 25, 30, 45, 60, 75, 120}).Draw(t, "minutes"),
		Weeks:      rapid.SampledFrom([]int{0, 0, 4, 5, 8, 9, 16}).Draw(t, "weeks"),
	}
	for i, d := range subsetOf(t, []int{1, 2, 3, 4, 5, 6, 0}, "days") {
		_ = i
		tr.Days = append(tr.Days, time.Weekday(d))
	}
	if len(tr.Days) == 0 {
		tr.Days = []time.Weekday{time.Weekday(rapid.IntRange(0, 6).Draw(t, "day"))}
	}
	if rapid.Bool().Draw(t, "spell") {
		tr.Since = measured - program.Date(7*rapid.IntRange(0, int(tr.Experience)).Draw(t, "since"))
	}
	if rapid.IntRange(0, 4).Draw(t, "lay-off") == 0 {
		tr.Best = &program.Hold{Step: rapid.SampledFrom(stepIDs).Draw(t, "best"), Seconds: 8}
	}
	for range rapid.IntRange(0, 2).Draw(t, "away") {
		from := measured + program.Date(rapid.IntRange(0, 90).Draw(t, "from"))
		tr.Away = append(tr.Away, program.Interval{From: from, To: from + program.Date(rapid.IntRange(0, 40).Draw(t, "long"))})
	}
	if rapid.Bool().Draw(t, "other") {
		tr.Other = []program.OtherTraining{{Day: time.Tuesday, What: "rowing", Hard: true}}
	}
	return tr
}

func testDrawn(t *rapid.T, a *program.Assessment) program.Hold {
	h := program.Hold{
		Step:    rapid.SampledFrom(stepIDs).Draw(t, "tested"),
		Seconds: float64(rapid.IntRange(0, 40).Draw(t, "held")),
	}
	if len(a.Bands) > 0 && rapid.Bool().Draw(t, "banded") {
		h.Rig = program.Rig{Bands: []string{a.Bands[0].Name}}
	}
	if rapid.IntRange(0, 3).Draw(t, "lean") == 0 {
		return program.Hold{Exercise: "planche-lean", Ahead: float64(rapid.IntRange(2, 30).Draw(t, "ahead")) / 100, Seconds: h.Seconds}
	}
	return h
}

func subsetOf[T any](t *rapid.T, all []T, label string) []T {
	mask := rapid.SliceOfN(rapid.Bool(), len(all), len(all)).Draw(t, label)
	var out []T
	for i, take := range mask {
		if take {
			out = append(out, all[i])
		}
	}
	return slices.Clip(out)
}
