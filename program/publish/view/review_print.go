package view

import (
	"slices"
	"strconv"
	"strings"

	"gatepost/program"
)

// CardsASheet is how many cards a sheet of paper has: who prints some of them is
// told their pages. In large print a card is a sheet.
const CardsASheet = 4

// changes are the weeks that differ, and what that means for the printer. Only the
// coming week is told in full: later ones will have changed again when they come.
func (s *speech) changes(v *Review, p *program.Program, r *program.Review) {
	coming := p.Coming()
	for i := range r.Changes {
		c := &r.Changes[i]
		if coming == nil || c.Start <= coming.Start {
			v.Changes = append(v.Changes, s.changed(p, c))
		} else {
			v.Changes = append(v.Changes, s.changedLater(p, c))
		}
	}
	v.Reprint = s.reprint(r)
	if len(v.Changes) > 0 && p.Version > r.Version {
		v.Keep = s.say("review.keep", "client", r.Client.Slug)
	}
}

// changed is all that differs in a week: "Week 8, 22 to 28 Feb: now …". Of one that has
// begun only the cards still to come differ, and what it was to hold stands no more.
func (s *speech) changed(p *program.Program, c *program.Change) string {
	var lines []string
	if w := weekOf(p, c.Start); w != nil && w.Sets > 0 && w.Start >= p.From {
		lines = append(lines, s.say("review.work", "work", join(s.name(*w), s.week(*w).Line)))
	}
	lines = append(lines, s.notes(c.Notes)...)
	if len(c.Cards) > 0 {
		lines = append(lines, s.cardsOf(c))
	}
	if len(c.Gone) > 0 {
		lines = append(lines, s.say("review.gone", "dates", s.briefs(c.Gone)))
	}
	week := s.say("review.change", "number", strconv.Itoa(c.Week), "dates", s.span(c.Start, c.Start+6))
	return week + ": " + strings.Join(lines, " ")
}

func (s *speech) cardsOf(c *program.Change) string {
	return s.say(s.plural("review.cards", len(c.Cards)), "dates", s.briefs(c.Cards))
}

// changedLater is what a week further ahead has become: "Week 9: now …", or where it has no
// main work, which of its cards differ.
func (s *speech) changedLater(p *program.Program, c *program.Change) string {
	week := s.say("week.number", "number", strconv.Itoa(c.Week))
	w := weekOf(p, c.Start)
	if w == nil {
		return week + ": " + strings.Join(s.notes(c.Notes), " ")
	}
	v := s.week(*w)
	if w.Kind != program.WeekBuild || w.Gate {
		week = join(week, v.Kind)
	}
	switch work := join(v.Step, v.Line); {
	case work != "":
		return week + ": " + s.say("review.work", "work", work)
	case len(c.Cards) > 0:
		return week + ": " + s.cardsOf(c)
	}
	return week + "."
}

// reprint says what to print now, and what can wait. What waited once is printed
// when its week comes, whether this review changes it or not.
func (s *speech) reprint(r *program.Review) string {
	now := len(r.PrintNow)
	switch {
	case len(r.Changes) == 0 && now == 0:
		return s.say("review.nothing")
	case len(r.Changes) == 0:
		return s.say(s.plural("review.waited", now), "dates", s.briefs(r.PrintNow))
	}
	all := []string{s.say("review.reprint_stands")}
	if now > 0 {
		all[0] = s.say(s.plural("review.reprint", now), "dates", s.briefs(r.PrintNow), "sheets", s.sheets(now))
	}
	left, later := waiting(r)
	switch n := len(left); {
	case n > 0 && n == now:
		all = append(all, s.say(s.plural("review.left_all", n)))
	case n > 0:
		all = append(all, s.say(s.plural("review.left", n), "dates", s.briefs(left)))
	}
	if later > 0 {
		all = append(all, s.say(s.plural("review.later", later), "number", strconv.Itoa(later)))
	}
	return strings.Join(all, " ")
}

// waiting are the cards to print now that an earlier review changed and this one
// does not, and how many cards this one changes that can wait.
func waiting(r *program.Review) (left []program.Date, later int) {
	left = slices.Clone(r.PrintNow)
	for _, c := range r.Changes {
		for _, d := range c.Cards {
			if !slices.Contains(r.PrintNow, d) {
				later++
			}
		}
		left = slices.DeleteFunc(left, func(d program.Date) bool { return slices.Contains(c.Cards, d) })
	}
	return left, later
}

// sheets are the pages of so many cards that come first: "pages 1 to 2".
func (s *speech) sheets(cards int) string {
	last := (cards + CardsASheet - 1) / CardsASheet
	if s.program.Client.Large {
		last = cards
	}
	return s.say(s.plural("review.sheets", last), "last", strconv.Itoa(last))
}

func (s *speech) briefs(days []program.Date) string {
	var all []string
	for _, d := range days {
		all = append(all, s.brief(d))
	}
	return strings.Join(all, ", ")
}

// Changed are the cards to print anew: those to print now, alone, and later ones.
// Where none is to be printed now, the first week that has any takes their place.
func (v *View) Changed(p *program.Program, changes []program.Change, now []program.Date) (first, later []Card) {
	i := -1
	for _, w := range p.Weeks {
		for _, session := range w.Sessions {
			i++ // cards are all sessions, in order
			has := func(c program.Change) bool { return slices.Contains(c.Cards, session.Date) }
			switch card := v.Cards[i]; {
			case !slices.Contains(now, session.Date) && !slices.ContainsFunc(changes, has):
			case len(first) == 0 || first[0].Number == w.Number:
				first = append(first, card)
			default:
				later = append(later, card)
			}
		}
	}
	return first, later
}
