package planner

import (
	"slices"

	"gatepost/program"
)

// Of what was shown, entry work does such a share in so many sets, a little more every
// week, by no more than a fifth of the week before, and never all of it. After each easy
// week its first day begins with a check of each thing that is trained itself, in place of a set: the log then
// says more, and the share is of that (our judgement).
const (
	entryShare, entryMost = 60, 90 // per cent
	entryRise             = 20     // per cent
	entrySets             = 4
)

// entryWork trains what is missing: each thing at a share of what was shown, or, where
// nobody has shown a second of it, its easier version, unless that is trained as well. A
// fold is moved at the session's end. The last two take turns to come first, so that minutes
// which are too few for all leave neither out for good.
func (lo *layout) entryWork(d day) (out []group) {
	if len(lo.open) == 0 {
		return nil
	}
	x, done, part := &lo.exercises, map[string]bool{}, lo.comebackPart(d.week)
	for _, o := range x.open {
		e := x.opener(&o)
		if e == nil || done[e.ID] {
			continue
		}
		done[e.ID] = true
		role := program.RoleStrength
		if e.Trains[0] == program.ForCompression { // which no pulling balances
			role = program.RoleTrunk
		}
		last := lo.lastEntry(e.ID)
		item := x.dose(d, e, role) // an easier version moves on as anything does, and what lies on the floor
		if e.ID == o.Exercise && (o.shown > 0 || e.Grip != program.GripNone) {
			item = x.dose(day{kind: d.kind}, e, role)
			o.share(&item, d, last)
		} else if _, easy := lo.returning(d.week); !easy {
			last.Sets = 0 // it began anew, and moves on
		}
		if part < 100 {
			backTo(&item, part, last)
		}
		out = append(out, group{"role.strength", x.checked(&o, item, d)})
	}
	if x.foldOpen() {
		out = append(out, group{"role.mobility", x.mobility(d)})
	}
	days := len(lo.athlete.Training.Days)
	if n := len(out); n > 1 && d.number*min(days, lo.limits.straightDays)/days%2 == 1 {
		out[n-2], out[n-1] = out[n-1], out[n-2]
	}
	return out
}

// checked is a day's work with a check before it, where the day has one; not of what was
// never tried, which waits for the block's last day.
func (x *exercises) checked(o *opening, item program.Prescription, d day) []program.Prescription {
	check, ok := x.entryTest(o)
	if !d.check || !ok || item.Exercise != o.Exercise {
		return []program.Prescription{item}
	}
	check.Rest, check.Ahead = item.Rest, item.Ahead
	item.Sets--
	return []program.Prescription{check, item}
}

// backTo takes from entry work after weeks off the share of sets that main work loses, and what
// would be more than before them.
func backTo(item *program.Prescription, part int, before program.Prescription) {
	item.Sets = max(1, item.Sets*part/100)
	if before.Sets > 0 {
		item.Hold, item.Reps, item.Ahead = min(item.Hold, before.Hold), min(item.Reps, before.Reps), min(item.Ahead, before.Ahead)
	}
}

// lastEntry is what the last build week had of an exercise; no sets where it had none.
func (lo *layout) lastEntry(exercise string) program.Prescription {
	for i := len(lo.behind) - 1; i >= 0; i-- {
		if lo.weeks[i].kind != program.WeekBuild { // a week that was missed is none, whatever was printed
			continue
		}
		for _, s := range lo.behind[i].Sessions {
			for _, item := range s.Items {
				if item.Exercise == exercise && item.Role != program.RoleTest {
					return item
				}
			}
		}
	}
	return program.Prescription{}
}

// opener is the exercise that trains what is missing; nil where there is none for this
// client.
func (x *exercises) opener(o *opening) *program.Exercise {
	e, ok := x.lib.Exercise(o.Exercise)
	if !ok || o.Fold > 0 {
		return nil
	}
	if o.shown <= 0 || !x.can(e) {
		e = x.easier(e, need{purpose: e.Trains[0]})
	}
	if !x.can(e) {
		return nil
	}
	return e
}

// share prescribes a share of what was shown; of what nobody has shown, half a dose.
func (o *opening) share(item *program.Prescription, d day, last program.Prescription) {
	switch {
	case o.Ahead > 0:
		o.lean(item, d, last)
		return
	case o.shown <= 0:
		less := func(n int) int { return max(0, min(half(n)+d.builds/2, n-1)) }
		item.Hold, item.Reps = less(item.Hold), less(item.Reps)
		return
	}
	item.Sets = entrySets
	if d.kind != program.WeekBuild {
		item.Sets = half(entrySets)
	}
	item.Reps, item.Hold = 0, 0
	more := d.builds
	if d.kind != program.WeekBuild {
		more = max(0, more-1) // as the week before
	}
	if o.Reps > 0 {
		item.Reps = o.part(more/2, last.Reps)
	} else {
		item.Hold = o.part(more, last.Hold)
	}
}

// part is a share of what was shown and so much more, and what the week before allows.
func (o *opening) part(more, last int) int {
	n := min(o.shown*entryShare/100+more, o.shown*entryMost/100)
	if last > 0 {
		n = min(n, last+max(1, last*entryRise/100))
	}
	return max(1, n)
}

// lean prescribes a lean as far as was shown, or half as far as is asked, two centimetres
// more every second build week, for two thirds of the seconds (our judgement).
func (o *opening) lean(item *program.Prescription, d day, last program.Prescription) {
	cm := o.shown
	if cm <= 0 {
		cm = centimetres(o.Ahead) / 2
	}
	cm = min(cm+d.builds/2*2, centimetres(o.Ahead))
	if before := centimetres(last.Ahead); before > 0 {
		cm = min(cm, before+2)
	}
	item.Reps, item.Hold, item.Ahead = 0, max(1, int(o.Seconds)*2/3), float64(cm)/100
}

// entryTests are the tests of a block that trains its entry: each missing thing once, a
// hold with two seconds left.
func (x *exercises) entryTests() (out []program.Prescription) {
	for _, o := range x.open {
		if item, ok := x.entryTest(&o); ok {
			out = append(out, item)
		}
	}
	return out
}

// entryTest is a test of one missing thing; none where this client can't do it, nor of a
// fold, which is measured.
func (x *exercises) entryTest(o *opening) (item program.Prescription, ok bool) {
	e, ok := x.lib.Exercise(o.Exercise)
	if !ok || !x.can(e) || o.Fold > 0 {
		return item, false
	}
	item = x.dose(day{}, e, program.RoleTest)
	item.Sets, item.Rest, item.Ahead = 1, testRest, o.Ahead
	if item.Reps, item.Hold = o.Reps, 0; o.Reps == 0 {
		item.Check = true
	}
	return item, true
}

// checksEntry reports whether a session tests what an entry asks for.
func checksEntry(s program.Session) bool {
	return slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return isEntryCheck(&i) })
}

// isEntryCheck reports whether an item tests what an entry asks for: of no step, and of no
// reckoned length. It is no main work.
func isEntryCheck(item *program.Prescription) bool {
	return item.Role == program.RoleTest && item.Step == "" && item.MaxHold == 0 && !item.Try
}
