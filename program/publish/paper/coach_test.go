package paper

import (
	"strings"
	"testing"

	"gatepost/program/planner"
	"gatepost/program/publish/view"
)

// A chart without a single bar is left out, and what is left of the two pages becomes one:
// nothing is held in a block that leads up to balance, or to a first step.
func TestCoachPageWithoutEmptyCharts(t *testing.T) {
	v := fixture(t)
	c := &v.ForCoach
	c.Arrivals, c.Worth, c.WeekNotes = c.Arrivals[:1], nil, nil
	c.Rig.Stance.Height, v.AllNotes = 0, []string{"Canary weeks are quiet."}
	for i := range c.Weeks {
		c.Weeks[i].Hold, c.Weeks[i].HelpKG, c.Weeks[i].Seconds = 0, 0, 0
	}
	pages := layCoach(setter(), v)
	if len(pages) != 1 {
		t.Errorf("%d pages", len(pages))
	}
	text := textOf(pages...)
	for _, title := range []string{c.HelpTitle, c.SecondsTitle, c.WorthTitle, c.WeeksTitle} {
		if strings.Contains(text, title) {
			t.Errorf("%q stands there, over nothing", title)
		}
	}
	for _, title := range []string{c.ForecastTitle, c.NotesTitle} {
		if !strings.Contains(text, title) {
			t.Errorf("%q is missing", title)
		}
	}
}

// The titles and legends of the charts are said in full, in either language.
func TestCoachChartsAreWhole(t *testing.T) {
	for _, language := range []string{"en", "de"} {
		studio := spoken(t, language)
		for i := range studio.Clients {
			p, _ := planner.Plan(&studio.Library, &studio.Clients[i])
			v, _ := view.New(studio.Coach, &studio.Library, &p)
			if before, _, cut := strings.Cut(textOf(layCoach(setter(), v)[0]), "…"); cut {
				t.Errorf("%s, %s: cut after %q", v.Slug, language, before[max(0, len(before)-40):])
			}
		}
	}
}
