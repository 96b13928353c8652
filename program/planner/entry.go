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
// past that, whatever was tested. Presses with the feet on floor or box tell nothing of
// being upside down, so there the entry is shown by everybody; only who repeats a step on
// the hands alone is not asked for what nobody tested, nor who has lifted for a fold of the
// hips: what it costs is in the load.

// So long must a step have been held, and so often pressed upside down, for nobody to ask
// for the entry: our judgement. Three presses at a wall are fourteen push-ups by Epley's
// equation, about what the entry asks for. A lift leans, rises and stands: one is enough.
const enteredAt, enteredReps = 5, 3 // s

// opening is one thing that is asked for, and the best that was shown of it.
type opening struct {
	program.Hold
	shown int // s, repetitions, degrees, or of a lean held so long cm; −1: never tried
}

// openings are what is still missing of the entry, by the tests and by so much of a log:
// a first plan, which has none, stays what it was.
func (c *client) openings(log []program.Entry) []opening {
	if !c.road.Load.Repeats() && c.testedFor(enteredAt) {
		return nil
	}
	var out []opening
	beyond := c.stood()
	for _, asked := range c.road.Entry {
		o := opening{asked, c.best(asked, log)}
		if beyond && c.best(asked, nil) < 0 { // what is written of it since is no reason to ask for it
			continue
		}
		if o.shown < o.want() && !(asked.Fold > 0 && c.lifted(log)) {
			out = append(out, o)
		}
	}
	return out
}

// stood reports whether a test has a step lifted, or repeated, up and not only down, by who
// stands on the hands alone.
func (c *client) stood() bool {
	return slices.ContainsFunc(c.athlete.Tests, func(t program.Hold) bool {
		step, ok := c.road.Step(t.Step)
		if !ok || step.Press.Lower || step.Lift.Lower {
			return false
		}
		reps := t.Seconds / program.SecondsPerRep
		return c.road.Load == program.LoadLift && reps >= 1 || slices.Contains(onHands, step.Press.Rest) && reps >= enteredReps
	})
}

// onHands is what may keep a press upright without carrying any of it.
var onHands = []program.PressRest{program.PressAtWall, program.PressHeels, program.PressFree}

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
func (c *client) best(asked program.Hold, log []program.Entry) int {
	if asked.Fold > 0 {
		return degrees(cmp.Or(c.athlete.Athlete.Fold, program.DefaultFold))
	}
	most := -1
	see := func(seconds, ahead float64, n int) {
		switch {
		case asked.Ahead > 0 && ahead == 0: // a log line that leant as printed: see shownInLog
			n = -1
		case asked.Ahead > 0 && seconds < asked.Seconds:
			n = 0
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
	for _, e := range log {
		for _, s := range e.Sets {
			if e.Exercise == asked.Exercise && s.Clean != program.CleanNo && (s.Seconds > 0 || s.Reps > 0) {
				see(s.Seconds, e.Ahead, s.Reps)
			}
		}
	}
	return most
}

// shownInLog are the openings with the leans of the log as far as they were printed, where
// its lines don't say.
func (di *diary) shownInLog() (open []opening) {
	for _, o := range di.open {
		for _, d := range di.days {
			for i := range d.sets {
				if s := &d.sets[i]; o.Ahead > 0 && s.Exercise == o.Exercise && s.seconds() >= o.Seconds && s.Done.Clean != program.CleanNo {
					o.shown = max(o.shown, centimetres(s.Ahead))
				}
			}
		}
		if o.shown < o.want() {
			open = append(open, o)
		}
	}
	return open
}

// lifted reports whether a test or the log has a step done at least once.
func (c *client) lifted(log []program.Entry) bool {
	return c.testedFor(program.SecondsPerRep) ||
		slices.ContainsFunc(log, func(e program.Entry) bool {
			return e.Step != "" && slices.ContainsFunc(e.Sets, func(s program.SetDone) bool {
				return s.Clean != program.CleanNo && s.Seconds >= program.SecondsPerRep
			})
		})
}

// foldOpen reports whether a fold of the hips is missing of the entry.
func (c *client) foldOpen() bool {
	return slices.ContainsFunc(c.open, func(o opening) bool { return o.Fold > 0 })
}

// misses reports whether something is missing of the entry that an exercise like this trains.
func (c *client) misses(e *program.Exercise) bool {
	return slices.ContainsFunc(c.open, func(o opening) bool {
		asked, ok := c.lib.Exercise(o.Exercise)
		return ok && asked.Trains[0] == e.Trains[0]
	})
}

// asksEntry reports whether the road map asks for an exercise before its steps.
func (c *client) asksEntry(exercise string) bool {
	return slices.ContainsFunc(c.road.Entry, func(h program.Hold) bool { return h.Exercise == exercise })
}

// entryNotes say what is missing, and that some of it may only never have been tested.
func (c *client) entryNotes() []program.Note {
	var notes []program.Note
	unasked := false
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
		unasked = unasked || o.shown < 0
	}
	if unasked {
		notes = append(notes, note(noteEntryUnasked))
	}
	return notes
}

// straightArms reports whether a block trains steps, or what leads to them, at all.
func (c *client) straightArms() bool { return c.limits.hands && len(c.open) == 0 }
