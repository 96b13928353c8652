package site

import (
	"html/template"
	"path"
	"strings"

	"gatepost/program/publish/view"
)

// levelView is one level of a public program: its weeks, its gates, the way on,
// and what can be printed.
type levelView struct {
	frame
	Program                         link
	Shown, Goal, Block, Range, Next string
	Figure                          template.HTML // of the step to hold next
	Documents                       []link
	Weeks                           []weekRow
	Help                            view.HelpTable
	Mean                            string // whose body the weeks are written for
	Gates                           []gateView
	Ladder                          []rungOfClient
	LeftOut                         []string
	Up, Down                        link // no Href: there is none
	Find                            string
	First                           string // address of the first session
	Cue, NotYet, Version            string
	Advice                          view.Advice
}

// level writes a level's page, its weeks and its documents.
func (b *builder) level(p *Public, n int) {
	l := &p.View.Levels[n]
	files := levelFiles(p.View.ID, l.Number)
	at := place{program: link{Text: l.Client, Href: files + ".html"}, weeks: files + "-week-"}
	page := b.levelPage(p.View, n, at)
	if n < len(p.Documents) {
		for _, d := range p.Documents[n] {
			b.add(files+"-"+d.Name, d.Bytes)
			page.Documents = append(page.Documents, link{Text: b.documentName(d.Name), Href: files + "-" + d.Name})
		}
	}
	b.write(at.program.Href, "level.html", page)
	for i := range l.Weeks {
		w := b.week(l.View, i, at)
		w.Title = b.words.fill("level.week_of", "week", w.Heading, "level", l.Name, "program", p.View.Title)
		w.Canonical = page.Canonical
		b.write(at.week(l.Weeks[i].Number), "week.html", w)
	}
	all := days(l.View)
	for n, d := range all {
		s := b.session(l.View, all, n, at)
		day := d.week.Title + b.words.word("site.comma") + s.Heading
		s.Title = b.words.fill("level.week_of", "week", day, "level", l.Name, "program", p.View.Title)
		s.Canonical = page.Canonical
		b.write(at.session(d.week, d.session), "session.html", s)
	}
}

func (b *builder) documentName(name string) string {
	key := strings.TrimSuffix(name, path.Ext(name))
	return b.words.fill("document.link", "name", b.words.word("document."+key))
}

func (b *builder) levelPage(p *view.Public, n int, at place) levelView {
	l := &p.Levels[n]
	v := levelView{
		frame: b.frame(l.Client, at.program.Href, ""), Program: link{Text: p.Title, Href: publicPage(p.ID)},
		Shown: l.Shown, Goal: l.Goal, Block: l.Block, Range: l.Forecast.Range, Next: l.After,
		Figure: b.testFigure(l), LeftOut: l.LeftOut,
		Help: l.Help, Find: findPage(p.ID), Cue: l.Cue, NotYet: l.Labels.NotYet, Advice: l.Advice,
		Version: b.words.fill("foot.version", "version", l.Version()),
	}
	v.Title = b.words.fill("site.program_of", "skill", l.Client, "name", p.Title)
	most := 0.0
	for _, w := range l.Weeks {
		most = max(most, w.HelpKG)
	}
	for i := range l.Weeks {
		v.Weeks = append(v.Weeks, row(&l.Weeks[i], most, at))
	}
	for _, g := range l.Gates {
		v.Gates = append(v.Gates, gate(l.View, g, at))
	}
	for _, r := range l.Ladder {
		v.Ladder = append(v.Ladder, b.rung(r, at))
	}
	v.Mean = b.words.fill("level.band_lead", "mass", l.Help.Mean)
	v.Up, v.Down = b.neighbour(p, n+1, "level.up"), b.neighbour(p, n-1, "level.down")
	if len(v.Weeks) > 0 && len(v.Weeks[0].Days) > 0 {
		v.First = v.Weeks[0].Days[0].Href
	}
	v.Scripts = []string{startScript, todayScript}
	plan := *l.View
	plan.Skill = p.Skill
	v.Description = l.Shown
	b.programPlan(&v.frame, &plan)
	b.way(&v.frame, link{Text: b.words.word("find.title"), Href: programsPage}, v.Program)
	return v
}

// neighbour leads to the level above or below, if there is one.
func (b *builder) neighbour(p *view.Public, n int, key string) link {
	if n < 0 || n >= len(p.Levels) {
		return link{}
	}
	return link{Text: b.words.fill(key, "level", p.Levels[n].Name), Href: levelFiles(p.ID, p.Levels[n].Number) + ".html"}
}
