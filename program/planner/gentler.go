package planner

import (
	"slices"

	"gatepost/program"
)

// # Bad news never makes a plan harder
//
// A sore joint, pain, weeks off, or an estimate that came down change the step, the rig
// and the rhythm of a plan, and what comes out of all that could ask more of some day
// than the plan without the news. So that plan is made as well (asif.go), and every day is
// held to the same day there (bound.go): nothing heavier; at the same load no more seconds
// and no more sets; no straight-arm work where there was none; and no date or chance
// better. Of pain, missed weeks and bad sets the last ones are left out one by one, as
// they came; pain for which a joint rests is also taken as less. By name, what may still be
// more:
//
//   - easier work may be held longer and in more sets: the share of the maximum stays
//     what it was, which is how work is eased;
//   - a week that was easy in the other plan and is no longer (the rhythm starts anew
//     after weeks off), or a gate week there and none here, is a week like any other;
//   - and less: where nothing of the week fits under the other plan, a sore joint has a
//     week without main work;
//   - beside a set that the other plan has held to its end, the same work may be held
//     longer; and a check hold may be to its end where the other plan asks for none;
//   - a try with the toes on the floor, which everybody on the floor may have;
//   - the check of what an entry asks for, which comes after each easy week, whenever that
//     is, and stops with two seconds left;
//   - sore wrists leave steps of a press out, and are held to what sound ones do at theirs: no
//     day is heavier, though the step has another name;
//   - a day on which the other plan has no session, since the days of training changed;
//   - a test that was shorter, and a set that was worse than another that was bad already,
//     lower the estimate and are held to the plan on the wall alone;
//   - work at a goal that has come down below the step that hangs, which holds nothing then.

// otherPlan is one without some bad news, its dates alone where it has no weeks; fallen
// holds only where what it prints is predicted to last shorter now than it was then.
type otherPlan struct {
	weeks     []program.Week
	forecasts []program.Forecast
	wall      bool // which hangs, whatever was known then: no day is held to its own there
	fallen    bool
}

// alike has the days of each week take the parts that they have in another plan, so that
// a day of main work there is one here, and notes that work and the heavy work: what asks
// more is no choice.
func (ds *doses) alike() {
	ds.least, ds.leastHeavy = make([][]work, len(ds.weeks)), make([][]work, len(ds.weeks))
	for i := ds.past.over(); i < len(ds.weeks); i++ {
		w := &ds.weeks[i]
		ds.sameDays(i)
		for _, plan := range ds.gentlerThan {
			other := weekAt(plan.weeks, w.start)
			if other == nil || other.Kind != w.kind || plan.wall {
				continue
			}
			if was := recalled(other); slices.Equal(was.straight, w.straight) {
				w.fresh, w.light = was.fresh, was.light
			}
			than := ds.loadOf(other)
			ds.addLeast(&ds.least[i], than.main, i)
			ds.addLeast(&ds.leastHeavy[i], than.heavy, i)
		}
	}
}

// addLeast notes other work, by how long it is predicted to last here.
func (h *holds) addLeast(all *[]work, than work, week int) {
	if !than.none() {
		than.max = h.look.maxHold(than.aid, week)
		*all = append(*all, than)
	}
}

// sameDays moves a build week's straight-arm days to those that all other plans have,
// where its own would leave it fewer: what one of them rests on is taken away.
func (h *holds) sameDays(i int) {
	w := &h.weeks[i]
	common, own := slices.Clone(w.days), slices.Clone(w.straight)
	for _, plan := range h.gentlerThan {
		if other := weekAt(plan.weeks, w.start); other != nil && other.Kind == program.WeekBuild && !plan.wall {
			rests := func(d program.Date) bool { return !slices.Contains(recalled(other).straight, d) }
			common, own = slices.DeleteFunc(common, rests), slices.DeleteFunc(own, rests)
		}
	}
	if w.kind != program.WeekBuild || len(common) <= len(own) || len(common) > len(w.straight) || !h.apart(i, common) {
		return
	}
	w.straight, w.fresh = common, common[0]
	w.light = slices.DeleteFunc(slices.Clone(common), func(d program.Date) bool { return !slices.Contains(w.hard, d) })
}

// apart reports whether days lie 48 h from each other and from the straight-arm days of
// the weeks before and after.
func (sn *season) apart(i int, days []program.Date) bool {
	all := slices.Clone(days)
	for _, near := range []int{i - 1, i + 1} {
		if near >= 0 && near < len(sn.weeks) {
			all = append(all, sn.weeks[near].straight...)
		}
	}
	slices.Sort(all)
	for j := 1; j < len(all); j++ {
		if all[j]-all[j-1] < restBefore {
			return false
		}
	}
	return true
}

// asksMore reports whether work would last shorter than the main work of another plan in
// a week, or holds the same step with less help, or with less weight on the toes: of what
// lasts as long as is reckoned at the most, that tells.
func (h *holds) asksMore(w work, week int) bool { return w.asksMoreThanOneOf(h.least, week) }

func (w work) asksMoreThanOneOf(least [][]work, week int) bool {
	return week < len(least) && slices.ContainsFunc(least[week], w.asksMoreThan)
}

func (w work) asksMoreThan(than work) bool {
	sameStep := w.step() != "" && w.step() == than.step() && (w.aid.Scale > 0) == (than.aid.Scale > 0)
	lessHelp := w.aid.Help < than.aid.Help || w.aid.Scale < than.aid.Scale-1e-6
	return w.max < than.max || sameStep && lessHelp
}

