package paper

import (
	"encoding/binary"
	"math"
	"strconv"
	"unicode/utf16"
)

// text sets each line by runs of one font. The lines of one box are close to
// each other, so that text taken out of the file keeps its order. Operators: ISO
// 32000-1, 9.4.
func (p *pen) text(t Text) {
	p.out = append(p.out, "q BT "...)
	p.textTone(t)
	for i, line := range t.Lines {
		x := t.X
		switch t.Align {
		case AlignCentre:
			x += (t.W - t.Face.width(line, t.Size)) / 2
		case AlignRight:
			x += t.W - t.Face.width(line, t.Size)
		}
		y := t.Y + t.Lead*float64(i) + (t.Lead+t.Face.capHeight(t.Size))/2
		for font, run := range t.Face.runs(line) {
			n, s := p.face(font)
			p.out = append(strconv.AppendInt(append(p.out, "/T"...), int64(n), 10), ' ')
			p.out = append(number(p.out, t.Size), "Tf 1 0 0 1 "...)
			p.at(Point{x, y})
			p.out = append(s.hex(append(p.out, "Tm <"...), run), "> Tj "...)
			x += t.Face.width(run, t.Size)
		}
	}
	p.write("ET Q")
}

// textTone is the letters' colour, filled or as outlines.
func (p *pen) textTone(t Text) {
	if !t.Outline {
		p.tone(t.Tone, "rg")
		return
	}
	p.tone(t.Tone, "RG 1 Tr")
	p.write("w", outlineShare*t.Size/mmPerPoint)
}

// face is a font's subset in this document and its number.
func (p *pen) face(f *font) (int, *subset) {
	for i, s := range p.faces {
		if s.font == f {
			return i, s
		}
	}
	panic("paper: a text in a face that was not collected")
}

// hex writes a text as the numbers of its glyphs.
func (s *subset) hex(out []byte, text string) []byte {
	const digits = "0123456789ABCDEF"
	for _, r := range text {
		g := s.glyphs[r]
		out = append(out, digits[g>>12&15], digits[g>>8&15], digits[g>>4&15], digits[g&15])
	}
	return out
}

// number writes an operand to a thousandth, without needless zeros: nine of ten bytes of a
// page are numbers.
func number(out []byte, v float64) []byte { return thousandths(out, int64(math.Round(1000*v))) }

// hundredths is the same to a hundredth.
func hundredths(out []byte, v float64) []byte { return thousandths(out, 10*int64(math.Round(100*v))) }

func thousandths(out []byte, n int64) []byte {
	if n < 0 {
		out, n = append(out, '-'), -n
	}
	out = strconv.AppendInt(out, n/1000, 10)
	if rest := n % 1000; rest > 0 {
		digits := [4]byte{'.', byte('0' + rest/100), byte('0' + rest/10%10), byte('0' + rest%10)}
		long := 4
		for digits[long-1] == '0' {
			long--
		}
		out = append(out, digits[:long]...)
	}
	return append(out, ' ')
}

// inUTF16 is a string as a PDF keeps text outside its pages (ISO 32000-1, 7.9.2.2).
func inUTF16(s string) string {
	out := []byte{0xfe, 0xff}
	for _, u := range utf16.Encode([]rune(s)) {
		out = binary.BigEndian.AppendUint16(out, u)
	}
	return string(out)
}
