package paper

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// word is a piece of a text after which a line may break, with the spaces there.
type word struct {
	end        int     // in the text
	bare, long float64 // how wide without those spaces and with them, thousandths of the type size
}

// words cuts a text and measures it, for lines of any size and width.
func (f Face) words(s string) (all []word) {
	var w word
	first := families()[f][0]
	for i, r := range s {
		w.end, w.long = i+utf8.RuneLen(r), w.long+first.advance(f, r)
		if r != ' ' {
			w.bare = w.long
		}
		if next, _ := utf8.DecodeRuneInString(s[w.end:]); mayBreak(r, next) {
			all, w = append(all, w), word{}
		}
	}
	w.end = len(s)
	return append(all, w)
}

// breakLines sets a clean text, of which these are the words, into lines no wider than width
// mm, behind those that there are. Lines break at spaces, and after hyphens and dashes within
// words; never at no-break spaces. A word wider than the line is broken with a hyphen before a
// syllable, else between letters, never before a combining mark: then the text is torn. There
// is always at least one line.
func breakLines(lines []string, f Face, size, width float64, s string, words []word) (_ []string, torn bool) {
	begin, end, long := 0, 0, 0.0 // of the line
	for _, w := range words {
		if long+inType(w.bare, size) > width {
			if end > begin {
				lines = append(lines, strings.TrimRight(s[begin:end], " "))
			}
			begin, long = end, 0
			if inType(w.bare, size) > width {
				torn = true
				lines, begin = tear(lines, f, size, width, s[:w.end], begin)
				w.long = f.sum(s[begin:w.end])
			}
		}
		end, long = w.end, long+inType(w.long, size)
	}
	return append(lines, strings.TrimRight(s[begin:], " ")), torn
}

// tear breaks a text's last word, wider than the line, and says where its last part begins.
func tear(lines []string, f Face, size, width float64, s string, begin int) ([]string, int) {
	for f.width(strings.TrimRight(s[begin:], " "), size) > width {
		word := s[begin:]
		cut := fitting(f, size, width, word)
		if cut == len(word) {
			break // a single letter, wider than the line
		}
		part := word[:cut]
		if at := syllable(f, size, width, word); at > 0 {
			cut, part = at, word[:at]+"-"
		}
		lines, begin = append(lines, part), begin+cut
	}
	return lines, begin
}

func mayBreak(r, next rune) bool {
	switch r {
	case ' ':
		return next != ' '
	case '-', '–', '—', '/':
		return unicode.IsLetter(next)
	}
	return false
}

// syllable is where the last syllable begins before which a word may be broken, so that what
// stands there and a hyphen fit in the width; 0 where there is none. A consonant before a
// vowel begins one, in German and, near enough, in English.
func syllable(f Face, size, width float64, word string) int {
	const least = 3 // letters on either side
	const vowels = "aeiouyäöü"
	letters := []rune(strings.TrimRight(word, " "))
	for i := len(letters) - least; i >= least; i-- {
		before, at, next := letters[i-1], letters[i], letters[i+1]
		switch {
		case slices.ContainsFunc(letters[i-least:i+least], func(r rune) bool { return !unicode.IsLetter(r) }),
			strings.ContainsRune(vowels, at), !strings.ContainsRune(vowels, next),
			strings.ContainsRune("cpt", before) && strings.ContainsRune("hk", at): // one sound
		default:
			if part := string(letters[:i]); strings.ContainsAny(part, vowels) && f.width(part+"-", size) <= width {
				return len(part)
			}
		}
	}
	return 0
}

// fitting is how many bytes of a word fit in the width: one letter at least.
func fitting(f Face, size, width float64, word string) int {
	cut := 0
	for i, r := range word {
		end := i + utf8.RuneLen(r)
		if cut > 0 && f.width(word[:end], size) > width {
			break
		}
		next, _ := utf8.DecodeRuneInString(word[end:])
		if !unicode.Is(unicode.M, next) {
			cut = end
		}
	}
	if cut == 0 {
		return len(word)
	}
	return cut
}

// clip keeps the first lines; where some are left out, the last ends in "…".
func clip(f Face, size, width float64, lines []string, most int) []string {
	if len(lines) <= most {
		return lines
	}
	last := lines[most-1]
	for last != "" && f.width(last+"…", size) > width {
		_, n := utf8.DecodeLastRuneInString(last)
		last = last[:len(last)-n]
	}
	return append(append([]string{}, lines[:most-1]...), strings.TrimRight(last, " ,")+"…")
}
