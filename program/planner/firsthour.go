package planner

import (
	"slices"

	"gatepost/program"
)

// # The first hour
//
// What is asked, looked at and tested in the first hour with a client follows from what
// the assessment leaves open. Of the tests those come first that are safest and say most:
// the entry, then for who holds nothing a lean, what a scale shows and a try; for others
// a step that nobody has tested and that is likely held for 6 to 25 s, and the first week's
// rig, which tells whether the bands hang as reckoned. A hold of less is strain and one of
// more says little of strength (our judgement; beyond 25 s what is not known of endurance
// grows, see package strength). Three in a quarter of an hour at the most, with their
// rests; the entry's may be four, for they are lighter.
const (
	saysLeast, saysMost = 60, 250 // tenths of a second
	strain              = 30      // tenths of a second, of a step beyond
	firstTests          = 3
	readingAge          = 45 // from when most need more light or larger type to read (common practice)
)

// FirstHour is the first hour with a client, whose program is the one on the wall.
func FirstHour(lib *program.Library, a *program.Assessment, p *program.Program) program.FirstHour {
	h := program.FirstHour{Client: p.Client, Skill: p.Skill, Ask: askFirst(a)}
	out, m, _ := begin(lib, a)
	if m == nil || len(p.Weeks) == 0 { // nobody trains before that is settled
		h.Ask = append(slices.Clone(p.Withheld), h.Ask...)
		h.Leave = []program.Note{note(hourLeaveCleared)}
		h.Rig = measureRig(a)
		return h
	}
	h.Ranges = m.ranges()
	h.Warmup = warmup(p)
	t := hourTests{plan: newFirst(m, out.Start), of: p}
	t.choose()
	h.Tests, h.Leave = t.tests, t.leave
	h.Rig = append(measureRig(a), m.firstRig(p)...)
	return h
}

// newFirst is a plan as far as what is likely held in its first week.
func newFirst(m *measures, start program.Date) *plan {
	lo, _ := firstPlan(m, start)
	if len(lo.weeks) > 0 && m.road.Load != program.LoadBalance {
		lo.leans = lo.body.Leans()
		lo.look = newOutlook(&lo.season)
	}
	return lo
}

// warmup is what the first session prepares with.
func warmup(p *program.Program) []program.Prescription {
	var all []program.Prescription
	for _, item := range firstWeek(p).Sessions[0].Items {
		if item.Role == program.RolePrepare {
			all = append(all, item)
		}
	}
	return all
}

// hourTests are the tests of the hour being chosen.
type hourTests struct {
	*plan
	of    *program.Program
	tests []program.FirstTest
	leave []program.Note
}

func (t *hourTests) add(item program.Prescription, why program.Note) {
	if item.Exercise != "" && len(t.tests) < firstTests {
		t.tests = append(t.tests, program.FirstTest{Prescription: item, Skill: t.road.ID, Why: why})
	}
}

func (t *hourTests) choose() {
	switch {
	case len(t.open) > 0:
		for _, item := range t.exercises.entryTests() {
			t.tests = append(t.tests, program.FirstTest{Prescription: item, Skill: t.road.ID, Why: note(hourWhyEntry)})
		}
		t.leave = append(t.leave, note(hourLeaveEntry))
	case t.road.Load == program.LoadBalance:
		t.practice()
	case !t.limits.hands:
		t.leave = append(t.leave, note(hourLeaveHands))
	case t.tested():
		t.next()
		t.firstWork()
		t.lean()
	default:
		t.lean()
		t.scale()
		t.try()
	}
	t.gently()
}

// practice is what is practised first: five tries, or of what is held at a wall a hold.
func (t *hourTests) practice() {
	item, ok := mainOf(t.of)
	if !ok {
		return
	}
	if item.Try {
		item.Sets = 5
		t.add(item, note(hourWhyTries))
		return
	}
	item.Sets, item.Hold, item.Check, item.Role = 1, 0, true, program.RoleTest
	t.add(item, note(hourWhyLine))
}

// next is the step above the hardest that was tested, whose hold is likely nearest to ten
// seconds: long enough to say something and short enough to say it of strength.
func (t *hourTests) next() {
	best, at := work{}, -1
	for i := len(t.body.Steps) - 1; i >= 0; i-- {
		r := &t.body.Steps[i]
		if shown := t.heldFree(r.ID); shown > 0 {
			t.leave = append(t.leave, note(hourLeaveHeld, step("step", r.ID), seconds("hold", shown)))
			break
		}
		w := t.freeTest(r, 0, t.likelyHold)
		if w.max >= saysLeast && w.max <= saysMost && t.testable(w.max) && (at < 0 || fromTen(w) < fromTen(best)) {
			best, at = w, i
		}
	}
	if at < 0 {
		return
	}
	t.add(t.testOf(best), note(hourWhyStep))
	for i := at + 1; i < len(t.body.Steps); i++ {
		if r := &t.body.Steps[i]; t.likelyHold(r.Free(), 0) < strain {
			t.leave = append(t.leave, note(hourLeaveFar, step("step", r.ID)))
			return
		}
	}
}

// fromTen is how far a likely hold is from ten seconds, as a ratio.
func fromTen(w work) float64 {
	ratio := float64(w.max) / 100
	return max(ratio, 1/ratio)
}

// heldFree is the longest free test of a step, s.
func (c *client) heldFree(id string) float64 {
	best := 0.0
	for _, h := range c.athlete.Tests {
		if h.Step == id && h.Rig.Free() && h.Scale == 0 {
			best = max(best, h.Seconds)
		}
	}
	return best
}

