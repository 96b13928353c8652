package paper

import (
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/ladder"
	"gatepost/program/publish/view"

	"pgregory.net/rapid"
)

var papers = []program.Paper{program.PaperA4, program.PaperLetter}

// allPages is every document of a client, before ink.
func allPages(ts *typesetter, v *view.View) []*Page {
	hand, wall := sheets(v.Coach.Paper)
	if len(v.Weeks) == 0 {
		return []*Page{layOnePage(ts, v)}
	}
	return append([]*Page{layChart(ts, v, wall), layChart(ts, v, hand), layOnePage(ts, v)}, layCoach(ts, v)...)
}

// Over generated clients, planned as they would be: no text leaves its box, no
// texts overlap, nothing enters the free edge, no type is too small.
func TestEveryDocumentFitsItsSheets(t *testing.T) {
	coach := demo(t).Coach
	rapid.Check(t, func(t *rapid.T) {
		a := clients.Draw(t, "client")
		coach.Paper = rapid.SampledFrom(papers).Draw(t, "paper")
		v := viewOf(t, coach, &a)
		for _, page := range allPages(setter(), v) {
			if faults := page.Faults(); faults != nil {
				t.Fatal(page.Name + ": " + strings.Join(faults, "\n"))
			}
		}
	})
}

// The form of every skill fits its sheets, in either language, and says all its words.
func TestTestSheetFits(t *testing.T) {
	for _, language := range []string{"en", "de"} {
		studio := spoken(t, language)
		skills := []string{""}
		for _, road := range studio.Library.RoadMaps {
			skills = append(skills, road.ID)
		}
		for _, paper := range papers {
			for _, skill := range skills {
				studio.Coach.Paper = paper
				sheet, problems := view.NewSheet(studio.Coach, &studio.Library, skill)
				if problems != nil {
					t.Error(problems)
				}
				banded, second := ladder.Shown(&studio.Library, skill)
				for _, page := range layTestSheet(setter(), sheet, Shown{banded, second, album().Of}) {
					if faults := page.Faults(); faults != nil {
						t.Errorf("%s, %s, %s, %s: %s", language, paper, skill, page.Name, strings.Join(faults, "\n"))
					}
					if before, _, cut := strings.Cut(textOf(page), "…"); cut {
						t.Errorf("%s, %s, %s: cut after %q", language, paper, skill, before[max(0, len(before)-40):])
					}
				}
			}
		}
	}
}

// The sheet of the tests can be read without the first one: whose it is and of which day,
// which steps there are, and room for repetitions and for what was left on the scale.
func TestTestSheetStandsAlone(t *testing.T) {
	studio := demo(t)
	for _, paper := range papers {
		studio.Coach.Paper = paper
		sheet, _ := view.NewSheet(studio.Coach, &studio.Library, "planche")
		banded, second := ladder.Shown(&studio.Library, "planche")
		text := textOf(layTestSheet(setter(), sheet, Shown{banded, second, album().Of})[1])
		for _, want := range []string{"Name\n", "Measured\n", "Times\n", "Scale, kg\n", "Lean, cm\n", "Steps, easiest first: tuck, half-open tuck"} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is missing", paper, want)
			}
		}
		if strings.Contains(text, "…") {
			t.Errorf("%s: cut: %s", paper, text)
		}
	}
}

// The form asks for what a skill needs and shows what it tests: no band is hung where one
// presses, lifts or balances, pads and blocks have their line, and only who lifts measures
// lean and straddle there.
func TestTestSheetIsOfItsSkill(t *testing.T) {
	studio := demo(t)
	for skill, want := range map[string]struct{ has, not []string }{
		"planche":            {[]string{"Bands", "Anchor", "Balance point", "Rig\n"}, []string{"Pads under", "Blocks under", "What is tested first"}},
		"front-lever":        {[]string{"Bands", "Anchor", "Bar\n"}, []string{"Pads under", "What is tested first"}},
		"handstand-push-up":  {[]string{"Pads under the head", "Push-up, 15 reps", "What is tested first"}, []string{"Bands", "Anchor", "Rig\n", "Balance point", "Straddle\n"}},
		"press-to-handstand": {[]string{"Blocks under the feet", "Fold\n", "Lean\n", "Straddle\n", "Straddle support, 8 s"}, []string{"Bands", "Anchor", "Rig\n", "Balance point"}},
		"free-handstand":     {[]string{"Lying handstand line, 30 s", "Notes"}, []string{"Bands", "Anchor", "Rig\n", "Balance point", "Blocks", "Pads"}},
	} {
		sheet, _ := view.NewSheet(studio.Coach, &studio.Library, skill)
		banded, second := ladder.Shown(&studio.Library, skill)
		pages := layTestSheet(setter(), sheet, Shown{banded, second, album().Of})
		text := textOf(pages...)
		for _, word := range want.has {
			if !strings.Contains(text, word) {
				t.Errorf("%s: no %q", skill, word)
			}
		}
		for _, word := range want.not {
			if strings.Contains(text, word) {
				t.Errorf("%s: %q has no place there", skill, word)
			}
		}
	}
}
