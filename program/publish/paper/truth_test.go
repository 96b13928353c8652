package paper

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"gatepost/program"
	"gatepost/program/planner"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

// What all sheets of one client say of a step and of the goal agrees: nothing is
// held and still to come, no date stands before that of an easier step, no work on
// a step begins after it is likely held, and the chance of the goal is one word, in
// plan, note, one-page, coach page and the review of the same day.
func TestSheetsDoNotContradictEachOther(t *testing.T) {
	studio := demo(t)
	rapid.Check(t, func(t *rapid.T) {
		a := clients.Draw(t, "client")
		p, problems := planner.Plan(&studio.Library, &a)
		if problems.Stop() || len(p.Withheld) > 0 {
			t.Skip("no program")
		}
		kept := planner.Version(&p, 1, a.Measured)
		same, _, _ := planner.Read(&studio.Library, &a, []program.PlanVersion{kept}, a.Measured)
		for _, fault := range contradictions(sheetsOf(t, &studio, &p, &same)) {
			t.Errorf("first plan: %s", fault)
		}
		a.Log.Entries = asPrinted(&p, 2)
		r, q, _ := planner.Read(&studio.Library, &a, []program.PlanVersion{kept}, p.Start+13)
		if len(q.Withheld) > 0 {
			return
		}
		for _, fault := range contradictions(sheetsOf(t, &studio, &q, &r)) {
			t.Errorf("after two weeks: %s", fault)
		}
		again, _, _ := planner.Read(&studio.Library, &a, []program.PlanVersion{kept, planner.Version(&q, 2, p.Start+13)}, p.Start+13)
		if chanceOf(q.Goal) != chanceOf(again.GoalBefore) {
			t.Errorf("the second plan said %v, the review that it said %v", q.Goal, again.GoalBefore)
		}
		if chanceOf(p.Goal) != chanceOf(r.GoalBefore) {
			t.Errorf("the first plan said %v, the review that it said %v", p.Goal, r.GoalBefore)
		}
	})
}

func chanceOf(g program.GoalForecast) string { return fmt.Sprintf("%.2f %v", g.Chance, g.Met) }

// asPrinted is a log of so many weeks done as printed.
func asPrinted(p *program.Program, weeks int) []program.Entry {
	var all []program.Entry
	for _, w := range p.Weeks[:min(weeks, len(p.Weeks))] {
		for _, s := range w.Sessions {
			all = append(all, program.Entry{Date: s.Date, AsPrinted: true})
		}
	}
	return all
}

// sheetsOf are the texts of everything that is printed of a program, by name.
func sheetsOf(t rapid.TB, studio *program.Studio, p *program.Program, r *program.Review) map[string]string {
	t.Helper()
	v, problems := view.New(studio.Coach, &studio.Library, p)
	if problems.Stop() {
		t.Fatal(problems)
	}
	var plan, review bytes.Buffer
	if err := view.Text(&plan, v); err != nil {
		t.Fatal(err)
	}
	w, problems := view.NewReview(studio.Coach, &studio.Library, p, r)
	if problems.Stop() {
		t.Fatal(problems)
	}
	if err := view.ReviewText(&review, w); err != nil {
		t.Fatal(err)
	}
	sheets := map[string]string{"plan": plan.String(), "review": review.String(), "notes": strings.Join(v.AllNotes, "\n")}
	for name, pages := range map[string][]*Page{
		"one-page": {layOnePage(setter(), v)}, "coach page": layCoach(setter(), v), "chart": {layChart(setter(), v, A3)},
	} {
		sheets[name] = textOf(pages...)
	}
	for name, text := range sheets {
		sheets[name] = strings.ReplaceAll(text, "\u00a0", " ")
	}
	return sheets
}

// What the coach answers and has learned is on the coach's page, and on nothing that
// the client is handed.
func TestOnlyTheCoachIsAsked(t *testing.T) {
	p := viewtest.Program()
	p.Asks = []program.Note{{Code: viewtest.FixtureNote, Values: []program.Value{
		{Name: "exercise", Kind: program.ValueText, Text: "canary"}, {Name: "minutes", Kind: program.ValueCount, Number: 60}}}}
	p.Offsets = []program.Offset{{Exercise: "canary-lean", Ln: 0.2, Spread: 0.01}}
	v, problems := view.New(viewtest.Coach(), viewtest.Library(), p)
	if problems.Stop() {
		t.Fatal(problems)
	}
	if text := textOf(layCoach(setter(), v)...); !strings.Contains(text, "No room for the canary") || !strings.Contains(text, "Canary lean: about 22 % heavier") {
		t.Error("the coach is not asked")
	}
	pages := append(layCards(setter(), v, false, v.Cards), layOnePage(setter(), v), layChart(setter(), v, A3))
	if strings.Contains(strings.ToLower(textOf(pages...)), "canary") {
		t.Error("the client reads what the coach is asked")
	}
}

