package paper

import (
	"slices"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// FirstSession prints the first hour with a client by the minute, for the coach: what to
// ask, to look at, to test, to hang and to hand over, each with room to write. Without a
// view it is the form for somebody of whom nothing is written yet.
func FirstSession(v *view.View, f *view.FirstSession) ([]byte, program.Problems) {
	if v == nil {
		v = &view.View{Title: f.Title, Goal: f.Title, Coach: f.Coach, Lang: f.Lang, Labels: f.Labels}
	}
	ts := &typesetter{lost: map[rune]bool{}}
	return write(v, ts, f.Title, layFirstSession(ts, v, f)...)
}

const (
	hourLargest = 10 // points; no smaller than leastPage
	hourGutter  = 19 // mm, for the minutes
	hourAnswer  = 34 // mm, to write an answer on
	hourCell    = 8  // mm high, of the tests
	hourAir     = 1.4
)

// hourTable are the shares of the width of the columns of the tests.
var hourTable = []float64{0.20, 0.43, 0.09, 0.12, 0.08, 0.08}

// hourPage is the script being laid out, at one size of type.
type hourPage struct {
	*typesetter
	v     *view.View
	f     *view.FirstSession
	size  float64
	pages []*Page
	y     float64
}

// layFirstSession takes the largest type with which the hour fits one page, and two pages
// where it fits none.
func layFirstSession(ts *typesetter, v *view.View, f *view.FirstSession) []*Page {
	var h *hourPage
	for size := float64(hourLargest); size >= leastPage; size -= 0.25 {
		h = &hourPage{typesetter: ts, v: v, f: f, size: size}
		h.turn()
		for i := range f.Parts {
			h.part(&f.Parts[i])
		}
		if len(h.pages) == 1 {
			break
		}
	}
	for i, page := range h.pages {
		foot(page, ts, v, i+1, len(h.pages))
	}
	return h.pages
}

func (h *hourPage) page() *Page     { return h.pages[len(h.pages)-1] }
func (h *hourPage) width() float64  { return h.page().Width - 2*pageMargin }
func (h *hourPage) bottom() float64 { return h.page().Height - pageMargin - 7.5 }

// turn begins a page: for whom it is in a bar, and whose hour.
func (h *hourPage) turn() {
	hand, _ := sheets(h.v.Coach.Paper)
	page := hand.portrait("", leastPage)
	h.pages = append(h.pages, page)
	if len(h.pages) == 1 {
		page.Name = h.f.Name
	}
	y, w := float64(pageMargin), h.width()
	bar := Box{pageMargin, y, w, 7}
	page.add(Fill{bar, Ink},
		h.fit(Box{bar.X + 3, y, 0.33 * w, bar.H}, style{Face: Bold, Size: 12, Least: leastPage, Tone: Paper, Middle: true}, h.f.For),
		h.fit(Box{bar.X + 0.36*w, y, 0.64*w - 3, bar.H}, style{Size: 9, Least: leastPage, Tone: Paper, Middle: true, Align: AlignRight}, h.f.Only))
	y += 8.5
	left, right := Box{pageMargin, y, 0.55 * w, 10}, Box{pageMargin + 0.57*w, y, 0.43 * w, 10}
	name := style{Face: Bold, Size: 22, Least: 10, Leading: 1, Bottom: true}
	if h.v.Client == "" {
		page.add(h.fit(left, name, h.f.Name))
		h.whose(right)
	} else {
		page.add(h.fit(left, name, h.v.Client), h.fit(right, style{Face: Bold, Size: 12, Least: leastPage, Align: AlignRight, Bottom: true}, h.f.Name))
	}
	lead, end := h.flow(pageMargin, y+11, w, style{Size: leastPage}, h.f.Lead+" "+h.f.Stop)
	page.add(lead)
	h.y = end + 1.5
}

// whose are lines for the name and the day.
func (h *hourPage) whose(b Box) {
	for i, label := range h.f.Whose {
		x, w := b.X+float64(i)*0.6*b.W, 0.6*b.W-3
		if i > 0 {
			w = 0.4 * b.W
		}
		t := h.fit(Box{x, b.Y + 4, w, 5.6}, style{Size: h.size, Least: leastPage, Bottom: true}, label)
		t.W = Regular.width(t.Lines[0], t.Size)
		h.page().add(t, Stroke{Points: []Point{{t.Right() + 1.5, b.Bottom()}, {x + w, b.Bottom()}}, Width: 0.25, Tone: Ink})
	}
}

// part is one stretch of the hour, its minutes in the gutter; it stays on one page.
func (h *hourPage) part(p *view.HourPart) {
	marks, high := h.body(p, h.y)
	if h.y+high > h.bottom() && len(h.page().Marks) > 6 {
		h.turn()
		marks, high = h.body(p, h.y)
	}
	h.page().add(marks...)
	h.y += high
}

func (h *hourPage) body(p *view.HourPart, y float64) ([]Mark, float64) {
	top := y
	x, w := float64(pageMargin+hourGutter), h.width()-hourGutter
	marks := []Mark{
		Stroke{Points: []Point{{pageMargin, y}, {pageMargin + h.width(), y}}, Width: 0.4, Tone: Ink},
		h.fit(Box{pageMargin, y + 1, hourGutter - 2, 6.5}, style{Face: Bold, Size: 15, Least: 10, Leading: 1}, p.Time),
	}
	title, y := h.flow(x, y+1.2, w, style{Face: Bold, Size: h.size + 1.5, Tone: Accent}, p.Title)
	marks = append(marks, title)
	add := func(more []Mark, end float64) {
		marks, y = append(marks, more...), end
	}
	if p.Large != "" {
		add(h.large(Box{x, y + 0.5, w, 9}, p.Large))
	}
	if p.Lead != "" {
		add(h.column(x, y, w, h.size, 0, []passage{{p.Lead, prose}}))
	}
	if len(p.Boxes) > 0 {
		add(h.boxes(x, y+0.8, p.Boxes))
	}
	for _, line := range p.Lines {
		add(h.line(Box{x, y, w, 0}, line, p.Write))
	}
	if len(p.Tests) > 0 {
		add(h.table(Box{x, y + 0.8, w, 0}, p))
	}
	if len(p.After) > 0 {
		after := bullets(p.More, p.After)
		if p.More == "" {
			after = after[1:]
		}
		add(h.column(x, y+0.5, w, h.size, 0, after))
	}
	return marks, max(y, top+8) + hourAir - top
}

// line is one point, with a line to write on at its right where an answer is wanted.
func (h *hourPage) line(b Box, text string, write bool) ([]Mark, float64) {
	w := b.W
	if write {
		w -= hourAnswer + 3
	}
	marks, end := h.column(b.X, b.Y, w, h.size, 0, []passage{{text, bullet}})
	if write {
		y := end - 0.9
		marks = append(marks, Stroke{Points: []Point{{b.Right() - hourAnswer, y}, {b.Right(), y}}, Width: 0.2, Tone: Quiet})
	}
	return marks, end
}

// large is the cue in a band.
func (h *hourPage) large(b Box, text string) ([]Mark, float64) {
	return []Mark{Fill{b, Tint}, Fill{Box{b.X, b.Y, 1.2, b.H}, Accent},
		h.fit(b.Inset(4, 0), style{Face: Bold, Size: 16, Least: leastPage, Middle: true, Leading: 1.1}, text)}, b.Bottom() + 0.8
}

// boxes are to write a number in, each under its name.
func (h *hourPage) boxes(x, y float64, captions []string) ([]Mark, float64) {
	const wide, high = 22, 9
	var marks []Mark
	for _, caption := range captions {
		b := Box{x, y, wide, high}
		marks = append(marks, Frame{b, 0.3, 0, Ink},
			h.fit(Box{b.X + 1, b.Y + 0.3, wide - 2, 3.4}, style{Size: leastPage, Leading: 1.1, Tone: Quiet}, caption))
		x += wide + 2
	}
	return marks, y + high + 0.8
}

// table has a row for each test: what, how and why, what is likely, and cells to write in.
func (h *hourPage) table(b Box, p *view.HourPart) ([]Mark, float64) {
	var marks []Mark
	columns := func(y, high float64) []Box {
		var all []Box
		x := b.X
		for _, share := range hourTable {
			all = append(all, Box{x, y, share * b.W, high})
			x += share * b.W
		}
		return all
	}
	y := b.Y
	head := columns(y, 4.6)
	marks = append(marks, Fill{Box{b.X, y, b.W, 4.6}, Tint})
	for i, name := range p.Columns {
		marks = append(marks, h.fit(head[i].Inset(1, 0), style{Face: Bold, Size: leastPage, Middle: true}, name))
	}
	y += 4.6
	for _, t := range p.Tests {
		cells := columns(y, 0)
		what, a := h.column(cells[0].X+1, y+0.6, cells[0].W-2, h.size, 0, []passage{{t.What, strong}})
		how, c := h.column(cells[1].X+1, y+0.6, cells[1].W-2, h.size, 0, []passage{{t.How, prose}})
		why, c := h.column(cells[1].X+1, c, cells[1].W-2, leastPage, 0, []passage{{t.Why, prose}})
		for i, m := range why {
			if text, ok := m.(Text); ok {
				text.Tone = Quiet
				why[i] = text
			}
		}
		likely, d := h.column(cells[2].X+1, y+0.6, cells[2].W-2, h.size, 0, []passage{{t.Likely, prose}})
		high := max(a, c, d, y+hourCell) + 0.6 - y
		marks = append(marks, slices.Concat(what, how, why, likely)...)
		for _, cell := range cells[3:] {
			marks = append(marks, Stroke{Points: []Point{{cell.X, y}, {cell.X, y + high}}, Width: 0.2, Tone: Quiet})
		}
		marks = append(marks, Stroke{Points: []Point{{b.X, y}, {b.Right(), y}}, Width: 0.2, Tone: Quiet})
		y += high
	}
	marks = append(marks, Frame{Box{b.X, b.Y, b.W, y - b.Y}, 0.3, 0, Ink})
	return marks, y + 1
}
