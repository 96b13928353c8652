package site

import (
	"html/template"
	"slices"
	"strings"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// weekView is one week at a glance: what is trained, and the way to its sessions.
// Like programView it holds only what may be published.
type weekView struct {
	frame
	Program        link
	Previous, Next link // no Href: there is none
	Dates, Kind    string
	KindKey        program.WeekKind
	Line           string // the week's main work
	Step           string
	Asked          string        // in a gate week
	Figure         template.HTML // of the week's step
	Provisional    bool
	Sessions       []sessionEntry
}

// sessionEntry is a session in a week's list.
type sessionEntry struct {
	link
	ID, Minutes string
	Say         []string // the coach's own words
	Work        []string // what it is about: "Half-open tuck 4 × 12 s, narrow"
	Also        string   // the rest by name
}

func (b *builder) week(v *view.View, i int, at place) weekView {
	w := &v.Weeks[i]
	p := weekView{
		frame:   b.frame(w.Title, at.week(w.Number), at.root),
		Program: at.program,
		Dates:   w.Dates, Kind: w.Kind, KindKey: w.KindKey, Line: w.Line, Step: sentence(w.Step),
		Asked: w.Asked, Provisional: w.Provisional, Figure: b.weekFigure(v, w),
	}
	if i > 0 {
		p.Previous = link{Text: v.Weeks[i-1].Title, Href: at.week(v.Weeks[i-1].Number)}
	}
	if i+1 < len(v.Weeks) {
		p.Next = link{Text: v.Weeks[i+1].Title, Href: at.week(v.Weeks[i+1].Number)}
	}
	for j := range w.Sessions {
		p.Sessions = append(p.Sessions, b.sessionEntry(w, &w.Sessions[j], at))
	}
	return p
}

// leads are the roles that a session is known by.
var leads = []program.Role{program.RoleTest, program.RoleAhead, program.RoleMain, program.RoleSecond}

func (b *builder) sessionEntry(w *view.Week, s *view.Session, at place) sessionEntry {
	e := sessionEntry{link: link{Text: s.Title, Href: at.session(w, s)}, ID: dayID(s), Minutes: s.Minutes, Say: s.Say}
	comma, also := b.words.word("site.comma"), []string{}
	for i := range s.Items {
		switch item := &s.Items[i]; {
		case slices.Contains(leads, item.RoleKey):
			e.Work = append(e.Work, sentence(item.Name())+comma+item.Line)
		case item.RoleKey != program.RolePrepare:
			also = append(also, item.Exercise)
		}
	}
	e.Also = strings.Join(also, comma)
	return e
}

// weekFigure is the figure of the week's main work: of a client's week that of an
// average body, since a figure to scale would publish a client's proportions.
func (b *builder) weekFigure(v *view.View, w *view.Week) template.HTML {
	id := w.StepID
	if id == "" {
		id = w.ExerciseID
	}
	if public := v.Start == 0; public && w.Stance.Drawn() {
		return b.levelFigure(w.Stance, w.Step, id)
	}
	return b.figures[figureKey{v.SkillID, id}]
}
