package site

import (
	"strconv"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// A client's session pages take down what was done, and keep it on the phone until the
// client sends it. Here is what such a page needs; the scripts write a log's own lines.
// Without them nothing of this is seen.

// resultsView is what a page asks of a whole session.
type resultsView struct {
	sendView
	Day             program.Date
	Client          string // as a line of a log says whose it is
	Version, Plan   string // of the plan, which the lines are kept with, and the same to be read
	Today, Tomorrow jointsView
}

// sendView stands wherever lines can be sent.
type sendView struct {
	Subject, Contact string // of a mail; Contact may be empty
}

// jointsView asks for the joints, before a session or the morning after.
type jointsView struct {
	When, Legend string
	Joints       []jointView
}

// jointView is a joint by its name in a log, and in words.
type jointView struct{ Name, Word string }

// answerView is what is taken down of an item.
type answerView struct {
	view.Answer
	Main bool
	Sets []setView
}

// setView is a set: its tick, and the box for what it came to. Parts are what the
// notebook calls them; of what has a box, the tick follows it and has none.
type setView struct {
	Caption, Label string
	Tick, Part     string
	Printed        string
}

// Asks reports whether there is more to say of an item than its sets.
func (a *answerView) Asks() bool {
	return a.RPE || a.Clean || a.Tries || a.Lean != "" || len(a.Marks) > 0
}

func (b *builder) send(v *view.View) sendView {
	return sendView{b.words.fill("phone.subject", "skill", v.Skill, "name", v.First), b.mailbox()}
}

// results adds what a client's session page takes down.
func (b *builder) results(p *sessionView, v *view.View, d day) {
	p.Scripts = append(p.Scripts, notebookScript, linesScript, answersScript, sendScript)
	p.Results = &resultsView{sendView: b.send(v), Day: d.session.Date, Client: program.Signed(v.First, v.Page), Version: v.Number, Plan: v.Labels.Numbered,
		Today: b.askJoints("before", "joints_log.before"), Tomorrow: b.askJoints("next", "joints_log.tomorrow")}
}

func (b *builder) askJoints(when, legend string) jointsView {
	v := jointsView{When: when, Legend: b.words.word(legend)}
	for _, joint := range []string{"wrists", "elbows", "shoulders"} {
		v.Joints = append(v.Joints, jointView{joint, b.words.word("joint." + joint)})
	}
	return v
}

func (b *builder) answer(from *view.CardItem, main bool) *answerView {
	a := answerView{Answer: from.Answer, Main: main}
	for _, box := range from.Boxes {
		if box.After {
			continue
		}
		n := strconv.Itoa(len(a.Sets) + 1)
		s := setView{Caption: box.Caption, Tick: "tick-" + n}
		if !a.Tries && len(a.Marks) == 0 {
			s.Tick, s.Part, s.Label = "", n, b.words.fill("phone.set", "number", n, "exercise", from.Exercise)
			if a.Amount > 0 {
				s.Printed = strconv.Itoa(a.Amount)
			}
		}
		a.Sets = append(a.Sets, s)
	}
	return &a
}
