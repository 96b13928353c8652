package paper

import (
	"github.com/jung-kurt/gofpdf"

	"gatepost/program"
)

// pen is a PDF being drawn, with the tones of its document.
type pen struct {
	*gofpdf.Fpdf
	shades palette
}

// palette has red, green and blue of each Tone.
type palette [Paper + 1][3]int

// shades are the built-in tones. Contrast on white by the WCAG formula: Ink 16.9,
// Quiet 6.6, Accent 6.1; Paper on Ink and on Accent the same.
var shades = palette{
	Ink: {28, 31, 36}, Quiet: {88, 92, 98}, Accent: {176, 54, 24}, Line: {178, 182, 187},
	Tint: {238, 238, 235}, Paper: {255, 255, 255},
}

// paletteOf is the built-in tones with the studio's two inks in place of the dark
// one and the accent, where it has set them.
func paletteOf(inks program.Inks) palette {
	p := shades
	for tone, ink := range map[Tone]program.Ink{Ink: inks.Dark, Accent: inks.Accent} {
		if ink != "" {
			r, g, b := ink.RGB()
			p[tone] = [3]int{r, g, b}
		}
	}
	return p
}

func (p pen) fill(t Tone) { p.SetFillColor(p.shades[t][0], p.shades[t][1], p.shades[t][2]) }

func (p pen) line(t Tone, width, dash float64) {
	p.SetDrawColor(p.shades[t][0], p.shades[t][1], p.shades[t][2])
	p.SetLineWidth(width)
	if dash > 0 {
		p.SetDashPattern([]float64{dash, dash}, 0)
	} else {
		p.SetDashPattern(nil, 0)
	}
}
