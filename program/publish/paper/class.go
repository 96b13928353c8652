package paper

import (
	"gatepost/program"
	"gatepost/program/publish/view"
)

// Class prints a training day of a studio, landscape: a row a client, as many pages as the
// rows take, each with the names of the columns.
func Class(c *view.Class) ([]byte, program.Problems) {
	ts := &typesetter{lost: map[rune]bool{}}
	v := &view.View{Title: c.Title, Goal: c.Title, Coach: c.Coach, Lang: c.Lang, Labels: c.Labels, Client: c.Title}
	return write(v, ts, c.Title, layClass(ts, v, c)...)
}

const (
	classCell = 10.5 // mm, a set to write in
	classRow  = 17   // mm at the least: a name to find at arm's length, and room for a hand
	classHead = 5    // mm, the names of the columns
	mostCells = 7    // beside each other
)

// classShares are the shares of the width: client, work and help, amount, joints, sets, notes.
var classShares = []float64{0.14, 0.25, 0.09, 0.165, 0.285, 0.07}

// classPage is the class being laid out.
type classPage struct {
	*typesetter
	v     *view.View
	c     *view.Class
	sheet Sheet
	pages []*Page
	y     float64
}

func layClass(ts *typesetter, v *view.View, c *view.Class) []*Page {
	hand, _ := sheets(c.Coach.Paper)
	p := &classPage{typesetter: ts, v: v, c: c, sheet: hand}
	p.turn()
	for i := range c.Rows {
		p.row(&c.Rows[i])
	}
	if c.Missing != "" {
		t, end := p.flow(pageMargin, p.y+2, p.width(), style{Size: 9}, c.Missing)
		if end > p.bottom() {
			p.turn()
			t, _ = p.flow(pageMargin, p.y+2, p.width(), style{Size: 9}, c.Missing)
		}
		p.page().add(t)
	}
	for i, page := range p.pages {
		foot(page, ts, v, i+1, len(p.pages))
	}
	return p.pages
}

func (p *classPage) page() *Page     { return p.pages[len(p.pages)-1] }
func (p *classPage) width() float64  { return p.page().Width - 2*pageMargin }
func (p *classPage) bottom() float64 { return p.page().Height - pageMargin - 9 }

// columns are a row's boxes.
func (p *classPage) columns(y, h float64) []Box {
	var all []Box
	x := float64(pageMargin)
	for _, share := range classShares {
		all = append(all, Box{x, y, share * p.width(), h})
		x += share * p.width()
	}
	return all
}

// turn begins a page: the day, and the names of the columns.
func (p *classPage) turn() {
	page := p.sheet.landscape("", leastPage)
	p.pages = append(p.pages, page)
	if len(p.pages) == 1 {
		page.Name = p.c.Title
	}
	w := p.width()
	page.add(p.fit(Box{pageMargin, pageMargin, 0.6 * w, 9}, style{Face: Bold, Size: 20, Least: 10, Leading: 1, Bottom: true}, p.c.Title),
		p.fit(Box{pageMargin + 0.6*w, pageMargin, 0.4 * w, 9}, style{Size: 9, Least: leastPage, Align: AlignRight, Bottom: true}, p.c.Lead),
		Fill{Box{pageMargin, pageMargin + 10, w, 0.7}, Ink})
	p.y = pageMargin + 11.5
	n := p.c.Columns
	page.add(Fill{Box{pageMargin, p.y, w, classHead}, Tint})
	for i, name := range []string{n.Client, n.Work, n.Amount, n.Joints, n.Sets, n.Notes} {
		page.add(p.fit(p.columns(p.y, classHead)[i].Inset(1, 0), style{Face: Bold, Size: leastPage, Middle: true}, name))
	}
	p.y += classHead
}

func (p *classPage) row(r *view.ClassRow) {
	marks, h := p.lay(r, p.y)
	if p.y+h > p.bottom() {
		p.turn()
		marks, h = p.lay(r, p.y)
	}
	p.page().add(marks...)
	p.y += h
	p.page().add(Stroke{Points: []Point{{pageMargin, p.y}, {pageMargin + p.width(), p.y}}, Width: 0.3, Tone: Ink})
}

