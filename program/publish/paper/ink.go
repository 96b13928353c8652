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
	Pages                        []*Page
}

// shades of the tones, red, green, blue. Contrast on white by the WCAG formula:
// Ink 16.9, Quiet 6.6, Accent 6.1; Paper on Ink and on Accent the same.
var shades = map[Tone][3]int{
	Ink: {28, 31, 36}, Quiet: {88, 92, 98}, Accent: {176, 54, 24}, Line: {178, 182, 187},
	Tint: {238, 238, 235}, Paper: {255, 255, 255},
}

// ink draws a document. A page with a mark that is not finite is refused, since
// the writer would spoil the file silently.
func ink(d document) ([]byte, error) {
	first := d.Pages[0]
	pdf := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "mm", Size: gofpdf.SizeType{Wd: first.Width, Ht: first.Height}})
	describe(pdf, d)
	addFonts(pdf, d.Pages)
	for _, p := range d.Pages {
		pdf.AddPageFormat("P", gofpdf.SizeType{Wd: p.Width, Ht: p.Height})
		if p.Name != "" && len(d.Pages) > 1 {
			pdf.Bookmark(p.Name, 0, 0)
		}
		for _, m := range p.Marks {
			if !m.extent().finite() {
				return nil, fmt.Errorf("paper: %T without a place on page %q", m, p.Name)
			}
			draw(pdf, m)
		}
	}
	var out bytes.Buffer
	if err := pdf.Output(&out); err != nil {
		return nil, fmt.Errorf("paper: %w", err)
	}
	return finish(out.Bytes(), d.Lang)
}

func describe(pdf *gofpdf.Fpdf, d document) {
	pdf.SetTitle(d.Title, true)
	pdf.SetAuthor(d.Author, true)
	pdf.SetSubject(d.Subject, true)
	pdf.SetCreator("Gatepost", true)
	pdf.SetCatalogSort(true)
	date := dayTime(d.Date)
	pdf.SetCreationDate(date)
	pdf.SetModificationDate(date)
	pdf.SetMargins(0, 0, 0)
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetLineCapStyle("butt")
	pdf.SetLineJoinStyle("round")
}

// addFonts embeds the fonts that the texts use, each document its own copy:
// documents that share one slice would race.
func addFonts(pdf *gofpdf.Fpdf, pages []*Page) {
	used := map[*font]map[rune]bool{}
	for _, p := range pages {
		for _, m := range p.Marks {
			if t, ok := m.(Text); ok {
				t.collect(used)
			}
		}
	}
	for _, family := range families {
		for _, f := range family {
			if used[f] != nil {
				pdf.AddUTF8FontFromBytes(f.family, "", bytes.Clone(f.fileFor(used[f])))
			}
		}
	}
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

func draw(pdf *gofpdf.Fpdf, m Mark) {
	switch m := m.(type) {
	case Text:
		drawText(pdf, m)
	case Fill:
		setFill(pdf, m.Tone)
		pdf.Rect(m.X, m.Y, m.W, m.H, "F")
	case Hatch:
		drawHatch(pdf, m)
	case Frame:
		setLine(pdf, m.Tone, m.Width, m.Dash)
		pdf.Rect(m.X, m.Y, m.W, m.H, "D")
	case Stroke:
		setLine(pdf, m.Tone, m.Width, m.Dash)
		drawPath(pdf, m.Points)
	case Dot:
		drawDot(pdf, m)
	case Picture:
		drawPicture(pdf, m)
	}
}

func setFill(pdf *gofpdf.Fpdf, t Tone) { pdf.SetFillColor(shades[t][0], shades[t][1], shades[t][2]) }

func setLine(pdf *gofpdf.Fpdf, t Tone, width, dash float64) {
	pdf.SetDrawColor(shades[t][0], shades[t][1], shades[t][2])
	pdf.SetLineWidth(width)
	if dash > 0 {
		pdf.SetDashPattern([]float64{dash, dash}, 0)
	} else {
		pdf.SetDashPattern(nil, 0)
	}
}

func drawPath(pdf *gofpdf.Fpdf, points []Point) {
	pdf.MoveTo(points[0].X, points[0].Y)
	for _, p := range points[1:] {
		pdf.LineTo(p.X, p.Y)
	}
	pdf.DrawPath("D")
}

func drawDot(pdf *gofpdf.Fpdf, d Dot) {
	setFill(pdf, d.Tone)
	pdf.Circle(d.At.X, d.At.Y, d.Radius, "F")
	if d.Hollow {
		setFill(pdf, Paper)
		pdf.Circle(d.At.X, d.At.Y, 0.55*d.Radius, "F")
	}
}

// drawText sets each line by runs of one font. The lines of one box are close to
// each other, so that text taken out of the file keeps its order.
func drawText(pdf *gofpdf.Fpdf, t Text) {
	shade := shades[t.Tone]
	pdf.SetTextColor(shade[0], shade[1], shade[2])
	if t.Outline {
		setLine(pdf, t.Tone, outlineShare*t.Size, 0)
		pdf.SetTextRenderingMode(1)
		defer pdf.SetTextRenderingMode(0)
	}
	for i, line := range t.Lines {
		x := t.X
		if slack := t.W - t.Face.width(line, t.Size); t.Align == AlignCentre {
			x += slack / 2
		} else if t.Align == AlignRight {
			x += slack
		}
		baseline := t.Y + t.Lead*float64(i) + (t.Lead+t.Face.capHeight(t.Size))/2
		for _, r := range t.Face.runs(line) {
			pdf.SetFont(r.font.family, "", t.Size)
			pdf.Text(x, baseline, r.text)
			x += t.Face.width(r.text, t.Size)
		}
	}
}

// drawHatch draws lines at 45 degrees, each cut to the box by its own ends.
func drawHatch(pdf *gofpdf.Fpdf, h Hatch) {
	setLine(pdf, h.Tone, h.Width, 0)
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
