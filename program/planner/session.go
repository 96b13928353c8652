package planner

import "gatepost/program"

// day is what one session is to hold before the minutes have their say.
type day struct {
	date     program.Date
	kind     program.WeekKind
	straight bool // straight-arm work today
	part     part
	sets     daySets
	load     *load
	number   int  // of the session in the block, for taking turns
	check    bool // opens with a check hold
	pulls    int  // sets of pulling, on a day between straight-arm days
	rear     bool // a single set of pulling is for the rear shoulder
	test     bool // the test's day
	clear    bool // within the rest before the test: no straight arms at all
}

// Times of a session in seconds.
const (
	prepareTime      = 300
	prepareTimeShort = 240 // in a session of twenty minutes
	shortSession     = 20  // min
	changeOver       = 60  // to set up the next item
	mainRest         = 150
	aheadRest        = 180
	secondRest       = 90
	leanRest         = 90
	testRest         = 300 // between maximal holds
)

// group is a part of a session that is kept or dropped as one.
type group struct {
	key   string // words key of what is said when it is dropped
	items []program.Prescription
}

// session fills a day's minutes: the floor that is never dropped, then groups by
// priority. What does not fit is dropped from the least important up, and said.
func (p *plan) session(d day) program.Session {
	minutes := 60 * p.athlete.Training.Minutes
	s := program.Session{Date: d.date}
	groups := p.groups(d)
	for keep := len(groups); ; keep-- {
		for _, ratio := range []int{100, 80} {
			items := p.compose(d, groups[:keep], ratio)
			total := p.length(items)
			if total <= minutes || keep == 0 {
				s.Items = inOrder(items)
				s.Minutes = (total + 59) / 60
				s.Dropped = p.dropped(d, groups[keep:])
				return s
			}
		}
		if keep <= 1 && d.sets.main > 1 { // the main work alone is too long
			d.sets.main--
			groups = p.groups(d)
			keep = 2
		}
	}
}

// groups are a day's work in order of priority, the pulls aside: they go with
// the pushing that is kept.
func (p *plan) groups(d day) []group {
	if d.test {
		return []group{{"role.test", p.testItems(d)}, {"role.trunk", p.trunk(d)}, {"role.mobility", p.mobility(d)}}
	}
	var out []group
	add := func(key string, items ...program.Prescription) {
		if len(items) > 0 && items[0].Exercise != "" {
			out = append(out, group{key, items})
		}
	}
	if d.straight && !d.load.main.none() {
		add("role.main", p.mainItems(d)...)
		add("role.ahead", p.hold(d.load.ahead, program.RoleAhead, d.sets.ahead, aheadRest))
		add("role.second", p.hold(d.load.second, program.RoleSecond, d.sets.second, secondRest))
		add("role.second", p.hold(d.load.leans, program.RoleSecond, d.sets.leans, leanRest))
	}
	if p.wantsStrength(d) {
		add("role.strength", p.strength(d)...)
	}
	add("role.trunk", p.trunk(d)...)
	add("role.mobility", p.mobility(d)...)
	add("role.mobility", p.line(d)...)
	return out
}

// wantsStrength: a strength drill goes with every straight-arm day but the heavy
// one; the days between pull.
func (p *plan) wantsStrength(d day) bool { return d.straight && d.sets.ahead == 0 }

// mainItems are the main sets, the first of them a check hold after a deload.
func (p *plan) mainItems(d day) []program.Prescription {
	main := p.hold(d.load.main, program.RoleMain, d.sets.main, mainRest)
	if !d.check || d.sets.main == 0 {
		return []program.Prescription{main}
	}
	check := p.hold(d.load.main, program.RoleTest, 1, mainRest)
	check.Check = true
	if p.limits.maxTests {
		check.Hold = 0 // as long as leaves two seconds
	}
	if main.Sets--; main.Sets == 0 {
		return []program.Prescription{check}
	}
	return []program.Prescription{check, main}
}

// hold prescribes straight-arm work.
func (p *plan) hold(w work, role program.Role, sets, rest int) program.Prescription {
	if w.none() || sets == 0 {
		return program.Prescription{}
	}
	item := program.Prescription{
		Exercise: w.exercise(), Role: role, Step: w.step(), Rig: w.option.rig,
		Help: float64(w.option.help) / 10, Ahead: w.ahead, Scale: w.scale,
		Sets: sets, Hold: w.hold, Rest: rest, StraightArm: true,
		MaxHold: float64(w.max) / 10, Load: w.share,
	}
	if w.rung != nil {
		item.EachSide = w.rung.Sides == 2
	}
	if !w.option.rig.Free() {
		item.HandsAhead = w.option.hold.HandsAheadOfAnchor
	}
	return item
}

