package view

import (
	"slices"
	"strconv"
	"strings"

	"gatepost/program"
)

// Message is the coming week in five lines, to paste into a message to the client: which
// week, what is new in it, what to do, what not to worry about, and when to stop.
type Message struct{ Lines []string }

// Text is the message as a file.
func (m *Message) Text() []byte {
	return []byte(noBreaks(strings.Join(m.Lines, "\n") + "\n"))
}

// messageAhead is how many days before a Monday its week is the one spoken of: from Thursday
// on a coach writes of the week that comes, until Wednesday of the one that is (our judgement).
const messageAhead = 4

// MessageWeek is the Monday of the week that a message of a day is about.
func MessageWeek(on program.Date) program.Date { return (on + messageAhead).Monday() }

// NewMessage writes the week that a message of a day is about, of the plan on the wall, or
// its first one before it begins. Changes are those of its last version, reprint the days
// whose cards that version prints anew, and the review is of its log; the zero Review where
// there is none. Without a program there is no message.
func NewMessage(coach program.Coach, lib *program.Library, p *program.Program, r *program.Review, changes []program.Change, reprint []program.Date, on program.Date) (*Message, program.Problems) {
	s := newSpeech(coach, lib, p)
	m := &Message{}
	if len(p.Weeks) == 0 || len(p.Withheld) > 0 {
		return m, nil
	}
	monday := max(MessageWeek(on), p.Start)
	i := slices.IndexFunc(p.Weeks, func(w program.Week) bool { return w.Start == monday })
	if i < 0 {
		m.Lines = []string{s.say("message.over", "name", first(p)), s.say("message.assess"), coach.Name}
		return m, s.problems()
	}
	w := &p.Weeks[i]
	v := s.week(*w)
	m.Lines = []string{
		s.say("message.week", "name", first(p), "number", strconv.Itoa(w.Number), "weeks", strconv.Itoa(len(p.Weeks)), "dates", strings.TrimSuffix(v.Dates, ".")),
		strings.TrimSpace(s.whatIsNew(p, i, changes, reprint) + " " + s.newCards(w, reprint)),
		strings.Join(append([]string{s.whatToDo(toCome(w, &v, r))}, saidIn(w)...), " "),
		s.whatIsFine(p, w, r, reprint),
		s.say("message.stop", "coach", coach.Name),
	}
	return m, s.problems()
}

// saidIn are a coach's own words in a week, each once.
func saidIn(w *program.Week) (all []string) {
	for _, s := range w.Sessions {
		for _, text := range s.Say {
			if !slices.Contains(all, text) {
				all = append(all, text)
			}
		}
	}
	return all
}

// easedBy are the planner's notes that say why the next two weeks are other than planned.
var easedBy = []string{"joint-rests", "way-back", "comeback", "weeks-off"}

// easedIn are the notes of those that are about a week: one of the two that a review began
// anew, or one that has begun and has cards printed anew.
func easedIn(p *program.Program, w *program.Week, reprint []program.Date) []program.Note {
	if w.Start < p.From && len(daysIn(w, reprint)) == 0 || w.Start >= p.From+14 {
		return nil
	}
	return noted(public(p.Notes), easedBy)
}

// whatIsNew is what the coach's last review changed of the week, where it begins with this
// one; else what is otherwise than in the week before.
func (s *speech) whatIsNew(p *program.Program, i int, changes []program.Change, reprint []program.Date) string {
	w := &p.Weeks[i]
	if eased := easedIn(p, w, reprint); len(eased) > 0 {
		return strings.Join(s.notes(eased), " ")
	}
	for _, c := range changes {
		if c.Start == w.Start && w.Start == p.From && len(c.Cards) > 0 {
			return strings.Join(append([]string{s.say("message.changed")}, s.notes(c.Notes)...), " ")
		}
	}
	switch {
	case w.Kind == program.WeekAway:
		return s.say("message.away")
	case w.Kind == program.WeekDeload:
		return s.say("message.deload")
	case w.Kind == program.WeekTest:
		return strings.TrimSpace(s.say("message.test") + " " + sentence(s.test(*w)))
	case w.Gate:
		return s.week(*w).Asked
	case i == 0:
		return s.say("message.first")
	}
	before := lastWorked(p.Weeks[:i])
	if before == nil {
		return s.say("message.same")
	}
	all := s.differs(before, w)
	if check := s.noted(*w, "check-hold"); check != "" {
		all = append([]string{check}, all...)
	}
	if len(all) == 0 {
		return s.say("message.same")
	}
	return strings.Join(all, " ")
}

// newCards says which cards of a week are printed anew.
func (s *speech) newCards(w *program.Week, reprint []program.Date) string {
	days := daysIn(w, reprint)
	if len(days) == 0 {
		return ""
	}
	return s.say("message.new_cards", "dates", s.briefs(days))
}

func daysIn(w *program.Week, days []program.Date) []program.Date {
	return slices.DeleteFunc(slices.Clone(days), func(d program.Date) bool { return d < w.Start || d > w.Start+6 })
}

