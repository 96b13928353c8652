package intake

import (
	"errors"
	"path"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"

	"gatepost/program"
)

// logName is the log's file in a client's folder.
const logName = "log.csv"

// A log is a table in CSV, as RFC 4180 and spreadsheets write it: commas,
// semicolons or tabs between the cells, CRLF or LF between the lines, quotes
// around a cell that has one of these in it. The first line names the columns,
// in any order; all but date and exercise may be left out:
//
//	date      the day: 2027-01-11, or in the order that studio.yaml gives
//	exercise  an exercise, or a step of the goal's road map; or done: the whole
//	          session was done as printed, and only pain and note may follow; or
//	          morning: the joints on the morning of that date, after the last
//	          session, and only pain and note may follow; without pain it was 0
//	          at all of them
//	set       the number of the set; empty where the line has all sets
//	bands     narrow + middle, strap 20 cm; free; empty: as printed
//	hold_s    seconds of a hold, 12; of all sets in one cell, 12 12 11 9 or 4 x 12;
//	          - for a set not written down, 0 for one tried and not held
//	reps      repetitions, in the same way
//	rpe       effort, 1 to 10; a single number is that of the line's last set, and
//	          as many numbers as sets are one each
//	clean     yes: every set of the line; no: its last set broke; or one word a set
//	pain      0 to 10, or with the joint: wrists 2 elbows 1; of the last set, or one
//	          part a set with | between them
//	ahead     how far a lean went, 18 cm, 18 or 7 in; empty: as printed
//	note      anything
//	client    a name, to be sure that the line is in the right log
//
// These names, yes and no, done and morning, and the joints are understood in English
// and in the studio's language, by its words under log:.
//
// A number may have a decimal point or a decimal comma. Lines may stand in any
// order. The sets of one exercise are numbered through the day, or the bands tell
// them apart. Lines of one exercise in a row, numbered on, become one entry: a
// line a set is read as the whole exercise in one cell would be.
//
// A line with an error is said and left out, and the others are read. A line
// without numbers is kept and said. The last line, where it has fewer cells than
// the header and no line break after it, was cut in the middle, as by a crash:
// it is said and not read, for half a number is a wrong number. A cut line that
// was closed later ends in the sign …, and is not read either.
type logBook struct {
	*source
	words   *logWords
	known   *logKnown
	columns []column                // of each cell of a line, in order
	usual   []column                // those of a header, as advice shows it
	choose  func(*logLine) *logBook // of several logs the one that a line belongs to; nil: this one
	comma   rune
	log     program.Log
	closing string // what ends the last line, where that was cut in the middle
	strict  bool   // a line that was cut is an error: it is not yet in the log
	seen

	// What was read before, for a log repeats itself.
	lastWritten string
	lastDay     program.Date
	exercises   map[string]exerciseDone
	rigs        map[string]rigDone
	numbers     map[string]float64
	pains       map[string]program.Pain

	room []program.SetDone // sets are taken from here, to spare allocations
}

// readDone reads the logs and the kept plans of clients, side by side. A log is
// read once the assessment is sound, which says what bands and steps there are.
func (f *folder) readDone(lib *program.Library, clients []*client) {
	own := make([]*folder, len(clients))
	words := newLogWords(lib)
	words.said = f.said
	var next atomic.Int64
	var wait sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(clients); i = int(next.Add(1)) - 1 {
				own[i] = f.beside()
				own[i].readLog(words, clients[i])
				own[i].readPlans(clients[i])
			}
		})
	}
	wait.Wait()
	for _, o := range own {
		f.problems = append(f.problems, o.problems...)
	}
}

func (f *folder) readLog(words *logWords, c *client) {
	dir := path.Join(clientsFolder, c.Slug)
	file := path.Join(dir, logName)
	switch {
	case !f.exists(file):
		f.checkLogName(words, dir)
		return
	case !c.sound() || c.waiting:
		return
	}
	data, err := readFile(f.coach, file, maxFile)
	if err != nil {
		wrong := fault{"unreadable", "reason", reason(err)}
		if errors.Is(err, errNotPlain) {
			wrong = fault{"not_plain"}
		}
		f.problems = append(f.problems, wrong.in(words.said(), program.Place{File: file}))
		return
	}
	src, problems := logSource(words, file, data)
	f.problems = append(f.problems, problems...)
	if src != nil {
		b := newLogBook(src, newLogKnown(&c.library.Library, words, c.Assessment, f.dates))
		b.read(nil)
		c.log, c.Log = src, b.log
	}
}

// checkLogName warns of files that may have been meant as the log.
func (f *folder) checkLogName(words *logWords, dir string) {
	for _, e := range f.entries(f.coach, dir) {
		name := strings.ToLower(e.Name())
		base := strings.TrimSuffix(name, path.Ext(name))
		if base == "log" || base == logName || path.Ext(name) == ".csv" && distance(base, "log") <= 1 {
			f.problems = append(f.problems, fault{"not_the_log", "file", logName}.doubtIn(words.said(), program.Place{File: path.Join(dir, e.Name())}))
		}
	}
}

// ReadLog reads the text of a client's log as Read does. file is what problems
// call it. The studio and the client must have been read without errors.
func ReadLog(studio *program.Studio, a *program.Assessment, file string, text []byte) (program.Log, program.Problems) {
	known := knownIn(studio, a)
	src, problems := logSource(known.words, file, text)
	if src == nil {
		return program.Log{File: file}, problems
	}
	b := newLogBook(src, known)
	b.read(nil)
	src.problems.Sort()
	return b.log, src.problems
}

// knownIn is what a client's log may name.
func knownIn(studio *program.Studio, a *program.Assessment) *logKnown {
	return knownWith(studio, newLogWords(&studio.Library), a)
}

func knownWith(studio *program.Studio, words *logWords, a *program.Assessment) *logKnown {
	return newLogKnown(&studio.Library, words, a, studio.Coach.Dates)
}

func newLogBook(src *source, known *logKnown) *logBook { return bookOf(src, known, len(src.lines)) }

// bookOf is a log with room for about so many lines.
func bookOf(src *source, known *logKnown, lines int) *logBook {
	return &logBook{source: src, words: known.words, known: known, usual: logColumns, log: program.Log{File: src.file},
		seen: newSeen(lines), exercises: map[string]exerciseDone{}, rigs: map[string]rigDone{},
		numbers: map[string]float64{}, pains: map[string]program.Pain{}}
}

// read reads the whole log; columns stand for a header that is missing.
func (b *logBook) read(columns []column) {
	if first, ok := b.readHeader(columns); ok {
		b.readLines(first)
		b.checkAge()
		b.log.Entries = snug(b.log.Entries)
	}
}
