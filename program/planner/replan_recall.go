package planner

import (
	"slices"

	"gatepost/program"
)

// recalled is a printed week as the calendar had it.
func recalled(printed *program.Week) week {
	w := week{start: printed.Start, kind: printed.Kind}
	for _, s := range printed.Sessions {
		w.days = append(w.days, s.Date)
		main, arm := false, false
		for i := range s.Items {
			main = main || isMain(&s.Items[i])
			arm = arm || isArm(&s.Items[i])
			if s.Items[i].Role == program.RoleAhead {
				w.fresh = s.Date
			}
			if s.Items[i].Role == program.RoleTest && s.Items[i].Max {
				w.test = s.Date
			}
		}
		if arm && w.test != s.Date {
			w.straight = append(w.straight, s.Date)
			if !main {
				w.light = append(w.light, s.Date)
			}
		}
	}
	if n := len(w.straight); w.fresh == 0 && n > 0 {
		w.fresh = w.straight[0]
		if len(w.light) > 0 { // which comes right after the freshest, whose week goes round
			light := slices.Index(w.straight, w.light[len(w.light)-1])
			w.fresh = w.straight[(light+n-1)%n]
		}
	}
	return w
}

// isArm says that an item is a straight-arm hold: a counted one, a test, a check hold
// or a try.
func isArm(item *program.Prescription) bool {
	return isCounted(item.Role) || item.Role == program.RoleTest && armed(item) && !isEntryCheck(item)
}

// isCounted reports whether a role's straight-arm work weighs in a week's seconds; tests
// stand outside.
func isCounted(r program.Role) bool {
	return r == program.RoleMain || r == program.RoleSecond || r == program.RoleAhead
}

// armed reports whether an item is a step, or held on straight arms.
func armed(item *program.Prescription) bool { return item.Step != "" || item.StraightArm }

func isMain(item *program.Prescription) bool {
	return item.Role == program.RoleMain || item.Role == program.RoleTest && item.Check && isArm(item)
}

// loadOf is a printed week's straight-arm work, read back.
func (c *client) loadOf(printed *program.Week) load {
	w := recalled(printed)
	l := load{sets: make([]daySets, len(w.straight))}
	for _, s := range printed.Sessions {
		for i := range s.Items {
			planned := c.asPlanned(s.Items[i])
			item := &planned
			switch {
			case isMain(item) && (l.main.none() || item.Hold > l.main.hold):
				l.main = c.workOf(item)
			case item.Role == program.RoleAhead:
				l.heavy = c.workOf(item)
			case item.Role == program.RoleSecond && item.Step != "":
				l.second = c.workOf(item)
			case item.Role == program.RoleSecond:
				l.leans = c.workOf(item)
			}
		}
	}
	if l.main.hold == 0 || printed.Gate { // an open check hold, or a gate's longer set
		l.main.hold = printed.Hold
	}
	if l.second.none() { // on the floor the leans are the lighter work
		l.second, l.leans = l.leans, work{}
	}
	for _, s := range printed.Sessions {
		l.keep(slices.Index(w.straight, s.Date), s.Items)
	}
	return l
}

// goesOn reports whether work can go on: on the floor, or at a step that this ladder has. One
// above the goal, or one that sore wrists leave out, is work still, to compare with.
func (c *client) goesOn(w work) bool {
	at := c.index(w.rung)
	return !w.none() && (w.rung == nil || at >= 0 && at <= c.hardestStep())
}

// keepOn takes out of a week's work what can't go on.
func (c *client) keepOn(l *load) {
	for _, w := range []*work{&l.main, &l.second, &l.heavy, &l.leans} {
		if !c.goesOn(*w) {
			*w = work{}
		}
	}
}

// figure is the stance of work.
func (c *client) figure(w work) program.Stance {
	if w.none() {
		return program.Stance{}
	}
	return c.body.Figure(w.rung, w.aid)
}

// workOf is one printed item as work, of whatever step of the road map; none where this
// body or these bands no longer have it.
func (c *client) workOf(printed *program.Prescription) work {
	planned := c.asPlanned(*printed)
	item := &planned
	w := work{max: tenths(item.MaxHold), share: item.Load, hold: item.Hold}
	w.short = item.Role == program.RoleMain && !w.trainable()
	switch {
	case item.Step == "":
		if w.floor = c.floorRung(program.RungLean); w.floor == nil {
			w.aid.Ahead = item.Ahead
			return w
		}
		w.aid = c.body.LeanOf(item.Ahead)
		return w
	case item.Scale > 0:
		if w.floor = c.floorRung(program.RungScale); w.floor == nil {
			return work{}
		}
	}
	for i := range c.body.All {
		if r := &c.body.All[i]; r.ID == item.Step {
			w.rung = r
			w.aid = r.Carried(c.body.Named(r, item.Rig), item.Scale)
		}
	}
	if w.rung == nil || len(w.aid.Rig.Bands) != len(item.Rig.Bands) {
		return work{}
	}
	w.short = w.short && !w.trainable() // three repetitions are no short set
	return w
}
