package intake

import (
	"regexp"
	"strings"

	"gatepost/program"
)

// What mail programs do to lines that are sent in them: they quote them, turn quotes
// into printers' quotes, and break a long line at a space. Mending undoes it and keeps
// every line at its number; what it is not sure of stays as it is, and is an error.

var (
	quoting  = regexp.MustCompile(`^[ \t]*(?:>[ \t]?)+`)
	printers = regexp.MustCompile(`(^|[,;\t])[ \t]*["“„«]([^"“”„«»]*)["”“»][ \t]*($|[,;\t])`)
)

// unquote takes away what a reply puts before each line, and printers' quotes around a
// cell.
func (b *logBook) unquote() {
	for i, line := range b.lines {
		b.lines[i] = printers.ReplaceAllString(quoting.ReplaceAllString(line, ""), `$1"$2"$3`)
	}
}

// mostPieces is how many lines a broken one is put together from: a note of 200 letters,
// in lines of 70 (our judgement).
const mostPieces = 5

// mend puts lines together that were broken: an entry with fewer cells than there are
// columns, and the lines after it that are none, which have just as many as it lacks.
// A note that goes on in the next line, in its quotes, is whole as it is.
func (b *logBook) mend(first int, columns []column) {
	for i := first; i < len(b.lines); i++ {
		if strings.Count(b.lines[i], `"`)%2 == 1 || !b.isEntry(b.lines[i], columns) {
			continue
		}
		if whole, pieces := b.whole(i, columns); pieces > 1 {
			clear(b.lines[i : i+pieces])
			b.lines[i] = whole
		}
	}
}

// whole is the line with an index and those that belong to it; of one that is not
// broken, or not to be put together, the line alone.
func (b *logBook) whole(i int, columns []column) (whole string, pieces int) {
	whole = b.lines[i]
	for n := 1; n < mostPieces && i+n < len(b.lines) && lacksCells(whole, len(columns)); n++ {
		next := strings.TrimSpace(b.lines[i+n])
		if next == "" || b.isEntry(next, columns) {
			break
		}
		whole = printers.ReplaceAllString(strings.TrimRight(whole, " ")+" "+next, `$1"$2"$3`)
		if !lacksCells(whole, len(columns)) && cellsIn(whole) == len(columns) {
			return whole, n + 1
		}
	}
	return b.lines[i], 1
}

// lacksCells reports whether a line ends before its cells do, or within a quote.
func lacksCells(line string, cells int) bool {
	return strings.Count(line, `"`)%2 == 1 || opened.MatchString(line) || cellsIn(line) < cells
}

// opened is a line that ends within printers' quotes.
var opened = regexp.MustCompile(`(^|[,;\t])[ \t]*[“„«][^"“”„«»]*$`)

// cellsIn counts the cells of a line; 0: it is none by itself.
func cellsIn(line string) int {
	cells, err := newCSV(line, dividing(line)).Read()
	if err != nil {
		return 0
	}
	return len(cells)
}

// isAgain reports whether new lines have one a second time as it is: in a reply, below
// what it answers. Of sets without a number two may be alike, but for those that a
// phone sends, which it signs.
func (l *logLine) isAgain(e *program.Entry) bool {
	text := l.lines[e.Place.Line-1]
	once := e.AsPrinted || e.Morning || e.Sets[0].Number > 0 || l.isSigned(l.cell(columnClient))
	if !l.strict || !once || strings.Count(text, `"`)%2 == 1 { // the rest may differ
		return false
	}
	if l.texts[text] {
		return true
	}
	l.texts[text] = true
	return false
}

// isSigned reports whether a cell is how the client's phone says whose a line is.
func (l *logLine) isSigned(written string) bool {
	a := l.known.client
	return written != "" && fold(written) == signature(a)
}

// signature is how a client's phone signs lines, folded; empty where it has no pages.
func signature(a *program.Assessment) string {
	return fold(program.Signed(program.FirstName(a.Athlete.Name, a.Athlete.Called), a.Page))
}
