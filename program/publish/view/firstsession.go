package view

import (
	"slices"
	"strconv"
	"strings"

	"gatepost/program"
)

// FirstSession is the first hour with a client by the minute, for the coach's eyes alone.
// A form for somebody of whom nothing is written has lines for the name and the day.
type FirstSession struct {
	Title string // "First session: Maren"
	Name  string // "First session"
	Lead  string
	For   string // "For the coach"
	Only  string // that it is not for the wall
	Whose [2]string
	Stop  string // when to stop, and who decides
	Parts []HourPart

	Coach  program.Coach
	Lang   string
	Labels Labels // of which a form has PageOf only
}

// HourPart is one stretch of the hour.
type HourPart struct {
	Time    string // "5–15"
	Title   string
	Lead    string
	Boxes   []string // captions of boxes to write in
	Lines   []string
	Write   bool // each line has room for an answer
	Columns []string
	Tests   []HourTest
	More    string   // title of what follows the tests
	After   []string // lines under it
	Large   string   // the cue
}

// HourTest is a row of the table of tests; of the columns after the third the coach fills
// the cells in.
type HourTest struct{ What, How, Likely, Why string }

// hour is how long each part lasts, in minutes.
var hour = []struct {
	name    string
	minutes int
}{{"talk", 5}, {"warm", 10}, {"joints", 10}, {"tests", 15}, {"rig", 10}, {"cue", 7}, {"book", 3}}

// aboutJoints are the planner's notes that say what today has to respect.
var aboutJoints = []string{"no-hands", "neutral-grip", "elbows-sore", "shoulders-sore", "youth", "older", "returning", "practice-sore"}

// NewFirstSession writes the first hour with a client. Without a program, the zero one, it
// is the form for somebody of whom nothing is written.
func NewFirstSession(coach program.Coach, lib *program.Library, p *program.Program, h *program.FirstHour) (*FirstSession, program.Problems) {
	s := newSpeech(coach, lib, p)
	f := &FirstSession{Title: s.say("hour.blank_of"), Name: s.say("hour.title"), Lead: s.say("hour.lead"),
		Coach: coach, Lang: s.lang, Stop: s.say("stop_rule.short") + " " + s.say("caution.not_medical"), For: s.say("coach.title"), Only: s.say("coach.lead"), Whose: [2]string{s.say("hour.name"), s.say("hour.day")}}
	f.Labels.pageOf = s.pageOf()
	if p.Client.Name != "" {
		f.Title = s.say("hour.of", "name", p.Client.Name)
	}
	from := 0
	for _, part := range hour {
		v := HourPart{Title: s.say("hour." + part.name),
			Time: s.say("hour.span", "from", strconv.Itoa(from), "to", strconv.Itoa(from+part.minutes))}
		from += part.minutes
		switch part.name {
		case "talk":
			v.Lines, v.Write = s.talk(p, h), true
		case "warm":
			v.Lines = s.warm(p, h)
		case "joints":
			v.Boxes, v.Lines, v.Write, v.After = s.joints(), s.notes(h.Ranges), true, s.notes(noted(p.Notes, aboutJoints))
		case "tests":
			s.hourTests(&v, p, h)
		case "rig":
			v.Lines = append(s.notes(h.Rig), s.firstRig(p)...)
		case "cue":
			v.Large, v.Lines = s.cue(p), s.cueLines(p)
		case "book":
			v.Lines = s.nextSessions(p)
		}
		f.Parts = append(f.Parts, v)
	}
	return f, s.problems()
}

// noted are the notes of some codes.
func noted(notes []program.Note, codes []string) []program.Note {
	return slices.DeleteFunc(slices.Clone(notes), func(n program.Note) bool { return !slices.Contains(codes, n.Code) })
}

// talk is the goal, what is asked, and what else the weeks hold.
func (s *speech) talk(p *program.Program, h *program.FirstHour) []string {
	var lines []string
	for _, o := range s.other(p) {
		lines = append(lines, o.Line)
	}
	all := s.notes(h.Ask)
	if p.Client.Name != "" && p.Goal.Step != "" && len(all) > 0 { // the goal is asked about first
		goal := s.say("plan.goal", "step", s.step(p.Goal.Step), "hold", s.length(p.Goal.Hold), "date", s.date(p.Goal.By))
		all[0] = capital(goal) + ". " + all[0]
	}
	if len(lines) > 0 {
		all = append(all, strings.Join(lines, "; ")+".")
	}
	return all
}

