package planner

import (
	"math"
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
	weeks     []program.Week
	forecasts []program.Forecast
	wall      bool // which hangs, whatever was known then: no day is held to its own there
	fallen    bool
}

// alike has the days of each week take the parts that they have in another plan, so that
// a day of main work there is one here, and notes how long that work is predicted to last
// here: what would last shorter is heavier, and no choice.
func (p *plan) alike() {
	p.least = make([]int, len(p.weeks))
	for i := p.past.over(); i < len(p.weeks); i++ {
		w := &p.weeks[i]
		for _, plan := range p.gentlerThan {
			other := weekAt(plan.weeks, w.start)
			if other == nil || other.Kind != w.kind || plan.wall {
				continue
			}
			if was := recalled(other); slices.Equal(was.straight, w.straight) {
				w.fresh, w.light = was.fresh, was.light
			}
			if than := p.loadOf(other); !than.main.none() {
				p.least[i] = max(p.least[i], p.look.maxHold(than.main.option, i))
			}
		}
	}
}

// bounds are what a week in the making is held to: other plans' weeks, and the days of
// those that were made of the same news.
type bounds struct {
	days []*program.Week
	wall []armWork
}

// holdTo bounds a week's straight-arm work by that of other plans in the same week, and
// has its days bounded by theirs.
func (p *plan) holdTo(i int, l *load) {
	w := &p.weeks[i]
	p.bounds = bounds{}
	for _, plan := range p.gentlerThan {
		other := weekAt(plan.weeks, w.start)
		if other == nil || other.Kind != w.kind || l.main.none() {
			continue
		}
		than := p.loadOf(other)
		if plan.wall && than.main.none() || plan.fallen && !p.fallen(&than.main, i) {
			continue // bands or steps that are gone, or no news
		}
		p.boundWork(i, l, &than)
		if plan.wall {
			p.bounds.wall = append(p.bounds.wall, p.hardestDay(other, i))
		} else {
			p.bounds.days = append(p.bounds.days, other)
		}
	}
}

// fallen reports whether printed work would last shorter now than was reckoned, at a
// step whose gate is not passed yet.
func (p *plan) fallen(printed *work, week int) bool {
	passed := printed.rung != nil && printed.rung.load <= p.past.passed
	return !printed.none() && !passed && p.again(*printed, week).max < printed.max
}

// boundWork bounds what is held, with what help and for how long.
func (p *plan) boundWork(week int, l, than *load) {
	if than.ahead.none() {
		l.ahead = work{}
	}
	if second := &l.second; !second.none() && !than.second.none() && second.exercise() == than.second.exercise() {
		second.hold = min(second.hold, than.second.hold)
	}
	if than.main.none() || l.main.gate {
		return
	}
	other := p.again(than.main, week)
	if l.main.max < other.max {
		if own := p.noHeavier(l.main, other.max, week); !own.none() && p.index(other.rung) > p.index(l.main.rung) {
			l.main = own // a step that is new here is no easier for being lighter
		} else if !p.limits.elbowSore || other.share <= elbowLoad {
			l.main = other
		}
	}
	if !easier(l.main.max, other.max) && l.main.hold > than.main.hold {
		l.main.hold, l.main.short = than.main.hold, than.main.hold < mainLeast
	}
}

// noHeavier is the work of a step, or of one below it, with the least help that has it
// last as long as other work at the least, in tenths of a second; none where no rig does.
func (p *plan) noHeavier(w work, max, week int) work {
	for i := p.index(w.rung); i >= 0 && w.floor == nil; i-- {
		r := &p.body.ladder[i]
		var best work
		for _, o := range r.rigs() {
			if at := p.at(r, o, week); at.hold > 0 && at.max >= max && (best.none() || o.help < best.option.help) {
				best = at
			}
		}
		if !best.none() {
			return best
		}
	}
	return work{}
}

// easierBy is how much longer, in per cent, what is held must be predicted to last to
// count as easier work: some two per cent of load. Sets and seconds are then its own.
const easierBy = 110

func easier(max, than int) bool { return 100*max > easierBy*than }

// armWork is what a day asks of straight arms.
type armWork struct {
	max     int // tenths of a second, predicted here for the heaviest hold
	sets    int
	counted int // of them those that are tests or weigh in the week's seconds
	items   []program.Prescription
}

func (p *plan) armWorkOf(items []program.Prescription, week int) armWork {
	a := armWork{max: math.MaxInt32}
	for i := range items {
		if isArm(&items[i]) {
			a.items = append(a.items, items[i])
			a.max = min(a.max, p.lasts(&items[i], week))
			a.sets += items[i].Sets
			if weighs(&items[i]) {
				a.counted += items[i].Sets
			}
		}
	}
	return a
}

func weighs(item *program.Prescription) bool {
	return item.Role == program.RoleTest || counted(*item) > 0
}

// lasts is how long an item is predicted to last at the most, tenths of a second.
func (p *plan) lasts(item *program.Prescription, week int) int {
	return p.look.maxHold(p.workOf(item).option, week)
}