// firstWork is one set of the first week's main work, as printed, where something helps.
func (t *hourTests) firstWork() {
	item, ok := mainOf(t.of)
	if !ok || item.Rig.Free() && item.Scale == 0 {
		return
	}
	item.Sets = 1
	code := hourWhyRig
	if item.Rig.Pad > 0 || item.Rig.Block > 0 || item.Scale > 0 {
		code = hourWhyHelp
	}
	t.add(item, note(code, seconds("left", max(0, item.MaxHold-float64(item.Hold)))))
}

// lean is one of the first weeks' leans, where none was tested.
func (t *hourTests) lean() {
	floor := t.floorRung(program.RungLean)
	if floor == nil || slices.ContainsFunc(t.athlete.Tests, func(h program.Hold) bool { return h.Exercise == floor.Exercise }) {
		return
	}
	first := t.firstLean(floor)
	switch {
	case first.Ahead == 0 && t.tested(): // the block has none
		return
	case first.Find.Any(): // what the first card seeks is sought today
		first.Role, first.Rest, first.MaxHold = program.RoleTest, testRest, 0
		t.add(first, note(hourWhyLean))
		return
	}
	t.add(program.Prescription{Exercise: floor.Exercise, Role: program.RoleTest, Sets: 1, Check: true, Rest: testRest,
		Ahead: max(first.Ahead, firstLean), StraightArm: true}, note(hourWhyLean))
}

// firstLean is the first lean of the block; the zero one where it has none.
func (t *hourTests) firstLean(floor *program.Rung) program.Prescription {
	for _, w := range t.of.Weeks {
		for _, s := range w.Sessions {
			for _, i := range s.Items {
				if i.Ahead > 0 && (i.Exercise == floor.Exercise || i.Exercise == floor.Repeated) {
					return i
				}
			}
		}
	}
	return program.Prescription{}
}

// scale is the first step with the toes on a scale: what it still shows is what is missing.
func (t *hourTests) scale() {
	if floor := t.floorRung(program.RungScale); floor != nil && slices.Contains(t.athlete.Kit, scaleKit) {
		t.add(program.Prescription{Exercise: floor.Exercise, Role: program.RoleTest, Sets: 1, Hold: mainLeast, Rest: testRest, StraightArm: true}, note(hourWhyScale))
	}
}

// try is the first step with the least help there is, once; nobody tries with sore elbows.
func (t *hourTests) try() {
	if t.limits.elbowSore {
		return
	}
	item := t.firstTry(0)
	item.Role, item.Try, item.Sets, item.Hold, item.Rest = program.RoleTest, true, 1, 0, testRest
	t.add(item, note(hourWhyTry))
}

// gently says what is not done to its end, and for whom.
func (t *hourTests) gently() {
	for _, j := range joints {
		if sore(*j.state(&t.athlete.Health)) {
			t.leave = append(t.leave, note(hourLeaveSore, word("joint", j.key)))
		}
	}
	switch {
	case t.limits.age < youthAge:
		t.leave = append(t.leave, note(hourLeaveYouth))
	case t.limits.returning:
		t.leave = append(t.leave, note(hourLeaveBest))
	case t.of.Capacity.Typical && t.limits.maxTests && len(t.body.Bands) > 1 && !t.of.Capacity.Untested:
		t.leave = append(t.leave, note(hourLeavePair))
	}
}

// firstWeek is the first week that has a session; a program has one.
func firstWeek(p *program.Program) *program.Week {
	i := slices.IndexFunc(p.Weeks, func(w program.Week) bool { return len(w.Sessions) > 0 })
	return &p.Weeks[i]
}

// mainOf is the first week's main work.
func mainOf(p *program.Program) (program.Prescription, bool) {
	for _, s := range firstWeek(p).Sessions {
		for _, item := range s.Items {
			if item.Role == program.RoleMain || item.Try && item.Hold > 0 {
				return item, true
			}
		}
	}
	return program.Prescription{}, false
}

// BlankHour is the first hour with somebody of whom nothing is written yet: what everybody
// is asked, and the first thing to test of each road map.
func BlankHour(lib *program.Library) program.FirstHour {
	h := program.FirstHour{
		Ask:    []program.Note{note(hourSkill), note(hourConditions), note(hourJoints), note(hourBeginner), note(hourOther)},
		Ranges: []program.Note{note(hourBody), note(hourWrists), note(hourElbows), note(hourBlades), note(hourOverhead), note(hourStraddle)},
		Leave:  []program.Note{note(hourLeaveBlank)},
		Rig:    []program.Note{note(hourPullAll), note(hourHeights)},
	}
	for i := range lib.RoadMaps {
		if item, ok := firstOf(&lib.RoadMaps[i]); ok {
			h.Tests = append(h.Tests, program.FirstTest{Prescription: item, Skill: lib.RoadMaps[i].ID, Why: note(hourWhySkill, text("skill", lib.RoadMaps[i].Name))})
		}
	}
	return h
}

// firstOf is the first thing to test of a road map: of its entry, else its lean, else its
// first step.
func firstOf(m *program.RoadMap) (program.Prescription, bool) {
	item := program.Prescription{Role: program.RoleTest, Sets: 1, Check: true, Rest: testRest}
	for _, asked := range m.Entry {
		if asked.Fold == 0 {
			item.Exercise, item.Ahead = asked.Exercise, asked.Ahead
			if asked.Reps > 0 {
				item.Reps, item.Check = asked.Reps, false
			}
			return item, true
		}
	}
	for _, r := range m.Rungs {
		if r.Kind == program.RungLean {
			item.Exercise, item.Ahead = r.Exercise, firstLean
			return item, true
		}
	}
	if len(m.Steps) == 0 {
		return item, false
	}
	item.Exercise, item.Step, item.Check, item.Try = m.Steps[0].Exercise, m.Steps[0].ID, false, true
	return item, true
}
