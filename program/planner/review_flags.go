package planner

import (
	"slices"

	"gatepost/program"
)

// joints are the pairs of joints that a plan can ease, with their words.
var joints = [...]struct {
	name  string // as exercises have it
	key   string
	pain  func(program.Pain) int
	state func(*program.Health) *program.Joint
}{
	{"wrists", "joint.wrists", func(p program.Pain) int { return p.Wrists }, func(h *program.Health) *program.Joint { return &h.Wrists }},
	{"elbows", "joint.elbows", func(p program.Pain) int { return p.Elbows }, func(h *program.Health) *program.Joint { return &h.Elbows }},
	{"shoulders", "joint.shoulders", func(p program.Pain) int { return p.Shoulders }, func(h *program.Health) *program.Joint { return &h.Shoulders }},
}

const aWeek = 7 // days

// painFlags are what the joints say, in sessions and on the mornings after them, and
// the assessment with the joints that hurt counted as sore: the plan ahead is
// gentler for it.
func (di *diary) painFlags() ([]program.Flag, program.Assessment) {
	eased := *di.athlete
	var flags []program.Flag
	for _, j := range joints {
		weeks := di.worstByWeek(j.pain)
		worst := max(weeks[0], weeks[1])
		value := []program.Value{word("joint", j.key), count("pain", worst)}
		switch {
		case weeks[0] > weeks[1] && weeks[1] > weeks[2]:
			flags = append(flags, program.Flag{Level: program.FlagStop, Note: note(flagPainRising, value...)})
		case worst >= highPain:
			flags = append(flags, program.Flag{Level: program.FlagStop, Note: note(flagPainHigh, value...)})
		case worst >= sorePain:
			flags = append(flags, program.Flag{Level: program.FlagAct, Note: note(flagPainSore, value...)})
		default:
			continue
		}
		countSore(j.state(&eased.Health))
	}
	other := di.worstByWeek(func(p program.Pain) int { return p.Other })
	if worst := max(other[0], other[1]); worst >= sorePain {
		level := program.FlagLook
		if worst >= highPain || other[0] > other[1] && other[1] > other[2] {
			level = program.FlagStop
		}
		flags = append(flags, program.Flag{Level: level, Note: note(flagPainOther, count("pain", worst))})
	}
	return append(flags, di.morningFlags(&eased)...), eased
}

// countSore eases a joint that the assessment has as fine.
func countSore(s *program.Joint) {
	if *s == program.JointFine || *s == "" {
		*s = program.JointSore
	}
}

// countedSore are the joints that count as sore and did not, by their words.
func countedSore(eased, asked *program.Health) []string {
	var keys []string
	for _, j := range joints {
		if *j.state(eased) != *j.state(asked) {
			keys = append(keys, j.key)
		}
	}
	return keys
}

// worstByWeek is the worst pain of a joint in the seven days up to the review,
// in the seven before, and in the seven before those; 0 where none was written.
//
// Mornings are kept apart: pain under load and stiffness the day after are two
// questions, with limits of their own, and a morning is read against what is usual
// for its joint. In one number a habitual stiff morning of 3 would count as sore for
// ever, and a week with mornings written as worse than one without.
func (di *diary) worstByWeek(of func(program.Pain) int) [3]int {
	var worst [3]int
	for _, d := range di.days {
		at := int(di.on-d.date) / aWeek
		if at >= len(worst) {
			continue
		}
		worst[at] = max(worst[at], d.worst(of))
	}
	return worst
}

// effortFlags look at how hard the last two weeks' main sets were.
func (di *diary) effortFlags() []program.Flag {
	var mains, short, rated int
	var sum, most float64
	for _, d := range di.days {
		if di.on-d.date >= lately {
			continue
		}
		for i := range d.sets {
			s := &d.sets[i]
			if !s.main() || s.item.Max || !s.said() {
				continue
			}
			mains++
			if s.short() {
				short++
			}
			if s.Done.RPE > 0 {
				rated, sum, most = rated+1, sum+s.Done.RPE, max(most, s.Done.RPE)
			}
		}
	}
	var flags []program.Flag
	look := func(when bool, code string, values ...program.Value) {
		if when {
			flags = append(flags, program.Flag{Note: note(code, values...)})
		}
	}
	look(mains >= mainsLeast && float64(short) > shortMany*float64(mains), flagSetsShort, count("sets", short), count("of", mains))
	settled := len(di.days) > 0 && di.on-di.days[0].date >= aWeek // in the first week everything is new
	look(settled && rated >= ratedLeast && sum >= highRPE*float64(rated), flagRPEHigh)
	look(settled && rated >= ratedLeast && most <= lowRPE, flagRPELow)
	return flags
}

