package intake

import (
	"iter"
	"slices"
	"strconv"

	"gatepost/program"
)

// lineKey is what may stand in a log once only: a numbered set of an exercise
// with its bands, or, without an exercise, a session done.
type lineKey struct {
	day      program.Date
	exercise string
	rig      string
	set      int
}

// seen is what a log has so far.
type seen struct {
	keys     map[lineKey]int       // number of the line
	days     map[program.Date]int  // number of each day's first line
	previous program.Date          // the day of the line above
	again    map[program.Date]bool // the day was said to be there twice
	texts    map[string]bool       // new lines, as they are written
}

func newSeen(lines int) seen {
	return seen{keys: make(map[lineKey]int, lines), days: map[program.Date]int{}, again: map[program.Date]bool{}, texts: map[string]bool{}}
}

// first notes that an entry stands in the log, and says whether it does so for
// the first time.
func (l *logLine) first(e program.Entry) bool {
	if l.isAgain(&e) {
		return false
	}
	if e.Morning {
		return true // may be written again: the higher counts
	}
	l.checkDayAgain(&e)
	for key := range keysOf(&e) {
		if line, twice := l.keys[key]; twice {
			wrong := "set_twice"
			if e.AsPrinted {
				wrong = "session_twice"
			}
			l.fault(e.Place, key.fault(wrong, line)...)
			return false
		}
		l.keys[key] = e.Place.Line
	}
	return true
}

// keysOf are the keys of an entry; a set without a number has none.
func keysOf(e *program.Entry) iter.Seq[lineKey] {
	return func(yield func(lineKey) bool) {
		if e.AsPrinted {
			yield(lineKey{day: e.Date})
			return
		}
		key := lineKey{day: e.Date, exercise: e.Exercise, rig: rigKey(e)}
		for _, s := range e.Sets {
			if key.set = s.Number; s.Number > 0 && !yield(key) {
				return
			}
		}
	}
}

// rigKey tells sets of one exercise apart: by the bands that were named, or the
// distance of a lean, or the weight on a scale.
func rigKey(e *program.Entry) string {
	switch ahead := aheadCell(e); {
	case e.Scale > 0:
		return ScaleCell(e.Scale)
	case !e.RigGiven:
		return ahead
	case ahead == "":
		return bandsCell(e)
	default:
		return bandsCell(e) + ", " + ahead
	}
}

// fault is something wrong with what a key names, that stands on another line too.
func (k lineKey) fault(key string, line int) fault {
	return fault{key, "set", strconv.Itoa(k.set), "exercise", k.exercise, "day", k.day.String(), "line", strconv.Itoa(line)}
}

// checkDayAgain warns where sets without numbers, which may well be equal,
// return after another day's lines: a session pasted in twice.
func (l *logLine) checkDayAgain(e *program.Entry) {
	firstLine, known := l.days[e.Date]
	returns := known && l.previous != e.Date
	l.previous = e.Date
	if !known {
		l.days[e.Date] = e.Place.Line
	}
	if returns && !l.again[e.Date] && slices.ContainsFunc(l.log.Entries, func(o program.Entry) bool { return same(&o, e) }) {
		l.again[e.Date] = true
		l.doubt(e.Place, lineKey{day: e.Date}.fault("day_again", firstLine)...)
	}
}

// same says that two lines tell the same of sets without numbers.
func same(a, b *program.Entry) bool {
	return a.Date == b.Date && !a.AsPrinted && !a.Morning && a.Exercise == b.Exercise && rigKey(a) == rigKey(b) &&
		a.Sets[0].Number == 0 && slices.Equal(a.Sets, b.Sets)
}

// checkAge says where lines are older than the assessment, which happens when a
// client is assessed anew, or by a slip of the year.
func (b *logBook) checkAge() {
	measured := b.known.client.Measured
	count, at := 0, program.Place{}
	for i := range b.log.Entries {
		if e := &b.log.Entries[i]; e.Date < measured {
			if count == 0 {
				at = e.Place
			}
			count++
		}
	}
	if count > 0 {
		b.doubt(at, b.words.counted("older", count, "day", measured.String())...)
	}
}

// NotYet is an error for each day of a log that has not come yet.
func NotYet(lib *program.Library, log program.Log, today program.Date) program.Problems {
	var problems program.Problems
	said := map[program.Date]bool{}
	for i := range log.Entries {
		e := &log.Entries[i]
		if e.Date > today && !said[e.Date] {
			said[e.Date] = true
			problems = append(problems, fault{"not_yet", "day", e.Date.String(), "today", today.String()}.in(lib.Words, e.Place))
		}
	}
	return problems
}
