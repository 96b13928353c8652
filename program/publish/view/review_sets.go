package view

import (
	"math"
	"strconv"
	"strings"

	"gatepost/program"
)

// setRead writes a set as the log has it: "1 Feb, half-open tuck, narrow: 13 s,
// RPE 8".
func (s *speech) setRead(r program.SetRead) string {
	what := s.exercise(r.Exercise)
	switch {
	case r.Scale > 0:
		what = join(s.step(r.Step), s.say("rig.on_scale"), s.kilograms(r.Scale))
	case r.Step != "":
		what = join(s.step(r.Step), s.rig(r.Rig), s.drop(r.Rig))
	case r.Ahead > 0:
		what = join(what, s.centimetres(r.Ahead))
	}
	if r.Done.Number > 0 {
		what = join(what, s.say("review.set_number", "number", strconv.Itoa(r.Done.Number)))
	}
	return s.say("review.set", "date", s.brief(r.Date), "what", what, "done", s.setDone(r))
}

// setDone writes how a set went: "9 s of 12 s, RPE 9.5, shape broke".
func (s *speech) setDone(r program.SetRead) string {
	amount := func(n float64) string {
		if s.counts(r.Step) {
			return s.length(round(n))
		}
		if r.Done.Reps > 0 {
			return s.say("amount.reps", "sets", "1", "reps", s.decimal(n))
		}
		return s.unit("seconds", s.decimal(n))
	}
	if r.Done.Tries.Of > 0 {
		return s.triesDone(r.Done)
	}
	done := r.Done.Seconds
	if r.Done.Reps > 0 {
		done = float64(r.Done.Reps)
	}
	parts := []string{amount(done)}
	switch {
	case done == 0:
		parts[0] = s.say("review.tried")
	case r.Printed > 0 && done < float64(r.Printed):
		parts[0] = s.say("review.of", "done", amount(done), "printed", amount(float64(r.Printed)))
	}
	if r.Done.RPE > 0 {
		parts = append(parts, s.say("review.rpe", "rpe", s.decimal(r.Done.RPE)))
	}
	if r.Done.Clean == program.CleanNo && done > 0 {
		parts = append(parts, s.say("review.broken"))
	}
	if worst := r.Done.Pain.Worst(); worst > 0 {
		parts = append(parts, s.say("review.pain", "pain", strconv.Itoa(worst)))
	}
	return join(parts...)
}

func (s *speech) move(m program.Move) string {
	key := "review.move_up"
	if m.Moved < 0 {
		key = "review.move_down"
	}
	tenths := math.Round(1000*math.Abs(math.Expm1(m.Moved))) / 10
	return s.say(key, "set", s.setRead(m.Set), "percent", s.unit("percent", s.decimal(tenths)))
}

// gateRead writes a gate and each thing it asks.
func (s *speech) gateRead(g program.GateRead) GateRead {
	v := GateRead{Step: s.step(g.Step), StateKey: g.State}
	switch {
	case g.State == program.GatePassed:
		v.State = s.say("review.gate_passed_on", "date", s.date(g.On))
	case g.Tries > 0:
		v.State = s.say("review.gate_tries", "weeks", strconv.Itoa(g.Tries))
	case untried(g):
		v.State = s.say("review.gate_untried", "dose", s.gate(g.StepGate).Dose)
	default:
		v.State = s.say("review.gate_" + string(g.State))
	}
	v.Line = s.gateWeek(g, s.say("review.gate_line", "step", v.Step, "state", v.State))
	if g.State == program.GatePassed || !untried(g) {
		for _, c := range g.Criteria {
			v.Terms = append(v.Terms, s.term(c))
		}
	}
	return v
}

// gateWeek says behind a gate's line when it will be asked for.
func (s *speech) gateWeek(g program.GateRead, line string) string {
	for _, w := range s.program.Weeks {
		if w.Gate && w.Step == g.Step && w.Start >= s.program.From && g.State != program.GatePassed {
			return s.say("review.gate_week", "line", line, "number", strconv.Itoa(w.Number), "dates", s.span(w.Start, w.Start+6))
		}
	}
	return line
}

// untried says that no free set was held: what held with help falls short of
// everything the gate asks, which is no news.
func untried(g program.GateRead) bool {
	for _, c := range g.Criteria {
		if c.Name == "tries" || c.Name == "hold" && g.Reached > 0 {
			return false
		}
		if c.Name == "free" && c.Shown > 0 {
			return false
		}
	}
	return true
}

func (s *speech) term(c program.Criterion) TermRead {
	v := TermRead{Met: c.Met, Unsaid: c.Unsaid && !c.Met}
	mark := "unmet"
	switch {
	case c.Met:
		mark = "met"
	case c.Unsaid:
		mark = "unsaid"
	}
	key, pairs := "review.criterion", []string{"mark", s.say("review." + mark), "name", s.say("review.criterion_" + c.Name), "shown", s.held(c)}
	if pairs[5] == "" {
		key = "review.criterion_bare"
	}
	v.Line = s.say(key, pairs...)
	if sets := s.deciding(c.Sets); sets != "" && !c.Met {
		v.Line = s.say("review.deciding", "criterion", v.Line, "sets", sets)
	}
	return v
}

// held is what was shown beside what is asked; empty where a word says it all.
func (s *speech) held(c program.Criterion) string {
	number := func(x float64) string { return s.decimal(x) }
	pair := func(key string, write func(float64) string) string {
		return s.say(s.plural("review.shown_"+key, round(c.Wanted)), "shown", write(c.Shown), "wanted", write(c.Wanted))
	}
	seconds := func(x float64) string { return s.unit("seconds", s.decimal(x)) }
	if s.repeats() {
		seconds = func(x float64) string { return s.length(round(x)) }
	}
	switch {
	case c.Name == "free" || c.Name == "sets":
		return pair("sets", number)
	case c.Name == "tries" || c.Name == "reached":
		return pair("tries", number)
	case c.Name == "sessions":
		return pair("days", number)
	case c.Name == "hold":
		return pair("hold", seconds)
	case c.Name == "single":
		return pair("single", seconds)
	case c.Name == "rpe" && !c.Unsaid:
		return pair("rpe", number)
	case c.Name == "pain" && c.Unsaid:
		return s.say("review.pain_none")
	case c.Name == "pain":
		return pair("pain", number)
	}
	return ""
}

// deciding writes the sets of a day after one date: "12 Feb: 10 s, 10 s, 8 s".
func (s *speech) deciding(sets []program.SetRead) string {
	var all []string
	for i, r := range sets {
		r.Printed = 0
		text := s.setDone(r)
		if i == 0 || sets[i-1].Date != r.Date {
			text = s.brief(r.Date) + ": " + text
		}
		all = append(all, text)
	}
	return strings.Join(all, "; ")
}