// attendanceFlags look at what was printed and not done.
func (r *reading) attendanceFlags() []program.Flag {
	var flags []program.Flag
	printed, missed, open := 0, 0, 0
	last := r.last()
	sessions, _, _ := r.sessions()
	for _, s := range sessions {
		if s.Done == 0 && s.Printed > last {
			open++
		}
		if s.Printed != 0 && r.on-s.Printed < lately {
			printed++
			if s.Done == 0 {
				missed++
			}
		}
	}
	switch {
	case last == 0: // nobody has begun to write
	case open > 0 && r.on-max(last, r.block) >= silentDays:
		flags = append(flags, program.Flag{Note: note(flagSilent, date("last", last), count("sessions", open))})
	case printed > 0 && float64(missed) >= missedMany*float64(printed) && missed > 1:
		flags = append(flags, program.Flag{Note: note(flagMissed, count("sessions", missed), count("of", printed))})
	}
	return flags
}

// last is the day of the last session done; 0 where there was none.
func (di *diary) last() program.Date {
	if len(di.days) == 0 {
		return 0
	}
	return di.days[len(di.days)-1].date
}

// gateFlags say what the gates have changed.
func (r *reading) gateFlags(gates []program.GateRead) []program.Flag {
	var flags []program.Flag
	for _, g := range gates {
		switch {
		case g.State == program.GatePassed && g.On >= r.then.at-aWeek:
			flags = append(flags, program.Flag{Level: program.FlagAct, Note: note(flagGatePassed, step("step", g.Step), date("on", g.On))})
		case g.Tries > repeats:
			flags = append(flags, program.Flag{Level: program.FlagAct, Note: note(flagGateHelp, step("step", g.Step), count("weeks", g.Tries))})
		case g.Tries > 0:
			flags = append(flags, program.Flag{Level: program.FlagAct, Note: note(flagGateNotYet, step("step", g.Step), count("weeks", g.Tries))})
		}
	}
	return flags
}

// goalFlag says that the goal is shown, from the first day it was.
func (r *reading) goalFlag() []program.Flag {
	goal := &r.body.Steps[len(r.body.Steps)-1]
	for _, s := range r.shown() {
		if s.load >= goal.Load {
			return []program.Flag{{Level: program.FlagAct, Note: note(flagGoalShown, step("step", goal.ID), seconds("hold", r.athlete.Goal.Hold), date("on", s.on))}}
		}
	}
	return nil
}

// flags are all of them, the most urgent first.
func (r *reading) flags(pains []program.Flag, gates []program.GateRead, asks []program.Note, ended bool) []program.Flag {
	flags := append(slices.Clone(pains), r.gateFlags(gates)...)
	for i, ask := range asks {
		if step := ask.Values[0]; i == 0 || asks[i-1].Values[0] != step {
			flags = append(flags, program.Flag{Level: program.FlagAct, Note: note(flagGateUnsaid, step)})
		}
	}
	flags = append(flags, r.goalFlag()...)
	if ended {
		flags = append(flags, program.Flag{Level: program.FlagAct, Note: note(flagBlockOver)})
	}
	flags = append(flags, r.effortFlags()...)
	flags = append(flags, r.attendanceFlags()...)
	if n := len(r.est.doubted); n > 0 {
		flags = append(flags, program.Flag{Note: note(flagDoubted, count("sets", n))})
	}
	slices.SortStableFunc(flags, func(a, b program.Flag) int { return int(b.Level - a.Level) })
	return flags
}
