package view

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

const columns = 80

// Text writes a program for a terminal of 80 columns: what the one-page plan
// says, then the sessions of each week.
func Text(out io.Writer, v *View) error {
	var t text
	t.heading(v.Title, "=")
	for _, part := range []string{v.Goal, v.Block} {
		if part != "" {
			t.wrap("", part)
		}
	}
	t.section(v.Withheld...)
	if len(v.Withheld) == 0 {
		t.section(v.Where, v.Forecast.Sentence)
		t.ladder(v)
		t.table(v)
		t.gates(v)
		t.bullets("", v.AllNotes)
		t.bullets("", v.Outline)
		t.bullets(v.ForCoach.AsksTitle, v.ForCoach.Asks)
		t.bullets(v.ForCoach.OffsetsTitle, v.ForCoach.Offsets)
		t.bullets(v.ForCoach.WishesTitle, v.ForCoach.Wishes)
		t.sessions(v)
	}
	t.bullets(v.Advice.DayTitle, v.Advice.DayRule)
	t.section(v.Advice.StopShort, v.Advice.NotMedical)
	t.section(v.Version())
	_, err := io.WriteString(out, noBreaks(t.String()))
	return err
}

type text struct{ strings.Builder }

func (t *text) line(format string, args ...any) {
	t.WriteString(strings.TrimRight(fmt.Sprintf(format, args...), " ") + "\n")
}

func (t *text) heading(s, under string) {
	t.line("%s", s)
	t.line("%s", strings.Repeat(under, min(columns, utf8.RuneCountInString(s))))
}

// section writes paragraphs, with an empty line before.
func (t *text) section(paragraphs ...string) {
	for _, p := range paragraphs {
		if p != "" {
			t.line("")
			t.wrap("", p)
		}
	}
}

func (t *text) bullets(title string, items []string) {
	if len(items) == 0 {
		return
	}
	t.line("")
	if title != "" {
		t.line("%s", title)
	}
	for _, item := range items {
		t.wrap("- ", item)
	}
}

// wrap breaks at spaces; later lines are indented under the first.
func (t *text) wrap(lead, s string) {
	indent := strings.Repeat(" ", utf8.RuneCountInString(lead))
	line := lead
	for i, word := range strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == '\n' }) {
		if i > 0 && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > columns {
			t.line("%s", line)
			line = indent
		}
		if line != indent && line != lead {
			line += " "
		}
		line += word
	}
	t.line("%s", line)
}

func (t *text) ladder(v *View) {
	t.line("")
	for _, r := range v.Ladder {
		t.line("  %-22s %5s  %-13s %s", clip(r.Step, 22), r.Share, clip(r.StateWord, 13), clip(r.When, 35))
	}
}

// table has one line a week; a question mark stands by the provisional ones.
func (t *text) table(v *View) {
	t.line("")
	for _, w := range v.Weeks {
		doubt := ""
		if w.Provisional {
			doubt = "?"
		}
		setup := join(w.Rig, w.Drop)
		if w.LeanCM > 0 {
			setup = w.Rig // hands from a wall are for the card
		}
		room := 16 // for the step; all of the line where nothing hangs
		if w.Help+setup == "" {
			room = columns - 24
		}
		t.line("%2d%-1s %-8s %-10s %-16s %-7s %s", w.Number, doubt, clip(w.Kind, 8), w.Range, clip(w.Step, room),
			w.Help, clip(setup, columns-49))
	}
}

func (t *text) gates(v *View) {
	for _, g := range v.Gates {
		t.line("")
		t.wrap("", g.Step+": "+g.Words)
	}
}

func (t *text) sessions(v *View) {
	for _, w := range v.Weeks {
		t.line("")
		t.heading(join(w.Title, w.Dates, w.Kind), "-")
		t.notes(w.Notes)
		for _, s := range w.Sessions {
			t.line("%s, %s", s.Title, s.Minutes)
			for _, said := range s.Say {
				t.wrap("    ", said)
			}
			for _, i := range s.Items {
				t.wrap("    ", i.Name()+": "+join(i.Line, i.Help, i.Spot, i.Found, i.Remark, i.Rest))
			}
			t.notes(s.Dropped)
		}
	}
}

func (t *text) notes(notes []string) {
	for _, n := range notes {
		t.wrap("  * ", n)
	}
}

// clip cuts what a column has no room for.
func clip(s string, width int) string {
	if utf8.RuneCountInString(s) <= width {
		return s
	}
	return string([]rune(s)[:width-1]) + "…"
}

// noBreaks has spaces be spaces, as terminals and messages have them.
func noBreaks(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }
