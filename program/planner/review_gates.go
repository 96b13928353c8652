package planner

import (
	"slices"

	"gatepost/program"
)

// A gate is passed when its sets are shown free of help, clean, the last of them
// at no more than the RPE it allows and without more pain than it bears, on so
// many days so far apart. What the log does not say is not shown: a set counts as
// clean only where that is written, and the last set must have its RPE. Pain is
// written where there is some, so that no word of it means none.

// gateRead reads one step's gate from the days of the log.
func (r *reading) gateRead(g program.StepGate) program.GateRead {
	read := program.GateRead{StepGate: g, State: program.GateOpen}
	var counting []program.GateDay
	var best, lacking *gateTry
	for _, d := range r.days {
		try := tryGate(d, g)
		if try == nil {
			continue
		}
		if try.counts() {
			if n := len(counting); n == 0 || 24*int(d.date-counting[n-1].Date) >= g.Apart {
				counting = append(counting, program.GateDay{Date: d.date, Sets: reads(try.shown), Counts: true})
			}
		}
		if best == nil || try.score() >= best.score() {
			best = try
		}
		if !try.counts() && len(try.shown) >= g.Sets && (lacking == nil || try.score() >= lacking.score()) {
			lacking = try
		}
	}
	read.Days = counting
	sessions := max(1, g.Sessions)
	if len(counting) >= sessions {
		read.State, read.On = program.GatePassed, counting[sessions-1].Date
		read.Days = counting[:sessions]
	} else if i := slices.IndexFunc(r.signed, func(s signed) bool { return s.step == g.Step }); i >= 0 {
		read.State, read.On, read.Signed = program.GatePassed, r.signed[i].on, true
	} else if read.Tries = r.tries(g); read.Tries > 0 {
		read.State = program.GateNotYet
	}
	if len(counting) > 0 && read.State != program.GatePassed && lacking != nil {
		best = lacking // what the other day wanted
	}
	if best != nil {
		for _, c := range best.criteria {
			c.Sets = reads(c.sets)
			read.Criteria = append(read.Criteria, c.Criterion)
		}
		if len(counting) == 0 {
			read.Days = []program.GateDay{{Date: best.date, Sets: reads(best.shown)}}
		}
	}
	read.Criteria = append(read.Criteria, program.Criterion{Name: "sessions", Wanted: float64(sessions), Shown: float64(len(counting)), Met: len(counting) >= sessions})
	return read
}

// tries counts the weeks in a row, up to the last one read, in which the gate was
// asked for and tried and not shown. A week that does not ask for it stands
// outside, and so does one where only something unwritten is missing.
func (r *reading) tries(g program.StepGate) int {
	n := 0
	for i := len(r.weeks) - 1; i >= 0; i-- {
		if w := r.weeks[i]; w.Kind == program.WeekBuild && w.Step == g.Step && !w.Rig.Free() && len(w.days) > 0 {
			return n // help has come back since
		}
		asked, counted := false, false
		for _, d := range r.weeks[i].days {
			if try := tryGate(d, g); try != nil {
				asked = asked || r.weeks[i].Gate && asks(d, g) && try.missed()
				counted = counted || try.counts()
			}
		}
		if counted {
			return n
		}
		if asked {
			n++
		}
	}
	return n
}

// asks says that a day's print asked for the gate: as many free sets, as long.
func asks(d *dayRead, g program.StepGate) bool {
	sets, longer := 0, 0
	for i := range d.sets {
		if s := &d.sets[i]; s.Step == g.Step && s.item != nil && s.item.Rig.Free() && (s.item.Hold >= g.Hold || isOpen(*s.item)) {
			sets++
			if s.Printed >= g.Single || isOpen(*s.item) {
				longer++
			}
		}
	}
	return sets >= g.Sets && (g.Single == 0 || sets > g.Sets && longer > 0 || longer >= g.Sets)
}

// isOpen reports whether an item is held until two seconds are left.
func isOpen(item program.Prescription) bool { return item.Check && item.Hold == 0 }

// gatesRead are the gates of the steps that this block worked on, of those after
// them that were tried unasked, and the goal's. The lighter work on steps below
// says nothing of a gate.
func (r *reading) gatesRead() []program.GateRead {
	var out []program.GateRead
	for i := range r.body.Steps {
		g := &r.body.Steps[i]
		week, trained := 0, i == len(r.body.Steps)-1
		for _, w := range r.weeks {
			if w.start >= r.block && w.Step == g.ID && w.Scale == 0 {
				if trained = true; w.Gate {
					week = w.Number
				}
			}
		}
		if trained || len(out) > 0 && r.triedUnasked(g.ID) {
			out = append(out, r.gateRead(program.StepGate{Step: g.ID, Gate: g.Gate, Week: week}))
		}
	}
	return out
}

// triedUnasked says that a step was held free where nothing of the kind was printed.
func (di *diary) triedUnasked(step string) bool {
	return slices.ContainsFunc(di.days, func(d *dayRead) bool {
		return slices.ContainsFunc(d.sets, func(s setRead) bool { return s.Step == step && s.Rig.Free() && s.item == nil })
	})
}
