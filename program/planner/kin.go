package planner

import (
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
	"gatepost/program/strength"
)

// # Kin
//
// Strength at one skill tells of strength at another, by as much as their road maps say.
// What was shown there narrows what is believed here before the own tests. Where there are
// own tests it may only lower: a plan is never harder than they say.

// believed is the state after the own tests, with what was shown at other skills.
func (ms *measures) believed(prior strength.State, seen []strength.Observation) (strength.State, []program.Note) {
	own := prior.Assess(seen)
	kin, notes := ms.kin()
	if len(kin) == 0 {
		return own, nil
	}
	shared := prior.Sharing(kin).Assess(seen)
	if len(seen) > 0 && !shared.NoStronger(own) {
		return own, nil
	}
	return shared, notes
}

// alone are the dates and chances of a client by the own tests. Who is taken to be weaker
// than those say may be given lighter work, more of it, and gain more by it: what was shown
// elsewhere brings the goal no nearer for that.
func alone(lib *program.Library, a *program.Assessment) otherPlan {
	own := *a
	own.Others = nil
	p, _ := planFor(lib, &own, true)
	return otherPlan{forecasts: p.Forecasts}
}

// kin are the other skills that were tested and whose strength goes with this one's.
func (ms *measures) kin() (all []strength.Kin, notes []program.Note) {
	var met []string
	for _, o := range ms.athlete.Others {
		if slices.Contains(met, o.Skill) {
			continue
		}
		met = append(met, o.Skill)
		correlation := ms.lib.Kinship(ms.road.ID, o.Skill)
		road, ok := ms.lib.RoadMap(o.Skill)
		if correlation == 0 || !ok {
			continue
		}
		if k, ok := ms.tested(road); ok {
			k.Correlation = correlation
			all, notes = append(all, k), append(notes, note(noteKin, text("other", road.Name)))
		}
	}
	return all, notes
}

// tested is what another skill's own tests leave to believe of it; nothing where this body
// cannot be laid out there.
func (ms *measures) tested(road *program.RoadMap) (k strength.Kin, ok bool) {
	a := *ms.athlete
	a.Goal.Skill, a.Tests, a.Others, a.Log = road.ID, nil, nil, program.Log{}
	for _, o := range ms.athlete.Others {
		if o.Skill == road.ID {
			a.Tests = append(a.Tests, program.Hold{Step: o.Step, Seconds: o.Seconds, Reps: o.Reps, Stopped: o.Stopped})
		}
	}
	there := &measures{client: client{lib: ms.lib, road: road, athlete: inSeconds(road, &a), limits: ms.limits, today: ms.today}}
	body, problems := ladder.New(there.athlete, road, ms.lib.Words)
	if problems.Stop() {
		return k, false
	}
	there.body = body
	there.clashed, there.open = there.clashes(), there.openings(nil)
	seen, held, _ := there.observed(there.athlete.Tests)
	k.Prior = there.prior(held)
	k.Tested = k.Prior.Assess(seen)
	return k, len(seen) > 0
}
