package main

import (
	"bufio"
	"fmt"
	"slices"

	"gatepost/program"
	"gatepost/program/intake"
	"gatepost/program/publish/view"
)

// asking is a talk about one session with somebody at the terminal. An answer is
// checked as a line of the log at once, and asked again where it is wrong.
type asking struct {
	*job
	lines  *bufio.Scanner
	studio *program.Studio
	client *program.Assessment
	day    program.Date

	entries   []program.Entry
	mornings  []program.Entry // not of this session, but of the ones before
	typed     bool            // some answer was more than Enter
	asPrinted bool            // so are all the items that follow
	rated     bool            // the effort of the main work was asked
	distances bool            // the log has a column for how far a lean went
	main      int             // index of the entry that pain belongs to
}

// askSession asks for the session printed for a day.
func (j *job) askSession(studio *program.Studio, a *program.Assessment, day program.Date) ([]program.Entry, error) {
	c := (&making{studio: studio}).client(a)
	printed, words, found := sessionOn(c, day)
	lacks := intake.LogLacks(studio, logPath(a.Slug), j.logText(a.Slug)) // better said now than after all answers
	distances := len(lacks) == len(onlyErrors(lacks))
	if !slices.ContainsFunc(printed.Items, func(p program.Prescription) bool { return p.Ahead > 0 }) {
		lacks = onlyErrors(lacks)
	}
	if err := j.report(append(c.problems, lacks...)); err != nil {
		return nil, err
	}
	talk := &asking{job: j, lines: bufio.NewScanner(j.in), studio: studio, client: a, day: day, distances: distances, main: -1}
	if found {
		talk.tell("session", "name", a.Athlete.Name, "title", words.Title)
		talk.tell("session_keys")
	} else {
		talk.tell("no_session", "name", a.Athlete.Name, "day", day.String())
	}
	return talk.session(printed, words)
}

// sessionOn finds the session of a day, and how it is written.
func sessionOn(c *client, day program.Date) (program.Session, view.Session, bool) {
	for w, week := range c.program.Weeks {
		for s, session := range week.Sessions {
			if session.Date == day {
				return session, c.view.Weeks[w].Sessions[s], true
			}
		}
	}
	return program.Session{}, view.Session{}, false
}

func (t *asking) session(printed program.Session, words view.Session) ([]program.Entry, error) {
	for i := range printed.Items {
		if err := t.item(&printed.Items[i], &words.Items[i]); err != nil {
			return nil, err
		}
	}
	for {
		if more, err := t.another(); err != nil {
			return nil, err
		} else if !more {
			break
		}
	}
	if !t.typed && len(printed.Items) > 0 {
		t.allAsPrinted()
	}
	return t.finish()
}

// allAsPrinted makes one line of a whole session, and one more of the main work where
// something was said of it.
func (t *asking) allAsPrinted() {
	said := slices.DeleteFunc(t.entries, func(e program.Entry) bool {
		return !slices.ContainsFunc(e.Sets, func(s program.SetDone) bool { return s.RPE > 0 || s.Clean != program.CleanUnsaid })
	})
	t.entries = append([]program.Entry{{Date: t.day, AsPrinted: true}}, said...)
	t.main = len(said)
}

// item asks how one line of the card went.
func (t *asking) item(p *program.Prescription, words *view.Item) error {
	printed := ""
	switch {
	case p.Max || p.Check || p.Try: // how long, or how many reached, is what the card asks
	case p.Reps > 0: // which may be planned in seconds
		printed = fmt.Sprintf("%d x %d", p.Sets, p.Reps)
	case p.Hold > 0:
		printed = fmt.Sprintf("%d x %d", p.Sets, p.Hold)
	}
	row := row{exercise: p.Exercise, counted: p.Reps > 0 && !p.Max || p.Step != "" && t.load().Repeats(), tried: p.Try && p.Hold > 0}
	switch {
	case p.Scale > 0: // where a step is not held off the floor
		row.bands, row.hung, row.onScale = intake.ScaleCell(p.Scale), t.decimal(kilograms(p.Scale)), true
	case p.Step != "":
		row.exercise, row.bands, row.hung = p.Step, intake.RigCell(p.Rig), t.shown(p.Rig)
	}
	if row.tried {
		row.bands = ""
	}
	if p.Ahead > 0 && t.distances {
		row.ahead = centimetres(p.Ahead)
	}
	if p.Find.Any() && (p.Ahead == 0 || t.distances) {
		return t.mark(row, p, words)
	}
	if t.asPrinted && printed != "" {
		if row.amounts = printed; p.Role == program.RoleMain && !t.rated {
			t.tell("as_printed", "item", lineOf(words))
		}
		return t.asDone(row, p.Role)
	}
	return t.itemAnswers(row, printed, p, words)
}

// lineOf is one line of the card.
func lineOf(words *view.Item) string { return words.Name() + ", " + words.Line }

