package planner

import (
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
	"gatepost/program/strength"
)

// diary is a client's log up to a day.
type diary struct {
	measures
	on   program.Date
	days []*dayRead
}

// reading is a client's log laid beside the plans that hung on the wall, week by
// week from the assessment on.
type reading struct {
	diary
	wall  []program.PlanVersion
	block program.Date // Monday of the block on the wall
	from  program.Date // Monday of the first week to plan anew
	weeks []*weekPrinted
	est   *estimate

	signed    []signed // gates that the coach passed by hand
	signedNow int      // of them with this review
	next      *plan    // of the weeks ahead, once it is made
	without   news     // left aside, to see what the plan would be without it
	asIf      *asIf    // which sees to that

	progress []program.WeekRead // of every week since the assessment
	then     moment             // when the plan on the wall was made
	since    int                // moves before this one are older than that
	earlier  []weekDone         // weeks done before the block on the wall
}

// signed is a gate that the coach passed knowingly, whatever the log says.
type signed struct {
	step string
	on   program.Date
}

// sign takes over what the coach has signed, with earlier versions and now.
func (r *reading) sign(versions []program.PlanVersion, on program.Date, now []string) {
	for _, v := range versions {
		for _, step := range v.Passed {
			r.signed = append(r.signed, signed{step, v.On})
		}
	}
	for _, step := range now {
		if !slices.ContainsFunc(r.signed, func(s signed) bool { return s.step == step }) {
			r.signed = append(r.signed, signed{step, on})
			r.signedNow++
		}
	}
}

// moment is what was believed at one time.
type moment struct {
	state  strength.State
	career strength.Career
	lost   float64
	off    int
	at     program.Date // Monday of the first week after it
}

// newReading reads the log; out of versions, the plan on the wall is the first
// one, made from the assessment.
func newReading(m *measures, versions []program.PlanVersion, on program.Date) *reading {
	r := besideWall(m, versions, on)
	r.asIf = &asIf{r, map[news]*program.Program{}}
	state, _ := m.assess(m.athlete.Tests)
	r.est = newEstimate(m, state)
	r.then = r.moment(blockStart(m.athlete))
	r.readWeeks()
	r.open = r.shownInLog()
	return r
}

// besideWall is a log beside the plans, of which nothing is read yet.
func besideWall(m *measures, versions []program.PlanVersion, on program.Date) *reading {
	a := m.athlete
	m.open = m.openings(slices.DeleteFunc(slices.Clone(a.Log.Entries), func(e program.Entry) bool { return e.Date > on }))
	r := &reading{diary: diary{measures: *m, on: on}, wall: versions, block: blockStart(a)}
	if n := len(versions); n > 0 && len(versions[n-1].Weeks) > 0 {
		r.block = max(r.block, versions[n-1].Weeks[0].Start)
	}
	r.days = daysOf(&a.Log, a.Measured, on)
	r.from = r.firstAhead()
	return r
}

// firstAhead is the Monday of the first week to plan anew: the one of the review
// when it is a Monday and nothing of the week is done yet, else the next. A week
// begun stays as it hangs.
func (r *reading) firstAhead() program.Date {
	monday := r.on.Monday()
	begun := slices.ContainsFunc(r.days, func(d *dayRead) bool { return d.date >= monday })
	if r.on > monday || begun {
		monday += 7
	}
	return max(monday, r.block)
}

func (r *reading) moment(at program.Date) moment {
	e := r.est
	return moment{e.state, e.career, e.lost, e.off, at}
}

// madeFor is the first week that a version planned anew.
func madeFor(v *program.PlanVersion) program.Date {
	if v.On == v.On.Monday() {
		return v.On
	}
	return v.On.Monday() + 7
}

// readWeeks goes through the weeks up to the first one ahead. Days between the
// assessment and the first week are read first.
func (r *reading) readWeeks() {
	start, next := blockStart(r.athlete), 0
	for next < len(r.days) && r.days[next].date < start {
		w := weekPrinted{start: r.days[next].date.Monday(), days: r.days[next : next+1]}
		r.match(&w)
		r.est.day(r.days[next])
		next++
	}
	for monday := start; monday < r.from; monday += 7 {
		w := &weekPrinted{start: monday, Week: wallWeek(r.wall, monday)}
		for ; next < len(r.days) && r.days[next].date < monday+7; next++ {
			w.days = append(w.days, r.days[next])
		}
		r.readWeek(w)
	}
	if n := len(r.wall); n > 0 && madeFor(&r.wall[n-1]) == r.from {
		r.then, r.since = r.moment(r.from), len(r.est.moves)
	}
}

func (r *reading) readWeek(w *weekPrinted) {
	if n := len(r.wall); n > 0 && madeFor(&r.wall[n-1]) == w.start {
		r.then, r.since = r.moment(w.start), len(r.est.moves)
	}
	read := r.weekRead(w)
	r.match(w)
	tests := len(r.est.tests)
	for _, d := range w.days {
		r.est.day(d)
	}
	read.Tests = slices.Clone(r.est.tests[tests:])
	r.tally(w, &read)
	r.weeks, r.progress = append(r.weeks, w), append(r.progress, read)
	if r.weekOff(w) {
		r.est.rested(r.athlete, w.start)
	} else { // a week without straight-arm work counts none, and so brings nothing
		r.est.trained(w.Kind, max(1, armDays(w)+r.stillAhead(w)), r.worked(w, &read))
	}
	if w.start < r.block {
		r.earlier = append(r.earlier, weekDoneOf(w.Week, r.kindDone(w), r.countedIn(len(r.weeks)-1, w)))
	}
}

