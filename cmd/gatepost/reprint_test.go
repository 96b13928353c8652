package main

import (
	"slices"
	"testing"

	"gatepost/program"
	"gatepost/program/planner"
	"gatepost/program/publish/view"

	"github.com/google/go-cmp/cmp"
)

// coachAtWork prints what each review says, and nothing else.
type coachAtWork struct {
	*testing.T
	studio *program.Studio
	paper  map[string][]view.CardItem // what to do, by the date on the card
	waited int                        // reviews that named a card which they did not change
	stood  int                        // reviews that found a week's cards as they were
}

func (c *coachAtWork) print(p *program.Program, days func(program.Date) bool) {
	v, problems := view.New(c.studio.Coach, &c.studio.Library, p)
	if problems.Stop() {
		c.Fatal(problems)
	}
	i := 0
	for _, w := range p.Weeks {
		for _, s := range w.Sessions {
			if days(s.Date) {
				c.paper[v.Cards[i].Date] = v.Cards[i].Items
			}
			i++
		}
	}
}

// read is the review of a Sunday: the plan is kept and hung, and what it says is
// printed.
func (c *coachAtWork) read(a *program.Assessment, log []program.Entry, sunday program.Date) {
	a.Log.Entries = slices.DeleteFunc(slices.Clone(log), func(e program.Entry) bool { return e.Date > sunday })
	r, p, problems := planner.Read(&c.studio.Library, a, a.Plans, sunday)
	if problems.Stop() {
		c.Fatal(problems)
	}
	r.PrintNow = p.ToPrint(r.Changes, a.Plans, r.Version)
	if p.Version > r.Version {
		a.Plans = append(a.Plans, planner.Version(&p, p.Version, sunday))
		c.sameOnTheWall(a, r.PrintNow)
	}
	changed := slices.ContainsFunc(r.Changes, func(change program.Change) bool {
		return slices.ContainsFunc(change.Cards, func(d program.Date) bool { return slices.Contains(r.PrintNow, d) })
	})
	if len(r.PrintNow) > 0 && !changed {
		c.waited++
	}
	if len(r.PrintNow) == 0 {
		c.stood++
	}
	c.print(&p, func(d program.Date) bool { return slices.Contains(r.PrintNow, d) })
	c.check(&p)
}

// sameOnTheWall compares with the cards that come first in changed-cards.pdf.
func (c *coachAtWork) sameOnTheWall(a *program.Assessment, now []program.Date) {
	made := (&making{studio: c.studio}).client(a)
	if diff := cmp.Diff(now, made.printNow); diff != "" {
		c.Errorf("%s: the review and the wall print other cards:\n%s", a.Slug, diff)
	}
}

// check compares what is on paper with the coming week.
func (c *coachAtWork) check(p *program.Program) {
	coming := p.Coming()
	if coming == nil {
		return
	}
	v, _ := view.New(c.studio.Coach, &c.studio.Library, p)
	for _, card := range v.Cards {
		if card.Number == coming.Number && !slices.EqualFunc(card.Items, c.paper[card.Date], sameItem) {
			c.Errorf("%s, %s: the card on paper is an old one\n%s", p.Client.Slug, card.Date, cmp.Diff(c.paper[card.Date], card.Items))
		}
	}
}

func sameItem(a, b view.CardItem) bool {
	return a.Name == b.Name && a.Amount == b.Amount && a.Rig == b.Rig && a.Pause == b.Pause
}

// Whoever prints all cards once and then, week by week, only what the review says,
// never trains from an old card.
func TestNobodyTrainsFromAnOldCard(t *testing.T) {
	studio := demoStudio(t, nil)
	a := studio.Clients[slices.IndexFunc(studio.Clients, func(a program.Assessment) bool { return a.Slug == "maren" })]
	a.Share = program.SharePrint
	log := a.Log.Entries
	p, _ := planner.Plan(&studio.Library, &a)
	a.Plans = []program.PlanVersion{planner.Version(&p, 1, min(a.Measured, p.Start))}
	c := &coachAtWork{T: t, studio: &studio, paper: map[string][]view.CardItem{}}
	c.print(&p, func(program.Date) bool { return true })
	for week := range len(p.Weeks) - 1 {
		c.read(&a, log, p.Start+program.Date(7*week+6))
	}
	if len(a.Plans) < 4 || c.waited == 0 || c.stood == 0 {
		t.Errorf("%d plans, %d times a card had waited, %d times none was to print: too little to tell", len(a.Plans), c.waited, c.stood)
	}
}
