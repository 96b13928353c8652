package planner

import (
	"slices"

	"gatepost/program"
)

// # Another place
//
// For some days a client may be where there is other kit, with other minutes and on other
// days. Sessions there are made as any other, of what there is. Main work that cannot be
// done there becomes the hardest that can, of this step or one below it, else a lean; it
// never counts more than the day at home would have, and nothing heavy is done on the road.
// The week after goes on from the last one at home.

// placeOn is where a client is on a day; nil: where they always are. What is asked for the
// client goes before what is asked for the studio.
func placeOn(wishes program.Wishes, d program.Date) *program.Wish {
	for i := len(wishes) - 1; i >= 0; i-- { // the studio's come first
		if w := &wishes[i]; w.Kind == program.WishAt && w.Within(d) {
			return w
		}
	}
	return nil
}

// trainsOn reports whether a day is one of the client's training days.
func trainsOn(a *program.Assessment, d program.Date) bool {
	if at := placeOn(a.Wishes, d); at != nil && len(at.Days) > 0 {
		return slices.Contains(at.Days, d.Weekday())
	}
	return slices.Contains(a.Training.Days, d.Weekday())
}

// minutesOn is how long a session of a day may take.
func (c *client) minutesOn(d program.Date) int {
	if at := placeOn(c.athlete.Wishes, d); at != nil && at.Minutes > 0 {
		return at.Minutes
	}
	for i := len(c.athlete.Wishes) - 1; i >= 0; i-- {
		if w := &c.athlete.Wishes[i]; w.Kind == program.WishRule && w.Rule == ruleMinutes && slices.Contains(w.Days, d.Weekday()) {
			return w.Number
		}
	}
	return c.athlete.Training.Minutes
}

// lengthOn is the time of a day's session in seconds, rests counted.
func (c *client) lengthOn(d program.Date, items []program.Prescription) int {
	return lengthIn(c.minutesOn(d), items)
}

// minutesFor is the same in minutes, rounded up, as cards have it.
func (c *client) minutesFor(d program.Date, items []program.Prescription) int {
	return (c.lengthOn(d, items) + 59) / 60
}

// stayAt has the client be where they are on a day, and gives the way back.
func (c *client) stayAt(d program.Date) (back func()) {
	was := c.here
	c.here = placeOn(c.athlete.Wishes, d)
	return func() { c.here = was }
}

// hasHere reports whether a piece of kit is where the client is; bands come along only
// where they are named.
func (c *client) hasHere(kit string) bool {
	return c.here == nil || c.here.AllKit || slices.Contains(c.here.Kit, kit)
}

// canHold reports whether work can be done where the client is: its exercise, with what
// helps. Something soft for under the head there is everywhere.
func (c *client) canHold(w *work) bool {
	e, ok := c.lib.Exercise(w.exercise())
	if !ok || !c.can(e) {
		return false
	}
	rig := &w.aid.Rig
	return (len(rig.Bands) == 0 || c.hasHere(bandsKit)) && (rig.Block == 0 || c.hasHere("blocks") || c.hasHere("box"))
}

// hasHereFor reports whether an item can be done where the client is, if that is not where
// they always are.
func (c *client) hasHereFor(item *program.Prescription) bool {
	e, ok := c.lib.Exercise(item.Exercise)
	return c.here == nil || ok && c.can(e) && (item.Rig.Free() || c.hasHere(bandsKit))
}

// loadOnDay is the straight-arm work of a day, as far as it can be done where the client is.
func (lo *layout) loadOnDay(i int, date program.Date) *load {
	l := &lo.loads[i]
	if at := placeOn(lo.athlete.Wishes, date); at == nil || at.AllKit || l.main.none() {
		return l
	}
	defer lo.stayAt(date)()
	away := *l
	if !lo.canHold(&away.main) {
		away.main = lo.roadMain(i)
		away.second, away.leans = work{}, work{}
	}
	for _, w := range []*work{&away.heavy, &away.second, &away.leans} {
		if !w.none() && !lo.canHold(w) {
			*w = work{}
		}
	}
	if away.second.none() && !away.main.none() {
		away.second = lo.lighterHere(l, away.main, i)
	}
	return &away
}