// holdTo bounds a week's straight-arm work by that of other plans in the same week, and
// has its days bounded by theirs.
func (ds *doses) holdTo(i int, l *load) {
	w := &ds.weeks[i]
	ds.bounds = bounds{}
	for _, plan := range ds.gentlerThan {
		other := weekAt(plan.weeks, w.start)
		if other == nil || other.Kind != w.kind || other.Gate && !l.main.gate {
			continue
		}
		if l.main.none() { // tries are all there may be
			if !plan.wall {
				ds.bounds.days = append(ds.bounds.days, other)
			}
			continue
		}
		than := ds.loadOf(other)
		if plan.wall && !ds.goesOn(than.main) || plan.fallen && !ds.fallen(&than.main, i) {
			continue // bands or steps that are gone, or no news
		}
		ds.boundWork(i, l, &than)
		if plan.wall {
			ds.bounds.wall = append(ds.bounds.wall, ds.hardestDay(other, i))
		} else {
			ds.bounds.days = append(ds.bounds.days, other)
		}
	}
}

// stayEased keeps sore elbows at work that was once eased to another plan's: they get no
// step up and no less help, unless that work has become too heavy for them.
func (ds *doses) stayEased(i, lastBuild int) {
	if !ds.limits.elbowSore || ds.weeks[i].kind != program.WeekBuild || lastBuild < 0 || ds.loads[lastBuild].main.none() || ds.loads[i].main.none() {
		return
	}
	now, before := &ds.loads[i].main, ds.again(ds.loads[lastBuild].main, i)
	if onFloor := before.rung == nil && now.rung != nil; before.share > elbowLoad || !onFloor && !now.asksMoreThan(before) {
		return
	}
	*now = before
	for j := i + 1; j < len(ds.weeks) && ds.weeks[j].kind != program.WeekBuild; j++ {
		ds.main[j] = before
	}
}

// fallen reports whether printed work would last shorter now than was reckoned, at a
// step whose gate is not passed yet; not where a build week's is still too easy to train
// anything.
func (h *holds) fallen(printed *work, week int) bool {
	if printed.none() || printed.rung != nil && printed.rung.Load <= h.past.passed {
		return false
	}
	now := h.again(*printed, week)
	return now.max < printed.max && (h.weeks[week].kind != program.WeekBuild || h.slack(now, week) == 0)
}

// boundWork bounds what is held, with what help and for how long.
func (ds *doses) boundWork(week int, l, than *load) {
	if than.heavy.none() {
		l.heavy = work{}
	}
	if second := &l.second; !second.none() && !than.second.none() && second.exercise() == than.second.exercise() && second.step() == than.second.step() {
		second.hold = min(second.hold, than.second.hold)
	}
	if than.main.none() || l.main.gate {
		return
	}
	other := ds.again(than.main, week)
	if l.main.asksMoreThan(other) {
		if own := ds.noHeavier(l.main, other.max, week); !own.none() && ds.index(other.rung) > ds.index(l.main.rung) {
			l.main = own // a step that is new here is no easier for being lighter
		} else if ds.goesOn(other) && (!ds.limits.elbowSore || other.share <= elbowLoad) && !ds.asksMore(other, week) {
			l.main = other // where no third plan would take it away again
			l.main.short = ds.weeks[week].kind == program.WeekBuild && other.hold < other.least()
		}
	}
	if l.main.aid.Scale > 0 && l.main.hold < mainLeast { // more weight on the toes, as for work of its own
		if own := ds.onScale(week, ds.leastOnScale(week)); !own.none() && !own.asksMoreThan(other) {
			l.main = own
		}
	}
	if !easier(l.main.max, other.max) && l.main.hold > than.main.hold {
		l.main.hold, l.main.short = than.main.hold, than.main.hold < l.main.least()
	}
}

// noHeavier is the work of a step, or of one below it, with the least help that has it
// last as long as other work at the least, in tenths of a second; none where no rig does.
func (h *holds) noHeavier(w work, max, week int) work {
	for i := h.index(w.rung); i >= 0 && w.floor == nil; i-- {
		r := &h.body.Steps[i]
		var best work
		for _, o := range r.Aids() {
			if at := h.at(r, o, week); at.hold > 0 && at.max >= max && (best.none() || o.Help < best.aid.Help) {
				best = at
			}
		}
		if !best.none() {
			return best
		}
	}
	return work{}
}

// noSooner holds dates and chances to those of other plans.
func (h *holds) noSooner(out []program.Forecast) {
	for _, plan := range h.gentlerThan {
		for i := range out {
			f := &out[i]
			at := slices.IndexFunc(plan.forecasts, func(o program.Forecast) bool { return o.Step == f.Step })
			if at < 0 || plan.forecasts[at].Held {
				continue
			}
			other := &plan.forecasts[at]
			f.Early, f.Likely, f.Late = later(f.Early, other.Early), later(f.Likely, other.Likely), later(f.Late, other.Late)
			f.Chance = min(f.Chance, other.Chance)
		}
	}
}

// later is the later of two days, of which zero is never.
func later(a, b program.Date) program.Date {
	if a == 0 || b == 0 {
		return 0
	}
	return max(a, b)
}

// withoutEach are an assessment as if one of its sore joints were fine, for each of them.
func withoutEach(a *program.Assessment) []program.Assessment {
	var out []program.Assessment
	for i, j := range joints {
		if sore(*j.state(&a.Health)) {
			out = append(out, withFine(a, 1<<i))
		}
	}
	return out
}

// withFine is an assessment as if some joints were fine.
func withFine(a *program.Assessment, fine jointSet) program.Assessment {
	well := *a
	for i, j := range joints {
		if fine.has(i) {
			*j.state(&well.Health) = program.JointFine
		}
	}
	return well
}
