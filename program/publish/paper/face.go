package paper

import (
	"iter"
	"sync"

	"eliasnaur.com/font/roboto/robotocondensedbold"
	"eliasnaur.com/font/roboto/robotocondensedregular"
	"github.com/go-fonts/dejavu/dejavusanscondensed"
	"github.com/go-fonts/dejavu/dejavusanscondensedbold"
)

// Face is a weight of the print's type. The zero Face is Regular.
type Face int

const (
	Regular Face = iota
	Bold
)

const mmPerPoint = 25.4 / 72 // exact: ISO 216 sizes in mm, type in DTP points

// font is one file, measured, and cut to the usual letters.
type font struct {
	family string
	ttf    []byte
	metrics
	usual usualSubsets
}

// families has, for each Face, the fonts in the order they are asked. To measure them
// takes as long as all else of a command that prints nothing needs to begin.
var families = sync.OnceValue(func() [2][2]*font {
	return [2][2]*font{
		Regular: {newFont("RobotoCondensed", robotocondensedregular.TTF), newFont("DejaVuSansCondensed", dejavusanscondensed.TTF)},
		Bold:    {newFont("RobotoCondensed-Bold", robotocondensedbold.TTF), newFont("DejaVuSansCondensed-Bold", dejavusanscondensedbold.TTF)},
	}
})

// newFont reads a face that is linked into the program; a broken one is a
// mistake of the build, and panics.
func newFont(family string, ttf []byte) *font {
	m, err := readMetrics(ttf)
	if err != nil {
		panic("paper: " + family + ": " + err.Error())
	}
	f := &font{family: family, ttf: ttf, metrics: m}
	f.usual = f.usualSubsets()
	return f
}

// runs splits a text by the first font of the face that has each character.
// What none has must have been replaced by clean.
func (f Face) runs(s string) iter.Seq2[*font, string] {
	return func(yield func(*font, string) bool) {
		var of *font
		begin := 0
		for i, r := range s {
			font := f.fontOf(r)
			if font != of && i > 0 {
				if !yield(of, s[begin:i]) {
					return
				}
				begin = i
			}
			of = font
		}
		if of != nil {
			yield(of, s[begin:])
		}
	}
}

func (f Face) fontOf(r rune) *font {
	for _, font := range families()[f] {
		if _, ok := font.width(r); ok {
			return font
		}
	}
	return families()[f][0]
}

func (f Face) has(r rune) bool {
	_, ok := f.fontOf(r).width(r)
	return ok
}

// width is a text's length in mm at a size in points.
func (f Face) width(s string, size float64) float64 { return inType(f.sum(s), size) }

// inType is a length in mm of so many thousandths of the type size.
func inType(sum, size float64) float64 { return sum / 1000 * size * mmPerPoint }

// sum is a text's length in thousandths of the type size.
func (f Face) sum(s string) float64 {
	first, sum := families()[f][0], 0.0
	for _, r := range s {
		sum += first.advance(f, r)
	}
	return sum
}

// advance is how wide a character is in this font, a face's first, or in the next that has it.
func (first *font) advance(f Face, r rune) float64 {
	w, ok := first.width(r)
	if !ok {
		w, _ = f.fontOf(r).width(r)
	}
	return w
}

// capHeight is the height of capitals and figures in mm.
func (f Face) capHeight(size float64) float64 {
	return families()[f][0].capHeight / 1000 * size * mmPerPoint
}

// sizeForCap is the size in points whose capitals are so many mm high.
func (f Face) sizeForCap(mm float64) float64 { return mm / f.capHeight(1) }
