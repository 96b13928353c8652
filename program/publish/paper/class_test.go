package paper

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"gatepost/program"
	"gatepost/program/planner"
	"gatepost/program/publish/view"
)

// classOf is a class of the demo studio, one client of each other family, and so many
// generated ones, on a Monday; with the view that its pages are laid out for.
func classOf(t *testing.T, language string, paper program.Paper, more int) (*view.View, *view.Class, []view.Attending) {
	t.Helper()
	studio := spoken(t, language)
	studio.Coach.Paper = paper
	all := append(slices.Clone(studio.Clients), others()...)
	for seed := range more {
		a := clients.Example(seed)
		a.Athlete.Name = fmt.Sprintf("%s %d", names[seed%5], seed)
		all = append(all, a)
	}
	var attending []view.Attending
	for _, a := range all {
		a.Training.Days = []time.Weekday{time.Monday, time.Thursday}
		a.Measured = 20822
		p, problems := planner.Plan(&studio.Library, &a)
		if problems.Stop() || len(p.Weeks) == 0 {
			continue
		}
		v, _ := view.New(studio.Coach, &studio.Library, &p)
		attending = append(attending, view.Attending{View: v, Program: &p})
	}
	c, problems := view.NewClass(studio.Coach, &studio.Library, 20822+14, attending)
	if problems != nil {
		t.Fatal(problems)
	}
	return &view.View{Coach: c.Coach, Labels: c.Labels, Client: c.Title}, c, attending
}

// A row a client, as many pages as it takes, each with the day and the names of the columns;
// it fits and nothing is cut, in either language and on either paper.
func TestClassFits(t *testing.T) {
	for _, language := range []string{"en", "de"} {
		for _, paper := range papers {
			for _, more := range []int{0, 30} {
				v, c, attending := classOf(t, language, paper, more)
				pages := layClass(setter(), v, c)
				name := strings.Join([]string{language, string(paper), fmt.Sprint(more)}, ", ")
				if len(c.Rows) < len(attending)*2/3 || more > 0 && len(pages) < 3 {
					t.Errorf("%s: %d rows of %d on %d pages", name, len(c.Rows), len(attending), len(pages))
				}
				for i, page := range pages {
					for _, fault := range page.Faults() {
						t.Errorf("%s, page %d: %s", name, i+1, fault)
					}
					text := textOf(page)
					for _, want := range []string{c.Title, c.Columns.Client, c.Columns.Sets} {
						if !strings.Contains(text, strings.ReplaceAll(want, "\u00a0", " ")+"\n") {
							t.Errorf("%s, page %d: no %q", name, i+1, want)
						}
					}
				}
				text := textOf(pages...)
				if before, _, cut := strings.Cut(text, "…"); cut {
					t.Errorf("%s: cut after %q", name, before[max(0, len(before)-40):])
				}
				for _, row := range c.Rows {
					if n := strings.Count(text, "\n"+row.Client+"\n"); n != 1 {
						t.Errorf("%s: %s has %d rows", name, row.Client, n)
					}
				}
			}
		}
	}
}

// A row says what the client's card of that day says: the same work, sets, seconds and help,
// and a cell for each of its boxes. Who has no session that day is named below.
func TestClassAgreesWithCards(t *testing.T) {
	_, c, attending := classOf(t, "en", program.PaperA4, 20)
	date := "Monday 18\u00a0January"
	for _, a := range attending {
		i := slices.IndexFunc(a.View.Cards, func(card view.Card) bool { return card.Date == date })
		n := slices.IndexFunc(c.Rows, func(r view.ClassRow) bool { return r.Client == a.View.Client })
		if i < 0 {
			if n >= 0 || !strings.Contains(c.Missing, a.View.Client) {
				t.Errorf("%s has no card of that day: row %d, %q", a.View.Client, n, c.Missing)
			}
			continue
		}
		if n < 0 {
			t.Errorf("%s has no row", a.View.Client)
			continue
		}
		card := layCards(setter(), a.View, false, a.View.Cards[i:i+1])
		text, row := textOf(card...), c.Rows[n]
		for _, want := range []string{row.Work, row.Amount} {
			if !strings.Contains(text, strings.ReplaceAll(want, "\u00a0", " ")) {
				t.Errorf("%s: the card does not say %q: %s", row.Client, want, text)
			}
		}
		if len(row.Boxes) != len(a.View.Cards[i].Items[a.View.Cards[i].Main].Boxes) {
			t.Errorf("%s: %d cells", row.Client, len(row.Boxes))
		}
	}
}

// Joints and conditions have no words on a sheet that lies about in a hall.
func TestClassKeepsQuiet(t *testing.T) {
	studio := demo(t)
	a := studio.Clients[slices.IndexFunc(studio.Clients, func(a program.Assessment) bool { return a.Slug == "joss" })]
	a.Health.Conditions, a.Health.ClearedBy = []string{"canary fever"}, program.Clearance{Name: "Dr. Canary", On: a.Measured}
	p, _ := planner.Plan(&studio.Library, &a)
	v, _ := view.New(studio.Coach, &studio.Library, &p)
	day := p.Weeks[0].Sessions[0].Date
	c, _ := view.NewClass(studio.Coach, &studio.Library, day, []view.Attending{{View: v, Program: &p}})
	text := strings.ToLower(textOf(layClass(setter(), &view.View{Coach: c.Coach, Labels: c.Labels, Client: c.Title}, c)...))
	for _, private := range []string{"canary", "sore", "82", "1982"} {
		if strings.Contains(text, private) {
			t.Errorf("it says %q: %s", private, text)
		}
	}
}
