package paper

import (
	"gatepost/program"
	"gatepost/program/publish/view"
)

// Shown are the holds that explain rigging and measuring: under a band, and a lean or a
// straight hang; and what gives the pictures of an exercise's page. What is not drawn leaves
// its drawing out.
type Shown struct {
	Banded, Second program.Stance
	Pictures       func(exercise string) []program.Picture
}

// TestSheet prints the blank form of the next assessment: the fields in the order
// of the assessment file, each with how to measure it and room to write, a table
// of bands, where they hang, and on a second page a table of tests and drawings of
// how to rig and measure; for a road map, or for none yet.
func TestSheet(coach program.Coach, lib *program.Library, skill string, shown Shown) ([]byte, program.Problems) {
	sheet, problems := view.NewSheet(coach, lib, skill)
	ts := &typesetter{lost: map[rune]bool{}}
	v := &view.View{Title: sheet.Title, Goal: sheet.Title, Coach: coach, Lang: sheet.Lang}
	out, more := write(v, ts, sheet.Title, layTestSheet(ts, sheet, shown)...)
	return out, append(problems, more...)
}

const (
	sheetSize   = 8.5 // points
	sheetGap    = 7   // mm between the columns
	sheetRow    = 7   // mm, a row to write in
	bandRows    = 5   // at most
	stripRoom   = 28  // mm below the bands, for where they hang
	testRows    = 10
	tableNames  = 4.4 // mm, the names of a table's columns
	fieldHeight = 8.3 // mm at least, to write in with a pencil
	writingRoom = 0.46
)

// testSheet is a page of the form being laid out.
type testSheet struct {
	*Page
	*typesetter
	sheet *view.Sheet
}

func layTestSheet(ts *typesetter, sheet *view.Sheet, shown Shown) []*Page {
	hand, _ := sheets(sheet.Coach.Paper)
	first := &testSheet{hand.portrait(sheet.Title, leastPage), ts, sheet}
	y := first.fields(sheet, first.head(sheet.Lead))
	first.kit(y)
	first.end(1)
	second := &testSheet{hand.portrait(sheet.Tests.Title, leastPage), ts, sheet}
	y = second.table(second.head(""), sheet.Tests, testRows, sharesOf(len(sheet.Tests.Columns)))
	second.whose()
	second.panels(y+5, shown)
	second.end(2)
	return []*Page{first.Page, second.Page}
}

// kit is a table of bands and where they hang; or what else helps, and lines for notes.
func (p *testSheet) kit(y float64) {
	sheet := p.sheet
	if len(sheet.Bands.Columns) > 0 {
		room := p.Height - pageMargin - 12.5 - y - stripRoom - p.caption(sheet.Bands, 0, false) - tableNames
		y = p.table(y+3, sheet.Bands, min(max(int(room/sheetRow), 2), bandRows), bandShares)
		p.strip(sheet.Rig, y+3)
		return
	}
	if len(sheet.Rig.Fields) > 0 {
		p.strip(sheet.Rig, y+3)
		y += stripRoom
	}
	title, y := p.flow(pageMargin, y+3, p.Width-2*pageMargin, style{Face: Bold, Size: 10, Tone: Accent}, sheet.Notes)
	p.add(title)
	for y += sheetRow; y < p.Height-pageMargin-14; y += sheetRow {
		p.add(Stroke{Points: []Point{{pageMargin, y}, {p.Width - pageMargin, y}}, Width: 0.2, Tone: Quiet})
	}
}

// head is the title and how to fill the form in.
func (p *testSheet) head(lead string) float64 {
	width := p.Width - 2*pageMargin
	p.add(
		p.fit(Box{pageMargin, pageMargin, 0.4 * width, 11}, style{Face: Bold, Size: 24, Least: 10, Leading: 1.1}, p.sheet.Title),
		p.fit(Box{pageMargin + 0.42*width, pageMargin, 0.58 * width, 11}, style{Size: sheetSize, Least: leastPage, Bottom: true}, lead),
		Fill{Box{pageMargin, pageMargin + 12, width, 0.7}, Ink},
	)
	return pageMargin + 15
}

// whose has room beside the title for the name and the day.
func (p *testSheet) whose() {
	width := p.Width - 2*pageMargin
	x, w := pageMargin+0.42*width, 0.58*width
	for i, share := range []float64{0.6, 0.4} {
		b := Box{x, pageMargin + 5, share*w - 3*float64(1-i), 5.6}
		label := p.fit(b, style{Face: Bold, Size: sheetSize, Least: leastPage, Bottom: true}, p.sheet.Whose[i])
		label.W = Bold.width(label.Lines[0], label.Size)
		p.add(label, Stroke{Points: []Point{{label.Right() + 1.5, b.Bottom()}, {b.Right(), b.Bottom()}}, Width: 0.25, Tone: Ink})
		x += share * w
	}
}

