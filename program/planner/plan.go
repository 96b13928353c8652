// Package planner turns an assessment into a dated program. It asks package ladder what
// a body can do and package strength what it will; it formats nothing and reads no file,
// clock or dice.
//
// # The way through
//
//  1. clearance: who needs somebody's word first gets a reason and no program.
//  2. body: the road map in this body's order, every rig's load at every step.
//  3. capacity: the tests become a torque that can be held twelve seconds, with
//     a range, and grow week by week.
//  4. calendar: build, deload, away and test weeks; straight-arm days 48 h apart.
//  5. stages: each build week's step, decided by the forecast; never back, never
//     past the goal, entered only where some rig keeps it trainable, and left only
//     after its gate week.
//  6. rigs: the bands of all build weeks chosen together, exactly.
//  7. dose and volume: sets, within a weekly rise of a tenth or one main set, or a
//     beginner's start, and under a ceiling that follows the present spell.
//  8. sessions: a floor of preparation, then work by priority until the minutes
//     are full; pulling matches pushing.
//  9. outcome: forecasts, gates, what comes after, notes.
//
// Once there is a log, [Read] lays it beside the plans that hung on the wall: the
// estimate follows the sets, gates and joints are looked at, and the same steps
// run again for the weeks ahead, from what was done.
//
// # What holds for every plan
//
// Main holds are .60 to .75 of the predicted maximal hold wherever a rig, or a
// neighbouring step, gives eight seconds (80 % in the heavy work): effort comes first,
// then ten seconds, then little help. They last 10 to 15 s where that goes, else 5 to
// 9 s. A gate week holds what its gate asks, all of it, or is none. Within a step help
// never rises. Deloads come every fourth week, every third for sore joints, the young,
// those from 45 on and those coming back; who trains once or twice a week has them
// later (deloadEvery). No dose stays the same for more than three build weeks, and who
// holds no step yet tries the first one every week. After bad news no day gets harder:
// it is held to the plan without the news (gentler.go, asif.go, bound.go). Sessions
// lie on the client's days and fit the minutes, two thirds of them on a day of hard
// training elsewhere and after it, where other days hold the main work. Where rules
// conflict, health comes first, then the minutes, the weekly seconds, the kit, the
// holds, the rhythm, the help and the balance of pulling; a note says what gave way.
//
// A public program is planned once for each starting level, as the assessment of
// a mean body that has just reached it: see Levels.
//
// The same assessment gives the same plan, and an assessment moved by whole
// weeks the same plan moved.
package planner