// warm is what the first session prepares with, and then what the tests begin with.
func (s *speech) warm(p *program.Program, h *program.FirstHour) []string {
	if len(h.Warmup) == 0 {
		if p.Client.Name == "" {
			return []string{s.say("hour.warm_blank")}
		}
		return nil
	}
	var all []string
	for _, item := range h.Warmup {
		all = append(all, s.exercise(item.Exercise)+" "+s.amount(item))
	}
	return []string{join(all...) + ".", s.say("hour.warm_end")}
}

// hourTests is the table of tests; where nothing is left to test, the first card's main work.
func (s *speech) hourTests(v *HourPart, p *program.Program, h *program.FirstHour) {
	for _, name := range []string{"test", "how", "likely", "came", "rpe", "pain"} {
		v.Columns = append(v.Columns, s.say("hour.column_"+name))
	}
	for _, t := range h.Tests {
		v.Tests = append(v.Tests, s.hourTest(&t))
	}
	if len(v.Tests) > 0 {
		v.Lead = s.say("hour.tests_how")
	} else if work := s.firstMain(p); work != "" {
		v.Lead = s.say("hour.card", "work", work)
	}
	if after := s.notes(h.Leave); len(after) > 0 {
		v.More, v.After = s.say("hour.leave"), after
	}
}

// hourTest is a row, in the words of the test's own road map.
func (s *speech) hourTest(t *program.FirstTest) HourTest {
	own := newSpeech(program.Coach{Lang: s.lang}, s.lib, &program.Program{Skill: t.Skill})
	item := own.item(t.Prescription, "")
	row := HourTest{What: capital(item.Name()), How: join(item.Amount, item.Rig, own.ofHelp(item.Help), item.Spot), Why: own.notes([]program.Note{t.Why})[0]}
	if t.MaxHold >= 1 {
		row.Likely = own.length(round(t.MaxHold))
	}
	for key, problem := range own.missing {
		s.missing[key] = problem
	}
	return row
}

// firstMain is the first session's main work in a line.
func (s *speech) firstMain(p *program.Program) string {
	for item := range itemsOf(p.Weeks...) {
		if item.Role == program.RoleMain || practised(item) {
			v := s.item(item, "")
			return join(v.Dose+" "+v.Name(), v.Rig, v.Spot)
		}
	}
	return ""
}

// firstRig is what the first week hangs.
func (s *speech) firstRig(p *program.Program) []string {
	for _, w := range p.Weeks {
		switch {
		case len(w.Sessions) == 0:
			continue
		case w.Rig.Free():
			return nil
		}
		return []string{s.say("week.number", "number", strconv.Itoa(w.Number)) + ": " + join(s.name(w), s.rig(w.Rig), s.drop(w.Rig), s.ofHelp(s.kilograms(w.Help))) + "."}
	}
	return nil
}

// cueLines are how the one cue is taught, and what better positions are worth.
func (s *speech) cueLines(p *program.Program) []string {
	all := []string{s.say("hour.cue_how")}
	for _, c := range s.cueWorth(p) {
		all = append(all, c.Cue+": "+c.Worth+".")
	}
	return all
}

// nextDays is how many sessions are booked at once.
const nextDays = 3

// nextSessions are the first sessions of the block, and what to hand over.
func (s *speech) nextSessions(p *program.Program) []string {
	var days []string
	for _, w := range p.Weeks {
		for _, session := range w.Sessions {
			if len(days) < nextDays {
				days = append(days, s.say("hour.session", "day", s.day(session.Date), "minutes", s.minutes(session.Minutes)))
			}
		}
	}
	if len(days) == 0 {
		return []string{s.say("hour.give_blank")}
	}
	return []string{strings.Join(days, "; ") + ".", s.say("hour.give")}
}
