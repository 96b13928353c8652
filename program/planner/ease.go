package planner

import "slices"

// ease makes a week of half the sets of another on the same kinds of day, or, where the
// days changed places, on one that has main work as well, or has none. Where that leaves more than 60 %, because one set cannot be halved, the lighter work
// of days with main work goes.
func (l *load) ease(from *load, parts, fromParts []part) {
	for i, part := range parts {
		j := len(fromParts) - 1
		if len(parts) == len(fromParts) {
			j = part.like(fromParts)
		}
		if j >= 0 {
			s := from.sets[j]
			l.sets[i] = daySets{main: half(s.main), second: half(s.second)}
		}
	}
	for i := range l.sets {
		if s := &l.sets[i]; s.main > 0 && 100*total(l.sets) > deloadShare*total(from.sets) {
			s.second = 0
		}
	}
	for i := len(l.sets) - 1; i > 0 && 100*total(l.sets) > deloadShare*total(from.sets); i-- {
		l.sets[i] = daySets{} // that day rests its arms
	}
}

// like is the place among days of one of this kind, else of one with main work as this one
// has or has not; −1 for none.
func (p part) like(days []part) int {
	if i := slices.Index(days, p); i >= 0 {
		return i
	}
	return slices.IndexFunc(days, func(d part) bool { return (d == partLight) == (p == partLight) })
}

// easeTo leaves no more than a share, in per cent, of so many sets, one at the least:
// the lighter work goes first, then main sets, at last those of a whole day.
func (l *load) easeTo(sets, share int) {
	most := max(1, share*sets/100)
	for _, take := range []func(*daySets) bool{
		func(s *daySets) bool { return drop(&s.leans, 0) },
		func(s *daySets) bool { return drop(&s.second, 0) },
		func(s *daySets) bool { return drop(&s.main, 1) },
		func(s *daySets) bool { return drop(&s.main, 0) },
	} {
		for i := len(l.sets) - 1; i >= 0 && sets > 0; i-- {
			for total(l.sets) > most && take(&l.sets[i]) {
			}
		}
	}
}

// half is half the sets, rounded down, one at least.
func half(sets int) int {
	if sets == 0 {
		return 0
	}
	return max(1, sets/2)
}

// taper gives the test week's short sessions about half of the counted work of
// the week before.
func (l *load) taper(before int) {
	if len(l.sets) == 0 {
		return
	}
	best, bestOff := daySets{main: 1}, -1
	for mains := 1; mains <= taperSets; mains++ {
		for seconds := 0; seconds <= secondSetsLeast; seconds++ {
			s := daySets{main: mains}
			if !l.second.none() {
				s.second = seconds
			}
			l.fill(s)
			v := 100 * l.halfSeconds()
			off := max(v-50*before, 50*before-v)
			if v <= taperMost*before && (bestOff < 0 || off < bestOff) {
				best, bestOff = s, off
			}
		}
	}
	l.fill(best)
}

// spare leaves out the main sets of light days.
func (l *load) spare(parts []part) {
	for i := range l.sets {
		if parts[i] == partLight {
			l.sets[i].main = 0
		}
	}
}

func (l *load) fill(s daySets) {
	for i := range l.sets {
		l.sets[i] = s
	}
}