// end is when to stop, who decides, and the foot.
func (p *testSheet) end(number int) {
	bottom := p.Height - pageMargin - 12.5
	p.add(p.fit(Box{pageMargin, bottom + 1, p.Width - 2*pageMargin, 6.8}, style{Size: leastPage}, p.sheet.Stop+" "+p.sheet.Foot))
	foot(p.Page, p.typesetter, &view.View{Coach: p.sheet.Coach, Labels: p.sheet.Labels, Client: p.sheet.Title}, number, 2)
}

// fields fills two columns, the parts in order, begun anew where both are most
// alike.
func (p *testSheet) fields(sheet *view.Sheet, top float64) float64 {
	w := (p.Width - 2*pageMargin - sheetGap) / 2
	var ends []float64 // of the parts under each other
	total := 0.0
	for _, part := range sheet.Parts {
		total += p.part(part, 0, 0, w, false)
		ends = append(ends, total)
	}
	turn, longer := 0, total
	for i, end := range ends {
		if max(end, total-end) < longer {
			turn, longer = i+1, max(end, total-end)
		}
	}
	x, y := float64(pageMargin), top
	for i, part := range sheet.Parts {
		if i == turn {
			x, y = x+w+sheetGap, top
		}
		y += p.part(part, x, y, w, true)
	}
	return top + longer
}

// part lays a group of fields, or only measures it, and says how high it is.
func (p *testSheet) part(part view.SheetPart, x, top, w float64, draw bool) float64 {
	var marks []Mark
	heading, y := p.flow(x, top, w, style{Face: Bold, Size: 10, Tone: Accent}, part.Title)
	marks = append(marks, heading)
	for _, f := range part.Fields {
		var field []Mark
		field, y = p.field(f, x, y+0.5, w)
		marks = append(marks, field...)
	}
	if draw {
		p.add(marks...)
	}
	return y + 1.5 - top
}

// field is a label with its how-to at the left, and room to write at the right.
func (p *testSheet) field(f view.Field, x, y, w float64) ([]Mark, float64) {
	left := w * (1 - writingRoom)
	label, below := p.flow(x, y, left-2, style{Face: Bold, Size: sheetSize}, f.Label)
	var marks []Mark
	inline := label.X + Bold.width(label.Lines[0], label.Size) + 1.5
	room := x + left - 2 - inline
	if Regular.width(p.clean(f.How), leastPage) <= room {
		label.W = inline - 0.5 - label.X
		marks = []Mark{label, p.fit(Box{inline, y, room, label.H}, style{Size: leastPage, Tone: Quiet, Middle: true}, f.How)}
	} else {
		var how Text
		how, below = p.flow(x, below-0.4, left-2, style{Size: leastPage, Tone: Quiet}, f.How)
		label.H -= 0.4
		label.Lead -= 0.4
		marks = []Mark{label, how}
	}
	end := max(below, y+fieldHeight)
	marks = append(marks, p.writing(f, Box{x + left, end - 4.6, w - left, 4.6})...)
	return marks, end
}

// writing is a line with its unit, or a box to tick for each choice.
func (p *testSheet) writing(f view.Field, b Box) []Mark {
	if len(f.Choices) == 0 {
		unit := p.fit(Box{b.X + b.W*0.55, b.Y, b.W * 0.45, b.H - 0.4},
			style{Size: leastPage, Tone: Quiet, Align: AlignRight, Bottom: true}, f.Unit)
		return []Mark{unit, Stroke{Points: []Point{{b.X, b.Bottom()}, {b.Right(), b.Bottom()}}, Width: 0.25, Tone: Ink}}
	}
	if len(f.Choices) > 4 {
		return p.narrowChoices(f.Choices, b)
	}
	var marks []Mark
	const side, size = 2.8, leastPage
	free := b.W
	for _, choice := range f.Choices {
		free -= side + 1 + Regular.width(p.clean(choice), size)
	}
	x := b.X
	for _, choice := range f.Choices {
		w := min(Regular.width(p.clean(choice), size), b.Right()-x-side-1)
		if w <= 0 {
			break
		}
		marks = append(marks, Frame{Box{x + 0.2, b.Bottom() - side - 0.4, side, side}, 0.25, 0, Ink},
			p.fit(Box{x + side + 1, b.Bottom() - 3.6, w, 3.5}, style{Size: size, Middle: true}, choice))
		x += side + 1 + w + max(free/float64(len(f.Choices)), 0)
	}
	return marks
}

