package view_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"

	"pgregory.net/rapid"
)

func newView(t *testing.T) *view.View {
	t.Helper()
	v, problems := view.New(viewtest.Coach(), viewtest.Library(), viewtest.Program())
	if problems != nil {
		t.Fatalf("the words file lacks: %v", problems)
	}
	return v
}

func plain(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }

func TestWeekInWords(t *testing.T) {
	w := newView(t).Weeks[2]
	for got, want := range map[string]string{
		w.Title: "Week 3", w.Dates: "25 to 31 Jan", w.Main: "4 × 12 s", w.Step: "open tuck",
		w.Rig: "narrow + middle", w.Drop: "strap 20 cm", w.Help: "5 kg", w.Rest: "2½ min",
		w.Line: "4 × 12 s, narrow + middle, strap 20 cm", w.Kind: "Build",
	} {
		if plain(got) != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

// The road from here names every step once: those of the block by its weeks, without
// months what is next and what is far, and steps of one time in one line.
func TestRoadInWords(t *testing.T) {
	p := viewtest.Program()
	after := p.Start + program.Date(7*len(p.Weeks))
	p.Outline = []program.Stage{{Step: "open-tuck", First: 1, Last: 8}, {Step: "advanced-tuck", First: 9, Last: 9},
		{Step: "one-leg-half-lay", From: after}, {Step: "open-half-lay", From: after + 70}, {Step: "straddle"}, {Step: "full"}}
	v, problems := view.New(viewtest.Coach(), viewtest.Library(), p)
	const want = "Open tuck in weeks 1 to 8; advanced tuck in week 9; one-leg half lay from the next block; " +
		"open half lay from about June 2027; straddle, full more than three years away."
	if problems != nil || plain(v.After) != want {
		t.Errorf("%v: %q", problems, v.After)
	}
}

// A session's line of the main hold is the week's, whichever printing asks.
func TestSameLineEverywhere(t *testing.T) {
	v := newView(t)
	var out bytes.Buffer
	if err := view.Text(&out, v); err != nil {
		t.Fatal(err)
	}
	for _, w := range v.Weeks {
		for _, s := range w.Sessions {
			for _, i := range s.Items {
				if i.RoleKey == program.RoleMain && i.Line != w.Line {
					t.Errorf("week %d says %q, its session %q", w.Number, w.Line, i.Line)
				}
			}
		}
		if !strings.Contains(out.String(), plain(w.Line)) {
			t.Errorf("the terminal does not say %q", w.Line)
		}
	}
}

func TestLadderStates(t *testing.T) {
	var got []string
	for _, r := range newView(t).Ladder {
		got = append(got, string(r.State))
	}
	if want := "held held now block later later goal"; strings.Join(got, " ") != want {
		t.Errorf("got %v, want %s", got, want)
	}
}

func TestForecastHidesFarDates(t *testing.T) {
	for _, c := range []struct {
		early, likely, late program.Date
		want, never         string
	}{
		{20700, 20800, 20900, "most likely about December 2026, likely between September 2026 and March 2027", "three years"},
		{20700, 20800, 0, "perhaps more than three years away", "1970"},
		{20700, 0, 0, "not before September 2026", "1970"},
		{0, 0, 0, "more than three years", "1970"},
	} {
		p := viewtest.Program()
		p.Forecasts = []program.Forecast{{Step: p.Goal.Step, Early: c.early, Likely: c.likely, Late: c.late}}
		v, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
		if !strings.Contains(v.Forecast.Sentence, c.want) || strings.Contains(v.Forecast.Sentence, c.never) {
			t.Errorf("%q: want %q, never %q", v.Forecast.Sentence, c.want, c.never)
		}
	}
}

func TestWithheld(t *testing.T) {
	p := viewtest.Program()
	p.Withheld, p.Weeks = []program.Note{{Code: viewtest.FixtureNote, Values: []program.Value{
		{Name: "exercise", Kind: program.ValueExercise, Text: "planche-lean"},
		{Name: "minutes", Kind: program.ValueCount, Number: 20}}}}, nil
	v, problems := view.New(viewtest.Coach(), viewtest.Library(), p)
	if problems != nil || len(v.Withheld) != 1 || v.Withheld[0] != "No room for the Planche lean in 20 minutes." {
		t.Errorf("got %v, %q", problems, v.Withheld)
	}
	if v.Weeks != nil || v.Ladder != nil || v.Where != "" {
		t.Error("a withheld program still says what to train")
	}
}

// What the planner says of joints and age is for the coach alone.
func TestPrivateNotesStayWithTheCoach(t *testing.T) {
	lib, p := viewtest.Library(), viewtest.Program()
	lib.Words["note.elbows-sore"] = "Sore elbows."
	p.Notes = []program.Note{{Code: "elbows-sore"}}
	v, _ := view.New(viewtest.Coach(), lib, p)
	if len(v.Notes) != 0 || len(v.AllNotes) != 1 {
		t.Errorf("notes %q, all %q", v.Notes, v.AllNotes)
	}
}

// Values of one name are a list; of kit any one thing will do, and what a coach added to the
// library is called as the coach does.
func TestNotesList(t *testing.T) {
	lib, p := viewtest.Library(), viewtest.Program()
	lib.Words["note.left-out-kit"], lib.Words["kit.box"], lib.Words["exercise.any_of"] = "Without {kit}: {steps}.", "wooden box", " or "
	kit := func(id string) program.Value { return program.Value{Name: "kit", Kind: program.ValueKit, Text: id} }
	step := func(id string) program.Value { return program.Value{Name: "steps", Kind: program.ValueStep, Text: id} }
	p.Notes = []program.Note{{Code: "left-out-kit", Values: []program.Value{kit("box"), kit("vault"), step("tuck"), step("half-open-tuck")}}}
	v, problems := view.New(viewtest.Coach(), lib, p)
	want := []string{"Without wooden box or vault: tuck, half-open tuck."}
	if problems != nil || !slices.Equal(v.Notes, want) || !slices.Equal(v.LeftOut, want) {
		t.Errorf("%v, %q, %q", problems, v.Notes, v.LeftOut)
	}
}

func TestMissingWordsAreNamed(t *testing.T) {
	lib := viewtest.Library()
	delete(lib.Words, "role.main")
	lib.Words["amount.in_rests"] = "in {minutes} minutes"
	v, problems := view.New(viewtest.Coach(), lib, viewtest.Program())
	if len(problems) != 2 || problems[0].File != "content/words/en.yaml" ||
		!strings.Contains(problems[0].Message, "{minutes}") || !strings.Contains(problems[1].Message, `"role.main"`) {
		t.Errorf("got %v", problems)
	}
	if v.Weeks[0].Main == "" {
		t.Error("the rest of the view should be there")
	}
}

// A plan whose next weeks rest from its step goes back to that, and does not begin below it.
func TestWhereAClientIsWhileTheStepRests(t *testing.T) {
	p := viewtest.Program()
	p.Place, p.Weeks[0].Step, p.Weeks[0].Exercise = "", "", ""
	v, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
	if !strings.HasPrefix(v.Where, "Maren works on the open tuck") {
		t.Errorf("%q", v.Where)
	}
}

func TestVersionFollowsTheProgram(t *testing.T) {
	p := viewtest.Program()
	p.Weeks[5].Sets++
	changed, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
	same := newView(t)
	if same.Version() != newView(t).Version() || same.Version() == changed.Version() || len(same.Version()) != 7 {
		t.Errorf("versions %q and %q", same.Version(), changed.Version())
	}
}

func TestTextFitsTheTerminal(t *testing.T) {
	lib := viewtest.Library()
	rapid.Check(t, func(t *rapid.T) {
		p := viewtest.Program()
		p.Client.Name = rapid.StringMatching(`[A-Za-zŁółệΩЖ ]{1,60}`).Draw(t, "name")
		p.Weeks[2].Rig.Bands = []string{rapid.StringMatching(`[a-z ]{1,40}`).Draw(t, "band")}
		v, _ := view.New(viewtest.Coach(), lib, p)
		var out bytes.Buffer
		if err := view.Text(&out, v); err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(out.String()) {
			if n := len([]rune(strings.TrimRight(line, "\n"))); n > 80 {
				t.Fatalf("%d columns: %q", n, line)
			}
		}
	})
}

// A week without weight on the hands leads with its first strength drill, so that
// no chart hangs empty.
func TestWeekWithoutMainWorkLeadsWithStrength(t *testing.T) {
	p := viewtest.Program()
	w := &p.Weeks[0]
	w.Step, w.Exercise, w.Rig, w.Sets, w.SetsLeast, w.Hold, w.Help = "", "", program.Rig{}, 0, 0, 0, 0
	w.Sessions = []program.Session{{Date: w.Start, Items: []program.Prescription{
		{Exercise: "hollow-hold", Role: program.RoleTrunk, Sets: 3, Hold: 25},
		{Exercise: "forearm-rock", Role: program.RoleStrength, Sets: 3, Reps: 8, Rest: 60},
	}}}
	v, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
	if got := v.Weeks[0]; got.Main != "3\u00a0×\u00a08" || got.ExerciseID != "forearm-rock" || got.Rig != "" {
		t.Errorf("the week reads %q of %q, rig %q", got.Main, got.ExerciseID, got.Rig)
	}
	if v.Labels.Hold != "Sets" || newView(t).Labels.Hold != "Hold" { // 3 × 8 is no hold
		t.Errorf("repetitions stand under %q, holds under %q", v.Labels.Hold, newView(t).Labels.Hold)
	}
}
