package planner

import (
	"cmp"
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// # What is left out
//
// A step that the client has not the kit or the wrists for is no step of this client's: the
// others are worked on, and a note says what would open it. In practice the order is kept:
// nobody kicks up who was never at a wall, so what is missing there is waited for.

// narrow leaves of the body's steps those that are this client's, and says which are not.
func (c *client) narrow() {
	c.newHand()
	c.passOver()
	c.omitted = c.body.NoBlock
	c.leaveOut()
}

// leaveOut takes such steps out, below the goal's. Where something is held, wrists that are
// to be spared take all of it (limits.hands). A goal of presses that asks for other wrists
// stays, and what is left below it is trained until they are well; where nothing is, the
// hands rest.
func (c *client) leaveOut() {
	if c.road.Load == program.LoadBalance {
		return
	}
	presses := c.road.Load.Repeats()
	c.body.Steps = slices.DeleteFunc(c.body.Steps, func(r ladder.Rung) bool {
		e, ok := c.lib.Exercise(r.Exercise)
		if !ok {
			return false
		}
		if r.ID == c.athlete.Goal.Step {
			c.barred = presses && e.Grip == program.GripFlat && c.limits.neutralOnly
			return false
		}
		if len(c.lacks(e)) == 0 && (!presses || c.bears(e)) {
			return false
		}
		c.omitted = append(c.omitted, r)
		return true
	})
	c.limits.hands = c.limits.hands && c.hardestStep() >= 0
}

// hardestStep is the rung of the hardest step that may be trained; −1 for none.
func (c *client) hardestStep() int {
	if c.barred {
		return len(c.body.Steps) - 2
	}
	return len(c.body.Steps) - 1
}

// nowAs are the measures of the same client with joints as the log has them, for a block
// from a day on. Wrists that have become sore leave out more of what is repeated.
func (ms measures) nowAs(eased *program.Assessment, start program.Date) measures {
	ms.athlete, ms.limits = eased, limitsIn(ms.road, eased, start)
	if ms.road.Load.Repeats() {
		body := *ms.body
		body.Steps = slices.Clone(body.Steps)
		ms.body, ms.omitted = &body, slices.Clip(ms.omitted)
		ms.leaveOut()
	}
	return ms
}

// missed are the steps left out that work would be on: not those whose gate is behind the
// client already, unless the weeks ahead begin below them.
func (rt *route) missed(weeks []program.Week) []ladder.Rung {
	begin := rt.loadOfStep(placeOfWeeks(weeks[rt.past.over():]))
	return slices.DeleteFunc(slices.Clone(rt.omitted), func(r ladder.Rung) bool {
		return r.Load <= begin && rt.pastGate(&r, rt.past.over())
	})
}

// waiting are the steps of balance, from the one that is practised on, that cannot be.
func (p *practice) waiting() []ladder.Rung {
	return slices.DeleteFunc(slices.Clone(p.body.Steps[p.at:]), func(r ladder.Rung) bool {
		e, ok := p.lib.Exercise(r.Exercise)
		return !ok || p.can(e)
	})
}

// omits say which steps are left out and what would open them, all that one thing opens
// together.
func (c *client) omits(steps []ladder.Rung) []program.Note {
	var notes []program.Note
	add := func(code, id string, opens []program.Value, more ...program.Value) {
		at := slices.IndexFunc(notes, func(n program.Note) bool {
			return n.Code == code && slices.Equal(n.Values[:len(opens)], opens)
		})
		if at < 0 {
			at, notes = len(notes), append(notes, note(code, opens...))
		}
		notes[at].Values = append(notes[at].Values, append(more, step("steps", id))...)
	}
	for _, r := range steps {
		e, ok := c.lib.Exercise(r.Exercise)
		if ok {
			for _, oneOf := range c.lacks(e) {
				var opens []program.Value
				for _, thing := range oneOf {
					opens = append(opens, kit("kit", thing))
				}
				add(noteOmitKit, r.ID, opens)
			}
			if c.limits.hands && !c.bears(e) {
				add(noteOmitWrists, r.ID, nil)
			}
		}
		if h := r.Lift.Block; h > 0 && !c.body.Hanging.HasBlock(h) {
			add(noteOmitBlock, r.ID, nil, metres("heights", h))
		}
	}
	for _, n := range notes { // values of one name stand together, as a list
		slices.SortStableFunc(n.Values, func(a, b program.Value) int { return cmp.Compare(a.Name, b.Name) })
	}
	return notes
}
