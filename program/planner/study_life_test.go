package planner

import (
	"math"
	"math/rand/v2"
	"slices"

	"gatepost/program"
	"gatepost/program/strength"
)

// lifetime is one course of a person's training, under one policy, in one response of
// gain to training.
type lifetime struct {
	*person
	response         response
	c, rho, age      float64
	lost             float64
	week, ill        int     // the week's number; weeks ill still to come
	counted          float64 // seconds of the week, with the weights of the truth
	easy             int     // seconds more, by the day rule
	easyOf           program.Prescription
	sets, failed     int // holds of a step that were asked for
	main, mainFailed int // of these the main sets
}

func newLife(p *person, r response) *lifetime {
	return &lifetime{person: p, response: r, c: p.c, rho: p.rho, age: p.age}
}

// there says that the goal is within reach on a day of usual form.
func (l *lifetime) there() bool {
	load := l.felt(l.goal.load, l.goal.ID, program.Rig{})
	return strength.MaxHold(math.Exp(l.c), load, math.Exp(l.kappa)) >= l.athlete.Goal.Hold
}

// held is the longest hold of one set, s.
func (l *lifetime) held(d *rand.Rand, load float64, step string, rig program.Rig, day float64, sets int) float64 {
	c := l.c + day - simTiring*float64(sets) + simSet*d.NormFloat64()
	s := strength.MaxHold(math.Exp(c), l.felt(load, step, rig), math.Exp(l.kappa)) + simStop*d.NormFloat64()
	return max(0, math.Round(10*s)/10)
}

// share is a load's share of the instant maximum in truth.
func (l *lifetime) share(load float64) float64 {
	k := math.Exp(l.kappa)
	return load / math.Exp(l.c) * strength.Share(strength.Reference, k)
}

// do does a printed week and writes it to a log.
func (l *lifetime) do(w *program.Week) program.Log {
	var log program.Log
	d := l.dice(forWeek, l.week)
	if sick, longer := d.Float64() < illChance, d.Float64() < illLonger; sick && l.ill == 0 {
		if l.ill = 1; longer {
			l.ill = 2
		}
	}
	printed, done, asked, stimulus := 0, 0, 0.0, 0.0
	l.counted = 0
	for i := range w.Sessions {
		s := &w.Sessions[i]
		if !slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return isArm(&i) }) {
			continue
		}
		skip := l.ill > 0 || d.Float64() > l.keeps
		if printed++; !skip {
			done++
			asked += l.askedFor(w, s)
			stimulus += l.session(&log, s, printed)
		}
	}
	share := 1.0
	if asked > 0 {
		share = l.response.share(stimulus / max(asked, l.counted))
	}
	l.pass(w.Kind, done, share)
	return log
}

// askedFor is how many counted seconds a session asks for, with the weights of the
// truth, as the rivals have them; where no load is printed, which is theirs, as many
// as every other session of its week.
func (l *lifetime) askedFor(w *program.Week, s *program.Session) float64 {
	sum, unweighed := 0, 0
	for i := range s.Items {
		switch item := s.Items[i]; {
		case item.Role == program.RoleMain && item.Load == 0:
			unweighed++
		case isArm(&item):
			item.Load = l.share(l.loadOf(&item))
			sum += counted(item)
		}
	}
	if unweighed > 0 {
		sum = w.HalfSeconds / len(w.Sessions)
	}
	return float64(sum) / 2
}

// loadOf is what an item asks of this person in truth.
func (l *lifetime) loadOf(item *program.Prescription) float64 {
	if item.Step == "" {
		return l.body.PlancheLean(item.Ahead, l.body.support).Torque * math.Exp(l.model)
	}
	r, _ := l.body.onLadder(item.Step)
	o, _ := l.body.hungAs(r, item.Rig)
	return l.felt(o.load-item.Scale*r.toesReach()*allowance(r.Step), r.ID, o.rig)
}

// pass ends a week with a share of the gain that it would bring.
func (l *lifetime) pass(kind program.WeekKind, sessions int, share float64) {
	d := l.dice(forWeekEnd, l.week)
	drift, noise := simRate*d.NormFloat64(), d.NormFloat64()
	l.rho += drift
	l.week++
	if sessions == 0 {
		loss := lostWeek
		if l.ill > 0 {
			l.ill--
			loss = illLoses
		}
		l.lost, l.c = l.lost+loss, l.c-loss+0.012*noise
		return
	}
	gain := share * strength.DefaultLaw.WeekGain(l.age, sessions)
	if kind == program.WeekDeload || kind == program.WeekTest {
		gain *= strength.DeloadShare
	}
	back := min(l.lost, strength.Returning)
	l.c, l.lost = l.c+math.Exp(l.rho)*gain+back+simWeek*noise, l.lost-back
	l.age++
}

// session does one session and gives what it stimulates.
func (l *lifetime) session(log *program.Log, s *program.Session, nth int) float64 {
	d := l.dice(forSession, l.week, nth)
	day, sets, stimulus := simDay*d.NormFloat64(), 0, 0.0
	for i := range s.Items {
		item := s.Items[i]
		if !isArm(&item) {
			continue
		}
		if item.Step == "" {
			stimulus += l.lean(log, s.Date, &item)
			continue
		}
		more := 0
		if item.Role == program.RoleMain && sameWork(&item, &l.easyOf) {
			more = l.easy
		}
		stimulus += l.exercise(log, d, s.Date, item, day, more, &sets)
	}
	return stimulus
}

