package paper

import (
	"bytes"
	"fmt"
	"math"
	"math/bits"
	"sync"

	"github.com/jung-kurt/gofpdf"
)

// document is what is said about a PDF besides its pages.
type document struct {
	Title, Author, Subject, Lang string
	Date                         int // days since 1970
	Shades                       palette
	Pages                        []*Page
}

// pens are used for one document after the other, for what they have room to write on.
var pens = sync.Pool{New: func() any { return new(pen) }}

// ink draws a document. A page with a mark that is not finite is refused: it would spoil the
// file silently. The library makes pages with nothing on them; finish puts the marks there.
func ink(d document) ([]byte, error) {
	first := d.Pages[0]
	pdf := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "mm", Size: gofpdf.SizeType{Wd: first.Width, Ht: first.Height}})
	describe(pdf, d)
	p := pens.Get().(*pen)
	defer pens.Put(p)
	*p = pen{out: p.out[:0], shades: d.Shades, faces: typeOf(d.Pages), plates: new(plates)}
	var pages [][]byte
	for _, page := range d.Pages {
		pdf.AddPageFormat("P", gofpdf.SizeType{Wd: page.Width, Ht: page.Height})
		if page.Name != "" {
			pdf.Bookmark(inUTF16(page.Name), 0, 0)
		}
		from := len(p.out)
		p.height = page.Height
		for _, m := range page.Marks {
			if !m.extent().finite() {
				return nil, fmt.Errorf("paper: %T without a place on page %q", m, page.Name)
			}
			p.draw(m)
		}
		p.out = append(p.out, '\n')
		pages = append(pages, p.out[from:])
	}
	var out bytes.Buffer
	if err := pdf.Output(&out); err != nil {
		return nil, fmt.Errorf("paper: %w", err)
	}
	return finish(out.Bytes(), d.Lang, p.faces, p.plates.all, pages)
}

func describe(pdf *gofpdf.Fpdf, d document) {
	pdf.SetTitle(d.Title, true)
	pdf.SetAuthor(d.Author, true)
	pdf.SetSubject(d.Subject, true)
	pdf.SetCreator("Gatepost", true)
	pdf.SetCompression(false) // finish does it
	pdf.SetCatalogSort(true)
	date := dayTime(d.Date)
	pdf.SetCreationDate(date)
	pdf.SetModificationDate(date)
	pdf.SetMargins(0, 0, 0)
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetLineJoinStyle("round")
}

// typeOf are the subsets that the texts need, in the order of the faces.
func typeOf(pages []*Page) []*subset {
	var used [Bold + 1]letters
	for _, p := range pages {
		for _, m := range p.Marks {
			if t, ok := m.(Text); ok {
				for _, line := range t.Lines {
					used[t.Face].add(line)
				}
			}
		}
	}
	var all []*subset
	for face, family := range families() {
		for _, f := range family {
			if those := used[face].of(Face(face), f); len(those) > 0 {
				all = append(all, f.subsetFor(those))
			}
		}
	}
	return all
}

// letters are characters, up to the last that print has: a bit for each.
type letters [0x10000 / 64]uint64

func (l *letters) add(line string) {
	for _, r := range line {
		l[r/64] |= 1 << (r % 64)
	}
}

// of are those that a face sets in one of its fonts.
func (l *letters) of(face Face, f *font) (all []rune) {
	for i, word := range l {
		for ; word != 0; word &= word - 1 {
			if r := rune(64*i + bits.TrailingZeros64(word)); face.fontOf(r) == f {
				all = append(all, r)
			}
		}
	}
	return all
}

// outlineShare of the type size in mm is how thick outlined letters are drawn: a
// quarter-size copy still shows them (our judgement, by looking).
const outlineShare = 0.018

func (p *pen) draw(m Mark) {
	switch m := m.(type) {
	case Text:
		p.text(m)
	case Fill:
		p.fill(m.Tone)
		p.rect(m.Box, "f")
	case Hatch:
		p.hatch(m)
	case Frame:
		p.line(m.Tone, m.Width, m.Dash)
		p.rect(m.Box, "S")
	case Stroke:
		p.line(m.Tone, m.Width, m.Dash)
		p.stroke(m.Points...)
	case Dot:
		p.dot(m)
	case Picture:
		p.picture(m)
	}
}

func (p *pen) dot(d Dot) {
	p.fill(d.Tone)
	p.disc(d.At, d.Radius)
	if d.Hollow {
		p.fill(Paper)
		p.disc(d.At, 0.55*d.Radius)
	}
}

// hatch draws lines at 45 degrees, each cut to the box by its own ends.
func (p *pen) hatch(h Hatch) {
	p.line(h.Tone, h.Width, 0)
	step := h.Gap * math.Sqrt2
	for c := step / 2; c < h.W+h.H; c += step { // the line x + y = c, from the corner
		from := Point{math.Min(c, h.W), c - math.Min(c, h.W)}
		to := Point{c - math.Min(c, h.H), math.Min(c, h.H)}
		if h.Back {
			from.X, to.X = h.W-from.X, h.W-to.X
		}
		p.stroke(Point{h.X + from.X, h.Y + from.Y}, Point{h.X + to.X, h.Y + to.Y})
	}
}
