package planner

import (
	"cmp"
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// vary takes a little off the straight-arm work that would be the same for a fourth
// build week running, because joints, volume or the longest hold keep it there: two
// seconds where that leaves the effort, else a set, else the seconds all the same; the week
// after goes back to where it was. A gate is what it is.
func (ds *doses) vary(i int, now *program.Week) (changed bool) {
	if now.Kind != program.WeekBuild {
		return false
	}
	l := &ds.loads[i]
	for _, v := range []struct {
		role  program.Role
		work  *work
		least int
		sets  func(*daySets) *int
	}{
		{program.RoleMain, &l.main, leastMain(l.main), func(s *daySets) *int { return &s.main }},
		{program.RoleAhead, &l.heavy, heavyLeast, func(s *daySets) *int { return &s.heavy }},
		{program.RoleSecond, &l.second, secondLeast - varySeconds, func(s *daySets) *int { return &s.second }},
		{program.RoleSecond, &l.leans, secondLeast - varySeconds, func(s *daySets) *int { return &s.leans }},
	} {
		if v.work.none() || v.work.gate {
			continue
		}
		exercise := ds.printedAs(*v.work, v.role, i)
		doses := dosesOf(now, v.role, exercise)
		if !stands(ds.behind, doses, v.role, exercise) {
			continue
		}
		changed = true
		less := *v.work
		for _, d := range doses { // another plan may have made it shorter than it was meant
			less.hold = min(less.hold, d.hold)
		}
		less.hold = shorter(less)
		long := less.hold >= v.least
		if long && (v.role != program.RoleMain || ds.slack(less, i) == 0) {
			v.work.hold = less.hold
			continue
		}
		fewer := false
		for j := range l.sets {
			fewer = drop(v.sets(&l.sets[j]), 1) || fewer
		}
		if long && !fewer {
			v.work.hold = less.hold
		}
	}
	return changed
}

const varySeconds = 2

// shorter are two seconds less of work that is held, and one repetition of what is repeated.
func shorter(w work) int {
	if w.repeats() {
		return w.hold - program.SecondsPerRep
	}
	return w.hold - varySeconds
}

// leastMain is the shortest hold that main work may be made of.
func leastMain(w work) int {
	if w.trainable() {
		return w.least()
	}
	return shortLeast
}

// stands says that an exercise has the same doses as in the last three build weeks
// that held it.
func stands(behind []program.Week, want []doseRead, role program.Role, exercise string) bool {
	same := 0
	for i := len(behind) - 1; i >= 0 && len(want) > 0 && same < sameWeeks; i-- {
		if behind[i].Kind != program.WeekBuild {
			continue
		}
		was := dosesOf(&behind[i], role, exercise)
		if len(was) > 0 && !slices.Equal(was, want) {
			return false
		}
		same += min(1, len(was))
	}
	return same == sameWeeks
}

// doseRead is what a client reads of an item's dose.
type doseRead struct {
	sets, hold   int
	ahead, scale float64
	rig          string
}

// dosesOf are the different doses of an exercise in a week.
func dosesOf(w *program.Week, role program.Role, exercise string) []doseRead {
	var out []doseRead
	for i := range w.Sessions {
		for _, it := range w.Sessions[i].Items {
			if it.Role == role && it.Exercise == exercise {
				out = append(out, doseRead{it.Sets, it.Hold, it.Ahead, it.Scale, ladder.RigName(it.Rig)})
			}
		}
	}
	slices.SortFunc(out, func(a, b doseRead) int {
		return cmp.Or(cmp.Compare(a.sets, b.sets), cmp.Compare(a.hold, b.hold), cmp.Compare(a.ahead, b.ahead))
	})
	return slices.Compact(out)
}
