package planner

import (
	"cmp"
	"math"
	"slices"

	"gatepost/program"
)

// # Entry
//
// A road map may ask for something before any of its steps is trained: a hang, some
// chin-ups. Until all of it was shown, in a test or in the log, the block trains what is
// missing and nothing else of the road map. Whoever has held a step for some seconds is
// past that, whatever was tested; but presses on the floor tell nothing of being upside
// down, so there the entry is shown by everybody. Only a fold of the hips is not asked of
// who has lifted already: what it costs is in the load.

// enteredAt is how long a step must have been held for nobody to ask for the entry, s.
const enteredAt = 5

// opening is one thing that is asked for, and the best that was shown of it.
type opening struct {
	program.Hold
	shown int // s, repetitions, degrees, or of a lean held so long cm; −1: never tried
}

// openings are what is still missing of the entry.
func (c *client) openings() []opening {
	if !c.road.Load.Repeats() && c.testedFor(enteredAt) {
		return nil
	}
	var out []opening
	for _, asked := range c.road.Entry {
		if o := (opening{asked, c.best(asked)}); o.shown < o.want() && !(asked.Fold > 0 && c.lifted()) {
			out = append(out, o)
		}
	}
	return out
}

// testedFor reports whether a test has a step held, or repeated, for so many seconds.
func (c *client) testedFor(seconds float64) bool {
	return slices.ContainsFunc(c.athlete.Tests, func(t program.Hold) bool { return t.Step != "" && t.Seconds >= seconds })
}

func (o *opening) want() int {
	switch {
	case o.Fold > 0:
		return degrees(o.Fold)
	case o.Ahead > 0:
		return centimetres(o.Ahead)
	}
	return o.Reps + int(o.Seconds)
}

func degrees(rad float64) int        { return int(math.Round(rad * 180 / math.Pi)) }
func centimetres(metres float64) int { return int(math.Round(100 * metres)) }

// best is the most that tests and log show of what is asked: seconds, repetitions, or how
// far ahead a lean was that lasted as long; −1 for none. A fold is the body's.
func (c *client) best(asked program.Hold) int {
	if asked.Fold > 0 {
		return degrees(cmp.Or(c.athlete.Athlete.Fold, program.DefaultFold))
	}
	most := -1
	see := func(seconds, ahead float64, n int) {
		switch {
		case asked.Ahead > 0 && seconds < asked.Seconds:
			n = -1
		case asked.Ahead > 0:
			n = centimetres(ahead)
		case asked.Reps == 0:
			n = int(seconds)
		}
		most = max(most, n)
	}
	for _, t := range c.athlete.Tests {
		if t.Exercise == asked.Exercise {
			see(t.Seconds, t.Ahead, t.Reps)
		}
	}
	for _, e := range c.athlete.Log.Entries {
		for _, s := range e.Sets {
			if e.Exercise == asked.Exercise && s.Clean != program.CleanNo && (s.Seconds > 0 || s.Reps > 0) {
				see(s.Seconds, e.Ahead, s.Reps)
			}
		}
	}
	return most
}

// lifted reports whether a test or the log has a step done at least once.
func (c *client) lifted() bool {
	return c.testedFor(program.SecondsPerRep) ||
		slices.ContainsFunc(c.athlete.Log.Entries, func(e program.Entry) bool {
			return e.Step != "" && slices.ContainsFunc(e.Sets, func(s program.SetDone) bool {
				return s.Clean != program.CleanNo && s.Seconds >= program.SecondsPerRep
			})
		})
}

// Of what was shown, entry work does such a share in so many sets, a little more every
// week, and never all of it (our judgement).
const (
	entryShare, entryMost = 60, 90 // per cent
	entrySets             = 4
)

