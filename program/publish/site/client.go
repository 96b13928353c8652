package site

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// programView is a shared client's program. It holds no more than may be
// published, so that not even a coach's own template can print more: a first
// name, and no slug, notes, shares of this body or reasons from health.
type programView struct {
	frame
	Skill, Goal, Where, Block, Version string
	First                              *link // the first session; nil: there is none
	Forecast                           []dateView
	Range, Chance                      string
	Ladder                             []rungOfClient
	Weeks                              []weekRow
	Gates                              []gateView
	LeftOut                            []string
	Progress                           *progressView // nil: nothing was written down yet
	Cue, NotYet, Done                  string
	HowTo                              link
	Documents                          []link
	Subscribe                          string // address of the calendar; empty: none is known
	Advice                             view.Advice
}

// dateView is one of the forecast's dates.
type dateView struct{ Name, Date, Class string }

// rungOfClient is one step of the client's own order.
type rungOfClient struct {
	Name  string
	Href  string // empty: the step has no exercise page
	State view.RungState
	Word  string
	When  string
	Now   bool
}

// weekRow is a week in the table.
type weekRow struct {
	link
	From, Dates string
	Kind        string
	Days        []dayView
	KindKey     program.WeekKind
	Gate        bool
	Step, Main  string
	Rig, Help   string
	Width       string // of the help's bar, hundredths of the most help of the block
	Test        string
	Provisional bool
}

// dayView leads to a session. Title is its day in full.
type dayView struct {
	link
	Date        program.Date
	Title, Work string
	After       int // days after the block's first Monday
}

// gateView is a gate; Href leads to the last week on its step.
type gateView struct {
	Step, Words string
	Week        link
}

// unclaimed is the problem of an address that is none, or another client's.
func unclaimed(v *view.View) program.Problem {
	return program.Problem{
		Place:   program.Place{File: "content/clients/" + v.Slug + "/assessment.yaml"},
		Message: fmt.Sprintf("%q can't be the address of a shared page", v.Page),
		Advice:  "page: takes 8 to 32 random letters a to z and digits, different for each client",
	}
}

// safePage is the random part of a client's address.
var safePage = regexp.MustCompile(`^[a-z0-9]{8,32}$`)

// client writes a client's pages of what may be told, and of nothing else.
func (b *builder) client(v *view.View, documents []Document) {
	folder := clientFolder + v.Page + "/"
	all := days(v)
	at := place{root: clientRoot, program: link{Text: v.Skill, Href: "index.html"}, weeks: "week-", exercises: b.exercisesOf(all)}
	page := b.program(v, at)
	page.Subscribe = b.public(folder + "calendar.ics")
	for _, d := range documents {
		b.add(folder+d.Name, d.Bytes)
		page.Documents = append(page.Documents, link{Text: b.documentName(d.Name), Href: d.Name})
	}
	b.write(folder+"index.html", "program.html", page)
	b.add(folder+"calendar.ics", view.Calendar(v))
	for i := range v.Weeks {
		w := b.week(v, i, at)
		w.Title = b.titleOf(v, w.Heading)
		b.write(folder+at.week(v.Weeks[i].Number), "week.html", w)
	}
	for n, d := range all {
		s := b.session(v, all, n, at)
		s.Title = b.titleOf(v, s.Heading)
		b.write(folder+at.session(d.week, d.session), "session.html", s)
	}
	how := b.howTo(at)
	how.Title = b.titleOf(v, how.Heading)
	b.write(folder+howToPage, "howto.html", how)
	b.write(folder+phonePage, "phone.html", b.phone(v, at))
	b.add(folder+manifestFile, b.manifest(page.Heading, clientRoot))
	b.worker(folder)
}

// titleOf is the title of a client's page below the program's.
func (b *builder) titleOf(v *view.View, heading string) string {
	return b.words.fill("site.week_of", "week", heading, "skill", v.Skill, "name", v.First)
}

const (
	clientFolder = "c/"
	clientRoot   = "../../" // from a client's pages to the site's folder
)

// place is where the pages of a program lie.
type place struct {
	root    string // the way from them to the site's folder
	program link   // the page of the whole program
	weeks   string // what the names of its weeks' pages begin with

	exercises []string // ids of those on a page of the program's own; none: the site's pages are near
}

