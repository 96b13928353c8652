package planner

import (
	"slices"

	"gatepost/program"
)

// # Practice
//
// Balance has no strength law: no share, no rig, no forecast. It is practised fresh, first in
// a session after the preparation, ten to fifteen minutes on three to five days a week and
// never to failure (common practice). A plan stays on one step until its gate is shown: so
// many of so many tries reach the seconds, on two days. What stands beside it (lines at the
// wall, pushing, pulling, trunk, reach) is laid out as for any other skill.
//
// A step whose gate asks for a single try is held and not tried, as the line at the wall is:
// it is trained in sets below what was shown, and its gate week opens with a hold that ends
// when two seconds are left.

// practice is a plan of balance in the making.
type practice struct {
	*plan
	at    int  // the step practised, by its place on the ladder
	gated bool // the goal's gate is shown
}

// practise makes the plan of who has no log yet.
func (m *measures) practise(out *program.Program) {
	p := m.newPractice(past{}, out.Start, nil)
	p.at, p.gated = m.placed()
	p.fill(out)
}

// newPractice lays out the weeks from a day on, those of a plan on the wall in its rhythm:
// who missed a week, or has a joint sore since, gets no harder week for it.
func (m *measures) newPractice(behind past, start program.Date, wall []program.Week) *practice {
	well := withFine(m.athlete, everyJoint)
	m.limits.deloadEvery = limitsIn(m.road, &well, start).deloadEvery
	p := &practice{plan: newPlan(m, behind, start)}
	p.exercises.came, p.practised = map[string]int{}, p.groups
	p.main, p.loads = make([]work, len(p.weeks)), make([]load, len(p.weeks))
	for i := range p.weeks {
		w := &p.weeks[i]
		p.loads[i].sets = make([]daySets, len(w.straight))
		if was := weekAt(wall, w.start); was != nil && i >= p.past.over() && len(w.days) > 0 && was.Kind != program.WeekAway {
			w.kind = was.Kind
		}
	}
	return p
}

// fill lays out the weeks that are not over and says what there is to say.
func (p *practice) fill(out *program.Program) {
	if len(p.weeks) == 0 {
		withhold(out, p.athlete, note(noteAlwaysAway))
		return
	}
	session := 0
	p.handBegun()
	out.Weeks = slices.Clone(p.past.weeks)
	for i := range out.Weeks {
		p.comeIn(i, &out.Weeks[i])
		session += len(out.Weeks[i].Sessions)
	}
	for i := p.past.over(); i < len(p.weeks); i++ {
		w := p.week(i, session)
		p.comeIn(i, &w)
		out.Weeks, session = append(out.Weeks, w), session+len(w.Sessions)
	}
	for i := range p.body.Steps {
		s := p.body.StepLoad(&p.body.Steps[i])
		s.FreeHold = p.bestOf(i)
		out.Steps = append(out.Steps, s)
	}
	out.Goal.Met = p.gated
	out.Place = placeOfWeeks(out.Weeks[p.past.over():])
	out.Gates, out.Outline = p.gates(out.Weeks), p.stagesTo(out)
	out.Asks = append(out.Asks, p.asks(out)...)
	out.Notes = append(p.generalNotes(out), p.practiceNotes()...)
	p.sayAhead(out.Weeks)
	out.Wishes = p.wishesRead(out.Weeks)
}

// practiceNotes say what a plan of balance can say, and what it cannot.
func (p *practice) practiceNotes() []program.Note {
	notes := p.omits(p.waiting())
	if len(p.open) > 0 {
		return notes
	}
	notes = append(notes, note(notePractice))
	if p.anySore() {
		notes = append(notes, note(notePracticeSore))
	}
	if n := len(p.athlete.Training.Days); n < fewDays {
		notes = append(notes, note(notePracticeFew, count("days", n)))
	}
	return notes
}

// stagesTo is the way to the goal: the weeks of the block are on one step, or the one before it
// after weeks off, and later steps wait for their gates.
func (p *practice) stagesTo(out *program.Program) []program.Stage {
	var stages []program.Stage
	for i := range p.body.Steps {
		s := weeksOn(p.body.Steps[i].ID, out.Weeks[p.past.over():])
		if s.First > 0 || i > p.at {
			stages = append(stages, s)
		}
	}
	if len(stages) < 2 || out.Place == "" {
		return nil
	}
	return stages
}

// week is one week as it is printed, so many sessions after the block's first.
func (p *practice) week(i, session int) program.Week {
	w, r := &p.weeks[i], &p.body.Steps[p.stepIn(i)]
	out := program.Week{Number: i + 1, Start: w.start, Kind: w.kind}
	for j, date := range w.days {
		s := p.session(p.day(i, date, session+j, false))
		p.easePractice(&s)
		out.Sessions = append(out.Sessions, s)
	}
	for _, s := range out.Sessions {
		sets := 0
		for _, item := range s.Items {
			if !isPractice(&item) || item.Check && w.kind == program.WeekTest {
				continue
			}
			out.Step, out.Exercise, out.Rest = r.ID, item.Exercise, item.Rest
			out.Hold, sets = max(out.Hold, item.Hold), sets+item.Sets
		}
		countDay(&out, sets)
	}
	if out.Step != "" {
		out.Stance, out.Gate = p.body.Figure(r, r.Free()), p.gateIn(i)
	}
	p.markByHand(&out)
	out.Notes = p.notesIn(&out, i)
	return out
}

// isPractice reports whether an item is a step of balance.
func isPractice(item *program.Prescription) bool {
	return item.Step != "" && (item.Role == program.RoleMain || item.Role == program.RoleTest)
}

// notesIn say what is new in a week.
func (p *practice) notesIn(w *program.Week, i int) []program.Note {
	var out []program.Note
	if w.Kind == program.WeekDeload && daysAway(p.athlete, w.Start) >= deloadAway {
		out = append(out, note(noteAwayDeload))
	}
	if w.Gate {
		g := p.body.Steps[p.stepIn(i)].Gate
		asks := note(noteGateHeld, step("step", w.Step), seconds("hold", float64(g.Hold)), count("days", g.Sessions))
		if g.Tried() {
			asks = note(noteGateTries, step("step", w.Step), count("reached", g.Reached), count("tries", g.Sets), seconds("hold", float64(g.Hold)), count("days", g.Sessions))
		}
		out = append(out, asks)
	}
	return append(out, p.back(i)...)
}

// stepIn is the step of a week: for two weeks after some off the one before.
func (p *practice) stepIn(i int) int {
	if _, easy := p.returning(i); easy {
		return p.setStep(i, max(0, p.at-1))
	}
	return p.setStep(i, p.at)
}

// gateIn reports whether a week asks for the gate: the last build week before an easy one,
// if it is not the first on its step.
func (p *practice) gateIn(i int) bool {
	back, _ := p.returning(i)
	if i == 0 || i == p.past.over() && p.past.weeks[i-1].Step != p.body.Steps[p.at].ID {
		return false
	}
	return p.setFor(i) < 0 && p.weeks[i].kind == program.WeekBuild && p.weeks[i+1].kind != program.WeekBuild && !back && !p.anySore() && !p.comingBack(i)
}

func (p *practice) anySore() bool {
	return soreAnywhere(p.athlete.Health)
}
