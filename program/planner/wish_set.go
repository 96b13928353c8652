package planner

import (
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// # A week set by hand
//
// A coach can set the main work of a week: the step, what helps, seconds and sets; what is
// not said stays as it is planned. Such a week shows no gate and opens with no check hold,
// its doses are not varied, and neither the weekly seconds nor the effort bind it, but for
// those whose health asks for that. The weeks after are planned from what the rules would
// have allowed it.

// setFor is the wish that sets a week, −1 where there is none.
func (sn *season) setFor(i int) int {
	for _, at := range sn.wishesOf(program.WishSet) {
		if sn.monday(&sn.hand.wishes[at]) == sn.weeks[i].start {
			return at
		}
	}
	return -1
}

// monday is the day that the week of a wish begins: weeks are counted from the block that
// the assessment begins, so that none is meant that a later block has as well.
func (c *client) monday(w *program.Wish) program.Date {
	return blockStart(c.athlete) + program.Date(7*(w.Week-1))
}

// byHand puts what the coach set for a week in place of what was planned, and keeps main
// sets to the most that the coach wants.
func (ds *doses) byHand(i, lastBuild int, v *volume) {
	l := &ds.loads[i]
	l.hand = false
	ds.capSets(l)
	at := ds.setFor(i)
	if at < 0 {
		return
	}
	now, why := ds.setLoad(i, &ds.hand.wishes[at])
	allowed := v.next(i, now.main)
	if len(why) == 0 {
		why = ds.spares(i, &now, l, allowed)
	}
	if ds.hand.weekly[at] = why; len(why) > 0 {
		return
	}
	ds.hand.rules[at] = ds.goesAgainst(i, &now, l, lastBuild, allowed)
	now.hand = true
	*l = now
}

// goesAgainst are the rules of training that a week set by hand breaks.
func (ds *doses) goesAgainst(i int, now, planned *load, lastBuild, allowed int) (rules []program.Note) {
	w := &now.main
	if most := ds.limits.mostEffortIn(i); w.max > 0 && w.hold > held(most, w.max) {
		rules = append(rules, note(noteWishEffort, shareOf("share", float64(10*w.hold)/float64(w.max)), shareOf("most", most)))
	}
	if counted := now.halfSeconds(); ds.weeks[i].kind == program.WeekBuild && counted > allowed {
		rules = append(rules, note(noteWishSeconds, lasting("counted", float64(counted)/2), lasting("most", float64(allowed)/2)))
	}
	if ds.weeks[i].kind != program.WeekBuild && total(now.sets) > total(planned.sets) {
		rules = append(rules, note(noteWishEasyWeek))
	}
	if before := ds.before(planned, lastBuild); w.rung != nil && before.rung != nil && w.rung.ID == before.rung.ID && w.aid.Help > before.aid.Help {
		rules = append(rules, note(noteWishMoreHelp))
	}
	return rules
}

// setLoad is a week's work as it is set, or why that cannot be.
func (ds *doses) setLoad(i int, w *program.Wish) (load, []program.Note) {
	planned := &ds.loads[i]
	main, why := ds.setMain(i, w, planned.main)
	if len(why) > 0 {
		return load{}, why
	}
	now := *planned
	now.main = main
	now.sets = slices.Clone(planned.sets)
	if main.exercise() != planned.main.called() {
		now.second, now.heavy = ds.second(main, i), work{}
	}
	for j, part := range ds.weeks[i].parts() {
		s := &now.sets[j]
		switch {
		case part == partLight:
		case w.Sets > 0:
			s.main = w.Sets
		case s.main == 0:
			s.main = mainSetsLeast
		}
		if now.heavy.none() {
			s.heavy = 0
		}
		if now.second.none() {
			s.second = 0
		}
	}
	return now, nil
}

// setMain is the main work that is set.
func (ds *doses) setMain(i int, w *program.Wish, planned work) (work, []program.Note) {
	refuse := func(code string) (work, []program.Note) { return work{}, []program.Note{note(code)} }
	switch {
	case len(ds.weeks[i].straight) == 0:
		return refuse(noteWishAway)
	case len(ds.open) > 0:
		return refuse(noteWishEntry)
	case !ds.limits.hands:
		return refuse(noteWishHands)
	case w.Ahead > 0:
		return ds.setLean(i, w)
	case planned.none() && w.Step == "":
		return refuse(noteWishNoMain)
	}
	now := planned
	if w.Step != "" {
		at := slices.IndexFunc(ds.body.Steps, func(r ladder.Rung) bool { return r.ID == w.Step })
		if at < 0 {
			return refuse(noteWishNoStep)
		}
		now = work{rung: &ds.body.Steps[at], aid: ds.body.Steps[at].Free()}
	}
	if w.Rig != nil || w.Step != "" && planned.rung != now.rung {
		if now.rung == nil || now.floor != nil {
			return refuse(noteWishFloor)
		}
		aid, ok := ds.setAid(now.rung, w, i)
		if !ok {
			return refuse(noteWishRig)
		}
		now = work{rung: now.rung, aid: aid}
	}
	return ds.setHold(now, w, planned, i)
}

// setHold gives work that is set its seconds: those that are said, else those planned, as
// far as the effort of the week goes.
func (ds *doses) setHold(now work, w *program.Wish, planned work, i int) (work, []program.Note) {
	if e, ok := ds.lib.Exercise(now.exercise()); ok {
		if why := ds.cannot(e); len(why) > 0 {
			return work{}, why
		}
	}
	now.max = ds.look.maxHold(now.aid, i)
	now.share = ds.look.shareHeld(now.max)
	switch fits := held(ds.limits.effortIn(i), now.max); {
	case w.Hold > 0:
		now.hold = w.Hold
	case planned.hold > 0:
		now.hold = max(deloadLeast, min(planned.hold, fits))
	default:
		now.hold = max(deloadLeast, min(now.most(), fits))
	}
	now.gate, now.short = false, now.hold < mainLeast
	return now, nil
}

// setLean is a lean as far ahead as is set.
func (ds *doses) setLean(i int, w *program.Wish) (work, []program.Note) {
	floor := ds.floorRung(program.RungLean)
	if n := len(ds.leans); floor == nil || n == 0 || w.Ahead > ds.leans[n-1].Ahead+ladder.LeanStep/2 {
		return work{}, []program.Note{note(noteWishNoStep)}
	}
	return ds.setHold(ds.leanAt(floor, ds.body.LeanOf(w.Ahead), i), w, work{}, i)
}

// setAid is what helps: the rig that is named, or without one the least that still lets
// the step be held for as long as is asked. Where no strap is named, it is the one with
// the least help that does so, else with the most.
func (ds *doses) setAid(r *ladder.Rung, w *program.Wish, i int) (aid ladder.Aid, ok bool) {
	for _, o := range r.Aids() {
		rig := w.Rig
		if !o.HangsIn(ds.weeks[i].start) || rig != nil && !(slices.Equal(rig.Bands, o.Rig.Bands) && rig.Pad == o.Rig.Pad && rig.Block == o.Rig.Block &&
			(rig.Drop == program.AnyDrop || rig.Drop == o.Rig.Drop)) {
			continue
		}
		aid, ok = o, true
		if longest := held(ds.limits.effortIn(i), ds.look.maxHold(o, i)); longest >= max(w.Hold, deloadLeast) {
			break
		}
	}
	return aid, ok
}

// capSets keeps a day's main sets to the most that the coach wants, but for a gate, which
// has its own.
func (ds *doses) capSets(l *load) {
	for _, i := range ds.wishesOf(program.WishRule) {
		w := &ds.hand.wishes[i]
		if w.Rule != ruleMainSets || l.main.gate {
			continue
		}
		for j := range l.sets {
			l.sets[j].main = min(l.sets[j].main, w.Number)
		}
	}
}

// binds reports whether the weekly seconds bind a week: not one that is set by hand, but
// for those whose joints or age ask for it.
func (ds *doses) binds(i int) bool { return !ds.loads[i].hand || len(ds.limits.factors) > 0 }

// called is the exercise of work; empty of none.
func (w work) called() string {
	if w.none() {
		return ""
	}
	return w.exercise()
}

// mainOf is a week's main work as its cards have it, and whether it is of the coach's
// hand: set, or what can be done on the road.
func (lo *layout) mainOf(i int) (main work, byCoach bool) {
	if away, ok := lo.awayMain(i); ok {
		return away, true
	}
	return lo.loads[i].main, lo.loads[i].hand
}

// markByHand marks the main work of a week that the coach has set.
func (lo *layout) markByHand(w *program.Week) {
	if !lo.loads[w.Number-1].hand {
		return
	}
	for i := range w.Sessions {
		for j := range w.Sessions[i].Items {
			if item := &w.Sessions[i].Items[j]; isMain(item) {
				item.ByCoach = true
			}
		}
	}
}

// passOver takes the steps that the coach avoids out of the way to the goal.
func (c *client) passOver() {
	c.body.Steps = slices.DeleteFunc(c.body.Steps, func(r ladder.Rung) bool {
		return r.ID != c.athlete.Goal.Step && c.avoids(r.Exercise)
	})
}
