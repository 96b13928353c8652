package paper

import (
	"fmt"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"

	"pgregory.net/rapid"
)

func setter() *typesetter { return &typesetter{lost: map[rune]bool{}} }

func fixture(t testing.TB) *view.View {
	t.Helper()
	v, problems := view.New(viewtest.Coach(), viewtest.Library(), viewtest.Program())
	if problems != nil {
		t.Fatal(problems)
	}
	return v
}

// wild draws a program of another length, with names and notes as people write
// them, in letters of several alphabets.
func wild(t *rapid.T, lib *program.Library) *view.View {
	p, coach := viewtest.Program(), viewtest.Coach()
	name := rapid.StringOfN(rapid.RuneFrom([]rune("aeiouŁłŚćệẾờΩΣЖяé\u0301-’. \u00a0\U0001F514漢")), 1, 70, -1)
	p.Client.Name = name.Draw(t, "client")
	coach.Name, coach.Studio, coach.Contact = name.Draw(t, "coach"), name.Draw(t, "studio"), name.Draw(t, "contact")
	coach.Paper = rapid.SampledFrom([]program.Paper{"", program.PaperA4, program.PaperLetter}).Draw(t, "paper")
	p.Weeks = weeks(t, p.Weeks)
	band := rapid.StringOfN(rapid.RuneFrom([]rune("narow middleŻ-")), 1, 40, -1)
	for i := range p.Weeks {
		w := &p.Weeks[i]
		if rapid.Bool().Draw(t, "rebanded") && len(w.Rig.Bands) > 0 {
			w.Rig.Bands = []string{band.Draw(t, "band"), band.Draw(t, "band")}
		}
		w.Provisional = rapid.Bool().Draw(t, "provisional")
		w.Hold, w.Sets = rapid.IntRange(4, 15).Draw(t, "hold"), rapid.IntRange(1, 12).Draw(t, "sets")
		w.Help = rapid.Float64Range(0, 250).Draw(t, "help")
		w.Gate = rapid.Bool().Draw(t, "gate week")
	}
	for range rapid.IntRange(0, 12).Draw(t, "notes") {
		p.Notes = append(p.Notes, program.Note{Code: viewtest.FixtureNote, Values: []program.Value{
			{Name: "exercise", Kind: program.ValueText, Text: rapid.StringN(0, 300, -1).Draw(t, "note")},
			{Name: "minutes", Kind: program.ValueCount, Number: 20}}})
	}
	for i := range p.Gates {
		p.Gates[i].Gate.Single = rapid.SampledFrom([]int{0, 10}).Draw(t, "longer set")
		p.Gates[i].Week = rapid.IntRange(0, len(p.Weeks)).Draw(t, "gate")
	}
	v, _ := view.New(coach, lib, p)
	v.Cue = rapid.StringN(0, 120, -1).Draw(t, "cue")
	return v
}

// weeks makes a block of 1 to 16 weeks of 1 to 7 sessions from one of twelve.
func weeks(t *rapid.T, of []program.Week) []program.Week {
	var all []program.Week
	for i := range rapid.IntRange(1, 16).Draw(t, "weeks") {
		w := of[i%len(of)]
		w.Number, w.Start = i+1, of[0].Start+program.Date(7*i)
		w.Sessions = nil
		for day := range rapid.IntRange(0, 7).Draw(t, "sessions") {
			w.Sessions = append(w.Sessions, program.Session{Date: w.Start + program.Date(day)})
		}
		switch rapid.IntRange(0, 5).Draw(t, "floor") {
		case 0: // on the floor
			w.Step, w.Exercise, w.Rig, w.Help, w.Ahead = "", "planche-lean", program.Rig{}, 0, 0.01*float64(15+i)
		case 1: // away
			w.Kind, w.Hold, w.Sets = program.WeekAway, 0, 0
		}
		all = append(all, w)
	}
	return all
}

func TestChartFitsItsSheet(t *testing.T) {
	lib := viewtest.Library()
	rapid.Check(t, func(t *rapid.T) {
		v := wild(t, lib)
		sheet := rapid.SampledFrom([]Sheet{A3, A4, Tabloid, Letter}).Draw(t, "sheet")
		if faults := layChart(setter(), v, sheet).Faults(); faults != nil {
			t.Fatal(strings.Join(faults, "\n"))
		}
	})
}

func TestOnePageIsOnePage(t *testing.T) {
	lib := viewtest.Library()
	rapid.Check(t, func(t *rapid.T) {
		if faults := layOnePage(setter(), wild(t, lib)).Faults(); faults != nil {
			t.Fatal(strings.Join(faults, "\n"))
		}
	})
}

// Reading distance 2 m / 200 (common practice): capitals of 10 mm on A3.
func TestMainFiguresAreReadFromTwoMetres(t *testing.T) {
	for weeks := 4; weeks <= 16; weeks++ {
		p := viewtest.Program()
		for len(p.Weeks) < weeks {
			p.Weeks = append(p.Weeks, p.Weeks[10])
		}
		p.Weeks = p.Weeks[:weeks]
		p.Weeks[1].Hold, p.Weeks[1].Sets = 15, 5
		v, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
		page := layChart(setter(), v, A3)
		found := 0
		for _, m := range page.Marks {
			if text, ok := m.(Text); ok && text.Lines[0] == "15" {
				found++
				if cap := text.Face.capHeight(text.Size); cap < 10 {
					t.Errorf("%d weeks: capitals of %.1f mm", weeks, cap)
				}
			}
		}
		if found != 1 {
			t.Errorf("%d weeks: the figure is there %d times", weeks, found)
		}
	}
}