// toCome is a week without the days that the log has, but for a week of which it has all.
func toCome(w *program.Week, v *Week, r *program.Review) (*program.Week, *Week) {
	left, said := *w, *v
	left.Sessions, said.Sessions = nil, nil
	for i, d := range w.Sessions {
		if !slices.ContainsFunc(r.Sessions, func(read program.SessionRead) bool { return read.Printed == d.Date && read.Done != 0 }) {
			left.Sessions, said.Sessions = append(left.Sessions, d), append(said.Sessions, v.Sessions[i])
		}
	}
	if len(left.Sessions) == 0 {
		return w, v
	}
	return &left, &said
}

// lastWorked is the last build week of some; nil where there is none.
func lastWorked(weeks []program.Week) *program.Week {
	for i := len(weeks) - 1; i >= 0; i-- {
		if weeks[i].Kind == program.WeekBuild {
			return &weeks[i]
		}
	}
	return nil
}

// differs are the main work's step, what helps with it, its lean, its seconds and its sets,
// where they are not as before.
func (s *speech) differs(before, w *program.Week) []string {
	was, is := s.week(*before), s.week(*w)
	if was.Step != is.Step {
		return []string{s.say("message.step", "step", is.Step)}
	}
	var all []string
	add := func(code, old, now string) {
		if old != now && old != "" && now != "" {
			all = append(all, s.say("note."+code, "before", old, "after", now))
		}
	}
	if w.Ahead > 0 {
		add("change-lean", s.centimetres(before.Ahead), s.centimetres(w.Ahead))
	} else {
		add("change-help", join(was.Rig, was.Drop, was.Help), join(is.Rig, is.Drop, is.Help))
	}
	if w.Sets > 0 && before.Sets > 0 && !s.inTries(w.Step) {
		add("change-hold", s.lasts(before), s.lasts(w))
		add("change-sets", strconv.Itoa(before.Sets), strconv.Itoa(w.Sets))
	}
	return all
}

// lasts is how long a week's main sets are.
func (s *speech) lasts(w *program.Week) string {
	if w.Step == "" {
		return s.seconds(w.Hold)
	}
	return s.length(w.Hold)
}

// whatToDo is the main work and its days, and the days beside it.
func (s *speech) whatToDo(w *program.Week, v *Week) string {
	if len(v.Sessions) == 0 {
		return s.say("message.nothing")
	}
	var days, others []string
	for i, d := range v.Sessions {
		if doesMain(&w.Sessions[i]) {
			days = append(days, d.DayDate)
		} else {
			others = append(others, d.DayDate)
		}
	}
	if len(days) == 0 || v.Main == "" {
		return s.say("message.days", "days", join(append(days, others...)...))
	}
	line := s.say("message.do", "days", join(days...), "work", join(s.mainDose(w, v)+" "+v.Step, v.Rig, v.Drop, v.Helped))
	if len(others) == 0 {
		return line + " " + s.say("message.rest")
	}
	return line + " " + s.say("message.days", "days", join(others...))
}

// mainDose is the main work as the cards have it, without the check that a week opens with.
func (s *speech) mainDose(w *program.Week, v *Week) string {
	main := program.Week{Step: w.Step}
	for p := range itemsOf(*w) {
		if p.Role == program.RoleMain && !p.Find.Any() {
			main.Sets, main.Hold = max(main.Sets, p.Sets), max(main.Hold, p.Hold)
			if main.SetsLeast == 0 || p.Sets < main.SetsLeast {
				main.SetsLeast = p.Sets
			}
		}
	}
	if main.Sets == 0 || main.Hold == 0 || v.Then != "" {
		return v.Range
	}
	return s.setsRange(main)
}

// doesMain reports whether a session has the week's main work, or opens with a check of it; to
// find its mark is a matter for the card.
func doesMain(session *program.Session) bool {
	return slices.ContainsFunc(session.Items, func(p program.Prescription) bool {
		return p.Role == program.RoleMain && !p.Find.Any() || p.Check && p.Step != "" || practised(p)
	})
}

// whatIsFine is what a client worries about in such a week, and need not.
func (s *speech) whatIsFine(p *program.Program, w *program.Week, r *program.Review, reprint []program.Date) string {
	missed := slices.ContainsFunc(r.Sessions, func(d program.SessionRead) bool {
		return d.Printed != 0 && d.Done == 0 && d.Printed < w.Start && d.Printed >= w.Start-7
	})
	back := w.Kind == program.WeekBuild && len(noted(p.Notes, []string{"weeks-off"})) > 0
	joint := noted(easedIn(p, w, reprint), []string{"joint-rests", "way-back"})
	switch {
	case len(joint) > 0:
		return s.say("message.fine_joint")
	case missed && back:
		return s.say("message.fine_back")
	case missed:
		return s.say("message.fine_missed")
	case w.Kind == program.WeekAway, w.Kind == program.WeekDeload, w.Kind == program.WeekTest:
		return s.say("message.fine_" + string(w.Kind))
	case w.Gate:
		return s.say("message.fine_gate")
	}
	return s.say([]string{"message.fine_short", "message.fine_day", "message.fine_form"}[w.Number%3])
}
