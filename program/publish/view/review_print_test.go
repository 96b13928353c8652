package view_test

import (
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

// replanned is the fixture with changes in the weeks of some numbers, each of so many
// cards from its Monday on.
func replanned(cards map[int]int) (*program.Program, *program.Review) {
	p, r := viewtest.Replanned(), viewtest.Review()
	r.Changes, r.PrintNow = nil, nil
	for i := range p.Weeks {
		w := &p.Weeks[i]
		if n, ok := cards[w.Number]; ok {
			c := program.Change{Week: w.Number, Start: w.Start}
			for day := range n {
				c.Cards = append(c.Cards, w.Start+program.Date(day))
			}
			r.Changes = append(r.Changes, c)
		}
	}
	return p, r
}

// The coming week is told in full, later ones in a line of what they are now.
func TestLaterWeeksTakeALine(t *testing.T) {
	p, r := replanned(map[int]int{5: 2, 8: 3, 9: 3, 11: 1, 12: 0})
	r.Changes = append(r.Changes, program.Change{Week: 13, Start: p.Start + 84, Notes: []program.Note{{Code: "change-gone"}}, Gone: []program.Date{p.Start + 84}})
	p.Weeks[8].Gate = true
	p.Weeks[10] = program.Week{Number: 11, Start: p.Weeks[10].Start, Kind: program.WeekTest}
	p.Weeks[11] = program.Week{Number: 12, Start: p.Weeks[11].Start, Kind: program.WeekAway}
	v, problems := view.NewReview(viewtest.Coach(), viewtest.Library(), p, r)
	for _, problem := range problems {
		t.Error(problem)
	}
	want := []string{
		"Week 5, 8 to 14 Feb: now open tuck, 4 × 12 s, middle, strap 20 cm. Cards: 8 Feb, 9 Feb.",
		"Week 8, Deload: now open tuck, 2 × 6 s, free.",
		"Week 9, Gate: now advanced tuck, 4 × 12 s, narrow + middle.",
		"Week 11, Test: Card: 22 Mar.",
		"Week 12, Away.",
		"Week 13: This week is no more.",
	}
	if got := strings.ReplaceAll(strings.Join(v.Changes, "\n"), "\u00a0", " "); got != strings.Join(want, "\n") {
		t.Errorf("changes:\n%s\nwant:\n%s", got, strings.Join(want, "\n"))
	}
}

// A week that has begun is no longer what it was to be: only what differs is told.
func TestBegunWeekIsNotWhatItWas(t *testing.T) {
	p, r := replanned(map[int]int{4: 1, 5: 1})
	r.Changes[0].Notes = []program.Note{{Code: "change-no-main"}}
	v, _ := view.NewReview(viewtest.Coach(), viewtest.Library(), p, r)
	if got, want := strings.ReplaceAll(v.Changes[0], "\u00a0", " "), "Week 4, 1 to 7 Feb: No main work. Card: 1 Feb."; got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
}

// Only the coming week's cards are to be printed, on the pages that have them.
func TestWhatToPrint(t *testing.T) {
	const again = "Print the wall chart and the one-page plan again"
	days := func(n int) []program.Date {
		monday := viewtest.Replanned().From
		return []program.Date{monday, monday + 1, monday + 2, monday + 3, monday + 4}[:n]
	}
	for name, c := range map[string]struct {
		cards map[int]int
		now   []program.Date
		want  string
	}{
		"nothing":    {want: "Nothing to print again."},
		"one card":   {map[int]int{5: 1}, days(1), again + ", and this card of the coming week: 8 Feb (page 1 of changed-cards.pdf)."},
		"four cards": {map[int]int{5: 4}, days(4), again + ", and these cards of the coming week: 8 Feb, 9 Feb, 10 Feb, 11 Feb (page 1 of changed-cards.pdf)."},
		"five cards": {map[int]int{5: 5}, days(5), again + ", and these cards of the coming week: 8 Feb, 9 Feb, 10 Feb, 11 Feb, 12 Feb (pages 1 to 2 of changed-cards.pdf)."},
		"one later": {map[int]int{5: 1, 9: 1}, days(1), again + ", and this card of the coming week: 8 Feb (page 1 of changed-cards.pdf)." +
			" One card of a later week has changed too and may change again: print it from cards.pdf when its week comes."},
		"later only": {map[int]int{9: 3, 10: 3}, nil, again + ". The coming week's cards stand." +
			" 6 cards of later weeks have changed too and may change again: print them from cards.pdf when their week comes."},
		"no cards at all": {map[int]int{9: 0}, nil, again + ". The coming week's cards stand."},
		"some waited": {map[int]int{5: 1}, days(3), again + ", and these cards of the coming week: 8 Feb, 9 Feb, 10 Feb (page 1 of changed-cards.pdf)." +
			" Those of 9 Feb, 10 Feb were changed by an earlier review and waited until now."},
		"one waited": {map[int]int{9: 0}, days(1), again + ", and this card of the coming week: 8 Feb (page 1 of changed-cards.pdf)." +
			" It was changed by an earlier review and waited until now."},
		"waited, and the plan stands": {nil, days(2), "These cards of the coming week were changed by an earlier review and waited until now;" +
			" print them: 8 Feb, 9 Feb (in cards.pdf)."},
	} {
		p, r := replanned(c.cards)
		r.PrintNow = c.now
		v, _ := view.NewReview(viewtest.Coach(), viewtest.Library(), p, r)
		if got := strings.ReplaceAll(v.Reprint, "\u00a0", " "); got != c.want {
			t.Errorf("%s: %s\nwant %s", name, got, c.want)
		}
	}
}

// In large print each card is a page.
func TestWhatToPrintInLargePrint(t *testing.T) {
	p, r := replanned(map[int]int{5: 2})
	p.Client.Large, r.PrintNow = true, []program.Date{p.From, p.From + 1}
	v, _ := view.NewReview(viewtest.Coach(), viewtest.Library(), p, r)
	if !strings.Contains(v.Reprint, "pages 1 to 2 of changed-cards.pdf") {
		t.Error(v.Reprint)
	}
}

// The cards to print now come apart from the others; where there is none, those of
// the first week that changed do.
func TestChangedCards(t *testing.T) {
	for name, c := range map[string]struct {
		cards        map[int]int
		waited       int
		first, later string
	}{
		"now and later": {map[int]int{5: 3, 9: 5}, 0, "Monday 8 February, Wednesday 10 February", "Monday 8 March, Wednesday 10 March, Friday 12 March"},
		"later only":    {map[int]int{9: 1, 10: 1}, 0, "Monday 8 March", "Monday 15 March"},
		"waited":        {map[int]int{9: 1}, 1, "Monday 8 February", "Monday 8 March"},
		"nothing":       {nil, 0, "", ""},
	} {
		p, r := replanned(c.cards)
		if c.waited > 0 {
			r.PrintNow = []program.Date{p.From}
		}
		v, _ := view.New(viewtest.Coach(), viewtest.Library(), p)
		dates := func(cards []view.Card) string {
			var all []string
			for _, card := range cards {
				all = append(all, card.Date)
			}
			return strings.ReplaceAll(strings.Join(all, ", "), "\u00a0", " ")
		}
		first, later := v.Changed(p, r.Changes, r.PrintNow)
		if dates(first) != c.first || dates(later) != c.later {
			t.Errorf("%s: %s; then %s", name, dates(first), dates(later))
		}
	}
}

// One of a thing is not written as many.
func TestReviewOfOne(t *testing.T) {
	for want, change := range map[string]func(*program.Review){
		"The one printed session is done. Last":              func(r *program.Review) { r.Done, r.Missed, r.Sessions = 1, 0, r.Sessions[:1] },
		"The one printed session was not done. Missed: 15 J": func(r *program.Review) { r.Done, r.Missed, r.Sessions = 0, 1, r.Sessions[1:2] },
		"All printed sessions done: 2. Last":                 func(r *program.Review) { r.Done, r.Missed, r.Sessions = 2, 0, r.Sessions[:1] },
		"The block of one week is over.":                     func(r *program.Review) { r.Ended, r.Weeks = true, 1 },
		"The block of 12 weeks is over.":                     func(r *program.Review) { r.Ended = true },
		"free of bands, 1 of 1 set ":                         func(r *program.Review) { r.Gates[0].Criteria[0].Shown, r.Gates[0].Criteria[0].Wanted = 1, 1 },
		"Card: 8 Feb.":                                       func(r *program.Review) { r.Changes[0].Cards = r.Changes[0].Cards[:1] },
		"one printed session since is open.": func(r *program.Review) {
			r.Flags = []program.Flag{{Note: program.Note{Code: "flag-silent", Values: []program.Value{
				{Name: "last", Kind: program.ValueDate, Number: float64(r.Last)}, {Name: "sessions", Kind: program.ValueCount, Number: 1}}}}}
		},
	} {
		r := viewtest.Review()
		change(r)
		if text := reviewText(t, viewtest.Replanned(), r); !strings.Contains(text, want) {
			t.Errorf("does not say %q in\n%s", want, text)
		}
	}
}
