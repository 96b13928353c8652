package planner

import (
	"slices"

	"gatepost/program"
)

// news is bad news that a plan is made without, so that the plan with it can be held to
// that one. The zero news is none.
type news struct {
	well    jointSet                 // sore in the assessment, taken as fine
	unheard jointSet                 // joints of which no pain is heard
	quiet   [quietMost]painDay       // whose pain is left aside
	weeks   [missedMost]program.Date // Mondays of missed weeks, taken as done as printed
	tough   [toughMost]program.Date  // days whose bad sets are taken as printed
}

// painDay is a day on which something hurt, in a session or on a morning. Mild, it is taken
// to have hurt no more than leaves work to the joint.
type painDay struct {
	date          program.Date
	morning, mild bool
}

// How many days of pain, missed weeks and days of bad sets, the last first, a plan is
// compared without; pain three weeks back, missed weeks so many, bad sets one: what is
// older has been answered (our judgement).
const (
	quietMost  = 6
	painDays   = 21
	missedMost = 6
	toughMost  = 4
)

// asIf makes plans of one log without some of its bad news, each once.
type asIf struct {
	*reading
	made map[news]*program.Program
}

// otherPlans are those that this one may not ask more than: the plan without each sore
// joint, without the last day of pain, with the last missed week done; and after weeks
// off, or where what hangs would last shorter now than was reckoned, the plan on the wall.
func (r *reading) otherPlans(p *plan) []otherPlan {
	var out []otherPlan
	for _, n := range r.withoutOne(p) {
		if other := r.asIf.programWithout(n); other != nil {
			out = append(out, otherPlan{weeks: other.Weeks, forecasts: other.Forecasts})
		}
	}
	return append(out, otherPlan{weeks: r.wall[len(r.wall)-1].Weeks, wall: true, fallen: p.past.off == 0})
}

// withoutOne are the news left aside so far, and one more each.
func (r *reading) withoutOne(p *plan) []news {
	var out []news
	for i, j := range joints {
		n := r.without
		switch {
		case sore(*j.state(&r.athlete.Health)):
			n.well |= 1 << i
		case sore(*j.state(&p.athlete.Health)):
			n.unheard |= 1 << i
		default:
			continue
		}
		out = append(out, n)
	}
	for _, day := range r.lastPains(p) {
		if n := r.without; putAside(n.quiet[:], day) {
			out = append(out, n)
		}
	}
	if n := r.without; putAside(n.tough[:], r.toughDay()) {
		out = append(out, n)
	}
	if n := r.without; putAside(n.weeks[:], r.missedWeek()) {
		out = append(out, n)
	}
	return out
}

// putAside takes one more into what is left out; not where it is none, or there is no room.
func putAside[T comparable](of []T, one T) bool {
	var none T
	at := slices.Index(of, none)
	if at < 0 || one == none {
		return false
	}
	of[at] = one
	return true
}

// lastPains are the last session that hurt, as if it had not and, where a joint was to rest
// for it, as if it had hurt less; and the last morning above usual. None where pain has no
// say in the weeks ahead.
func (r *reading) lastPains(p *plan) []painDay {
	if p.past.rest.until == 0 && len(countedSore(&p.athlete.Health, &r.athlete.Health)) == 0 {
		return nil
	}
	var session, high, morning program.Date
	for _, j := range joints {
		for _, d := range r.days {
			if worst := d.worst(j.pain); worst >= sorePain && r.on-d.date < painDays {
				if session = max(session, d.date); worst >= highPain {
					high = max(high, d.date)
				}
			}
		}
		morning = max(morning, r.lastUp(j.pain))
	}
	var out []painDay
	if session != 0 {
		out = append(out, painDay{date: session})
	}
	if high != 0 && high == session {
		out = append(out, painDay{date: session, mild: true})
	}
	if morning != 0 && r.on-morning < painDays {
		out = append(out, painDay{date: morning, morning: true})
	}
	return out
}

// toughRPE is from where on a set's RPE is bad news.
const toughRPE = 9.5

