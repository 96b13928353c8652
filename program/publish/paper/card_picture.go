package paper

import (
	"crypto/sha256"
	"fmt"
	"sync"

	"rsc.io/qr"

	"gatepost/program/figure"
)

// Picture is a plate scaled into a box of the same shape.
type Picture struct {
	Box
	*Plate
}

func (p Picture) extent() Box { return p.Box }

// Plate is a drawing that a document may show many times and holds once, and that many
// documents may share.
type Plate struct {
	Width, Height float64 // mm
	draw          func(*pen)
	made          sync.Map // palette → []byte, as PDFs hold it
}

// plateSet are a document's plates, by what they show.
type plateSet map[any]*Plate

func (s plateSet) of(what any, draw func() *Plate) *Plate {
	plate, ok := s[what]
	if !ok {
		plate = lately.of(what, draw)
		s[what] = plate
	}
	return plate
}

// lately are plates that other documents had: a client's cards are printed and are on the
// client's page, and bodies there are everybody's.
var lately = recent[any, *Plate]{most: 256} // those of four documents

// pressed are plates as PDFs hold them, by what is drawn: a sheet's figures are on others too,
// and many a body is like another.
var pressed = recent[pressing, []byte]{most: 2048} // some 3 MB

type pressing struct {
	drawn         [sha256.Size]byte
	width, height float64
}

// recent is what was made lately, by what it was made of.
type recent[Of comparable, Made any] struct {
	sync.Mutex
	most int
	made map[Of]Made
}

func (r *recent[Of, Made]) of(what Of, anew func() Made) Made {
	r.Lock()
	made, ok := r.made[what]
	r.Unlock()
	if ok {
		return made
	}
	made = anew()
	r.Lock()
	defer r.Unlock()
	if len(r.made)%r.most == 0 {
		r.made = map[Of]Made{}
	}
	r.made[what] = made
	return made
}

// plates are those of a document, P0, P1 … on its pages, as the PDF holds them: form
// objects (ISO 32000-1, 8.10).
type plates struct {
	number map[*Plate]int
	all    [][]byte
}

// plate is a plate's number in the document.
func (p *pen) plate(plate *Plate) int {
	s := p.plates
	n, ok := s.number[plate]
	if !ok {
		if n = len(s.all); s.number == nil {
			s.number = map[*Plate]int{}
		}
		s.number[plate] = n
		s.all = append(s.all, p.form(plate))
	}
	return n
}

// form is drawn behind what the pen has written, and taken off again.
func (p *pen) form(plate *Plate) []byte {
	if form, ok := plate.made.Load(p.shades); ok {
		return form.([]byte)
	}
	before, height := len(p.out), p.height
	p.height = plate.Height
	plate.draw(p)
	drawn := p.out[before:]
	p.out, p.height = p.out[:before], height
	form := pressed.of(pressing{sha256.Sum256(drawn), plate.Width, plate.Height}, func() []byte {
		data := compress(drawn)
		return fmt.Appendf(nil, "<</Type /XObject /Subtype /Form /BBox [0 0 %.2f %.2f] /Resources <</ProcSet [/PDF]>> /Length %d /Filter /FlateDecode>>\nstream\n%s\nendstream",
			plate.Width/mmPerPoint, plate.Height/mmPerPoint, len(data), data)
	})
	plate.made.Store(p.shades, form)
	return form
}

func (p *pen) picture(m Picture) {
	p.out = number(append(p.out, "q "...), m.W/m.Plate.Width)
	p.out = number(append(p.out, "0 0 "...), m.H/m.Plate.Height)
	p.at(Point{m.X, m.Bottom()})
	p.out = fmt.Appendf(p.out, "cm /P%d Do Q\n", p.plate(m.Plate))
}

// figurePlate is a figure that fills a box as far as its shape allows. Labels
// are left out: the text beside a figure says them.
func figurePlate(d figure.Drawing, width, height float64) *Plate {
	scale := d.Scale(width, height)
	at := func(p figure.Point) Point { return Point{scale * (p.X - d.Min.X), scale * (d.Max.Y - p.Y)} }
	return &Plate{Width: scale * d.Width(), Height: scale * d.Height(), draw: func(p *pen) {
		p.write("j", roundJoin)
		for _, s := range d.Shapes {
			p.shape(s, scale, at)
		}
	}}
}

// inks are the tones of a figure's inks.
var inks = map[figure.Ink]Tone{figure.Near: Ink, figure.Far: Line, figure.Line: Quiet, figure.Accent: Accent, figure.Paper: Paper}

const hairline = 0.2 // mm, the thinnest line that a copier keeps (our judgement)

const roundJoin = 1 // of lines: ISO 32000-1, 8.4.3.4

func (p *pen) shape(s figure.Shape, scale float64, at func(figure.Point) Point) {
	width := max(scale*s.Width, hairline)
	if s.Edge > 0 {
		edge := 2 * scale * s.Edge
		if s.Stroke {
			edge += width
		}
		p.line(Paper, edge, 0)
		p.paths(s.Paths, at, "S")
	}
	if s.Stroke {
		p.line(inks[s.Ink], width, scale*s.Dash)
		p.paths(s.Paths, at, "S")
		return
	}
	p.fill(inks[s.Ink])
	p.paths(s.Paths, at, "f")
}

// paths are outlines, and how to paint them, "f" or "S".
func (p *pen) paths(paths []figure.Path, at func(figure.Point) Point, paint string) {
	for _, path := range paths {
		p.at(at(path.From))
		p.write("m")
		from := path.From
		for _, c := range path.Curves {
			if c.A == from && c.B == c.To {
				p.at(at(c.To))
				p.write("l")
			} else {
				p.at(at(c.A))
				p.at(at(c.B))
				p.at(at(c.To))
				p.write("c")
			}
			from = c.To
		}
	}
	p.write(paint)
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
	return &Plate{Width: side, Height: side, draw: func(p *pen) {
		p.fill(Paper)
		p.rect(Box{0, 0, side, side}, "f")
		p.write("g", 0) // black, whatever the inks are
		p.modules(code, side/modules)
	}}
}

// modules are each row's runs of black.
func (p *pen) modules(code *qr.Code, side float64) {
	for y := range code.Size {
		for x := 0; x < code.Size; x++ {
			from := x
			for x < code.Size && code.Black(x, y) {
				x++
			}
			if x > from {
				p.rect(Box{side * float64(from+quietZone), side * float64(y+quietZone), side * float64(x-from), side}, "f")
			}
		}
	}
}
