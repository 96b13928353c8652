package view

import (
	"math"
	"strconv"
	"strings"

	"gatepost/program"
)

// Review is a log held against the plan on the wall, in words, for the coach's
// own eyes: it speaks of joints and of what was missed. Of all this only the
// public charts of Progress may reach the site.
type Review struct {
	Title    string // "Maren: read back on 12 February 2027"
	Client   string
	Slug     string
	Goal     string // "Straddle for 10 s by 30 November 2027"
	Block    string
	On       program.Date
	Measured program.Date
	Coach    program.Coach
	Lang     string

	Withheld []string // why nothing was planned anew
	Standing []string // week of the block, sessions, last session, plan on the wall
	Course   string   // "about 3 % ahead of the plan"; empty before anything was read
	Flags    []ReviewFlag
	Estimate []string // now, and when the plan on the wall was made
	Moves    []string // sets that moved the estimate, the most first
	Doubted  []string
	Unread   []string
	Offsets  []string // how holds differ from how they are drawn
	Asks     []string // what the coach has to answer
	Wishes   []string // of the coach's own hand, and what becomes of them
	Gates    []GateRead
	Forecast []string
	NextTest string
	Changes  []string // weeks that differ from the plan on the wall: the coming one in full, later ones in a line
	Reprint  string   // what to print now, and what can wait
	Keep     string   // how the new weeks come to hang on the wall; empty: they do
	Notes    []string // why the weeks ahead are what they are
	Progress Progress // filled in where it is drawn, see NewProgress
	Labels   ReviewLabels
}

// ReviewFlag is something that needs the coach.
type ReviewFlag struct {
	Level program.FlagLevel
	Word  string // "stop"
	Text  string
}

// GateRead is a gate as the log shows it.
type GateRead struct {
	Step, State string
	StateKey    program.GateState
	Line        string // "half-open tuck: not yet; …"
	Terms       []TermRead
}

// TermRead is one thing that a gate asks, and the sets that decide it.
type TermRead struct {
	Met, Unsaid bool
	Line        string // "not yet: last set, RPE 9.5, 9 or less asked (12 Feb: 10 s …)"
}

// ReviewLabels are the titles of a review's parts.
type ReviewLabels struct {
	Course, Flags, NoFlags, Estimate, Moves, NoMoves, Doubted, Unread string
	Gates, Forecast, Changes, NoChanges, Why, Print, Progress, Page   string
	Asks, Offsets, Wishes                                             string
}

// onCourse is how far, in ln of strength, a client may be from the plan and be
// where it expects them (our judgement: a quarter of the estimate's own range).
const onCourse = 0.02

// Sets that moved the estimate are named down to three thousandths, and three of
// them in any case (our judgement: less is noise to a reader).
const (
	moveSmall  = 0.003
	movesLeast = 3
)

// NewReview writes a review and the program that came of it in the words of the
// library.
func NewReview(coach program.Coach, lib *program.Library, p *program.Program, r *program.Review) (*Review, program.Problems) {
	s := newSpeech(coach, lib, p)
	v := &Review{
		Title:  s.say("review.title", "name", r.Client.Name, "date", s.date(r.On)),
		Client: r.Client.Name, Slug: r.Client.Slug, On: r.On, Measured: p.Measured, Coach: coach, Lang: s.lang,
		Goal:   capital(s.say("plan.goal", "step", s.step(p.Goal.Step), "hold", s.length(p.Goal.Hold), "date", s.date(p.Goal.By))),
		Labels: s.reviewLabels(),
	}
	v.Withheld = s.notes(r.Withheld)
	if len(r.Withheld) > 0 && len(p.Weeks) == 0 {
		return v, s.problems()
	}
	if len(p.Weeks) > 0 {
		v.Block = s.block(p)
	}
	v.Standing, v.Course = s.standing(r), s.course(r)
	v.Flags = s.flags(r)
	v.Estimate = s.estimates(p, r)
	for i, m := range r.Moves {
		if i < movesLeast || math.Abs(m.Moved) >= moveSmall {
			v.Moves = append(v.Moves, s.move(m))
		}
	}
	for _, m := range r.Doubted {
		v.Doubted = append(v.Doubted, s.setRead(m.Set))
	}
	v.Unread = s.notes(r.Unread)
	v.Asks, v.Offsets = s.notes(r.Asks), s.offsets(r.Offsets)
	v.Wishes = s.wishes(r.Wishes)
	for _, g := range r.Gates {
		v.Gates = append(v.Gates, s.gateRead(g))
	}
	v.Forecast, v.NextTest = s.forecastRead(p, r), s.nextTest(r)
	s.changes(v, p, r)
	v.Notes = s.notes(r.Notes)
	return v, s.problems()
}

