package intake

import (
	"cmp"
	"regexp"
	"slices"
	"strings"
	"sync"
	"unicode"

	"gatepost/program"
)

// What may stand in place of an exercise, in any case.
const (
	doneWord    = "done"
	morningWord = "morning"
)

// logWords are what a log may be written in: English, which logs are written in by
// this program, and the studio's own language beside it. Of that the words are in
// the words file, under log:, several of one meaning divided by commas.
type logWords struct {
	columns            map[string]column
	clean              map[string]program.Clean
	done, morning      []string
	free, none, missed []string
	hurts              []string // that an answer about effort may not hold
	joints             [4][]string
	columnNames        []string // in the studio's language, to offer
	jointNames         []string // one of each, to offer
	strap, beside      *regexp.Regexp
	pad, block         *regexp.Regexp
	scale              *regexp.Regexp
	said               sayings // in which faults are said
}

// englishWords are always understood, by their keys in the words file.
var englishWords = map[string][]string{
	"date":      {"date"},
	"exercise":  {"exercise", "step"},
	"set":       {"set"},
	"bands":     {"bands", "band"},
	"hold_s":    {"hold_s", "hold", "hold-s", "hold-(s)", "seconds"},
	"reps":      {"reps", "repetitions"},
	"rpe":       {"rpe"},
	"clean":     {"clean"},
	"pain":      {"pain"},
	"ahead":     {"ahead", "ahead-cm", "ahead-(cm)", "ahead_cm", "lean"},
	"note":      {"note", "notes"},
	"client":    {"client", "name"},
	"clean_yes": {"yes", "y", "true", "1", "✓", "✔"},
	"clean_no":  {"no", "n", "false", "0", "✗", "✘"},
	"done":      {doneWord},
	"morning":   {morningWord},
	"free":      {"free", "no-band", "without"},
	"none":      {"none", "no", "nothing"},
	"strap":     {"strap", "drop"},
	"pad":       {"pad", "pads"},
	"block":     {"block", "blocks"},
	"scale":     {"scale", "toes"},
	"and":       {"and"},
	"missed":    {"missed", "skipped", "ill", "sick", "off", "rest", "not-done"},
	"wrists":    {"wrists"},
	"elbows":    {"elbows"},
	"shoulders": {"shoulders"},
	"other":     {"other"},
	"hurts":     {"pain", "sore", "hurt", "ache", "wrist", "elbow", "shoulder"},
}

// wordsOf are the words of one meaning: in English, and in the language of some words.
func wordsOf(words program.Words, key string) []string {
	all := slices.Clone(englishWords[key])
	for word := range strings.SplitSeq(words["log."+key], ",") {
		if word = fold(strings.TrimSpace(word)); word != "" && !slices.Contains(all, word) {
			all = append(all, word)
		}
	}
	return all
}

func newLogWords(lib *program.Library) *logWords {
	of := func(key string) []string { return wordsOf(lib.Words, key) }
	w := &logWords{said: func() program.Words { return lib.Words }, columns: map[string]column{}, clean: map[string]program.Clean{}, done: of("done"), morning: of("morning"),
		free: of("free"), none: of("none"), missed: of("missed"), hurts: of("hurts"),
		joints: [4][]string{of("wrists"), of("elbows"), of("shoulders"), of("other")}}
	for _, c := range append(slices.Clone(logColumns), columnClient) {
		w.columnNames = append(w.columnNames, of(c.String())[len(englishWords[c.String()]):]...)
		for _, word := range of(c.String()) {
			if w.columns[word] == columnUnread {
				w.columns[word] = c
			}
		}
	}
	for _, word := range of("clean_no") {
		w.clean[word] = program.CleanNo
	}
	for _, word := range of("clean_yes") {
		w.clean[word] = program.CleanYes
	}
	for i := range joints {
		name, _, _ := strings.Cut(lib.Words["log."+joints[i]], ",")
		w.jointNames = append(w.jointNames, cmp.Or(name, joints[i]))
	}
	w.strap = compiled(`(?i)(?:^|[\s,;+])(?:` + anyOf(of("strap")) + `)\s*([0-9][0-9.,]*)\s*(cm|m|mm|in|ft)$`)
	w.pad, w.block, w.scale = onHeight(of("pad")), onHeight(of("block")), onHeight(of("scale"))
	w.beside = compiled(`(?i)\s*[+,;&/]\s*|\s+(?:` + anyOf(of("and")) + `)\s+`)
	return w
}

