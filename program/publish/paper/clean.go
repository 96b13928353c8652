package paper

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/bidi"
	"golang.org/x/text/unicode/norm"
)

// missing stands for a character that the faces lack.
const missing = '□'

// clean makes a text printable: composed (NFC), one line, no control or
// invisible characters, and □ for what the faces lack or the PDF writer cannot
// encode. It returns what was replaced, and letters that run from right to left: these
// would have to be turned around and joined.
func clean(s string) (string, []rune) {
	if isClean(s) {
		return s, nil
	}
	return cleaned(s)
}

func cleaned(s string) (string, []rune) {
	var out strings.Builder
	var lost []rune
	for _, r := range norm.NFC.String(strings.ToValidUTF8(s, "�")) {
		switch {
		case unicode.IsSpace(r) && r != '\u00a0' && r != '\u202f':
			out.WriteByte(' ')
		case unicode.Is(unicode.C, r) || unicode.Is(unicode.Variation_Selector, r):
		case r > 0xffff || !Regular.has(r) || !Bold.has(r):
			out.WriteRune(missing)
			lost = append(lost, r)
		case rightToLeft(r):
			out.WriteRune(r)
			lost = append(lost, r)
		default:
			out.WriteRune(r)
		}
	}
	return strings.TrimSpace(out.String()), lost
}

// rightToLeft reports whether a letter runs so (Unicode Standard Annex 9).
func rightToLeft(r rune) bool {
	p, _ := bidi.LookupRune(r)
	return p.Class() == bidi.R || p.Class() == bidi.AL
}

// isClean says quickly, of most texts, that nothing has to be done: Latin letters
// and signs that both weights have, composed, no space at the ends.
func isClean(s string) bool {
	if strings.TrimSpace(s) != s {
		return false
	}
	for _, r := range s {
		if r < ' ' || r >= 0x7f && r < 0xa0 || r == 0xad || r > 0x17f {
			return false
		}
		for _, family := range families() {
			if _, ok := family[0].width(r); !ok {
				return false
			}
		}
	}
	return true
}
