package paper

import (
	"github.com/jung-kurt/gofpdf"
	"rsc.io/qr"

	"gatepost/program/figure"
)

// Picture is a plate scaled into a box of the same shape.
type Picture struct {
	Box
	*Plate
}

func (p Picture) extent() Box { return p.Box }

// Plate is a drawing that a document may show many times and holds once. It
// belongs to one document.
type Plate struct {
	Width, Height float64 // mm
	draw          func(pen)
	made          gofpdf.Template
}

func drawPicture(pdf pen, p Picture) {
	if p.made == nil {
		size := gofpdf.SizeType{Wd: p.Plate.Width, Ht: p.Plate.Height}
		p.made = pdf.CreateTemplateCustom(gofpdf.PointType{}, size, func(t *gofpdf.Tpl) { p.draw(pen{&t.Fpdf, pdf.shades, nil}) })
	}
	pdf.UseTemplateScaled(p.made, gofpdf.PointType{X: p.X, Y: p.Y}, gofpdf.SizeType{Wd: p.W, Ht: p.H})
}

// figurePlate is a figure that fills a box as far as its shape allows. Labels
// are left out: the text beside a figure says them.
func figurePlate(d figure.Drawing, width, height float64) *Plate {
	scale := d.Scale(width, height)
	at := func(p figure.Point) (x, y float64) { return scale * (p.X - d.Min.X), scale * (d.Max.Y - p.Y) }
	return &Plate{Width: scale * d.Width(), Height: scale * d.Height(), draw: func(pdf pen) {
		pdf.SetLineJoinStyle("round")
		for _, s := range d.Shapes {
			drawShape(pdf, s, scale, at)
		}
	}}
}

// inks are the tones of a figure's inks.
var inks = map[figure.Ink]Tone{figure.Near: Ink, figure.Far: Line, figure.Line: Quiet, figure.Accent: Accent, figure.Paper: Paper}

const hairline = 0.2 // mm, the thinnest line that a copier keeps (our judgement)

func drawShape(pdf pen, s figure.Shape, scale float64, at func(figure.Point) (x, y float64)) {
	width := max(scale*s.Width, hairline)
	if s.Edge > 0 {
		edge := 2 * scale * s.Edge
		if s.Stroke {
			edge += width
		}
		pdf.line(Paper, edge, 0)
		tracePaths(pdf, s.Paths, at, "S")
	}
	if s.Stroke {
		pdf.line(inks[s.Ink], width, scale*s.Dash)
		tracePaths(pdf, s.Paths, at, "S")
		return
	}
	pdf.fill(inks[s.Ink])
	tracePaths(pdf, s.Paths, at, "f")
}

// tracePaths writes paths and how to paint them, "f" or "S" (ISO 32000-1, 8.5): a drawing has
// hundreds of curves, and the writer formats each by reflection.
func tracePaths(pdf pen, paths []figure.Path, at func(figure.Point) (x, y float64), paint string) {
	_, height := pdf.GetPageSize()
	var out []byte
	point := func(p figure.Point) {
		x, y := at(p)
		out = number(number(out, x/mmPerPoint), (height-y)/mmPerPoint)
	}
	for _, p := range paths {
		point(p.From)
		out = append(out, "m\n"...)
		for _, c := range p.Curves {
			point(c.A)
			point(c.B)
			point(c.To)
			out = append(out, "c\n"...)
		}
	}
	pdf.RawWriteStr(string(append(out, paint...)))
}

// Sizes of a code: 0.4 mm a module is read by any phone at arm's length, 0.33 by
// most (common practice); white around it as ISO/IEC 18004 asks.
const (
	module      = 0.4
	leastModule = 0.33
	quietZone   = 4 // modules
)

// codePlate is the code that leads to an address, its quiet zone included; nil
// where the address is too long for a code of the most mm.
func codePlate(address string, most float64) *Plate {
	code, err := qr.Encode(address, qr.L)
	if err != nil {
		return nil
	}
	modules := float64(code.Size + 2*quietZone)
	side := min(modules*module, most)
	if side/modules < leastModule {
		return nil
	}
	return &Plate{Width: side, Height: side, draw: func(pdf pen) {
		pdf.fill(Paper)
		pdf.Rect(0, 0, side, side, "F")
		pdf.SetFillColor(0, 0, 0)
		drawModules(pdf, code, side/modules)
	}}
}

// drawModules draws each row's runs of black.
func drawModules(pdf pen, code *qr.Code, side float64) {
	for y := range code.Size {
		for x := 0; x < code.Size; x++ {
			from := x
			for x < code.Size && code.Black(x, y) {
				x++
			}
			if x > from {
				pdf.Rect(side*float64(from+quietZone), side*float64(y+quietZone), side*float64(x-from), side, "F")
			}
		}
	}
}
