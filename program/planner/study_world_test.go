package planner

import (
	"math"
	"math/rand/v2"
	"slices"

	"gatepost/program"
	"gatepost/program/strength"
)

// # The world of the study
//
// A person has a truth that nobody sees, drawn with the filter's own constants
// (see trainee), and does what is printed:
//
//   - of the sessions each person keeps a share, 0.75 to 1;
//   - ill one week in fifty, one time in three for two weeks: no session, two per
//     cent lost a week, which comes back at one per cent a week of training;
//   - the stop rule: a set ends when a second and a half seems to be left, give or
//     take 0.7 s, or at its printed seconds, whichever is first;
//   - the day rule: after a first set at RPE 9 or above, or short, the rest of the
//     exercise has one help more, or three seconds less where there is none; after
//     a session whose main sets were all at RPE 6 or under, a second more;
//   - RPE with a habit of its own (bias sd 0.5, scatter 0.5, half points), written
//     for 0.6 to 1 of the sets;
//   - one number in a hundred is written wrong: a digit lost or two swapped.
//
// All of it is our judgement. Dice are thrown by person, week and session, so that
// every policy meets the same days, illnesses and missed sessions.
type person struct {
	seed    uint64
	athlete program.Assessment
	lib     *program.Library
	road    *program.RoadMap
	body    *body
	goal    *rung

	c, rho, kappa, age float64 // as in trainee
	model              float64
	keeps, rates, bias float64
	weeks              float64 // that the law at the own rate takes to the goal
}

const (
	illChance, illLonger = 0.02, 1.0 / 3
	illLoses, lostWeek   = 0.02, strength.RestLoss
	stopsWith, stopsBy   = 1.5, 0.7 // s
	rpeHabit, rpeScatter = 0.5, 0.5
	slipChance           = 0.01
	studyWeeks           = 78 // after these nobody is followed
	leastWay, mostWay    = 8, 60
)

// dice are thrown anew for every occasion.
func (p *person) dice(occasion ...int) *rand.Rand {
	h := uint64(14695981039346656037)
	for _, v := range occasion {
		h = (h ^ uint64(v+1)) * 1099511628211
	}
	return rand.New(rand.NewPCG(p.seed, h))
}

// What dice are thrown for.
const (
	forBody = iota
	forName
	forWeek
	forWeekEnd
	forSession
	forTrial
)

// newPerson draws a person with a body of their own whose goal, a straddle of ten
// seconds, lies 8 to 60 weeks off by the law at the own rate with nothing missed:
// not there yet, and not out of sight. Who does not, is not in the study; no
// policy has a say in it.
func newPerson(seed uint64, lib *program.Library, like program.Assessment) *person {
	for try := uint64(0); ; try++ {
		p := drawPerson(seed<<16|try, lib, like)
		if p.weeks >= leastWay && p.weeks <= mostWay {
			p.athlete.Tests = p.tested()
			return p
		}
	}
}

func drawPerson(seed uint64, lib *program.Library, a program.Assessment) *person {
	p := &person{seed: seed, lib: lib, athlete: a}
	d := p.dice(forBody)
	w := &p.athlete
	w.Training.Away, w.Training.Ill, w.Log, w.Plans = nil, nil, program.Log{}, nil
	w.Training.Experience = float64(8 + d.IntN(53))
	w.Goal.Step, w.Goal.Hold, w.Goal.By = "straddle", 10, w.Measured+2000
	if w.Athlete.Sex = program.SexFemale; d.IntN(2) == 0 {
		w.Athlete.Sex = program.SexMale
	}
	w.Athlete.Height = math.Round(100*(1.70+0.08*d.NormFloat64())) / 100
	w.Athlete.ArmSpan = w.Athlete.Height
	w.Athlete.Mass = math.Round(w.Athlete.Height * w.Athlete.Height * (20 + 5*d.Float64()))
	p.c, p.rho = 0.1+0.35*d.NormFloat64(), strength.RateSpread*d.NormFloat64()
	p.kappa, p.age = math.Log(strength.TypicalK)+simEndurance*d.NormFloat64(), w.Training.Experience
	p.model, p.keeps = simModel*d.NormFloat64(), 0.75+0.25*d.Float64()
	p.rates, p.bias = 0.6+0.4*d.Float64(), rpeHabit*d.NormFloat64()
	if way := p.wayFrom(p.c, 0.41); way < leastWay || way > mostWay {
		return p // far off, whatever the body: no need to weigh it
	}
	_, plan, _ := begin(lib, w)
	p.road, p.body = plan.road, plan.body
	p.goal = &p.body.ladder[len(p.body.ladder)-1]
	p.c += math.Log(p.body.all[0].load)
	n := func(t float64) float64 { return -math.Log(strength.Share(t, math.Exp(p.kappa))) }
	p.weeks = p.wayFrom(p.c, math.Log(p.felt(p.goal.load, p.goal.ID, program.Rig{}))+n(w.Goal.Hold)-n(strength.Reference))
	return p
}

