package planner

import (
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
	"gatepost/program/strength"
)

// outlook is what the client can hold, and what they will be able to hold in
// each week of the block.
type outlook struct {
	state strength.State
	path  strength.Path
	low   []float64 // N·m held twelve seconds, by week, at the quantile that weeks are planned on
	mid   []float64 // the same in the median
	body  *ladder.Body

	quantile float64   // of low
	felt     []float64 // by body.sites, as far as it was asked for: what a load there is to be multiplied by, against low
}

// assess reads the tests into a state. What no model can read is said, and what
// contradicts a lower test is left out.
func (ms *measures) assess(tests []program.Hold) (strength.State, []program.Note) {
	seen, held, notes := ms.observed(tests)
	notes = append(notes, ms.disagreements()...)
	if !slices.ContainsFunc(seen, lasted) {
		notes = append(notes, note(noteUntested))
	}
	state, more := ms.believed(ms.prior(held), seen)
	return state, append(notes, more...)
}

// observed are the tests that the model can read, and whether one held a step.
func (ms *measures) observed(tests []program.Hold) (seen []strength.Observation, held bool, notes []program.Note) {
	left := ms.leftOut()
	for i := range tests {
		t := &tests[i]
		o, ok := ms.body.Observe(t)
		switch {
		case ok && !left[i]:
			seen = append(seen, o)
			held = held || t.Step != "" && t.Scale == 0 && o.Seconds >= 1
		case !ok && !ms.presses(t) && !ms.asksEntry(t.Exercise):
			what := exercise("exercise", t.Exercise)
			if t.Step != "" {
				what = step("exercise", t.Step)
			}
			notes = append(notes, note(noteTestUnused, what))
		}
	}
	ladder.PairUp(seen)
	return seen, held, notes
}

// lasted reports whether something was held at all: a try that failed is no evidence of
// strength.
func lasted(o strength.Observation) bool { return o.Seconds > 0 }

// prior is the belief before the tests: of somebody who holds steps, or of whoever
// has only leaned, or tried.
func (ms *measures) prior(held bool) strength.State {
	first := math.Log(ms.body.All[0].Load)
	state := strength.PriorUntested(first)
	entered := ms.body.Repeats() && len(ms.road.Entry) > 0 && len(ms.open) == 0
	if held || entered { // push-ups and the like tell of a press (our judgement)
		state = strength.Prior(first)
	}
	if ms.body.Repeats() {
		return state.Repeating()
	}
	return state
}

// newOutlook lays the block's weeks ahead of the state after those that are over.
func newOutlook(sn *season) outlook {
	before, over := &sn.past, sn.past.over()
	o := outlook{state: before.state, path: strength.NewPath(before.state, sn.schedule(sn.weeks, nil))}
	quantile := plannedQuantile
	if !sn.heldAny() {
		quantile = untestedQuantile
	}
	shown := sn.shownPart(quantile)
	for i := range sn.weeks {
		if i < over {
			o.low, o.mid = append(o.low, before.weeks[i].Capacity), append(o.mid, before.weeks[i].Capacity)
			continue
		}
		o.low = append(o.low, shown*o.path.Quantile(float64(i-over), quantile))
		o.mid = append(o.mid, o.path.Quantile(float64(i-over), 0.5))
	}
	o.body, o.quantile = sn.body, quantile
	return o
}

// shownPart is the part, at most 1, of a capacity's quantile that weeks are planned on
// while every hold so far was stopped: a stopped hold says "at least", and what lies
// beyond it is belief. The first weeks begin where they would had the hold that shows
// most ended there, until a set has spoken (our judgement).
func (sn *season) shownPart(quantile float64) float64 {
	if sn.heldAny() {
		return 1
	}
	low := func(tests []program.Hold) float64 {
		state, _ := sn.assess(tests)
		return strength.Path{State: state}.Quantile(0, quantile)
	}
	believed, shown := low(sn.athlete.Tests), 0.0
	for i, t := range sn.athlete.Tests {
		if t.Step != "" && t.Scale == 0 && t.Stopped {
			tests := slices.Clone(sn.athlete.Tests)
			tests[i].Stopped = false
			shown = max(shown, low(tests))
		}
	}
	if shown == 0 {
		return 1
	}
	return min(1, shown/believed)
}

// heldAny reports whether a test was held to its end so far, if only a lean for a second,
// or a step in the log.
func (sn *season) heldAny() bool {
	return sn.past.tested || slices.ContainsFunc(sn.athlete.Tests, func(t program.Hold) bool {
		o, ok := sn.body.Observe(&t)
		return ok && o.Max && lasted(o)
	})
}

// earned lays the path again with the work that the printed weeks hold, for the
// forecasts; the weeks stay as they were chosen.
func (o *outlook) earned(sn *season, weeks []program.Week) {
	over := sn.past.over()
	var printed []week
	var counted []int
	for i := range weeks {
		printed = append(printed, recalled(&weeks[i]))
		if i >= over {
			counted = append(counted, weeks[i].HalfSeconds)
		}
	}
	o.path = strength.NewPath(o.state, sn.schedule(printed, counted))
	for i := over; i < len(weeks); i++ {
		o.mid[i] = o.path.Quantile(float64(i-over), 0.5)
		weeks[i].Capacity = o.mid[i]
	}
}

