package planner

import (
	"gatepost/program"
	"gatepost/program/ladder"
)

// testItems are the block's closing test: the step worked on, free where it can be,
// and a harder one beside it. Where the minutes allow only one of them, it is what the
// block trained. Who tests nothing to its end has a check hold of the one, as long as
// the cautious hold allows.
func (lo *layout) testItems(d day) []program.Prescription {
	w, week, hold := d.load.main, len(lo.weeks)-1, lo.likelyHold
	if tests := lo.exercises.entryTests(); len(tests) > 0 {
		return tests
	}
	if w.none() {
		return nil
	}
	if !lo.limits.maxTests {
		hold = lo.look.maxHold
	}
	if w.rung != nil && w.floor == nil && !lo.limits.elbowSore {
		if free := lo.freeTest(w.rung, week, hold); lo.testable(free.max) {
			w = free
		}
	}
	items := []program.Prescription{lo.testOf(w)}
	if !lo.limits.maxTests {
		return items
	}
	hard, first := lo.harderTest(w, week)
	if hard.none() || d.oneTest {
		return items
	}
	item := lo.toTheEnd(hard)
	switch {
	case !lo.hasHereFor(&item):
		return items
	case first:
		return []program.Prescription{item, items[0]}
	}
	return append(items, item)
}

// harderTest is the step after the one worked on, where it was held in the block too, or is
// the goal, and a free hold of it is near. A goal whose day has come is tested first.
func (lo *layout) harderTest(w work, week int) (hard work, first bool) {
	next := lo.index(w.rung) + 1
	if next > lo.hardestStep() || w.floor != nil {
		return work{}, false
	}
	goal := next == len(lo.body.Steps)-1
	hard = lo.freeTest(&lo.body.Steps[next], week, lo.likelyHold)
	if !lo.testable(hard.max) || !goal && !trains(lo.behind, hard.rung.ID) {
		return work{}, false
	}
	return hard, goal && lo.dueIn()
}

// dueIn reports whether the goal's day is in the block.
func (sn *season) dueIn() bool {
	return sn.athlete.Goal.By < sn.weeks[len(sn.weeks)-1].start+7
}

// freeTest is a free hold of a rung in a week, by the cautious or the likely hold.
func (h *holds) freeTest(r *ladder.Rung, week int, hold func(ladder.Aid, int) int) work {
	w := work{rung: r, aid: r.Free(), max: hold(r.Free(), week)}
	w.share = h.look.shareHeld(w.max)
	return w
}

// testOf tests work: to its end, or for who tests nothing so as a check hold.
func (h *holds) testOf(w work) program.Prescription {
	if h.limits.maxTests {
		return h.toTheEnd(w)
	}
	item := h.hold(w, program.RoleTest, 1, testRest)
	item.Check, item.Hold = true, max(deloadLeast, min(held(gentleEffort, w.max), w.most()))
	return item
}

// toTheEnd is a maximal hold: as long as it stays clean.
func (h *holds) toTheEnd(w work) program.Prescription {
	item := h.hold(w, program.RoleTest, 1, testRest)
	item.Max, item.Hold = true, 0
	return item
}

// testable says whether a predicted hold, in tenths, is long enough to be tested:
// four seconds, or four at a gentle effort where nothing is tested to its end.
func (c *client) testable(max int) bool {
	if c.limits.maxTests {
		return max >= 10*deloadLeast
	}
	return held(gentleEffort, max) >= deloadLeast
}

// trunkTest is the test of a block that has no other, as of who puts no weight on the
// hands: its trunk hold, one clean set that stops with two seconds left; of those who are
// tested to no end, as long as the block came to.
func (x *exercises) trunkTest(d day) []program.Prescription {
	e := x.choose(need{purpose: program.ForTrunk, bentArms: true})
	if e == nil || e.Dose.Hold == 0 {
		return nil
	}
	item := x.dose(d, e, program.RoleTest)
	item.Sets, item.Check, item.Hold = 1, true, 0
	if !x.limits.maxTests {
		now, dose := x.progressed(e, d, program.RoleTrunk, x.back[e.ID])
		if item.Hold = dose.Hold; now != e || dose.Sets > e.Dose.Sets {
			_, item.Hold = doseStep(e.Dose)
		}
	}
	return []program.Prescription{item}
}