func (p place) week(number int) string { return p.weeks + strconv.Itoa(number) + ".html" }

// session is the page of a day. A client's is named after its date, so that it stays
// where it is whatever becomes of the weeks.
func (p place) session(w *view.Week, s *view.Session) string {
	if s.Date == 0 {
		return p.weeks + strconv.Itoa(w.Number) + "-day-" + dayID(s) + ".html"
	}
	return "day-" + dayID(s) + ".html"
}

func (b *builder) program(v *view.View, at place) programView {
	p := programView{
		frame: b.frame(b.words.fill("site.program_of", "skill", v.Skill, "name", v.First), "", at.root),
		Skill: v.Skill, Goal: sentence(v.Goal), Where: v.Where, Block: v.Block,
		Version: v.Labels.Numbered, HowTo: link{Text: b.words.word("howto.title"), Href: howToPage},
		Range: v.Forecast.Range, Chance: v.Forecast.Chance,
		Forecast: b.dates(v.Forecast),
		LeftOut:  v.LeftOut, Progress: progress(v), Cue: v.Cue, Done: b.words.fill("site.block_over", "name", v.First), NotYet: v.Labels.NotYet, Advice: v.Advice,
	}
	for _, r := range v.Ladder {
		p.Ladder = append(p.Ladder, b.rung(r, at))
	}
	most := 0.0
	for _, w := range v.Weeks {
		most = max(most, w.HelpKG)
	}
	for i := range v.Weeks {
		r := row(&v.Weeks[i], most, at)
		p.Weeks = append(p.Weeks, r)
		if len(r.Days) > 0 && p.First == nil {
			p.First = &link{Text: r.Days[0].Title, Href: r.Days[0].Href}
		}
	}
	p.Scripts = []string{todayScript, notebookScript, noticeScript}
	b.programPlan(&p.frame, v)
	for _, g := range v.Gates {
		p.Gates = append(p.Gates, gate(v, g, at))
	}
	return p
}

// dates are the forecast's three; none where the goal is met already.
func (b *builder) dates(f view.Forecast) []dateView {
	if f.Chance == "" {
		return nil
	}
	far := b.words.word("site.far")
	return []dateView{
		{b.words.word("site.early"), cmp.Or(f.Early, far), "early"},
		{b.words.word("site.likely"), cmp.Or(f.Likely, far), "likely"},
		{b.words.word("site.late"), cmp.Or(f.Late, far), "late"},
	}
}

func (b *builder) rung(r view.Rung, at place) rungOfClient {
	c := rungOfClient{Name: sentence(r.Step), Href: at.exercise(b.Library, r.ExerciseID), State: r.State, Word: r.StateWord, When: r.When, Now: r.State == view.RungNow}
	return c
}

func row(w *view.Week, most float64, at place) weekRow {
	r := weekRow{
		link: link{Text: strconv.Itoa(w.Number), Href: at.week(w.Number)},
		From: w.From, Dates: w.Dates, Kind: w.Kind, KindKey: w.KindKey, Gate: w.Gate, Step: sentence(w.Step), Main: w.Range,
		Rig: w.Rig, Help: w.Help, Test: w.Test, Provisional: w.Provisional,
	}
	for i := range w.Sessions {
		s := &w.Sessions[i]
		r.Days = append(r.Days, dayView{link{Text: s.DayDate, Href: at.session(w, s)}, s.Date, s.Title, s.Work, s.After})
	}
	if w.Drop != "" {
		r.Rig += ", " + w.Drop
	}
	if w.HelpKG > 0 {
		r.Width = strconv.Itoa(int(math.Round(100 * w.HelpKG / most)))
	}
	return r
}

func gate(v *view.View, g view.Gate, at place) gateView {
	c := gateView{Step: sentence(g.Step), Words: g.Words}
	i := slices.IndexFunc(v.Weeks, func(w view.Week) bool { return w.Number == g.Week })
	if i >= 0 {
		c.Week = link{Text: v.Weeks[i].Title, Href: at.week(g.Week)}
	}
	return c
}