// wayFrom is how many weeks of three sessions, every fourth easy, lead from one
// ln capacity to another at the own rate.
func (p *person) wayFrom(c, to float64) float64 {
	for w := range studyWeeks {
		if c >= to {
			return float64(w)
		}
		gain := math.Exp(p.rho) * strength.DefaultLaw.WeekGain(p.age+float64(w), 3)
		if w%4 == 3 {
			gain *= strength.DeloadShare
		}
		c += gain
	}
	return studyWeeks
}

// felt is what a load asks of this person in truth.
func (p *person) felt(load float64, step string, rig program.Rig) float64 {
	off := p.model + simStep*p.dice(append([]int{forName}, letters(step)...)...).NormFloat64()
	if name := rigName(rig); name != "" {
		off += simRig * p.dice(append([]int{forName, 1}, letters(name)...)...).NormFloat64()
	}
	return load * math.Exp(off)
}

func letters(s string) []int {
	var out []int
	for _, b := range []byte(s) {
		out = append(out, int(b))
	}
	return out
}

// tested are the tests of the first day: two holds of about ten seconds.
func (p *person) tested() []program.Hold {
	t := trainee{rng: p.dice(forTrial), body: p.body, c: p.c, kappa: p.kappa, steps: map[string]float64{}, rigs: map[string]float64{}}
	tests := t.tests(2)
	day, d := simDay*t.rng.NormFloat64(), t.rng
	for i := range tests {
		r, _ := p.body.onLadder(tests[i].Step)
		o, _ := p.body.hungAs(r, tests[i].Rig)
		l := lifetime{person: p, c: p.c}
		tests[i].Seconds = l.held(d, o.load, r.ID, o.rig, day, 0)
	}
	return tests
}

func (b *body) onLadder(step string) (*rung, bool) {
	for i := range b.all {
		if b.all[i].ID == step {
			return &b.all[i], true
		}
	}
	return nil, false
}

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
			asked += askedFor(w, s)
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

// askedFor is how many counted seconds a session asks for; where no load is
// printed, as many as every other of its week.
func askedFor(w *program.Week, s *program.Session) float64 {
	sum, unweighed := 0, 0
	for i := range s.Items {
		if item := &s.Items[i]; item.Role == program.RoleMain && item.Load == 0 {
			unweighed++
		} else {
			sum += counted(*item)
		}
	}
	if unweighed > 0 {
		sum = w.HalfSeconds / len(w.Sessions)
	}
	return float64(sum) / 2
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
	load := l.body.PlancheLean(item.Ahead, l.body.support).Torque * math.Exp(l.model)
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
	for _, c := range r.rigs {
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

// response is how gain answers to training. Each counts what a set stimulates; a
// week's sum, against the counted seconds that its sessions asked for, gives the share of
// the law's gain. Seconds beyond those bring nothing, so that policies are compared
// at equal volume. More of it brings less and less: by the square root
// (our judgement; sets bring diminishing returns).
type response int

const (
	byLoad   response = iota // seconds × (load / 0.8 of the maximum)³
	byEffort                 // counted seconds × what a hold is of the own longest, levelling off
	flat                     // sessions alone
	responses
)

func (r response) String() string { return [...]string{"by load", "by effort", "flat"}[r] }

// of is what one set stimulates, in seconds of usual work. Usual work is at 0.8 of
// the maximum and held for 0.7 of the longest hold.
func (r response) of(seconds, limit, share float64) float64 {
	if r == byLoad {
		return seconds * math.Pow(share/0.8, 3)
	}
	effort := min(1, seconds/max(limit, 0.5))
	counted := seconds * float64(work{share: share}.halves()) / 2
	return counted * levelling(effort) / levelling(usualEffort)
}

// levelling is worth 0.43 at a quarter of the longest hold, 0.86 at seven tenths,
// 0.94 at all of it: what is left undone matters less, the less it is (published
// for repetitions: sets to failure bring no more than sets near it at equal volume;
// from memory).
func levelling(effort float64) float64 { return 1 - math.Exp(-effort/0.35) }

func (r response) share(stimulus float64) float64 {
	if r == flat {
		return 1
	}
	return min(1.5, math.Sqrt(stimulus))
}
