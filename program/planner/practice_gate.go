package planner

import (
	"slices"

	"gatepost/program"
)

// triesGate is a step's gate as the log shows it.
func (r *reading) triesGate(at int, way *way) program.GateRead {
	s := r.body.Steps[at].Step
	g := program.GateRead{StepGate: program.StepGate{Step: s.ID, Gate: s.Gate}, State: program.GateOpen}
	for _, w := range r.weeks {
		if w.start >= r.block && w.Step == s.ID && w.Gate {
			g.Week = w.Number
		}
	}
	days := r.countingFor(s, 0, r.on+1)
	if at == way.at {
		days = slices.DeleteFunc(days, func(t dayTries) bool { return t.date < way.since })
	}
	best := bestDay(r.days, s)
	switch {
	case way.shown[at] != 0 && (at != way.at || at == len(r.body.Steps)-1):
		g.State, g.On = program.GatePassed, way.shown[at]
		g.Signed = slices.ContainsFunc(r.signed, func(x signed) bool { return x.step == s.ID }) && len(days) < s.Gate.Sessions
	case best.Of > 0:
		g.State = program.GateNotYet
	}
	for _, t := range days[:min(len(days), s.Gate.Sessions)] {
		g.Days = append(g.Days, program.GateDay{Date: t.date, Sets: reads(t.sets), Counts: true})
	}
	if best.Of > 0 {
		g.Criteria = best.criteria(&s.Gate)
		if len(g.Days) == 0 {
			g.Days = []program.GateDay{{Date: best.date, Sets: reads(best.sets)}}
		}
	}
	g.Criteria = append(g.Criteria, program.Criterion{Name: "sessions", Wanted: float64(s.Gate.Sessions), Shown: float64(len(days)), Met: len(days) >= s.Gate.Sessions})
	return g
}

// criteria are what a gate asks of one day.
func (t *dayTries) criteria(g *program.Gate) []program.Criterion {
	sets := reads(t.sets)
	of := func(name string, wanted, shown float64, met bool) program.Criterion {
		return program.Criterion{Name: name, Wanted: wanted, Shown: shown, Met: met, Sets: sets}
	}
	pain := of("pain", float64(g.PainMax), float64(t.pain), t.pain <= g.PainMax)
	if !g.Tried() {
		return []program.Criterion{of("hold", float64(g.Hold), t.best, t.Reached > 0), pain}
	}
	n := max(t.Of, g.Sets)
	return []program.Criterion{of("tries", float64(g.Sets), float64(t.Of), t.Of >= g.Sets),
		of("reached", float64((g.Reached*n+g.Sets-1)/g.Sets), float64(t.Reached), g.ReachedIn(t.Reached, n)), pain}
}