// textOf is all text of some pages, a piece a line; a word broken at its hyphen is
// whole again.
func textOf(pages ...*Page) string {
	var text strings.Builder
	for _, page := range pages {
		for _, m := range page.Marks {
			if t, ok := m.(Text); ok {
				lines := strings.Join(t.Lines, " \r")
				text.WriteString(strings.NewReplacer("- \r", "-", " \r", " ").Replace(lines) + "\n")
			}
		}
	}
	return strings.ReplaceAll(text.String(), "\u00a0", " ")
}

const monthYear = `((?:January|February|March|April|May|June|July|August|September|October|November|December) \d{4})`

var (
	spaces    = regexp.MustCompile(`\s+`)
	rungLine  = regexp.MustCompile(`(?m)^  (\S.*?)\s+\d+ %\s+(held|behind you|now|in this block|later|goal)(?:\s+most likely about ` + monthYear + `)?$`)
	stageText = regexp.MustCompile(`((?:[A-Za-z]|-| )+) from about ` + monthYear)
	chances   = map[string]*regexp.Regexp{
		"plan":       regexp.MustCompile(`By \d+ \w+ \d{4} that is (unlikely|open|likely|very likely)\.`),
		"coach page": regexp.MustCompile(`By \d+ \w+ \d{4} that is (unlikely|open|likely|very likely)\.`),
		"one-page":   regexp.MustCompile(`By \d+ \w+ \d{4}: (unlikely|open|likely|very likely) \(`),
		"review":     regexp.MustCompile(`Now: [^.]*; by \d+ \w+ \d{4} (unlikely|open|likely|very likely)\.`),
	}
	noteUnlikely = regexp.MustCompile(`by \d+ \w+ \d{4} is unlikely`)
)

// contradictions reads the sheets as a client and a coach would, side by side.
func contradictions(sheets map[string]string) []string {
	var all []string
	say := func(format string, args ...any) { all = append(all, fmt.Sprintf(format, args...)) }
	states, dates := map[string]string{}, map[string]time.Time{}
	var last time.Time
	for _, m := range rungLine.FindAllStringSubmatch(sheets["plan"], -1) {
		step := strings.ToLower(m[1])
		states[step] = m[2]
		if m[3] == "" {
			continue
		}
		date := month(m[3])
		if dates[step] = date; date.Before(last) {
			say("%s most likely %s, an easier step later", step, m[3])
		}
		if last = date; m[2] == "held" || m[2] == "behind you" {
			say("%s is %s, and most likely %s", step, m[2], m[3])
		}
	}
	if len(states) == 0 {
		say("no ladder in the plan")
	}
	for _, sheet := range []string{"plan", "one-page"} {
		var last time.Time
		for _, m := range stageText.FindAllStringSubmatch(spaces.ReplaceAllString(sheets[sheet], " "), -1) {
			step, from := strings.ToLower(strings.TrimSpace(m[1])), month(m[2])
			if from.Before(last) {
				say("%s: %s from %s, an easier step later", sheet, step, m[2])
			}
			last = from
			if state := states[step]; state == "held" || state == "behind you" || state == "now" || state == "in this block" {
				say("%s: %s is %s, and from about %s", sheet, step, state, m[2])
			}
			if likely, ok := dates[step]; ok && from.After(likely) {
				say("%s: %s from about %s, most likely held %v", sheet, step, m[2], likely)
			}
		}
	}
	words := map[string]string{}
	for _, sheet := range []string{"plan", "coach page", "one-page", "review"} {
		if m := chances[sheet].FindStringSubmatch(spaces.ReplaceAllString(sheets[sheet], " ")); m != nil {
			words[sheet] = m[1]
		} else {
			words[sheet] = "met"
		}
	}
	for sheet, word := range words {
		if word != words["plan"] {
			say("the plan says %s, the %s %s", words["plan"], sheet, word)
		}
	}
	if noted := noteUnlikely.MatchString(sheets["notes"]); noted != (words["plan"] == "unlikely") {
		say("the plan says %s, a note says unlikely: %v", words["plan"], noted)
	}
	slices.Sort(all)
	return all
}

func month(s string) time.Time {
	t, err := time.Parse("January 2006", s)
	if err != nil {
		panic(err)
	}
	return t
}
