package planner

import (
	"fmt"
	"math"
	"strings"

	"gatepost/program"
	"gatepost/program/strength"
)

// outlook is what the client can hold, and what they will be able to hold in
// each week of the block.
type outlook struct {
	state strength.State
	path  strength.Path
	low   []float64 // N·m held twelve seconds, by week, at the quantile that weeks are planned on
	mid   []float64 // the same in the median
}

// plannedQuantile is the quantile of capacity that weeks are planned on, in a block
// printed once as well as after a reading of the log. Read weekly, it breaks one set
// in twenty-five, the median one in fourteen, in as many weeks to the goal
// (simulated, see testdata/study.txt; our judgement).
const plannedQuantile = 0.30

// leanSpread is the extra doubt of a lean as a test, in ln C (our judgement: the
// distance is read to a centimetre or two and the feet can help unseen).
const leanSpread = 0.15

// assess reads the tests into a state. What no model can read is said.
func assess(a *program.Assessment, b *body) (strength.State, []program.Note) {
	first := math.Log(b.all[0].load)
	var seen []strength.Observation
	var notes []program.Note
	for i := range a.Tests {
		if o, ok := observe(&a.Tests[i], b); ok {
			seen = append(seen, o)
		} else {
			notes = append(notes, note(noteTestUnused, exercise("exercise", a.Tests[i].Exercise)))
		}
	}
	if len(seen) == 0 {
		return strength.PriorUntested(first), append(notes, note(noteUntested))
	}
	return strength.Prior(first).Assess(seen), notes
}

// observe turns one test into a load held for a time.
func observe(t *program.Hold, b *body) (strength.Observation, bool) {
	o := strength.Observation{Seconds: testSeconds(t), Max: true, Position: t.Step + t.Exercise, Rig: rigName(t.Rig)}
	if t.Step == "" {
		if t.Ahead <= 0 {
			return o, false
		}
		o.Load = b.PlancheLean(t.Ahead, b.support).Torque
		o.Max, o.AtLeast, o.Spread = false, true, leanSpread
		return o, o.Load > 0
	}
	for i := range b.all {
		if r := &b.all[i]; r.ID == t.Step {
			o.Load = b.named(r, t.Rig).load - t.Scale*r.toesReach()*allowance(r.Step)
		}
	}
	return o, o.Load > 0
}

// testSeconds is the hold's length; repetitions count three seconds each (common
// practice), which agrees with the endurance model to 0.09 in share.
func testSeconds(t *program.Hold) float64 {
	if t.Reps > 0 {
		return strength.HoldOf(float64(t.Reps))
	}
	return t.Seconds
}

// secondsPerRep is how long one repetition takes.
const secondsPerRep = int(strength.SecondsPerRepetition)

func rigName(r program.Rig) string {
	if r.Free() {
		return ""
	}
	return fmt.Sprintf("%s@%.3f", strings.Join(r.Bands, "+"), r.Drop)
}

// toesReach is how far behind the shoulder a scale under the toes lifts, in m.
func (r *rung) toesReach() float64 {
	return r.free.Joints.Shoulder.X - r.free.Joints.Toes[0].X
}

// newOutlook lays the block's weeks ahead of the state after those that are over.
func newOutlook(p *plan) outlook {
	before, over := &p.past, p.past.over()
	o := outlook{state: before.state, path: strength.NewPath(before.state, p.schedule())}
	for i := range p.weeks {
		if i < over {
			o.low, o.mid = append(o.low, before.weeks[i].Capacity), append(o.mid, before.weeks[i].Capacity)
			continue
		}
		o.low = append(o.low, o.path.Quantile(float64(i-over), plannedQuantile))
		o.mid = append(o.mid, o.path.Quantile(float64(i-over), 0.5))
	}
	return o
}

// schedule is what the weeks ahead hold, as strength counts it.
func (p *plan) schedule() strength.Schedule {
	plan := strength.Schedule{
		Career:      p.past.career,
		DeloadEvery: p.limits.deloadEvery,
		Sessions:    usualSessions(p.weeks),
		Lost:        p.past.lost, Off: p.past.off,
	}
	for _, w := range p.weeks[p.past.over():] {
		plan.Block = append(plan.Block, strength.Week{Kind: strengthKinds[w.kind], Sessions: len(w.straight)})
	}
	return plan
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
func career(a *program.Assessment, b *body) strength.Career {
	c := strength.Career{Age: a.Training.Experience}
	if best := a.Training.Best; best != nil {
		if o, ok := observe(best, b); ok {
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

// maxHold is the predicted maximal hold of a load at a week's planned capacity,
// in tenths of a second, so that no processor can flip a plan.
func (o *outlook) maxHold(load float64, week int) int {
	return tenths(strength.MaxHold(o.low[week], load, o.state.K()))
}

func tenths(s float64) int { return int(math.Round(10 * s)) }

// shareHeld is the share of the instant maximum that a maximal hold of so many
// tenths of a second means.
func (o *outlook) shareHeld(maxHold int) float64 {
	return strength.Share(float64(maxHold)/10, o.state.K())
}
