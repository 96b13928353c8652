package strength

import (
	"cmp"
	"math"
	"slices"
)

// Noise of one observation (our judgement, as for the state's).
const (
	setNoise  = 0.015 // sd of one set, in ln C
	stopNoise = 0.7   // sd of the moment of letting go, s
	setTiring = 0.004 // ln C lost by each set before this one on the day

	longestTest = 25.0 // a longer maximal hold tells of strength only, and not of k, unless it is one of a pair
	notHeld     = 1.0  // a step tried and not held: less than this many seconds, at most as many
	failedExtra = 0.5  // a broken set would have lasted this much longer at best form, s
	easyExtra   = 4.0  // an easy or unrated short set: at least, or at most, this much longer, s
	perRPE      = 2.5  // seconds left in hand for each point of RPE below 10
	rpeBelow    = 6.0  // how much less may have been left than the RPE says, s

	// How much of a hold was left at most, as a share of all of it: what was left of sets
	// of about sixteen repetitions (published: Zourdos 2021, 3.1 ± 1.7 at RPE 9, 6.7 ± 2.5
	// at 7, 10.2 ± 2.9 at 5; their length from memory). Up to 1.5 sd are believed, and
	// nothing is read of an RPE below 5.
	leftMean, leftMeans     = 3.1, 1.8
	leftSpread, leftSpreads = 1.7, 0.3
	leftOf                  = 16.0
	leftWide                = 1.5
	leastRPE                = 5.0
	feltInSeconds           = 15.0 // of a shorter hold as much may be left as of one so long

	unsaidLeft = 6.25 // s left after a set done without a word: RPE 7.5
	unsaidMost = 24.0 // and at most: RPE 6, ten seconds and fourteen more
	easyRPE    = 6.0  // RPE below which a rating no longer says how much is left
	brokenForm = 4.0  // how much sooner the form may have broken than was seen, s
	brokenRPE  = 9.5  // RPE from which a set short of its seconds is a failed one

	gateWidth  = 4.0  // an exact or one-sided observation this many sd off is doubted
	gateChance = 6e-5 // an interval less likely than this is doubted
	believeAt  = 3    // doubted in a row on one side before they are believed
	surprise   = 0.08 // doubt added to ln C then

	heaviest = 1e5    // N·m; beyond it no load is a person's
	anHour   = 3600.0 // s; beyond it no hold is
)

// Observation is one hold of one day.
type Observation struct {
	Load    float64 // effective load less the band's help, N·m
	Seconds float64 // held; under 1 = tried and not held
	Max     bool    // a maximal test
	Pair    bool    // with Max: one of two maximal holds made to measure endurance
	AtLeast bool    // could have been longer: stopped by the coach, by pain, or easy by design
	Broken  bool    // the form broke: clean for these seconds at most
	Failed  bool    // stopped short of the prescribed seconds
	RPE     float64 // 1 to 10; 0 = not given

	Model    Model   // of the load; says how far it may be off
	Position string  // the step or exercise
	Rig      string  // bands and drop; "" = none
	More     float64 // see Site
	Index    int     // sets of the day before this one
}

// Assess reads the first assessment: one day's tests. The coach chose their loads
// to give about ten seconds, so that the correction later tests get is left out; and
// the belief before it is of anybody, so that no test is doubted for being far from it.
// The order of the list does not matter. One test longer never gives less
// capacity; with several, a longer hold of a light load also says that endurance
// is better, which may take a little off C12.
func (s State) Assess(tests []Observation) State { return s.day(tests, false) }

