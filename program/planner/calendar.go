package planner

import (
	"cmp"
	"math/bits"
	"slices"
	"time"

	"gatepost/program"
)

// week is one week of the block before any work is put into it.
type week struct {
	start    program.Date
	kind     program.WeekKind
	days     []program.Date // training days, away days left out
	straight []program.Date // those with straight-arm work
	fresh    program.Date   // the freshest of the straight-arm days
	light    []program.Date // straight-arm days without main work, for what is hard about them
	hard     []program.Date // days on or after hard training elsewhere, where others hold the main work
	test     program.Date   // the test's day, in the last week
	rests    bool           // mostly away, or where nothing of the skill can be done: the deload
}

// calendar lays out the block's weeks: their kinds, their training days and
// which of those carry straight-arm work. Weeks that are over stay as they were.
func (sn *season) calendar(start program.Date) []week {
	a, over := sn.athlete, sn.past.over()
	weeks := make([]week, max(over, blockLength(a, start)))
	for i := range weeks {
		if i < over {
			weeks[i] = recalled(&sn.past.weeks[i])
			continue
		}
		weeks[i].start = start + program.Date(7*i)
		weeks[i].days = trainingDays(a, weeks[i].start)
	}
	for len(weeks) > over && len(weeks[len(weeks)-1].days) == 0 {
		weeks = weeks[:len(weeks)-1] // the test needs a day
	}
	if len(weeks) == over {
		return nil
	}
	for i := over; i < len(weeks); i++ {
		weeks[i].rests = daysAway(a, weeks[i].start) >= deloadAway || sn.restsOnTheRoad(&weeks[i])
	}
	setKinds(weeks, over, sn.limits.deloadEvery)
	last := &weeks[len(weeks)-1]
	last.test = last.days[len(last.days)-1]
	placeStraightArm(a, weeks, over, sn.limits)
	return weeks
}

// blockStart is training.start, else the first Monday on or after the tests,
// moved to its week's Monday.
func blockStart(a *program.Assessment) program.Date {
	if a.Training.Start != 0 {
		return a.Training.Start.Monday()
	}
	return (a.Measured + 6).Monday()
}

// blockLength is the number of weeks, ending with the goal date's week where
// that is earlier.
func blockLength(a *program.Assessment, start program.Date) int {
	n := a.Training.Weeks
	if n == 0 {
		n = defaultWeeks
	}
	toGoal := int(a.Goal.By.Monday()-start)/7 + 1
	return max(1, min(n, toGoal))
}

// trainingDays are the client's days of a week that are not days away, and not
// before training.start.
func trainingDays(a *program.Assessment, monday program.Date) []program.Date {
	var days []program.Date
	for d := monday; d < monday+7; d++ {
		if trainsOn(a, d) && !away(a, d) && d >= a.Training.Start {
			days = append(days, d)
		}
	}
	if at := slices.IndexFunc(days, func(d program.Date) bool { return d > a.Goal.By }); at > 0 {
		return days[:at] // the test comes by the goal's day
	}
	return days
}

// away says that a day is one away, or ill.
func away(a *program.Assessment, d program.Date) bool {
	has := func(v program.Interval) bool { return v.Has(d) }
	return slices.ContainsFunc(a.Training.Away, has) || slices.ContainsFunc(a.Training.Ill, has)
}

func daysAway(a *program.Assessment, monday program.Date) int {
	n := 0
	for d := monday; d < monday+7; d++ {
		if away(a, d) {
			n++
		}
	}
	return n
}

// setKinds names each week. Deloads come every n-th week, counted from the last
// easy one; a week mostly away is the deload. None falls in the first week, nor
// right before the test or an away week, whose ease comes anyway. Weeks that are
// over keep their kinds.
func setKinds(weeks []week, over, every int) {
	for i := over; i < len(weeks); i++ {
		switch {
		case i == len(weeks)-1:
			weeks[i].kind = program.WeekTest
		case len(weeks[i].days) == 0:
			weeks[i].kind = program.WeekAway
		case weeks[i].rests:
			weeks[i].kind = program.WeekDeload
		default:
			weeks[i].kind = program.WeekBuild
		}
	}
	built := 0
	for i := range weeks {
		if weeks[i].kind != program.WeekBuild {
			built = 0
			continue
		}
		built++
		overdue := built > every // a joint became sore, and deloads come more often now
		if i > 0 && i >= over && built >= every && (overdue || weeks[i+1].kind == program.WeekBuild) {
			weeks[i].kind = program.WeekDeload
			built = 0
		}
	}
}