// lean does leans, which are light: all of them are held as printed.
func (l *lifetime) lean(log *program.Log, on program.Date, item *program.Prescription) float64 {
	load := l.loadOf(item)
	longest := strength.MaxHold(math.Exp(l.c), load, math.Exp(l.kappa))
	e := program.Entry{Date: on, Exercise: item.Exercise}
	for range item.Sets {
		e.Sets = append(e.Sets, program.SetDone{Seconds: float64(item.Hold), Clean: program.CleanYes})
	}
	log.Entries = append(log.Entries, e)
	return l.stimulate(float64(item.Sets*item.Hold), float64(item.Sets)*longest, load)
}

func sameWork(a, b *program.Prescription) bool {
	return a.Step == b.Step && sameRig(a.Rig, b.Rig) && a.Hold == b.Hold
}

// exercise does the sets of one item, by the stop rule and the day rule.
func (l *lifetime) exercise(log *program.Log, d *rand.Rand, on program.Date, item program.Prescription, day float64, more int, sets *int) float64 {
	r, _ := l.body.onLadder(item.Step)
	o, _ := l.body.hungAs(r, item.Rig)
	o.load -= item.Scale * r.toesReach() * allowance(r.Step)
	now, stimulus, allEasy := item, 0.0, true
	if now.Hold > 0 {
		now.Hold = max(now.Hold, min(mainMost, now.Hold+more))
	}
	for n := range item.Sets {
		limit := l.held(d, o.load, r.ID, o.rig, day, *sets)
		*sets++
		seconds, felt := l.set(d, &now, limit)
		short := seconds < float64(now.Hold)
		allEasy = allEasy && felt <= 6 && now.Hold > 0
		l.count(&now, limit)
		if item.Role != program.RoleTest { // tests stand outside
			stimulus += l.stimulate(seconds, limit, l.felt(o.load, r.ID, o.rig))
		}
		l.write(log, d, on, &now, o.rig, seconds, felt)
		if n == 0 && (felt >= 9 || short) && now.Hold > 0 {
			o = l.ease(r, o, &now)
		}
	}
	if item.Role == program.RoleMain {
		if l.easyOf = item; allEasy {
			l.easy = more + 1
		} else {
			l.easy = 0
		}
	}
	return stimulus
}

// stimulate notes seconds held, of the longest that could be held.
func (l *lifetime) stimulate(seconds, longest, load float64) float64 {
	share := l.share(load)
	l.counted += seconds * float64(work{share: share}.halves()) / 2
	return l.response.of(seconds, longest, share)
}

// set gives the seconds held and the RPE felt.
func (l *lifetime) set(d *rand.Rand, item *program.Prescription, limit float64) (seconds, rpe float64) {
	stop := limit - stopsWith + stopsBy*d.NormFloat64()
	habit := l.bias + rpeScatter*d.NormFloat64()
	switch {
	case item.Max:
		return limit, 10
	case item.Hold == 0:
		seconds = limit - checkLeft
	default:
		seconds = min(float64(item.Hold), stop, limit)
	}
	seconds = max(0.5, math.Round(10*seconds)/10)
	if item.Hold > 0 && seconds < float64(item.Hold) {
		seconds = max(0.5, math.Floor(seconds))
	}
	return seconds, min(10, max(4, math.Round(2*(10-(limit-seconds)/2.5+habit))/2))
}

// count keeps count of sets: one fails whose longest hold falls short of the
// seconds that were asked, whether the stop rule ended it before that or not.
func (l *lifetime) count(item *program.Prescription, limit float64) {
	if item.Hold == 0 {
		return
	}
	failed := limit < float64(item.Hold)
	if l.sets++; failed {
		l.failed++
	}
	if item.Role != program.RoleMain {
		return
	}
	if l.main++; failed {
		l.mainFailed++
	}
}

// ease applies the day rule: the next rig with more help, else three seconds less.
func (l *lifetime) ease(r *rung, o option, item *program.Prescription) option {
	best := o
	for _, c := range r.rigs() {
		if c.help > o.help && (best.help == o.help || c.help < best.help) && l.distinct(c, o) {
			best = c
		}
	}
	if best.help == o.help {
		item.Hold = max(2, item.Hold-3)
	}
	return best
}

// distinct says that two rigs differ by something that can be felt, 3 N.
func (l *lifetime) distinct(a, b option) bool { return max(a.help-b.help, b.help-a.help) >= 30 }

// write puts a set into the log, as people do.
func (l *lifetime) write(log *program.Log, d *rand.Rand, on program.Date, item *program.Prescription, rig program.Rig, seconds, rpe float64) {
	said, slip := d.Float64() < l.rates, d.Float64() < slipChance
	done := program.SetDone{Number: 1, Seconds: seconds, Clean: program.CleanYes}
	for _, e := range log.Entries {
		if e.Date == on && e.Exercise == item.Exercise {
			done.Number += len(e.Sets)
		}
	}
	if said && !item.Max && item.Hold > 0 {
		done.RPE = rpe
	}
	if slip {
		done.Seconds = slipped(seconds)
	}
	e := program.Entry{Date: on, Exercise: item.Exercise, Step: item.Step, Sets: []program.SetDone{done}}
	if item.Scale > 0 {
		e.Step = "" // a step is held off the floor
	}
	if !sameRig(rig, item.Rig) {
		e.Rig, e.RigGiven, e.DropGiven = rig, true, true
	}
	if n := len(log.Entries); n > 0 && !e.RigGiven && !log.Entries[n-1].RigGiven && log.Entries[n-1].Date == on && log.Entries[n-1].Exercise == e.Exercise {
		log.Entries[n-1].Sets = append(log.Entries[n-1].Sets, done)
		return
	}
	log.Entries = append(log.Entries, e)
}

// slipped swaps the digits of a number of two, and doubles the digit of one of one.
func slipped(s float64) float64 {
	n := int(s)
	if n >= 10 && n < 100 {
		return float64(10*(n%10) + n/10)
	}
	return float64(11 * n)
}
