package view

import "strings"

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
	stop := s.list("stop_rule", stopRule)
	return Advice{
		DayTitle: s.say("day_rule.title"), DayRule: s.dayRules(), DayShort: s.ofDay("day_rule.short"),
		StopTitle: s.say("stop_rule.title"), StopRule: stop, StopLine: capital(strings.Join(stop, "; ")) + ".", StopShort: s.say("stop_rule.short"),
		PainTitle: s.say("pain_rule.title"), PainRule: s.list("pain_rule", painRule),
		MissedTitle: s.say("missed.title"), Missed: s.list("missed", missed),
		CautionTitle: s.say("caution.title"), Cautions: s.list("caution", cautions),
		NotMedical: s.say("caution.not_medical"),
	}
}

func (s *speech) dayRules() []string {
	var all []string
	for _, name := range dayRule {
		all = append(all, s.ofDay("day_rule."+name))
	}
	return all
}

// ofDay is a rule of the day: for holds where balance has lines to hold first, and no tries yet.
func (s *speech) ofDay(key string) string {
	if s.balances() && entering(s.program) {
		return s.plain(key)
	}
	return s.say(key)
}

func (s *speech) list(section string, names []string) []string {
	var all []string
	for _, name := range names {
		all = append(all, s.say(section+"."+name))
	}
	return all
}
