package intake

import (
	"fmt"
	"slices"
	"strings"

	"gatepost/program"
)

// source is one file as it was written, with the spot of every value read from
// it and everything found wrong.
type source struct {
	file     string // the path to open
	builtIn  bool
	lines    []string
	places   program.Places
	empty    []string // paths of what is needed and stands there without a value
	problems program.Problems
	words    sayings // in which faults of values are said
	dates    program.DateOrder
}

func newSource(file, text string, builtIn bool) *source {
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		lines[i] = strings.TrimSuffix(line, "\r")
	}
	return &source{file: file, builtIn: builtIn, lines: lines, words: wordless,
		places: program.Places{"": {File: file, Line: 1, Column: 1, Text: lines[0]}}}
}

// place is the spot at a line and column, both from 1.
func (s *source) place(line, column int) program.Place {
	at := program.Place{File: s.file, Line: line, Column: column}
	if 0 < line && line <= len(s.lines) {
		at.Text = s.lines[line-1]
	}
	return at
}

// maxProblems is how many of one file are noted; nobody reads more at a time.
const maxProblems = 200

// say notes that something at a spot is wrong.
func (s *source) say(at program.Place, message, advice string) {
	s.note(program.Problem{Place: at, Message: message, Advice: advice})
}

// doubt notes that something at a spot is unusual.
func (s *source) doubt(at program.Place, message, advice string) {
	s.note(program.Problem{Place: at, Message: message, Advice: advice, Warning: true})
}

func (s *source) note(p program.Problem) {
	switch n := len(s.problems); {
	case n < maxProblems:
		s.problems = append(s.problems, p)
	case n == maxProblems:
		s.problems = append(s.problems, program.Problem{Place: program.Place{File: s.file},
			Message: "there are more problems in this file than are listed", Advice: "Mend those listed first."})
	}
}

// full reports whether no further problem of the file is noted: then nothing need be
// looked up to word one.
func (s *source) full() bool { return len(s.problems) > maxProblems }

// wrongAt says that an error was noted about the value at a path itself.
func (s *source) wrongAt(path string) bool {
	at := s.at("%s", path)
	return slices.ContainsFunc(s.problems, func(p program.Problem) bool { return p.Place == at && !p.Warning })
}

// at finds the spot of the value with a path such as "bands[%d].rest".
func (s *source) at(path string, args ...any) program.Place {
	return s.places.At(fmt.Sprintf(path, args...))
}

// sound says that nothing in the file is wrong.
func (s *source) sound() bool { return !s.problems.Stop() }
