package program

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Place is a spot in a file that somebody can open: the path below the coach's
// folder, line and column from 1 (column in characters), and the line itself.
// A Place with only a File speaks of the file as a whole.
type Place struct {
	File         string
	Line, Column int
	Text         string
}

// String is the form editors jump to: file:line:column.
func (p Place) String() string {
	switch {
	case p.Line == 0:
		return p.File
	case p.Column == 0:
		return fmt.Sprintf("%s:%d", p.File, p.Line)
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
}

// Places finds the spot of a value by its path in the file, written as in
// "body.balance_point", "bands[0].pulls[1].force" or "tests[2]".
type Places map[string]Place

// At is the place of a path, or of its nearest parent that was written.
func (p Places) At(path string) Place {
	for {
		if at, ok := p[path]; ok {
			return at
		}
		cut := strings.LastIndexAny(path, ".[")
		if cut < 0 {
			return p[""]
		}
		path = path[:cut]
	}
}

// Problem is one thing wrong, or doubtful, in what somebody wrote.
// Message says what is there, Advice what to write instead.
// A Warning is said and does not stop the work.
type Problem struct {
	Place
	Message string
	Advice  string
	Warning bool
}

// AsWarning is the same where it stops nothing.
func (p Problem) AsWarning() Problem {
	p.Warning = true
	return p
}

// Error is the one-line form, place and message.
func (p Problem) Error() string { return p.Place.String() + ": " + p.Message }

// Problems are all that was found, not only the first.
type Problems []Problem

// Sort orders by file, line, column and message, so that a report reads
// downwards and is the same every time.
func (ps Problems) Sort() {
	slices.SortStableFunc(ps, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line),
			cmp.Compare(a.Column, b.Column), cmp.Compare(a.Message, b.Message))
	})
}

// Stop says whether any of them is more than a warning.
func (ps Problems) Stop() bool {
	return slices.ContainsFunc(ps, func(p Problem) bool { return !p.Warning })
}
