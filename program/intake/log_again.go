package intake

import (
	"cmp"
	"strings"

	"gatepost/program"
)

// logNews is what of some entries a log has not.
type logNews struct {
	entries  []program.Entry
	there    int // lines that the log has as they are
	problems program.Problems
	words    program.Words
}

// logged is what a log has of some days.
type logged struct {
	*logBook
	sets  map[lineKey]setLogged
	lines map[string]int                  // lines whose sets have no number, as they are written, and how often
	loose map[lineKey]int                 // where such a line of an exercise stands
	other map[lineKey]int                 // where a set stands, whatever its bands
	done  map[program.Date]*program.Entry // sessions done
	one   map[lineKey]lineKey             // a set whatever its bands -> its key; of several the last
	days  map[program.Date]bool           // that are looked at
}

type setLogged struct {
	program.SetDone
	note string
}

// news compares entries with a log, so that the same export can be given again: a
// line that is there as it is, is left out; a set that is there with other values is
// a problem, since nobody can tell which of the two is right.
func (b *logBook) news(add []program.Entry) logNews {
	had := logged{b, map[lineKey]setLogged{}, map[string]int{}, map[lineKey]int{}, map[lineKey]int{}, map[program.Date]*program.Entry{}, map[lineKey]lineKey{}, map[program.Date]bool{}}
	for i := range add {
		had.days[add[i].Date] = true
	}
	for i := range b.log.Entries {
		if e := &b.log.Entries[i]; had.days[e.Date] {
			had.take(e)
		}
	}
	n := logNews{words: b.words.said()}
	for i := range add {
		if e := &add[i]; hasNumbers(e) {
			n.numbered(&had, e)
		} else {
			n.plain(&had, e)
		}
	}
	return n
}

// hasNumbers reports whether the sets of an entry are numbered, be it by their order.
func hasNumbers(e *program.Entry) bool {
	return !e.AsPrinted && !e.Morning && (len(e.Sets) > 1 || len(e.Sets) == 1 && e.Sets[0].Number > 0)
}

// saysNoMore reports whether new values of a set are in the old ones. What a new line
// leaves out, the log may have from elsewhere: the card, or the coach's own eyes.
func saysNoMore(new, old program.SetDone) bool {
	pain := func(new, old int) bool { return new < 0 || new == old }
	p, q := new.Pain, old.Pain
	return new.Seconds == old.Seconds && new.Reps == old.Reps && new.Tries == old.Tries &&
		(new.RPE == 0 || new.RPE == old.RPE) && (new.Clean == program.CleanUnsaid || new.Clean == old.Clean) &&
		(!p.Given || q.Given && pain(p.Wrists, q.Wrists) && pain(p.Elbows, q.Elbows) && pain(p.Shoulders, q.Shoulders) && pain(p.Other, q.Other))
}

// sameNote reports whether a new note says nothing that the old one does not; a mail
// may have broken it in other places.
func sameNote(new, old string) bool {
	return new == "" || strings.Join(strings.Fields(new), " ") == strings.Join(strings.Fields(old), " ")
}

// ofDay is what a session done says of the day: pain, or nothing.
func ofDay(e *program.Entry) program.SetDone {
	if len(e.Sets) == 0 {
		return program.SetDone{}
	}
	return e.Sets[0]
}

// keyOf is the key of an entry's set by its index.
func keyOf(e *program.Entry, i int) lineKey {
	return lineKey{day: e.Date, exercise: e.Exercise, rig: rigKey(e), set: cmp.Or(e.Sets[i].Number, i+1)}
}

// anyRig is a key without its bands.
func (k lineKey) anyRig() lineKey { k.rig = ""; return k }

func (h *logged) take(e *program.Entry) {
	switch {
	case hasNumbers(e):
		for i, s := range e.Sets {
			s.Number = 0
			h.sets[keyOf(e, i)] = setLogged{s, e.Note}
			h.other[keyOf(e, i).anyRig()] = h.keys[keyOf(e, i)]
			h.one[keyOf(e, i).anyRig()] = keyOf(e, i)
		}
		return
	case e.AsPrinted:
		h.done[e.Date] = e
	case !e.Morning:
		h.loose[lineKey{day: e.Date, exercise: e.Exercise, rig: rigKey(e)}] = e.Place.Line
	}
	h.lines[written(e)]++
}

// written is an entry as a line.
func written(e *program.Entry) string {
	w := logWriter{columns: logColumns, comma: ','}
	w.entry(e)
	return w.lines.String()
}

// plain looks at a line whose set has no number, a session done, or a morning.
func (n *logNews) plain(had *logged, e *program.Entry) {
	line := written(e)
	if had.lines[line] > 0 {
		had.lines[line]--
		n.there++
		return
	}
	if done := had.done[e.Date]; e.AsPrinted && done != nil && saysNoMore(ofDay(e), ofDay(done)) && sameNote(e.Note, done.Note) {
		n.there++
		return
	}
	n.entries = append(n.entries, *e)
	switch {
	case e.Morning: // may be written again: the higher counts
	case e.AsPrinted && had.done[e.Date] != nil:
		n.changed(e, "session_changed", lineKey{day: e.Date}, had.done[e.Date].Place.Line)
	case !e.AsPrinted:
		if at := had.loose[lineKey{day: e.Date, exercise: e.Exercise, rig: rigKey(e)}]; at > 0 {
			n.doubt(e, "another_set", lineKey{day: e.Date, exercise: e.Exercise}, at)
		}
	}
}

// numbered looks at an entry with numbered sets, and takes those that are new.
func (n *logNews) numbered(had *logged, e *program.Entry) {
	rest := *e
	rest.Sets = nil
	for i, s := range e.Sets {
		key, number := keyOf(e, i), s.Number
		s.Number = 0
		old, there := had.sets[key]
		if other := had.sets[had.one[key]]; !there && key.rig == "" && saysNoMore(s, other.SetDone) && sameNote(e.Note, other.note) {
			old, there = other, had.one[key] != lineKey{}
		}
		switch {
		case !there:
			s.Number = cmp.Or(number, i+1)
			rest.Sets = append(rest.Sets, s)
			n.otherBands(had, e, key, len(rest.Sets) == 1)
		case !saysNoMore(s, old.SetDone) || i == 0 && !sameNote(e.Note, old.note):
			n.changed(e, "set_changed", key, had.keys[key])
			return
		case i == 0:
			rest.Note = ""
		}
	}
	switch len(rest.Sets) {
	case 0:
		n.there++
	case len(e.Sets):
		n.entries = append(n.entries, *e)
	default: // sets that follow others are a line each, with their numbers
		for _, s := range rest.Sets {
			one := rest
			one.Sets = []program.SetDone{s}
			n.entries = append(n.entries, one)
			rest.Note = ""
		}
	}
}

// otherBands says where the log has a set of the same number, with other bands or
// another lean.
func (n *logNews) otherBands(had *logged, e *program.Entry, key lineKey, first bool) {
	if at := had.other[key.anyRig()]; at > 0 && first {
		if e.Ahead > 0 {
			n.doubt(e, "other_lean", key, at)
		} else {
			n.doubt(e, "other_bands", key, at)
		}
	}
}

// changed says what is in the log already, on a line of it, with other values.
func (n *logNews) changed(e *program.Entry, wrong string, key lineKey, line int) {
	n.problems = append(n.problems, key.fault(wrong, line).in(n.words, e.Place))
}

func (n *logNews) doubt(e *program.Entry, wrong string, key lineKey, line int) {
	n.problems = append(n.problems, key.fault(wrong, line).doubtIn(n.words, e.Place))
}