func (s *speech) reviewLabels() ReviewLabels {
	say := func(name string) string { return s.say("review." + name) }
	return ReviewLabels{
		Course: say("course"), Flags: say("flags"), NoFlags: say("no_flags"), Estimate: say("estimate"),
		Moves: say("moves"), NoMoves: say("moves_none"), Doubted: say("doubted"), Unread: say("unread"),
		Gates: say("gates"), Forecast: say("forecast"), Changes: say("changes"), NoChanges: say("no_changes"),
		Why: say("why"), Print: say("print"), Progress: s.say("progress.title"), Page: say("page"),
		Asks: s.say("coach.asks"), Offsets: s.say("coach.offsets"), Wishes: s.say("wish.title"),
	}
}

// standing says where in the block the client is and what was done of it.
func (s *speech) standing(r *program.Review) []string {
	weeks := strconv.Itoa(r.Weeks)
	var all []string
	switch {
	case r.Ended:
		all = append(all, s.say(s.plural("review.ended", r.Weeks), "weeks", weeks))
	case r.Week == 0:
		all = append(all, s.say("review.not_begun"))
	default:
		all = append(all, s.say("review.week", "week", strconv.Itoa(r.Week), "weeks", weeks))
	}
	if r.Last == 0 {
		return append(all, s.say("review.none"))
	}
	all = append(append(all, s.attendance(r)...), s.say("review.last", "date", s.date(r.Last)))
	if r.Version > 1 {
		return append(all, s.say("review.plan_version", "version", strconv.Itoa(r.Version)))
	}
	return append(all, s.say("review.plan_first"))
}

func (s *speech) attendance(r *program.Review) []string {
	var missed []string
	extra := 0
	for _, session := range r.Sessions {
		switch {
		case session.Done == 0:
			missed = append(missed, s.brief(session.Printed))
		case session.Printed == 0:
			extra++
		}
	}
	n := r.Done + r.Missed
	done, printed := strconv.Itoa(r.Done), strconv.Itoa(n)
	var all []string
	switch {
	case n == 0:
		all = append(all, s.say("review.sessions_none"))
	case r.Missed == 0:
		all = append(all, s.say(s.plural("review.sessions_all", n), "printed", printed))
	default:
		all = append(all, s.say(s.plural("review.sessions", n), "done", done, "printed", printed, "missed", strconv.Itoa(r.Missed)),
			s.say("review.missed", "dates", lastOf(missed, 6)))
	}
	if extra > 0 {
		all = append(all, s.say("review.extra", "number", strconv.Itoa(extra)))
	}
	return all
}

// lastOf joins the last few of some texts, with "…" for those before.
func lastOf(texts []string, most int) string {
	if n := len(texts); n > most {
		return "… " + strings.Join(texts[n-most:], ", ")
	}
	return strings.Join(texts, ", ")
}

// course says how the estimate stands against the one planned for now.
func (s *speech) course(r *program.Review) string {
	if r.Last == 0 || s.balances() {
		return ""
	}
	percent := s.percent(math.Abs(math.Expm1(r.Pace)))
	switch courseOf(r) {
	case CourseAhead:
		return s.say("review.ahead", "percent", percent)
	case CourseBehind:
		return s.say("review.behind", "percent", percent)
	}
	return s.say("review.on_course")
}

// Course says whether a client is where the plan expects them.
type Course string

const (
	CourseOn     Course = "on"
	CourseAhead  Course = "ahead"
	CourseBehind Course = "behind"
)

func courseOf(r *program.Review) Course {
	switch {
	case r.Pace > onCourse:
		return CourseAhead
	case r.Pace < -onCourse:
		return CourseBehind
	}
	return CourseOn
}

func (s *speech) flags(r *program.Review) []ReviewFlag {
	var all []ReviewFlag
	for _, f := range r.Flags {
		all = append(all, ReviewFlag{Level: f.Level, Word: s.say("review.level_" + strconv.Itoa(int(f.Level))), Text: s.notes([]program.Note{f.Note})[0]})
	}
	return all
}

// nextTest is the next day that tests.
func (s *speech) nextTest(r *program.Review) string {
	if r.NextTest == 0 {
		return s.say("review.no_test")
	}
	return s.say("review.next_test", "date", s.day(r.NextTest))
}
