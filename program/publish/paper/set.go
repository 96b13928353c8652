package paper

import (
	"slices"
	"strings"
)

// typesetter turns strings into Texts and remembers the characters that could
// not be printed; and what it has cleaned and broken before, since a document says most
// things many times, and tries several ways to say them.
type typesetter struct {
	lost    map[rune]bool
	cleaned map[string]string
	lines   map[measure][]string
}

// measure is a clean text in one face and size, broken to one width.
type measure struct {
	Face
	size, width float64
	text        string
}

// linesOf sets a clean text into lines, which nobody may change.
func (ts *typesetter) linesOf(f Face, size, width float64, text string) []string {
	key := measure{f, size, width, text}
	lines, ok := ts.lines[key]
	if !ok {
		if ts.lines == nil {
			ts.lines = map[measure][]string{}
		}
		lines = breakLines(f, size, width, text)
		ts.lines[key] = lines
	}
	return lines
}

// style is how a text is set. The type size goes down from Size to Least, in
// half points, until the text fits its box.
type style struct {
	Face        Face
	Size, Least float64 // points; Least 0: Size
	Leading     float64 // line distance in type sizes; 0: 1.2
	Align       Align
	Tone        Tone
	Outline     bool
	Bottom      bool // the text stands at the bottom of its box
	Middle      bool // in the middle of its height
}

func (s style) lead(size float64) float64 {
	if s.Leading == 0 {
		return 1.2 * size * mmPerPoint
	}
	return s.Leading * size * mmPerPoint
}

func (ts *typesetter) clean(s string) string {
	if done, ok := ts.cleaned[s]; ok {
		return done
	}
	if ts.cleaned == nil {
		ts.cleaned = map[string]string{}
	}
	done, lost := clean(s)
	for _, r := range lost {
		ts.lost[r] = true
	}
	ts.cleaned[s] = done
	return done
}

// fit sets a text into a box at the largest size at which no word is broken and
// nothing is left out. At the smallest size, words are broken, and what does not
// fit ends in "…".
func (ts *typesetter) fit(b Box, s style, text string) Text {
	text = ts.clean(text)
	least := s.least()
	for size := s.Size; size > least; size -= 0.5 {
		if lines := ts.linesOf(s.Face, size, b.W, text); s.holds(b, size, text, lines) {
			return s.text(b, size, lines)
		}
	}
	room := max(1, int((b.H+0.01)/s.lead(least)))
	return s.text(b, least, clip(s.Face, least, b.W, ts.linesOf(s.Face, least, b.W, text), room))
}

func (s style) least() float64 {
	if s.Least == 0 {
		return s.Size
	}
	return s.Least
}

// fits breaks a clean text at a size, and says whether all of it has room
// without a broken word.
func (s style) fits(b Box, size float64, text string) ([]string, bool) {
	lines := breakLines(s.Face, size, b.W, text)
	return lines, s.holds(b, size, text, lines)
}

// holds says whether a box has room for a text's lines, none of them the part of a word.
func (s style) holds(b Box, size float64, text string, lines []string) bool {
	return float64(len(lines))*s.lead(size) <= b.H+0.01 && (len(lines) == 1 || !broken(s.Face, size, b.W, text))
}

// fitAlike sets texts into boxes of one size each at the same size of type: the
// largest at which all of them fit, or else the smallest.
func (ts *typesetter) fitAlike(boxes []Box, s style, texts []string) []Mark {
	for ; s.Size > s.least(); s.Size -= 0.5 {
		all := true
		for i, text := range texts {
			_, ok := s.fits(boxes[i], s.Size, ts.clean(text))
			all = all && ok
		}
		if all {
			break
		}
	}
	s.Size = max(s.Size, s.least())
	var marks []Mark
	for i, text := range texts {
		marks = append(marks, ts.fit(boxes[i], s, text))
	}
	return marks
}

// broken says whether a word is wider than the line.
func broken(f Face, size, width float64, text string) bool {
	return slices.ContainsFunc(words(text), func(word string) bool {
		return f.width(strings.TrimRight(word, " "), size) > width
	})
}

func (s style) text(b Box, size float64, lines []string) Text {
	lead := s.lead(size)
	switch spare := b.H - float64(len(lines))*lead; {
	case s.Bottom:
		b.Y, b.H = b.Y+spare, b.H-spare
	case s.Middle:
		b.Y, b.H = b.Y+spare/2, b.H-spare
	}
	return Text{Box: b, Lines: lines, Face: s.Face, Size: size, Lead: lead, Align: s.Align, Tone: s.Tone, Outline: s.Outline}
}

// flow sets a text at its full size in as many lines as it takes, from a corner,
// and says where it ends.
func (ts *typesetter) flow(x, y, width float64, s style, text string) (Text, float64) {
	lines := ts.linesOf(s.Face, s.Size, width, ts.clean(text))
	h := float64(len(lines)) * s.lead(s.Size)
	return s.text(Box{x, y, width, h}, s.Size, lines), y + h
}
