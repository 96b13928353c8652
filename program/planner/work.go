package planner

import (
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

// Holds in seconds, by kind of work.
const (
	mainLeast, mainMost     = 10, 15
	shortLeast, shortMost   = 5, 9
	secondLeast, secondMost = 15, 25
	heavyLeast, heavyMost   = 4, 8
	deloadLeast             = 4
)

// shortFrom is the least predicted maximal hold that short sets are made of,
// tenths of a second.
const shortFrom = 90

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
	if !o.HangsIn(h.weeks[week].start) || float64(o.Help) > bandShare*10*h.body.Weight || h.limits.elbowSore && w.share > elbowLoad || h.asksMore(w, week) {
		return w
	}
	w.setHold(h.limits.effortIn(week))
	if h.past.hangs(r, o) && held(h.limits.mostEffortIn(week), w.max) >= mainLeast {
		w.hold, w.short = max(w.hold, mainLeast), false
	}
	return w
}

func (w *work) setHold(effort float64) {
	hold := held(effort, w.max)
	switch {
	case hold >= mainLeast:
		w.hold = min(hold, mainMost)
	case w.max >= shortFrom && hold >= shortLeast:
		w.hold, w.short = min(hold, shortMost), true
	}
}

// trainable says that the work can be main work of ten seconds or more.
func (w work) trainable() bool { return w.hold >= mainLeast }

// effortBand is how far below the planned effort, in hundredths of the predicted
// maximum, main work still trains what it is for: .60 to .70, and up to .75 where
// something speaks for it (our judgement). Who trains gently, at .60, has .50.
const effortBand = 10

// slack is how far main work falls short of the least effort that trains, in
// hundredths of its predicted maximum, rounded up; nothing for sore elbows, which are
// to have it easy.
func (c *client) slack(w work, week int) int {
	if c.limits.elbowSore || w.max == 0 {
		return 0
	}
	least := int(c.limits.effortIn(week)*100+0.5) - effortBand
	return max(0, (least*w.max-1000*w.hold+w.max-1)/w.max)
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
	return h.lean(week, secondLoad, secondLeast, secondMost)
}

// Loads of the lighter work as shares of the instant maximum (our judgement).
// Easy leans stay where seconds are not counted: those do more in the main work.
const (
	secondLoad = 0.72
	easyLoad   = 0.49
)

func (h *holds) lighter(w work, week int) work {
	w.max = h.look.maxHold(w.aid, week)
	w.share = h.look.shareHeld(w.max)
	if hold := held(h.limits.effortIn(week), w.max); hold >= secondLeast {
		w.hold = min(hold, secondMost)
	}
	return w
}

// heavyWork is the heavy, short work: this step with less help or free, or the next
// with help, whichever comes nearest the middle of its load.
func (h *holds) heavyWork(main work, week int) work {
	var best work
	i := h.index(main.rung)
	if i < 0 {
		return best
	}
	for next := i; next < min(i+2, len(h.body.Steps)); next++ {
		r := &h.body.Steps[next]
		for _, o := range r.Aids() {
			easier := r.ID == main.rung.ID && o.Help >= main.aid.Help
			if easier || float64(o.Help) > ladder.MostHelp*10*h.body.Weight {
				continue
			}
			if w := h.heavy(r, o, week); w.hold > 0 && !h.sameWork(o, main) && (best.none() || nearer(w, best)) {
				best = w
			}
		}
	}
	return best
}

// sameWork reports whether an aid is the main work by another name: of what is repeated,
// one of the same load to half a per cent, as a lift from a block that is a step of its own.
func (h *holds) sameWork(o ladder.Aid, main work) bool {
	return h.body.Repeats() && abs(o.Load-main.aid.Load) < 0.005*main.aid.Load
}

// Loads of the heavy work as shares of the instant maximum.
const (
	heavyFrom, heavyTo = 0.85, 0.92
)

func (h *holds) heavy(r *ladder.Rung, o ladder.Aid, week int) work {
	w := work{rung: r, aid: o, max: h.look.maxHold(o, week)}
	w.share = h.look.shareHeld(w.max)
	hold := min(held(h.limits.effortIn(week), w.max), heavyMost)
	if o.HangsIn(h.weeks[week].start) && w.share >= heavyFrom && w.share <= heavyTo && hold >= heavyLeast {
		w.hold = hold
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
