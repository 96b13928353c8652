package planner

import (
	"slices"

	"gatepost/program"
)

// load is a week's straight-arm work: what, and how many sets on which day.
type load struct {
	main, second, heavy, leans work
	sets                       []daySets // one for each straight-arm day
	hand                       bool      // the main work is set by the coach
}

// daySets is how many sets of each kind a straight-arm day holds.
type daySets struct{ main, second, heavy, leans int }

// part is which of the three kinds of day a straight-arm day is.
type part int

const (
	partHeavy part = iota // ahead and main, in the freshest session
	partLight             // second and easy leans
	partMain              // main
	partBoth              // main and second, of a short week
)

// partOf gives the i-th straight-arm day after the freshest, of n, its part.
func partOf(i, n int) part {
	switch {
	case n == 1:
		return partBoth
	case i == 0:
		return partHeavy
	case n == 2:
		return partBoth
	case i%2 == 1:
		return partLight
	}
	return partMain
}

// parts lists the straight-arm days of a week in the order of the week.
func (w *week) parts() []part {
	n, fresh := len(w.straight), 0
	for i, d := range w.straight {
		if d == w.fresh {
			fresh = i
		}
	}
	out := make([]part, n)
	for i := range out {
		if out[i] = partOf((i-fresh+n)%n, n); slices.Contains(w.light, w.straight[i]) {
			out[i] = partLight
		}
	}
	return out
}

// works fills in what a week trains; how much comes after.
func (ds *doses) works(i int, main work) load {
	l := load{main: main, sets: make([]daySets, len(ds.weeks[i].straight))}
	if main.none() {
		return l
	}
	l.second = ds.second(main, i)
	if l.second.floor == nil {
		l.leans = ds.lean(i, byLighter, easyLoad, secondLeast, ds.leanHold(i))
	}
	l.second = ds.onMark(l.second, i, func(l *load) work { return l.second })
	l.leans = ds.onMark(l.leans, i, func(l *load) work { return l.leans })
	spoken := ds.heldAny() || ds.provisional(i) // heavy is a share of what was shown
	if back, _ := ds.returning(i); ds.limits.heavy && spoken && !back && !main.gate && ds.weeks[i].kind == program.WeekBuild && len(ds.weeks[i].straight) > 1 {
		l.heavy = ds.heavyWork(main, i)
	}
	return l
}

// halfSeconds is the week's counted work.
func (l *load) halfSeconds() int {
	sum, longest := 0, l.main
	longest.hold += l.main.longer()
	for _, s := range l.sets {
		sum += s.main*l.main.halfSeconds() + s.second*l.second.halfSeconds() +
			s.heavy*l.heavy.halfSeconds() + s.leans*l.leans.halfSeconds() +
			min(s.main, 1)*(longest.halfSeconds()-l.main.halfSeconds())
	}
	return sum
}

// build gives a build week its sets: the least of each kind, less where that is
// over the allowed half seconds, then set by set up to them.
// The most main sets rise from week to week of a round between deloads: three,
// four, five, and from the second round on one more to begin with.
func (l *load) build(parts []part, allowed, round, inRound int) {
	least, most := mainSetsLeast, min(mainSetsMost, mainSetsLeast+inRound+min(round, 1))
	if l.main.short {
		least, most = shortSetsLeast, min(shortSetsMost, shortSetsLeast+inRound)
	}
	if l.main.gate {
		least, most = allSets(l.main.rung.Gate), allSets(l.main.rung.Gate)
	}
	for i, part := range parts {
		l.sets[i] = l.leastSets(part, least)
	}
	l.shrink(allowed)
	l.grow(parts, allowed, most)
}

func (l *load) leastSets(part part, main int) daySets {
	var s daySets
	if part != partLight {
		s.main = main
	}
	if part == partLight || part == partBoth {
		if !l.second.none() {
			s.second = secondSetsLeast
		}
	}
	if part == partLight && !l.leans.none() {
		s.leans = leanSets
	}
	if part == partHeavy && !l.heavy.none() {
		s.heavy = heavySetsLeast
	}
	return s
}

// shrink takes work away until the week is within its seconds: leans, the heavy
// work, the lighter work, and at last main sets, of which one a day stays. Before a
// gate loses a set all lighter work goes.
func (l *load) shrink(allowed int) {
	secondLeast := 1
	if l.main.gate {
		secondLeast = 0
	}
	for _, take := range []func(*daySets) bool{
		func(s *daySets) bool { return drop(&s.leans, 0) },
		func(s *daySets) bool { take := s.heavy > 0; s.heavy = 0; return take },
		func(s *daySets) bool { return drop(&s.second, secondLeast) },
		func(s *daySets) bool { return drop(&s.main, 2) },
		func(s *daySets) bool { return drop(&s.second, 0) },
		func(s *daySets) bool { return drop(&s.main, 1) },
	} {
		for taken := true; taken && l.halfSeconds() > allowed; {
			taken = false
			for i := len(l.sets) - 1; i >= 0 && l.halfSeconds() > allowed; i-- {
				taken = take(&l.sets[i]) || taken
			}
		}
	}
}

func drop(sets *int, least int) bool {
	if *sets <= least {
		return false
	}
	*sets--
	return true
}

// grow adds sets while they fit: main work first, evenly over its days.
func (l *load) grow(parts []part, allowed, mainMost int) {
	for l.addMain(parts, allowed, mainMost) {
	}
	for i := range l.sets {
		s := &l.sets[i]
		for s.second > 0 && s.second < secondMostN && l.halfSeconds()+l.second.halfSeconds() <= allowed {
			s.second++
		}
		for s.heavy > 0 && s.heavy < heavySetsMost && l.halfSeconds()+l.heavy.halfSeconds() <= allowed {
			s.heavy++
		}
	}
}

// addMain adds one main set to the day that has fewest.
func (l *load) addMain(parts []part, allowed, most int) bool {
	fewest := -1
	for i := range l.sets {
		if parts[i] != partLight && l.sets[i].main < most && (fewest < 0 || l.sets[i].main < l.sets[fewest].main) {
			fewest = i
		}
	}
	if fewest < 0 || l.halfSeconds()+l.main.halfSeconds() > allowed {
		return false
	}
	l.sets[fewest].main++
	return true
}

// keep corrects a straight-arm day's sets to what its session had room for.
func (l *load) keep(day int, items []program.Prescription) {
	if day < 0 {
		return
	}
	var s daySets
	for _, item := range items {
		switch {
		case isMain(&item):
			s.main += item.Sets
		case item.Role == program.RoleAhead:
			s.heavy += item.Sets
		case item.Role == program.RoleSecond && !l.leans.none() && item.Ahead == l.leans.aid.Ahead:
			s.leans += item.Sets
		case item.Role == program.RoleSecond:
			s.second += item.Sets
		}
	}
	l.sets[day] = s
}

func total(sets []daySets) int {
	n := 0
	for _, s := range sets {
		n += s.main + s.second + s.heavy + s.leans
	}
	return n
}
