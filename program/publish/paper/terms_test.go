package paper

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"gatepost/program/planner"
	"gatepost/program/publish/view"
)

// eachDemo is every client of the demo studio, and one for each other skill, on both
// papers and in both languages.
func eachDemo(t *testing.T, do func(name string, v *view.View)) {
	t.Helper()
	for _, language := range []string{"en", "de"} {
		studio := spoken(t, language)
		for _, a := range append(studio.Clients, others()...) {
			p, problems := planner.Plan(&studio.Library, &a)
			if problems.Stop() {
				t.Fatal(problems)
			}
			for _, paper := range papers {
				coach := studio.Coach
				coach.Paper = paper
				v, problems := view.New(coach, &studio.Library, &p)
				if problems.Stop() {
					t.Fatal(problems)
				}
				v.Show(everywhere)
				do(strings.Join([]string{a.Slug, language, string(paper)}, ", "), v)
			}
		}
	}
}

// Wall chart and one-page plan say everything they say in full, the words explained among it.
func TestBlockSheetsAreWhole(t *testing.T) {
	eachDemo(t, func(name string, v *view.View) {
		hand, wall := sheets(v.Coach.Paper)
		for _, page := range []*Page{layChart(setter(), v, wall), layChart(setter(), v, hand), layOnePage(setter(), v)} {
			if before, _, cut := strings.Cut(textOf(page), "…"); cut {
				t.Errorf("%s, %s: cut after %q", name, page.Name, before[max(0, len(before)-60):])
			}
		}
	})
}

// No word of the wall chart is broken between its letters, in however narrow a column: a block
// of 16 weeks in German on a small sheet.
func TestChartBreaksNoWord(t *testing.T) {
	eachDemo(t, func(name string, v *view.View) {
		hand, wall := sheets(v.Coach.Paper)
		for _, sheet := range []Sheet{hand, wall} {
			text := textOf(layChart(setter(), v, sheet))
			has := func(words ...string) {
				for _, w := range words {
					if strings.Contains(text, "\n"+strings.ReplaceAll(w, "\u00a0", " ")+"\n") {
						return
					}
				}
				t.Errorf("%s, %s: none of %q", name, sheet.Name, words)
			}
			for _, w := range v.Weeks {
				has(w.Dates, w.From)
				if w.Main != "" {
					has(w.Step)
					if rig := joined(w.Rig, w.Drop); rig != "" {
						has(rig)
					}
				}
				if w.Check != "" && w.Test == "" {
					has(w.Check, w.CheckShort)
				}
			}
		}
	})
}

// A client finds the own card among others at the wall: the name in capitals of 2.7 mm or
// more, 11 points, in full or by its first word, and in full in the foot.
func TestCardsShowWhoseTheyAre(t *testing.T) {
	eachDemo(t, func(name string, v *view.View) {
		for n := range v.Cards {
			found := 0
			for _, m := range layCards(setter(), v, false, v.Cards[n:n+1])[0].Marks {
				if text, ok := m.(Text); ok && text.Lines[0] == v.Client {
					found++
					if found == 1 && text.Size < 11 {
						t.Errorf("%s, card %d: the name is set in %.1f points", name, n+1, text.Size)
					}
				}
			}
			if found != 2 {
				t.Errorf("%s, card %d: the name is there %d times", name, n+1, found)
			}
		}
	})
}

// What a reader does not know is explained where it is met: of each word that a sheet
// uses, what the sheet says of it.
func TestWordsAreExplainedWhereTheyAreMet(t *testing.T) {
	studio := demo(t)
	met := map[string]int{}
	for _, a := range append(slices.Clone(studio.Clients), others()...) {
		v := viewOf(t, studio.Coach, &a)
		hand, _ := sheets(v.Coach.Paper)
		for sheet, text := range map[string]string{"chart": textOf(layChart(setter(), v, hand)), "one-page": textOf(layOnePage(setter(), v))} {
			for word, means := range map[string]string{
				"RPE": "RPE: how hard, 1 to 10.", "free\n": "Free: without help.", "The gate\n": "Gate: what has to be shown", "\nDeload\n": "Deload: a light week",
				"\ncheck hold\n": "Check hold: until two seconds are left", "\ncheck set\n": "Check set: until one repetition is left", "\ngate's open set\n": "Open set: ",
				", 2 ×\n": "× beside a day: so many main sets", "\nlean 1": "Lean: how far the shoulders", "hands from the wall\n": "Hands: 10 cm each",
				"\nHelp\n": "Help: as many kilograms",
			} {
				if strings.Contains(text, word) {
					met[word]++
					if !strings.Contains(text, means) {
						t.Errorf("%s, %s: %q is not explained", a.Slug, sheet, word)
					}
				}
			}
		}
		for n := range v.Cards {
			text := textOf(layCards(setter(), v, false, v.Cards[n:n+1])...)
			if strings.Contains(text, "\nRPE\n") && !strings.Contains(text, "RPE: how hard") {
				t.Errorf("%s, card %d: RPE is not explained", a.Slug, n+1)
			}
			if practised := regexp.MustCompile(`\n(\d+ s \+)\n`).FindStringSubmatch(text); practised != nil && !strings.Contains(text, practised[1]+": how many tries") {
				t.Errorf("%s, card %d: %s is not explained", a.Slug, n+1, practised[1])
			}
		}
	}
	if len(met) < 10 {
		t.Errorf("only %v are met", met)
	}
}
