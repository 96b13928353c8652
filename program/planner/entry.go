package planner

import (
	"slices"

	"gatepost/program"
)

// # Entry
//
// A road map may ask for something before any of its steps is trained: a hang, some
// chin-ups. Until all of it was shown, in a test or in the log, the block trains what is
// missing and nothing else of the road map. Whoever has held a step for some seconds is
// past that, whatever was tested; but presses on the floor tell nothing of being upside
// down, so there the entry is shown by everybody.

// enteredAt is how long a step must have been held for nobody to ask for the entry, s.
const enteredAt = 5

// opening is one thing that is asked for, and the best that was shown of it.
type opening struct {
	program.Hold
	shown int // s, or repetitions; −1: never tried
}

// openings are what is still missing of the entry.
func (c *client) openings() []opening {
	if !c.road.Load.Repeats() && slices.ContainsFunc(c.athlete.Tests, func(t program.Hold) bool { return t.Step != "" && t.Seconds >= enteredAt }) {
		return nil
	}
	var out []opening
	for _, asked := range c.road.Entry {
		if o := (opening{asked, c.best(asked.Exercise, asked.Reps > 0)}); o.shown < o.want() {
			out = append(out, o)
		}
	}
	return out
}

func (o *opening) want() int { return o.Reps + int(o.Seconds) }

// best is the most seconds or repetitions of an exercise in tests and log; −1 for none.
func (c *client) best(exercise string, reps bool) int {
	most := -1
	see := func(seconds float64, n int) {
		if !reps {
			n = int(seconds)
		}
		most = max(most, n)
	}
	for _, t := range c.athlete.Tests {
		if t.Exercise == exercise {
			see(t.Seconds, t.Reps)
		}
	}
	for _, e := range c.athlete.Log.Entries {
		for _, s := range e.Sets {
			if e.Exercise == exercise && s.Clean != program.CleanNo && (s.Seconds > 0 || s.Reps > 0) {
				see(s.Seconds, s.Reps)
			}
		}
	}
	return most
}

// Of what was shown, entry work does such a share in so many sets, a little more every
// week, and never all of it (our judgement).
const (
	entryShare, entryMost = 60, 90 // per cent
	entrySets             = 4
)

// entryWork trains what is missing: each thing at a share of what was shown, or, where
// nobody has shown a second of it, its easier version, unless that is trained as well.
func (x *exercises) entryWork(d day) (out []program.Prescription) {
	for _, o := range x.open {
		e, ok := x.lib.Exercise(o.Exercise)
		if !ok {
			continue
		}
		if o.shown <= 0 || !x.can(e) {
			e = x.easier(e, need{purpose: e.Trains[0]})
		}
		if item := x.dose(day{kind: d.kind}, e, program.RoleStrength); !slices.ContainsFunc(out, func(i program.Prescription) bool { return i.Exercise == e.ID }) {
			if e.ID == o.Exercise {
				o.share(&item, d)
			}
			out = append(out, item)
		}
	}
	return out
}

// share prescribes a share of what was shown; of what nobody has shown, half a dose.
func (o *opening) share(item *program.Prescription, d day) {
	if o.shown <= 0 {
		item.Hold, item.Reps = half(item.Hold), half(item.Reps)
		return
	}
	item.Sets = entrySets
	if d.kind != program.WeekBuild {
		item.Sets = half(entrySets)
	}
	item.Reps, item.Hold = 0, max(1, min(o.shown*entryShare/100+d.builds, o.shown*entryMost/100))
	if o.Reps > 0 {
		item.Reps, item.Hold = max(1, min(o.shown*entryShare/100+d.builds/2, o.shown*entryMost/100)), 0
	}
}

// entryTests are the tests of a block that trains its entry: each missing thing once, a
// hold with two seconds left.
func (x *exercises) entryTests() []program.Prescription {
	var out []program.Prescription
	for _, o := range x.open {
		e, ok := x.lib.Exercise(o.Exercise)
		if !ok || !x.can(e) {
			continue
		}
		item := x.dose(day{}, e, program.RoleTest)
		item.Sets, item.Rest = 1, testRest
		if item.Reps, item.Hold = o.Reps, 0; o.Reps == 0 {
			item.Check = true
		}
		out = append(out, item)
	}
	return out
}

// asksEntry reports whether the road map asks for an exercise before its steps.
func (c *client) asksEntry(exercise string) bool {
	return slices.ContainsFunc(c.road.Entry, func(h program.Hold) bool { return h.Exercise == exercise })
}

// entryNotes say what is missing.
func (c *client) entryNotes() []program.Note {
	var notes []program.Note
	for _, o := range c.open {
		shown, what := max(0, o.shown), exercise("exercise", o.Exercise)
		if o.Reps > 0 {
			notes = append(notes, note(noteEntryReps, what, count("want", o.Reps), count("shown", shown)))
		} else {
			notes = append(notes, note(noteEntryHold, what, seconds("want", o.Seconds), seconds("shown", float64(shown))))
		}
	}
	return notes
}

// straightArms reports whether a block trains steps, or what leads to them, at all.
func (c *client) straightArms() bool { return c.limits.hands && len(c.open) == 0 }
