package intake

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"gatepost/program"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// near compares numbers that were converted from another unit.
var near = cmpopts.EquateApprox(0, 1e-12)

// The sound folder's client, value by value: numbers as they are written there,
// in units inside.
func TestAssessment(t *testing.T) {
	studio, problems := Read(sound(t), library(t), nil)
	if len(problems) > 0 || len(studio.Clients) != 1 {
		t.Fatalf("%d clients\n%s", len(studio.Clients), reported(problems))
	}
	const kg, deg = 9.80665, math.Pi / 180
	day := func(s string) program.Date {
		d, err := program.ParseDate(s)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	want := program.Assessment{
		Slug: "maren", Measured: day("2027-01-04"), Share: program.SharePrint,
		Athlete: program.Athlete{Name: "Maren", Sex: program.SexFemale, Born: day("1991-04-02"),
			Mass: 58, Height: 1.66, ArmSpan: 1.68, Straddle: 110 * deg, BalancePoint: 0.91},
		Training: program.Training{
			Experience: 8 * 365.25 / 84, Since: day("2026-06-01"),
			Best:  &program.Hold{Step: "advanced-tuck", Seconds: 8},
			Other: []program.OtherTraining{{Day: time.Tuesday, What: "rowing", Hard: true}},
			Days:  []time.Weekday{time.Monday, time.Wednesday, time.Friday}, Minutes: 60,
			Away: []program.Interval{{From: day("2027-02-15"), To: day("2027-02-21")}},
		},
		Health: program.Health{Wrists: program.JointSore, Elbows: program.JointFine, Shoulders: program.JointFine, Conditions: []string{}},
		Goal:   program.Goal{Skill: "planche", Step: "straddle", Hold: 10, By: day("2027-11-30")},
		Kit:    []string{"parallettes", "wall"},
		Bands: []program.Band{
			{Name: "narrow", Rest: 1, Pulls: []program.Pull{{At: 1.3, Force: 1.6 * kg}, {At: 1.6, Force: 2.4 * kg}, {At: 1.9, Force: 3 * kg}}},
			{Name: "middle", Rest: 1, Pulls: []program.Pull{{At: 1.3, Force: 3.6 * kg}, {At: 1.6, Force: 5.4 * kg}, {At: 1.9, Force: 6.8 * kg}}},
		},
		Hanging: program.Hanging{Anchor: 2.15, Support: 0.10, Drops: []float64{0, 0.2, 0.4}},
		Tests: []program.Hold{
			{Step: "tuck", Seconds: 14},
			{Step: "advanced-tuck", Rig: program.Rig{Bands: []string{"narrow", "middle"}}, Seconds: 10},
			{Exercise: "planche-lean", Ahead: 0.2, Seconds: 15},
		},
	}
	got := studio.Clients[0]
	if diff := cmp.Diff(want, got, near, cmpopts.IgnoreFields(program.Assessment{}, "Places"), cmpopts.EquateEmpty()); diff != "" {
		t.Errorf("assessment (-want +got):\n%s", diff)
	}
}

// Every value of an assessment can be found again by its path, at the spot where
// it stands in the file.
func TestPlaces(t *testing.T) {
	studio, _ := Read(sound(t), library(t), nil)
	file := "content/clients/maren/assessment.yaml"
	lines := strings.Split(string(sound(t)[file].Data), "\n")
	for path, text := range map[string]string{
		"name": "Maren", "body": "mass:", "body.balance_point": "91 cm", "training.days[2]": "fri", "training.best.hold": "8 s",
		"training.other[0].hard": "true", "training.away[0]": "2027-02-15/2027-02-21", "health.wrists": "sore", "health.guardian": `""`,
		"goal.by": "2027-11-30", "kit[1]": "wall", "bands[0]": "name: narrow", "bands[0].pulls[1]": "{at: 160 cm, force: 2.4 kg}",
		"bands[1].pulls[2].force": "6.8 kg", "rig.drops[2]": "40 cm", "tests[2]": "{exercise: planche lean", "tests[1].bands[1]": "middle",
		"tests[1].drop": "{step: advanced tuck", "body.no_such_key": "mass:",
	} {
		at := studio.Clients[0].Places.At(path)
		if at.File != file || at.Line < 1 || lines[at.Line-1] != at.Text {
			t.Errorf("%s: %+v", path, at)
			continue
		}
		if rest := at.Text[at.Column-1:]; !strings.HasPrefix(strings.TrimLeft(rest, "{"), strings.TrimLeft(text, "{")) {
			t.Errorf("%s is at %v, before %q", path, at, rest)
		}
	}
}

// Columns count characters, not bytes.
func TestPlacesCountCharacters(t *testing.T) {
	src := newSource("x.yaml", "{näme: Zoë, mass: 58 kilo}", false)
	var m float64
	src.readYAML("x", group(may("näme", "Zoë", text(new(string))), must("mass", "58 kg", mass.between(25, 250).into(&m))))
	if len(src.problems) != 1 || src.problems[0].Column != 19 {
		t.Errorf("%v", src.problems)
	}
}

// What is not said has the default that the words of package program give it.
func TestDefaults(t *testing.T) {
	bare := `name: Joss
born: 1983-05-06
measured: 2027-01-04
body: {mass: 70 kg, height: 180 cm}
training: {experience: 0 months, days: [thursday, Tue], minutes: 45}
health: {wrists: fine, elbows: fine, shoulders: fine}
goal: {skill: Planche, step: Tuck, hold: 10 s, by: 2027-09-30}
`
	studio, problems := Read(with(sound(t), "content/clients/joss/assessment.yaml", bare), library(t), nil)
	if len(problems) > 0 || len(studio.Clients) != 2 {
		t.Fatalf("%d clients\n%s", len(studio.Clients), reported(problems))
	}
	a := studio.Clients[0]
	if a.Hanging.Support != 0 || len(a.Hanging.Drops) != 1 || a.Athlete.ArmSpan != 0 || a.Training.Best != nil || a.Training.Weeks != 0 {
		t.Errorf("defaults: %+v", a)
	}
	if a.Training.Days[0] != time.Tuesday {
		t.Errorf("days are not in the order of the week: %v", a.Training.Days)
	}
	if a.Goal.Skill != "planche" || a.Goal.Step != "tuck" {
		t.Errorf("names did not become ids: %+v", a.Goal)
	}
}

func TestLibrary(t *testing.T) {
	studio, _ := Read(sound(t), library(t), nil)
	lib := &studio.Library
	lean, _ := lib.Exercise("planche-lean")
	if lean == nil || cmp.Diff(lean.Cues, []string{"push the floor away", "lean until the toes grow light", "ribs in, hips level"}) != "" ||
		lean.SetUp != "Hands under the shoulders, arms straight." || lean.File != "built-in content/exercises/planche-lean.md" || lean.Line != 14 {
		t.Errorf("planche lean: %+v", lean)
	}
	scale, _ := lib.Exercise("tuck-on-scale")
	if diff := cmp.Diff([][]string{{"bathroom scale"}, {"wall", "box"}}, scale.Kit); diff != "" {
		t.Errorf("kit of either kind: %s", diff)
	}
	road, _ := lib.RoadMap("planche")
	lay, _ := road.Step("one-leg-half-lay")
	if lay.Pose.Legs[0].Knee != 150*math.Pi/180 || lay.Pose.Legs[1] != (program.Leg{}) || lay.Sides != 2 || lay.Pose.Depression != 0.02 {
		t.Errorf("legs of their own: %+v", lay)
	}
	straddle, _ := road.Step("straddle")
	want := program.Gate{Sets: 3, Hold: 8, Single: 10, RPEMax: 8.5, Sessions: 2, Apart: 48, PainMax: 2}
	if !straddle.Pose.Legs[0].Straddle || !straddle.Pose.Legs[1].Straddle || straddle.Gate != want {
		t.Errorf("straddle: %+v", straddle)
	}
	if lib.Words["week.number"] != "week {number}" || len(lib.Pages) != 2 || lib.Pages[1].Body != "Welcome." {
		t.Errorf("words %v, pages %v", lib.Words, lib.Pages)
	}
}

// A coach's new exercise harder than a built-in one appears there as harder.
func TestLinkBackIsAdded(t *testing.T) {
	own := strings.Replace(string(library(t)["content/exercises/tuck-hold.md"].Data), "Tuck hold", "Tuck walk", 1)
	own = strings.Replace(own, "easier: [planche-lean, tuck-on-scale]", "easier: [Tuck hold]", 1)
	studio, problems := Read(with(sound(t), "content/exercises/tuck-walk.md", own), library(t), nil)
	hold, _ := studio.Library.Exercise("tuck-hold")
	if len(problems) > 0 || len(hold.Harder) != 1 || hold.Harder[0] != "tuck-walk" {
		t.Errorf("harder than a tuck hold: %v\n%s", hold.Harder, reported(problems))
	}
}

// An exercise taken away disappears from the lists of the built-in others.
func TestTakenAway(t *testing.T) {
	folder := with(sound(t), "content/roadmaps/planche.yaml", strings.Replace(
		string(library(t)["content/roadmaps/planche.yaml"].Data), "  - {kind: scale, exercise: tuck-on-scale}\n", "", 1))
	studio, problems := Read(with(folder, "content/exercises/tuck-on-scale.md", " \n"), library(t), nil)
	hold, _ := studio.Library.Exercise("tuck-hold")
	if len(problems) > 0 || cmp.Diff(hold.Easier, []string{"planche-lean"}) != "" {
		t.Errorf("easier than a tuck hold: %v\n%s", hold.Easier, reported(problems))
	}
}

// A client with a bad file is left out; the others are read.
func TestOneBadClient(t *testing.T) {
	good := string(sound(t)["content/clients/maren/assessment.yaml"].Data)
	folder := with(sound(t), "content/clients/joss/assessment.yaml", strings.Replace(good, "58 kg", "58 kilo", 1))
	studio, problems := Read(folder, library(t), nil)
	if len(studio.Clients) != 1 || studio.Clients[0].Slug != "maren" || !problems.Stop() {
		t.Errorf("%d clients\n%s", len(studio.Clients), reported(problems))
	}
}

// The same folder gives the same studio and the same report.
func TestSameEveryTime(t *testing.T) {
	folder := with(sound(t), "content/words/en.yaml", "x: {b: 1, a: 2}\nweek: {}\n")
	first, problems := Read(folder, library(t), zeros{})
	for range 5 {
		again, more := Read(folder, library(t), zeros{})
		if reported(problems) != reported(more) || !cmp.Equal(first, again) {
			t.Fatal("two readings differ")
		}
	}
}

func TestNoFolder(t *testing.T) {
	_, problems := Read(fstest.MapFS{"notes.txt": {}}, library(t), nil)
	mustContain(t, reported(problems), "content: there is no such folder here")
	_, problems = Read(fstest.MapFS{"content/studio.yaml": sound(t)["content/studio.yaml"]}, library(t), nil)
	mustContain(t, reported(problems), "content/clients: there is no client yet", "gatepost intake NAME", "1 problem\n")
	folder := sound(t)
	delete(folder, "content/studio.yaml")
	_, problems = Read(folder, library(t), nil)
	mustContain(t, reported(problems), "content/studio.yaml: the file about the coach is missing", "1 problem\n")
}

// many is a folder of so many sound clients.
func many(t testing.TB, n int) fstest.MapFS {
	folder := sound(t)
	text := string(folder["content/clients/maren/assessment.yaml"].Data)
	for i := range n - 1 {
		folder[fmt.Sprintf("content/clients/client-%d/assessment.yaml", i)] = &fstest.MapFile{Data: []byte(text)}
	}
	return folder
}

func BenchmarkRead300Clients(b *testing.B) {
	folder, lib := many(b, 300), library(b)
	for b.Loop() {
		if studio, problems := Read(folder, lib, nil); len(studio.Clients) != 300 {
			b.Fatal(reported(problems))
		}
	}
}

// A word for nothing is no condition to be cleared, no guardian, no clearance and no kit.
func TestNoneIsNothing(t *testing.T) {
	folder, _ := laidOut(t, readArchive(t, "testdata/cases/none.txtar"))
	studio, problems := Read(folder, library(t), zeros{})
	if problems.Stop() || len(studio.Clients) != 1 {
		t.Fatal(reported(problems))
	}
	a := studio.Clients[0]
	if h := a.Health; len(h.Conditions)+len(a.Kit)+len(a.Training.Away) > 0 || h.Guardian != "" || h.ClearedBy.Name != "" {
		t.Errorf("health %+v, kit %q, away %v", h, a.Kit, a.Training.Away)
	}
}
