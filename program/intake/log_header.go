package intake

import (
	"slices"
	"strings"
	"unicode"
)

// column is what a cell of a log is about.
type column int

const (
	columnUnread column = iota
	columnDate
	columnExercise
	columnSet
	columnBands
	columnHold
	columnReps
	columnRPE
	columnClean
	columnPain
	columnAhead
	columnNote
	columnClient
)

// columnNames are the names to write; what is read as well is in englishWords, and
// in the words of the studio's language.
var columnNames = [...]string{
	columnDate:     "date",
	columnExercise: "exercise",
	columnSet:      "set",
	columnBands:    "bands",
	columnHold:     "hold_s",
	columnReps:     "reps",
	columnRPE:      "rpe",
	columnClean:    "clean",
	columnPain:     "pain",
	columnAhead:    "ahead",
	columnNote:     "note",
	columnClient:   "client",
}

func (c column) String() string { return columnNames[c] }

// logColumns are those of a new log.
var logColumns = []column{columnDate, columnExercise, columnSet, columnBands, columnHold, columnReps,
	columnRPE, columnClean, columnPain, columnAhead, columnNote}

// LogHeader is the first line of a new log, without its line break.
func LogHeader() string { return strings.Join(namesOf(logColumns), ",") }

func namesOf(columns []column) []string {
	var all []string
	for _, c := range columns {
		all = append(all, c.String())
	}
	return all
}

// readHeader reads the line that names the columns, and gives the index of the
// first line after it. columns stand for a header that is missing; nil: it must
// be there. A log without any line has nothing to read.
func (b *logBook) readHeader(columns []column) (first int, ok bool) {
	at := slices.IndexFunc(b.lines, func(line string) bool { return strings.TrimSpace(line) != "" })
	if at < 0 {
		return 0, false
	}
	if sign, is := strings.CutPrefix(b.lines[at], "sep="); is && at+1 < len(b.lines) && sign != "" {
		at++ // what some spreadsheets write to tell others which sign divides cells
	}
	b.comma = dividing(b.lines[at])
	cells, err := newCSV(b.lines[at], b.comma).Read()
	startsWithDate := err == nil && unicode.IsDigit([]rune(cells[0] + "-")[0])
	switch {
	case startsWithDate && columns != nil:
		b.columns = columns
		return at, true
	case startsWithDate || err != nil:
		b.say(b.place(at+1, 1), "no_header", "header", b.header())
		return 0, false
	}
	return at + 1, b.nameColumns(cells, at+1)
}

// header is the usual first line, divided as this file is.
func (b *logBook) header() string { return strings.Join(namesOf(b.usual), string(b.comma)) }

func (b *logBook) nameColumns(cells []string, line int) bool {
	sound := true
	reader := newCSV(b.lines[line-1], b.comma)
	reader.Read()
	l := logLine{logBook: b, reader: reader, cells: cells, above: line - 1}
	for i, written := range cells {
		c := b.words.column(written)
		switch {
		case c == columnUnread && strings.TrimSpace(written) != "":
			l.doubt(l.spot(i), "unknown_column", "written", quote(strings.TrimSpace(written)),
				"offer", l.offer(strings.TrimSpace(written), namesOf(append(slices.Clone(logColumns), columnClient)), b.words.columnNames...))
		case c != columnUnread && slices.Contains(b.columns, c):
			l.say(l.spot(i), "second_column", "column", quote(c.String()))
			sound = false
		}
		b.columns = append(b.columns, c)
	}
	for _, c := range []column{columnDate, columnExercise} {
		if !slices.Contains(b.columns, c) {
			b.say(b.place(line, 1), "no_column", "column", quote(c.String()), "header", b.header())
			sound = false
		}
	}
	return sound
}

// dividing is the sign between the cells of a line: the one that is there most
// often outside quotes; a comma where none is.
func dividing(line string) rune {
	counts := map[rune]int{}
	quoted := false
	for _, r := range line {
		if r == '"' {
			quoted = !quoted
		}
		if !quoted {
			counts[r]++
		}
	}
	best := ','
	for _, r := range []rune{';', '\t'} {
		if counts[r] > counts[best] {
			best = r
		}
	}
	return best
}
