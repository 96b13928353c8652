package planner

import (
	"slices"

	"gatepost/program"
)

// day is what one session is to hold before the minutes have their say.
type day struct {
	date     program.Date
	kind     program.WeekKind
	straight bool // straight-arm work today
	part     part
	sets     daySets
	load     *load
	number   int  // of the session in the block, for taking turns
	week     int  // of the block, from 0
	builds   int  // build weeks before this one
	fresh    bool // the freshest straight-arm day of its week
	hard     bool // on or after hard training elsewhere, and other days hold the main work
	check    bool // opens with a check hold
	open     bool // its last main set is an open one
	against  int  // sets that balance the work, on a day between straight-arm days
	rear     bool // a single one of them is the second of its kinds
	test     bool // the test's day
	oneTest  bool // the minutes allow a single maximal test
	clear    bool // within the rest before the test: no straight arms at all
}

// group is a part of a session that is kept or dropped as one.
type group struct {
	key   string // words key of what is said when it is dropped
	items []program.Prescription
}

// session fills a day's minutes: the floor that is never dropped, then groups by
// priority. What does not fit is dropped from the least important up, and said.
func (lo *layout) session(d day) program.Session {
	defer lo.stayAt(d.date)()
	minutes := 60 * lo.minutesOn(d.date)
	if d.hard {
		minutes = minutes * hardDay / 100
	}
	s := program.Session{Date: d.date}
	groups := lo.groups(d)
	for keep := len(groups); ; keep-- {
		for _, ratio := range []int{usualBalance, leastBalance} {
			items := lo.exercises.compose(d, groups[:keep], ratio)
			total := lo.lengthOn(d.date, items)
			if total <= minutes || keep == 0 {
				if d.kind == program.WeekBuild && len(lo.exercises.lower) > 0 {
					lo.exercises.goBack(items)
					total = lo.lengthOn(d.date, items)
				}
				s.Items = inOrder(items, d.open)
				s.Minutes = (total + 59) / 60
				s.Dropped = lo.exercises.dropped(d, s.Items, groups[keep:])
				return s
			}
		}
		if keep <= 1 && (d.sets.main > 1 || d.test && !d.oneTest) { // the main work or the tests alone are too long
			d.sets.main, d.oneTest = max(0, d.sets.main-1), d.test
			groups = lo.groups(d)
			keep = 2
		}
	}
}

// groups are a day's work in order of priority, the pulls aside: they go with
// the pushing that is kept. A block that has nothing else to test ends with the trunk.
func (lo *layout) groups(d day) []group {
	out := lo.bound(d, lo.withAdded(d, lo.wanted(d)))
	if !d.test || anyItem(out, func(i program.Prescription) bool { return i.Role == program.RoleTest }) {
		return out
	}
	test := lo.exercises.trunkTest(d)
	if len(test) > 0 { // in place of what it trains
		out = slices.DeleteFunc(out, func(g group) bool { return g.key == "role.trunk" })
	}
	return append([]group{{"role.test", test}}, out...)
}

func (lo *layout) wanted(d day) []group {
	if lo.practised != nil {
		return lo.practised(d)
	}
	if d.test {
		beside := group{"role.trunk", lo.exercises.trunk(d)}
		if d.load.main.none() && len(lo.open) == 0 { // the trunk is what is tested
			beside = group{"role.strength", lo.exercises.strength(d)}
		}
		return []group{{"role.test", lo.testItems(d)}, {"role.test", lo.tries(d)}, beside, {"role.mobility", lo.exercises.mobility(d)}}
	}
	var out []group
	add := func(key string, items ...program.Prescription) {
		if len(items) > 0 && items[0].Exercise != "" {
			out = append(out, group{key, items})
		}
	}
	if d.straight {
		add("role.main", lo.mainItems(d)...)
		add("role.test", lo.tries(d)...)
		add("role.ahead", lo.hold(d.load.heavy, program.RoleAhead, d.sets.heavy, aheadRest))
		add("role.second", lo.hold(d.load.second, program.RoleSecond, d.sets.second, secondRest))
		add("role.second", lo.hold(d.load.leans, program.RoleSecond, d.sets.leans, leanRest))
		out = append(out, lo.entryWork(d)...)
	}
	if len(lo.open) == 0 && lo.exercises.wantsStrength(d) {
		add("role.strength", lo.exercises.strength(d)...)
	}
	add("role.trunk", lo.exercises.trunk(d)...)
	if !lo.foldOpen() {
		add("role.mobility", lo.exercises.mobility(d)...)
	}
	add("role.mobility", lo.exercises.line(d)...)
	return out
}

// wantsStrength: a strength drill goes with every straight-arm day but the heavy
// one and one that is hard elsewhere; the days between pull.
func (x *exercises) wantsStrength(d day) bool { return d.straight && d.sets.heavy == 0 && !d.hard }