// placeStraightArm chooses each week's straight-arm days, last week first, so
// that the days before the test stay clear.
func placeStraightArm(a *program.Assessment, weeks []week, over int, l limits) {
	test := weeks[len(weeks)-1].test
	clear := test - program.Date(l.testRest)
	hot := func(d program.Date) bool { return hardOn(a, d.Weekday()) || hardOn(a, (d-1).Weekday()) }
	var before program.Date
	for i := range weeks {
		w := &weeks[i]
		if i < over {
			if len(w.straight) > 0 {
				before = w.straight[len(w.straight)-1]
			}
			continue
		}
		free := slices.DeleteFunc(slices.Clone(w.days), func(d program.Date) bool { return d > clear })
		most := l.straightDays
		if w.kind == program.WeekTest {
			most = min(most, taperSessions)
		}
		w.straight = spread(free, most, before, hot)
		if len(w.straight) > 0 {
			w.fresh = freshest(w.straight, before, hot)
			w.hard = hotBesideCold(w.days, w.straight, hot)
			w.light = slices.DeleteFunc(slices.Clone(w.straight), func(d program.Date) bool { return !slices.Contains(w.hard, d) })
			before = w.straight[len(w.straight)-1]
		}
	}
}

// spread picks the most days, at most n, that lie 48 h apart from each other and
// from the last straight-arm day; of those the ones with the fewest hot days, the most
// even, then the earliest. A day is hot when hard training elsewhere lies on it or on
// the day before.
func spread(days []program.Date, n int, before program.Date, hot func(program.Date) bool) []program.Date {
	var best []program.Date
	bestHot, bestGap := 0, 0
	for set := uint(1); set < 1<<len(days); set++ {
		if bits.OnesCount(set) > n {
			continue
		}
		picked := subset(days, set)
		gap := smallestGap(picked, before)
		if gap < restBefore {
			continue
		}
		heat := len(picked) - len(cold(picked, hot))
		if cmp.Or(cmp.Compare(len(best), len(picked)), cmp.Compare(heat, bestHot), cmp.Compare(bestGap, gap)) < 0 {
			best, bestHot, bestGap = picked, heat, gap
		}
	}
	return best
}

func subset(days []program.Date, set uint) []program.Date {
	var picked []program.Date
	for i, d := range days {
		if set&(1<<i) != 0 {
			picked = append(picked, d)
		}
	}
	return picked
}

// smallestGap is the least number of days between neighbours, the day before the
// first and the same pattern a week later included.
func smallestGap(days []program.Date, before program.Date) int {
	gap := 7 - int(days[len(days)-1]-days[0])
	if before != 0 {
		gap = min(gap, int(days[0]-before))
	}
	for i := 1; i < len(days); i++ {
		gap = min(gap, int(days[i]-days[i-1]))
	}
	return gap
}

// cold are the days that are not hot.
func cold(days []program.Date, hot func(program.Date) bool) []program.Date {
	return slices.DeleteFunc(slices.Clone(days), hot)
}

// hotBesideCold are a week's hot days, where a straight-arm day that is not hot is left
// for the main work.
func hotBesideCold(days, straight []program.Date, hot func(program.Date) bool) []program.Date {
	if len(cold(straight, hot)) == 0 {
		return nil
	}
	return slices.DeleteFunc(slices.Clone(days), func(d program.Date) bool { return !hot(d) })
}

// freshest is the straight-arm day that is not hot, before a hot one of three, with the
// longest rest before it; the earliest of equals.
func freshest(days []program.Date, before program.Date, hot func(program.Date) bool) program.Date {
	best, bestScore := days[0], -16
	for i, d := range days {
		score := min(7, int(d-before))
		if before == 0 {
			score = 7
		}
		if hot(d) {
			score -= 14
		}
		if len(days) == 3 && hot(days[(i+1)%3]) { // which is the light one anyway
			score += 7
		}
		if score > bestScore {
			best, bestScore = d, score
		}
		before = d
	}
	return best
}

func hardOn(a *program.Assessment, day time.Weekday) bool {
	return slices.ContainsFunc(a.Training.Other, func(o program.OtherTraining) bool { return o.Hard && o.Day == day })
}
