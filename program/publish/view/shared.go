package view

import (
	"cmp"
	"slices"
	"strings"

	"gatepost/program"
)

// Shared is what of a client's view may be printed for everybody who has the page's
// address: a first name, the plan's number in place of a hash of all that is in it, no notes, no other training, no day of measuring, no shares of
// this body, and of each figure the one that average gives for the step or floor
// exercise of an id, since a figure to scale would publish a client's proportions.
func (v *View) Shared(average func(id string) program.Stance) *View {
	name := strings.NewReplacer(v.Client, v.First)
	s := *v
	s.Client, s.Slug, s.Title = v.First, "", name.Replace(v.Title)
	s.Measured, s.On = v.Start, ""
	s.data, s.version, s.Labels.version = nil, nil, v.Labels.Numbered
	s.Notes, s.AllNotes, s.Other, s.CueWorth, s.ForCoach = nil, nil, nil, nil, CoachPage{}
	s.Labels.Measured, s.Labels.MadeFor, s.Labels.Ladder = "", name.Replace(v.Labels.MadeFor), v.Labels.Way
	s.Weeks, s.Ladder = slices.Clone(v.Weeks), slices.Clone(v.Ladder)
	s.Pictures, s.Cards = slices.Clone(v.Pictures), slices.Clone(v.Cards)
	figures := map[int]program.Stance{}
	for i := range s.Weeks {
		w := &s.Weeks[i]
		w.Stance, w.Notes = average(cmp.Or(w.StepID, w.ExerciseID)), nil
		figures[w.Number] = w.Stance
	}
	for i := range s.Ladder {
		s.Ladder[i].Stance, s.Ladder[i].Share, s.Ladder[i].ShareOf1 = average(s.Ladder[i].StepID), "", 0
	}
	for i := range s.Pictures {
		s.Pictures[i].Stance, s.Pictures[i].Raised = average(s.Pictures[i].ID), ""
	}
	for i := range s.Cards {
		s.Cards[i].Joint = ""
		if c := &s.Cards[i]; c.Figure.Drawn() {
			c.Figure = figures[c.Number]
		}
	}
	return &s
}
