package paper

import (
	"math"
	"strings"
	"testing"

	"github.com/jung-kurt/gofpdf"
	"pgregory.net/rapid"
)

// Our reading of the font tables against the PDF library's own.
func TestWidthsAgreeWithThePDFLibrary(t *testing.T) {
	for _, f := range []Face{Regular, Bold} {
		pdf := gofpdf.New("P", "mm", "A4", "")
		pdf.AddUTF8FontFromBytes("f", "", families()[f][0].ttf)
		pdf.SetFont("f", "", 12)
		for _, s := range []string{"4 × 12 s, narrow + middle", "Łódź ệ Ω Ж ½ ≤", "6.5\u00a0kg"} {
			if got, want := f.width(s, 12), pdf.GetStringWidth(s); math.Abs(got-want) > 0.05 {
				t.Errorf("%q: %.2f mm, the library says %.2f", s, got, want)
			}
		}
	}
}

// The face's makers give capitals of 1456 units in 2048 (Roboto's OS/2 table, as
// fontTools and font editors show it; from memory).
func TestCapHeight(t *testing.T) {
	if got := families()[Bold][0].capHeight; math.Abs(got-1456.0/2.048) > 0.5 {
		t.Errorf("capitals are %.1f thousandths", got)
	}
	if got := Bold.capHeight(Bold.sizeForCap(10)); math.Abs(got-10) > 1e-9 {
		t.Errorf("10 mm become %.3f", got)
	}
}

func TestEveryLetterOfTheWordsHasAFace(t *testing.T) {
	for _, r := range "≤≥×½–—…“”’→□✓ŁłčễẾΩЖ€\u00a0" {
		if !Regular.has(r) || !Bold.has(r) {
			t.Errorf("no face has %q", r)
		}
	}
}

func TestClean(t *testing.T) {
	for in, want := range map[string]string{
		"e\u0301te\u0301":    "été",
		"bell \U0001F514 up": "bell □ up",
		"a\tb\nc\r":          "a b c",
		"12\u00a0s":          "12\u00a0s",
		"z\u200bw\ufe0f":     "zw",
		"\xff":               "\uFFFD",
		"漢":                  "□",
	} {
		if got, _ := clean(in); got != want {
			t.Errorf("%q: got %q, want %q", in, got, want)
		}
	}
	if text, lost := clean("דנה"); text != "דנה" || string(lost) != "דנה" { // Hebrew runs from right to left: Unicode Standard Annex 9
		t.Errorf("of right-to-left letters %q is printed and %q named", text, string(lost))
	}
	if _, lost := clean("漢 and \U0001F514"); string(lost) != "漢\U0001F514" {
		t.Errorf("lost %q", string(lost))
	}
}

func TestRunsFallBack(t *testing.T) {
	var families []string
	for font, text := range Regular.runs("a□b") {
		families = append(families, font.family+":"+text)
	}
	if got := strings.Join(families, " "); got != "RobotoCondensed:a DejaVuSansCondensed:□ RobotoCondensed:b" {
		t.Errorf("got %s", got)
	}
}

// The quick way says of no text that it is clean which the long way would change.
func TestQuickCleanAgreesWithTheLongWay(t *testing.T) {
	letters := rapid.RuneFrom([]rune("aZ 9-é×½\u00a0\u00ad\u0300\u0085\u017f\t≤漢ł"))
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringOf(letters).Draw(t, "text")
		if long, lost := cleaned(s); isClean(s) && (long != s || lost != nil) {
			t.Errorf("%q becomes %q, without %q", s, long, lost)
		}
	})
}

// In a cut face each letter is still the letter it was: its glyph has the width
// that the whole face gives it. The writer of the cut numbers the glyphs anew.
func TestCutFacesKeepTheirLetters(t *testing.T) {
	const others = "ŁłśżΩμέЖящễĐ"
	for _, family := range families() {
		for _, f := range family {
			for _, s := range []*subset{f.usual.plain(), f.usual.latin(), f.cutTo(f.those(func(r rune) bool { return strings.ContainsRune(others, r) }))} {
				cut, err := readMetrics(gofpdf.UTF8CutFont(f.ttf, s.letters))
				if err != nil {
					t.Fatal(err)
				}
				for _, r := range s.letters {
					want, _ := f.width(r)
					if got, ok := cut.width(r); !ok || got != want || s.glyphs[r] == 0 {
						t.Errorf("%s: %c is %.0f wide, not %.0f, glyph %d", f.family, r, got, want, s.glyphs[r])
					}
				}
			}
		}
	}
}
