package intake

import (
	"regexp"
	"slices"
	"strings"
)

// skipText takes away what stands around the lines of a log, as a mail's greeting
// does, and says so, once it has mended what a mail program did to them. The log begins
// with a line that names a column, or else with the first one that reads like an entry;
// it ends with the last such line. Lines keep their numbers. columns are those of a log
// without a header.
func (b *logBook) skipText(columns []column) {
	b.unquote()
	first := slices.IndexFunc(b.lines, func(line string) bool { return b.namedIn(line) != nil || b.isEntry(line, columns) })
	if first < 0 {
		return
	}
	b.skip(0, first, "text_above")
	named := b.namedIn(b.lines[first])
	if named != nil {
		columns = named
		for i := first + 1; i < len(b.lines); i++ {
			if b.lines[i] == b.lines[first] { // two exports, one after the other
				b.lines[i] = ""
			}
		}
	}
	b.mend(first, columns)
	last := b.endOfLog(first, columns)
	if named != nil && named[len(named)-1] == columnClient {
		b.skipBetween(first+1, last, columns)
	}
	b.skip(last, len(b.lines), "text_below")
}

// skipBetween takes away text between lines that a phone sent, as where a reply quotes
// what it answers: such lines end with whose they are, so that none is taken for a part
// of the one above it.
func (b *logBook) skipBetween(first, last int, columns []column) {
	quotes := 0
	text := slices.Clone(b.lines)
	for i := first; i < last; i++ {
		if quotes%2 == 1 || b.isEntry(b.lines[i], columns) {
			quotes += strings.Count(b.lines[i], `"`)
			text[i] = ""
		}
	}
	b.skipAll(text, first, last, "text_between")
}

// namedIn are the columns of a line that names one at least; nil: it names none.
func (b *logBook) namedIn(line string) []column {
	cells, err := newCSV(line, dividing(line)).Read()
	if err != nil || len(cells) < 2 {
		return nil
	}
	columns := make([]column, len(cells))
	for i, cell := range cells {
		columns[i] = b.words.column(cell)
	}
	if slices.Max(columns) == columnUnread {
		return nil
	}
	return columns
}

var startsLikeDate = regexp.MustCompile(`^[0-9]{1,4}[-./][0-9 ]|^[0-9]{5}$`)

// isEntry reports whether a line reads like one of a log: with a date, or with
// something that can be done, in the cell for it.
func (b *logBook) isEntry(line string, columns []column) bool {
	r := newCSV(line, dividing(line))
	r.LazyQuotes = true // a note may go on in the next line
	cells, err := r.Read()
	if err != nil {
		return false
	}
	cell := func(c column) string {
		if i := slices.Index(columns, c); i >= 0 && i < len(cells) {
			return strings.TrimSpace(cells[i])
		}
		return ""
	}
	what := cell(columnExercise)
	_, known := b.known.exercises.ids[fold(what)]
	return startsLikeDate.MatchString(cell(columnDate)) || known || b.words.isDone(what) || b.words.isMorning(what)
}

// endOfLog is the index of the first line after the last entry. A quoted cell goes on
// until its quote is closed.
func (b *logBook) endOfLog(first int, columns []column) int {
	last := len(b.lines) - 1
	for last > first && !b.isEntry(b.lines[last], columns) {
		last--
	}
	quotes := 0
	for i := first; i < len(b.lines); i++ {
		quotes += strings.Count(b.lines[i], `"`)
		if i >= last && quotes%2 == 0 {
			return i + 1
		}
	}
	return len(b.lines)
}

// skip empties lines, and says how many there were.
func (b *logBook) skip(from, to int, said string) { b.skipAll(b.lines, from, to, said) }

// skipAll empties those lines that are not empty in text.
func (b *logBook) skipAll(text []string, from, to int, said string) {
	count, at := 0, 0
	skipped := func(i int) bool {
		line := strings.TrimSpace(text[i])
		return line != "" && !strings.HasPrefix(line, "sep=")
	}
	for i := from; i < to; i++ {
		if !skipped(i) {
			continue
		}
		if count == 0 {
			at = i
		}
		count++
	}
	if count == 0 {
		return
	}
	b.doubt(b.place(at+1, 1), b.words.counted(said, count)...)
	for i := from; i < to; i++ {
		if skipped(i) {
			b.lines[i] = ""
		}
	}
}
