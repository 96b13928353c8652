package view

import (
	"slices"
	"strconv"
	"strings"

	"gatepost/program"
)

// Labels are the captions of printed forms.
type Labels struct {
	Plan, Where, Goal, Ladder, Weeks, After, Notes string
	Week, Hold, Step, Help, Bands, Done, Lean      string
	Gate, Passed, Signed, NotYet, Moves            string
	Cue, Early, Likely, Late, By, Free             string
	Far, Provisional, Withheld, Lead, Next         string
	From                                           string // "From week 5: provisional …"; empty: none is
	Way                                            string // the ladder without a word of shares
	Measured, MadeFor, Dates, Rest                 string
	Numbered                                       string // "Plan 2"
	NoSession, PrepareFirst                        string // of shared plans
	Terms                                          string

	pageOf  string // "Page {page} of {pages}", to be filled in
	version string // "Version {version}", likewise
}

// PageOf is the number of a sheet: "Page 1 of 2".
func (l *Labels) PageOf(page, pages int) string {
	return strings.NewReplacer("{page}", strconv.Itoa(page), "{pages}", strconv.Itoa(pages)).Replace(l.pageOf)
}

// pageOf is what Labels.PageOf fills in.
func (s *speech) pageOf() string { return s.say("foot.page", "page", "{page}", "pages", "{pages}") }

func (s *speech) labels(v *View, p *program.Program) Labels {
	say := func(name string) string { return s.say("paper." + name) }
	from, hold := "", say("hold")
	if !s.balances() && slices.ContainsFunc(p.Weeks, ledByDrill) { // "3 × 8" is no hold, and "4 × 9 s" no repetitions
		hold = say("sets")
	}
	if i := slices.IndexFunc(p.Weeks, func(w program.Week) bool { return w.Provisional }); i >= 0 {
		from = s.say("paper.provisional", "number", strconv.Itoa(p.Weeks[i].Number))
	}
	return Labels{
		Plan: say("plan"), Where: say("where"), Goal: say("goal"), Ladder: say("ladder"), Weeks: say("weeks"),
		After: say("after"), Notes: say("notes"), Week: say("week"), Hold: hold, Step: say("step"), Help: say("help"),
		Bands: say("bands"), Done: say("done"), Lean: say("lean"), Dates: say("dates"), Rest: say("rest"),
		Way: s.say("site.ladder"), Gate: s.say("gate.title"), Passed: s.say("gate.passed"), Signed: s.say("gate.signed"),
		NotYet: s.say("gate.not_yet"), Moves: s.say("gate.moves"),
		Cue: say("cue"), Early: s.say("forecast.early"), Likely: s.say("forecast.middle"), Late: s.say("forecast.late"),
		By: say("by"), Far: say("far"), Free: s.say("rig.free"), Provisional: s.say("week.provisional"),
		Withheld: say("withheld"), Lead: s.say("paper.lead", "name", v.First), Next: say("next"), From: from,
		version: s.planVersion(p), Numbered: s.say("foot.plan", "number", v.Number), Measured: s.say("foot.measured", "date", v.On),
		pageOf: s.pageOf(), NoSession: s.say("week.none"), PrepareFirst: s.say("card.prepare_first"),
		MadeFor: s.say("foot.made_for", "name", v.Client), Terms: s.say("term.title"),
	}
}

// ledByDrill reports whether a week has no main work, so that a drill stands for it.
func ledByDrill(w program.Week) bool {
	_, ok := leading(w)
	return ok && w.Exercise == "" && (w.Sets == 0 || w.Hold == 0)
}

// planVersion tells an old print from a new one; of plans that were kept, with
// their number.
func (s *speech) planVersion(p *program.Program) string {
	if p.Version > 1 {
		return s.say("foot.plan_version", "number", strconv.Itoa(p.Version), "version", "{version}")
	}
	return s.say("foot.version", "version", "{version}")
}
