package paper

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// breakLines sets a clean text into lines no wider than width mm. Lines break at
// spaces, and after hyphens and dashes within words; never at no-break spaces. A
// word wider than the line is broken with a hyphen before a syllable, else between
// letters, never before a combining mark. There is always at least one line.
func breakLines(f Face, size, width float64, s string) []string {
	var lines []string
	line, long := "", 0.0
	for _, word := range words(s) {
		if long+f.width(strings.TrimRight(word, " "), size) <= width {
			line += word
			long += f.width(word, size)
			continue
		}
		if line != "" {
			lines = append(lines, strings.TrimRight(line, " "))
		}
		for f.width(strings.TrimRight(word, " "), size) > width {
			cut := fitting(f, size, width, word)
			if cut == len(word) {
				break // a single letter, wider than the line
			}
			part := word[:cut]
			if at := syllable(f, size, width, word); at > 0 {
				cut, part = at, word[:at]+"-"
			}
			lines = append(lines, part)
			word = word[cut:]
		}
		line, long = word, f.width(word, size)
	}
	return append(lines, strings.TrimRight(line, " "))
}

// words cuts a text where a line may break; each piece keeps the spaces after it.
func words(s string) []string {
	var all []string
	start := 0
	for i, r := range s {
		next, _ := utf8.DecodeRuneInString(s[i+utf8.RuneLen(r):])
		if mayBreak(r, next) {
			all = append(all, s[start:i+utf8.RuneLen(r)])
			start = i + utf8.RuneLen(r)
		}
	}
	return append(all, s[start:])
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
