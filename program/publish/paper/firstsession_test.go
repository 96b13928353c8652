package paper

import (
	"slices"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/planner"
	"gatepost/program/publish/view"

	"pgregory.net/rapid"
)

// hourOf is a client's first hour, laid out.
func hourOf(t fataler, studio *program.Studio, a *program.Assessment) (*view.View, []*Page) {
	t.Helper()
	p, problems := planner.Plan(&studio.Library, a)
	if problems.Stop() {
		t.Fatal(problems)
	}
	v, _ := view.New(studio.Coach, &studio.Library, &p)
	h := planner.FirstHour(&studio.Library, a, &p)
	f, problems := view.NewFirstSession(studio.Coach, &studio.Library, &p, &h)
	if problems != nil {
		t.Fatal(problems)
	}
	return v, layFirstSession(setter(), v, f)
}

// Over generated clients, whatever is known of them: it fits, on two pages at the most, and
// the seven stretches are an hour, in their order.
func TestFirstSessionFits(t *testing.T) {
	for _, language := range []string{"en", "de"} {
		studio := spoken(t, language)
		rapid.Check(t, func(t *rapid.T) {
			a := clients.Draw(t, "client")
			if rapid.Bool().Draw(t, "a condition") {
				a.Health.Conditions = []string{"high blood pressure, by a pill a day", "a rib that was broken"}
				a.Health.ClearedBy = program.Clearance{Name: "A. Name", On: a.Measured}
			}
			studio.Coach.Paper = rapid.SampledFrom(papers).Draw(t, "paper")
			_, pages := hourOf(t, &studio, &a)
			if len(pages) > 2 {
				t.Errorf("%d pages", len(pages))
			}
			for _, page := range pages {
				for _, fault := range page.Faults() {
					t.Error(fault)
				}
			}
			text, at := textOf(pages...), 0
			for _, span := range []string{"0–5", "5–15", "15–25", "25–40", "40–50", "50–57", "57–60"} {
				i := strings.Index(text[at:], "\n"+span+"\n")
				if i < 0 {
					t.Fatalf("no %s after %q", span, text[:at])
				}
				at += i
			}
		})
	}
}

// For the demo studio and each family of skills nothing is cut, and it is one page on A4 in
// English.
func TestFirstSessionIsWhole(t *testing.T) {
	for _, language := range []string{"en", "de"} {
		for _, paper := range papers {
			studio := spoken(t, language)
			studio.Coach.Paper = paper
			for _, a := range append(slices.Clone(studio.Clients), others()...) {
				_, pages := hourOf(t, &studio, &a)
				text := textOf(pages...)
				if before, _, cut := strings.Cut(text, "…"); cut {
					t.Errorf("%s, %s, %s: cut after %q", a.Slug, language, paper, before[max(0, len(before)-40):])
				}
				if language == "en" && paper == program.PaperA4 && len(pages) != 1 {
					t.Errorf("%s: %d pages", a.Slug, len(pages))
				}
			}
			h := planner.BlankHour(&studio.Library)
			f, problems := view.NewFirstSession(studio.Coach, &studio.Library, &program.Program{}, &h)
			if problems != nil {
				t.Error(problems)
			}
			blank := &view.View{Coach: f.Coach, Labels: f.Labels}
			for _, page := range layFirstSession(setter(), blank, f) {
				if faults := page.Faults(); faults != nil || strings.Contains(textOf(page), "…") {
					t.Errorf("blank, %s, %s: %v", language, paper, faults)
				}
			}
		}
	}
}

// Joints and conditions are on the coach's sheet, and on nothing that the client or the wall
// gets.
func TestConditionsStayWithTheCoach(t *testing.T) {
	studio := demo(t)
	a := studio.Clients[slices.IndexFunc(studio.Clients, func(a program.Assessment) bool { return a.Slug == "anselm" })]
	a.Health.Conditions, a.Health.ClearedBy = []string{"canary fever"}, program.Clearance{Name: "Dr. Canary", On: a.Measured}
	v, pages := hourOf(t, &studio, &a)
	if text := textOf(pages...); !strings.Contains(text, "canary fever: cleared by Dr. Canary on 4 January 2027.") || !strings.Contains(text, "For the coach") {
		t.Error("the coach is not told")
	}
	_, how, _ := guidesOf(t, &studio, &a)
	hand, wall := sheets(v.Coach.Paper)
	handed := append(layCards(setter(), v, false, v.Cards), layOnePage(setter(), v), layChart(setter(), v, hand), layChart(setter(), v, wall))
	if text := strings.ToLower(textOf(append(handed, layHowTo(setter(), v, how)...)...)); strings.Contains(text, "canary") {
		t.Error("a sheet for the wall tells it")
	}
}

// What the script says of the first week is what cards and chart say: the next sessions and
// their minutes, the first week's rig and help, the cue.
func TestFirstSessionAgreesWithCards(t *testing.T) {
	studio := demo(t)
	for _, a := range append(slices.Clone(studio.Clients), others()...) {
		v, pages := hourOf(t, &studio, &a)
		text := textOf(pages...)
		for _, c := range v.Cards[:3] {
			if want := strings.ReplaceAll(c.Date, "\u00a0", " ") + ", "; !strings.Contains(text, want) {
				t.Errorf("%s: %s is not booked", a.Slug, c.Date)
			}
		}
		w := v.Weeks[0]
		if len(w.Bands) > 0 {
			if want := "Week 1: " + joined(w.Step, w.Rig, w.Drop, w.Helped) + "."; !strings.Contains(text, strings.ReplaceAll(want, "\u00a0", " ")) {
				t.Errorf("%s: no %q", a.Slug, want)
			}
		}
		if !strings.Contains(text, "\n"+v.Cue+"\n") {
			t.Errorf("%s: no cue %q", a.Slug, v.Cue)
		}
	}
}
