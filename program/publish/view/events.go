package view

import (
	"maps"
	"slices"
	"strings"

	"gatepost/program"
)

// Event is one day in a calendar: a session of the plan on the wall, or one that
// went.
type Event struct {
	Day      program.Date
	Summary  string
	Minutes  int
	Clock    program.Clock
	Text     string       // what to do; of a session that went, that it did
	plain    string       // the same without the preparation
	Revision int          // the number of the plan that made it so, less one
	Revised  program.Date // the day that plan was made
	Gone     bool         // an earlier plan had it, and the one on the wall has not
	past     bool         // the same, and the day had passed when the plan was made
}

// says compares what a reader sees.
func (e *Event) says(other *Event) bool {
	return e.Gone == other.Gone && e.Summary == other.Summary && e.Text == other.Text && e.Clock == other.Clock
}

// diary is what a client's calendars have held, day by day, as of one plan after
// the other.
type diary map[program.Date]Event

// hang takes in a plan, after those before it. A day that reads otherwise, is new
// or is there again is of this plan; so is one that went. Days that had passed by
// then and are not in it (a week in which nothing was done has become a week off)
// are not called off: they stay in the calendar as they were, and so does the time of
// day of those that are in it.
func (d diary) hang(v *program.PlanVersion, sessions []Event) {
	in := map[program.Date]bool{}
	for _, e := range sessions {
		in[e.Day] = true
		old, ok := d[e.Day]
		if ok && e.Day < v.On {
			e.Clock = old.Clock
		}
		if e.Revision, e.Revised = old.Revision, old.Revised; !ok || !e.says(&old) {
			e.Revision, e.Revised = v.Version-1, v.On
		}
		d[e.Day] = e
	}
	for day, e := range d {
		switch {
		case in[day] || e.Gone:
			continue
		case day < v.On:
			e.past = true
		default:
			e.Gone, e.Revision, e.Revised = true, v.Version-1, v.On
		}
		d[day] = e
	}
}

// since are the days from one on, in order.
func (d diary) since(from program.Date) []Event {
	var all []Event
	for _, day := range slices.Sorted(maps.Keys(d)) {
		if e := d[day]; !e.past && (!e.Gone || day >= from) {
			all = append(all, e)
		}
	}
	return all
}

// before reads the plans that came before the one on the wall: what calendars
// hold of them, and whose turn the odd sets were. That today's words lack one of
// an old plan's notes is no problem: nobody prints it.
func (s *speech) before(kept []program.PlanVersion) (diary, turns) {
	d, t, old := diary{}, turns{}, *s
	old.missing = map[string]string{}
	for i := range kept {
		v := &kept[i]
		t = t.after(v.Weeks)
		d.hang(v, old.events(old.weeks(v.Weeks, t), v.Clock))
	}
	return d, t
}

// calendar is what the view's calendar holds, once the plan on the wall, made on
// a day, is in the diary. A session that went with an earlier plan of this block
// is called off still: not every calendar took in every plan.
func (s *speech) calendar(d diary, v *View, wall *program.PlanVersion) []Event {
	d.hang(wall, s.events(v.Weeks, wall.Clock))
	all := d.since(min(v.Start, wall.On))
	for i := range all {
		if e := &all[i]; e.Gone {
			e.Summary, e.Text = s.say("calendar.gone", "what", e.Summary), s.say("calendar.gone_why")
			e.plain = e.Text
		}
	}
	return all
}

// events are the sessions of a block.
func (s *speech) events(weeks []Week, clock program.Clock) []Event {
	var all []Event
	for _, w := range weeks {
		for i := range w.Sessions {
			session := &w.Sessions[i]
			title := s.say("calendar.title", "what", session.Work, "week", w.Title)
			all = append(all, Event{Day: session.Date, Minutes: session.Length, Clock: clock, Summary: title, Text: s.doing(session, true), plain: s.doing(session, false)})
		}
	}
	return all
}

// works writes what each session is about, once its sides are known.
func (s *speech) works(weeks []Week) {
	for i := range weeks {
		for j := range weeks[i].Sessions {
			weeks[i].Sessions[j].Work = s.work(&weeks[i].Sessions[j])
		}
	}
}

// work is the line of a session's first hold of a step, the work first; without one,
// how long it lasts.
func (s *speech) work(session *Session) string {
	for _, role := range []program.Role{program.RoleTest, program.RoleMain, program.RoleSecond} {
		for i := range session.Items {
			item := &session.Items[i]
			switch {
			case item.RoleKey != role:
			case item.Open: // a sentence, which no name follows
				return join(item.Name(), item.Line)
			default:
				return join(s.say("calendar.work", "dose", item.Amount, "step", item.Name()), item.Sides, item.Rig)
			}
		}
	}
	return session.Minutes
}

// doing is a session line by line, with its preparation or without.
func (s *speech) doing(session *Session, prepare bool) string {
	lines := append([]string{session.Minutes}, session.Say...)
	for i := range session.Items {
		item, rest := &session.Items[i], ""
		if item.RoleKey == program.RolePrepare && !prepare {
			continue
		}
		if item.Clock != "" {
			rest = s.say("amount.rest", "rest", item.Clock)
		}
		lines = append(lines, join(item.Name(), item.Line, item.Spot, item.Found, rest, item.Remark))
	}
	return strings.Join(lines, "\n")
}