// mainItems are the main sets. One may stand apart: the first as a check hold after a
// deload; the last as an open set where a gate is asked for the second time, or as
// the longer one of its gate.
func (lo *layout) mainItems(d day) []program.Prescription {
	main := lo.hold(d.load.main, program.RoleMain, d.sets.main, mainRest)
	longer := d.load.main.longer()
	if !d.check && !d.open && longer == 0 || d.sets.main == 0 {
		return []program.Prescription{main}
	}
	apart := main
	apart.Sets, apart.Hold = 1, main.Hold+longer
	if d.check || d.open {
		apart.Role, apart.Check = program.RoleTest, true
		if lo.limits.maxTests {
			apart.Hold = 0 // as long as leaves two seconds
		}
	}
	if main.Sets--; main.Sets == 0 {
		return []program.Prescription{apart}
	}
	if d.check {
		return []program.Prescription{apart, main}
	}
	return []program.Prescription{main, apart}
}

// hold prescribes straight-arm work.
func (h *holds) hold(w work, role program.Role, sets, rest int) program.Prescription {
	if w.none() || sets == 0 {
		return program.Prescription{}
	}
	item := program.Prescription{
		Exercise: w.exercise(), Role: role, Step: w.step(), Rig: w.aid.Rig,
		Help: float64(w.aid.Help) / 10, Ahead: w.aid.Ahead, Scale: w.aid.Scale,
		Sets: sets, Hold: w.hold, Rest: rest, StraightArm: true,
		MaxHold: float64(w.max) / 10, Load: w.share,
	}
	if w.rung != nil {
		item.EachSide = w.rung.Sides == 2
	}
	if !w.aid.Rig.Free() && h.road.Hands != program.HandsHang { // whose hands are where the bar is
		item.HandsAhead = w.aid.Hold.HandsAheadOfAnchor
	}
	return item
}

// strength is the road map's drills by turns; who is on the floor practises balance as
// well.
func (x *exercises) strength(d day) []program.Prescription {
	purposes := slices.Clone(x.road.Strength)
	if d.load.main.floor != nil && !x.limits.elbowSore {
		purposes = append(purposes, program.ForBalance)
	}
	for i := range purposes {
		purpose := purposes[(d.number+i)%len(purposes)]
		if items := x.one(d, need{purpose: purpose, easier: x.isNew(d)}, program.RoleStrength); items != nil {
			return items
		}
	}
	return nil
}

func (x *exercises) trunk(d day) []program.Prescription {
	purposes := []program.Purpose{program.ForTrunk, program.ForCompression}
	n := need{purpose: purposes[d.number%2], bentArms: d.clear, easier: x.isNew(d), other: x.seldom() && d.number/2%2 == 1}
	return x.one(d, n, program.RoleTrunk)
}

func (x *exercises) mobility(d day) []program.Prescription {
	purpose := program.ForStraddle
	if m := x.road.Mobility; len(m) > 0 {
		purpose = m[d.number%len(m)]
	}
	if x.foldOpen() {
		purpose = program.ForFold
	}
	return x.one(d, need{purpose: purpose, bentArms: !d.straight, other: x.seldom() && d.number%2 == 1}, program.RoleMobility)
}

// seldom says that there are so few days that more than one exercise of a kind takes
// turns on them.
func (c *client) seldom() bool { return len(c.athlete.Training.Days) <= 2 }

// isNew reports whether the client is on the floor yet, or before the entry: all that goes
// beside the work is then its easier version.
func (x *exercises) isNew(d day) bool {
	return len(x.open) > 0 || d.load != nil && d.load.main.floor != nil
}

// line is the handstand line, where wrists and elbows may be loaded today and the entry
// does not train it.
func (x *exercises) line(d day) []program.Prescription {
	n := need{purpose: program.ForHandstand}
	e := x.choose(n)
	if d.clear || e == nil || x.misses(e) {
		return nil
	}
	n.easier = x.tooSoon(e, d)
	return x.one(d, n, program.RoleMobility)
}

// tooSoon reports whether an exercise would turn somebody new upside down who has shown
// neither it, for as long as it is printed, nor a step that goes there.
func (x *exercises) tooSoon(e *program.Exercise, d day) bool {
	return e.Trains[0] == program.ForHandstand && x.isNew(d) && !x.stood() && x.best(program.Hold{Exercise: e.ID}, nil) < e.Dose.Hold
}

// one prescribes the exercise chosen for a need, if there is one.
func (x *exercises) one(d day, n need, role program.Role) []program.Prescription {
	e := x.choose(n)
	if e == nil {
		return nil
	}
	return []program.Prescription{x.dose(d, e, role)}
}

// dose prescribes an exercise by its own dose, as far as that has moved in build weeks;
// half the sets in a deload and before the test, but one of each side.
func (x *exercises) dose(d day, e *program.Exercise, role program.Role) program.Prescription {
	dose := e.Dose
	if d.kind == program.WeekBuild {
		base := e
		e, dose = x.progressed(base, d, role, 0)
		x.noteLower(base, e, dose, d, role)
	}
	sets := max(1, dose.Sets)
	if d.kind == program.WeekDeload || d.kind == program.WeekTest {
		if sets = half(sets); e.EachSide {
			sets = max(sets, 2)
		}
	}
	return program.Prescription{
		Exercise: e.ID, Role: role, Sets: sets, Hold: dose.Hold, Reps: dose.Reps, Rest: dose.Rest,
		StraightArm: e.StraightArm, EachSide: e.EachSide,
	}
}
