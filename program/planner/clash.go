package planner

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gatepost/program"
	"gatepost/program/ladder"
	"gatepost/program/strength"
)

// clash is two tests of one day that contradict each other: each lies further than
// clashAt standard deviations from what the other predicts. The plan is made from
// the one that tells of less strength, or, where one test contradicts two or more that
// agree, from those: two demonstrations outweigh a third. A lean or a hold on a scale
// stays beside a step all the same: what it is off by is its own number.
type clash struct {
	used, left int     // places in the list of tests
	both       bool    // neither is left out
	implied    float64 // s, of the used one by the other
	other      float64 // s, of the one left out by the used one
}

const clashAt = 2.5 // sd: one pair of sound tests in eighty (our judgement)

// clashes are all pairs of tests that contradict each other, in order of the list.
func (ms *measures) clashes() []clash {
	var out []clash
	tests := ms.athlete.Tests
	for i := range tests {
		for j := range i {
			if c, ok := ms.clash(j, i); ok {
				out = append(out, c)
			}
		}
	}
	for i := range out {
		if c := &out[i]; odd(out, c.used) {
			c.used, c.left, c.implied, c.other = c.left, c.used, c.other, c.implied
		}
	}
	return out
}

// odd reports whether a test contradicts at least two that do not contradict each other.
func odd(all []clash, test int) bool {
	against := map[int]bool{}
	for _, c := range all {
		if c.used == test || c.left == test {
			against[c.used+c.left-test] = true
		}
	}
	return len(against) > 1 && !slices.ContainsFunc(all, func(c clash) bool { return against[c.used] && against[c.left] })
}

// leftOut are the tests that the plan is not made from.
func (ms *measures) leftOut() map[int]bool {
	left := map[int]bool{}
	for _, c := range ms.clashed {
		if !c.both {
			left[c.left] = true
		}
	}
	return left
}

func (ms *measures) clash(i, j int) (clash, bool) {
	x, ok := ms.body.Observe(&ms.athlete.Tests[i])
	y, too := ms.body.Observe(&ms.athlete.Tests[j])
	if !ok || !too || x.Site() == y.Site() && x.Load == y.Load {
		return clash{}, false // the same twice: a better day and a worse one
	}
	both := []strength.Observation{x, y}
	if ladder.PairUp(both); both[0].Pair {
		return clash{}, false
	}
	by := func(o strength.Observation) strength.State { return ms.prior(true).Assess([]strength.Observation{o}) }
	after, before := by(x).Off(y), by(y).Off(x)
	if min(math.Abs(after), math.Abs(before)) <= clashAt || after*before > 0 {
		return clash{}, false
	}
	c := clash{used: i, left: j, both: x.Model != y.Model}
	if after < 0 { // y tells of less than x
		c.used, c.left, x, y = j, i, y, x
	}
	c.implied, c.other = by(y).At(x.Site()).MaxHold(x.Load), by(x).At(y.Site()).MaxHold(y.Load)
	return c, true
}

// contradictions are the clashes as problems of the assessment.
func (ms *measures) contradictions() program.Problems {
	var problems program.Problems
	for _, c := range ms.clashed {
		used, left := &ms.athlete.Tests[c.used], &ms.athlete.Tests[c.left]
		problems = append(problems, program.Problem{
			Place: ms.athlete.Places.At(fmt.Sprintf("tests[%d]", c.left)),
			Message: fmt.Sprintf("%s for %.0f s would mean %s %s, and the test says %.0f s; %s for %.0f s would mean %s %s",
				ms.testName(left), ladder.TestSeconds(left), ms.testName(used), about(c.implied), ladder.TestSeconds(used),
				ms.testName(used), ladder.TestSeconds(used), ms.testName(left), about(c.other)),
			Advice:  "look for a slip in the step, the bands or the seconds of either; until then " + ms.madeFrom(c),
			Warning: true,
		})
	}
	return problems
}

func (ms *measures) madeFrom(c clash) string {
	if c.both {
		return `the plan reckons with both; if one of them was not held to its end, say so: stopped: yes`
	}
	return "the plan is made from " + ms.testName(&ms.athlete.Tests[c.used])
}

// longestTold is the hold, in seconds, beyond which only "more" is said.
const longestTold = 90

func about(seconds float64) string {
	switch {
	case seconds < 1:
		return "not at all"
	case seconds > longestTold:
		return fmt.Sprintf("for more than %d s", longestTold)
	}
	return fmt.Sprintf("for about %.0f s", seconds)
}

// testName is what a test held, as its problem says it.
func (ms *measures) testName(t *program.Hold) string {
	name := t.Exercise
	if e, ok := ms.lib.Exercise(t.Exercise); ok {
		name = e.Name
	}
	if s, ok := ms.road.Step(t.Step); ok {
		name = s.Name
	}
	if len(t.Rig.Bands) > 0 {
		name += " with " + strings.Join(t.Rig.Bands, " and ")
	}
	if height := t.Rig.Pad + t.Rig.Block; height > 0 {
		name += fmt.Sprintf(" with %.0f cm below", 100*height)
	}
	return name
}

// disagreements are the clashes as notes.
func (ms *measures) disagreements() []program.Note {
	var notes []program.Note
	for _, c := range ms.clashed {
		used, left := &ms.athlete.Tests[c.used], &ms.athlete.Tests[c.left]
		notes = append(notes, note(noteDisagree, heldOf("left", left), seconds("left_hold", ladder.TestSeconds(left)),
			heldOf("used", used), seconds("implied", math.Round(min(c.implied, longestTold))), seconds("hold", ladder.TestSeconds(used))))
	}
	return notes
}

func heldOf(name string, t *program.Hold) program.Value {
	if t.Step != "" {
		return step(name, t.Step)
	}
	return exercise(name, t.Exercise)
}

// presses reports whether a test counts repetitions of a push or raise: the log's
// sets are then read against it.
func (ms *measures) presses(t *program.Hold) bool {
	e, ok := ms.lib.Exercise(t.Exercise)
	return ok && t.Reps > 0 && (slices.Contains(e.Trains, program.ForPush) || slices.Contains(e.Trains, program.ForRaise))
}
