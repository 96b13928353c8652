package paper

import (
	"fmt"
	"math"
)

// Box is a place on a sheet, in mm from the top-left corner.
type Box struct{ X, Y, W, H float64 }

// Right and Bottom are the far edges.
func (b Box) Right() float64  { return b.X + b.W }
func (b Box) Bottom() float64 { return b.Y + b.H }

// Inset is the box with a margin taken off on every side.
func (b Box) Inset(dx, dy float64) Box { return Box{b.X + dx, b.Y + dy, b.W - 2*dx, b.H - 2*dy} }

func (b Box) overlaps(c Box) bool {
	const hair = 0.01 // mm; neighbours may touch
	return b.X+hair < c.Right() && c.X+hair < b.Right() && b.Y+hair < c.Bottom() && c.Y+hair < b.Bottom()
}

func (b Box) within(c Box) bool {
	const hair = 0.01
	return b.X >= c.X-hair && b.Y >= c.Y-hair && b.Right() <= c.Right()+hair && b.Bottom() <= c.Bottom()+hair
}

func (b Box) finite() bool {
	sum := b.X + b.Y + b.W + b.H
	return !math.IsNaN(sum) && !math.IsInf(sum, 0)
}

// Point is a spot on a sheet, in mm.
type Point struct{ X, Y float64 }

// Tone is one of the few tones of the print. The zero Tone is Ink.
type Tone int

const (
	Ink    Tone = iota // text and rules
	Quiet              // text of second rank
	Accent             // the one colour
	Line               // thin rules
	Tint               // a ground that a copier may lose
	Paper              // white, on dark grounds
)

// Align is where a line stands in its box. The zero Align is AlignLeft.
type Align int

const (
	AlignLeft Align = iota
	AlignCentre
	AlignRight
)

// Mark is anything on a page.
type Mark interface {
	extent() Box
	times(by float64) Mark // the same so many times as large
}

// Text is lines of one face and size. Each line takes Lead mm of the box's
// height, capitals centred in it.
type Text struct {
	Box
	Lines   []string
	Face    Face
	Size    float64 // points
	Lead    float64 // mm
	Align   Align
	Tone    Tone
	Outline bool // letters drawn as outlines only
}

// Fill is a filled box.
type Fill struct {
	Box
	Tone Tone
}

// Hatch fills a box with slanted lines, Gap mm apart.
type Hatch struct {
	Box
	Gap, Width float64
	Back       bool // leaning the other way
	Tone       Tone
}

// Frame is the outline of a box.
type Frame struct {
	Box
	Width float64 // mm
	Dash  float64 // mm of line and gap; 0: solid
	Tone  Tone
}

// Stroke is a line through points.
type Stroke struct {
	Points []Point
	Width  float64 // mm
	Dash   float64 // mm; 0: solid
	Tone   Tone
}

// Dot is a round spot.
type Dot struct {
	At     Point
	Radius float64 // mm
	Hollow bool    // a ring of paper inside
	Tone   Tone
}

func (t Text) extent() Box  { return t.Box }
func (f Fill) extent() Box  { return f.Box }
func (h Hatch) extent() Box { return h.Box }
func (f Frame) extent() Box { return f.Box.Inset(-f.Width/2, -f.Width/2) }

func (d Dot) extent() Box {
	return Box{d.At.X - d.Radius, d.At.Y - d.Radius, 2 * d.Radius, 2 * d.Radius}
}

func (s Stroke) extent() Box {
	low, high := s.Points[0], s.Points[0]
	for _, p := range s.Points[1:] {
		low.X, low.Y = math.Min(low.X, p.X), math.Min(low.Y, p.Y)
		high.X, high.Y = math.Max(high.X, p.X), math.Max(high.Y, p.Y)
	}
	return Box{low.X, low.Y, high.X - low.X, high.Y - low.Y}.Inset(-s.Width/2, -s.Width/2)
}

// Page is one sheet, its marks in the order they are drawn.
type Page struct {
	Width, Height float64 // mm
	Free          float64 // mm at each edge that stay white
	Least         float64 // points; no text is smaller
	Name          string  // bookmark
	Marks         []Mark
}

// add puts marks on the page, but for texts without a letter.
func (p *Page) add(marks ...Mark) {
	for _, m := range marks {
		if t, ok := m.(Text); ok && len(t.Lines) == 1 && t.Lines[0] == "" {
			continue
		}
		p.Marks = append(p.Marks, m)
	}
}

// Faults names everything that would not print well.
func (p *Page) Faults() []string {
	var all []string
	edge := Box{W: p.Width, H: p.Height}.Inset(p.Free, p.Free)
	var texts []Text
	var pictures []Box
	for _, m := range p.Marks {
		if b := m.extent(); !b.finite() || !b.within(edge) {
			all = append(all, fmt.Sprintf("%T %+v is off the sheet", m, b))
		}
		if t, ok := m.(Text); ok && t.Size > 0 {
			all = append(all, t.faults(p.Least)...)
			texts = append(texts, t)
		}
		if picture, ok := m.(Picture); ok {
			pictures = append(pictures, picture.Box)
		}
	}
	for i, b := range pictures {
		for _, c := range pictures[i+1:] {
			if b.overlaps(c) {
				all = append(all, fmt.Sprintf("pictures at %+v and %+v overlap", b, c))
			}
		}
	}
	for i, t := range texts {
		for _, u := range texts[i+1:] {
			if t.Box.overlaps(u.Box) {
				all = append(all, fmt.Sprintf("%q and %q overlap", t.Lines, u.Lines))
			}
		}
	}
	return all
}

func (t Text) faults(least float64) []string {
	var all []string
	if t.Size < least-0.001 {
		all = append(all, fmt.Sprintf("%q is set in %.1f points", t.Lines, t.Size))
	}
	if float64(len(t.Lines))*t.Lead > t.H+0.01 {
		all = append(all, fmt.Sprintf("%q is taller than its box", t.Lines))
	}
	for _, line := range t.Lines {
		if w := t.Face.width(line, t.Size); w > t.W+0.01 {
			all = append(all, fmt.Sprintf("%q is %.1f mm wide in a box of %.1f", line, w, t.W))
		}
	}
	return all
}
