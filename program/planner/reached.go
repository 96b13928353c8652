package planner

import (
	"slices"

	"gatepost/program"
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

// heldLately is what the sets of two weeks say of a hold.
type heldLately struct {
	tooLong
	broke, sound program.Date // the last day that it stopped short, and that it came off as printed
	reached      bool
}

// tooLong are those of the last two weeks: not one that was reached then, nor one of which
// a harder lean, or less weight on the toes, came off as printed later.
func (di *diary) tooLong() []tooLong {
	all := di.heldLately()
	var out []tooLong
	for _, h := range all {
		since := func(o heldLately) bool { return o.asMuch(h.tooLong) && o.sound > h.broke }
		if !h.reached && !slices.ContainsFunc(all, since) {
			out = append(out, h.tooLong)
		}
	}
	return out
}

func (di *diary) heldLately() []heldLately {
	var all []heldLately
	for _, d := range di.days {
		for i := range d.sets {
			s := &d.sets[i]
			if di.on-d.date >= lately || !s.arm() || s.seconds() == 0 {
				continue
			}
			at := tooLong{exercise: di.heldAs(s.Exercise), step: s.Step, rig: ladder.RigName(s.Rig), ahead: s.Ahead, scale: s.Scale}
			j := slices.IndexFunc(all, func(h heldLately) bool { return h.asMuch(at) && at.asMuch(h.tooLong) })
			if j < 0 {
				j, all = len(all), append(all, heldLately{tooLong: at})
			}
			all[j].add(s, d.date)
		}
	}
	return all
}

func (h *heldLately) add(s *setRead, on program.Date) {
	h.longest = max(h.longest, s.seconds())
	switch {
	case s.short():
		h.broke = on
		return
	case s.Printed > 0 && !s.tough():
		h.sound = on
	}
	h.reached = true
}

// asMuch reports whether a hold is another, or a harder lean or less weight on the toes.
func (x tooLong) asMuch(than tooLong) bool {
	return x.exercise == than.exercise && x.step == than.step && x.rig == than.rig && x.ahead >= than.ahead && x.scale <= than.scale
}

// most is what the next card may ask for, s.
func (x tooLong) most() int { return max(deloadLeast, int(x.longest)) }

// asks reports whether work asks as much as this hold.
func (x tooLong) asks(w work) bool {
	return !w.none() && tooLong{exercise: w.exercise(), step: w.step(), rig: ladder.RigName(w.aid.Rig), ahead: w.aid.Ahead, scale: w.aid.Scale}.asMuch(x)
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