// narrowChoices has each name over its box: the days of a week.
func (p *testSheet) narrowChoices(choices []string, b Box) []Mark {
	var marks []Mark
	w := b.W / float64(len(choices))
	for i, choice := range choices {
		x := b.X + float64(i)*w
		marks = append(marks, p.fit(Box{x, b.Bottom() - 6.4, w, 3.4}, style{Size: leastPage, Tone: Quiet}, choice),
			Frame{Box{x + 0.2, b.Bottom() - 2.8, 2.8, 2.8}, 0.25, 0, Ink})
	}
	return marks
}

// Shares of the width for the columns of the two tables.
var (
	bandShares = []float64{0.25, 0.12, 0.105, 0.105, 0.105, 0.105, 0.105, 0.105}
	testShares = []float64{0.30, 0.26, 0.09, 0.09, 0.08, 0.10, 0.08}
	fewShares  = []float64{0.46, 0.18, 0.18, 0.18}                                     // of tries
	manyShares = []float64{0.225, 0.17, 0.095, 0.075, 0.095, 0.095, 0.06, 0.105, 0.08} // with repetitions, lean and scale
)

// sharesOf are those of a table of tests.
func sharesOf(columns int) []float64 {
	switch {
	case columns > len(testShares):
		return manyShares
	case columns <= len(fewShares):
		return fewShares
	}
	return testShares
}

// caption is a table's title and how-to, and how high they are.
func (p *testSheet) caption(t view.SheetTable, y float64, draw bool) float64 {
	width := p.Width - 2*pageMargin
	title, _ := p.flow(pageMargin, y, width/3, style{Face: Bold, Size: 10, Tone: Accent}, t.Title)
	title.W = Bold.width(title.Lines[0], title.Size)
	x := title.X + title.W + 3
	how, end := p.flow(x, y+0.3, pageMargin+width-x, style{Size: leastPage, Tone: Quiet}, t.How)
	if draw {
		p.add(title, how)
	}
	return max(end, y+title.H) + 0.8 - y
}

func (p *testSheet) table(y float64, t view.SheetTable, rows int, shares []float64) float64 {
	width := p.Width - 2*pageMargin
	y += p.caption(t, y, true)
	height := tableNames + float64(rows)*sheetRow
	p.add(Fill{Box{pageMargin, y, width, tableNames}, Tint})
	x := float64(pageMargin)
	for i, column := range t.Columns {
		w := shares[i] * width
		p.add(p.fit(Box{x + 1, y, w - 2, tableNames}, style{Size: leastPage, Face: Bold, Middle: true}, column))
		if i > 0 {
			p.add(Stroke{Points: []Point{{x, y}, {x, y + height}}, Width: 0.2, Tone: Quiet})
		}
		x += w
	}
	for i := range rows {
		if i < len(t.First) {
			p.add(p.fit(Box{pageMargin + 1, y + tableNames + float64(i)*sheetRow, shares[0]*width - 2, sheetRow},
				style{Size: sheetSize, Least: leastPage, Middle: true}, t.First[i]))
		}
		at := y + tableNames + float64(i)*sheetRow
		p.add(Stroke{Points: []Point{{pageMargin, at}, {pageMargin + width, at}}, Width: 0.2, Tone: Quiet})
	}
	p.add(Frame{Box{pageMargin, y, width, height}, 0.4, 0, Ink})
	return y + height
}

// strip lays the fields of a part beside each other; it says where they end.
func (p *testSheet) strip(part view.SheetPart, y float64) {
	heading, y := p.flow(pageMargin, y, p.Width-2*pageMargin, style{Face: Bold, Size: 10, Tone: Accent}, part.Title)
	p.add(heading)
	w := (p.Width - 2*pageMargin + 5) / float64(len(part.Fields))
	for i, f := range part.Fields {
		x := pageMargin + float64(i)*w
		label, below := p.flow(x, y+0.5, w-5, style{Face: Bold, Size: sheetSize}, f.Label)
		how := p.fit(Box{x, below - 0.4, w - 5, 3.6}, style{Size: leastPage, Tone: Quiet}, f.How)
		label.H, label.Lead = label.H-0.4, label.Lead-0.4
		p.add(label, how)
		p.add(p.writing(f, Box{x, how.Bottom() + 2, w - 5, 4.6})...)
	}
}
