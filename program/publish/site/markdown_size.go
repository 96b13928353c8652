package site

import (
	"fmt"
	"strings"

	"github.com/yuin/goldmark/ast"

	"gatepost/program"
)

// What one text may hold: far above any page that people read (our judgement). What is
// above would take minutes, or make a page that no browser likes.
const (
	maxMarkdown = 256 << 10 // bytes
	maxCells    = 50_000    // cells of a table at the widest row; short rows are filled up, so 14 KB could become 40 MB
	maxMarks    = 2_000     // * and _ between two empty lines: each may be the end of any one before it
	maxFigures  = 200       // drawings, of some 4 KB each
)

// tooLarge looks at a text before it is parsed.
func (m passage) tooLarge() *program.Problem {
	rows, widest := strings.Count(m.text, "\n")+1, 0
	for line := range strings.Lines(m.text) {
		widest = max(widest, strings.Count(line, "|"))
	}
	switch marked, marks := m.mostMarks(); {
	case len(m.text) > maxMarkdown:
		return m.split(0, fmt.Sprintf("the text is larger than %d KB", maxMarkdown>>10))
	case rows*widest > maxCells:
		return m.split(0, fmt.Sprintf("a table of up to %d columns in %d lines is too large", widest, rows))
	case marks > maxMarks:
		return m.split(marked, fmt.Sprintf("a paragraph has %d * and _; at most %d are read", marks, maxMarks))
	}
	return nil
}

// mostMarks finds the lines without an empty one between them that have the most marks of
// emphasis, and where they begin.
func (m passage) mostMarks() (at, most int) {
	start, marks, offset := 0, 0, 0
	for line := range strings.Lines(m.text) {
		if strings.TrimSpace(line) == "" {
			start, marks = offset+len(line), 0
		}
		if marks += strings.Count(line, "*") + strings.Count(line, "_"); marks > most {
			at, most = start, marks
		}
		offset += len(line)
	}
	return at, most
}

// tooMany counts the drawings that a text asks for.
func (m passage) tooMany(doc ast.Node) *program.Problem {
	figures := 0
	_ = ast.Walk(doc, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if _, ok := n.(*ast.Image); ok && entering {
			figures++
		}
		return ast.WalkContinue, nil
	})
	if figures <= maxFigures {
		return nil
	}
	return m.split(0, fmt.Sprintf("the text shows %d pictures; at most %d are drawn", figures, maxFigures))
}

func (m passage) split(offset int, message string) *program.Problem {
	p := m.problem(offset, message, "split it into several pages")
	return &p
}
