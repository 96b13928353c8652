package planner

import (
	"cmp"
	"math"
	"slices"

	"gatepost/program"
)

// policy decides what is printed for a week, and sees what was written of it.
type policy interface {
	print(monday program.Date) program.Week
	read(w *program.Week, log *program.Log)
}

// # Ours
//
// coached is a client whose weeks this package plans. It makes the decisions of
// Read and of Plan, and leaves out what no week hangs on: forecasts, notes, the
// weeks of a plan that will be made anew before they come. A test holds it against
// Read itself.
type coached struct {
	*reading
	weekly bool           // the log is read every week; else when a block is over
	block  []program.Week // what is left of a block that was printed once
}

func newCoached(p *person, weekly bool) *coached {
	a := p.athlete
	plan := &plan{lib: p.lib, road: p.road, athlete: &a, body: p.body}
	plan.limits = newLimits(&a, blockStart(&a))
	c := &coached{reading: newReading(plan, nil, a.Measured), weekly: weekly}
	c.leans = c.body.leanLoads()
	return c
}

func (c *coached) print(monday program.Date) program.Week {
	if len(c.block) == 0 {
		c.block = c.planned(monday)
	}
	w := c.block[0]
	if c.block = c.block[1:]; c.weekly {
		c.block = nil
	}
	return w
}

// planned are the weeks from a Monday on; the first alone where they are planned
// anew every week.
func (c *coached) planned(monday program.Date) []program.Week {
	c.from, c.on = monday, monday-1
	c.chosen = map[need]*program.Exercise{}
	c.limits = newLimits(c.athlete, c.reading.block)
	c.plan.past = c.behind(c.gatesRead())
	if c.plan.weeks = c.calendar(c.reading.block); len(c.plan.weeks) == 0 {
		c.limits = newLimits(c.athlete, monday)
		c.plan.past = c.nextBlock()
		c.plan.weeks = c.calendar(monday)
		c.begins(monday)
	}
	c.look, c.noRoom = newOutlook(c.plan), nil
	if !c.weekly {
		return c.fillWeeks()
	}
	return c.oneWeek()
}

// begins moves the weeks done into the time before the block.
func (c *coached) begins(monday program.Date) {
	c.reading.block, c.earlier = monday, nil
	for i, w := range c.reading.weeks {
		c.earlier = append(c.earlier, weekDone{c.kindDone(w), worked(w.Week, c.countedIn(i, w)), worked(w.Week, w.HalfSeconds)})
	}
}

// oneWeek is the first week that fillWeeks fills.
func (c *coached) oneWeek() []program.Week {
	v := volume{limits: c.limits, easy: c.limits.easyWeeks}
	c.main, c.loads = c.mains(), make([]load, len(c.plan.weeks))
	_, lastBuild, session := c.remember(&v)
	i := c.past.over()
	first := i == 0 || c.plan.weeks[i-1].kind != program.WeekBuild
	c.loads[i] = c.dosed(i, lastBuild, &v, first)
	w := c.printed(i, lastBuild, &session)
	if !c.asksGate(i) {
		c.noRoom = append(c.noRoom, crowded{rung: c.index(c.main[i].rung), week: i})
		return c.oneWeek()
	}
	return []program.Week{w}
}

func (c *coached) read(w *program.Week, log *program.Log) {
	week := &weekPrinted{start: w.Start, Week: w, days: daysOf(log, w.Start, w.Start+6)}
	c.days = append(c.days, week.days...)
	c.on, c.from = w.Start+6, w.Start+7
	c.readWeek(week)
}

// # The rivals
//
// Two rules that a coach can keep in mind, each as it is said and in a version that
// looks after the client: a stiffer rival than the rule alone. They train the same
// days, ease and test in the same weeks, and hold as many counted seconds a week as
// ours, shared evenly among the sets of one rig; the weights are those of the truth,
// as they are where ours is asked what it asked for. Levels of help are the sets of bands at one
// length of strap, up to a quarter of body weight.
type rival struct {
	*lifetime
	asked *[]asked // of each week, by ours
	rung  int
	level int // of the levels, the most help last
	hold  int
	lasts int // s, what a set is reckoned at; 0: hold
	week  int
}

