package view

import (
	"strconv"

	"gatepost/program"
)

// balances reports whether the road map is one of balance, which has tries and neither a
// share nor a date.
func (s *speech) balances() bool { return s.road.Load == program.LoadBalance }

// inTries reports whether a step is one of tries, and not held.
func (s *speech) inTries(step string) bool {
	found, ok := s.road.Step(step)
	return ok && s.balances() && found.Gate.Tried()
}

// practised reports whether an item is so many tries of a balance.
func practised(p program.Prescription) bool { return p.Try && p.Hold > 0 }

// practice writes the tries of a day: "10 tries at 3 s, 11 min".
func (s *speech) practice(p program.Prescription) string {
	minutes := (p.Sets*(p.Hold+p.Rest) + 59) / 60
	return join(s.triesAt(p.Sets, p.Hold), s.minutes(minutes))
}

func (s *speech) tries(n int) string {
	return s.say(s.plural("amount.tries_only", n), "tries", strconv.Itoa(n))
}

func (s *speech) triesAt(tries, hold int) string {
	return s.say("amount.tries_at", "tries", strconv.Itoa(tries), "hold", strconv.Itoa(hold))
}

// outOf writes how many tries reached: "4 of 10".
func (s *speech) outOf(t program.Tries) string {
	return s.say("amount.out_of", "reached", strconv.Itoa(t.Reached), "of", strconv.Itoa(t.Of))
}

// triesDone writes a line of tries: "4 of 10, best 12 s".
func (s *speech) triesDone(d program.SetDone) string {
	best := ""
	if d.Seconds > 0 {
		best = s.say("amount.best", "hold", s.unit("seconds", s.decimal(d.Seconds)))
	}
	return join(s.outOf(d.Tries), best)
}

// reach is what a gate of balance asks of a day: "6 of 10 tries at 10 s".
func (s *speech) reach(g program.Gate) string {
	key, pairs := GateSets(g, 1)
	return s.say(key, pairs...)
}

// balanceGate is the gate of a step of balance: no word of form or effort.
func (s *speech) balanceGate(g program.StepGate) Gate {
	v := Gate{StepID: g.Step, Step: s.step(g.Step), Dose: s.reach(g.Gate), Week: g.Week}
	v.Terms = []string{v.Dose,
		s.say(s.plural("gate.sessions", g.Sessions), "sessions", strconv.Itoa(g.Sessions), "hours", strconv.Itoa(g.Apart)),
		s.say("gate.pain", "pain", strconv.Itoa(g.PainMax))}
	v.Words = join(v.Terms...)
	v.Short = s.say("gate.short", "step", v.Step, "dose", v.Dose)
	return v
}

// practiceForecast says that no date is forecast.
func (s *speech) practiceForecast(p *program.Program) Forecast {
	if p.Goal.Met {
		return Forecast{Range: s.say("forecast.held"), Sentence: s.say("forecast.met"), GoalOn: p.Goal.By}
	}
	return Forecast{Range: s.say("forecast.no_law"), Sentence: s.say("forecast.practice"), GoalOn: p.Goal.By}
}

// practiceWhere says what is practised, and the best of it so far.
func (s *speech) practiceWhere(p *program.Program, place program.StepLoad) string {
	key, pairs := "plan.practised", []string{"name", first(p), "step", s.step(p.Place)}
	if p.Place == "" {
		return s.say("plan.practised_none", pairs...)
	}
	if place.FreeHold >= 1 {
		key, pairs = "plan.practised_best", append(pairs, "hold", s.seconds(int(place.FreeHold)))
	}
	return s.say(key, pairs...)
}

// triesBoxes are one for each try, to tick or to write seconds in, and two for all of them.
func (s *speech) triesBoxes(p program.Prescription) []CardBox {
	var all []CardBox
	for i := range p.Sets {
		all = append(all, CardBox{Caption: strconv.Itoa(i + 1)})
	}
	return append(all, CardBox{s.say("card.best"), true}, CardBox{s.say("card.reached", "hold", s.seconds(p.Hold)), true})
}

// tries is how many of ten reached, each week's best day.
func (c *charts) tries() Chart {
	done := Series{Name: c.say("progress.done"), Form: SeriesBars, Values: c.read(func(w *program.WeekRead) float64 {
		if w.Tries.Of == 0 {
			return none
		}
		return 10 * float64(w.Tries.Reached) / float64(w.Tries.Of)
	})}
	v := c.chart("tries", ticks(2, true, []float64{0, 10}), done)
	v.Desc = c.describe("tries", done.Values, 0)
	return v
}