// tough reports whether a set went worse than was asked.
func (s *setRead) tough() bool {
	return s.fell() || s.arm() && s.Printed > 0 && s.said() && (s.short() || s.finds() && s.seconds() < float64(s.item.Hold) || s.doubtful || broke(s.Done) || s.Done.RPE >= toughRPE)
}

// toughDay is the last day of the last week that had a bad set; 0 where none had.
func (di *diary) toughDay() program.Date {
	for i := len(di.days) - 1; i >= 0 && di.on-di.days[i].date < aWeek; i-- {
		for j := range di.days[i].sets {
			if di.days[i].sets[j].tough() {
				return di.days[i].date
			}
		}
	}
	return 0
}

// missedWeek is the Monday of the last week of which nothing was done that was printed;
// 0 where there is none lately.
func (r *reading) missedWeek() program.Date {
	for i := len(r.weeks) - 1; i >= max(0, len(r.weeks)-missedMost); i-- {
		if w := r.weeks[i]; r.kindDone(w) == program.WeekAway && len(w.Sessions) > 0 {
			return w.start
		}
	}
	return 0
}

// programWithout is the plan without some news; nil where none can be made.
func (x *asIf) programWithout(n news) *program.Program {
	if p, ok := x.made[n]; ok {
		return p
	}
	x.made[n] = nil
	a := n.leaveOut(x.athlete, x.wall)
	n.spare(&a, x.days)
	if _, m, _ := begin(x.lib, &a); m != nil {
		r := newReading(m, x.wall, x.on)
		r.signed, r.without, r.asIf = x.signed, n, x
		var out program.Program
		_, eased := r.painFlags()
		r.replan(&out, &eased, r.gatesRead())
		x.made[n] = &out
	}
	return x.made[n]
}

// leaveOut is an assessment as if some news had not come.
func (n news) leaveOut(from *program.Assessment, wall []program.PlanVersion) program.Assessment {
	a := withFine(from, n.well)
	a.Log.Entries = nil
	for _, e := range from.Log.Entries {
		e.Sets = slices.Clone(e.Sets)
		quiet := slices.Contains(n.quiet[:], painDay{date: e.Date, morning: e.Morning})
		mild := slices.Contains(n.quiet[:], painDay{date: e.Date, morning: e.Morning, mild: true})
		for i := range e.Sets {
			n.hush(&e.Sets[i].Pain, quiet, mild)
		}
		a.Log.Entries = append(a.Log.Entries, e)
	}
	for _, monday := range n.weeks {
		if monday != 0 {
			for _, s := range wallWeek(wall, monday).Sessions {
				a.Log.Entries = append(a.Log.Entries, program.Entry{Date: s.Date, AsPrinted: true})
			}
		}
	}
	return a
}

// spare takes the bad sets of some days as printed.
func (n news) spare(a *program.Assessment, days []*dayRead) {
	for _, d := range days {
		for i := range d.sets {
			s := &d.sets[i]
			if !s.tough() || !slices.Contains(n.tough[:], d.date) {
				continue
			}
			for _, e := range a.Log.Entries {
				if !e.Morning && e.Date == d.date && e.Exercise == s.Exercise {
					spareSet(e.Sets, s)
				}
			}
		}
	}
}

func spareSet(sets []program.SetDone, tough *setRead) {
	for i := range sets {
		s := &sets[i]
		if s.Number == tough.Done.Number || s.Number == 0 && i+1 == tough.Done.Number {
			if s.RPE = 0; tough.Done.Reps > 0 {
				s.Reps = tough.Printed
			} else {
				s.Seconds = float64(tough.Printed)
			}
			if broke(*s) {
				s.Clean = program.CleanYes
			}
		}
	}
}

func (n news) hush(p *program.Pain, quiet, mild bool) {
	for i, at := range []*int{&p.Wrists, &p.Elbows, &p.Shoulders} {
		switch {
		case quiet || n.unheard.has(i):
			*at = -1
		case mild:
			*at = min(*at, highPain-1)
		}
	}
}
