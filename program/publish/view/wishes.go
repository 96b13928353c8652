package view

import (
	"slices"
	"strconv"
	"strings"
	"time"

	"gatepost/program"
)

// wish writes what a coach asks for by hand.
func (s *speech) wish(w *program.Wish) string {
	text := s.wishBare(w)
	if w.Studio {
		text = join(text, s.say("wish.studio"))
	}
	return text
}

func (s *speech) wishBare(w *program.Wish) string {
	switch w.Kind {
	case program.WishAvoid:
		return s.say("wish.avoid", "exercise", s.exercise(w.Exercise))
	case program.WishPrefer:
		return s.say("wish.prefer", "purpose", s.say("purpose."+string(w.Purpose)), "exercise", s.exercise(w.Exercise))
	case program.WishInstead:
		return s.say("wish.instead", "date", s.brief(w.From), "use", s.exercise(w.Use), "exercise", s.exercise(w.Exercise))
	case program.WishSet:
		return s.say("wish.set", "week", strconv.Itoa(w.Week), "what", s.wishSet(w))
	case program.WishAdd:
		return s.say("wish.add", "days", s.weekdaysShort(w.Days), "what", join(s.exercise(w.Exercise), s.wishDose(w), s.wishDays(w)))
	case program.WishSay:
		return s.say("wish.say", "dates", s.span(w.From, w.To), "text", w.Text)
	case program.WishAt:
		return s.say("wish.at", "dates", s.span(w.From, w.To), "what", s.wishPlace(w))
	}
	return s.say("wish."+w.Rule, "number", strconv.Itoa(w.Number), "minutes", s.minutes(w.Number), "percent", s.percent(float64(w.Number)/100), "days", s.weekdaysShort(w.Days))
}

// wishDays are from when and until when something is added; empty where it has no end.
func (s *speech) wishDays(w *program.Wish) string {
	var from, to string
	if w.From != 0 {
		from = s.say("wish.from", "date", s.brief(w.From))
	}
	if w.To != 0 {
		to = s.say("wish.until", "date", s.brief(w.To))
	}
	return join(from, to)
}

// wishDose is what is said of sets and their length; empty where nothing is.
func (s *speech) wishDose(w *program.Wish) string {
	e, ok := s.lib.Exercise(w.Exercise)
	if w.Sets == 0 && w.Hold == 0 && w.Reps == 0 || !ok {
		return ""
	}
	p := program.Prescription{Exercise: w.Exercise, Sets: max(1, e.Dose.Sets), Hold: e.Dose.Hold, Reps: e.Dose.Reps}
	if w.Sets > 0 {
		p.Sets = w.Sets
	}
	if w.Hold > 0 {
		p.Hold = w.Hold
	}
	if w.Reps > 0 {
		p.Reps = w.Reps
	}
	return s.amount(p)
}

// wishSet is a week's main work as it is set; what is not said is left out.
func (s *speech) wishSet(w *program.Wish) string {
	var step, dose, rig, drop, lean string
	if w.Step != "" {
		step = s.step(w.Step)
	}
	switch {
	case s.balances() && w.Sets > 0:
		dose = s.tries(w.Sets)
	case w.Sets > 0 && w.Hold > 0:
		dose = s.dose(s.repeats() && w.Ahead == 0, w.Sets, w.Hold)
	case w.Sets > 0:
		dose = s.say(s.plural("amount.sets", w.Sets), "number", strconv.Itoa(w.Sets))
	case w.Hold > 0:
		dose = s.length(w.Hold)
	}
	if w.Rig != nil {
		if rig = s.rig(*w.Rig); w.Rig.Drop != program.AnyDrop {
			drop = s.drop(*w.Rig)
		}
	}
	if w.Ahead > 0 {
		lean = s.say("rig.lean_short", "length", s.centimetres(w.Ahead))
	}
	return join(step, dose, rig, drop, lean)
}

// wishPlace is what is different where a client is for some days.
func (s *speech) wishPlace(w *program.Wish) string {
	var kit, minutes string
	switch {
	case w.AllKit:
	case len(w.Kit) == 0:
		kit = s.say("wish.nothing")
	default:
		kit = s.say("wish.only", "kit", s.kit(w.Kit))
	}
	if w.Minutes > 0 {
		minutes = s.minutes(w.Minutes)
	}
	return join(kit, minutes, s.weekdaysShort(w.Days))
}

func (s *speech) weekdaysShort(days []time.Weekday) string {
	var names []string
	for _, d := range days {
		names = append(names, s.say(weekdays[(d+6)%7]))
	}
	return join(names...)
}

// wishes write what a coach asks for, what became of it, and why: what needs a look first.
func (s *speech) wishes(all []program.WishRead) (lines []string) {
	for _, state := range []program.WishState{program.WishRefused, program.WishPart, program.WishWaits, program.WishOver, program.WishDone} {
		for i := range all {
			if w := &all[i]; w.State == state {
				lines = append(lines, strings.Join(append([]string{s.say("wish.line", "what", s.wish(&w.Wish), "state", s.say("wish."+string(state)))}, s.notes(w.Why)...), " "))
			}
		}
	}
	return lines
}

// wishProblems are the wishes that are not done as they were asked for, as warnings about
// their files.
func (s *speech) wishProblems(all []program.WishRead) (problems program.Problems) {
	for i := range all {
		w := &all[i]
		if w.State == program.WishDone || w.Place.File == "" {
			continue
		}
		problems = append(problems, program.Problem{Place: w.Place, Warning: true,
			Message: noBreaks(s.say("wish.problem_"+string(w.State), "what", s.wish(&w.Wish))),
			Advice:  noBreaks(strings.Join(s.notes(w.Why), " "))})
	}
	return problems
}

// said are a coach's own words, with who says them.
func (s *speech) said(texts []string) (all []string) {
	for _, text := range texts {
		all = append(all, s.say("wish.says", "coach", program.FirstName(s.coach, ""), "text", text))
	}
	return all
}

// byCoach is the mark of what is of the coach's hand; empty of everything else.
func (s *speech) byCoach(is bool) string {
	if is {
		return s.say("wish.mark")
	}
	return ""
}

// avoids reports whether the coach leaves an exercise out for this client.
func (s *speech) avoids(id string) bool {
	return slices.ContainsFunc(s.program.Wishes, func(w program.WishRead) bool {
		return w.Kind == program.WishAvoid && w.Exercise == id && w.State == program.WishDone
	})
}
