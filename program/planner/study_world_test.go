package planner

import (
	"math"
	"math/rand/v2"

	"gatepost/program"
	"gatepost/program/strength"
)

// # The world of the study
//
// A person has a truth that nobody sees, drawn with the filter's own constants
// (see trainee), and does what is printed (see lifetime):
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
