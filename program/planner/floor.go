package planner

import (
	"gatepost/program"
	"gatepost/program/ladder"
)

const scaleKit = "bathroom scale"

// floorRung finds the road map's rung of a kind, if this client can do it.
func (c *client) floorRung(kind program.RungKind) *program.Rung {
	for i := range c.road.Rungs {
		r := &c.road.Rungs[i]
		if r.Kind != kind {
			continue
		}
		if e, ok := c.lib.Exercise(r.Exercise); ok && c.can(e) {
			return r
		}
	}
	return nil
}

// Main work goes further by single centimetres, where leans are so near; lighter leans by
// two, for their marks move by half hands (our judgement).
const byMain, byLighter = 1, 2

// lean is the farthest lean, by so many centimetres, whose load stays within a share of the
// maximum and whose hold reaches a length; without one, no work.
func (h *holds) lean(week, by int, most float64, least, longest int) work {
	floor := h.floorRung(program.RungLean)
	if floor == nil {
		return work{}
	}
	effort := h.limits.effortIn(week)
	for i := h.farthest(week); i >= 0; i-- {
		if centimetres(h.leans[i].Ahead)%by != 0 {
			continue
		}
		w := h.leanAt(floor, h.leans[i], week)
		if hold := held(effort, w.max); hold >= least && w.share <= most {
			w.hold = min(hold, longest)
			return w
		}
	}
	return work{}
}

// leanAt is a lean in a week, without seconds.
func (h *holds) leanAt(floor *program.Rung, lean ladder.Aid, week int) work {
	w := work{floor: floor, aid: lean}
	if w.max = h.look.maxHold(w.aid, week); lean.Ahead == 0 {
		w.max = longestHold // a push-up position: anybody's, and no work that counts
	}
	w.share = h.look.shareHeld(w.max)
	return w
}

// leanPlace is the place among the leans of the farthest that goes no more than so many
// metres ahead; −1 where there are none.
func (h *holds) leanPlace(ahead float64) int {
	i := len(h.leans) - 1
	for i > 0 && h.leans[i].Ahead > ahead+1e-9 {
		i--
	}
	return i
}

// Who has shown nothing begins near the wall, and goes two centimetres further a week; the
// first sets written down say more than any table (our judgement).
const firstLean = 0.08 // m

// farthest is the farthest lean of a week, by its place among the leans. Who has found a mark
// and held no step yet goes half a hand beyond what was leant so far, and two centimetres
// further a week: easy is no measure of how easy.
func (h *holds) farthest(week int) int {
	switch {
	case !h.tested():
		return h.leanPlace(firstLean + ladder.LeanStep*float64(week))
	case h.past.reached.lean > 0:
		return h.leanPlace(h.past.reached.lean + halfHand + ladder.LeanStep*float64(week-h.past.over()))
	}
	return len(h.leans) - 1
}

// nearer is a lean brought back from one that broke lately, by half a hand.
func (h *holds) nearer(w work, broke float64, week int) work {
	i := h.leanPlace(broke - halfHand)
	back := h.leanAt(w.floor, h.leans[i], week)
	for ; i > 0 && h.limits.elbowSore && back.share > elbowLoad; i-- {
		back = h.leanAt(w.floor, h.leans[i-1], week)
	}
	back.hold = max(deloadLeast, min(w.hold, held(h.limits.effortIn(week), back.max)))
	back.short = back.hold < mainLeast
	return back
}

// halfHand is how marks on a wall are moved, m (common practice).
const halfHand = 0.04

// onFloor is the main work of a week in which no step can be trained: the first
// step with the toes on a scale where that is near enough, else the lean.
func (h *holds) onFloor(week int) work {
	if w := h.onScale(week, h.leastOnScale(week)); w.hold > 0 {
		return w
	}
	return h.leaning(week)
}

// leaning is the farthest lean that makes main work of a week.
func (h *holds) leaning(week int) work {
	most := 1.0
	if h.limits.elbowSore {
		most = elbowLoad
	}
	w := h.lean(week, byMain, most, mainLeast, mainMost)
	if w.none() {
		w = h.lean(week, byMain, most, shortLeast, shortMost)
		w.short = !w.none()
	}
	return w
}

// further is the next lean for eight or nine seconds, where the one of the week before has
// become easy and its longer hold would not yet move: two centimetres can halve the hold (our
// judgement).
func (h *holds) further(last, w work, week int) work {
	if !isLean(w) || !isLean(last) || w.aid.Ahead > last.aid.Ahead || h.slack(w, week) == 0 {
		return w
	}
	if far := h.lean(week, byMain, 1, testedHold, shortMost); h.leanPlace(far.aid.Ahead) == h.leanPlace(w.aid.Ahead)+1 {
		far.short = true
		return far
	}
	return w
}

// onScale is the first step with as little weight on the toes, in half kilograms and no
// less than so many newtons, as still lets it be held ten seconds.
func (h *holds) onScale(week int, least float64) work {
	first := &h.body.Steps[0]
	floor, aids := h.scaled(first)
	for _, aid := range aids {
		if aid.Scale < least-1e-9 {
			continue
		}
		if w := h.at(first, aid, week); w.trainable() {
			w.floor, w.aid = floor, aid
			return w
		}
	}
	return work{}
}

// leastOnScale is how little the toes may leave on a scale in a week, N: likewise, one mark
// less than was found so far, and half a kilogram a week.
func (h *holds) leastOnScale(week int) float64 {
	if h.past.reached.scale == 0 {
		return 0
	}
	less := scaleApart + week - h.past.over()
	return h.past.reached.scale - ladder.Newtons(ladder.ScaleStep*float64(less))
}

// scaled are the ways to do a step with a scale under the toes, the least weight on it
// first, as much as a band may help at most, and the rung that says how.
func (c *client) scaled(r *ladder.Rung) (*program.Rung, []ladder.Aid) {
	floor := c.floorRung(program.RungScale)
	if floor == nil || !c.has(scaleKit) {
		return nil, nil
	}
	return floor, r.Scales(bandShare)
}
