package paper

import "slices"

// typesetter turns strings into Texts and remembers the characters that could
// not be printed; and what it has cleaned and measured before, since a document says most
// things many times, and tries several ways to say them.
type typesetter struct {
	lost    map[rune]bool
	cleaned map[string]string
	words   [Bold + 1]map[string][]word
	tried   []string // lines of the last try
}

// linesOf sets a clean text into lines, which stand until the next text, and says whether all
// of its words are whole.
func (ts *typesetter) linesOf(f Face, size, width float64, text string) (lines []string, whole bool) {
	words, ok := ts.words[f][text]
	if !ok {
		if ts.words[f] == nil {
			ts.words[f] = map[string][]word{}
		}
		words = f.words(text)
		ts.words[f][text] = words
	}
	lines, torn := breakLines(ts.tried[:0], f, size, width, text, words)
	ts.tried = lines
	return lines, !torn
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
		if lines, fits := ts.fits(b, s, size, text); fits {
			return s.text(b, size, lines)
		}
	}
	room := max(1, int((b.H+0.01)/s.lead(least)))
	lines, _ := ts.linesOf(s.Face, least, b.W, text)
	return s.text(b, least, clip(s.Face, least, b.W, lines, room))
}

func (s style) least() float64 {
	if s.Least == 0 {
		return s.Size
	}
	return s.Least
}

// fits breaks a clean text at a size, as linesOf does, and says whether all of it has room
// without a broken word.
func (ts *typesetter) fits(b Box, s style, size float64, text string) ([]string, bool) {
	lines, whole := ts.linesOf(s.Face, size, b.W, text)
	return lines, float64(len(lines))*s.lead(size) <= b.H+0.01 && (len(lines) == 1 || whole)
}

// fitAlike sets texts into boxes of one size each at the same size of type: the
// largest at which all of them fit, or else the smallest.
func (ts *typesetter) fitAlike(boxes []Box, s style, texts []string) []Mark {
	for ; s.Size > s.least(); s.Size -= 0.5 {
		all := true
		for i, text := range texts {
			_, ok := ts.fits(boxes[i], s, s.Size, ts.clean(text))
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

func (s style) text(b Box, size float64, lines []string) Text {
	lead := s.lead(size)
	switch spare := b.H - float64(len(lines))*lead; {
	case s.Bottom:
		b.Y, b.H = b.Y+spare, b.H-spare
	case s.Middle:
		b.Y, b.H = b.Y+spare/2, b.H-spare
	}
	return Text{Box: b, Lines: slices.Clone(lines), Face: s.Face, Size: size, Lead: lead, Align: s.Align, Tone: s.Tone, Outline: s.Outline}
}

// flow sets a text at its full size in as many lines as it takes, from a corner,
// and says where it ends.
func (ts *typesetter) flow(x, y, width float64, s style, text string) (Text, float64) {
	lines, _ := ts.linesOf(s.Face, s.Size, width, ts.clean(text))
	h := float64(len(lines)) * s.lead(s.Size)
	return s.text(Box{x, y, width, h}, s.Size, lines), y + h
}
