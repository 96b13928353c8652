package figure

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"strconv"
)

// SVGOptions say how a drawing is written for a page.
type SVGOptions struct {
	Prefix string  // of every id, unique on the page; "": "fig"
	Scale  float64 // whole units of the view box in a metre; 0: 1000, so that a unit is a millimetre
	Text   float64 // m, type size where a label has none; 0: 0.07
	Margin float64 // m around the drawing; 0: 0.02
}

// SVG writes a drawing as an image with a title and a description for those who
// hear the page. Colour is the page's: inks are the classes fig-near, fig-far,
// fig-line, fig-accent, fig-paper and
// fig-edge (a stroke of paper), which fall back on the text's own colour
// and on white. It carries no style and no script.
func SVG(d Drawing, title, desc string, o SVGOptions) []byte {
	w := newWriter(d, o)
	w.open(title, desc)
	for _, s := range d.Shapes {
		w.shape(s)
	}
	for _, l := range d.Labels {
		w.text(l)
	}
	w.WriteString("</svg>\n")
	return w.Bytes()
}

type writer struct {
	bytes.Buffer
	d      *Drawing
	o      SVGOptions
	corner Point
}

func newWriter(d Drawing, o SVGOptions) *writer {
	if o.Prefix == "" {
		o.Prefix = "fig"
	}
	o.Scale = orElse(o.Scale, 1000)
	o.Text = orElse(o.Text, 0.07)
	o.Margin = orElse(o.Margin, 0.02)
	return &writer{d: &d, o: o, corner: Point{X: d.Min.X - o.Margin, Y: d.Max.Y + o.Margin}}
}

func orElse(v, otherwise float64) float64 {
	if v == 0 {
		return otherwise
	}
	return v
}

func (w *writer) open(title, desc string) {
	width, height := w.d.Width()+2*w.o.Margin, w.d.Height()+2*w.o.Margin
	fmt.Fprintf(w, `<svg xmlns="http://www.w3.org/2000/svg" role="img" class="fig" fill="currentColor" viewBox="0 0 %d %d" aria-labelledby="%[3]s-t %[3]s-d">`,
		w.units(width), w.units(height), escaped(w.o.Prefix))
	fmt.Fprintf(w, "<title id=\"%s-t\">%s</title><desc id=\"%[1]s-d\">%[3]s</desc>\n", escaped(w.o.Prefix), escaped(title), escaped(desc))
}

// inks are the presentation of each ink where the page sets none; what is empty
// is inherited.
var inks = [...]struct{ class, fill, stroke, opacity string }{
	Near:   {"fig-near", "", "currentColor", ""},
	Far:    {"fig-far", "", "currentColor", ".38"},
	Line:   {"fig-line", "", "currentColor", ""},
	Accent: {"fig-accent", "", "currentColor", ""},
	Paper:  {"fig-paper", "#fff", "#fff", ""},
}

// shape writes a shape; what is left free around an area is a stroke of paper
// below its filling, around a stroke a wider one before it.
func (w *writer) shape(s Shape) {
	ink, path := inks[s.Ink], w.paths(s)
	around := given("stroke", inks[Paper].stroke) + given("stroke-width", w.length(s.Width+2*s.Edge))
	switch {
	case !s.Stroke && s.Edge > 0:
		w.path(ink.class+" fig-edge", given("fill", ink.fill)+around+given("paint-order", "stroke"), path)
	case !s.Stroke:
		w.path(ink.class, given("fill", ink.fill)+given("fill-opacity", ink.opacity), path)
	default:
		if s.Edge > 0 {
			w.path("fig-edge", given("fill", "none")+around, path)
		}
		w.path(ink.class, given("fill", "none")+given("stroke", ink.stroke)+given("stroke-opacity", ink.opacity)+w.pen(s), path)
	}
}

func (w *writer) path(class, attributes, d string) {
	fmt.Fprintf(w, "<path class=\"%s\"%s d=\"%s\"/>\n", class, attributes, d)
}

func (w *writer) pen(s Shape) string {
	if s.Width == 0 {
		return ` vector-effect="non-scaling-stroke"`
	}
	pen := given("stroke-width", w.length(s.Width))
	if s.Dash > 0 {
		pen += given("stroke-dasharray", w.length(s.Dash))
	}
	return pen
}

// paths writes outlines with relative coordinates, each rounded before the
// difference is taken, so that errors do not add up.
func (w *writer) paths(s Shape) string {
	var b bytes.Buffer
	for _, p := range s.Paths {
		at := w.cell(p.From)
		b.WriteString("M" + pair(at, cell{}))
		for _, c := range p.Curves {
			to := w.cell(c.To)
			if w.cell(c.A) == at && w.cell(c.B) == to {
				b.WriteString("l" + pair(to, at))
			} else {
				b.WriteString("c" + pair(w.cell(c.A), at) + spaced(pair(w.cell(c.B), at)) + spaced(pair(to, at)))
			}
			at = to
		}
		if !s.Stroke {
			b.WriteByte('z')
		}
	}
	return b.String()
}

// cell is a place in whole units of the view box, which are shorter than
// decimals.
type cell struct{ x, y int }

func (w *writer) cell(p Point) cell {
	return cell{w.units(p.X - w.corner.X), w.units(w.corner.Y - p.Y)}
}

func (w *writer) units(v float64) int { return int(math.Round(v * w.o.Scale)) }

func pair(p, from cell) string {
	return strconv.Itoa(p.x-from.x) + spaced(strconv.Itoa(p.y-from.y))
}

// spaced puts a space before a number unless its sign parts it already.
func spaced(n string) string {
	if n[0] == '-' {
		return n
	}
	return " " + n
}

// length is that of a stroke or a letter, never nothing.
func (w *writer) length(v float64) string { return strconv.Itoa(max(1, w.units(v))) }

var anchors = [...]string{Start: "", Middle: "middle", End: "end"}

func (w *writer) text(l Label) {
	at, ink, weight := w.cell(l.At), inks[l.Ink], ""
	if l.Bold {
		weight = "bold"
	}
	fmt.Fprintf(w, "<text class=\"%s\" x=\"%d\" y=\"%d\" font-size=\"%s\"%s%s>%s</text>\n", ink.class,
		at.x, at.y, w.length(orElse(l.Size, w.o.Text)),
		given("fill", ink.fill)+given("text-anchor", anchors[l.Align]), given("font-weight", weight), escaped(l.Text))
}

// given is an attribute, left out where it has no value.
func given(name, value string) string {
	if value == "" {
		return ""
	}
	return fmt.Sprintf(` %s="%s"`, name, value)
}

func escaped(s string) string {
	var b bytes.Buffer
	xml.EscapeText(&b, []byte(s)) // a Buffer never fails
	return b.String()
}
