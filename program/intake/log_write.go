package intake

import (
	"bytes"
	"encoding/csv"
	"math"
	"slices"
	"strconv"
	"strings"

	"gatepost/program"
)

// Addition is what goes to the end of a log file.
type Addition struct {
	Bytes []byte
	Lines int  // new ones
	There int  // lines that the log has already, as they are
	Cut   bool // the file ended in the middle of a line; that line is closed first and stays unread
}

// ReadNewLines reads lines that are to be added to a log, as from standard
// input. Their header may be missing where their columns are those of the log, or
// of a new one where there is no log yet. Text around the lines, as in a mail, is
// said and not read. from is what problems call them.
func ReadNewLines(studio *program.Studio, a *program.Assessment, from string, lines, log []byte) (program.Log, program.Problems) {
	known := knownIn(studio, a)
	src, at, wrong := textSource(from, lines, maxFile)
	if src == nil {
		return program.Log{}, program.Problems{wrong.in(known.words.said(), at)}
	}
	columns := logColumns
	if old, _, _ := textSource(from, log, maxFile); old != nil {
		if b := newLogBook(old, known); b.hasHeader() {
			columns = b.columns
		}
	}
	b := newLogBook(src, known)
	b.strict = true
	b.skipText(columns)
	b.read(columns)
	src.problems.Sort()
	return b.log, src.problems
}

func (b *logBook) hasHeader() bool {
	_, ok := b.readHeader(nil)
	return ok
}

// AddToLog writes entries as lines for the end of a log, in its columns, and
// reads the result back: what would not read as an entry of its own there, such
// as a set that the log has already with other values, is a problem, and then there
// is no Addition. What the log has already as it is, is left out. log is the text of
// the file as it is; empty where there is none.
func AddToLog(studio *program.Studio, a *program.Assessment, file string, log []byte, add []program.Entry) (Addition, program.Problems) {
	known := knownIn(studio, a)
	src, at, wrong := textSource(file, log, maxFile)
	if halfRune(log) > 0 {
		src, at, wrong = nil, program.Place{File: file}, fault{"half"}
	}
	if src == nil {
		return Addition{}, program.Problems{wrong.in(known.words.said(), at)}
	}
	old := newLogBook(src, known)
	old.read(nil)
	w := logWriter{columns: old.columns, comma: old.comma, crlf: bytes.Contains(log, []byte("\r\n"))}
	switch {
	case old.comma == 0: // nothing is written yet
		w.columns, w.comma = logColumns, ','
		w.write(namesOf(logColumns))
	case !slices.Contains(old.columns, columnExercise) || len(src.problems) > maxProblems:
		src.problems.Sort()
		return Addition{}, src.problems
	}
	news := old.news(add)
	if news.problems.Stop() || len(news.entries) == 0 {
		return Addition{There: news.there}, news.problems
	}
	w.close(src.lines, old.closing)
	for i := range news.entries {
		w.entry(&news.entries[i])
	}
	if len(w.missing) > 0 {
		return Addition{}, program.Problems{old.lacks(w.missing[0])}
	}
	added := Addition{Bytes: w.bytes(), Lines: len(news.entries), There: news.there, Cut: old.closing != ""}
	return added, append(news.problems, checkAddition(studio, a, file, log, added.Bytes, setsOf(old.log.Entries)+setsOf(news.entries))...)
}

// LogLacks is a problem for each column that a log has not, of those that a
// session can need; nil where there is no log yet. The set's number is not needed. A
// lean without its distance is read as printed: that column is a warning.
func LogLacks(studio *program.Studio, file string, log []byte) program.Problems {
	words := newLogWords(&studio.Library)
	src, at, wrong := textSource(file, log, maxFile)
	if src == nil {
		return program.Problems{wrong.in(words.said(), at)}
	}
	b := newLogBook(src, &logKnown{words: words})
	if !b.hasHeader() {
		return src.problems
	}
	var problems program.Problems
	for _, c := range logColumns {
		if c != columnSet && !slices.Contains(b.columns, c) {
			p := b.lacks(c)
			p.Warning = c == columnAhead
			problems = append(problems, p)
		}
	}
	return problems
}

func (b *logBook) lacks(c column) program.Problem {
	return fault{"lacks_column", "column", c.String(), "sign", string(b.comma)}.in(b.words.said(), b.place(1, 1))
}

