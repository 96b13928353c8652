package view

import (
	"cmp"
	"slices"
	"strings"

	"gatepost/program"
)

// Shared is what of a client's view may be published for everybody who has the page's
// address, and all that pages, calendar and documents there are made of: a first name, the
// plan's number in place of a hash of all that is in it, no notes, no other training, no
// day of measuring, no shares of this body, of a forecast the month. Rigs are told by their
// bands' names; kilograms only where a scale has to read them. A week without training has
// no reason. Figures are those that average gives for the step or floor exercise of an id,
// since one to scale would publish a client's proportions. A plain plan has no preparation,
// whose exercises tell which joints are sore.
//
// What is left speaks of a body that fifty others share (program.Assessment.Body).
func (v *View) Shared(average func(id string) program.Stance) *View {
	name := strings.NewReplacer(v.Client, v.First)
	s := *v
	s.Client, s.Slug, s.Title = v.First, "", name.Replace(v.Title)
	s.Measured, s.On = v.Start, ""
	s.data, s.version, s.Labels.version = nil, nil, v.Labels.Numbered
	s.Notes, s.AllNotes, s.Other, s.CueWorth, s.ForCoach = nil, nil, nil, nil, CoachPage{}
	s.Labels.Measured, s.Labels.MadeFor, s.Labels.Ladder = "", name.Replace(v.Labels.MadeFor), v.Labels.Way
	s.Places = program.Places{}
	for _, on := range []*program.Date{&s.Forecast.EarlyOn, &s.Forecast.LikelyOn, &s.Forecast.LateOn} {
		*on = on.Month()
	}
	s.Progress.Coach = nil
	s.Progress.Public = slices.DeleteFunc(slices.Clone(v.Progress.Public), func(c Chart) bool { return c.Key == "help" })
	s.shareWeeks(average)
	s.shareCards()
	s.Ladder, s.Pictures, s.Events = slices.Clone(v.Ladder), slices.Clone(v.Pictures), slices.Clone(v.Events)
	for i := range s.Ladder {
		s.Ladder[i].Stance, s.Ladder[i].Share, s.Ladder[i].ShareOf1 = average(s.Ladder[i].StepID), "", 0
	}
	for i := range s.Pictures {
		p := &s.Pictures[i]
		p.Stance, p.Raised, p.Help = average(p.ID), "", ""
	}
	if v.Plain {
		for i := range s.Events {
			s.Events[i].Text = s.Events[i].plain
		}
	}
	return &s
}

// shareWeeks takes out of the weeks what is private.
func (v *View) shareWeeks(average func(id string) program.Stance) {
	v.Weeks = slices.Clone(v.Weeks)
	for i := range v.Weeks {
		w := &v.Weeks[i]
		w.Stance, w.Notes = average(cmp.Or(w.StepID, w.ExerciseID)), nil
		if !w.OnScale {
			w.Help, w.Helped = "", ""
		}
		if w.KindKey == program.WeekAway {
			w.Kind = v.Labels.NoSession
		}
		w.Sessions = slices.Clone(w.Sessions)
		for j := range w.Sessions {
			d := &w.Sessions[j]
			d.Dropped, d.Items = nil, slices.Clone(d.Items)
			if v.Plain {
				d.Items = slices.DeleteFunc(d.Items, func(i Item) bool { return i.RoleKey == program.RolePrepare })
			}
			for k := range d.Items {
				d.Items[k].publish()
			}
		}
	}
}

// shareCards does the same with the cards, whose figures are those of the weeks.
func (v *View) shareCards() {
	figures := map[int]program.Stance{}
	for i := range v.Weeks {
		figures[v.Weeks[i].Number] = v.Weeks[i].Stance
	}
	v.Cards = slices.Clone(v.Cards)
	for i := range v.Cards {
		c := &v.Cards[i]
		if c.Figure.Drawn() {
			c.Figure = figures[c.Number]
		}
		c.Note, c.shared, c.Joint = cmp.Or(c.shared, c.Note), "", ""
		c.Prepare, c.Items = slices.Clone(c.Prepare), slices.Clone(c.Items)
		if v.Plain {
			c.Prepare, c.Note = nil, strings.TrimSpace(c.Note+" "+v.Labels.PrepareFirst)
		}
		for _, items := range [][]CardItem{c.Prepare, c.Items} {
			for j := range items {
				items[j].publish()
			}
		}
	}
}

// publish takes the kilograms out of an item's help; what a scale has to read stays.
func (i *Item) publish() {
	if !i.OnScale {
		i.Help = ""
	}
}