// bound holds a day's straight-arm work to what other plans ask of the day: nothing
// heavier, and unless all of it is lighter, no more sets and no longer holds.
func (p *plan) bound(d day, groups []group) []group {
	for _, w := range p.bounds.days {
		if s := sessionOn(w, d.date); s != nil {
			than := p.armWorkOf(s.Items, d.week)
			if groups = p.boundTo(than, groups, d.week); d.test && !tests(groups) {
				groups = append([]group{{"role.test", p.testedThere(than.items, d)}}, groups...)
			}
		}
	}
	for _, most := range p.bounds.wall {
		if d.test {
			break // which shows where the client is now
		}
		groups = p.boundTo(most, groups, d.week)
	}
	return groups
}

// tests reports whether a day's work tests straight arms.
func tests(groups []group) bool {
	return slices.ContainsFunc(groups, func(g group) bool {
		return slices.ContainsFunc(g.items, func(i program.Prescription) bool { return i.Role == program.RoleTest && isArm(&i) && !i.Try })
	})
}

// testedThere is what another plan tests, at the hold that is predicted here.
func (p *plan) testedThere(items []program.Prescription, d day) []program.Prescription {
	var out []program.Prescription
	for i := range items {
		if items[i].Role != program.RoleTest || items[i].Try || len(out) > 0 && d.oneTest {
			continue
		}
		w := p.again(p.workOf(&items[i]), d.week)
		item := p.hold(w, program.RoleTest, 1, testRest)
		if item.Max, item.Hold = p.limits.maxTests, 0; !item.Max {
			item.Check, item.Hold = true, max(deloadLeast, min(held(gentleEffort, w.max), mainMost))
		}
		out = append(out, item)
	}
	return out
}

// hardestDay is the most that any day of a printed week asks, of each kind.
func (p *plan) hardestDay(w *program.Week, week int) armWork {
	most := armWork{max: math.MaxInt32}
	for i := range w.Sessions {
		day := p.armWorkOf(w.Sessions[i].Items, week)
		most.max, most.sets, most.counted = min(most.max, day.max), max(most.sets, day.sets), max(most.counted, day.counted)
		most.items = append(most.items, day.items...)
	}
	return most
}

func (p *plan) boundTo(than armWork, groups []group, week int) []group {
	var out []group
	mine := armWork{max: math.MaxInt32}
	for _, g := range groups {
		g.items = slices.DeleteFunc(slices.Clone(g.items), func(item program.Prescription) bool {
			return isArm(&item) && (p.lasts(&item, week) < than.max || item.Try && !slices.ContainsFunc(than.items, isTry))
		})
		if len(g.items) > 0 {
			of := p.armWorkOf(g.items, week)
			mine.max, mine.sets, mine.counted = min(mine.max, of.max), mine.sets+of.sets, mine.counted+of.counted
			out = append(out, g)
		}
	}
	if easier(mine.max, than.max) {
		return out
	}
	over, all := mine.counted-than.counted, mine.sets-than.sets
	for i := len(out) - 1; i >= 0; i-- {
		out[i].items = trim(out[i].items, than.items, &over, &all)
	}
	return slices.DeleteFunc(out, func(g group) bool { return len(g.items) == 0 })
}

func isTry(item program.Prescription) bool { return item.Try }

// trim takes sets that are over from straight-arm items, those that weigh and all, and
// seconds that are over those of the same work.
func trim(items, than []program.Prescription, over, all *int) []program.Prescription {
	for i := len(items) - 1; i >= 0; i-- {
		item := &items[i]
		if !isArm(item) || item.Try { // of a try there are three, or none
			continue
		}
		for item.Sets > 0 && (*over > 0 && weighs(item) || *all > max(0, *over)) {
			if item.Sets--; weighs(item) {
				*over--
			}
			*all--
		}
		if longest := longestOf(item, than); longest > 0 && item.Hold > longest {
			if item.Hold = longest; item.Role == program.RoleSecond && longest < secondLeast {
				item.Sets = 0 // the lighter work is held long, or it is none
			}
		}
	}
	return slices.DeleteFunc(items, func(item program.Prescription) bool { return item.Sets == 0 })
}

// longestOf is the longest hold of the same work among others; 0 where there is none, or
// one to its end.
func longestOf(item *program.Prescription, than []program.Prescription) int {
	longest := 0
	for i := range than {
		t := &than[i]
		if t.Exercise != item.Exercise || t.Ahead != item.Ahead || t.Scale != item.Scale || rigName(t.Rig) != rigName(item.Rig) {
			continue
		}
		if t.Hold == 0 {
			return 0
		}
		longest = max(longest, t.Hold)
	}
	return longest
}

// noSooner holds dates and chances to those of other plans.
func (p *plan) noSooner(out []program.Forecast) {
	for _, plan := range p.gentlerThan {
		for i := range min(len(out), len(plan.forecasts)) {
			f, other := &out[i], &plan.forecasts[i]
			if other.Held {
				continue
			}
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
