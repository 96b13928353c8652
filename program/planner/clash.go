package planner

import (
	"fmt"
	"math"
	"slices"
	"strconv"
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
	say := ms.lib.Words.Say
	for _, c := range ms.clashed {
		used, left := &ms.athlete.Tests[c.used], &ms.athlete.Tests[c.left]
		held := func(t *program.Hold) string { return strconv.Itoa(int(math.Round(ladder.TestSeconds(t)))) }
		until := say("unfit.tests_from", "used", ms.testName(used))
		if c.both {
			until = say("unfit.tests_both")
		}
		problems = append(problems, ms.lib.Words.Problem(ms.athlete.Places.At(fmt.Sprintf("tests[%d]", c.left)), "unfit.tests",
			"left", ms.testName(left), "left_hold", held(left), "used", ms.testName(used), "hold", held(used),
			"implied", ms.about(c.implied), "other", ms.about(c.other), "until", until).AsWarning())
	}
	return problems
}

// longestTold is the hold, in seconds, beyond which only "more" is said.
const longestTold = 90

func (ms *measures) about(seconds float64) string {
	key := "unfit.about"
	switch {
	case seconds < 1:
		key = "unfit.not_at_all"
	case seconds > longestTold:
		key = "unfit.more_than"
	}
	return ms.lib.Words.Say(key, "hold", strconv.Itoa(int(math.Round(min(seconds, longestTold)))))
}

// testName is what a test held, and with what help.
func (ms *measures) testName(t *program.Hold) string {
	name := t.Exercise
	if e, ok := ms.lib.Exercise(t.Exercise); ok {
		name = e.Name
	}
	if s, ok := ms.road.Step(t.Step); ok {
		name = s.Name
	}
	say := ms.lib.Words.Say
	if len(t.Rig.Bands) > 0 {
		name = say("unfit.with", "what", name, "bands", strings.Join(t.Rig.Bands, say("rig.join")))
	}
	if height := t.Rig.Pad + t.Rig.Block; height > 0 {
		name = say("unfit.over", "what", name, "height", program.Centimetres(height))
	}
	return name
}

// disagreements are the clashes as notes.
func (ms *measures) disagreements() []program.Note {
	var notes []program.Note
	for _, c := range ms.clashed {
		used, left := &ms.athlete.Tests[c.used], &ms.athlete.Tests[c.left]
		code := noteDisagree
		if c.both {
			code = noteDisagreeBoth
		}
		notes = append(notes, note(code, text("left", ms.testName(left)), seconds("left_hold", ladder.TestSeconds(left)),
			text("used", ms.testName(used)), seconds("implied", math.Round(min(c.implied, longestTold))), seconds("hold", ladder.TestSeconds(used))))
	}
	return notes
}

// presses reports whether a test counts repetitions of a push or raise: the log's
// sets are then read against it.
func (ms *measures) presses(t *program.Hold) bool {
	e, ok := ms.lib.Exercise(t.Exercise)
	return ok && t.Reps > 0 && (slices.Contains(e.Trains, program.ForPush) || slices.Contains(e.Trains, program.ForRaise))
}
