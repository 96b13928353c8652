package paper

import (
	"strings"
	"sync"

	"eliasnaur.com/font/roboto/robotocondensedbold"
	"eliasnaur.com/font/roboto/robotocondensedregular"
	"github.com/go-fonts/dejavu/dejavusanscondensed"
	"github.com/go-fonts/dejavu/dejavusanscondensedbold"
	"github.com/jung-kurt/gofpdf"
)

// Face is a weight of the print's type. The zero Face is Regular.
type Face int

const (
	Regular Face = iota
	Bold
)

const mmPerPoint = 25.4 / 72 // exact: ISO 216 sizes in mm, type in DTP points

// font is one file: whole, cut to the usual letters, and measured.
type font struct {
	family string
	ttf    []byte
	metrics
	usual func() (ttf []byte, letters string)
}

// families has, for each Face, the fonts in the order they are asked.
var families = [2][2]*font{
	Regular: {newFont("condensed", robotocondensedregular.TTF), newFont("symbols", dejavusanscondensed.TTF)},
	Bold:    {newFont("condensed-bold", robotocondensedbold.TTF), newFont("symbols-bold", dejavusanscondensedbold.TTF)},
}

// newFont reads a face that is linked into the program; a broken one is a
// mistake of the build, and panics.
func newFont(family string, ttf []byte) *font {
	m, err := readMetrics(ttf)
	if err != nil {
		panic("paper: " + family + ": " + err.Error())
	}
	f := &font{family: family, ttf: ttf, metrics: m}
	f.usual = sync.OnceValues(func() ([]byte, string) {
		letters := f.usualLetters()
		return gofpdf.UTF8CutFont(f.ttf, letters), letters
	})
	return f
}

// usualLetters are those that most documents manage with: up to Latin
// Extended-A, and the punctuation and signs that the words use. A face cut to
// them is a tenth of the whole, and a document is made in a quarter of the time.
func (f *font) usualLetters() string {
	var out strings.Builder
	for r := rune(' '); r <= 0xffff; r++ {
		usual := r < 0x180 || r >= 0x2010 && r < 0x2040 || strings.ContainsRune("≤≥−→←↑↓□✓", r)
		if _, ok := f.width(r); ok && usual {
			out.WriteRune(r)
		}
	}
	return out.String()
}

// fileFor is the smallest form of the face that has all the characters used.
func (f *font) fileFor(used map[rune]bool) []byte {
	usual, letters := f.usual()
	for r := range used {
		if !strings.ContainsRune(letters, r) {
			return f.ttf
		}
	}
	return usual
}

// run is a piece of text in one font.
type run struct {
	font *font
	text string
}

// runs splits a text by the first font of the face that has each character.
// What none has must have been replaced by clean.
func (f Face) runs(s string) []run {
	var all []run
	for _, r := range s {
		font := f.fontOf(r)
		if n := len(all); n > 0 && all[n-1].font == font {
			all[n-1].text += string(r)
		} else {
			all = append(all, run{font, string(r)})
		}
	}
	return all
}

func (f Face) fontOf(r rune) *font {
	for _, font := range families[f] {
		if _, ok := font.width(r); ok {
			return font
		}
	}
	return families[f][0]
}

func (f Face) has(r rune) bool {
	_, ok := f.fontOf(r).width(r)
	return ok
}

// width is a text's length in mm at a size in points.
func (f Face) width(s string, size float64) float64 {
	sum := 0.0
	for _, r := range s {
		w, _ := f.fontOf(r).width(r)
		sum += w
	}
	return sum / 1000 * size * mmPerPoint
}

// capHeight is the height of capitals and figures in mm.
func (f Face) capHeight(size float64) float64 {
	return families[f][0].capHeight / 1000 * size * mmPerPoint
}

// sizeForCap is the size in points whose capitals are so many mm high.
func (f Face) sizeForCap(mm float64) float64 { return mm / f.capHeight(1) }
