package view

import (
	"slices"
	"strings"

	"gatepost/program"
)

// The order in which advice is given, by name in the words file.
var (
	dayRule  = []string{"reserve", "help", "no_help", "easy", "one_thing"}
	stopRule = []string{"pain", "nerves", "head", "chest", "shape", "kit"}
	painRule = []string{"low", "middle", "high", "morning", "more", "see"}
	missed   = []string{"one", "week", "two_weeks", "ill"}
	cautions = []string{"physician", "breathe", "stop", "joints", "landing", "kit", "youth"}
)

// advice gathers what every handout repeats.
func (s *speech) advice() Advice {
	stop := s.list(s.say, "stop_rule", stopRule)
	return Advice{
		DayTitle: s.say("day_rule.title"), DayRule: s.list(s.ofDay, "day_rule", dayRule), DayShort: s.ofDay("day_rule.short"),
		StopTitle: s.say("stop_rule.title"), StopRule: stop, StopLine: capital(strings.Join(stop, "; ")) + ".", StopShort: s.say("stop_rule.short"),
		PainTitle: s.say("pain_rule.title"), PainRule: s.list(s.say, "pain_rule", painRule),
		MissedTitle: s.say("missed.title"), Missed: s.list(s.say, "missed", missed),
		CautionTitle: s.say("caution.title"), Cautions: s.list(s.say, "caution", cautions),
		NotMedical: s.say("caution.not_medical"),
	}
}

// ofDay is a rule of the day: of its own where something else comes before the steps, or
// where balance has no tries.
func (s *speech) ofDay(key string, pairs ...string) string {
	if entering(s.program) || s.repeats() && leansFirst(s.program) || s.balances() && !hasTries(s.program) {
		return s.plain(key+"_first", pairs...)
	}
	return s.say(key, pairs...)
}

// hasTries reports whether some session has tries.
func hasTries(p *program.Program) bool {
	for item := range itemsOf(p.Weeks...) {
		if item.Try {
			return true
		}
	}
	return false
}

// leansFirst reports whether some week's main work is on the floor, where all is held.
func leansFirst(p *program.Program) bool {
	return slices.ContainsFunc(p.Weeks, func(w program.Week) bool { return w.Ahead > 0 })
}

func (s *speech) list(say func(key string, pairs ...string) string, section string, names []string) []string {
	var all []string
	for _, name := range names {
		all = append(all, say(section+"."+name))
	}
	return all
}
