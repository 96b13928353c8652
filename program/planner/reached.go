package planner

import (
	"slices"

	"gatepost/program/ladder"
)

// # What nobody reached
//
// Whatever the model makes of it: a hold of which every set of the last two weeks stopped
// short is not asked for again as it was. For two weeks, until the log says more, it is as
// long as its longest set; a lean comes nearer, and what broke at once makes room for
// something easier (our judgement).

// tooLong is such a hold, and its longest set.
type tooLong struct {
	exercise, step, rig string
	ahead, scale        float64
	longest             float64 // s
}

func (di *diary) tooLong() []tooLong {
	var out []tooLong
	reached := map[tooLong]bool{}
	for _, d := range di.days {
		for i := range d.sets {
			s := &d.sets[i]
			if di.on-d.date >= lately || !s.arm() || s.seconds() == 0 {
				continue
			}
			at := tooLong{exercise: di.heldAs(s.Exercise), step: s.Step, rig: ladder.RigName(s.Rig), ahead: s.Ahead, scale: s.Scale}
			reached[at] = reached[at] || !s.short()
			if j := slices.IndexFunc(out, at.same); j >= 0 {
				out[j].longest = max(out[j].longest, s.seconds())
				continue
			}
			at.longest = s.seconds()
			out = append(out, at)
		}
	}
	return slices.DeleteFunc(out, func(x tooLong) bool { x.longest = 0; return reached[x] })
}

func (x tooLong) same(y tooLong) bool {
	x.longest, y.longest = 0, 0
	return x == y
}

// most is what the next card may ask for, s.
func (x tooLong) most() int { return max(deloadLeast, int(x.longest)) }

// asks reports whether work is this hold, or a harder lean or less weight on the toes.
func (x tooLong) asks(w work) bool {
	return !w.none() && w.exercise() == x.exercise && w.step() == x.step && ladder.RigName(w.aid.Rig) == x.rig && w.aid.Ahead >= x.ahead && w.aid.Scale <= x.scale
}

// asReached bounds work by what was reached of it lately; a lean that nobody reached
// comes nearer instead. Where a hold broke before five seconds, toes get more of the weight
// on their scale, and of a step the one below is trained, where some rig makes main work of
// it, else the floor. It reports whether it went so far below.
func (h *holds) asReached(w *work, week int) (below bool) {
	for _, x := range h.past.short {
		switch {
		case !x.asks(*w):
		case w.rung == nil && w.aid.Ahead > 0:
			*w = h.nearer(*w, x.ahead, week)
		default:
			if easier := h.below(*w, x.scale, week); x.longest < shortLeast && !easier.none() {
				*w, below = easier, true
				continue
			}
			w.hold = min(w.hold, w.whole(x.most()))
			w.short = w.short || w.hold < w.least()
		}
	}
	return below
}

// toReached has a week's work be what was reached of it; nothing heavy beside main work
// that went below.
func (h *holds) toReached(l *load, week int) (below bool) {
	if below = h.asReached(&l.main, week); below {
		l.heavy = work{}
	}
	h.asReached(&l.second, week)
	return below
}

// below is main work that is easier than what broke, with so many newtons on the toes:
// with a mark more of them, at a step below, or on the floor.
func (h *holds) below(broken work, toes float64, week int) work {
	switch below := h.stepBelow(broken, week); {
	case !below.none():
		return below
	case toes == 0 && broken.floor == nil:
		return h.onFloor(week)
	case toes > 0:
		if more := h.onScale(week, toes+ladder.Newtons(ladder.ScaleStep*scaleApart)); !more.none() {
			return more
		}
		return h.leaning(week)
	}
	return work{}
}

// stepBelow is main work of the nearest step below, with the least help that makes ten
// seconds or more of it; none on the floor, or where there is no such step.
func (h *holds) stepBelow(w work, week int) work {
	for i := h.index(w.rung) - 1; i >= 0 && w.floor == nil; i-- {
		r := &h.body.Steps[i]
		for _, o := range r.Aids() {
			if below := h.at(r, o, week); below.trainable() {
				return below
			}
		}
	}
	return work{}
}
