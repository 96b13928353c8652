package intake

import (
	"cmp"
	"strconv"
	"strings"

	"gatepost/program"
)

// fault is what is wrong with something written: a key of the words under fault:, then
// pairs of a placeholder's name and its value. Under the same key with _do stands what
// to write instead. The nil fault is none.
type fault []string

// in is the fault as a problem, said in some words.
func (f fault) in(words program.Words, at program.Place) program.Problem {
	return words.Problem(at, "fault."+f[0], f[1:]...)
}

// doubtIn is the fault as a warning.
func (f fault) doubtIn(words program.Words, at program.Place) program.Problem {
	return f.in(words, at).AsWarning()
}

// offerIn suggests the word that may have been meant, or lists what there is, as offer
// does, in some words.
func offerIn(words program.Words, written string, known []string) string {
	const most = 24
	best := nearest(written, known)
	switch {
	case best != "":
		return words.Say("fault.meant", "word", quote(best))
	case len(known) == 0:
		return words.Say("fault.known_none")
	case len(known) > most:
		return words.Say("fault.known_some", "words", strings.Join(known[:most], ", "))
	}
	return words.Say("fault.known", "words", strings.Join(known, ", "))
}

// plural is a fault's key for so many things.
func (w *logWords) plural(key string, n int) string {
	return strings.TrimPrefix(w.said().Plural("fault."+key, n), "fault.")
}

// counted is a fault of so many things, which fill its {count}.
func (w *logWords) counted(key string, n int, pairs ...string) fault {
	return append(fault{w.plural(key, n), "count", strconv.Itoa(n)}, pairs...)
}

// number writes a number with the decimal sign of the language.
func (w *logWords) number(x float64) string {
	return strings.Replace(short(x), ".", cmp.Or(w.said()["unit.decimal"], "."), 1)
}

// offer suggests what may have been meant: of what is known, or else what it may be
// called as well.
func (b *logBook) offer(written string, known []string, called ...string) string {
	if b.full() {
		return ""
	}
	if nearest(written, known) == "" && nearest(written, called) != "" {
		known = called
	}
	return offerIn(b.words.said(), written, known)
}

// say notes that something at a spot is wrong.
func (b *logBook) say(at program.Place, wrong ...string) { b.note(fault(wrong).in(b.words.said(), at)) }

// doubt notes that something at a spot is unusual.
func (b *logBook) doubt(at program.Place, wrong ...string) {
	b.note(fault(wrong).doubtIn(b.words.said(), at))
}

// note notes a problem, as a source does, in the words of the log.
func (b *logBook) note(p program.Problem) {
	if len(b.problems) == maxProblems {
		p = fault{"more"}.in(b.words.said(), program.Place{File: b.file})
	}
	if len(b.problems) <= maxProblems {
		b.problems = append(b.problems, p)
	}
}
