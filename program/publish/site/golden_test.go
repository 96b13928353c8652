package site_test

import (
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"gatepost/program"
	"gatepost/program/posture"
	"gatepost/program/publish/site"
	"gatepost/program/publish/view"
	"gatepost/templates"
)

var update = flag.Bool("update", false, "rewrite the pages in testdata")

// One page of every template, kept to be read in a difference. There are no
// words, so that each shows its key, and the view is written by hand: only a
// change of this package or of the templates changes these files, and one of how large a
// standing body is drawn.
func TestPagesOfEveryTemplate(t *testing.T) {
	files, _ := site.Build(smallest())
	pages := map[string]string{
		"site/index.html": "home", "site/roadmaps.html": "roadmaps", "site/page-measure.html": "page", "site/notes.html": "notes", "site/note-first.html": "note", "site/exercises.html": "exercises",
		"site/exercise-lean.html": "exercise", "site/roadmap-skill.html": "roadmap",
		"site/programs.html": "programs", "site/program-open.html": "public", "site/find-open.html": "find", "site/level-open-1.html": "level",
		"site/c/abcdefgh/index.html": "program", "site/c/abcdefgh/week-2.html": "week", "site/c/abcdefgh/day-2027-01-18.html": "session", "site/c/abcdefgh/exercises.html": "howto", "site/c/abcdefgh/phone.html": "phone",
	}
	for _, f := range files {
		name, ok := pages[f.Path]
		if !ok {
			continue
		}
		delete(pages, f.Path)
		golden := filepath.Join("testdata", name+".html")
		if *update {
			if err := os.WriteFile(golden, f.Bytes, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(golden)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), string(f.Bytes)); diff != "" {
			t.Errorf("%s (-want +got; go test -update rewrites it):\n%s", golden, diff)
		}
	}
	for path := range pages {
		t.Errorf("%s was not made", path)
	}
}

// smallest is a source with one of everything.
func smallest() site.Source {
	gate := program.Gate{Sets: 4, Hold: 8, Single: 10}
	lib := &program.Library{
		RoadMaps: []program.RoadMap{{ID: "skill", Name: "Skill", Body: "How to read.", File: "content/roadmaps/skill.yaml",
			Rungs: []program.Rung{{Kind: program.RungLean, Exercise: "lean"}},
			Steps: []program.Step{{ID: "first", Name: "first", Exercise: "first-hold", Gate: gate, Sides: 2,
				Allowance: 1.02, Drills: []string{"lean"}}}}},
		Exercises: []program.Exercise{
			{ID: "first-hold", Name: "First hold", Role: program.RoleMain, Trains: []program.Purpose{program.ForStep}, Easier: []string{"lean"}},
			{ID: "lean", Name: "Lean", Role: program.RoleSecond, Trains: []program.Purpose{program.ForLean, program.ForRearShoulder},
				Kit: [][]string{{"wall"}, {"bar", "rings"}}, Grip: program.GripSupport, Loads: []string{"wrists", "elbows"},
				Dose: program.Dose{Sets: 3, Hold: 15, Rest: 90}, EachSide: true, Harder: []string{"first-hold"},
				SetUp: "Hands *down*.", Cues: []string{"Push", "Breathe"}, Faults: []string{"Bent: straighten."},
				MakeEasier: "Less.", MakeHarder: "More.", File: "content/exercises/lean.md", Figures: []program.Figure{
					{Things: []program.Thing{{Kind: program.ThingFloor, Parts: []program.Part{program.PartFeet}}}},
					{Angles: map[program.Bend]float64{program.BendShoulder: 1}},
				}},
		},
		Pages: []program.Page{
			{ID: "cautions", Title: "Cautions", Body: "Care.", File: "content/pages/cautions.md"},
			{ID: "home", Title: "Hall", Body: "Welcome.", File: "content/pages/home.md"},
			{ID: "measure", Title: "Measure", Body: "## Bands\n\n|a|b|\n|-|-:|\n|1|2|", File: "content/pages/measure.md"},
		},
	}
	return site.Source{
		Coach:      program.Coach{Name: "Coach", Studio: "Hall", Contact: "coach@example.org"},
		Library:    lib,
		Templates:  []fs.FS{templates.FS},
		References: []site.Reference{{RoadMap: "skill", Name: "female", Steps: []program.StepLoad{{ID: "first", Share: .593}}}},
		Pictures: func(exercise string) []program.Picture {
			if exercise == "lean" {
				return posture.NewAlbum(lib).Of(exercise)
			}
			return nil
		},
		Notes:   []program.CoachNote{{ID: "first", Title: "First", On: program.NewDate(2027, 1, 18), Body: "News.", File: "content/notes/first.md"}},
		Clients: []*view.View{smallView()},
		Publics: []site.Public{smallPublic()},
	}
}