// worked is the share of a week's gain that its counted work earns: what was done,
// and what is still to be done in a week that has only begun.
func (di *diary) worked(w *weekPrinted, read *program.WeekRead) float64 {
	counted := read.HalfSeconds
	for i := range w.Sessions {
		if s := &w.Sessions[i]; s.Date > di.on {
			counted += countedOf(s)
		}
	}
	return earnedBy(w.Kind, counted, startSeconds(presentSpell(di.athlete, w.start)))
}

// weekOff reports whether nothing was done in a week, with straight arms or without,
// and nothing is still to come.
func (di *diary) weekOff(w *weekPrinted) bool {
	ahead := func(s program.Session) bool { return s.Date > di.on }
	return len(w.days) == 0 && !slices.ContainsFunc(w.Sessions, ahead)
}

// armDays is how many days of a week held straight-arm work.
func armDays(w *weekPrinted) int {
	n := 0
	for _, d := range w.days {
		if d.arm() {
			n++
		}
	}
	return n
}

// stillAhead counts the printed straight-arm sessions of a week that come after
// the day of the review.
func (di *diary) stillAhead(w *weekPrinted) int {
	n := 0
	for i := range w.Sessions {
		if s := &w.Sessions[i]; s.Date > di.on && slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return isArm(&i) }) {
			n++
		}
	}
	return n
}

// kindDone is a week's kind as it was done: away where nothing was.
func (r *reading) kindDone(w *weekPrinted) program.WeekKind {
	if r.weekOff(w) {
		return program.WeekAway
	}
	if w.Kind == "" {
		return program.WeekBuild
	}
	return w.Kind
}

// weekRead is a week before its work is counted.
func (r *reading) weekRead(w *weekPrinted) program.WeekRead {
	read := program.WeekRead{Start: w.start, Held12: r.est.state.C12(), Pain: noPain, Mornings: r.worstMornings(w.start)}
	read.Low, read.High = r.est.state.Range(likelyRange)
	if w.Week != nil {
		read.Number, read.Kind, read.Planned = w.Number, w.Kind, w.Capacity
		read.HoldPrinted, read.HalfPrinted = w.Hold, w.HalfSeconds
	}
	return read
}

var noPain = program.Pain{Wrists: -1, Elbows: -1, Shoulders: -1, Other: -1}

// tally counts what a week's days held.
func (r *reading) tally(w *weekPrinted, read *program.WeekRead) {
	for i := range w.Sessions {
		if w.Sessions[i].Date <= r.on {
			read.Printed++
		}
	}
	var mains, rated int
	for _, d := range w.days {
		if d.printed != nil {
			read.Done++
		}
		for _, p := range d.pains {
			worse(&read.Pain, p)
		}
		for i := range d.sets {
			s := &d.sets[i]
			worse(&read.Pain, s.Done.Pain)
			read.HalfSeconds += r.halfSeconds(s)
			if !s.main() || s.Done.Seconds == 0 {
				continue
			}
			mains++
			read.HoldDone += s.Done.Seconds
			read.Help += r.help(s)
			if s.Done.RPE > 0 {
				rated++
				read.RPE += s.Done.RPE
			}
		}
	}
	if mains > 0 {
		read.HoldDone, read.Help = read.HoldDone/float64(mains), read.Help/float64(mains)
	}
	if rated > 0 {
		read.RPE /= float64(rated)
	}
}

// halfSeconds is a set's counted work, weighed by the load that was printed.
// What nobody printed is weighed as most main work is.
func (r *reading) halfSeconds(s *setRead) int {
	if s.seconds() == 0 || s.item == nil && s.Step == "" {
		return 0
	}
	share := 0.80
	switch {
	case s.item == nil:
	case !isCounted(s.item.Role):
		return 0
	case s.finds():
		return s.tryCounted()
	default:
		share = s.item.Load
	}
	return work{hold: int(s.seconds()), share: share}.halfSeconds()
}

// help is the vertical help of a set, N.
func (r *reading) help(s *setRead) float64 {
	if s.item != nil && ladder.SameRig(s.Rig, s.item.Rig) {
		return s.item.Help
	}
	for i := range r.body.All {
		if g := &r.body.All[i]; g.ID == s.Step && s.Rig.Drop >= 0 {
			o, _ := r.body.HungAs(g, s.Rig)
			return float64(o.Help) / 10
		}
	}
	return 0
}

// worse keeps the most pain at each joint.
func worse(p *program.Pain, q program.Pain) {
	if !q.Given {
		return
	}
	p.Given = true
	p.Wrists, p.Elbows = max(p.Wrists, q.Wrists), max(p.Elbows, q.Elbows)
	p.Shoulders, p.Other = max(p.Shoulders, q.Shoulders), max(p.Other, q.Other)
}
