package site_test

import (
	"maps"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/site"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

// linksOf are the addresses a page leads to, fragments taken off.
func linksOf(t *testing.T, page, text string) []string {
	var all []string
	for _, n := range elements(parse(t, text)) {
		if to, _, _ := strings.Cut(attr(n, "href"), "#"); n.Data == "a" && to != "" {
			all = append(all, path.Join(path.Dir(page), to))
		}
	}
	return all
}

// Who comes from anywhere on the site reads first who should see a professional:
// only the way in leads to the tests, and only the tests and the levels lead to a
// level.
func TestCautionsComeBeforeTheTests(t *testing.T) {
	files := demoSite(t)
	level := regexp.MustCompile(`^site/level-([a-z-]+)-[0-9]+(-week-[0-9]+(-day-[0-9]+)?)?\.html$`)
	found := 0
	for _, page := range slices.Sorted(maps.Keys(files)) {
		if !isPage(page) {
			continue
		}
		for _, to := range linksOf(t, page, files[page]) {
			of := level.FindStringSubmatch(page)
			switch id, toFind := strings.CutPrefix(strings.TrimSuffix(to, ".html"), "site/find-"); {
			case toFind:
				found++
				if page != "site/program-"+id+".html" && (of == nil || of[1] != id) {
					t.Errorf("%s leads to the tests", page)
				}
			case level.MatchString(to):
				id := level.FindStringSubmatch(to)[1]
				if page != "site/find-"+id+".html" && (of == nil || of[1] != id) {
					t.Errorf("%s leads to a level", page)
				}
			}
		}
	}
	if found == 0 {
		t.Error("no page leads to the tests")
	}
	for _, word := range []string{"blood pressure", "pregnancy", "dislocated", "Numbness", "Under 18"} {
		if !strings.Contains(files["site/program-bare-floor.html"], word) {
			t.Errorf("the way in does not speak of %q", word)
		}
	}
}

// From home a reader reaches the program, the tests, every level, its weeks and
// its sessions.
func TestTheWayFromHomeToASession(t *testing.T) {
	files := demoSite(t)
	reached := map[string]bool{}
	var walk func(page string)
	walk = func(page string) {
		if text, ok := files[page]; ok && isPage(page) && !reached[page] {
			reached[page] = true
			for _, to := range linksOf(t, page, text) {
				walk(to)
			}
		}
	}
	walk("site/index.html")
	for page := range files {
		if isPage(page) && !isOfClient(page) && !reached[page] {
			t.Errorf("no way leads from home to %s", page)
		}
	}
	for page, wants := range map[string][]string{
		"site/level-ropes-and-bands-2-week-1.html":       {`id="day-1"`, "Tuck, 3"},
		"site/level-ropes-and-bands-2-week-1-day-1.html": {"Tuck planche", "data-hold=", `type="checkbox"`, "rest 2:30"},
	} {
		for _, want := range wants {
			if !strings.Contains(files[page], want) {
				t.Errorf("%s lacks %q", page, want)
			}
		}
	}
}

// dated finds a day of the calendar: an ISO date, a month's short name after a
// number, or a year of the demo.
var dated = regexp.MustCompile(`\b20[0-9]{2}-[0-9]{2}|\b[0-9]{1,2}[ \x{a0}](Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)|\b(2001|2027|2028|2029)\b`)

func TestLevelsHaveNoDates(t *testing.T) {
	seen := 0
	for page, text := range demoSite(t) {
		if !strings.HasPrefix(page, "site/level-") || !isPage(page) {
			continue
		}
		seen++
		if found := dated.FindString(text); found != "" {
			t.Errorf("%s has a date: %q", page, found)
		}
		if strings.Contains(text, "noindex") {
			t.Errorf("%s asks not to be indexed", page)
		}
	}
	if seen < 100 {
		t.Errorf("only %d pages of levels", seen)
	}
}

// Whatever the command makes is written as it is and can be downloaded.
func TestDocuments(t *testing.T) {
	files := fixtureSite(t)
	const name = "site/level-open-hours-1-wall-chart.pdf"
	if files[name] != "%PDF-1.7 for the wall" {
		t.Errorf("%s: %q", name, files[name])
	}
	if !slices.Contains(linksOf(t, "site/x", files["site/level-open-hours-1.html"]), name) {
		t.Error("the level does not lead to its wall chart")
	}
	if strings.Contains(files["site/level-open-hours-2.html"], ".pdf") {
		t.Error("a level without documents leads to one")
	}
}

func TestADocumentWithoutWords(t *testing.T) {
	s := source(t)
	s.Publics[0].Documents[0][0].Name = "star-chart.pdf"
	_, problems := site.Build(s)
	if len(problems) != 1 || !strings.Contains(problems[0].Message, "document.star-chart") {
		t.Errorf("problems: %v", problems)
	}
}

// The names of the escapes come from the HTML standard, 13.1.4.
func TestWordsOfAProgramAreNoMarkup(t *testing.T) {
	const nasty = `"><script>alert(1)</script><img src=x>`
	s := source(t)
	from, levels := viewtest.Public()
	from.Title, from.Blurb, from.Bands[0].Name, from.Kit = nasty, nasty, nasty, []string{nasty}
	for i := range levels[0].Program.Weeks {
		levels[0].Program.Weeks[i].Rig = program.Rig{Bands: []string{nasty}}
	}
	p, _ := view.NewPublic(viewtest.Coach(), s.Library, from, levels)
	s.Publics = []site.Public{{View: p}}
	for page, text := range build(t, s) {
		if isPage(page) && (strings.Contains(text, "<script>alert") || strings.Contains(text, "<img src=x")) {
			t.Errorf("%s: words became markup", page)
		}
	}
}

// A program whose goal is the first step has one level and nothing to test.
func TestAProgramOfOneLevel(t *testing.T) {
	s := source(t)
	from, levels := viewtest.Public()
	p, _ := view.NewPublic(viewtest.Coach(), s.Library, from, levels[:1])
	s.Publics = []site.Public{{View: p}}
	files := build(t, s)
	if strings.Contains(files["site/find-open-hours.html"], "<table") {
		t.Error("there is a table of tests")
	}
	checkLinks(t, files, 500)
}

// No program, no word of programs.
func TestWithoutPrograms(t *testing.T) {
	s := source(t)
	s.Publics = nil
	files := build(t, s)
	if _, ok := files["site/programs.html"]; ok || strings.Contains(files["site/index.html"], "programs.html") {
		t.Error("a list of no programs")
	}
	checkLinks(t, files, 500)
}

// An exercise's page says which programs have it.
func TestExercisesLeadToPrograms(t *testing.T) {
	files := demoSite(t)
	for page, want := range map[string]bool{"planche-lean": true, "straddle-hold": false} {
		got := slices.Contains(linksOf(t, "site/x", files["site/exercise-"+page+".html"]), "site/program-bare-floor.html")
		if got != want {
			t.Errorf("%s leads to the program on the bare floor: %v", page, got)
		}
	}
}
