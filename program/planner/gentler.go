package planner

import (
	"slices"

	"gatepost/program"
)

// # Bad news never makes a plan harder
//
// A sore joint, pain, weeks off, or an estimate that came down change the step, the rig
// and the rhythm of a plan, and what comes out of all that could ask more of some day
// than the plan without the news. So such a plan is held to that other one, day by day:
// no more load; at the same load no more seconds and no more sets; no heavy work where
// there was none. By name, what may still be more:
//
//   - an easier step, or more help, may be held longer and in more sets: the share of
//     the maximum stays what it was, which is how work is eased;
//   - a week that was easy in the other plan and is no longer (the rhythm starts anew
//     after weeks off) is a week like any other.

// otherPlan is one without some bad news; fallen holds only where what it prints is
// predicted to last shorter now than it was then.
type otherPlan struct {
	weeks  []program.Week
	fallen bool
}

// easierBy is how much longer, in per cent, what is held must be predicted to last to
// count as easier work: some two per cent of load.
const easierBy = 110

// holdTo bounds a week's straight-arm work by what other plans ask in the same week.
func (p *plan) holdTo(i int, l *load) {
	w := &p.weeks[i]
	for _, plan := range p.gentlerThan {
		if other := weekAt(plan.weeks, w.start); other != nil && other.Kind == w.kind && !l.main.none() {
			than := p.loadOf(other)
			if plan.fallen && !p.fallen(&than.main, i) {
				continue
			}
			easier := p.boundWork(i, l, &than)
			l.boundSets(&than, w.straight, recalled(other).straight, easier)
		}
	}
}

// fallen reports whether printed work would last shorter now than was reckoned, at a
// step whose gate is not passed yet.
func (p *plan) fallen(printed *work, week int) bool {
	passed := printed.rung != nil && printed.rung.load <= p.past.passed
	return !printed.none() && !passed && p.again(*printed, week).max < printed.max
}

// boundWork bounds what is held, with what help and for how long; it reports whether
// the main work is easier than that of the other plan.
func (p *plan) boundWork(week int, l, than *load) (easier bool) {
	if than.ahead.none() {
		l.ahead = work{}
	}
	if second := &l.second; !second.none() && !than.second.none() && second.exercise() == than.second.exercise() {
		second.hold = min(second.hold, than.second.hold)
	}
	if than.main.none() || l.main.gate {
		return false
	}
	other := p.again(than.main, week)
	if other.max > l.main.max && !(p.limits.elbowSore && other.share > elbowLoad) {
		l.main = other
	}
	if 100*l.main.max > easierBy*other.max {
		return true
	}
	if l.main.hold > than.main.hold {
		l.main.hold, l.main.short = than.main.hold, than.main.hold < mainLeast
	}
	return false
}

// boundSets bounds the sets of each day by those of the same day; a day on which the
// other plan left the arms alone stays without.
func (l *load) boundSets(than *load, days, thanDays []program.Date, easier bool) {
	for j, day := range days {
		var t daySets
		at := slices.Index(thanDays, day)
		if at >= 0 {
			t = than.sets[at]
		}
		s := &l.sets[j]
		s.ahead = min(s.ahead, t.ahead)
		if at < 0 || !easier {
			s.main, s.second, s.leans = min(s.main, t.main), min(s.second, t.second), min(s.leans, t.leans)
		}
	}
}

// without is an assessment as if one sore joint, by its place in joints, were fine.
type without struct {
	joint int
	program.Assessment
}

// withoutEach are those of all its sore joints.
func withoutEach(a *program.Assessment) []without {
	var out []without
	for i, j := range joints {
		if sore(*j.state(&a.Health)) {
			well := without{i, *a}
			*j.state(&well.Health) = program.JointFine
			out = append(out, well)
		}
	}
	return out
}

// tooLong is a hold of which every set of the last two weeks stopped short, and the
// longest of them. Whatever the model makes of it: the next card asks for no more there.
type tooLong struct {
	exercise, rig string
	ahead, scale  float64
	longest       float64 // s
}

func (r *reading) tooLong() []tooLong {
	var out []tooLong
	reached := map[tooLong]bool{}
	for _, d := range r.days {
		for i := range d.sets {
			s := &d.sets[i]
			if r.on-d.date >= lately || s.item == nil || !isArm(s.item) || s.Done.Seconds == 0 {
				continue
			}
			at := tooLong{exercise: s.Exercise, rig: rigName(s.Rig), ahead: s.Ahead, scale: s.Scale}
			reached[at] = reached[at] || !s.short()
			if j := slices.IndexFunc(out, at.same); j >= 0 {
				out[j].longest = max(out[j].longest, s.Done.Seconds)
				continue
			}
			at.longest = s.Done.Seconds
			out = append(out, at)
		}
	}
	return slices.DeleteFunc(out, func(x tooLong) bool { x.longest = 0; return reached[x] })
}

func (x tooLong) same(y tooLong) bool {
	x.longest, y.longest = 0, 0
	return x == y
}

// asReached bounds work by what was reached of it lately.
func (p *plan) asReached(w *work) {
	for _, x := range p.past.short {
		if !w.none() && w.exercise() == x.exercise && rigName(w.option.rig) == x.rig && w.ahead >= x.ahead && w.scale <= x.scale {
			w.hold = min(w.hold, max(deloadLeast, int(x.longest)))
			w.short = w.short || w.hold < mainLeast
		}
	}
}
