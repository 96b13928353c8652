package site

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"sync"

	"gatepost/program"
)

// words gives the reader's words by key and remembers each key that has none.
type words struct {
	table   program.Words
	file    string
	mutex   sync.Mutex
	missing []string // behind the mutex
}

func newWords(table program.Words, lang string) *words {
	return &words{table: table, file: "content/words/" + cmp.Or(lang, "en") + ".yaml"}
}

// word is the text under a key; a missing one shows its key and is reported.
func (w *words) word(key string) string {
	text, ok := w.table[key]
	if ok {
		return text
	}
	w.mutex.Lock()
	defer w.mutex.Unlock()
	if !slices.Contains(w.missing, key) {
		w.missing = append(w.missing, key)
	}
	return key
}

// fill puts values into the text under a key: pairs of placeholder and value.
func (w *words) fill(key string, pairs ...string) string {
	text := w.word(key)
	var out strings.Builder
	for {
		before, rest, found := strings.Cut(text, "{")
		name, after, closed := strings.Cut(rest, "}")
		at := placeOf(name, pairs)
		out.WriteString(before)
		switch {
		case !found || !closed:
			out.WriteString(text[len(before):])
			return out.String()
		case at >= 0:
			out.WriteString(pairs[at+1])
		default: // a placeholder of nothing stays to be seen
			out.WriteString("{" + name + "}")
		}
		text = after
	}
}

// plural is the key of a text about n things: with "_one" where it is one and
// the language has a text of its own for it.
func (w *words) plural(key string, n int) string {
	if _, ok := w.table[key+"_one"]; ok && n == 1 {
		return key + "_one"
	}
	return key
}

// placeOf finds a name among pairs of name and value; -1: it is not there.
func placeOf(name string, pairs []string) int {
	for i := 0; i < len(pairs); i += 2 {
		if pairs[i] == name {
			return i
		}
	}
	return -1
}

func (w *words) problems() program.Problems {
	var all program.Problems
	for _, key := range w.missing {
		section, name, _ := strings.Cut(key, ".")
		all = append(all, program.Problem{
			Place:   program.Place{File: w.file},
			Message: fmt.Sprintf("no words for %q", key),
			Advice:  fmt.Sprintf("add %q below %q", name, section),
		})
	}
	return all
}
