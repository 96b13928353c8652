package intake

import (
	"encoding/csv"
	"errors"
	"io"
	"strings"
	"unicode/utf8"

	"gatepost/program"
)

// logSource takes the bytes of a log as text. Where a crash left half a character
// at the end, that is said and left out.
func logSource(words *logWords, file string, data []byte) (*source, program.Problems) {
	half := halfRune(data)
	src, at, wrong := textSource(file, data[:len(data)-half], maxFile)
	if src == nil {
		return nil, program.Problems{wrong.in(words.said(), at)}
	}
	if half > 0 {
		src.note(fault{"half"}.doubtIn(words.said(), src.place(len(src.lines), 1)))
	}
	return src, nil
}

// halfRune counts the bytes at the end that only begin a character.
func halfRune(data []byte) int {
	for n := 1; n < utf8.UTFMax && n <= len(data); n++ {
		if end := data[len(data)-n:]; utf8.RuneStart(end[0]) {
			if utf8.FullRune(end) {
				return 0
			}
			return n
		}
	}
	return 0
}

// readLines reads the lines from the one with an index on. After a line that is
// no CSV, reading goes on with the next one, whatever its quotes swallowed.
func (b *logBook) readLines(from int) {
	for from < len(b.lines) && len(b.problems) <= maxProblems {
		var broken *csv.ParseError
		if !errors.As(b.readUntilBroken(from), &broken) {
			return
		}
		start := from + broken.StartLine
		b.sayBroken(broken, start, from+broken.Line)
		from = start
	}
}

func (b *logBook) readUntilBroken(from int) error {
	r := newCSV(strings.Join(b.lines[from:], "\n"), b.comma)
	l := &logLine{reader: r, above: from}
	for {
		cells, err := r.Read()
		switch {
		case err == io.EOF:
			return nil
		case err != nil:
			return err
		}
		l.logBook, l.cells, l.wrong = b, cells, false
		if b.choose == nil || l.empty() || l.among(b.choose(l)) {
			l.read()
		}
	}
}

func newCSV(text string, comma rune) *csv.Reader {
	r := csv.NewReader(strings.NewReader(text))
	r.Comma, r.FieldsPerRecord, r.ReuseRecord = comma, -1, true
	r.TrimLeadingSpace = comma != '\t' // it would take empty cells for space
	return r
}

const cutMark = "…" // ends a line that was cut and then closed

// sayBroken says what is wrong with the quotes of a line.
func (b *logBook) sayBroken(err *csv.ParseError, start, line int) {
	at := b.place(line, 0)
	at.Column = 1 + utf8.RuneCountInString(at.Text[:max(0, min(err.Column-1, len(at.Text)))])
	switch {
	case errors.Is(err.Err, csv.ErrBareQuote):
		b.say(at, "quote_bare")
	case start == len(b.lines):
		b.cutAt(b.place(start, 1), `"`+string(b.comma)+cutMark)
	case line == start && at.Column <= len(at.Text):
		b.say(at, "quote_after")
	default:
		b.say(b.place(start, 1), "quote_open")
	}
}

// cutAt says that a line was cut; closing is what would mark it so.
func (b *logBook) cutAt(at program.Place, closing string) {
	if at.Line == len(b.lines) {
		b.closing = closing
	}
	if b.strict {
		b.say(at, "cut")
	} else {
		b.doubt(at, "cut")
	}
}

// logLine is one line of a log while it is read.
type logLine struct {
	*logBook
	reader *csv.Reader
	cells  []string
	above  int  // lines before those that the reader sees
	wrong  bool // an error was said
}

// read turns the line into an entry, or says why not.
func (l *logLine) read() {
	if l.empty() {
		return
	}
	if l.cut() {
		mark := cutMark
		if strings.HasSuffix(l.lines[len(l.lines)-1], `"`) { // nothing may follow in this cell
			mark = string(l.comma) + cutMark
		}
		l.cutAt(l.start(), mark)
		return
	}
	l.checkLength()
	e := program.Entry{Place: l.start(), Note: strings.Clone(unguarded(l.cell(columnNote)))}
	l.checkClient()
	l.readDate(&e)
	named := l.cell(columnExercise)
	_, known := l.exercises[named] // read before: spares a look at the words
	switch {
	case !known && l.words.isDone(named):
		l.readDone(&e)
	case !known && l.words.isMorning(named):
		l.readMorning(&e)
	default:
		l.readExercise(&e)
		l.readBands(&e)
		l.readAhead(&e)
		l.readSets(&e)
	}
	if !l.wrong && l.first(e) {
		l.keep(e)
	}
}

// among puts the line into one log of several, if there is one for it.
func (l *logLine) among(b *logBook) bool {
	if b != nil {
		l.logBook = b
	}
	return b != nil
}

func (l *logLine) empty() bool {
	for _, cell := range l.cells {
		if strings.TrimSpace(cell) != "" {
			return false
		}
	}
	return true
}

// cut says that the line ends before its end. A line that says done is whole. One
// that says morning is not: what was to follow may be no 0.
func (l *logLine) cut() bool {
	last := strings.TrimSpace(l.cells[len(l.cells)-1])
	short := len(l.cells) < len(l.columns)
	line, _ := l.reader.FieldPos(len(l.cells) - 1)
	open := l.above+line == len(l.lines) // nothing, not even a line break, follows
	if signed := l.columns[len(l.columns)-1] == columnClient; l.strict && short && signed {
		return true // a line that ends with whose it is, and does not
	}
	return last == cutMark || short && (strings.HasSuffix(last, cutMark) || open && !l.words.isDone(last))
}

// checkLength refuses cells that have no column: one comma too many moves all
// that follow it.
func (l *logLine) checkLength() {
	for i := len(l.columns); i < len(l.cells); i++ {
		if strings.TrimSpace(l.cells[i]) != "" {
			l.fault(l.spot(i), "more_cells")
			return
		}
	}
}

// index finds the cell of a column; -1: the line has none.
func (l *logLine) index(c column) int {
	for i, at := range l.columns {
		if at == c && i < len(l.cells) {
			return i
		}
	}
	return -1
}

// cell is what stands in a column; empty where the line has none.
func (l *logLine) cell(c column) string {
	if i := l.index(c); i >= 0 {
		return strings.TrimSpace(l.cells[i])
	}
	return ""
}

// at is the spot of a column's cell, or the line's start where it has none.
func (l *logLine) at(c column) program.Place {
	if i := l.index(c); i >= 0 {
		return l.spot(i)
	}
	return l.start()
}

// spot is the place of a cell by its index.
func (l *logLine) spot(i int) program.Place {
	line, column := l.reader.FieldPos(i)
	at := l.place(l.above+line, 0)
	at.Column = 1 + utf8.RuneCountInString(at.Text[:min(column-1, len(at.Text))])
	return at
}

func (l *logLine) start() program.Place {
	line, _ := l.reader.FieldPos(0)
	return l.place(l.above+line, 1)
}

// fault notes an error, after which the line is left out.
func (l *logLine) fault(at program.Place, wrong ...string) {
	l.wrong = true
	l.say(at, wrong...)
}