func (t *asking) itemAnswers(row row, printed string, p *program.Prescription, words *view.Item) error {
	asked := lineOf(words)
	if row.tried {
		asked = t.asked("tries", "item", asked)
	}
	answer, err := t.ask(asked, func(answer string) part {
		row.amounts = answer
		return part{row, answer == "-" || printed != "" && (answer == "" || answer == ".")}
	})
	switch {
	case err != nil:
		return err
	case answer == "-" || answer == "" && printed == "":
		t.typed = true
		return nil
	case answer == "" || answer == ".":
		t.asPrinted = answer == "."
		row.amounts = printed
		return t.asDone(row, p.Role)
	}
	t.typed = true
	row.amounts = answer
	if row.tried { // nobody asks how hard a try was
		err = t.questions(&row, []question{{t.asked("best"), &row.best, true}})
		if err != nil {
			return err
		}
	} else if p.Step != "" || p.Ahead > 0 {
		t.rated = t.rated || p.Role == program.RoleMain
		if row, err = t.details(row); err != nil {
			return err
		}
	}
	return t.keep(row, p.Role)
}

// asDone keeps an item that was done as printed. Of the main work it asks once how
// it went: the plan lives by that, also where every second was held.
func (t *asking) asDone(r row, role program.Role) (err error) {
	if role == program.RoleMain && !t.rated {
		t.rated = true
		if r, err = t.rate(r); err != nil {
			return err
		}
	}
	return t.keep(r, role)
}

// question asks for one part of a row, when there is something to ask.
type question struct {
	asked string
	into  *string
	when  bool
}

// details asks what the seconds of a step or of a lean do not say.
func (t *asking) details(r row) (row, error) {
	help, some := t.help()
	if r.onScale {
		help, some = "scale", true
	}
	err := t.questions(&r, []question{
		{t.asked(help, "bands", r.hung), &r.bands, some && r.bands != ""},
		{t.asked("lean", "lean", t.decimal(r.ahead)), &r.ahead, r.ahead != ""},
	})
	if err != nil {
		return r, err
	}
	return t.rate(r)
}

// load is how the steps of the client's road map are done.
func (t *asking) load() program.Load {
	m, ok := t.studio.Library.RoadMap(t.client.Goal.Skill)
	if !ok {
		return ""
	}
	return m.Load
}

// help is the question of what helps at the client's steps, and whether there is some of it.
func (t *asking) help() (question string, some bool) {
	switch t.load() {
	case program.LoadPress:
		return "pads", len(t.client.Hanging.Pads) > 0
	case program.LoadLift:
		return "block", len(t.client.Hanging.Blocks) > 0
	}
	return "bands", len(t.client.Bands) > 0
}

// rate asks for effort and form.
func (t *asking) rate(r row) (row, error) {
	err := t.questions(&r, []question{
		{t.asked("rpe"), &r.rpe, true},
		{t.asked("clean"), &r.clean, true},
	})
	return r, err
}

// questions asks for parts of a row; Enter leaves each as it is.
func (t *asking) questions(r *row, all []question) error {
	for _, q := range all {
		if !q.when {
			continue
		}
		before := *q.into
		answer, err := t.ask("  "+q.asked, func(answer string) part {
			*q.into = answer
			return part{*r, answer == ""}
		})
		if err != nil {
			return err
		}
		if *q.into = answer; answer == "" {
			*q.into = before
		}
	}
	return nil
}

// another asks for an exercise that is not on the card.
func (t *asking) another() (more bool, err error) {
	name, err := t.ask(t.asked("another"), func(answer string) part {
		return part{row{exercise: answer}, answer == ""}
	})
	if err != nil || name == "" {
		return false, err
	}
	r := row{exercise: name}
	entry, _ := t.read(r)
	if entry.Morning {
		return true, t.morning(t.day)
	}
	e, _ := t.studio.Library.Exercise(entry.Exercise)
	r.counted = e != nil && e.Dose.Reps > 0 && entry.Step == "" || entry.Step != "" && t.load().Repeats()
	r.amounts, err = t.ask("  "+t.asked("amounts"), func(answer string) part {
		r.amounts = answer
		return part{r, false}
	})
	switch {
	case err != nil:
	case entry.Step != "":
		r.bands, r.hung = intake.RigCell(program.Rig{}), t.shown(program.Rig{})
		r, err = t.details(r)
	case e != nil && slices.Contains(e.Trains, program.ForLean) && t.distances:
		err = t.questions(&r, []question{{t.asked("other_lean"), &r.ahead, true}})
	}
	t.typed = true
	if err != nil {
		return false, err
	}
	return true, t.keep(r, "")
}

// keep adds an entry. Sets of an exercise that is there already, with the same
// bands, follow those.
func (t *asking) keep(r row, role program.Role) error {
	e, problems := t.read(r)
	if problems.Stop() { // every part was read before
		return t.report(problems)
	}
	for i := range t.entries {
		if o := &t.entries[i]; o.Exercise == e.Exercise && intake.RigCell(o.Rig) == intake.RigCell(e.Rig) && o.Ahead == e.Ahead && !triesIn(o) && !triesIn(&e) {
			o.Sets = append(o.Sets, e.Sets...)
			for n := range o.Sets {
				o.Sets[n].Number = n + 1
			}
			return nil
		}
	}
	if role == program.RoleMain && t.main < 0 {
		t.main = len(t.entries)
	}
	t.entries = append(t.entries, e)
	return nil
}