// Observe reads a later day's tests and sets. The order of the list does not
// matter.
//
// How one observation is read, here and in Assess:
//
//   - a maximal test is exact, however long; one that was stopped, "at least"; a
//     hold of less than one second "at most one";
//   - with an RPE of 6 to 10 there were 2.5 s in hand for each point, or 6 s less, and
//     at most a share of the hold: of 12 s and of 15, 4 s more at RPE 10, 8 at 9, 19 at
//     7.5, and of 25 s 7, 14 and 32; below 6, four seconds at least, or six tenths of
//     what was held;
//   - done without an RPE it is a set of RPE 7.5 ± 1.5, t to t + 24 s, and never
//     tells of less than was believed;
//   - stopped short at RPE 9.5 or above it is exact and half a second longer;
//     short without a word it would not have lasted four seconds more;
//   - where the form broke, the clean hold was up to four seconds shorter, whatever
//     the RPE; two seconds where it stopped short at RPE 9.5 or above.
//
// Only exact tests of at most 25 s, and pairs, move Kappa. What lies, after the first
// assessment, four standard deviations from belief is listed in Doubted and not used; the third such in a row
// on one side is believed. What no hold can be is listed there too.
func (s State) Observe(day []Observation) State { return s.day(day, true) }

func (s State) day(list []Observation, later bool) State {
	s.Doubted, s.Moved = nil, nil
	if len(list) == 0 {
		return s
	}
	var doubted []int
	moved := make([]float64, len(list))
	s = s.newDay()
	s.gated = later
	for _, i := range canonical(list) {
		o, believed, before := list[i], false, s.C
		if o.usable() {
			s, believed = s.move(o).take(o, later)
		}
		moved[i] = s.C - before
		if !believed {
			doubted = append(doubted, i)
		}
	}
	slices.Sort(doubted)
	s.Doubted, s.Moved = doubted, moved
	return s
}

// canonical orders a day: tests first, then by position, rig, set and seconds.
// Each change of position adds doubt once, so that the order written would count.
func canonical(list []Observation) []int {
	order := make([]int, len(list))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int {
		a, b := list[i], list[j]
		return cmp.Or(
			cmp.Compare(rank(a), rank(b)),
			cmp.Compare(a.Position, b.Position),
			cmp.Compare(a.Rig, b.Rig),
			cmp.Compare(a.Index, b.Index),
			cmp.Compare(a.Seconds, b.Seconds),
			cmp.Compare(a.Load, b.Load),
		)
	})
	return order
}

func rank(o Observation) int {
	if o.Max {
		return 0
	}
	return 1
}

// usable refuses what no hold can be: a load of nothing or of ten tonne-metres,
// more than an hour, anything below zero or not a number.
func (o Observation) usable() bool {
	within := func(v, most float64) bool { return v >= 0 && v <= most }
	return o.Load > 0 && within(o.Load, heaviest) && within(o.Seconds, anHour) &&
		within(o.RPE, 10) && within(o.More, 2)
}

// newDay forgets yesterday's form.
func (s State) newDay() State {
	s.Day = 0
	for i := range parts {
		s.P[i][iDay], s.P[iDay][i] = 0, 0
	}
	s.P[iDay][iDay] = daySpread * daySpread
	s.offsets = slices.Clone(s.offsets)
	for l := range s.offsets {
		s.offsets[l].with[iDay] = 0
	}
	return s
}

// move goes to the observation's position: to its offsets, or where it has none by
// adding the doubt of the change.
func (s State) move(o Observation) State {
	s = s.meet(o.Site())
	switch {
	case !s.placed || s.heres > 0:
	case s.position != o.Position:
		s.P[iC][iC] += stepSpread * stepSpread
	case s.rig != o.Rig:
		s.P[iC][iC] += rigSpread * rigSpread
	}
	s.position, s.rig, s.placed = o.Position, o.Rig, true
	return s
}

// Off is how many standard deviations a maximal test of the same day lies above
// (below zero: under) what is believed. What was stopped can only lie above, what
// was not held only under.
func (s State) Off(test Observation) float64 {
	if !test.usable() {
		return 0
	}
	s = s.move(test)
	t := test.Seconds
	if t < notHeld {
		t = notHeld
	}
	u := s.surplus(test, t, t)
	off := -u.mean / math.Sqrt(u.total)
	if test.Seconds < notHeld && off > 0 || test.AtLeast && off < 0 {
		return 0
	}
	return off
}
