package planner

import (
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// work is the straight-arm work of one kind in one week: where, with what help,
// for how long a hold.
type work struct {
	rung  *ladder.Rung // nil on the floor
	aid   ladder.Aid   // the rig; free where there is none
	floor *program.Rung
	max   int     // predicted maximal hold, tenths of a second
	share float64 // of the instant maximum
	hold  int     // s, prescribed
	short bool    // sets of 5 to 9 s, because no rig allows more
	gate  bool    // the step's gate itself, in its gate week
}

func (w work) none() bool { return w.rung == nil && w.floor == nil }

// exercise is the id of the exercise that does this work.
func (w work) exercise() string {
	if w.floor != nil {
		return w.floor.Exercise
	}
	return w.rung.Exercise
}

// step is the id of the step held, empty on a floor lean.
func (w work) step() string {
	if w.rung == nil {
		return ""
	}
	return w.rung.ID
}

// halfSeconds is one set's counted work. A second counts nothing up to half of the
// instant maximum, one at .80, one and a half at .90, and in proportion between and above
// (our judgement: what strains tendons is the load).
func (w work) halfSeconds() int {
	load := int(100*w.share + 0.5) // hundredths
	return max(0, (w.hold*(2*(load-50)+max(0, load-80))+15)/30)
}

// longer is how much longer than the others the last set of a gate is, s.
func (w work) longer() int {
	if !w.gate {
		return 0
	}
	return longestSet(w.rung.Gate) - w.hold
}

// held is the prescribed hold for a predicted maximum in tenths and an effort:
// whole seconds, rounded down.
func held(effort float64, max int) int {
	return int(effort*100+0.5) * max / 1000
}

// at is a rung's option in a week, as main work would do it; hold 0 where it
// cannot be main work.
func (h *holds) at(r *ladder.Rung, o ladder.Aid, week int) work {
	w := work{rung: r, aid: o, max: h.look.maxHold(o, week)}
	w.share = h.look.shareHeld(w.max)
	if !o.HangsIn(h.weeks[week].start) || float64(o.Help) > bandShare*10*h.body.Weight || h.limits.elbowSore && w.share > elbowLoad || h.asksMore(w, week) || h.helpsNot(w, week) {
		return w
	}
	h.setHold(&w, week)
	if least := w.least(); h.past.hangs(r, o) && held(h.limits.mostEffortIn(week), w.max) >= least {
		w.hold, w.short = max(w.hold, least), false
	}
	return w
}

// helpsNot reports whether a rig's work is predicted to last no longer than the free hold:
// so little help as a rig nobody has used is in doubt by anyway.
func (h *holds) helpsNot(w work, week int) bool {
	return !w.aid.Rig.Free() && w.max <= h.look.maxHold(w.rung.Free(), week)
}

func (h *holds) setHold(w *work, week int) {
	nothingElse := !w.repeats() && h.floorRung(program.RungLean) == nil
	switch hold := h.longest(w, week); {
	case hold >= w.least():
		w.hold = min(hold, w.most())
	case (w.max >= shortFrom || nothingElse) && hold >= shortLeast:
		w.hold, w.short = min(hold, shortMost), true
	}
}

// longest is the longest main hold within a week's effort. Of repetitions it is the most
// that stay within the most effort: each is a sixth of the work or more, and rounded down
// from the usual effort they would come to hardly six tenths.
func (h *holds) longest(w *work, week int) int {
	if w.repeats() {
		return w.whole(held(h.limits.mostEffortIn(week), w.max))
	}
	return held(h.limits.effortIn(week), w.max)
}

// repeats reports whether the work is counted in repetitions.
func (w work) repeats() bool { return w.rung != nil && w.floor == nil && w.rung.Repeats() }

// whole are the seconds of so long a hold that are printed: those of whole repetitions.
func (w work) whole(hold int) int {
	if w.repeats() {
		return fullReps(hold)
	}
	return hold
}

// least is the shortest main hold that is no short one: ten seconds, or three repetitions.
func (w work) least() int { return w.whole(mainLeast) }

// most is the longest main hold: fifteen seconds, or as many repetitions as open the next
// step, where those are more.
func (w work) most() int {
	if w.repeats() {
		return max(mainMost, w.rung.Gate.Hold+reserve)
	}
	return mainMost
}

// trainable says that the work can be main work that is no short one.
func (w work) trainable() bool { return w.hold >= w.least() }

// slack is how far main work falls short of the least effort that trains, in
// hundredths of its predicted maximum, rounded up; nothing for sore elbows, which are
// to have it easy. What whole repetitions leave away is no shortfall.
func (c *client) slack(w work, week int) int {
	if c.limits.elbowSore || w.max == 0 {
		return 0
	}
	least, hold := int(c.limits.effortIn(week)*100+0.5)-effortBand, w.hold
	if w.repeats() {
		hold += program.SecondsPerRep - 1
	}
	return max(0, (least*w.max-1000*hold+w.max-1)/w.max)
}

// second is the lighter, longer work beside the main work: the hardest earlier
// step that can be held free for long enough, else a lean.
func (h *holds) second(main work, week int) work {
	for i := h.index(main.rung) - 1; i >= 0; i-- {
		r := &h.body.Steps[i]
		if w := h.lighter(work{rung: r, aid: r.Free()}, week); w.hold > 0 && w.share <= secondLoad {
			return w
		}
	}
	return h.lean(week, byLighter, secondLoad, secondLeast, secondMost)
}

func (h *holds) lighter(w work, week int) work {
	w.max = h.look.maxHold(w.aid, week)
	w.share = h.look.shareHeld(w.max)
	if hold := held(h.limits.effortIn(week), w.max); hold >= secondLeast {
		w.hold = w.whole(min(hold, secondMost))
	}
	return w
}

// heavyWork is the heavy, short work: the goal as a test has shown it, where that is the
// next step, else this step with less help or free, or the next with help, whichever comes
// nearest the middle of its load.
func (h *holds) heavyWork(main work, week int) work {
	var best work
	i := h.index(main.rung)
	if i < 0 {
		return best
	}
	for next := i; next <= min(i+1, h.hardestStep()); next++ {
		r := &h.body.Steps[next]
		for _, o := range r.Aids() {
			easier := r.ID == main.rung.ID && o.Help >= main.aid.Help
			if easier || float64(o.Help) > ladder.MostHelp*10*h.body.Weight || h.findsFirst(o, main) {
				continue
			}
			w := h.heavy(r, o, week)
			switch {
			case w.hold == 0 || h.sameWork(o, main):
			case next > i && h.goalTested(r, o):
				return w
			case best.none() || nearer(w, best):
				best = w
			}
		}
	}
	return best
}

// goalTested reports whether a step is the goal, and a test did it with an aid.
func (h *holds) goalTested(r *ladder.Rung, o ladder.Aid) bool {
	return h.index(r) == len(h.body.Steps)-1 && slices.ContainsFunc(h.athlete.Tests, func(t program.Hold) bool {
		return t.Step == r.ID && t.Seconds > 0 && t.Scale == o.Scale && ladder.SameRig(t.Rig, o.Rig)
	})
}

// sameWork reports whether an aid is the main work by another name: of what is repeated,
// one of the same load to half a per cent, as a lift from a block that is a step of its own.
func (h *holds) sameWork(o ladder.Aid, main work) bool {
	return h.body.Repeats() && abs(o.Load-main.aid.Load) < 0.005*main.aid.Load
}

func (h *holds) heavy(r *ladder.Rung, o ladder.Aid, week int) work {
	w := work{rung: r, aid: o, max: h.look.maxHold(o, week)}
	w.share = h.look.shareHeld(w.max)
	hold := min(held(h.limits.effortIn(week), w.max), heavyMost)
	if o.HangsIn(h.weeks[week].start) && w.share >= heavyFrom && w.share <= heavyTo && hold >= heavyLeast && !w.asksMoreThanOneOf(h.leastHeavy, week) {
		w.hold = w.whole(hold)
	}
	return w
}

func nearer(w, than work) bool {
	middle := (heavyFrom + heavyTo) / 2
	return abs(w.share-middle) < abs(than.share-middle)-1e-9
}

func abs(x float64) float64 { return max(x, -x) }

// index is a rung's place on the ladder, −1 for none.
func (c *client) index(r *ladder.Rung) int {
	if r == nil {
		return -1
	}
	for i := range c.body.Steps {
		if c.body.Steps[i].ID == r.ID {
			return i
		}
	}
	return -1
}
