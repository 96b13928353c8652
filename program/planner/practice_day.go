package planner

import (
	"slices"

	"gatepost/program"
)

// groups are a day's work in order of priority: the practice first, while it is fresh.
func (p *practice) groups(d day) []group {
	var out []group
	add := func(key string, items ...program.Prescription) {
		if len(items) > 0 && items[0].Exercise != "" {
			out = append(out, group{key, items})
		}
	}
	x := &p.exercises
	switch {
	case d.test && len(p.open) > 0:
		add("role.test", x.entryTests()...)
	case len(p.open) > 0 && d.straight:
		out = append(out, p.entryWork(d)...)
	case len(p.open) == 0 && p.practisesOn(d):
		add("role.main", p.practiceItems(d)...)
	}
	if d.straight && !d.test && len(p.open) == 0 && !d.hard {
		add("role.mobility", p.lines(d)...)
		add("role.strength", p.drill(d)...)
		add("role.strength", x.strength(d)...)
	}
	add("role.trunk", x.trunk(d)...)
	add("role.mobility", x.mobility(d)...)
	return out
}

// practisesOn reports whether a day is one of practice: five of a week at the most, those
// that are hard elsewhere going first; with a joint that is sore, only days 48 hours apart.
func (p *practice) practisesOn(d day) bool {
	w := &p.weeks[d.week]
	days := slices.Clone(w.days)
	for len(days) > practiceDays {
		at := len(days) - 1
		if hard := slices.IndexFunc(days, func(day program.Date) bool { return slices.Contains(w.hard, day) }); hard >= 0 {
			at = hard
		}
		if days[at] == w.test && at > 0 {
			at--
		}
		days = slices.Delete(days, at, at+1)
	}
	return slices.Contains(days, d.date) && (d.test || d.straight || !p.anySore())
}

// practiceItems are the tries of a day, or the sets of a step that is held.
func (p *practice) practiceItems(d day) []program.Prescription {
	at := p.stepIn(d.week)
	r := &p.body.Steps[at]
	e, ok := p.lib.Exercise(r.Exercise)
	if !ok || !p.can(e) {
		return nil
	}
	item := p.exercises.dose(day{}, e, program.RoleMain)
	item.Step, item.Reps, item.EachSide = r.ID, 0, r.Sides == 2
	if d.test {
		item.Role = program.RoleTest
	}
	if !r.Gate.Tried() {
		return p.holdItems(item, at, d)
	}
	item.Try, item.Hold, item.Rest = true, r.Gate.Hold, triesRest(r.Gate.Hold)
	item.Sets = p.setSets(p.triesOn(&r.Gate, d), item.Hold+item.Rest, d)
	return []program.Prescription{item}
}

// triesRest is how long to rest between tries for so many seconds: about as long as ten of
// them leave of ten to fifteen minutes.
func triesRest(hold int) int { return max(30, min(60, 90-hold)) }

// triesOn is how many tries a day has. Build weeks rise by one from what the gate asks, and
// come back to it in the gate week.
func (p *practice) triesOn(g *program.Gate, d day) int {
	n := g.Sets
	if d.kind == program.WeekBuild && !p.gateIn(d.week) {
		n += min(triesRise, p.builtBefore(d.week))
	}
	if !d.test {
		n = min(n, max(g.Sets, practiceSeconds/(g.Hold+triesRest(g.Hold))))
	}
	return p.eased(n, d)
}

// builtBefore is how many build weeks lie between a week and the easy one before it.
func (p *practice) builtBefore(i int) int {
	n := 0
	for i--; i >= 0 && p.weeks[i].kind == program.WeekBuild; i-- {
		n++
	}
	return n
}

// eased is what easy weeks, hard days, sore joints and weeks off leave of tries or sets.
func (p *practice) eased(n int, d day) int {
	if !d.test && (d.kind != program.WeekBuild || d.hard) {
		n = half(n)
	}
	if p.anySore() {
		n = n * soreTries / 100
	}
	return max(1, n*p.comebackPart(d.week)/100)
}

// holdItems are the sets of a step that is held, at a share of the best that was shown. A
// gate week opens with one until two seconds are left, and so is the test.
func (p *practice) holdItems(item program.Prescription, at int, d day) []program.Prescription {
	r := &p.body.Steps[at]
	o := opening{program.Hold{Seconds: float64(r.Gate.Hold)}, int(p.bestOf(at))}
	o.share(&item, day{kind: program.WeekBuild, builds: d.builds}, program.Prescription{})
	item.Hold = min(item.Hold, r.Gate.Hold)
	item.Hold = p.setHeld(item.Hold, d)
	item.Sets = p.setSets(p.eased(item.Sets, d), item.Hold+item.Rest, d)
	open := item
	open.Role, open.Sets, open.Hold, open.Check = program.RoleTest, 1, 0, true
	open.MaxHold = max(p.bestOf(at), float64(item.Hold))
	switch item.Sets--; {
	case d.test && !p.anySore():
		return []program.Prescription{open}
	case p.gateIn(d.week) && item.Sets > 0 && !d.hard:
		return []program.Prescription{open, item}
	}
	item.Role = program.RoleMain
	item.Sets++
	return []program.Prescription{item}
}

// lines are those at the wall, unless they are what is practised.
func (p *practice) lines(d day) []program.Prescription {
	line := p.exercises.line(d)
	if len(line) > 0 && line[0].Exercise == p.body.Steps[p.stepIn(d.week)].Exercise {
		return nil
	}
	return line
}

// drill is one of the step's drills, by turns. It stays what it is: what is harder than a
// drill is a step of its own, or of another skill.
func (p *practice) drill(d day) []program.Prescription {
	drills := p.body.Steps[p.stepIn(d.week)].Drills
	for i := range drills {
		e, ok := p.lib.Exercise(drills[(d.number+i)%len(drills)])
		if ok && p.can(e) && !(d.clear && e.StraightArm) {
			plain := *e
			plain.Harder = nil
			return []program.Prescription{p.exercises.dose(d, &plain, program.RoleStrength)}
		}
	}
	return nil
}

// easePractice lays the way back from pain over a session: nothing on the joint while it
// rests, then half of the tries until its sessions stayed quiet.
func (p *practice) easePractice(s *program.Session) {
	stage := p.stageBack(s.Date)
	switch stage {
	case backNone, backNear:
		return
	case backRest:
		s.Items = p.easedItems(s.Items, stage)
		s.Dropped = p.restNotes()
	default:
		for i := range s.Items {
			if item := &s.Items[i]; isPractice(item) {
				item.Sets = half(item.Sets)
			}
		}
	}
	s.Minutes = p.minutesFor(s.Date, s.Items)
}
