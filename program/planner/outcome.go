package planner

import (
	"cmp"
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// outcome adds what the numbers say beside the weeks: loads, capacity,
// forecasts, gates, what comes after the block, what cues are worth.
func (p *plan) outcome(out *program.Program) {
	out.Steps = p.stepLoads()
	for i, c := range p.body.Curves {
		if !p.body.Bands[i].Measured() {
			continue
		}
		out.Bands = append(out.Bands, program.BandCurve{Name: p.body.Bands[i].Name, At: p.body.Bands[i].At, Folded: p.body.Bands[i].Folded, A: c.A, B: c.B, Rest: c.Rest, Longest: c.Longest})
	}
	out.Capacity = p.capacity()
	out.Offsets = p.body.Known(p.look.state)
	out.Asks = append(out.Asks, p.disagreements()...)
	out.Forecasts = p.forecasts()
	out.Goal = p.goalOf(out.Forecasts)
	for i := range out.Weeks {
		if out.Weeks[i].Step == "" && out.Weeks[i].Exercise != "" || out.Weeks[i].Scale > 0 {
			out.Rungs = true
		}
	}
	out.Place = placeOfWeeks(out.Weeks[min(p.past.over(), len(out.Weeks)):])
	out.Gates = p.gates(out.Weeks)
	out.Outline = p.outline(out)
	out.Cues = p.body.Cues(p.now())
	out.Asks = append(out.Asks, p.asks(out)...)
}

// placeOfWeeks is the step of the first week that trains; empty on the floor.
func placeOfWeeks(weeks []program.Week) string {
	for i := range weeks {
		if weeks[i].Kind != program.WeekAway {
			return weeks[i].Step
		}
	}
	return ""
}

func (h *holds) stepLoads() []program.StepLoad {
	var out []program.StepLoad
	for i := range h.body.Steps {
		s := h.body.StepLoad(&h.body.Steps[i])
		s.FreeHold = h.look.state.At(h.body.Site(&h.body.Steps[i])).MaxHold(h.body.Steps[i].Load)
		out = append(out, s)
	}
	return out
}

// hipsSeen is how far hips must be raised to be worth a word: what a coach sees in a
// video (our judgement), in m.
const hipsSeen = 0.01

// asks are what the coach has to answer: where a week has no day of rest; the hardest
// step of the block, or the goal, whose knees or toes would be on the floor.
func (c *client) asks(out *program.Program) []program.Note {
	var worst program.StepLoad
	for _, l := range out.Steps {
		if (l.ID == out.Goal.Step || trains(out.Weeks, l.ID)) && l.Raised > max(hipsSeen, worst.Raised) {
			worst = l
		}
	}
	var asks []program.Note
	if len(c.athlete.Training.Days) == 7 {
		asks = append(asks, note(noteNoRest))
	}
	if worst.ID != "" {
		asks = append(asks, note(noteHandles, step("step", worst.ID), metres("hips", worst.Raised)))
	}
	return asks
}

// trains says that weeks hold a step, whatever for.
func trains(weeks []program.Week, step string) bool {
	return slices.ContainsFunc(weeks, func(w program.Week) bool {
		return slices.ContainsFunc(w.Sessions, func(s program.Session) bool {
			return slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return i.Step == step })
		})
	})
}

// likelyRange is the share of a capacity's range: early to late.
const likelyRange = 0.80

func (h *holds) capacity() program.Capacity {
	s := h.look.state
	low, high := s.Range(likelyRange)
	c := program.Capacity{Held12: s.C12(), Low: low, High: high, Endurance: s.K(), Typical: s.TypicalEndurance(), Untested: !h.tested()}
	c.Instant, _ = s.Maximum()
	return c
}

func (sn *season) tested() bool {
	if sn.past.tested {
		return true
	}
	for i := range sn.athlete.Tests {
		if o, ok := sn.body.Observe(&sn.athlete.Tests[i]); ok && lasted(o) {
			return true
		}
	}
	return false
}

// forecasts are the dates of a free hold of the goal's seconds at each step. All that
// is said on paper of "held", of dates and of chances comes from them. A step is not
// forecast before an easier one, whatever its allowance, nor before a day on which it can
// be shown; chances are whole per cent, so that a word and a limit agree.
func (h *holds) forecasts() []program.Forecast {
	hold := h.athlete.Goal.Hold
	by := float64(h.athlete.Goal.By-h.now()) / 7
	out := make([]program.Forecast, len(h.body.Steps))
	var early, likely, late float64
	chance := 1.0
	for i := range h.body.Steps { // nobody is said to hold a step before the one below it
		r := &h.body.Steps[i]
		path := h.look.path.At(h.body.Site(r))
		x, y, z := path.Arrival(r.Load, hold)
		early, likely, late = max(early, x), max(likely, y), max(late, z)
		chance = min(chance, path.Chance(r.Load, hold, max(0, by)))
		out[i] = program.Forecast{Step: r.ID, Early: h.inWeeks(early), Likely: h.inWeeks(likely), Late: h.inWeeks(late), Chance: math.Round(100*chance) / 100}
	}
	h.notBefore(h.showable(), out)
	h.noSooner(out)
	h.markHeld(out, hold)
	return out
}

