package planner

import (
	"cmp"
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// # First tries
//
// Whoever holds no step yet tries the first one once a week: three tries, with the
// least help that leaves a few seconds (free, a band, the toes on a scale), else with
// light toes on the floor, which nobody can weigh. Tries are written down and not
// counted; a second is news. Nobody with sore elbows tries, and who trains gently
// (another sore joint, under sixteen, just back) keeps the toes down. Common practice.

const (
	tryLeast    = 3 // s that the help of a try should leave
	tryReckoned = 5 // s that a try takes
)

// tries are those of a day: the freshest of a build week, and the test's day.
func (lo *layout) tries(d day) []program.Prescription {
	fresh := d.kind == program.WeekBuild && d.fresh
	if d.load.main.rung != nil && d.load.main.floor == nil || !lo.straightArms() || lo.limits.elbowSore || !fresh && !d.test {
		return nil
	}
	item := lo.firstTry(d.week)
	if item.Exercise == "" || !lo.hasHereFor(&item) {
		return nil
	}
	item.Role, item.Try, item.Sets, item.Hold, item.Rest = program.RoleTest, true, triesSets, 0, secondRest
	return []program.Prescription{item}
}

// firstTry is the first step with the least help that this week allows.
func (lo *layout) firstTry(week int) program.Prescription {
	if !lo.limits.gentleIn(week) {
		for _, w := range lo.helped(&lo.body.Steps[0]) {
			w.max = lo.likelyHold(w.aid, week)
			w.share = lo.look.shareHeld(w.max)
			if w.max >= 10*tryLeast && w.aid.HangsIn(lo.weeks[week].start) {
				return lo.hold(w, program.RoleTest, triesSets, secondRest)
			}
		}
	}
	return lo.lightToes()
}

// helped are the ways to do a step, the least help first: free, with its rigs, with a
// scale under the toes.
func (c *client) helped(r *ladder.Rung) []work {
	floor, scales := c.scaled(r)
	aids := r.Aids()
	ways := make([]work, 0, len(scales)+len(aids))
	for _, o := range scales {
		ways = append(ways, work{rung: r, floor: floor, aid: o})
	}
	for _, o := range aids {
		if float64(o.Help) <= bandShare*10*c.body.Weight {
			ways = append(ways, work{rung: r, aid: o})
		}
	}
	slices.SortStableFunc(ways, func(a, b work) int { return cmp.Compare(b.aid.Load, a.aid.Load) })
	return ways
}

// lightToes is the first step with the toes on the floor: its nearest easier version
// that no scale weighs.
func (c *client) lightToes() program.Prescription {
	first := &c.body.Steps[0]
	e, _ := c.lib.Exercise(first.Exercise)
	for _, r := range c.road.Rungs {
		if r.Kind == program.RungScale {
			e, _ = c.lib.Exercise(r.Exercise)
		}
	}
	if e == nil {
		return program.Prescription{}
	}
	x := c.easier(e, need{purpose: program.ForStep})
	if x == e {
		return program.Prescription{}
	}
	return program.Prescription{Exercise: x.ID, StraightArm: x.StraightArm}
}

// household is kit that most homes have.
var household = []string{"towel", "table"}

// wouldOpen names the kit that rows want, where there is none to row with.
func (x *exercises) wouldOpen() []program.Note {
	row := x.choose(need{purpose: program.ForRow})
	if row != nil && len(row.Kit) > 0 {
		return nil
	}
	var notes []program.Note
	for _, kit := range household {
		for i := range x.lib.Exercises {
			e := &x.lib.Exercises[i]
			if e.Trains[0] == program.ForRow && len(e.Kit) == 1 && slices.Contains(e.Kit[0], kit) {
				notes = append(notes, note(noteKitWouldOpen, word("kit", "kit."+kit), exercise("exercise", e.ID)))
			}
		}
	}
	return notes
}
