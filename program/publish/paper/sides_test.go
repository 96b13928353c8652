package paper

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/planner"
	"gatepost/program/publish/view"
)

// oneLegged is Maren of the demo studio a year on: she works on the one-leg half
// lay, and rows with one arm.
func oneLegged(t *testing.T, language string) *view.View {
	t.Helper()
	studio := spoken(t, language)
	a := studio.Clients[slices.IndexFunc(studio.Clients, func(a program.Assessment) bool { return a.Slug == "maren" })]
	a.Tests = []program.Hold{{Step: "advanced-tuck", Seconds: 20}, {Step: "one-leg-half-lay", Seconds: 10}}
	a.Kit, a.Log = []string{"parallettes", "wall", "dumbbells"}, program.Log{}
	p, problems := planner.Plan(&studio.Library, &a)
	if problems.Stop() {
		t.Fatal(problems)
	}
	v, problems := view.New(studio.Coach, &studio.Library, &p)
	if problems != nil {
		t.Fatal(problems)
	}
	return v
}

var lettered = regexp.MustCompile(`^[1-9]\x{a0}[LR]$`)

// Where one side gets a set more, each box of the hold says whose set it is, by
// turns; so do the ticks of a row. Nothing of it is cut, also in German.
func TestCardsSayWhoseSetItIs(t *testing.T) {
	for language, sentence := range map[string]string{"en": "sides alternate, set by set", "de": "Die Seiten wechseln von Satz zu Satz"} {
		v := oneLegged(t, language)
		want := 0
		for _, c := range v.Cards {
			for _, item := range c.Items {
				if item.StepID == "one-leg-half-lay" && item.Sets%2 == 1 && !item.Open {
					want += item.Sets
				}
			}
		}
		boxes, ticks := 0, 0
		for _, page := range layCards(setter(), v, false, v.Cards) {
			for _, fault := range append(page.Faults(), cardFaults(page)...) {
				t.Error(fault)
			}
			for _, m := range page.Marks {
				text, ok := m.(Text)
				switch {
				case !ok:
				case lettered.MatchString(text.Lines[0]):
					boxes++
				case text.Lines[0] == "L" || text.Lines[0] == "R":
					ticks++
				case strings.HasSuffix(text.Lines[len(text.Lines)-1], "…"):
					t.Errorf("cut: %q", text.Lines)
				}
			}
		}
		if want < 20 || boxes < want || ticks == 0 {
			t.Errorf("%s: %d boxes with letters for %d sets, %d ticks", language, boxes, want, ticks)
		}
		if pdf, _ := OnePage(v); !strings.Contains(strings.ReplaceAll(tool(t, pdf, "pdftotext", "FILE", "-"), "\n", " "), sentence) {
			t.Errorf("%s: the one-page plan does not say that %s", language, sentence)
		}
	}
}

// A card's letters begin with the side that gets more, and alternate.
func TestLettersAlternate(t *testing.T) {
	for _, c := range oneLegged(t, "en").Cards {
		for _, item := range c.Items {
			if len(item.Turns) == 0 {
				continue
			}
			first := strings.ToUpper(string(item.Begins[:1]))
			for i, letter := range item.Turns {
				if (i%2 == 0) != (letter == first) {
					t.Errorf("%s: %v, and %s begins", item.Name, item.Turns, item.Begins)
				}
			}
			if len(item.Turns) != item.Sets || !strings.HasPrefix(item.Sides, string(item.Begins)) {
				t.Errorf("%d sets, %v, %q", item.Sets, item.Turns, item.Sides)
			}
		}
	}
}