// asked is what ours printed for a week.
type asked struct {
	kind        program.WeekKind
	halfSeconds int
	days        []program.Date
}

// levels are a rung's ways to help, free first.
func (r *rival) levels(rung int) []option {
	var out []option
	for _, o := range r.body.ladder[rung].rigs() {
		if o.rig.Drop == r.body.hanging.Drops[0] && float64(o.help) <= bandShare*10*r.body.weight {
			out = append(out, o)
		}
	}
	slices.SortStableFunc(out, func(a, b option) int { return cmp.Compare(a.help, b.help) })
	return out
}

func (r *rival) now() option { return r.levels(r.rung)[r.level] }

// trial is how long a hold lasts that is tried out before the week's work.
func (r *rival) trial(rung int, o option) float64 {
	d := r.dice(forTrial, r.week, rung, o.help)
	return r.held(d, o.load, r.body.ladder[rung].ID, o.rig, simDay*d.NormFloat64(), 0)
}

// least is the level with the least help of a rung at which a trial lasts; −1: none.
func (r *rival) least(rung int, seconds float64) int {
	return slices.IndexFunc(r.levels(rung), func(o option) bool { return r.trial(rung, o) >= seconds })
}

// place begins at the hardest rung, the goal included, at which a trial lasts.
func (r *rival) place(seconds float64) {
	for rung := len(r.body.ladder) - 1; rung >= 0; rung-- {
		if at := r.least(rung, seconds); at >= 0 {
			r.rung, r.level = rung, at
			return
		}
	}
	r.rung, r.level = 0, len(r.levels(0))-1
}

// harder is one level less help, or, where there is none, the next rung with as
// much help as a trial asks for. Nothing changes where that is out of reach.
func (r *rival) harder(seconds float64) bool {
	if r.level > 0 {
		r.level--
		return true
	}
	if r.rung+1 == len(r.body.ladder) {
		return false
	}
	at := r.least(r.rung+1, seconds)
	if at >= 0 {
		r.rung, r.level = r.rung+1, at
	}
	return at >= 0
}

// easier is one level of help more, as far as there is one.
func (r *rival) easier() { r.level = min(r.level+1, len(r.levels(r.rung))-1) }

// print is a week of one rig's sets, as many as make the seconds that were asked.
func (r *rival) print(monday program.Date) program.Week {
	a := r.ask()
	rung, o := &r.body.ladder[r.rung], r.now()
	w := program.Week{Start: monday, Kind: a.kind, Step: rung.ID, Rig: o.rig, HalfSeconds: a.halfSeconds}
	hold, lasts := r.hold, cmp.Or(r.lasts, r.hold)
	if a.kind != program.WeekBuild {
		hold = max(deloadLeast, (lasts*deloadShare+99)/100)
		lasts = hold
	}
	weight := max(1, work{share: r.share(r.felt(o.load, rung.ID, o.rig))}.halves())
	sets := int(math.Round(float64(a.halfSeconds) / float64(weight*lasts)))
	for i, n := range a.days {
		share := (sets + i) / len(a.days)
		w.Sessions = append(w.Sessions, program.Session{Date: monday + n, Items: []program.Prescription{{
			Exercise: rung.Exercise, Role: program.RoleMain, Step: rung.ID, Rig: o.rig, Sets: max(1, share), Hold: hold,
		}}})
	}
	return w
}

