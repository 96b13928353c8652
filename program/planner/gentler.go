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

// closeLoad is how much lighter work must be to count as easier.
const closeLoad = 0.02

// holdTo bounds a week's straight-arm work by what other plans ask in the same week.
func (p *plan) holdTo(i int, l *load) {
	w := &p.weeks[i]
	for _, weeks := range p.gentlerThan {
		if other := weekAt(weeks, w.start); other != nil && other.Kind == w.kind && !l.main.none() {
			than := p.loadOf(other)
			p.boundWork(i, l, &than)
			l.boundSets(&than, w.straight, recalled(other).straight)
		}
	}
}

// boundWork bounds what is held, with what help and for how long.
func (p *plan) boundWork(week int, l, than *load) {
	if than.ahead.none() {
		l.ahead = work{}
	}
	if than.main.none() || l.main.gate {
		return
	}
	if l.main.option.load > than.main.option.load*(1+1e-6) {
		l.main = p.again(than.main, week)
	}
	if !l.easierThan(than) {
		l.main.hold = min(l.main.hold, than.main.hold)
	}
	if second := &l.second; !second.none() && !than.second.none() && second.exercise() == than.second.exercise() {
		second.hold = min(second.hold, than.second.hold)
	}
}

// easierThan reports whether the main work is lighter than that of another plan.
func (l *load) easierThan(than *load) bool {
	return l.main.option.load < (1-closeLoad)*than.main.option.load
}

// boundSets bounds the sets of each day by those of the same day; a day on which the
// other plan left the arms alone stays without.
func (l *load) boundSets(than *load, days, thanDays []program.Date) {
	for j, day := range days {
		var t daySets
		at := slices.Index(thanDays, day)
		if at >= 0 {
			t = than.sets[at]
		}
		s := &l.sets[j]
		s.ahead = min(s.ahead, t.ahead)
		if at < 0 || !l.easierThan(than) {
			s.main, s.second, s.leans = min(s.main, t.main), min(s.second, t.second), min(s.leans, t.leans)
		}
	}
}

// withoutEach are copies of an assessment in which one sore joint is fine.
func withoutEach(a *program.Assessment) []program.Assessment {
	var out []program.Assessment
	for _, j := range joints {
		if sore(*j.state(&a.Health)) {
			well := *a
			*j.state(&well.Health) = program.JointFine
			out = append(out, well)
		}
	}
	return out
}