// isNone reports whether a word says that there is nothing of the kind.
func isNone(words program.Words, written string) bool {
	return slices.Contains(wordsOf(words, "none"), fold(strings.TrimSpace(written)))
}

// onHeight is a height with one of some words before it or after.
func onHeight(words []string) *regexp.Regexp {
	return compiled(`(?i)^(?:` + anyOf(words) + `)[\s:]*([0-9].*)$|^([0-9].*?)[\s-]*(?:` + anyOf(words) + `)$`)
}

// compiled is an expression, compiled once: all logs of a studio are written in the same words.
func compiled(expression string) *regexp.Regexp {
	known, ok := expressions.Load(expression)
	if !ok {
		known, _ = expressions.LoadOrStore(expression, regexp.MustCompile(expression))
	}
	return known.(*regexp.Regexp)
}

var expressions sync.Map // *regexp.Regexp by what it was compiled from

// anyOf is a regular expression for one of some words.
func anyOf(words []string) string {
	quoted := make([]string, len(words))
	for i, word := range words {
		quoted[i] = strings.ReplaceAll(regexp.QuoteMeta(word), "-", `[\s-]`)
	}
	return strings.Join(quoted, "|")
}

func (w *logWords) column(written string) column { return w.columns[fold(strings.TrimSpace(written))] }

func (w *logWords) isDone(written string) bool { return slices.Contains(w.done, fold(written)) }

func (w *logWords) isMorning(written string) bool { return slices.Contains(w.morning, fold(written)) }

// isFree reports whether a cell of bands says that none was hung.
func (w *logWords) isFree(written string) bool {
	return isDash(written) || written == "0" || slices.Contains(w.free, fold(written)) || slices.Contains(w.none, fold(written))
}

// joint is the index of a joint's name; a whole word counts before the beginning of
// one. -1: there is none.
func (w *logWords) joint(written string) int {
	written = fold(written)
	for i := range w.joints {
		if slices.Contains(w.joints[i], written) {
			return i
		}
	}
	for i := range w.joints {
		if slices.ContainsFunc(w.joints[i], func(word string) bool { return strings.HasPrefix(word, written) }) {
			return i
		}
	}
	return -1
}

// saysPain reports whether what was written about effort speaks of pain or a joint.
func (w *logWords) saysPain(written string) bool {
	if strings.IndexFunc(written, unicode.IsLetter) < 0 {
		return false // most cells are numbers
	}
	for word := range strings.SplitSeq(fold(written), "-") {
		begins := func(hurts string) bool { return strings.HasPrefix(word, hurts) }
		if slices.ContainsFunc(w.hurts, begins) || slices.ContainsFunc(w.joints[:3], func(joint []string) bool { return slices.ContainsFunc(joint, begins) }) {
			return true
		}
	}
	return false
}

// readDone reads a session done as printed; its pain is kept in a set of its own.
func (l *logLine) readDone(e *program.Entry) {
	e.AsPrinted = true
	if l.refusesNumbers("done_numbers") {
		return
	}
	if l.cell(columnPain) != "" {
		e.Sets = l.sets(1)
		l.readPain(e.Sets)
	}
}

// readMorning reads how the joints felt; as of a session done, in a set of its
// own. Whoever writes a morning has looked, so that an empty cell is 0 at all
// joints; a dash says that nobody did.
func (l *logLine) readMorning(e *program.Entry) {
	e.Morning = true
	if l.refusesNumbers("morning_numbers") {
		return
	}
	e.Sets = l.sets(1)
	switch written := l.cell(columnPain); {
	case written == "":
		e.Sets[0].Pain = program.Pain{Given: true}
	case isDash(written):
		l.fault(l.at(columnPain), "morning_unsaid")
	default:
		e.Sets[0].Pain, _ = l.pain(written)
	}
}

// refusesNumbers finds what only a line about an exercise can have, and says so.
func (l *logLine) refusesNumbers(said string) bool {
	for _, c := range []column{columnSet, columnBands, columnHold, columnReps, columnRPE, columnClean, columnAhead} {
		cell := l.cell(c)
		if cell == "" {
			continue
		}
		wrong := fault{said}
		if c == columnAhead { // a note in the wrong column, most likely
			if _, no := l.words.lean(cell); no != nil {
				wrong = no
			}
		}
		l.fault(l.at(c), wrong...)
		return true
	}
	return false
}
