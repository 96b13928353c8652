package planner

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"gatepost/program"
	"gatepost/program/strength"
)

// trainee is a simulated client: a truth that nobody sees, drawn with the
// filter's own constants (our judgement, stated in package strength), who
// follows what is printed and writes it down.
type trainee struct {
	rng   *rand.Rand
	body  *body
	c     float64            // ln of the torque held twelve seconds, N·m
	rho   float64            // ln of the own rate of gain over the law's
	kappa float64            // ln of the endurance constant, per minute
	age   float64            // weeks of training
	model float64            // ln by which the torque model is off for this body
	steps map[string]float64 // ln by which a step is harder than its load, as skill has it
	rigs  map[string]float64 // the same of a rig: bands age, knots slip

	adherence float64 // share of the sessions that are done
	rated     float64 // share of the sets with an RPE
}

// The same constants as the filter's, for drawing the truth.
const (
	simDay, simSet, simStop, simTiring = 0.03, 0.015, 0.7, 0.004
	simWeek, simRate                   = 0.008, 0.03
	simModel                           = 0.02
	simStep, simRig, simLean           = 0.05, 0.03, 0.15
	simEndurance                       = 0.40
)

// newTrainee draws a client of an assessment's body and writes their tests: holds
// of about ten seconds, whose loads the coach chose.
func newTrainee(seed uint64, lib *program.Library, a *program.Assessment) *trainee {
	_, p, _ := begin(lib, a)
	rng := seeded(seed)
	t := &trainee{
		rng: rng, body: p.body,
		c:     math.Log(p.body.all[0].load) + 0.1 + 0.35*rng.NormFloat64(),
		rho:   strength.RateSpread * rng.NormFloat64(),
		kappa: math.Log(strength.TypicalK) + simEndurance*rng.NormFloat64(),
		age:   a.Training.Experience, adherence: 1, rated: 1,
		model: simModel * rng.NormFloat64(), steps: map[string]float64{}, rigs: map[string]float64{},
	}
	a.Tests = t.tests(2)
	return t
}

func seeded(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 1)) }

// tests are maximal holds of one day, at so many steps, each with the rig whose
// hold comes nearest to ten seconds.
func (t *trainee) tests(n int) []program.Hold {
	day := simDay * t.rng.NormFloat64()
	var at []*rung
	var rigs []option
	for i := range t.body.ladder {
		r := &t.body.ladder[i]
		best := slices.MinFunc(r.rigs(), func(x, y option) int { return cmp.Compare(t.fromTen(x), t.fromTen(y)) })
		at, rigs = append(at, r), append(rigs, best)
	}
	order := make([]int, len(at))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(t.fromTen(rigs[i]), t.fromTen(rigs[j])) })
	var out []program.Hold
	for _, i := range order[:n] {
		out = append(out, program.Hold{Step: at[i].ID, Rig: rigs[i].rig, Seconds: t.held(t.felt(rigs[i].load, at[i].ID, rigs[i].rig), day, 0)})
	}
	return out
}

func (t *trainee) fromTen(o option) float64 { return math.Abs(t.limit(o.load, 0) - 10) }

// limit is the true longest hold of a load on a day of some form.
func (t *trainee) limit(load, day float64) float64 {
	return strength.MaxHold(math.Exp(t.c+day), load, math.Exp(t.kappa))
}

// held is the longest hold of one set, with its own noise, in tenths of a second.
func (t *trainee) held(load, day float64, sets int) float64 {
	s := t.limit(load, day-simTiring*float64(sets)+simSet*t.rng.NormFloat64()) + simStop*t.rng.NormFloat64()
	return max(0, math.Round(10*s)/10)
}

// week does a printed week and writes it to the log; then the week's gain comes.
func (t *trainee) week(log *program.Log, w *program.Week) {
	sessions, counted := 0, 0
	for i := range w.Sessions {
		if t.rng.Float64() < t.adherence && t.session(log, &w.Sessions[i]) {
			sessions++
			counted += countedOf(&w.Sessions[i])
		}
	}
	t.passAt(w.Kind, sessions, strength.WorkFactor(float64(counted)/2, startSeconds(t.age)))
}

// pass ends a week.
func (t *trainee) pass(kind program.WeekKind, sessions int) { t.passAt(kind, sessions, 1) }

// passAt ends a week that brings a share of the gain it would bring.
func (t *trainee) passAt(kind program.WeekKind, sessions int, share float64) {
	t.rho += simRate * t.rng.NormFloat64()
	if sessions == 0 {
		t.c += -strength.RestLoss + 0.012*t.rng.NormFloat64()
		return
	}
	gain := share * strength.DefaultLaw.WeekGain(t.age, sessions)
	if kind == program.WeekDeload || kind == program.WeekTest {
		gain *= strength.DeloadShare
	}
	t.c += math.Exp(t.rho)*gain + simWeek*t.rng.NormFloat64()
	t.age++
}

// session does one printed session; false where it held no straight-arm work.
func (t *trainee) session(log *program.Log, s *program.Session) bool {
	day, sets, arm := simDay*t.rng.NormFloat64(), 0, false
	for i := range s.Items {
		item := &s.Items[i]
		if !isArm(item) {
			continue
		}
		arm = true
		e := program.Entry{Date: s.Date, Exercise: item.Exercise, Step: item.Step}
		for range item.Sets {
			e.Sets = append(e.Sets, t.set(item, day, sets))
			sets++
		}
		log.Entries = append(log.Entries, e)
	}
	return arm
}

// set does one set: to its end where it is a test, else to the printed seconds,
// or as far as it goes. RPE speaks of what was left, half points, and is said of
// some.
func (t *trainee) set(item *program.Prescription, day float64, sets int) program.SetDone {
	load := t.load(item)
	limit := t.held(load, day, sets)
	out := program.SetDone{Number: 0, Seconds: limit, Clean: program.CleanYes}
	switch {
	case item.Max:
		return out
	case item.Hold == 0:
		out.Seconds = max(1, limit-checkLeft)
	case limit >= float64(item.Hold):
		out.Seconds = float64(item.Hold)
	default:
		out.Seconds, out.RPE = max(0.5, math.Floor(limit)), 10
		return out
	}
	if t.rng.Float64() < t.rated {
		left := limit - out.Seconds
		out.RPE = min(9.5, max(5, math.Round(2*(10-left/2.5+0.5*t.rng.NormFloat64()))/2))
	}
	return out
}

// felt is what a load asks of this client in truth.
func (t *trainee) felt(load float64, step string, rig program.Rig) float64 {
	off, spread := t.model, simStep
	if step == "" {
		spread = simLean
	}
	for _, part := range []struct {
		of     map[string]float64
		name   string
		spread float64
	}{{t.steps, cmp.Or(step, "lean"), spread}, {t.rigs, rigName(rig), simRig}} {
		if _, ok := part.of[part.name]; !ok && part.name != "" {
			part.of[part.name] = part.spread * t.rng.NormFloat64()
		}
		off += part.of[part.name]
	}
	return load * math.Exp(off)
}

func (t *trainee) load(item *program.Prescription) float64 {
	if item.Step == "" {
		return t.felt(t.body.PlancheLean(item.Ahead, t.body.support).Torque, "", program.Rig{})
	}
	for i := range t.body.all {
		if r := &t.body.all[i]; r.ID == item.Step {
			o, _ := t.body.hungAs(r, item.Rig)
			return t.felt(o.load-item.Scale*r.toesReach()*allowance(r.Step), r.ID, item.Rig)
		}
	}
	return math.Inf(1)
}