// ask is the week as ours was asked for it; after ours is there, weeks like its
// last ones.
func (r *rival) ask() asked {
	list := *r.asked
	if r.week < len(list) {
		return list[r.week]
	}
	last := asked{kind: program.WeekBuild, halfSeconds: 300, days: []program.Date{0, 2, 4}}
	for _, a := range list {
		if a.kind == program.WeekBuild {
			last = a
		}
	}
	switch {
	case r.week%12 == 11:
		last.kind, last.days = program.WeekTest, last.days[:min(2, len(last.days))]
	case r.week%4 == 3:
		last.kind = program.WeekDeload
	}
	if last.kind != program.WeekBuild {
		last.halfSeconds /= 2
	}
	return last
}

// results are a week's sessions as they were written: holds of every day.
func results(log *program.Log) [][]float64 {
	var days [][]float64
	on := program.Date(0)
	for _, e := range log.Entries {
		if e.Date != on {
			days, on = append(days, nil), e.Date
		}
		for _, s := range e.Sets {
			days[len(days)-1] = append(days[len(days)-1], s.Seconds)
		}
	}
	return days
}

// reached is the share of a week's sets that lasted.
func reached(days [][]float64, hold int) float64 {
	n, long := 0, 0
	for _, d := range days {
		for _, s := range d {
			if n++; s >= float64(hold) {
				long++
			}
		}
	}
	if n == 0 {
		return 1
	}
	return float64(long) / float64(n)
}

// dropsBands works at ten seconds a set, begun where a trial lasts thirteen, and
// takes off the smallest band every two weeks: one level less help, then the next
// step. The careful one takes a band back when over half of a week's sets stop
// short.
type dropsBands struct {
	rival
	careful bool
	built   int
}

func newDropsBands(r rival, careful bool) *dropsBands {
	r.hold = 10
	p := &dropsBands{rival: r, careful: careful}
	p.place(13)
	return p
}

func (p *dropsBands) read(w *program.Week, log *program.Log) {
	p.week++
	days := results(log)
	if w.Kind != program.WeekBuild || len(days) == 0 {
		return
	}
	p.built++
	switch {
	case p.careful && reached(days, p.hold) < 0.5:
		p.easier()
		p.built = 0
	case p.built >= 2:
		p.harder(13)
		p.built = 0
	}
}

// threeTimes15 moves on once a session has three sets of fifteen seconds: one level
// less help, then the next step, where a trial lasts eight. It asks for fifteen all
// along, and reckons with what sets last. The careful one begins three seconds
// below a trial, asks for two more when a session's sets last, for two less when
// over half of a week's stop short, and under five takes help back.
type threeTimes15 struct {
	rival
	careful bool
}

func newThreeTimes15(r rival, careful bool) *threeTimes15 {
	p := &threeTimes15{r, careful}
	p.place(11)
	p.settle()
	return p
}

func (p *threeTimes15) settle() {
	p.hold = min(mainMost, max(shortLeast, int(p.trial(p.rung, p.now()))-3))
	if !p.careful {
		p.lasts, p.hold = p.hold, mainMost
	}
}

func (p *threeTimes15) read(w *program.Week, log *program.Log) {
	p.week++
	days := results(log)
	if w.Kind != program.WeekBuild || len(days) == 0 {
		return
	}
	last := days[len(days)-1]
	switch {
	case slices.ContainsFunc(days, threeLong):
		if p.harder(8) {
			p.settle()
		}
	case !p.careful:
		p.lasts = min(mainMost, max(shortLeast, int(mean(last))))
	case reached(days, p.hold) < 0.5 && p.hold > shortLeast:
		p.hold = max(shortLeast, p.hold-2)
	case reached(days, p.hold) < 0.5:
		p.easier()
	case reached([][]float64{last}, p.hold) == 1:
		p.hold = min(mainMost, p.hold+2)
	}
}

func threeLong(day []float64) bool {
	n := 0
	for _, s := range day {
		if s >= mainMost {
			n++
		}
	}
	return n >= 3
}

func mean(list []float64) float64 {
	sum := 0.0
	for _, v := range list {
		sum += v
	}
	return sum / float64(len(list))
}
