package paper

import (
	"math"

	"gatepost/program"
)

// pen writes the marks of a page or a plate as a PDF paints them (ISO 32000-1, 8 and 9), in
// points from the bottom-left corner: the library would format every number by reflection,
// which took longer than the laying out.
type pen struct {
	out    []byte
	height float64 // mm, of what is drawn on
	shades palette
	faces  []*subset // T0, T1 … on the page
	plates *plates
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

// write puts operands, and then what is done with them.
func (p *pen) write(operator string, operands ...float64) {
	for _, v := range operands {
		p.out = number(p.out, v)
	}
	p.out = append(append(p.out, operator...), '\n')
}

// at are operands of a place, to a hundredth of a point.
func (p *pen) at(q Point) {
	p.out = hundredths(hundredths(p.out, q.X/mmPerPoint), (p.height-q.Y)/mmPerPoint)
}

func (p *pen) tone(t Tone, operator string) {
	s := p.shades[t]
	p.write(operator, float64(s[0])/255, float64(s[1])/255, float64(s[2])/255)
}

func (p *pen) fill(t Tone) { p.tone(t, "rg") }

func (p *pen) line(t Tone, width, dash float64) {
	p.tone(t, "RG")
	p.write("w", width/mmPerPoint)
	p.out = append(p.out, '[')
	if dash > 0 {
		p.out = hundredths(hundredths(p.out, dash/mmPerPoint), dash/mmPerPoint)
	}
	p.write("] 0 d")
}

// rect is a box, filled ("f") or as an outline ("S").
func (p *pen) rect(b Box, paint string) {
	p.at(Point{b.X, b.Bottom()})
	p.out = hundredths(hundredths(p.out, b.W/mmPerPoint), b.H/mmPerPoint)
	p.write("re " + paint)
}

func (p *pen) stroke(points ...Point) {
	for i, q := range points {
		p.at(q)
		if i == 0 {
			p.write("m")
		} else {
			p.write("l")
		}
	}
	p.write("S")
}

// disc is a filled circle.
func (p *pen) disc(at Point, r float64) {
	const handle = 4. / 3 * (math.Sqrt2 - 1) // of a quarter of a circle: off by 0.03 % at most
	p.at(Point{at.X + r, at.Y})
	p.write("m")
	for x, y := r, 0.0; ; {
		tx, ty := y, -x // a quarter on
		p.at(Point{at.X + x + handle*tx, at.Y + y + handle*ty})
		p.at(Point{at.X + tx + handle*x, at.Y + ty + handle*y})
		p.at(Point{at.X + tx, at.Y + ty})
		p.write("c")
		if x, y = tx, ty; y == 0 && x > 0 {
			break
		}
	}
	p.write("f")
}