// lighterHere is the lighter work beside main work on the road, no longer than at home.
func (lo *layout) lighterHere(home *load, main work, i int) work {
	w := lo.second(main, i)
	if w.none() || home.second.none() || !lo.canHold(&w) {
		return work{}
	}
	w.hold = min(w.hold, max(secondLeast, home.second.hold))
	return w
}

// roadMain is the hardest main work of a week that can be done where the client is; sore
// elbows rest there.
func (lo *layout) roadMain(i int) work {
	home := &lo.loads[i].main
	if lo.limits.elbowSore { // who keeps to one help for the whole block
		return work{}
	}
	for _, least := range []int{mainLeast, shortLeast} {
		for r := lo.index(home.rung); r >= 0 && home.floor == nil; r-- {
			for _, o := range lo.body.Steps[r].Aids() {
				if w := lo.at(&lo.body.Steps[r], o, i); w.hold >= least && lo.canHold(&w) {
					return lo.easedAs(w, i)
				}
			}
		}
	}
	if w := lo.onFloor(i); !w.none() && lo.canHold(&w) {
		return lo.easedAs(w, i)
	}
	return work{}
}

// easedAs is work on the road in an easy week, as short as there.
func (lo *layout) easedAs(w work, i int) work {
	if lo.weeks[i].kind != program.WeekBuild {
		w = eased(w)
	}
	return w
}

// setsOnDay are the sets of a day's work: where it is other work than at home, no more
// than count as much there.
func (lo *layout) setsOnDay(i, day int, here *load) daySets {
	home := &lo.loads[i]
	s := home.sets[day]
	if here == home {
		return s
	}
	if here.main.none() {
		s.main = 0
	}
	if here.heavy.none() {
		s.heavy = 0
	}
	if here.second.none() {
		s.second = 0
	}
	if here.leans.none() {
		s.leans = 0
	}
	most := home.half(home.sets[day])
	for _, take := range []func() bool{func() bool { return drop(&s.second, 0) }, func() bool { return drop(&s.main, 1) }} {
		for here.half(s) > most && take() {
		}
	}
	return s
}

// half is the counted work of one day's sets, in half seconds.
func (l *load) half(s daySets) int {
	one := *l
	one.sets = []daySets{s}
	return one.halfSeconds()
}

// awayMain is a week's main work where all of it is done on the road; not ok where some is
// done at home.
func (lo *layout) awayMain(i int) (main work, ok bool) {
	w := &lo.weeks[i]
	for j, part := range w.parts() {
		if part == partLight {
			continue
		}
		here := lo.loadOnDay(i, w.straight[j])
		if here == &lo.loads[i] || here.main.called() == lo.loads[i].main.called() && here.main.aid.Help == lo.loads[i].main.aid.Help {
			return work{}, false
		}
		main, ok = here.main, true
	}
	return main, ok
}

// onTheRoad reports whether some of a week's main work is not what was planned for it, for
// want of what there is at home: what comes after goes on from the week before.
func (lo *layout) onTheRoad(i int) bool {
	for _, d := range lo.weeks[i].straight {
		if here := lo.loadOnDay(i, d); here.main.called() != lo.loads[i].main.called() {
			return true
		}
	}
	return false
}

// restsOnTheRoad reports whether no training day of a week has what the goal is held with:
// then the week is an easy one, as one that is mostly away.
func (sn *season) restsOnTheRoad(w *week) bool {
	if len(w.days) == 0 || placeOn(sn.athlete.Wishes, w.days[0]) == nil {
		return false
	}
	goal, ok := sn.road.Step(sn.athlete.Goal.Step)
	if !ok {
		return false
	}
	e, ok := sn.lib.Exercise(goal.Exercise)
	return ok && !slices.ContainsFunc(w.days, func(d program.Date) bool {
		back := sn.stayAt(d)
		can := sn.here == nil || sn.can(e)
		back()
		return can
	})
}

// shownHere reports whether a step's gate can be shown on each straight-arm day of a week,
// wherever the client is then.
func (rt *route) shownHere(rung, week int) bool {
	free := work{rung: &rt.body.Steps[rung], aid: rt.body.Steps[rung].Free()}
	for _, d := range rt.weeks[week].straight {
		back := rt.stayAt(d)
		ok := rt.here == nil || rt.canHold(&free)
		if back(); !ok {
			return false
		}
	}
	return true
}
