package paper

import (
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"

	"pgregory.net/rapid"
)

// largePages is every document that a client with weak eyes is handed, before ink.
func largePages(ts *typesetter, v *view.View) [][]*Page {
	return [][]*Page{layCharts(ts, v), layLargePage(ts, v), layCards(ts, v, false, v.Cards)}
}

// Over generated clients, large print fits its sheets and has no letter under 14 points,
// which is the least that WCAG 2.2 calls large, bold; nothing is cut.
func TestLargePrintIsLarge(t *testing.T) {
	coach := demo(t).Coach
	rapid.Check(t, func(t *rapid.T) {
		a := clients.Draw(t, "client")
		a.Large = true
		a.Athlete.Name = rapid.SampledFrom(names[:6]).Draw(t, "name") // one may be wider than a card
		coach.Paper = rapid.SampledFrom(papers).Draw(t, "paper")
		v := viewOf(t, coach, &a)
		if len(v.Weeks) == 0 {
			t.Skip("no program")
		}
		for _, pages := range largePages(setter(), v) {
			for _, page := range pages {
				for _, fault := range page.Faults() {
					t.Error(fault)
				}
				for _, m := range page.Marks {
					if text, ok := m.(Text); ok && text.Size < 14 {
						t.Errorf("%q in %.1f points", text.Lines, text.Size)
					}
				}
			}
		}
	})
}

// Large print says what the other print says: every week with its work and its help, every
// rule, every caution, and every card.
func TestLargePrintSaysTheSame(t *testing.T) {
	eachDemo(t, func(name string, v *view.View) {
		v.Large = true
		all := largePages(setter(), v)
		for i, pages := range all {
			if before, _, cut := strings.Cut(textOf(pages...), "…"); cut {
				t.Errorf("%s, document %d: cut after %q", name, i, before[max(0, len(before)-60):])
			}
		}
		chart, page := textOf(all[0]...), textOf(all[1]...)
		if len(all[2]) != len(v.Cards) {
			t.Errorf("%s: %d sheets for %d cards", name, len(all[2]), len(v.Cards))
		}
		says := func(sheet, text, want string) {
			if want = strings.ReplaceAll(want, "\u00a0", " "); !strings.Contains(text, want) {
				t.Errorf("%s, %s: no %q", name, sheet, want)
			}
		}
		for _, w := range v.Weeks {
			says("chart", chart, w.Dates)
			says("chart", chart, w.Main)
			says("chart", chart, joined(w.Rig, w.Drop, w.Helped))
			says("page", page, joined(strings.TrimSpace(w.Range+" "+w.Step), w.Rig, w.Drop, w.Helped))
			for _, s := range w.Sessions {
				says("chart", chart, s.Short)
			}
		}
		for _, r := range v.Ladder {
			says("page", page, r.Step)
		}
		for _, text := range append(append(append([]string{v.Where, v.Forecast.ChanceLine, v.Cue}, v.Notes...), v.Advice.DayRule...), v.Advice.PainRule...) {
			says("page", page, text)
		}
		for _, text := range append(v.Advice.Cautions, v.Advice.NotMedical) {
			says("chart", chart, text)
			says("page", page, text)
		}
	})
}

// Printed on both sides, a large card is a sheet, and a batch begins one of its own.
func TestLargeCardsAreSheets(t *testing.T) {
	v := fixture(t)
	v.Large = true
	if n := len(layCards(setter(), v, true, v.Cards[:3], v.Cards[3:5])); n != 6 { // the back of the third stays empty
		t.Errorf("%d pages", n)
	}
	page := layCards(setter(), v, false, v.Cards[:1])[0]
	edge := Box{freeEdge, freeEdge, A4.Width - 2*freeEdge, A4.Height - 2*freeEdge}
	for _, m := range page.Marks {
		if !m.extent().within(edge) {
			t.Errorf("%+v is off the sheet", m)
		}
	}
}

// The letter to who gets no program yet is large as well, and says why.
func TestLargeLetter(t *testing.T) {
	a := program.Assessment{}
	for _, c := range demo(t).Clients {
		if c.Slug == "joss" {
			a = c
		}
	}
	a.Large, a.Health.Conditions = true, []string{"a condition"}
	v := viewOf(t, demo(t).Coach, &a)
	text := textOf(layLargePage(setter(), v)...)
	for _, want := range append(v.Withheld, v.Advice.NotMedical) {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %s", want, text)
		}
	}
}
