package planner

import (
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// cannot says why a client cannot do an exercise: the kit that is not there, or the wrists.
func (c *client) cannot(e *program.Exercise) []program.Note {
	if missing := c.lacks(e); len(missing) > 0 {
		return []program.Note{note(noteWishKit, list("kit", "kit.", missing[0]))}
	}
	if c.bears(e) {
		return nil
	}
	if sore(c.athlete.Health.Wrists) {
		return []program.Note{note(noteWishWrists)}
	}
	return []program.Note{note(noteWishYoungWrists)}
}

// list are several things as one value, each with its words where it has some.
func list(name, section string, things []string) program.Value {
	v := program.Value{Name: name, Kind: program.ValueList}
	for i, thing := range things {
		if i > 0 {
			v.Text += "\n"
		}
		v.Text += section + thing
	}
	return v
}

// dayOf is a day of the plan as a wish meets it.
type dayOf struct {
	date     program.Date
	week     int // −1: not in the block, or over
	straight bool
	clear    bool    // within the rest before the test
	lean     float64 // m, of its lighter leans; 0: none
}

// dayAt finds a day that still is to be planned.
func (sn *season) dayAt(date program.Date) dayOf {
	d := dayOf{date: date, week: -1}
	for i := sn.past.over(); i < len(sn.weeks); i++ {
		w := &sn.weeks[i]
		if date < w.start || date >= w.start+7 || !slices.Contains(w.days, date) {
			continue
		}
		test := sn.weeks[len(sn.weeks)-1].test
		d.week, d.straight = i, slices.Contains(w.straight, date)
		d.clear = date < test && date > test-program.Date(sn.limits.testRest)
		break
	}
	return d
}

// careful reports whether rules of health go beyond those that everybody has: a joint is
// sore, or the client is young or older.
func (c *client) careful() bool {
	return soreAnywhere(c.athlete.Health) || c.limits.age < youthAge || c.limits.age >= olderAge
}

// harms says which rules of health stand against an exercise on a day. Spared is what it
// takes the place of, and loads already; nil where it comes on top.
func (c *client) harms(e, spared *program.Exercise, d dayOf) (why []program.Note) {
	for _, j := range joints {
		if sore(*j.state(&c.athlete.Health)) && (hardOnJoint(e, j.name) && (spared == nil || !hardOnJoint(spared, j.name)) || j.name == "elbows" && pullsStraight(e)) {
			why = append(why, note(noteWishJoint, word("joint", j.key)))
		}
	}
	if !e.StraightArm {
		return why
	}
	if c.limits.age < youthAge && !d.straight {
		why = append(why, note(noteWishYoungDays))
	}
	if d.clear && c.careful() {
		why = append(why, note(noteWishRestKept, count("days", c.limits.testRest)))
	}
	return why
}

// pullsStraight reports whether an exercise pulls with straight arms: sore elbows never do,
// whatever it takes the place of.
func pullsStraight(e *program.Exercise) bool { return e.Trains[0] == program.ForStraightPull }

// breaks says which other rules an exercise goes against on a day.
func (c *client) breaks(e *program.Exercise, d dayOf) (rules []program.Note) {
	if e.StraightArm && d.clear {
		rules = append(rules, note(noteWishTestRest, count("days", c.limits.testRest)))
	}
	if e.StraightArm && !d.straight && !d.clear {
		rules = append(rules, note(noteWishClose))
	}
	return rules
}

// hardOnJoint reports whether an exercise loads a joint with straight arms, by pushing or
// by hanging, the push-up of the shoulder blades among it, or on flat hands, as rocking on
// all fours does.
func hardOnJoint(e *program.Exercise, joint string) bool {
	hard := e.StraightArm || slices.Contains(straining, e.Trains[0]) || e.Grip == program.GripFlat || e.Trains[0] == program.ForBlades && e.Grip != program.GripNone
	return hard && slices.Contains(e.Loads, joint)
}

// spares says which rules of health stand against main work that is set for a week, in
// place of what was planned.
func (ds *doses) spares(i int, now, planned *load, allowed int) (why []program.Note) {
	w := &now.main
	gentle := ds.limits.gentle
	if longest := held(gentleEffort, w.max); gentle && w.hold > longest {
		why = append(why, note(noteWishGentle, seconds("hold", float64(w.hold)), seconds("most", float64(longest))))
	}
	if ds.limits.elbowSore && w.share > elbowLoad {
		why = append(why, note(noteWishElbowLoad, shareOf("share", w.share), shareOf("most", elbowLoad)))
	}
	if ds.limits.elbowSore && !sameHold(w, &planned.main) {
		why = append(why, note(noteWishElbowStep))
	}
	if counted := now.halfSeconds(); len(ds.limits.factors) > 0 && counted > max(allowed, planned.halfSeconds()) {
		why = append(why, note(noteWishBear, lasting("counted", float64(counted)/2), lasting("most", float64(allowed)/2)))
	}
	if ds.weeks[i].kind != program.WeekBuild && ds.careful() && total(now.sets) > total(planned.sets) {
		why = append(why, note(noteWishEasyKept))
	}
	return why
}

// before is the main work before a week: of the last build week, or in the first what was
// planned.
func (ds *doses) before(planned *load, lastBuild int) work {
	if lastBuild >= 0 && !ds.loads[lastBuild].main.none() {
		return ds.loads[lastBuild].main
	}
	return planned.main
}

// sameHold reports whether work is the same hold with the same help as other work.
func sameHold(w, other *work) bool {
	return w.called() == other.called() && w.aid.Help == other.aid.Help && w.aid.Scale == other.aid.Scale && w.aid.Ahead == other.aid.Ahead
}

// gripHere reports whether the hands hold a bar in line with the forearm where the client
// trains.
func (c *client) gripHere() bool {
	if c.here == nil || c.here.AllKit {
		return c.limits.grip
	}
	return slices.Contains(c.here.Kit, ladder.Parallettes)
}
