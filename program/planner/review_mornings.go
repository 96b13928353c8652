package planner

import (
	"maps"
	"slices"

	"gatepost/program"
)

// morning is the last morning that was noted of a joint, held against what is
// usual for it.
type morning struct {
	date    program.Date // 0: none in the last two weeks
	pain    int          // of ten
	above   int          // usual
	running bool         // and so was the morning before it, a few days ago
}

// mornings are the numbers that a joint was given, by day up to the review. Of
// several for one morning the highest counts. The days come in order.
func (di *diary) mornings(of func(program.Pain) int) (noted map[program.Date]int, days []program.Date) {
	noted = map[program.Date]int{}
	for i := range di.athlete.Log.Entries {
		e := &di.athlete.Log.Entries[i]
		if !e.Morning || e.Date > di.on {
			continue
		}
		for _, s := range e.Sets {
			if s.Pain.Given && of(s.Pain) >= 0 {
				noted[e.Date] = max(noted[e.Date], of(s.Pain))
			}
		}
	}
	return noted, slices.Sorted(maps.Keys(noted))
}

// lastMorning reads the last morning of a joint. Of two running, both are held
// against the mornings before the first: what has begun to hurt is not yet usual.
// Mornings before the assessment say what is usual, and nothing more: the coach has
// seen the joint since.
func (di *diary) lastMorning(of func(program.Pain) int) morning {
	noted, days := di.mornings(of)
	if n := len(days); n > 0 && di.on-days[n-1] <= lately {
		return di.morningAt(noted, days, n-1)
	}
	return morning{}
}

// morningAt reads one morning of a joint, of those in order; the zero morning for one
// before the assessment.
func (di *diary) morningAt(noted map[program.Date]int, days []program.Date, at int) morning {
	last := days[at]
	if last < di.athlete.Measured {
		return morning{}
	}
	first := last
	if at > 0 && last-days[at-1] <= runningDays && days[at-1] >= di.athlete.Measured {
		first = days[at-1]
	}
	usual := usualBefore(noted, days, first)
	m := morning{date: last, pain: noted[last], above: noted[last] - usual}
	m.running = first < last && min(m.above, noted[first]-usual) >= morningUp
	return m
}

// usualBefore is the median of the four weeks before a day; of an even number the
// lower one of the middle two, to be on the careful side. It is 0 where nothing was
// noted, or too little: a client whose first mornings are all at 3 is sore, and not
// as usual.
func usualBefore(noted map[program.Date]int, days []program.Date, before program.Date) int {
	var values []int
	for _, d := range days {
		if d < before && before-d <= usualDays {
			values = append(values, noted[d])
		}
	}
	if len(values) < usualLeast {
		return 0
	}
	slices.Sort(values)
	return values[(len(values)-1)/2]
}

// stops reports whether straight-arm work has to stop for some days.
func (m morning) stops() bool { return m.above >= morningHigh || m.running }

// flag is what a morning asks for; without a code nothing.
func (m morning) flag(on program.Date) (code string, level program.FlagLevel) {
	stop := m.stops()
	old := on-m.date > pauseDays
	switch {
	case m.above < morningUp || old && !stop: // sessions since have answered it
		return "", 0
	case old:
		return flagMorningOld, program.FlagLook
	case m.above >= morningHigh:
		return flagMorningHigh, program.FlagStop
	case stop:
		return flagMorningTwice, program.FlagStop
	}
	return flagMorningUp, program.FlagLook
}

// morningFlags are what the mornings say. Where straight-arm work has to stop, the
// joint counts as sore in the weeks ahead; elsewhere than at a joint that a plan can
// ease, the coach has to ask.
func (di *diary) morningFlags(eased *program.Assessment) []program.Flag {
	var flags []program.Flag
	for _, j := range joints {
		m := di.lastMorning(j.pain)
		code, level := m.flag(di.on)
		if code == "" {
			continue
		}
		flags = append(flags, program.Flag{Level: level, Note: note(code, append(m.values(), word("joint", j.key))...)})
		if level == program.FlagStop {
			countSore(j.state(&eased.Health))
		}
	}
	m := di.lastMorning(func(p program.Pain) int { return p.Other })
	if code, level := m.flag(di.on); code != "" {
		flags = append(flags, program.Flag{Level: level, Note: note(flagMorningOther, m.values()...)})
	}
	return flags
}

func (m morning) values() []program.Value {
	return []program.Value{date("on", m.date), count("pain", m.pain), count("above", m.above)}
}

// worstMornings is the worst at each joint over the mornings of a week.
func (di *diary) worstMornings(monday program.Date) program.Pain {
	worst := noPain
	for i := range di.athlete.Log.Entries {
		e := &di.athlete.Log.Entries[i]
		if e.Morning && e.Date.Monday() == monday && e.Date <= di.on {
			for _, s := range e.Sets {
				worse(&worst, s.Pain)
			}
		}
	}
	return worst
}

// nothingDone says that a log has no session: it has mornings alone, or no line.
func nothingDone(log *program.Log) bool {
	return !slices.ContainsFunc(log.Entries, func(e program.Entry) bool { return !e.Morning })
}
