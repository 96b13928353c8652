package view

import (
	"slices"
	"strconv"
	"strings"

	"gatepost/program"
)

// Class is one training day of a studio on paper: who trains, what on, and cells to write
// in.
type Class struct {
	Title   string // "Class of Monday, 11 January 2027"
	Day     string // "Monday, 11 January 2027"
	Lead    string
	Columns ClassColumns
	Rows    []ClassRow
	Missing string // who usually trains on that weekday and does not; empty: nobody
	Coach   program.Coach
	Lang    string
	Labels  Labels // of which a class has PageOf only
}

// ClassColumns are the names of the columns.
type ClassColumns struct {
	Client, Work, Amount, Joints, Sets, Notes string
}

// ClassRow is one client's session.
type ClassRow struct {
	Client string
	Week   string // "week 2 of 12, deload"
	Note   string // what the session has to say first: that it shows a gate
	Work   string // "half-open tuck", or the first exercise of a day without main work
	Help   string // "narrow, 2 kg of help, hands 20 cm ahead of the spot under the anchor"
	Amount string // "4 × 11 s"
	Joints []string
	Boxes  []CardBox
	More   string // the day's other holds and tests: "planche lean 1 × 24 s"
}

// Attending is a client who trains on the weekday of a class, with the program on the wall.
type Attending struct {
	View    *View
	Program *program.Program
}

// NewClass writes a class of a day. Who has no session that day is named under the rows.
func NewClass(coach program.Coach, lib *program.Library, on program.Date, all []Attending) (*Class, program.Problems) {
	s := newSpeech(coach, lib, &program.Program{})
	day := s.say("date.full", "weekday", s.weekday(on), "day", strconv.Itoa(on.Time().Day()), "month", s.monthName(on), "year", strconv.Itoa(on.Time().Year()))
	c := &Class{Title: s.say("class.title", "day", day), Day: day, Lead: s.say("class.lead"), Coach: coach, Lang: s.lang,
		Columns: ClassColumns{s.say("class.client"), s.say("class.work"), s.say("class.amount"), s.say("joints_log.before"), s.say("class.sets"), s.say("card.notes")}}
	c.Labels.pageOf = s.pageOf()
	var missing []string
	for _, a := range all {
		if row, ok := s.classRow(a, on); ok {
			c.Rows = append(c.Rows, row)
		} else {
			missing = append(missing, a.View.Client)
		}
	}
	if len(missing) > 0 {
		c.Missing = s.say("class.missing", "names", join(missing...))
	}
	return c, s.problems()
}

// classRow is a client's card of a day, as a row.
func (s *speech) classRow(a Attending, on program.Date) (ClassRow, bool) {
	card := cardOf(a, on)
	if card == nil || len(card.Items) == 0 {
		return ClassRow{}, false
	}
	main := card.Items[card.Main]
	row := ClassRow{
		Client: a.View.Client, Week: join(strings.TrimSpace(s.say("class.week", "number", strconv.Itoa(card.Number), "weeks", strconv.Itoa(len(a.View.Weeks)))), card.Kind),
		Note: card.Note, Work: main.Name, Help: join(main.Rig, main.Help, main.Spot, main.Found), Amount: main.Amount, Joints: a.View.CardText.Joints, Boxes: main.Boxes,
	}
	var more []string
	for i, item := range card.Items {
		if i != card.Main && slices.Contains(classRoles, item.RoleKey) {
			more = append(more, join(item.Name+" "+item.Amount, item.Rig, item.Help))
		}
	}
	row.More = strings.Join(more, "; ")
	return row, true
}

// classRoles are what a coach watches beside the main work.
var classRoles = []program.Role{program.RoleTest, program.RoleAhead, program.RoleMain, program.RoleSecond}

// cardOf is a client's card of a day; nil where there is none. Cards are all sessions of
// the block, in order.
func cardOf(a Attending, on program.Date) *Card {
	i := 0
	for _, w := range a.Program.Weeks {
		for _, session := range w.Sessions {
			if session.Date == on {
				return &a.View.Cards[i]
			}
			i++
		}
	}
	return nil
}