// Gates of weeks that follow each other all have their flag, with all its words.
func TestGatesInNeighbouringWeeksAreAllTold(t *testing.T) {
	for _, gates := range [][]int{{3, 4}, {8, 9, 10}, {11, 12}} {
		p := viewtest.Program()
		for len(p.Weeks) < 16 {
			p.Weeks = append(p.Weeks, p.Weeks[10])
		}
		for i := range p.Weeks {
			p.Weeks[i].Number = i + 1
		}
		p.Gates = nil
		for i, week := range gates {
			p.Gates = append(p.Gates, program.StepGate{Step: []string{"open-tuck", "advanced-tuck", "straddle"}[i],
				Gate: program.Gate{Sets: 3, Hold: 10 + i, RPEMax: 9, Sessions: 2, Apart: 48, PainMax: 2}, Week: week})
		}
		v, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
		for _, sheet := range []Sheet{A3, Letter} {
			page := layChart(setter(), v, sheet)
			if faults := page.Faults(); faults != nil {
				t.Error(faults)
			}
			for _, g := range v.Gates {
				found := false
				for _, m := range page.Marks {
					if text, ok := m.(Text); ok && strings.Join(text.Lines, " ") == g.Short {
						found = true
					}
				}
				if !found {
					t.Errorf("%s, gates after weeks %v: %q is not told", sheet.Name, gates, g.Short)
				}
			}
		}
	}
}

// A deload or test week is told by a pattern, not only by a tone.
func TestKindsDifferByPattern(t *testing.T) {
	page := layChart(setter(), fixture(t), A3)
	patterns := map[string]int{}
	for _, m := range page.Marks {
		switch m := m.(type) {
		case Hatch:
			patterns["hatch"]++
		case Fill:
			if m.Tone == Ink && m.H > 5 {
				patterns["solid"]++
			}
		}
	}
	if got := fmt.Sprint(patterns); got != "map[hatch:2 solid:1]" { // fmt sorts keys
		t.Errorf("got %s for two deload weeks and a test", got)
	}
}

func TestFaultsAreFound(t *testing.T) {
	for name, m := range map[string][]Mark{
		"too wide":  {Text{Box: Box{10, 10, 5, 5}, Lines: []string{"far too wide"}, Size: 10, Lead: 5}},
		"too tall":  {Text{Box: Box{10, 10, 50, 5}, Lines: []string{"a", "b"}, Size: 10, Lead: 5}},
		"too small": {Text{Box: Box{10, 10, 50, 5}, Lines: []string{"a"}, Size: 7, Lead: 3}},
		"overlap": {Text{Box: Box{10, 10, 50, 5}, Lines: []string{"a"}, Size: 9, Lead: 4},
			Text{Box: Box{10, 12, 50, 5}, Lines: []string{"b"}, Size: 9, Lead: 4}},
		"free edge": {Fill{Box{2, 10, 5, 5}, Ink}},
		"no place":  {Stroke{Points: []Point{{10, 10}, {20, nan()}}}},
	} {
		p := A4.portrait("", 8)
		p.add(m...)
		if p.Faults() == nil {
			t.Errorf("%s: not noticed", name)
		}
	}
}

func nan() float64 { zero := 0.0; return zero / zero }

// A gate of three sets and a longer one: the figure stays as large as the others are, on
// every sheet, and the longer set stands under it.
func TestLongerSetLeavesTheFigureLarge(t *testing.T) {
	p := viewtest.Program()
	w := &p.Weeks[1]
	p.Gates[0].Step, p.Gates[0].Gate = w.Step, program.Gate{Sets: 3, Hold: 8, Single: 10, RPEMax: 9, Sessions: 2, Apart: 48, PainMax: 2}
	w.Gate, w.Sets, w.SetsLeast, w.Hold = true, 4, 4, 8
	v, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
	for _, sheet := range []Sheet{A3, A4, Tabloid, Letter} {
		page := layChart(setter(), v, sheet)
		if faults := page.Faults(); faults != nil {
			t.Errorf("%s: %s", sheet.Name, strings.Join(faults, "\n"))
		}
		found := 0
		for _, m := range page.Marks {
			text, ok := m.(Text)
			if ok && strings.Join(text.Lines, " ") == "then one of 10\u00a0s" {
				found++
			}
			if ok && text.Lines[0] == "8" && text.Y > 80 && sheet == A3 && text.Face.capHeight(text.Size) < 10 {
				t.Errorf("capitals of %.1f mm", text.Face.capHeight(text.Size))
			}
		}
		if found != 1 {
			t.Errorf("%s: the longer set is there %d times", sheet.Name, found)
		}
	}
}

// What is tested in the middle of a block is named there, also where the strip over the
// last weeks names what the block ends with.
func TestEveryTestIsNamed(t *testing.T) {
	v := fixture(t)
	v.Weeks[6].Test = "tested: still hang"
	text := strings.Join(strings.Fields(textOf(layChart(setter(), v, A3))), " ")
	for _, want := range []string{"tested: still hang", v.Weeks[11].Test} {
		if !strings.Contains(text, strings.ReplaceAll(want, "\u00a0", " ")) {
			t.Errorf("%q is missing", want)
		}
	}
}
