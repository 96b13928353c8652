package site

import (
	"html/template"
	"strconv"
	"unicode/utf8"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// weekView is one week at the wall. Like programView it holds only what may be
// published.
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
	Sessions       []sessionView
	Advice         view.Advice
}

// sessionView is one day.
type sessionView struct {
	ID, Title, Day, Minutes string
	Items                   []itemView
}

// itemView is one thing to do.
type itemView struct {
	link
	Role, Dose, Rig, Help string
	Amount, Sides         string // of the dose
	Spot, Rest, Remark    string
	Cue                   string
	Main                  bool // set larger than the rest
	Said                  bool // the amount is a sentence and not a figure
	Timer                 *timerView
}

// timerView is what the hold timer counts; nil: nothing that a clock decides.
type timerView struct {
	Name, Label      string
	Sets, Hold, Rest int // s
}

func (b *builder) week(v *view.View, i int, at place) weekView {
	w := v.Weeks[i]
	p := weekView{
		frame:   b.frame(w.Title, at.week(w.Number), at.root),
		Program: at.program,
		Dates:   w.Dates, Kind: w.Kind, KindKey: w.KindKey, Line: w.Line, Step: sentence(w.Step),
		Asked: w.Asked, Provisional: w.Provisional, Advice: v.Advice, Figure: b.weekFigure(v, w),
	}
	p.Scripts = []string{timerScript}
	if i > 0 {
		p.Previous = link{Text: v.Weeks[i-1].Title, Href: at.week(v.Weeks[i-1].Number)}
	}
	if i+1 < len(v.Weeks) {
		p.Next = link{Text: v.Weeks[i+1].Title, Href: at.week(v.Weeks[i+1].Number)}
	}
	for _, s := range w.Sessions {
		p.Sessions = append(p.Sessions, b.session(s, at))
	}
	return p
}

// dayID is a session's place on its page: its date, or its number where it has
// none.
func dayID(s view.Session) string {
	if s.Date == 0 {
		return strconv.Itoa(s.Number)
	}
	return s.Date.String()
}

// weekFigure is the figure of the week's main work: of a client's week that of an
// average body, since a figure to scale would publish a client's proportions.
func (b *builder) weekFigure(v *view.View, w view.Week) template.HTML {
	id := w.StepID
	if id == "" {
		id = w.ExerciseID
	}
	if public := v.Start == 0; public && w.Stance.Drawn() {
		return b.levelFigure(w.Stance, w.Step, id)
	}
	return b.figures[figureKey{v.SkillID, id}]
}

func (b *builder) session(s view.Session, at place) sessionView {
	c := sessionView{ID: dayID(s), Title: s.Title, Day: s.Day, Minutes: s.Minutes}
	for _, item := range s.Items {
		c.Items = append(c.Items, b.item(item, at))
	}
	return c
}

// longestFigure is how many letters of an amount fit a phone's width in big type
// (our judgement: "10 × 12 s" does, a sentence does not).
const longestFigure = 20

func (b *builder) item(from view.Item, at place) itemView {
	c := itemView{
		link: link{Text: from.Exercise}, Role: from.Role, Dose: from.Dose, Amount: from.Amount, Sides: from.Sides, Rig: from.Rig, Help: from.Help,
		Spot: from.Spot, Rest: from.Rest, Remark: from.Remark, Cue: from.Cue,
		Said: utf8.RuneCountInString(from.Amount) > longestFigure,
	}
	if c.Rest != "" {
		c.Rest = b.words.fill("amount.rest", "rest", c.Rest)
	}
	switch from.RoleKey {
	case program.RoleMain, program.RoleAhead, program.RoleTest:
		c.Main = true
	}
	if from.Hold > 0 {
		c.Timer = &timerView{Name: from.Exercise, Label: b.words.fill("timer.start_for", "exercise", from.Exercise),
			Sets: from.Sets, Hold: from.Hold, Rest: from.Pause}
	}
	if _, ok := b.Library.Exercise(from.ExerciseID); ok {
		c.Href = at.root + exercisePage(from.ExerciseID)
	}
	return c
}
