package paper

import (
	"bytes"
	"fmt"
	"math"

	"github.com/jung-kurt/gofpdf"
)

// document is what is said about a PDF besides its pages.
type document struct {
	Title, Author, Subject, Lang string
	Date                         int // days since 1970
	Shades                       palette
	Pages                        []*Page
}

// ink draws a document. A page with a mark that is not finite is refused, since
// the writer would spoil the file silently.
func ink(d document) ([]byte, error) {
	first := d.Pages[0]
	pdf := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "mm", Size: gofpdf.SizeType{Wd: first.Width, Ht: first.Height}})
	describe(pdf, d)
	p := pen{pdf, d.Shades, typeOf(d.Pages)}
	for _, page := range d.Pages {
		pdf.AddPageFormat("P", gofpdf.SizeType{Wd: page.Width, Ht: page.Height})
		if page.Name != "" {
			pdf.Bookmark(inUTF16(page.Name), 0, 0)
		}
		for _, m := range page.Marks {
			if !m.extent().finite() {
				return nil, fmt.Errorf("paper: %T without a place on page %q", m, page.Name)
			}
			draw(p, m)
		}
	}
	var out bytes.Buffer
	if err := pdf.Output(&out); err != nil {
		return nil, fmt.Errorf("paper: %w", err)
	}
	return finish(out.Bytes(), d.Lang, p.faces)
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
	pdf.SetLineCapStyle("butt")
	pdf.SetLineJoinStyle("round")
}

// typeOf are the subsets that the texts need, in the order of the faces.
func typeOf(pages []*Page) []*subset {
	used := map[*font]map[rune]bool{}
	for _, p := range pages {
		for _, m := range p.Marks {
			if t, ok := m.(Text); ok {
				t.collect(used)
			}
		}
	}
	var all []*subset
	for _, family := range families() {
		for _, f := range family {
			if used[f] != nil {
				all = append(all, f.subsetFor(used[f]))
			}
		}
	}
	return all
}

func (t Text) collect(used map[*font]map[rune]bool) {
	for _, line := range t.Lines {
		for _, r := range line {
			f := t.Face.fontOf(r)
			if used[f] == nil {
				used[f] = map[rune]bool{}
			}
			used[f][r] = true
		}
	}
}

// outlineShare of the type size in mm is how thick outlined letters are drawn: a
// quarter-size copy still shows them (our judgement, by looking).
const outlineShare = 0.018

func draw(pdf pen, m Mark) {
	switch m := m.(type) {
	case Text:
		drawText(pdf, m)
	case Fill:
		pdf.fill(m.Tone)
		pdf.Rect(m.X, m.Y, m.W, m.H, "F")
	case Hatch:
		drawHatch(pdf, m)
	case Frame:
		pdf.line(m.Tone, m.Width, m.Dash)
		pdf.Rect(m.X, m.Y, m.W, m.H, "D")
	case Stroke:
		pdf.line(m.Tone, m.Width, m.Dash)
		drawPath(pdf, m.Points)
	case Dot:
		drawDot(pdf, m)
	case Picture:
		drawPicture(pdf, m)
	}
}

func drawPath(pdf pen, points []Point) {
	pdf.MoveTo(points[0].X, points[0].Y)
	for _, p := range points[1:] {
		pdf.LineTo(p.X, p.Y)
	}
	pdf.DrawPath("D")
}

func drawDot(pdf pen, d Dot) {
	pdf.fill(d.Tone)
	pdf.Circle(d.At.X, d.At.Y, d.Radius, "F")
	if d.Hollow {
		pdf.fill(Paper)
		pdf.Circle(d.At.X, d.At.Y, 0.55*d.Radius, "F")
	}
}

// drawHatch draws lines at 45 degrees, each cut to the box by its own ends.
func drawHatch(pdf pen, h Hatch) {
	pdf.line(h.Tone, h.Width, 0)
	step := h.Gap * math.Sqrt2
	for c := step / 2; c < h.W+h.H; c += step { // the line x + y = c, from the corner
		from := Point{math.Min(c, h.W), c - math.Min(c, h.W)}
		to := Point{c - math.Min(c, h.H), math.Min(c, h.H)}
		if h.Back {
			from.X, to.X = h.W-from.X, h.W-to.X
		}
		pdf.Line(h.X+from.X, h.Y+from.Y, h.X+to.X, h.Y+to.Y)
	}
}