// smallPublic has a level with bands and a document, and one without.
func smallPublic() site.Public {
	level := func(n int) view.Level {
		v := smallView()
		v.Client, v.Public, v.Page, v.After = "Level: first", false, "", "Go on."
		for i := range v.Weeks {
			v.Weeks[i].Dates = ""
			v.Weeks[i].Sessions = []view.Session{{Number: 1, Title: "Monday", Day: "Mon", DayDate: "Mon", Minutes: "40 min"}}
		}
		return view.Level{View: v, Number: n, Name: "Level", Short: "first", Shown: "You hold it.",
			Tests: []view.Test{{Name: "first", ExerciseID: "first-hold", Hold: "12 s", RPE: "8"}}}
	}
	p := &view.Public{ID: "open", Title: "Open", Blurb: "For all.", Goal: "First for 10 s", SkillID: "skill", Skill: "Skill",
		Facts: []view.Fact{{Label: "Days", Text: "3"}}, Bands: []string{"narrow: 2 kg"}, Levels: []view.Level{level(1), level(2)}}
	p.Levels[0].Help = view.HelpTable{Head: []string{"Weeks 1 to 3"}, Mean: "67 kg", Rows: []view.HelpRow{{Mass: "50 kg", Help: []string{"5 kg"}}}}
	return site.Public{View: p, Documents: [][]site.Document{{{Name: "wall-chart.pdf", Bytes: []byte("%PDF")}}, nil}}
}

func smallView() *view.View {
	item := view.Item{ExerciseID: "first-hold", Exercise: "First hold", Role: "Main hold", RoleKey: program.RoleMain,
		Amount: "4 × 12 s", Dose: "4 × 12 s", Rig: "narrow", Help: "2 kg", Spot: "hands under", Rest: "2 min", Clock: "2:00", Sets: 4, Hold: 12, Pause: 120, Remark: "check", Cue: "Push"}
	check := view.Item{Exercise: "Unknown", Role: "Test", RoleKey: program.RoleTest, Amount: "until it ends", Up: true}
	pull := view.Item{Exercise: "Unknown", Role: "Pull", RoleKey: program.RolePull, Amount: "3 × 8", Sides: "left 2, right 1", Dose: "3 × 8, left 2, right 1"}
	lean := view.Item{ExerciseID: "lean", Exercise: "Lean", Role: "Prepare", RoleKey: program.RolePrepare, Amount: "1 × 8"}
	session := func(n int) view.Session {
		return view.Session{Number: 1, Date: program.NewDate(2027, 1, 4+7*n), Title: "Monday", Day: "Mon", DayDate: "Mon", Minutes: "40 min", Items: []view.Item{lean, item, check, pull}}
	}
	card := view.Card{Minutes: "40 min", Note: "Film it.", Kind: "Gate", Prepare: []view.CardItem{{Item: lean}},
		Items: []view.CardItem{{Item: item, Easier: "less", Harder: "more", Boxes: []view.CardBox{{Caption: "1"}, {Caption: "2"}, {Caption: "RPE", After: true}}}, {Item: check}, {Item: pull}}}
	week := func(n int, kind program.WeekKind) view.Week {
		return view.Week{Number: n, Title: "Week", Dates: "11–17 Jan", Kind: "Kind", KindKey: kind, Step: "first",
			Main: "4 × 12 s", Range: "4 × 12 s", Rig: "narrow", Drop: "strap 20 cm", Help: "2 kg", HelpKG: 2 / float64(n),
			Line: "4 × 12 s, narrow", Provisional: n == 2, Sessions: []view.Session{session(n)}}
	}
	return &view.View{
		First: "Ann", Page: "abcdefgh", Public: true, Skill: "Skill", Goal: "first for 10 s by May", Where: "Ann works.",
		Block: "3 weeks", Number: "2",
		Forecast: view.Forecast{Early: "May", Likely: "June", Chance: "open"},
		Ladder: []view.Rung{{Step: "first", ExerciseID: "first-hold", State: view.RungNow, StateWord: "now"},
			{Step: "second", State: view.RungGoal, StateWord: "goal", When: "June"}},
		Weeks:  []view.Week{week(1, program.WeekBuild), week(2, program.WeekDeload), week(3, program.WeekTest)},
		Cards:  []view.Card{card, card, card},
		Labels: view.Labels{NotYet: "gate.not_yet", Numbered: "foot.plan"}, Gates: []view.Gate{{Step: "first", Words: "4 × 8 s", Week: 2}},
		Outline: []string{"second from June"}, LeftOut: []string{"no box"}, Cue: "Push",
		Advice: view.Advice{DayRule: []string{"day"}, StopRule: []string{"stop"}, PainRule: []string{"pain"},
			Missed: []string{"missed"}, Cautions: []string{"care"}},
	}
}
