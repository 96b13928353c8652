package planner

import "gatepost/program"

// testItems are the block's closing test: the step worked on, free where it can be,
// and the next one where it was held in the block too, or is the goal, and a free hold
// of it is near. A goal whose day has come goes first. Where the minutes allow only one
// of them, it is what the block trained.
func (p *plan) testItems(d day) []program.Prescription {
	w, week := d.load.main, len(p.weeks)-1
	if w.none() {
		return p.trunkTest(d)
	}
	likely := p.likelyHold
	if !p.limits.maxTests { // prescribed, and not held to its end
		likely = p.look.maxHold
	}
	if w.rung != nil && w.floor == nil && !p.limits.elbowSore {
		if free := p.freeTest(w.rung, week, likely); p.testable(free.max) {
			w = free
		}
	}
	if !p.limits.maxTests {
		item := p.hold(w, program.RoleTest, 1, testRest)
		item.Check = true
		item.Hold = max(deloadLeast, min(held(gentleEffort, w.max), mainMost))
		return []program.Prescription{item}
	}
	items := []program.Prescription{p.toTheEnd(w)}
	next := p.index(w.rung) + 1
	if next == len(p.body.ladder) || w.floor != nil || d.oneTest {
		return items
	}
	r, goal := &p.body.ladder[next], next == len(p.body.ladder)-1
	hard := p.freeTest(r, week, likely)
	if !p.testable(hard.max) || !goal && !trains(p.behind, r.ID) {
		return items
	}
	if goal && p.dueIn() {
		return []program.Prescription{p.toTheEnd(hard), items[0]}
	}
	return append(items, p.toTheEnd(hard))
}

// dueIn reports whether the goal's day is in the block.
func (p *plan) dueIn() bool {
	return p.athlete.Goal.By < p.weeks[len(p.weeks)-1].start+7
}

// freeTest is a free hold of a rung in a week, by the cautious or the likely hold.
func (p *plan) freeTest(r *rung, week int, hold func(option, int) int) work {
	w := work{rung: r, option: r.heldFree(), max: hold(r.heldFree(), week)}
	w.share = p.look.shareHeld(w.max)
	return w
}

// toTheEnd is a maximal hold: as long as it stays clean.
func (p *plan) toTheEnd(w work) program.Prescription {
	item := p.hold(w, program.RoleTest, 1, testRest)
	item.Max, item.Hold = true, 0
	return item
}

// testable says whether a predicted hold, in tenths, is long enough to be tested:
// four seconds, or four at a gentle effort where nothing is tested to its end.
func (p *plan) testable(max int) bool {
	if p.limits.maxTests {
		return max >= 10*deloadLeast
	}
	return held(gentleEffort, max) >= deloadLeast
}

// trunkTest is the test of a block without weight on the hands: its trunk hold, one
// clean set that stops with two seconds left; of those who are tested to no end, as
// long as the block came to.
func (p *plan) trunkTest(d day) []program.Prescription {
	e := p.choose(need{purpose: program.ForTrunk, bentArms: true})
	if e == nil || e.Dose.Hold == 0 {
		return nil
	}
	item := p.dose(d, e, program.RoleTest)
	item.Sets, item.Check, item.Hold = 1, true, 0
	if !p.limits.maxTests {
		now, dose := p.progressed(e, d, program.RoleTrunk)
		if item.Hold = dose.Hold; now != e || dose.Sets > e.Dose.Sets {
			_, item.Hold = doseStep(e.Dose)
		}
	}
	return []program.Prescription{item}
}
