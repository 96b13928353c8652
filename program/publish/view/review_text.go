package view

import (
	"io"
	"strings"
)

// ReviewText writes a review for a terminal of 80 columns: what needs the coach
// first.
func ReviewText(out io.Writer, v *Review) error {
	var t text
	t.heading(v.Title, "=")
	for _, part := range []string{v.Goal, v.Block, strings.Join(v.Standing, " ")} {
		if part != "" {
			t.wrap("", part)
		}
	}
	if v.Course != "" {
		t.wrap("", v.Labels.Course+": "+v.Course+".")
	}
	t.section(v.Withheld...)
	if len(v.Withheld) == 0 || len(v.Standing) > 0 {
		t.reviewParts(v)
	}
	_, err := io.WriteString(out, noBreaks(t.String()))
	return err
}

func (t *text) reviewParts(v *Review) {
	var flags []string
	for _, f := range v.Flags {
		flags = append(flags, f.Word+": "+f.Text)
	}
	if len(flags) == 0 {
		t.section(v.Labels.NoFlags)
	} else {
		t.part(v.Labels.Flags, flags)
	}
	t.part(v.Labels.Asks, v.Asks)
	t.part(v.Labels.Forecast, append(append([]string{}, v.Forecast...), v.NextTest))
	t.part(v.Labels.Estimate, v.Estimate)
	t.part(v.Labels.Offsets, v.Offsets)
	t.part(v.Labels.Moves, v.Moves)
	t.part(v.Labels.Doubted, v.Doubted)
	t.part(v.Labels.Unread, v.Unread)
	t.gatesRead(v)
	t.part(v.Labels.Wishes, v.Wishes)
	t.changes(v)
}

// part is a title and its lines; nothing where there are none.
func (t *text) part(title string, lines []string) {
	if len(lines) == 0 {
		return
	}
	t.line("")
	t.heading(title, "-")
	for _, line := range lines {
		if line != "" {
			t.wrap("- ", line)
		}
	}
}

func (t *text) gatesRead(v *Review) {
	if len(v.Gates) == 0 {
		return
	}
	t.line("")
	t.heading(v.Labels.Gates, "-")
	for _, g := range v.Gates {
		t.wrap("", g.Line)
		for _, term := range g.Terms {
			t.wrap("  - ", term.Line)
		}
	}
}

func (t *text) changes(v *Review) {
	if len(v.Changes) == 0 {
		t.section(v.Labels.NoChanges + " " + v.Reprint)
		return
	}
	t.part(v.Labels.Changes, v.Changes)
	t.part(v.Labels.Why, v.Notes)
	t.line("")
	t.heading(v.Labels.Print, "-")
	if v.Keep != "" { // before it is printed: what is printed is the plan on the wall
		t.wrap("", v.Keep)
	}
	t.wrap("", v.Reprint)
}
