package planner

import (
	"cmp"
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
	"gatepost/program/strength"
)

// past is what a plan begins from that is not the first: weeks that are over and
// what the log has taught. The zero past, with a state, is that of a first plan.
type past struct {
	on      program.Date   // of the review; 0 in a first plan
	weeks   []program.Week // of this block, over: as printed; away where nothing was done
	counted []int          // half seconds done in each of them
	fell    []fallen       // what did not come off in each of them
	before  []weekDone     // weeks of earlier blocks
	last    load           // straight-arm work of the last build week, as printed
	lastOf  int            // number of the week that this is of; 0: none
	sets    int            // straight-arm sets of that week, kept over the end of a block
	rigged  int            // build weeks in a row, the last one included, with its step and rig
	step    string         // id of the step worked on; empty on the floor

	state   strength.State // at the first week to plan
	career  strength.Career
	lost    float64 // ln C lost in weeks off and not yet back
	off     int     // weeks off in a row right before
	tested  bool    // a hold was read
	reached reached // by who has found a mark and held no step yet

	marks knownMarks        // that the log tells of
	finds []program.Measure // what the week that has begun finds, still to come

	passed float64 // N·m, load of the hardest step whose gate is passed
	open   bool    // that step was left although its gate is not passed
	// its gate was shown but for words that nobody has written, in two weeks
	unanswered bool

	gateDays int       // days that count for the gate of the step worked on
	shown    []shown   // free holds of the goal's seconds in the log
	short    []tooLong // printed holds that nobody reached lately
	rest     rest      // what a bad pain leaves for the sessions ahead
	repeat   bool      // the gate was tried and not passed: repeat the week
	moreHelp bool      // repeated twice: one step of help back
}

// shown is a load held free for the goal's seconds.
type shown struct {
	load float64
	on   program.Date
}

// over is how many weeks of the block are over.
func (b *past) over() int { return len(b.weeks) }

// stays is how many build weeks the step stays what it is: one that is repeated,
// or those in which help came back.
func (b *past) stays() int {
	switch {
	case b.moreHelp:
		return backWeeks
	case b.repeat:
		return 1
	}
	return 0
}

// main is the main work of the last build week.
func (b *past) main() work { return b.last.main }

// hangs says that a rig is the one of the last build week.
func (b *past) hangs(r *ladder.Rung, o ladder.Aid) bool {
	last := b.last.main
	return last.rung != nil && last.floor == nil && last.rung.ID == r.ID && ladder.SameRig(last.aid.Rig, o.Rig)
}

// markShown notes the steps that the log has shown held, as of the day they were.
func (b *past) markShown(out []program.Forecast, ladder []ladder.Rung) {
	for i := range out {
		for _, s := range b.shown {
			if f := &out[i]; !f.Held && ladder[i].Load <= s.load {
				f.Held, f.Chance, f.Early, f.Likely, f.Late = true, 1, s.on, s.on, s.on
			}
		}
	}
}

// now is the Monday of the first week to plan.
func (sn *season) now() program.Date { return sn.weeks[sn.past.over()].start }

// firstBuild is the first build week to plan, −1 where there is none.
func (sn *season) firstBuild() int {
	for i := sn.past.over(); i < len(sn.weeks); i++ {
		if sn.weeks[i].kind == program.WeekBuild {
			return i
		}
	}
	return -1
}

// remember counts what was done, and starts the printed weeks with those over.
func (lo *layout) remember(v *volume) (out []program.Week, lastBuild, session int) {
	lastBuild = -1
	add := func(w weekDone) {
		if w.halfSeconds == 0 && w.kind == program.WeekBuild {
			w.kind = program.WeekAway // no hold that counts: as good as off
		}
		v.add(w)
	}
	for _, w := range lo.past.before {
		add(w)
	}
	for i := range lo.past.weeks {
		w := &lo.past.weeks[i]
		done := weekDoneOf(w, lo.weeks[i].kind, lo.past.counted[i])
		done.halfSeconds, done.printed = lo.bearable(w, done.halfSeconds), lo.bearable(w, done.printed)
		add(done)
		if lo.weeks[i].kind == program.WeekBuild {
			lastBuild = i
		}
		session += len(lo.weeks[i].days)
	}
	if lo.past.lastOf > 0 { // weeks of the coach's own hand were passed over
		lastBuild = lo.past.lastOf - 1
	}
	if lastBuild >= 0 {
		lo.loads[lastBuild], lo.main[lastBuild] = lo.past.last, lo.past.last.main
	}
	lo.exercises.came, lo.anew, lo.behind = map[string]int{}, 0, nil
	lo.exercises.back, lo.exercises.lower = map[string]int{}, map[string]lowered{}
	lo.sought = lo.stillSought()
	for i := range lo.past.weeks {
		lo.comeIn(i, &lo.past.weeks[i])
	}
	return slices.Clone(lo.past.weeks), lastBuild, session
}

// bearable is how much of a week's work counts as a start for the next: where it
// was printed for joints that were well then, as much as sore ones bear.
func (c *client) bearable(printed *program.Week, halfSeconds int) int {
	if printed.Effort > c.limits.effort {
		return scale(halfSeconds, c.limits.factors)
	}
	return halfSeconds
}

// resumed is the step that the weeks ahead go on with: the one worked on, or,
// where strength was lost, the next below that can be trained. Sore elbows stay.
func (rt *route) resumed() (stage, bool) {
	first := rt.firstBuild()
	if rt.past.step == "" || first < 0 {
		return stage{rung: onTheFloor}, rt.limits.elbowSore && !rt.past.last.main.none()
	}
	id := rt.past.step
	if !rt.limits.elbowSore {
		id = cmp.Or(rt.stepBeforeOff(), id)
	}
	return rt.enterableBelow(min(rt.rungBelow(id), rt.hardestStep())+1, first), rt.limits.elbowSore
}

// rungBelow is a step's rung on the ladder; where it has none any more, the
// hardest one that loads no more.
func (c *client) rungBelow(id string) int {
	load, at := 0.0, onTheFloor
	for i := range c.body.All {
		if c.body.All[i].ID == id {
			load = c.body.All[i].Load
		}
	}
	for i := range c.body.Steps {
		if c.body.Steps[i].Load <= load {
			at = i
		}
	}
	return at
}

// still is the work of an easy week that goes on from weeks that are over; where
// that has become too hard, what can be done now.
func (rt *route) still(w work, s stage, week int) work {
	next := rt.again(w, week)
	if held(rt.limits.effortIn(week), next.max) < deloadLeast || rt.limits.elbowSore && next.share > elbowLoad {
		return rt.alone(s, week)
	}
	return next
}

// tooLittle says that a rig helps less than the weeks behind allow: after a gate
// not passed in three weeks one step of help comes back for two build weeks, and
// sore elbows get no less help than they had.
func (rt *route) tooLittle(r *ladder.Rung, o ladder.Aid, week int) bool {
	least, weeks := rt.leastHelpBack(r)
	return o.Help < least && rt.buildsBefore(week) < weeks
}

// leastHelpBack is the least help at a step, in tenths of a newton, and for how
// many build weeks; 0 where any will do, or where no rig with as much serves.
func (rt *route) leastHelpBack(r *ladder.Rung) (help, weeks int) {
	main := rt.past.main()
	if main.rung == nil || main.rung.ID != r.ID || main.floor != nil {
		return 0, 0
	}
	from, weeks := main.aid.Help, len(rt.weeks)
	switch {
	case rt.past.moreHelp:
		from++
		if !rt.limits.elbowSore {
			weeks = backWeeks
		}
	case !rt.limits.elbowSore:
		return 0, 0
	}
	best := 0
	for _, o := range r.Aids() {
		if o.Help >= from && (best == 0 || o.Help < best) && rt.keeps(r, o, rt.firstBuild(), rt.limits.elbowSore) {
			best = o.Help
		}
	}
	return best, weeks
}

func (sn *season) buildsBefore(week int) int {
	n := 0
	for i := sn.past.over(); i < week; i++ {
		if sn.weeks[i].kind == program.WeekBuild {
			n++
		}
	}
	return n
}