// schedule is what the weeks of a block that are ahead hold, as strength counts it: with so many half
// seconds of counted work in each, or, before they are dosed, with enough of it
// wherever the hands may carry the body.
func (sn *season) schedule(weeks []week, counted []int) strength.Schedule {
	plan := strength.Schedule{
		Career:      sn.past.career,
		DeloadEvery: limitsIn(sn.road, sn.athlete, weeks[len(weeks)-1].start+7).deloadEvery,
		Sessions:    usualSessions(weeks),
		Lost:        sn.past.lost, Off: sn.past.off,
	}
	full := 1.0
	if !sn.straightArms() {
		full = 0
	}
	plan.Slack = 1 - full
	var builds []float64
	for i, w := range weeks[sn.past.over():] {
		worked := full
		if counted != nil {
			start := startSeconds(sn.limits.spell + float64(sn.past.over()+i))
			worked = earnedBy(w.kind, counted[i], start)
		}
		if counted != nil && w.kind == program.WeekBuild {
			builds = append(builds, 1-worked)
		}
		sessions := len(w.straight)
		if sessions == 0 && len(w.days) > 0 { // trained, but not with straight arms: nothing gained, and nothing lost
			sessions, worked = 1, 0
		}
		plan.Block = append(plan.Block, strength.Week{Kind: strengthKinds[w.kind], Sessions: sessions, Slack: 1 - worked})
	}
	if n := len(builds); n > 0 { // the fullest of the block's last ones is the usual week after it: a gate week holds less
		plan.Slack = slices.Min(builds[max(0, n-usualOf):])
	}
	return plan
}

// usualOf is of how many build weeks the fullest is the usual one after the block: a
// round's.
const usualOf = 3

// earnedBy is the share of a week's gain that so many half seconds of counted work
// earn. An easy week is meant to hold little, and its gain is cut for that already.
func earnedBy(kind program.WeekKind, halfSeconds int, start float64) float64 {
	if kind != program.WeekBuild && halfSeconds > 0 {
		return 1
	}
	return strength.WorkFactor(float64(halfSeconds)/2, start)
}

// littleWork reports whether the build weeks ahead earn less than half of their
// gain, and the most counted seconds of one of them.
func (sn *season) littleWork(weeks []program.Week) (most float64, little bool) {
	earned, builds := 0.0, 0.0
	for i := sn.past.over(); i < len(weeks); i++ {
		if weeks[i].Kind == program.WeekBuild {
			counted := float64(weeks[i].HalfSeconds) / 2
			most, builds = max(most, counted), builds+1
			earned += strength.WorkFactor(counted, startSeconds(sn.limits.spell+float64(i)))
		}
	}
	return most, earned < littleGain*builds
}

var strengthKinds = map[program.WeekKind]strength.Kind{
	program.WeekBuild: strength.Build, program.WeekDeload: strength.Deload,
	program.WeekTest: strength.Test, program.WeekAway: strength.Away,
}

// usualSessions is what a week after the block is taken to hold.
func usualSessions(weeks []week) int {
	most := 1
	for _, w := range weeks {
		most = max(most, len(w.straight))
	}
	return most
}

// career is the training age, and the strength once had before a lay-off.
func career(a *program.Assessment, b *ladder.Body) strength.Career {
	c := strength.Career{Age: a.Training.Experience}
	if best := a.Training.Best; best != nil {
		if o, ok := b.Observe(best); ok {
			c.Best = heldTwelve(o)
		}
	}
	return c
}

// heldTwelve is the torque held twelve seconds, N·m, by somebody of typical
// endurance who held a load as long as this.
func heldTwelve(o strength.Observation) float64 {
	return o.Load / strength.LoadFor(1, o.Seconds, 0)
}

// longestHold is the longest that is predicted, in tenths of a second: two minutes,
// beyond which no work is planned and a test would fill a session (our judgement).
const longestHold = 1200

// maxHold is the predicted maximal hold of a rig at a week's planned capacity, in
// tenths of a second, so that no processor can flip a plan.
func (o *outlook) maxHold(at ladder.Aid, week int) int {
	if n := len(o.felt); at.Site >= n {
		o.felt = append(o.felt, o.path.Factors(o.body.Sites()[n:], o.quantile)...)
	}
	return min(longestHold, tenths(strength.MaxHold(o.low[week], at.Load*o.felt[at.Site], o.state.K())))
}

// likelyHold is the same in the median.
func (h *holds) likelyHold(at ladder.Aid, week int) int {
	felt := h.look.path.Factors(h.body.Sites()[at.Site:at.Site+1], 0.5)
	return tenths(strength.MaxHold(h.look.mid[week], at.Load*felt[0], h.look.state.K()))
}

func tenths(s float64) int { return int(math.Round(10 * s)) }

// shareHeld is the share of the instant maximum that a maximal hold of so many
// tenths of a second means.
func (o *outlook) shareHeld(maxHold int) float64 {
	return strength.Share(float64(maxHold)/10, o.state.K())
}
