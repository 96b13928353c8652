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
	text, _ := program.Fill(w.word(key), pairs...)
	return text
}

// plural is the key of a text about n things.
func (w *words) plural(key string, n int) string { return w.table.Plural(key, n) }

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