import (
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// A plan is laid in courses: each knows those below it, and none above.

// client is who the plan is for, and what is so whatever week it is.
type client struct {
	lib     *program.Library
	road    *program.RoadMap
	athlete *program.Assessment
	body    *ladder.Body
	limits  limits
	today   program.Date  // first day to plan: a band retired by then is none
	hand    *hand         // what the coach asks for by hand; nil: nothing
	here    *program.Wish // the place that a day in the making is spent at; nil: where it always is
	open    []opening     // what is missing of the road map's entry
	omitted []ladder.Rung // steps below the goal's that are left out for kit, a block or wrists
	barred  bool          // the goal's step is for wrists that bear flat hands: trained towards only
}

// measures are what the client was tested by.
type measures struct {
	client
	clashed []clash // tests that contradict each other
}

// season is the block's weeks, and what came before them.
type season struct {
	measures
	weeks  []week
	past   past           // what is over; nothing in a first plan
	behind []program.Week // weeks so far, as they are printed
	anew   int            // build weeks before work began anew
}

// holds is what can be held in each week, with what help, and for how long.
type holds struct {
	season
	look        outlook
	leans       []ladder.Aid // the nearest first
	gentlerThan []otherPlan  // plans that this one may not ask more than
	least       [][]work     // main work of other plans, by week: what asks more is no choice
	leastHeavy  [][]work     // the same of heavy work
	known       knownMarks   // that tests and log have shown
	sought      []sought     // marks that the cards made so far find
}

// route is which step is worked on in which week, and with which bands.
type route struct {
	holds
	onWall   []program.Week // as they hang; none in a first plan
	gateless bool           // no gate weeks: the bands allow none
	noRoom   []crowded      // gate weeks that had no room for all of the gate
}

// doses is how much straight-arm work each week has.
type doses struct {
	route
	main   []work // by week
	loads  []load // by week
	bounds bounds // of the week in the making
}

// exercises chooses what a session has beside its straight-arm work.
type exercises struct {
	*client
	chosen map[need]*program.Exercise
	came   map[string]int     // build weeks before the one in which an exercise came in
	back   map[string]int     // build weeks that an exercise goes back, because it did not come off
	lower  map[string]lowered // what exercises go back to, on the day in the making
}

// layout lays the weeks out in sessions.
type layout struct {
	doses
	exercises exercises
	practised func(day) []group // of balance: what a day is for, in place of what is held
	most      int               // half seconds that the week in the making may hold
}

// plan is one client's plan in the making.
type plan struct {
	layout
	compared bool // made for others to be held to: weeks and forecasts are all that counts
}

// Plan makes a client's program. Problems are what the numbers find wrong in the
// assessment (a band whose pulls disagree, a balance point that fits no body);
// where one of them stops, the program is not to be used. A program that may not
// be made, for want of clearance, is a result: Withheld says why.
func Plan(lib *program.Library, a *program.Assessment) (program.Program, program.Problems) {
	return planFor(lib, a, false)
}

// planFor is a plan, or only as much of it as others are compared with.
func planFor(lib *program.Library, a *program.Assessment, compared bool) (program.Program, program.Problems) {
	out, m, problems := begin(lib, a)
	if m == nil {
		return out, problems
	}
	if m.road.Load == program.LoadBalance {
		m.practise(&out)
		return out, problems
	}
	p, notes := firstPlan(m, out.Start)
	if len(p.weeks) == 0 {
		withhold(&out, a, note(noteAlwaysAway))
		return out, problems
	}
	p.compared = compared
	for _, well := range withoutEach(a) {
		other, _ := planFor(lib, &well, true)
		p.gentlerThan = append(p.gentlerThan, otherPlan{weeks: other.Weeks, forecasts: other.Forecasts})
	}
	if hasNote(notes, noteKin) {
		if seen, _, _ := m.observed(m.athlete.Tests); len(seen) > 0 {
			p.gentlerThan = append(p.gentlerThan, alone(lib, a))
		}
	}
	p.fill(&out, notes)
	return out, problems
}

// firstPlan is one made from the assessment alone, with what was left out of it.
func firstPlan(m *measures, start program.Date) (*plan, []program.Note) {
	state, notes := m.assess(m.athlete.Tests)
	return newPlan(m, past{state: state, career: career(m.athlete, m.body)}, start), notes
}

// newPlan lays out the weeks from a day on; there are none for who is always away.
func newPlan(m *measures, behind past, start program.Date) *plan {
	p := &plan{}
	p.measures, p.past = *m, behind
	p.newHand()
	p.keepOn(&p.past.last)
	if p.weeks = p.calendar(start); len(p.weeks) > 0 {
		p.today = p.now()
	}
	p.exercises = exercises{client: &p.client, chosen: map[need]*program.Exercise{}}
	return p
}

// begin looks at who the client is; without measures, out says why there is no plan.
func begin(lib *program.Library, a *program.Assessment) (out program.Program, m *measures, problems program.Problems) {
	out = program.Program{
		Client: program.Client{Name: a.Athlete.Name, Called: a.Athlete.Called, Slug: a.Slug, Share: a.Share, Page: a.Page, Plain: a.Detail == program.DetailPlain, Large: a.Large, Clock: a.Training.Clock},
		Skill:  a.Goal.Skill, Measured: a.Measured, Start: blockStart(a),
		Goal:  program.GoalForecast{Step: a.Goal.Step, Hold: int(a.Goal.Hold + 0.5), By: a.Goal.By},
		Other: a.Training.Other,
	}
	road, ok := lib.RoadMap(a.Goal.Skill)
	if ok {
		_, ok = road.Step(a.Goal.Step)
	}
	if !ok {
		withhold(&out, a, note(noteSkillUnknown, text("skill", a.Goal.Skill)))
		return out, nil, nil
	}
	a = inSeconds(road, a)
	if why := clearance(a); len(why) > 0 {
		withhold(&out, a, why...)
		return out, nil, nil
	}
	m = &measures{client: client{lib: lib, road: road, athlete: a, limits: limitsIn(road, a, out.Start), today: a.Measured}}
	if m.body, problems = ladder.New(a, road, lib.Words); problems.Stop() {
		return out, nil, problems
	}
	m.narrow()
	m.clashed, m.open = m.clashes(), m.openings(nil)
	return out, m, append(problems, m.contradictions()...)
}

// fill runs the planning steps in order.
func (p *plan) fill(out *program.Program, notes []program.Note) {
	p.leans = p.body.Leans()
	p.look, p.known = newOutlook(&p.season), p.marks()
	p.easeBegun()
	p.handBegun()
	p.alike()
	out.Weeks = p.fillWeeks()
	p.look.earned(&p.season, out.Weeks)
	if p.compared {
		out.Forecasts = p.forecasts()
		return
	}
	p.outcome(out)
	out.Notes = slices.Concat(p.generalNotes(out), p.omits(p.missed(out.Weeks)), notes)
	p.sayAhead(out.Weeks)
	out.Wishes = p.wishesRead(out.Weeks)
}

// fillWeeks plans the weeks again until each gate week has room for its gate.
func (p *plan) fillWeeks() []program.Week {
	p.noRoom = nil
	for {
		p.main = make([]work, len(p.weeks))
		if p.straightArms() {
			p.main = p.mains()
		}
		if out, ok := p.doseWeeks(); ok {
			return out
		}
	}
}

// doseWeeks doses every week in turn and puts it into sessions; not ok where a gate
// week turned out to be none.
func (p *plan) doseWeeks() (out []program.Week, ok bool) {
	v := volume{limits: p.limits, easy: p.limits.easyWeeks}
	p.loads = make([]load, len(p.weeks))
	var lastBuild, session int
	out, lastBuild, session = p.remember(&v)
	for i := p.past.over(); i < len(p.weeks); i++ {
		p.loads[i] = p.dosed(i, lastBuild, &v)
		p.byHand(i, lastBuild, &v)
		p.comeBack(i, &p.loads[i], v.done)
		p.holdTo(i, &p.loads[i])
		p.stayEased(i, lastBuild)
		below := i < p.past.over()+2 && p.toReached(&p.loads[i], i) // until the log says more
		switch kind := p.weeks[i].kind; {                           // other work may weigh more than what was dosed
		case !p.binds(i) && !below:
		case kind == program.WeekBuild:
			p.loads[i].shrink(v.next(i, p.loads[i].main))
		case kind == program.WeekTest && v.built > 0:
			p.loads[i].shrink(v.built * taperMost / 100)
		}
		fits := p.asksGate(i)
		p.most = v.next(i, p.loads[i].main)
		w := p.printed(i, lastBuild, &session)
		if !p.asksGate(i) || shortOfGate(&p.loads[i].main, &w) {
			p.noRoom = append(p.noRoom, crowded{p.index(p.main[i].rung), i, fits})
			return nil, false
		}
		if w.Kind == program.WeekBuild {
			w.MostHalf = v.next(i, p.loads[i].main)
		}
		v.add(weekDoneOf(&w, w.Kind, w.HalfSeconds))
		if w.Kind == program.WeekBuild && (lastBuild < 0 || !p.onTheRoad(i)) {
			lastBuild = i
		}
		out = append(out, w)
	}
	return out, true
}

// dosed is a week's straight-arm work with its sets.
func (ds *doses) dosed(i, lastBuild int, v *volume) load {
	w := &ds.weeks[i]
	main := ds.main[i]
	switch {
	case w.kind == program.WeekBuild || lastBuild < 0:
		if w.kind == program.WeekDeload {
			main = eased(main)
		}
		l := ds.works(i, main)
		allowed := v.next(i, main)
		l.build(w.parts(), allowed, len(v.rounds), v.inRound)
		ds.stays(i, &l, allowed)
		if w.kind == program.WeekDeload && v.off < shortBreak { // a block that begins with one
			l.easeTo(ds.past.sets, deloadShare)
		}
		if w.kind == program.WeekTest {
			before := l.halfSeconds()
			if v.built > 0 { // in the block before
				before = min(before, v.built)
			}
			l.taper(before)
			l.spare(w.parts())
		}
		return l
	case w.kind == program.WeekTest:
		l := ds.works(i, main)
		l.heavy, l.leans = work{}, work{}
		l.taper(v.done[len(ds.past.before)+lastBuild])
		l.spare(w.parts())
		return l
	}
	l := ds.works(i, main)
	if main.none() { // hands or joints bear none now, whatever they bore before
		return l
	}
	from := &ds.loads[lastBuild]
	second := from.second
	if !second.none() && ds.limits.elbowSore && ds.again(second, i).share > elbowLoad { // strength was read anew
		second = work{}
	}
	l.main, l.second, l.heavy, l.leans = eased(main), eased(second), work{}, work{}
	l.ease(from, w.parts(), ds.weeks[lastBuild].parts())
	return l
}

// eased is the same work with shorter holds.
func eased(w work) work {
	if !w.none() {
		w.hold = w.whole(max(deloadLeast, (w.hold*deloadShare+99)/100))
	}
	return w
}