// entryWork trains what is missing: each thing at a share of what was shown, or, where
// nobody has shown a second of it, its easier version, unless that is trained as well. A
// fold is moved with the hips at the session's end.
func (x *exercises) entryWork(d day) (out []program.Prescription) {
	for _, o := range x.open {
		e := x.opener(&o)
		if e == nil || slices.ContainsFunc(out, func(i program.Prescription) bool { return i.Exercise == e.ID }) {
			continue
		}
		role := program.RoleStrength
		if e.Trains[0] == program.ForCompression { // which no pulling balances
			role = program.RoleTrunk
		}
		item := x.dose(d, e, role) // an easier version moves on as anything does
		if e.ID == o.Exercise {
			item = x.dose(day{kind: d.kind}, e, role)
			o.share(&item, d)
		}
		out = append(out, item)
	}
	return out
}

// opener is the exercise that trains what is missing; nil where there is none for this
// client.
func (x *exercises) opener(o *opening) *program.Exercise {
	e, ok := x.lib.Exercise(o.Exercise)
	if !ok || o.Fold > 0 {
		return nil
	}
	if o.shown <= 0 || !x.can(e) {
		e = x.easier(e, need{purpose: e.Trains[0]})
	}
	if !x.can(e) {
		return nil
	}
	return e
}

// share prescribes a share of what was shown; of what nobody has shown, half a dose.
func (o *opening) share(item *program.Prescription, d day) {
	switch {
	case o.Ahead > 0:
		o.lean(item, d)
		return
	case o.shown <= 0:
		less := func(n int) int { return max(0, min(half(n)+d.builds/2, n-1)) }
		item.Hold, item.Reps = less(item.Hold), less(item.Reps)
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

// lean prescribes a lean as far as was shown, or half as far as is asked, two centimetres
// more every second build week, for two thirds of the seconds (our judgement).
func (o *opening) lean(item *program.Prescription, d day) {
	cm := o.shown
	if cm <= 0 {
		cm = centimetres(o.Ahead) / 2
	}
	cm = min(cm+d.builds/2*2, centimetres(o.Ahead))
	item.Reps, item.Hold, item.Ahead = 0, max(1, int(o.Seconds)*2/3), float64(cm)/100
}

// entryTests are the tests of a block that trains its entry: each missing thing once, a
// hold with two seconds left.
func (x *exercises) entryTests() []program.Prescription {
	var out []program.Prescription
	for _, o := range x.open {
		e, ok := x.lib.Exercise(o.Exercise)
		if !ok || !x.can(e) || o.Fold > 0 { // a fold is measured, not tested
			continue
		}
		item := x.dose(day{}, e, program.RoleTest)
		item.Sets, item.Rest, item.Ahead = 1, testRest, o.Ahead
		if item.Reps, item.Hold = o.Reps, 0; o.Reps == 0 {
			item.Check = true
		}
		out = append(out, item)
	}
	return out
}

// foldOpen reports whether a fold of the hips is missing of the entry.
func (c *client) foldOpen() bool {
	return slices.ContainsFunc(c.open, func(o opening) bool { return o.Fold > 0 })
}

// opens reports whether an exercise is missing of the entry of which something was shown.
func (c *client) opens(exercise string) bool {
	return slices.ContainsFunc(c.open, func(o opening) bool { return o.Exercise == exercise && o.shown > 0 })
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
		switch {
		case o.Fold > 0:
			notes = append(notes, note(noteEntryFold, what, count("want", o.want()), count("shown", shown)))
		case o.Ahead > 0:
			notes = append(notes, note(noteEntryLean, what, lasting("hold", o.Seconds), metres("want", o.Ahead), metres("shown", float64(shown)/100)))
		case o.Reps > 0:
			notes = append(notes, note(noteEntryReps, what, count("want", o.Reps), count("shown", shown)))
		default:
			notes = append(notes, note(noteEntryHold, what, lasting("want", o.Seconds), lasting("shown", float64(shown))))
		}
	}
	return notes
}

// straightArms reports whether a block trains steps, or what leads to them, at all.
func (c *client) straightArms() bool { return c.limits.hands && len(c.open) == 0 }
