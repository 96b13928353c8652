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
	Forecast                           []dateView
	Range, Chance                      string
	Ladder                             []rungOfClient
	Weeks                              []weekRow
	Gates                              []gateView
	Outline                            []string
	Progress                           *progressView // nil: nothing was written down yet
	Cue                                string
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
	Dates, Kind string
	KindKey     program.WeekKind
	Step, Main  string
	Rig, Help   string
	Width       string // of the help's bar, hundredths of the most help of the block
	Test        string
	Provisional bool
}

// gateView is a gate; Href leads to the last week on its step.
type gateView struct {
	Step, Words string
	Week        link
}

// safePage is the random part of a client's address.
var safePage = regexp.MustCompile(`^[a-z0-9]{8,32}$`)

// clients writes the pages of those who share to the site and have a program.
// One that waits for clearance has no page: even the waiting is private.
func (b *builder) clients() {
	taken := map[string]bool{}
	for _, v := range b.Clients {
		if !v.Public || len(v.Withheld) > 0 {
			continue
		}
		if !safePage.MatchString(v.Page) || taken[v.Page] {
			b.problems = append(b.problems, program.Problem{
				Place:   program.Place{File: "content/clients/" + v.Slug + "/assessment.yaml"},
				Message: fmt.Sprintf("%q can't be the address of a shared page", v.Page),
				Advice:  "page: takes 8 to 32 random letters a to z and digits, different for each client",
			})
			continue
		}
		taken[v.Page] = true
		b.client(v)
	}
}

func (b *builder) client(v *view.View) {
	folder := "c/" + v.Page + "/"
	b.write(folder+"index.html", "program.html", b.program(v))
	for i := range v.Weeks {
		b.write(folder+weekPage(v.Weeks[i].Number), "week.html", b.week(v, i))
	}
}

func weekPage(number int) string { return "week-" + strconv.Itoa(number) + ".html" }

const clientRoot = "../../" // from a client's pages to the site's folder

func (b *builder) program(v *view.View) programView {
	p := programView{
		frame: b.frame(b.words.fill("site.program_of", "skill", v.Skill, "name", v.First), "", clientRoot),
		Skill: v.Skill, Goal: sentence(v.Goal), Where: v.Where, Block: v.Block,
		Version: b.words.fill("foot.version", "version", v.Version),
		Range:   v.Forecast.Range, Chance: v.Forecast.Chance,
		Forecast: b.dates(v.Forecast),
		Outline:  v.Outline, Progress: progress(v), Cue: v.Cue, Advice: v.Advice,
	}
	for _, r := range v.Ladder {
		p.Ladder = append(p.Ladder, b.rung(r))
	}
	most := 0.0
	for _, w := range v.Weeks {
		most = max(most, w.HelpKG)
	}
	for _, w := range v.Weeks {
		p.Weeks = append(p.Weeks, row(w, most))
	}
	for _, g := range v.Gates {
		p.Gates = append(p.Gates, gate(v, g))
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

func (b *builder) rung(r view.Rung) rungOfClient {
	c := rungOfClient{Name: sentence(r.Step), State: r.State, Word: r.StateWord, When: r.When, Now: r.State == view.RungNow}
	if _, ok := b.Library.Exercise(r.ExerciseID); ok {
		c.Href = clientRoot + exercisePage(r.ExerciseID)
	}
	return c
}

func row(w view.Week, most float64) weekRow {
	r := weekRow{
		link:  link{Text: strconv.Itoa(w.Number), Href: weekPage(w.Number)},
		Dates: w.Dates, Kind: w.Kind, KindKey: w.KindKey, Step: sentence(w.Step), Main: w.Range,
		Rig: w.Rig, Help: w.Help, Test: w.Test, Provisional: w.Provisional,
	}
	if w.Drop != "" {
		r.Rig += ", " + w.Drop
	}
	if w.HelpKG > 0 {
		r.Width = strconv.Itoa(int(math.Round(100 * w.HelpKG / most)))
	}
	return r
}

func gate(v *view.View, g view.Gate) gateView {
	c := gateView{Step: sentence(g.Step), Words: g.Words}
	i := slices.IndexFunc(v.Weeks, func(w view.Week) bool { return w.Number == g.Week })
	if i >= 0 {
		c.Week = link{Text: v.Weeks[i].Title, Href: weekPage(g.Week)}
	}
	return c
}
