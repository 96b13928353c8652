package planner

import (
	"slices"

	"gatepost/program"
)

// restAfter is what the last pain that asked for rest leaves, and how far the way back
// has come since.
func (di *diary) restAfter() rest {
	var stops [len(joints)]program.Date
	var out rest
	for i, j := range joints {
		if days := di.stops(j.pain); len(days) > 0 {
			stops[i] = days[len(days)-1]
		}
	}
	out.on, out.from = di.on, di.nextCard()
	last := slices.Max(stops[:])
	if last == 0 {
		return out
	}
	for i, day := range stops {
		if day+restDays >= last {
			out.joints |= 1 << i
		}
	}
	out.until = last + restDays
	out.sessions = di.quietSince(out.until)
	return out
}

// nextCard is the first day whose card can still be changed: the day of the review,
// unless something is written of it already.
func (di *diary) nextCard() program.Date {
	if n := len(di.days); n > 0 && di.days[n-1].date == di.on {
		return di.on + 1
	}
	return di.on
}

// stops are the days since the assessment whose pain at a joint asks for rest, in order:
// five or more in a session, or a morning that stops straight-arm work.
func (di *diary) stops(of func(program.Pain) int) []program.Date {
	var days []program.Date
	for _, d := range di.days {
		if d.worst(of) >= highPain {
			days = append(days, d.date)
		}
	}
	noted, mornings := di.mornings(of)
	for i, date := range mornings {
		if di.morningAt(noted, mornings, i).stops() {
			days = append(days, date)
		}
	}
	slices.Sort(days)
	return days
}

// worst is the most pain that a day's session left at a joint; 0 where none was said.
func (d *dayRead) worst(of func(program.Pain) int) int {
	worst := 0
	for _, p := range d.pains {
		if p.Given {
			worst = max(worst, of(p))
		}
	}
	for i := range d.sets {
		if p := d.sets[i].Done.Pain; p.Given {
			worst = max(worst, of(p))
		}
	}
	return worst
}

// quietSince counts the straight-arm sessions after a day that left no joint sore,
// neither in the session nor on the mornings after it. What nobody wrote of a morning
// counts as quiet, as it does in the log.
func (di *diary) quietSince(day program.Date) int {
	n := 0
	for _, d := range di.days {
		if d.date <= day || !d.arm() {
			continue
		}
		quiet := true
		for _, j := range joints {
			quiet = quiet && d.worst(j.pain) < sorePain && !di.upAfter(d.date, j.pain)
		}
		if quiet {
			n++
		}
	}
	return n
}

// upAfter reports whether one of the mornings after a session was above usual.
func (di *diary) upAfter(day program.Date, of func(program.Pain) int) bool {
	noted, days := di.mornings(of)
	for i, date := range days {
		if date > day && date <= day+quietMornings && di.morningAt(noted, days, i).above >= morningUp {
			return true
		}
	}
	return false
}

// lastUp is the last morning on which a joint was above usual; 0 where none was.
func (di *diary) lastUp(of func(program.Pain) int) program.Date {
	noted, days := di.mornings(of)
	for i := len(days) - 1; i >= 0; i-- {
		if di.morningAt(noted, days, i).above >= morningUp {
			return days[i]
		}
	}
	return 0
}

// arm reports whether a day held straight-arm work.
func (d *dayRead) arm() bool {
	return slices.ContainsFunc(d.sets, func(s setRead) bool { return s.Step != "" || s.arm() })
}