// testItems are the block's closing test: the hardest step up to the goal of
// which a free hold is near, then the step worked on, free where it can be.
func (p *plan) testItems(d day) []program.Prescription {
	w, week := d.load.main, len(p.weeks)-1
	if w.none() {
		return nil
	}
	if w.rung != nil && w.floor == nil && !p.limits.elbowSore {
		if free := p.freeTest(w.rung, week, p.look.maxHold); p.testable(free.max) {
			w = free
		}
	}
	if !p.limits.maxTests {
		item := p.hold(w, program.RoleTest, 1, testRest)
		item.Check = true
		item.Hold = max(deloadLeast, min(held(gentleEffort, w.max), mainMost))
		return []program.Prescription{item}
	}
	var items []program.Prescription
	for i := len(p.body.ladder) - 1; i > p.index(w.rung) && w.floor == nil; i-- {
		if hard := p.freeTest(&p.body.ladder[i], week, p.likelyHold); p.testable(hard.max) {
			items = append(items, p.toTheEnd(hard))
			break
		}
	}
	return append(items, p.toTheEnd(w))
}

// freeTest is a free hold of a rung in a week, by the cautious or the likely hold.
func (p *plan) freeTest(r *rung, week int, hold func(option, int) int) work {
	w := work{rung: r, option: r.rigs[0], max: hold(r.rigs[0], week)}
	w.share = p.look.shareHeld(w.max)
	return w
}

// toTheEnd is a maximal hold: as long as it stays clean.
func (p *plan) toTheEnd(w work) program.Prescription {
	item := p.hold(w, program.RoleTest, 1, testRest)
	item.Max, item.Hold = true, 0
	return item
}

// testable says whether a predicted hold, in tenths, is long enough to be tested:
// four seconds, or four at a gentle effort where nothing is tested to its end.
func (p *plan) testable(max int) bool {
	if p.limits.maxTests {
		return max >= 10*deloadLeast
	}
	return held(gentleEffort, max) >= deloadLeast
}

// strength is a pushing drill with bent arms and a straight-arm raise by turns.
func (p *plan) strength(d day) []program.Prescription {
	purposes := []program.Purpose{program.ForPush, program.ForRaise}
	if d.number%2 == 1 {
		purposes = []program.Purpose{program.ForRaise, program.ForPush}
	}
	for _, purpose := range purposes {
		if items := p.one(d, need{purpose: purpose, easier: d.load.main.floor != nil}, program.RoleStrength); items != nil {
			return items
		}
	}
	return nil
}

func (p *plan) trunk(d day) []program.Prescription {
	purposes := []program.Purpose{program.ForTrunk, program.ForCompression}
	return p.one(d, need{purposes[d.number%2], d.clear, d.load.main.floor != nil}, program.RoleTrunk)
}

func (p *plan) mobility(d day) []program.Prescription {
	return p.one(d, need{purpose: program.ForStraddle, bentArms: !d.straight}, program.RoleMobility)
}

// line is the handstand line, where wrists and elbows may be loaded today.
func (p *plan) line(d day) []program.Prescription {
	if d.clear {
		return nil
	}
	return p.one(d, need{purpose: program.ForHandstand}, program.RoleMobility)
}

// one prescribes the exercise chosen for a need, if there is one.
func (p *plan) one(d day, n need, role program.Role) []program.Prescription {
	e := p.choose(n)
	if e == nil {
		return nil
	}
	return []program.Prescription{p.dose(d, e, role)}
}

// dose prescribes an exercise by its own dose, half the sets in a deload and
// before the test.
func (p *plan) dose(d day, e *program.Exercise, role program.Role) program.Prescription {
	sets := max(1, e.Dose.Sets)
	if d.kind == program.WeekDeload || d.kind == program.WeekTest {
		sets = half(sets)
	}
	return program.Prescription{
		Exercise: e.ID, Role: role, Sets: sets, Hold: e.Dose.Hold, Reps: e.Dose.Reps, Rest: e.Dose.Rest,
		StraightArm: e.StraightArm, EachSide: e.EachSide,
	}
}
