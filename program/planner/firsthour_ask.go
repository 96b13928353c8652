package planner

import (
	"slices"

	"gatepost/program"
)

// askFirst is what the talk is about: what the assessment leaves open, then what it says
// that wants a word.
func askFirst(a *program.Assessment) []program.Note {
	h, t := &a.Health, &a.Training
	all := []program.Note{note(hourGoal)}
	all = append(all, conditionsAsked(a)...)
	for _, j := range joints {
		switch *j.state(h) {
		case program.JointSore:
			all = append(all, note(hourSore, word("joint", j.key)))
		case program.JointInjured:
			all = append(all, note(hourInjured, word("joint", j.key)))
		}
	}
	age := a.Measured.YearsSince(a.Athlete.Born)
	if age < adultAge && h.Guardian != "" {
		all = append(all, note(hourGuardian, text("name", h.Guardian)))
	}
	switch {
	case t.Best != nil:
		best := seconds("hold", t.Best.Seconds)
		all = append(all, note(hourBest, step("step", t.Best.Step), best))
	case t.Experience == 0:
		all = append(all, note(hourBeginner))
	case t.Since == 0:
		all = append(all, note(hourBreak, count("weeks", int(t.Experience+0.5))))
	}
	if len(t.Other) == 0 {
		all = append(all, note(hourOther))
	}
	if age >= readingAge && !a.Large {
		all = append(all, note(hourEyes))
	}
	return all
}

// conditionsAsked asks for each condition where none is written, and for what the one who
// cleared the client said.
func conditionsAsked(a *program.Assessment) []program.Note {
	h := &a.Health
	if len(h.Conditions) == 0 {
		return []program.Note{note(hourConditions)}
	}
	if h.ClearedBy.Name == "" {
		return nil // the reasons for no program say it
	}
	values := []program.Value{text("name", h.ClearedBy.Name), date("date", h.ClearedBy.On)}
	for _, c := range h.Conditions {
		values = append(values, text("condition", c))
	}
	return []program.Note{note(hourCleared, values...)}
}

// ranges are what to look at of joints, and what nobody has measured of the body.
func (m *measures) ranges() []program.Note {
	var all []program.Note
	body := &m.athlete.Athlete
	hangs := m.road.Hands == program.HandsHang
	switch {
	case hangs:
		all = append(all, note(hourHang))
	case m.limits.neutralOnly:
		all = append(all, note(hourWristsSpared))
	default:
		all = append(all, note(hourWrists))
	}
	all = append(all, note(hourElbows))
	if !hangs {
		all = append(all, note(hourBlades))
	}
	if m.upside() {
		all = append(all, note(hourOverhead))
	}
	if body.Fold == 0 && m.road.Load == program.LoadLift {
		all = append(all, note(hourFold))
	}
	if m.road.Load.Repeats() || m.road.Load == program.LoadBalance {
		return all // lever arms are not reckoned with
	}
	if body.Straddle == 0 {
		all = append(all, note(hourStraddle))
	}
	if body.ArmSpan == 0 {
		all = append(all, note(hourArmSpan))
	}
	if body.BalancePoint == 0 {
		all = append(all, note(hourBalancePoint))
	}
	return all
}

// upside reports whether the road map's steps stand on the hands.
func (c *client) upside() bool { return c.road.Load.Repeats() || c.road.Load == program.LoadBalance }

// fewPulls is below how many pulls a band's curve has no check.
const fewPulls = 3

// measureRig is what to measure and to label of the client's kit.
func measureRig(a *program.Assessment) []program.Note {
	var all []program.Note
	var names []program.Value
	for _, b := range a.Bands {
		if !b.InUse(a.Measured) {
			continue
		}
		names = append(names, text("bands", b.Name))
		if len(b.Pulls) < fewPulls {
			all = append(all, note(hourPulls, text("band", b.Name), count("pulls", len(b.Pulls))))
		}
	}
	if len(names) > 0 {
		all = append(all, note(hourNames, names...))
	}
	g := &a.Hanging
	if len(names) > 0 && g.Anchor > 0 && g.Bar != g.Anchor {
		all = append(all, note(hourAnchor, metres("anchor", g.Anchor)))
	}
	if g.Bar > 0 {
		all = append(all, note(hourBar, metres("bar", g.Bar)))
	}
	return append(all, heightsOf(g)...)
}

// heightsOf are straps, pads and blocks to label with their lengths.
func heightsOf(g *program.Hanging) []program.Note {
	var all []program.Note
	for _, k := range []struct {
		code    string
		lengths []float64
	}{{hourStraps, long(g.Drops)}, {hourPads, g.Pads}, {hourBlocks, g.Blocks}} {
		var values []program.Value
		for _, l := range k.lengths {
			values = append(values, metres("lengths", l))
		}
		if len(values) > 0 {
			all = append(all, note(k.code, values...))
		}
	}
	return all
}

// long leaves out straps of no length.
func long(drops []float64) []float64 {
	return slices.DeleteFunc(slices.Clone(drops), func(d float64) bool { return centimetres(d) == 0 })
}

// firstRig is what the first week needs marked beside what hangs.
func (m *measures) firstRig(p *program.Program) []program.Note {
	var all []program.Note
	said := map[string]bool{}
	say := func(n program.Note) {
		if !said[n.Code] {
			said[n.Code] = true
			all = append(all, n)
		}
	}
	first := firstWeek(p)
	for _, s := range first.Sessions {
		for _, i := range s.Items {
			switch {
			case i.Ahead > 0:
				say(note(hourLean, metres("lean", i.Ahead)))
			case i.Scale > 0:
				say(note(hourScale, newtons("scale", i.Scale)))
			case i.Role == program.RoleMain && len(i.Rig.Bands) > 0 && i.HandsAhead > 0 && m.road.Hands != program.HandsHang:
				say(note(hourSpot, metres("ahead", i.HandsAhead)))
			}
		}
	}
	if m.upside() {
		say(note(hourWall))
	}
	if len(all) == 0 && len(first.Rig.Bands) == 0 {
		say(note(hourFloor))
	}
	return all
}
