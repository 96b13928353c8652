package planner

import (
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// limits are what this client's age, joints and past allow. They are worked out
// once and asked everywhere, so that a rule has one place.
type limits struct {
	age          int
	spell        float64 // weeks of the present spell at the start of the block
	effort       float64 // share of the predicted maximal hold that is prescribed
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
}

// Efforts as a share of the predicted maximal hold, and the ages and spells that
// change the rules. Our judgement, in line with common practice for tendons,
// which adapt more slowly than muscle.
const (
	usualEffort    = 0.70
	mostEffort     = 0.75 // of a rig that is in use already, and of a gate
	gentleEffort   = 0.60
	gentleReturn   = 3  // weeks of gentle effort after a lay-off
	easyReturn     = 2  // weeks of fewer seconds after a lay-off
	returnSpell    = 13 // weeks after a lay-off with a deload every third week
	heavyAfter     = 26 // weeks of the present spell
	fourthDayAfter = 104
	youthAge       = 16
	adultAge       = 18
	olderAge       = 45
	usualTestRest  = 2 // days, 48 h
	olderTestRest  = 3 // days, 72 h
	usualArmDays   = 3
	elbowLoad      = 0.75
	bandShare      = 0.25 // most band help at the main work, of body weight
	bandsKit       = "bands"
)

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
	h := a.Health
	l := limits{
		age:          a.Measured.YearsSince(a.Athlete.Born),
		spell:        presentSpell(a, start),
		effort:       usualEffort,
		deloadEvery:  deloadEvery(len(a.Training.Days), false),
		straightDays: usualArmDays,
		testRest:     usualTestRest,
		grip:         slices.Contains(a.Kit, ladder.Parallettes),
		elbowSore:    sore(h.Elbows),
	}
	youth, older := l.age < youthAge, l.age >= olderAge
	anySore := soreAnywhere(h)
	l.returning = a.Training.Best != nil && l.spell < returnSpell
	l.neutralOnly = sore(h.Wrists) || youth
	l.hands = l.grip || !l.neutralOnly
	l.maxTests = !youth && !anySore
	l.heavy = l.spell >= heavyAfter && !anySore && !youth
	if anySore || youth {
		l.effort = gentleEffort
	}
	if l.returning {
		l.gentleUntil = max(0, gentleReturn-int(l.spell))
		l.easyWeeks = max(0, easyReturn-int(l.spell))
	}
	if anySore || youth || older || l.returning {
		l.deloadEvery = deloadEvery(len(a.Training.Days), true)
	}
	if older {
		l.testRest = olderTestRest
	}
	if l.spell >= fourthDayAfter && !youth {
		l.straightDays++
	}
	l.factors = volumeFactors(h, youth, older)
	return l
}

// deloadEvery is which week of a round is the deload, for so many training days a
// week. From three days on every fourth, or every third for who needs it often; fewer
// days tire less, so that work stands before rest: eight days, and five weeks at the
// least, or six days for who needs it often (our judgement; the many weeks of once a
// week are within what strength athletes report, 5.6 ± 2.3 weeks, published: Rogerson
// 2024).
func deloadEvery(days int, often bool) int {
	switch {
	case days >= 3 && often:
		return 3
	case days >= 3:
		return 4
	case often:
		return 6/max(1, days) + 1
	}
	return max(6, 8/max(1, days)+1)
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

// effortIn is the effort of a week, counted from 0.
func (l limits) effortIn(week int) float64 {
	if week < l.gentleUntil {
		return gentleEffort
	}
	return l.effort
}

// mostEffortIn is the most effort of a week, where something speaks for it; who
// trains gently does so here too.
func (l limits) mostEffortIn(week int) float64 {
	if e := l.effortIn(week); e < usualEffort {
		return e
	}
	return mostEffort
}

// volumeFactors shrink the counted seconds. Where several hold, the two smallest
// are taken together.
func volumeFactors(h program.Health, youth, older bool) []float64 {
	var f []float64
	if sore(h.Elbows) || sore(h.Wrists) {
		f = append(f, 0.5)
	}
	if youth {
		f = append(f, 0.75)
	}
	if older {
		f = append(f, 0.8)
	}
	return f
}

// returnFactor eases the first two weeks after four or more off.
const returnFactor = 0.6

// spellVolume is where counted straight-arm seconds a week start and end for a
// present spell. Our judgement: elbow tendons set the pace.
var spellVolume = []struct {
	below          float64 // weeks
	start, ceiling int     // s
}{
	{13, 90, 180}, {26, 130, 220}, {52, 170, 300}, {104, 210, 360}, {208, 260, 450}, {1e9, 300, 540},
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
	return scale(2*ceiling, l.factorsWith(afterBreak))
}

func (l limits) factorsWith(afterBreak bool) []float64 {
	if afterBreak {
		return append(slices.Clone(l.factors), returnFactor)
	}
	return l.factors
}

func volumeAt(spell float64) (start, ceiling int) {
	for _, v := range spellVolume {
		if spell < v.below {
			return v.start, v.ceiling
		}
	}
	last := spellVolume[len(spellVolume)-1]
	return last.start, last.ceiling
}

func scale(v int, factors []float64) int {
	f := slices.Sorted(slices.Values(factors))
	product := 1.0
	for i := 0; i < min(2, len(f)); i++ {
		product *= f[i]
	}
	return int(float64(v) * product)
}