// checkAddition reads the log as it will be, which must have so many sets, and gives
// what is wrong with the new lines.
func checkAddition(studio *program.Studio, a *program.Assessment, file string, log, add []byte, sets int) program.Problems {
	after, problems := ReadLog(studio, a, file, append(slices.Clip(log), add...))
	lines := bytes.Count(log, []byte("\n"))
	problems = slices.DeleteFunc(problems, func(p program.Problem) bool { return p.Line <= lines || p.Warning })
	if setsOf(after.Entries) != sets && !problems.Stop() {
		problems = append(problems, fault{"unlike"}.in(studio.Library.Words, program.Place{File: file}))
	}
	return problems
}

// setsOf counts the sets of some entries; a session as printed counts as one.
func setsOf(entries []program.Entry) int {
	n := 0
	for i := range entries {
		n += max(1, len(entries[i].Sets))
	}
	return n
}

// logWriter writes lines of a log.
type logWriter struct {
	columns []column
	comma   rune
	crlf    bool
	missing []column // that the log lacks for what is to be written
	start   string
	lines   bytes.Buffer
	cells   []string
}

// close ends the last line of a file that has no line break there.
func (w *logWriter) close(lines []string, closing string) {
	if last := lines[len(lines)-1]; last != "" {
		w.start = closing + "\n"
		if w.crlf {
			w.start = closing + "\r\n"
		}
	}
}

func (w *logWriter) bytes() []byte { return append([]byte(w.start), w.lines.Bytes()...) }

func (w *logWriter) write(cells []string) {
	out := csv.NewWriter(&w.lines)
	out.Comma, out.UseCRLF = w.comma, w.crlf
	out.Write(cells) // to memory, which does not fail
	out.Flush()
}

// set puts a value into its column.
func (w *logWriter) set(c column, value string) {
	i := slices.Index(w.columns, c)
	switch {
	case i >= 0:
		w.cells[i] = value
	case value != "":
		w.missing = append(w.missing, c)
	}
}

// entry writes one line.
func (w *logWriter) entry(e *program.Entry) {
	w.cells = make([]string, len(w.columns))
	w.set(columnDate, e.Date.String())
	w.set(columnNote, guarded(e.Note))
	w.set(columnPain, painCell(e.Sets))
	switch {
	case e.AsPrinted:
		w.set(columnExercise, doneWord)
		w.write(w.cells)
		return
	case e.Morning:
		w.set(columnExercise, morningWord)
		w.write(w.cells)
		return
	case e.Step != "":
		w.set(columnExercise, e.Step)
	default:
		w.set(columnExercise, e.Exercise)
	}
	if len(e.Sets) == 1 && e.Sets[0].Number > 0 {
		w.set(columnSet, strconv.Itoa(e.Sets[0].Number))
	}
	w.set(columnBands, bandsCell(e))
	w.set(columnAhead, aheadCell(e))
	c, amounts := amountCell(e.Sets)
	w.set(c, amounts)
	if tries := triesCell(e.Sets); tries != "" {
		w.set(columnReps, tries)
	}
	w.set(columnRPE, rpeCell(e.Sets))
	w.set(columnClean, cleanCell(e.Sets))
	w.write(w.cells)
}

func bandsCell(e *program.Entry) string {
	switch {
	case e.Scale > 0:
		return ScaleCell(e.Scale)
	case !e.RigGiven:
		return ""
	case len(e.Rig.Bands) > 0 && !e.DropGiven && e.Rig.Pull == 0:
		return strings.Join(e.Rig.Bands, " + ")
	}
	return RigCell(e.Rig)
}

// RigCell is a rig as a log has it, in English: bands with their strap, pads, a block, or
// that nothing helped.
func RigCell(r program.Rig) string {
	switch {
	case r.Pad > 0:
		return "pad " + inCentimetres(r.Pad)
	case r.Block > 0:
		return "block " + inCentimetres(r.Block)
	case r.Pull > 0:
		return strings.Join(r.Bands, " + ") + " " + inKilograms(r.Pull)
	case r.Free():
		return "free"
	}
	return strings.Join(r.Bands, " + ") + " strap " + short(1000*r.Drop/10) + " cm"
}

// inKilograms writes a force to the gram.
func inKilograms(newtons float64) string {
	return short(math.Round(newtons*1000/standardGravity)/1000) + " kg"
}

// inCentimetres writes a length to the millimetre.
func inCentimetres(metres float64) string { return short(math.Round(1000*metres)/10) + " cm" }
