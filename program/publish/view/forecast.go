package view

import (
	"slices"
	"strconv"
	"strings"

	"gatepost/program"
)

// block names the weeks: "12 weeks, 11 January – 4 April 2027".
func (s *speech) block(p *program.Program) string {
	if len(p.Weeks) == 0 {
		return ""
	}
	last := p.Weeks[len(p.Weeks)-1].Start + 6
	return s.say(s.plural("plan.block", len(p.Weeks)), "weeks", strconv.Itoa(len(p.Weeks)),
		"from", s.date(p.Start), "to", s.date(last))
}

// entering reports whether a program trains what its skill asks for before any step.
func entering(p *program.Program) bool {
	return slices.ContainsFunc(p.Notes, func(n program.Note) bool { return strings.HasPrefix(n.Code, "entry-") })
}

// where says in a sentence what the tests showed.
func (s *speech) where(p *program.Program) string {
	on := placeOf(p)
	place, ok := load(p, on)
	ok = ok && len(p.Weeks) > 0
	switch {
	case p.Goal.Met:
		return s.say("plan.met", "name", first(p), "step", s.step(p.Goal.Step))
	case entering(p):
		return s.say("plan.entry", "name", first(p), "entry", s.entry())
	case s.balances():
		return s.practiceWhere(p, place)
	case p.Capacity.Untested:
		return s.say("plan.untested", "name", first(p))
	case !ok:
		return s.say("plan.floor", "name", first(p))
	case p.Weeks[0].Scale > 0:
		return s.say("plan.on_scale", "name", first(p), "step", s.step(on))
	case place.FreeHold < 1:
		return s.say("plan.helped", "name", first(p), "step", s.step(on))
	}
	return s.say("plan.held", "name", first(p), "step", s.step(on),
		"hold", s.length(int(place.FreeHold)))
}

// placeOf is the step that a plan works on, or, where its next weeks rest from it, goes back
// to; on floor rungs none.
func placeOf(p *program.Program) string {
	for _, w := range p.Weeks {
		if p.Place == "" && w.Start >= p.From && (w.Step != "" || w.Exercise != "") {
			return w.Step
		}
	}
	return p.Place
}

func load(p *program.Program, step string) (program.StepLoad, bool) {
	for _, l := range p.Steps {
		if l.ID == step {
			return l, true
		}
	}
	return program.StepLoad{}, false
}

func forecastOf(p *program.Program, step string) program.Forecast {
	for _, f := range p.Forecasts {
		if f.Step == step {
			return f
		}
	}
	return program.Forecast{Step: step}
}

func (s *speech) forecast(p *program.Program) Forecast {
	if s.balances() {
		return s.practiceForecast(p)
	}
	f := forecastOf(p, p.Goal.Step)
	v := Forecast{Early: s.month(f.Early), Likely: s.month(f.Likely), Late: s.month(f.Late),
		EarlyOn: f.Early, LikelyOn: f.Likely, LateOn: f.Late, GoalOn: p.Goal.By}
	v.Range = s.dateRange(f, p.Goal.Met)
	if p.Goal.Met {
		v.Sentence = s.say("forecast.met")
		return v
	}
	v.ChanceKey = chance(p.Goal.Chance)
	v.Chance = s.say("chance." + v.ChanceKey)
	v.ChanceLine = s.say("forecast.chance", "date", s.date(p.Goal.By), "chance", v.Chance,
		"means", s.say("chance."+v.ChanceKey+"_means"))
	v.Sentence = s.say("forecast.goal", "step", s.step(p.Goal.Step), "hold", s.length(p.Goal.Hold),
		"range", v.Range, "date", s.date(p.Goal.By), "chance", v.Chance)
	return v
}

// dateRange is a phrase of the dates that are near enough to name.
func (s *speech) dateRange(f program.Forecast, met bool) string {
	likely := s.say("forecast.likely", "date", s.month(f.Likely))
	switch {
	case f.Held || met:
		return s.say("forecast.held")
	case f.Early == 0:
		return s.say("forecast.not_forecast")
	case f.Likely == 0:
		return s.say("forecast.earliest", "date", s.month(f.Early))
	case f.Late == 0:
		return join(likely, s.say("forecast.open_end", "early", s.month(f.Early)))
	case s.month(f.Early) == s.month(f.Late):
		return likely
	}
	return join(likely, s.say("forecast.between", "early", s.month(f.Early), "late", s.month(f.Late)))
}

// chance is the word for a chance, by whole per cent. The limits are our
// judgement.
func chance(share float64) string {
	switch c := round(100 * share); {
	case c < 20:
		return "unlikely"
	case c <= 60:
		return "open"
	case c <= 85:
		return "likely"
	}
	return "very_likely"
}

