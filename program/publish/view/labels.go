package view

// Labels are the captions of printed forms.
type Labels struct {
	Plan, Where, Goal, Ladder, Weeks, After   string
	Week, Hold, Step, Help, Bands, Done, Lean string
	Gate, Passed, Signed, NotYet, Moves       string
	Cue, Early, Likely, Late, By, Free        string
	Provisional, Withheld, Next               string
	Version, Measured, MadeFor, Dates, Rest   string
}

func (s *speech) labels(v *View) Labels {
	say := func(name string) string { return s.say("paper." + name) }
	return Labels{
		Plan: say("plan"), Where: say("where"), Goal: say("goal"), Ladder: say("ladder"), Weeks: say("weeks"),
		After: say("after"), Week: say("week"), Hold: say("hold"), Step: say("step"), Help: say("help"),
		Bands: say("bands"), Done: say("done"), Lean: say("lean"), Dates: say("dates"), Rest: say("rest"),
		Gate: s.say("gate.title"), Passed: s.say("gate.passed"), Signed: s.say("gate.signed"),
		NotYet: s.say("gate.not_yet"), Moves: s.say("gate.moves"),
		Cue: say("cue"), Early: s.say("forecast.early"), Likely: s.say("forecast.middle"), Late: s.say("forecast.late"),
		By: say("by"), Free: s.say("rig.free"), Provisional: s.say("week.provisional"),
		Withheld: say("withheld"), Next: say("next"),
		Version: s.say("foot.version", "version", v.Version), Measured: s.say("foot.measured", "date", v.On),
		MadeFor: s.say("foot.made_for", "name", v.Client),
	}
}
