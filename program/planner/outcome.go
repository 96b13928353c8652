package planner

import (
	"math"

	"gatepost/program"
	"gatepost/program/mechanics"
)

// outcome adds what the numbers say beside the weeks: loads, capacity,
// forecasts, gates, what comes after the block, what cues are worth.
func (p *plan) outcome(out *program.Program) {
	out.Steps = p.stepLoads()
	for i, c := range p.body.curves {
		out.Bands = append(out.Bands, program.BandCurve{Name: p.body.bands[i].Name, A: c.A, B: c.B, Rest: c.Rest, Longest: c.Longest})
	}
	out.Capacity = p.capacity()
	out.Forecasts = p.forecasts()
	goal := &out.Forecasts[len(out.Forecasts)-1]
	out.Goal.Chance, out.Goal.Met = goal.Chance, goal.Held
	for i := range out.Weeks {
		if out.Weeks[i].Step == "" && out.Weeks[i].Exercise != "" || out.Weeks[i].Scale > 0 {
			out.Rungs = true
		}
	}
	out.Place = placeOfWeeks(out.Weeks[min(p.past.over(), len(out.Weeks)):])
	out.Gates = p.gates(out.Weeks)
	out.Outline = p.outline(out)
	out.Cues = p.cues()
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

func (p *plan) stepLoads() []program.StepLoad {
	var out []program.StepLoad
	for i := range p.body.ladder {
		s := p.body.stepLoad(&p.body.ladder[i])
		s.FreeHold = p.look.state.MaxHold(p.body.ladder[i].load)
		out = append(out, s)
	}
	return out
}

func (b *body) stepLoad(r *rung) program.StepLoad {
	return program.StepLoad{
		ID: r.ID, Torque: r.free.Torque, Share: r.free.Torque / b.full, Allowance: allowance(r.Step),
		Lean: r.free.Lean, ShoulderAhead: r.free.ShoulderAhead, HipHeight: r.free.HipHeight,
		HandsAhead: r.free.HandsAheadOfAnchor, Stance: b.stance(r, r.rigs()[0]),
	}
}

// likelyRange is the share of a capacity's range: early to late.
const likelyRange = 0.80

func (p *plan) capacity() program.Capacity {
	s := p.look.state
	low, high := s.Range(likelyRange)
	c := program.Capacity{Held12: s.C12(), Low: low, High: high, Endurance: s.K(), Typical: s.TypicalEndurance(), Untested: !p.tested()}
	c.Instant, _ = s.Maximum()
	return c
}

func (p *plan) tested() bool {
	if p.past.tested {
		return true
	}
	for i := range p.athlete.Tests {
		if _, ok := observe(&p.athlete.Tests[i], p.body); ok {
			return true
		}
	}
	return false
}

// forecasts are the dates of a free hold of the goal's seconds at each step.
func (p *plan) forecasts() []program.Forecast {
	hold := p.athlete.Goal.Hold
	by := float64(p.athlete.Goal.By-p.now()) / 7
	out := make([]program.Forecast, len(p.body.ladder))
	for i := range p.body.ladder {
		r := &p.body.ladder[i]
		f := program.Forecast{Step: r.ID}
		early, likely, late := p.look.path.Arrival(r.load, hold)
		f.Early, f.Likely, f.Late = p.inWeeks(early), p.inWeeks(likely), p.inWeeks(late)
		f.Chance = p.look.path.Chance(r.load, hold, max(0, by))
		out[i] = f
	}
	p.markHeld(out, hold)
	return out
}

// inWeeks is the date some weeks after the first week planned; zero where it is
// not forecast.
func (p *plan) inWeeks(weeks float64) program.Date {
	if math.IsInf(weeks, 0) || math.IsNaN(weeks) {
		return 0
	}
	return p.now() + program.Date(math.Round(7*weeks))
}

// markHeld says which steps a test has shown: the step itself held free for the
// goal's seconds, and every easier one.
func (p *plan) markHeld(out []program.Forecast, hold float64) {
	shown := 0.0
	for _, t := range p.athlete.Tests {
		for i := range p.body.all {
			if r := &p.body.all[i]; r.ID == t.Step && t.Rig.Free() && t.Scale == 0 && t.Seconds >= hold {
				shown = max(shown, r.load)
			}
		}
	}
	p.past.markShown(out, p.body.ladder)
	for i := range out {
		if p.body.ladder[i].load <= shown {
			out[i].Held, out[i].Chance = true, 1
			out[i].Early, out[i].Likely, out[i].Late = p.athlete.Measured, p.athlete.Measured, p.athlete.Measured
		}
	}
}

// gates are those of the steps the block trains, and the goal's.
func (p *plan) gates(weeks []program.Week) []program.StepGate {
	last := map[string]int{}
	for _, w := range weeks {
		if w.Step != "" && w.Kind != program.WeekAway {
			last[w.Step] = w.Number
		}
	}
	for _, w := range weeks {
		if w.Gate {
			last[w.Step] = w.Number
		}
	}
	var out []program.StepGate
	for i := range p.body.ladder {
		r := &p.body.ladder[i]
		if last[r.ID] > 0 || i == len(p.body.ladder)-1 {
			out = append(out, program.StepGate{Step: r.ID, Gate: r.Gate, Week: last[r.ID]})
		}
	}
	return out
}

// outline is the road after the block: when work on each later step is likely to
// begin, which is when the gate before it is likely to be passed.
func (p *plan) outline(out *program.Program) []program.Stage {
	after, at := p.weeks[len(p.weeks)-1].start+7, 0
	for _, w := range out.Weeks {
		at = max(at, p.index(&rung{Step: &program.Step{ID: w.Step}}))
	}
	var stages []program.Stage
	for i := at + 1; i < len(p.body.ladder); i++ {
		before := &p.body.ladder[i-1]
		_, likely, _ := p.look.path.Arrival(before.load, float64(before.Gate.Hold+reserve))
		if from := p.inWeeks(likely); from != 0 {
			stages = append(stages, program.Stage{Step: p.body.ladder[i].ID, From: max(from.Monday(), after)})
		}
	}
	return stages
}

// What a better position is tried with: two centimetres of depression, the trunk
// four per cent shorter, ten degrees more between the legs.
const (
	moreDepression = 0.02
	moreRounding   = 0.04
	moreStraddle   = 10 * math.Pi / 180
)

// cues are what better positions save at the goal's step, as a share of its load
// and as band help worth as much.
func (p *plan) cues() []program.CueWorth {
	goal := &p.body.ladder[len(p.body.ladder)-1]
	try := []struct {
		cue    string
		tried  float64
		change func(*mechanics.Pose)
	}{
		{"depression", moreDepression, func(q *mechanics.Pose) { q.Depression += moreDepression }},
		{"rounding", moreRounding, func(q *mechanics.Pose) { q.Rounding += moreRounding }},
		{"straddle", moreStraddle, func(q *mechanics.Pose) { widen(q, goal.Step) }},
	}
	var out []program.CueWorth
	for _, t := range try {
		pose := goal.pose
		t.change(&pose)
		saved := goal.free.Torque - mechanics.Solve(p.body.Body, pose, p.body.support, nil).Torque
		if saved > 0 {
			help := saved / goal.hipReach()
			out = append(out, program.CueWorth{Cue: t.cue, Saves: saved / goal.free.Torque, Help: help, Tried: t.tried, Rig: goal.like(help, p.now())})
		}
	}
	return out
}

// like is the rig of one band whose help comes nearest to some newtons, if it is
// within a third of them (our judgement of "about").
func (r *rung) like(newtons float64, now program.Date) program.Rig {
	var best program.Rig
	least := math.Log(4.0 / 3)
	for _, o := range r.rigs() {
		if len(o.rig.Bands) != 1 || o.help <= 0 || !o.hangsIn(now) {
			continue
		}
		if off := math.Abs(math.Log(float64(o.help) / 10 / newtons)); off < least {
			best, least = o.rig, off
		}
	}
	return best
}

// hipReach is how far behind the shoulder a band at the hip lifts, in m.
func (r *rung) hipReach() float64 {
	return r.free.Joints.Shoulder.X - r.free.Joints.Hip.X
}

func widen(q *mechanics.Pose, s *program.Step) {
	for i := range q.Legs {
		if s.Pose.Legs[i].Straddle {
			q.Legs[i].Abduction += moreStraddle / 2
		}
	}
}

// Reference is what every step of a road map asks of a body of the mean build of
// one sex, for a reader whose body nobody measured: shares of the full position
// differ by a hundredth or two between bodies. Mass and stature are those of
// de Leva's samples (published: 1996, women 61.9 kg, 1.735 m; men 73.0 kg,
// 1.741 m).
func Reference(m *program.RoadMap, sex program.Sex) []program.StepLoad {
	a := referenceAthlete(sex)
	b, _ := newBody(&a, m)
	var out []program.StepLoad
	for i := range b.all {
		out = append(out, b.stepLoad(&b.all[i]))
	}
	return out
}

func referenceAthlete(sex program.Sex) program.Assessment {
	a := program.Assessment{Athlete: program.Athlete{Sex: sex, Mass: 73.0, Height: 1.741}, Kit: []string{parallettes},
		Hanging: program.Hanging{Support: 0.10}}
	if sex == program.SexFemale {
		a.Athlete.Mass, a.Athlete.Height = 61.9, 1.735
	}
	return a
}
