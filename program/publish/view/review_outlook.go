package view

import (
	"gatepost/program"
)

// goalLoad is the torque that the goal's step asks of this body, its skill
// allowance included; 0 where it is not known.
func goalLoad(p *program.Program) float64 {
	l, ok := load(p, p.Goal.Step)
	if !ok {
		return 0
	}
	if l.Allowance == 0 {
		return l.Torque
	}
	return l.Torque * l.Allowance
}

// estimates says the strength as a share of what the goal asks: torques are no
// number that a coach can feel.
func (s *speech) estimates(p *program.Program, r *program.Review) []string {
	goal := goalLoad(p)
	if goal == 0 || r.After.Held12 == 0 {
		return nil
	}
	write := func(key string, c program.Capacity) string {
		return s.say("review."+key, "share", s.percent(c.Held12/goal), "step", s.step(p.Goal.Step),
			"low", s.percent(c.Low/goal), "high", s.percent(c.High/goal))
	}
	all := []string{write("held", r.After)}
	if r.Last != 0 && r.Before != r.After {
		all = append(all, write("held_before", r.Before))
	}
	if len(p.Weeks) > 0 && len(p.Withheld) == 0 {
		all = append(all, s.where(p))
	}
	return all
}

// forecastRead is the goal's forecast when the plan on the wall was made, and now.
func (s *speech) forecastRead(p *program.Program, r *program.Review) []string {
	write := func(key string, all []program.Forecast, goal program.GoalForecast) string {
		f := program.Forecast{Step: goal.Step}
		for _, known := range all {
			if known.Step == goal.Step {
				f = known
			}
		}
		if goal.Met {
			return s.say("review.forecast_met")
		}
		return s.say("review."+key, "range", s.dateRange(f, false), "date", s.date(goal.By), "chance", s.say("chance."+chance(goal.Chance)))
	}
	if s.balances() {
		return []string{s.practiceForecast(p).Sentence}
	}
	after := write("forecast_after", r.ForecastAfter, r.GoalAfter)
	if r.Last == 0 || r.GoalBefore.Met || r.Before == r.After {
		return []string{after}
	}
	return []string{write("forecast_before", r.ForecastBefore, r.GoalBefore), after}
}