// lay is a client's row, and how high it is.
func (p *classPage) lay(r *view.ClassRow, y float64) ([]Mark, float64) {
	const air = 1.2
	var marks []Mark
	cells := p.columns(y, 0)
	end := y + classRow
	column := func(i int, all ...Text) {
		at := y + air
		for _, t := range all {
			t.Y = at
			marks = append(marks, t)
			at = t.Bottom() + 0.2
		}
		end = max(end, at+air)
	}
	text := func(i int, s style, words string) Text {
		t, _ := p.flow(cells[i].X+1, 0, cells[i].W-2, s, words)
		return t
	}
	name := p.fit(Box{cells[0].X + 1, 0, cells[0].W - 2, 12}, style{Face: Bold, Size: 14, Least: 9, Leading: 1.08}, r.Client)
	name.H = float64(len(name.Lines)) * name.Lead
	column(0, p.said(name, text(0, style{Size: leastPage, Tone: Quiet}, r.Week))...)
	column(1, p.said(text(1, style{Face: Bold, Size: 12, Leading: 1.1}, r.Work), text(1, style{Size: 9, Leading: 1.12}, r.Help),
		text(1, style{Size: leastPage, Tone: Quiet}, r.More), text(1, style{Face: Bold, Size: leastPage}, r.Note))...)
	column(2, p.amount(cells[2], r))
	more, below := p.joints(cells[3], y+air, r)
	marks, end = append(marks, more...), max(end, below+air)
	more, below = p.sets(cells[4], y+air, r)
	marks, end = append(marks, more...), max(end, below+air)
	return marks, end - y
}

// said leaves out what has no words.
func (p *classPage) said(all ...Text) []Text {
	var out []Text
	for _, t := range all {
		if len(t.Lines) > 1 || t.Lines[0] != "" {
			out = append(out, t)
		}
	}
	return out
}

// amount is the dose in large figures; of what is open the sentence that says it.
func (p *classPage) amount(b Box, r *view.ClassRow) Text {
	t := p.fit(Box{b.X + 1, 0, b.W - 2, 24}, style{Face: Bold, Size: 15, Least: leastPage, Leading: 1.08}, r.Amount)
	t.H = float64(len(t.Lines)) * t.Lead
	return t
}

func (p *classPage) joints(b Box, y float64, r *view.ClassRow) ([]Mark, float64) {
	w := (b.W - 2) / float64(max(len(r.Joints), 1))
	var marks []Mark
	for i, joint := range r.Joints {
		cell := Box{b.X + 1 + float64(i)*w, y, w, classCell + 1}
		marks = append(marks, Frame{cell, 0.3, 0, Ink},
			p.fit(Box{cell.X + 0.6, cell.Y + 0.3, cell.W - 1.2, 3.4}, style{Size: leastPage, Leading: 1.05, Tone: Quiet}, joint))
	}
	return marks, y + classCell + 1
}

// sets are cells for each set and for the whole, in as many lines as they take.
func (p *classPage) sets(b Box, y float64, r *view.ClassRow) ([]Mark, float64) {
	n := len(r.Boxes)
	lines := max(1, (n+mostCells-1)/mostCells)
	perLine := (n + lines - 1) / lines
	w := min(classCell, (b.W-2)/float64(max(perLine, 1)))
	var marks []Mark
	for i, box := range r.Boxes {
		cell := Box{b.X + 1 + float64(i%perLine)*w, y + float64(i/perLine)*classCell, w, classCell}
		if box.After {
			marks = append(marks, Fill{cell, Tint})
		}
		marks = append(marks, Frame{cell, 0.3, 0, Ink},
			p.fit(Box{cell.X + 0.5, cell.Y + 0.3, cell.W - 1, 3.4}, style{Size: leastPage, Leading: 1.05, Tone: Quiet}, box.Caption))
	}
	return marks, y + float64(lines)*classCell
}
