package program

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// Words are the reader's words by key, "section.name".
type Words map[string]string

// Say gives the text of a key, with its {placeholders} filled from pairs of name and
// value. A key without a text is said as the key itself.
func (w Words) Say(key string, pairs ...string) string {
	text, ok := w[key]
	if !ok {
		return key
	}
	text, _ = Fill(text, pairs...)
	return text
}

// Problem says what is wrong at a place under a key, and what to do about it under the same
// with "_do", of one or of many. On terminals a space is a space.
func (w Words) Problem(at Place, key string, pairs ...string) Problem {
	say := func(key string) string { return strings.ReplaceAll(w.Say(key, pairs...), "\u00a0", " ") }
	return Problem{Place: at, Message: say(key), Advice: say(strings.TrimSuffix(key, "_one") + "_do")}
}

// Centimetres is a length in m as whole centimetres.
func Centimetres(metres float64) string { return strconv.Itoa(int(math.Round(100 * metres))) }

// Plural is the key of a text about n things: with "_one" where it is one, or "_none" where
// there is none, and the language has a text of its own for it.
func (w Words) Plural(key string, n int) string {
	for count, ending := range []string{"_none", "_one"} {
		if _, ok := w[key+ending]; ok && n == count {
			return key + ending
		}
	}
	return key
}

// Fill puts values in place of a text's {placeholders}, from pairs of name and value.
// A placeholder that no pair names stays to be seen, and is given as left.
func Fill(text string, pairs ...string) (filled, left string) {
	var out strings.Builder
	for {
		before, rest, opened := strings.Cut(text, "{")
		name, after, closed := strings.Cut(rest, "}")
		if !opened || !closed {
			return out.String() + text, left
		}
		out.WriteString(before)
		value, named := valueOf(name, pairs)
		if !named {
			left, value = name, "{"+name+"}"
		}
		out.WriteString(value)
		text = after
	}
}

func valueOf(name string, pairs []string) (value string, named bool) {
	for pair := range slices.Chunk(pairs, 2) {
		if pair[0] == name {
			return pair[1], true
		}
	}
	return "", false
}
