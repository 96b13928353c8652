package planner

import (
	"cmp"
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// limits are what this client's age, joints and past allow. They are worked out
// once and asked everywhere, so that a rule has one place.
type limits struct {
	age          int
	older        bool
	spell        float64 // weeks of the present spell at the start of the block
	effort       float64 // share of the predicted maximal hold that is prescribed
	gentle       bool    // effort is the gentler one
	gentleUntil  int     // weeks of the block with the gentler effort after a lay-off
	easyWeeks    int     // weeks of the block with fewer seconds after a lay-off
	deloadEvery  int
	straightDays int
	testRest     int  // days without straight-arm work before the test
	neutralOnly  bool // no load on an extended wrist
	hands        bool // the hands may carry the body at all
	grip         bool // the hands hold a bar in line with the forearm
	heavy        bool
	elbowSore    bool
	maxTests     bool
	returning    bool // in a new spell after a lay-off
	factors      []float64
	rise         int // per cent over what a week rises from
	ceilingShare int // per cent of the table's
}

// bandsKit is what exercises call bands in their kit.
const bandsKit = "bands"

// limitsIn are the limits of a block of one road map. In a hang a wrist is straight, and
// a sore one asks for nothing but pushing that spares it.
func limitsIn(m *program.RoadMap, a *program.Assessment, start program.Date) limits {
	if m.Hands != program.HandsHang {
		return newLimits(a, start)
	}
	hanging := *a
	hanging.Health.Wrists = program.JointFine
	l := newLimits(&hanging, start)
	l.neutralOnly, l.hands = l.neutralOnly || sore(a.Health.Wrists), true
	return l
}

// newLimits reads the rules off an assessment, for a block that starts on a day.
func newLimits(a *program.Assessment, start program.Date) limits {
	h, set := a.Health, a.Rules
	l := limits{
		age:          a.Measured.YearsSince(a.Athlete.Born),
		spell:        presentSpell(a, start),
		effort:       cmp.Or(set.Effort, usualEffort),
		deloadEvery:  cmp.Or(set.DeloadEvery, deloadEvery(len(a.Training.Days), false)),
		straightDays: usualArmDays,
		testRest:     cmp.Or(set.TestRest, usualTestRest),
		grip:         slices.Contains(a.Kit, ladder.Parallettes),
		elbowSore:    sore(h.Elbows),
		rise:         cmp.Or(set.Rise, weeklyRise),
		ceilingShare: cmp.Or(set.Ceiling, 100),
	}
	youth := l.age < youthAge
	l.older = l.age >= cmp.Or(set.Older, olderAge)
	anySore := soreAnywhere(h)
	l.returning = a.Training.Best != nil && l.spell < returnSpell
	l.neutralOnly = sore(h.Wrists) || youth
	l.hands = l.grip || !l.neutralOnly
	l.maxTests = !youth && !anySore
	l.heavy = l.spell >= float64(cmp.Or(set.HeavyAfter, heavyAfter)) && !anySore && !youth
	if l.gentle = anySore || youth; l.gentle {
		l.effort = min(l.effort, gentleEffort)
	}
	if l.returning {
		l.gentleUntil = max(0, gentleReturn-int(l.spell))
		l.easyWeeks = max(0, easyReturn-int(l.spell))
	}
	if anySore || youth || l.older || l.returning {
		l.deloadEvery = min(cmp.Or(set.DeloadEvery, math.MaxInt), deloadEvery(len(a.Training.Days), true))
	}
	if l.older {
		l.testRest = max(l.testRest, olderTestRest)
	}
	if l.spell >= fourthDayAfter && !youth {
		l.straightDays++
	}
	l.straightDays = min(l.straightDays, cmp.Or(set.ArmDays, l.straightDays))
	l.factors = volumeFactors(h, youth, l.older)
	return l
}

// deloadEvery is which week of a round is the deload, for so many training days a
// week: fewer of them tire less.
func deloadEvery(days int, often bool) int {
	switch {
	case days >= manyDays && often:
		return oftenWeek
	case days >= manyDays:
		return deloadWeek
	case often:
		return oftenDays/max(1, days) + 1
	}
	return max(deloadWeekLeast, deloadDays/max(1, days)+1)
}

// sore counts an injured joint that was cleared as a sore one.
func sore(j program.Joint) bool { return j == program.JointSore || j == program.JointInjured }

func soreAnywhere(h program.Health) bool {
	return sore(h.Wrists) || sore(h.Elbows) || sore(h.Shoulders)
}

// presentSpell is how many weeks the present spell has lasted at the start of
// the block: since its first day, or all the experience where none is given, and
// what was trained since in blocks before this one.
func presentSpell(a *program.Assessment, start program.Date) float64 {
	if a.Training.Since == 0 {
		return a.Training.Experience + max(0, float64(start-blockStart(a))/7)
	}
	return max(0, float64(start-a.Training.Since)/7)
}

// gentleIn reports whether a week, counted from 0, has the gentler effort.
func (l limits) gentleIn(week int) bool { return l.gentle || week < l.gentleUntil }

// effortIn is the effort of a week.
func (l limits) effortIn(week int) float64 {
	if l.gentleIn(week) {
		return min(l.effort, gentleEffort)
	}
	return l.effort
}

// mostEffortIn is the most effort of a week, where something speaks for it; who
// trains gently does so here too.
func (l limits) mostEffortIn(week int) float64 {
	if l.gentleIn(week) {
		return l.effortIn(week)
	}
	return l.effort + (mostEffort - usualEffort)
}

// volumeFactors shrink the counted seconds. Where several hold, the two smallest
// are taken together.
func volumeFactors(h program.Health, youth, older bool) []float64 {
	var f []float64
	if sore(h.Elbows) || sore(h.Wrists) {
		f = append(f, soreFactor)
	}
	if youth {
		f = append(f, youthFactor)
	}
	if older {
		f = append(f, olderFactor)
	}
	return f
}

// startSeconds are the counted seconds a week that a spell of so many weeks starts
// with, before age and joints take theirs: what a full gain is reckoned for.
func startSeconds(spell float64) float64 {
	start, _ := volumeAt(spell)
	return float64(start)
}

// startVolume and ceiling are in half seconds, as week.HalfSeconds is.
func (l limits) startVolume(afterBreak bool) int {
	start, _ := volumeAt(l.spell)
	return scale(2*start, l.factorsWith(afterBreak))
}

// anybodys is what a week may hold, whatever the weeks before it held: the start of a
// beginner.
func (l limits) anybodys(afterBreak bool) int {
	return scale(2*spellVolume[0].start, l.factorsWith(afterBreak))
}

func (l limits) ceiling(week int, afterBreak bool) int {
	_, ceiling := volumeAt(l.spell + float64(week))
	return scale(2*ceiling, l.factorsWith(afterBreak)) * l.ceilingShare / 100
}

func (l limits) factorsWith(afterBreak bool) []float64 {
	if afterBreak {
		return append(slices.Clone(l.factors), returnFactor)
	}
	return l.factors
}

func volumeAt(spell float64) (start, ceiling int) {
	for _, v := range spellVolume {
		if spell >= v.from {
			start, ceiling = v.start, v.ceiling
		}
	}
	return start, ceiling
}

func scale(v int, factors []float64) int {
	f := slices.Sorted(slices.Values(factors))
	product := 1.0
	for i := 0; i < min(2, len(f)); i++ {
		product *= f[i]
	}
	return int(float64(v) * product)
}