// showable is the first day ahead, after that of the tests, whose card has a step held
// with the feet off the floor; the day after the block where none has.
func (sn *season) showable() program.Date {
	from := max(sn.now(), sn.athlete.Measured+1)
	for _, w := range sn.behind {
		for _, s := range w.Sessions {
			if s.Date >= from && slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return i.Step != "" && i.Scale == 0 }) {
				return s.Date
			}
		}
	}
	return sn.weeks[len(sn.weeks)-1].start + 7
}

// notBefore holds dates to a day, and leaves a goal before it no chance.
func (c *client) notBefore(day program.Date, out []program.Forecast) {
	for i := range out {
		f := &out[i]
		f.Early, f.Likely, f.Late = later(f.Early, day), later(f.Likely, day), later(f.Late, day)
		if c.athlete.Goal.By < day {
			f.Chance = 0
		}
	}
}

// inWeeks is the date some weeks after the first week planned; zero where it is
// not forecast.
func (sn *season) inWeeks(weeks float64) program.Date {
	if math.IsInf(weeks, 0) || math.IsNaN(weeks) {
		return 0
	}
	return sn.now() + program.Date(math.Round(7*weeks))
}

// markHeld says which steps a test or the log has shown: the step itself held free
// for the goal's seconds, and every one below it.
func (sn *season) markHeld(out []program.Forecast, hold float64) {
	shown, left := 0.0, sn.leftOut()
	for n, t := range sn.athlete.Tests {
		for i := range sn.body.All {
			if r := &sn.body.All[i]; r.ID == t.Step && !left[n] && t.Rig.Free() && t.Scale == 0 && t.Seconds >= hold {
				shown = max(shown, r.Load)
			}
		}
	}
	sn.past.markShown(out, sn.body.Steps)
	for i := range out {
		if sn.body.Steps[i].Load <= shown {
			out[i].Held, out[i].Chance = true, 1
			out[i].Early, out[i].Likely, out[i].Late = sn.athlete.Measured, sn.athlete.Measured, sn.athlete.Measured
		}
	}
	for i := len(out) - 2; i >= 0; i-- {
		if above := out[i+1]; above.Held && !out[i].Held {
			above.Step, out[i].Step = out[i].Step, above.Step
			out[i] = above
		}
	}
}

// gates are those of the steps the block trains, and the goal's, with the last week
// that is printed to show each.
func (c *client) gates(weeks []program.Week) []program.StepGate {
	var out []program.StepGate
	for i := range c.body.Steps {
		r := &c.body.Steps[i]
		g, trained := program.StepGate{Step: r.ID, Gate: r.Gate}, i == len(c.body.Steps)-1
		for _, w := range weeks {
			if w.Step != r.ID || w.Kind == program.WeekAway {
				continue
			}
			if trained = true; w.Gate {
				g.Week = w.Number
			}
		}
		if trained {
			out = append(out, g)
		}
	}
	return out
}

// outline is the road from the first week's step to the goal: the weeks that are on a
// step, and of a later one when work on it is likely to begin. What the block passes
// over has no place in it, nor have weeks that are over; and one step is no road.
func (h *holds) outline(out *program.Program) []program.Stage {
	weeks := out.Weeks[min(h.past.over(), len(out.Weeks)):]
	if len(weeks) == 0 {
		return nil
	}
	from, last := h.weeks[len(h.weeks)-1].start+7, 0
	for _, w := range weeks {
		last = max(last, h.index(&ladder.Rung{Step: &program.Step{ID: w.Step}}))
	}
	var stages []program.Stage
	for i := max(0, h.index(&ladder.Rung{Step: &program.Step{ID: out.Place}})); i < len(h.body.Steps); i++ {
		s := weeksOn(h.body.Steps[i].ID, weeks)
		switch {
		case s.First == 0 && i < last:
			continue
		case s.First == 0 && from != 0:
			from = h.begins(i, from, out.Forecasts[i].Likely)
			s.From = from
		}
		stages = append(stages, s)
	}
	if len(stages) < 2 {
		return nil
	}
	return stages
}

// weeksOn are the first and the last of some weeks that are on a step.
func weeksOn(step string, weeks []program.Week) program.Stage {
	s := program.Stage{Step: step}
	for i := range weeks {
		if w := &weeks[i]; w.Step == step {
			s.First, s.Last = cmp.Or(s.First, w.Number), w.Number
		}
	}
	return s
}

// begins is when work on a step is likely to begin: when the gate before it is likely
// passed, but not after the day it is likely held itself, nor before a day; zero where
// neither is forecast.
func (h *holds) begins(i int, from, held program.Date) program.Date {
	begin := held
	if i > 0 {
		before := &h.body.Steps[i-1]
		_, likely, _ := h.look.path.At(h.body.Site(before)).Arrival(before.Load, float64(before.Gate.Hold+reserve))
		if gate := h.inWeeks(likely); gate != 0 && (held == 0 || gate < held) {
			begin = gate
		}
	}
	if begin == 0 {
		return 0
	}
	return max(from, begin.Monday())
}
