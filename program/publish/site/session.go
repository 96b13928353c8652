package site

import (
	"cmp"
	"html/template"
	"strconv"
	"strings"
	"unicode/utf8"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// sessionView is one day on a page of its own, to train from. Like programView it
// holds only what may be published.
type sessionView struct {
	frame
	Program, Week  link
	Previous, Next link // no Href: there is none
	Minutes, Note  string
	Say            []string // the coach's own words
	Kind           string   // empty in an ordinary week
	KindKey        program.WeekKind
	Figure         template.HTML // of what the session is about
	Picture        *pictureView  // the same, where no step is held
	Prepare        string        // what the preparation is called
	Names          string        // its exercises, with their amounts
	Preparation    []itemView
	Items          []itemView
	StopShort      string
	Advice         view.Advice
	Results        *resultsView // nil: nothing is taken down, as on a page for everybody
}

// itemView is one thing to do.
type itemView struct {
	link
	Role, Rig, Help string
	Amount, Sides   string // of the dose
	Spot, Rest      string
	Found           string
	Remark, Cue     string
	Easier, Harder  string
	Main            bool     // set larger than the rest
	Said            bool     // the amount is a sentence and not a figure
	SetsOf          string   // what the ticks are for
	Ticks           []string // one a set
	Write           []string // captions of boxes on paper: RPE, form
	Picture         *pictureView
	Timer           *timerView
	Answer          *answerView // nil: nothing is taken down
}

// timerView is what the hold timer counts; nil: nothing that a clock decides.
type timerView struct {
	Name, Label      string
	Sets, Hold, Rest int  // s
	Up               bool // counts up, to Hold where that is enough
}

// day is a session with what stands around it.
type day struct {
	week    *view.Week
	session *view.Session
	card    *view.Card
}

// days are all sessions of a program, in order; its cards are in the same.
func days(v *view.View) []day {
	var all []day
	for i := range v.Weeks {
		w := &v.Weeks[i]
		for j := range w.Sessions {
			all = append(all, day{w, &w.Sessions[j], &v.Cards[len(all)]})
		}
	}
	return all
}

// dayID is a session's place in its program: its date, or its number in the week
// where it has none.
func dayID(s *view.Session) string {
	if s.Date == 0 {
		return strconv.Itoa(s.Number)
	}
	return s.Date.String()
}

func (b *builder) session(v *view.View, all []day, n int, at place) sessionView {
	d := all[n]
	p := sessionView{
		frame: b.frame(d.session.Title, at.session(d.week, d.session), at.root), Program: at.program,
		Week:    link{Text: d.week.Title, Href: at.week(d.week.Number)},
		Minutes: d.card.Minutes, Note: d.card.Note, Say: d.card.Say, Kind: d.card.Kind, KindKey: d.week.KindKey,
		Figure: b.sessionFigure(v, d), StopShort: v.Advice.StopShort, Advice: v.Advice,
	}
	p.Scripts = []string{timerScript}
	if v.Page != "" && d.session.Date != 0 {
		b.results(&p, v, d)
	}
	if n > 0 {
		p.Previous = at.beside(d, all[n-1])
	}
	if n+1 < len(all) {
		p.Next = at.beside(d, all[n+1])
	}
	var names []string
	for i := range d.card.Prepare {
		item := &d.card.Prepare[i]
		p.Preparation, p.Prepare = append(p.Preparation, b.item(item, at)), item.Role
		names = append(names, item.Exercise+" "+item.Amount)
	}
	p.Names = strings.Join(names, b.words.word("site.comma"))
	for i := range d.card.Items {
		item := b.item(&d.card.Items[i], at)
		if p.Results != nil {
			item.Answer = b.answer(&d.card.Items[i], i == d.card.Main)
		}
		p.Items = append(p.Items, item)
	}
	if len(p.Items) > 0 { // what it is about is shown large, and once
		main := &p.Items[d.card.Main]
		if p.Figure == "" {
			p.Picture = main.Picture
		}
		main.Picture = nil
	}
	return p
}

// beside leads to another session; where that has no date, with its week.
func (p place) beside(from, to day) link {
	l := link{Text: to.session.DayDate, Href: p.session(to.week, to.session)}
	if to.session.Date == 0 && from.week != to.week {
		l.Text = to.week.Title + ", " + l.Text
	}
	return l
}

// sessionFigure is of what a session is about: of the week's step with its rig, or
// of the exercise.
func (b *builder) sessionFigure(v *view.View, d day) template.HTML {
	if len(d.card.Items) == 0 {
		return ""
	}
	main := &d.card.Items[d.card.Main]
	if main.Shown {
		return b.weekFigure(v, d.week)
	}
	return b.figureOf(main.ExerciseID)
}

// longestFigure is how many letters of an amount fit a phone's width in big type
// (our judgement: "10 × 12 s" does, a sentence does not).
const longestFigure = 20

func (b *builder) item(from *view.CardItem, at place) itemView {
	c := itemView{
		link: link{Text: from.Exercise, Href: at.exercise(b.Library, from.ExerciseID)}, Role: from.Role, Amount: cmp.Or(from.Full, from.Amount), Sides: from.Sides,
		Rig: from.Rig, Help: from.Help, Spot: from.Spot, Found: from.Found, Rest: from.Clock, Remark: from.Remark, Cue: from.Cue,
		Easier: from.Easier, Harder: from.Harder,
		Said:   from.Full != "" || utf8.RuneCountInString(from.Amount) > longestFigure,
		SetsOf: b.words.fill("session.sets_of", "exercise", from.Exercise),
		Timer:  b.timer(&from.Item), Picture: b.picture(from.ExerciseID, at.root),
	}
	if c.Rest != "" {
		c.Rest = b.words.fill("amount.rest", "rest", c.Rest)
	}
	switch from.RoleKey {
	case program.RoleMain, program.RoleAhead, program.RoleTest:
		c.Main = true
	}
	for _, box := range from.Boxes {
		if box.After {
			c.Write = append(c.Write, box.Caption)
		} else {
			c.Ticks = append(c.Ticks, box.Caption)
		}
	}
	return c
}

func (b *builder) timer(from *view.Item) *timerView {
	t := timerView{Name: from.Exercise, Label: b.words.fill("timer.start_for", "exercise", from.Exercise),
		Sets: max(from.Sets, 1), Hold: from.Hold, Rest: from.Pause, Up: from.Up}
	switch {
	case from.Up:
		t.Hold = from.Enough
	case from.Hold == 0:
		return nil
	}
	return &t
}