// ladder is this body's steps from the first to the goal.
func (s *speech) ladder(p *program.Program) []Rung {
	var all []Rung
	behind := p.Place != ""
	for _, l := range p.Steps {
		if l.ID == p.Place {
			behind = false
		}
		f := forecastOf(p, l.ID)
		r := Rung{StepID: l.ID, Step: s.step(l.ID), Share: s.percent(l.Share), ShareOf1: l.Share,
			State: rungState(p, l.ID, f.Held, behind), Stance: l.Stance}
		if step, ok := s.road.Step(l.ID); ok {
			r.ExerciseID = step.Exercise
		}
		if s.balances() {
			r.Share = ""
		}
		r.StateWord = s.say("rung." + string(r.State))
		if f.Likely != 0 && !f.Held && r.State != RungBehind {
			r.Month = s.say("date.month", "month", s.monthShort(f.Likely), "year", strconv.Itoa(f.Likely.Time().Year()))
			r.When = s.say("forecast.likely", "date", s.month(f.Likely))
		}
		all = append(all, r)
		if l.ID == p.Goal.Step {
			break
		}
	}
	return all
}

func rungState(p *program.Program, id string, held, behind bool) RungState {
	switch {
	case id == p.Place && !p.Goal.Met:
		return RungNow
	case id == p.Goal.Step:
		return RungGoal
	case held:
		return RungHeld
	case behind:
		return RungBehind
	}
	for _, w := range p.Weeks {
		if w.Step == id {
			return RungBlock
		}
	}
	return RungLater
}

func (s *speech) gates(p *program.Program) []Gate {
	var all []Gate
	for _, g := range p.Gates {
		all = append(all, s.gate(g))
	}
	return all
}

func (s *speech) gate(g program.StepGate) Gate {
	if s.balances() {
		return s.balanceGate(g)
	}
	v := Gate{StepID: g.Step, Step: s.step(g.Step), Sets: s.dose(s.counts(g.Step), g.Sets, g.Hold), Week: g.Week}
	sides := 1
	if step, ok := s.road.Step(g.Step); ok {
		sides = step.Sides
	}
	key, pairs := GateSets(g.Gate, sides)
	v.Terms = []string{s.say(key, pairs...)}
	if g.Single > 0 {
		v.Longer = s.say("gate.single", "hold", strconv.Itoa(g.Single))
		v.Terms = append(v.Terms, v.Longer)
	}
	v.Dose = join(v.Sets, v.Longer)
	v.Terms = append(v.Terms, s.say("gate.clean"), s.say("gate.rpe", "rpe", s.decimal(g.RPEMax)),
		s.say(s.plural("gate.sessions", g.Sessions), "sessions", strconv.Itoa(g.Sessions), "hours", strconv.Itoa(g.Apart)),
		s.say("gate.pain", "pain", strconv.Itoa(g.PainMax)))
	v.Words = join(v.Terms...)
	v.Short = s.say("gate.short", "step", v.Step, "dose", v.Dose)
	return v
}

// outline is the road; steps of one time share a line of it.
func (s *speech) outline(p *program.Program) []string {
	var all []string
	for i := 0; i < len(p.Outline); {
		from := p.Outline[i]
		var names []string
		for ; i < len(p.Outline) && p.Outline[i].First == from.First && s.month(p.Outline[i].From) == s.month(from.From); i++ {
			names = append(names, s.step(p.Outline[i].Step))
		}
		all = append(all, s.say(stageKey(p, from), "step", join(names...), "month", s.month(from.From),
			"first", strconv.Itoa(from.First), "last", strconv.Itoa(from.Last)))
	}
	return all
}

// stageKey is how a stretch of the road is said. What begins with the day after the
// block has no month: it may be likely held sooner, and its gate is what it waits for.
func stageKey(p *program.Program, s program.Stage) string {
	switch {
	case s.First > 0 && s.First == s.Last:
		return "plan.stage_week"
	case s.First > 0:
		return "plan.stage_weeks"
	case s.From == 0:
		return "plan.stage_far"
	case s.From <= p.Start+program.Date(7*len(p.Weeks)):
		return "plan.stage_next"
	}
	return "plan.stage"
}

// cue is the first cue of the first week's main work.
func (s *speech) cue(p *program.Program) string {
	for _, w := range p.Weeks {
		if e, ok := s.lib.Exercise(w.Exercise); ok && len(e.Cues) > 0 {
			return e.Cues[0]
		}
	}
	for _, w := range p.Weeks { // no weight on the hands: what stands for the main work
		if lead, ok := leading(w); ok {
			if e, ok := s.lib.Exercise(lead.Exercise); ok && len(e.Cues) > 0 {
				return e.Cues[0]
			}
		}
	}
	return ""
}

// cueWorth says what a better position saves, in kilograms of band help; for
// the coach's eyes.
func (s *speech) cueWorth(p *program.Program) []CueWorth {
	var all []CueWorth
	for _, c := range p.Cues {
		if c.Rig.Block > 0 {
			all = append(all, CueWorth{s.say("cue." + c.Cue), s.say("cue.worth_block", "length", s.centimetres(c.Rig.Block))})
			continue
		}
		all = append(all, CueWorth{s.say("cue." + c.Cue), s.say("cue.worth", "help", s.kilograms(c.Help))})
	}
	return all
}
