package planner

import (
	"slices"

	"gatepost/program"
)

// # Repetitions
//
// A press or a lift is planned and read in seconds, three a repetition, and printed and
// written in repetitions: so every rule has one form, and ten to fifteen seconds are three
// to five repetitions. Where a step stays the work for long, as the goal's does and one past
// which nothing fits, there is no help to take off, and sets go on to as many as open the
// next step: eight from a box, whose gate is six.

// inSeconds is an assessment with what was repeated written as the seconds it
// took. Others stay as they are.
func inSeconds(m *program.RoadMap, from *program.Assessment) *program.Assessment {
	if !m.Load.Repeats() {
		return from
	}
	a := *from
	a.Tests = slices.Clone(a.Tests)
	held := func(h *program.Hold) {
		if h.Step != "" && h.Reps > 0 {
			h.Seconds, h.Reps = float64(program.SecondsPerRep*h.Reps), 0
		}
	}
	for i := range a.Tests {
		held(&a.Tests[i])
	}
	if a.Training.Best != nil {
		best := *a.Training.Best
		held(&best)
		a.Training.Best = &best
	}
	a.Log.Entries = slices.Clone(a.Log.Entries)
	for i := range a.Log.Entries {
		e := &a.Log.Entries[i]
		if e.Step == "" {
			continue
		}
		e.Sets = slices.Clone(e.Sets)
		for j := range e.Sets {
			if s := &e.Sets[j]; s.Reps > 0 {
				s.Seconds, s.Reps = float64(program.SecondsPerRep*s.Reps), 0
			}
		}
	}
	return &a
}

// inRepetitions prints a week of what is repeated in whole repetitions.
func (c *client) inRepetitions(w *program.Week) {
	if !c.body.Repeats() {
		return
	}
	w.Hold = fullReps(w.Hold)
	for i := range w.Sessions {
		for j := range w.Sessions[i].Items {
			if item := &w.Sessions[i].Items[j]; item.Step != "" {
				countReps(item)
				item.StraightArm = item.StraightArm && c.road.Load == program.LoadLift
			}
		}
	}
}

// countReps has an item say its seconds in whole repetitions as well.
func countReps(item *program.Prescription) {
	item.Hold = fullReps(item.Hold)
	item.Reps = item.Hold / program.SecondsPerRep
}

// fullReps are the seconds of whole repetitions: one at the least, and none of none.
func fullReps(seconds int) int {
	if seconds > 0 {
		return max(program.SecondsPerRep, seconds/program.SecondsPerRep*program.SecondsPerRep)
	}
	return 0
}
