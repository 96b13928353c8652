package paper

import (
	"math"

	"gatepost/program"
	"gatepost/program/figure"
	"gatepost/program/publish/view"
)

// panels are the drawings of how to rig and measure, two by two.
func (p *testSheet) panels(y float64, shown Shown) {
	const gap = 6
	t := p.fit(Box{pageMargin, y, p.Width - 2*pageMargin, 4.5}, style{Face: Bold, Size: 10, Tone: Accent}, p.sheet.How)
	p.add(t)
	y += 6
	w := (p.Width - 2*pageMargin - gap) / 2
	h := (p.Height - pageMargin - 13 - y - 3) / 2
	for i, panel := range p.drawings(shown) {
		b := Box{pageMargin + float64(i%2)*(w+gap), y + float64(i/2)*(h+3), w, h}
		p.panel(b, panel.SheetPanel, panel.draw)
	}
}

// sheetDrawing is a panel, and what draws it.
type sheetDrawing struct {
	view.SheetPanel
	draw func(Box)
}

// drawings are how to rig and measure, or where nothing is hung what is tested first.
func (p *testSheet) drawings(shown Shown) []sheetDrawing {
	panels := p.sheet.Panels
	lean, straddle := sheetDrawing{panels.Second, func(b Box) { p.second(b, shown.Second) }}, sheetDrawing{panels.Straddle, p.straddle}
	if len(p.sheet.Drawn) == 0 {
		return []sheetDrawing{{panels.Rig, func(b Box) { p.rig(b, shown) }}, lean, {panels.Board, p.board}, straddle}
	}
	var all []sheetDrawing
	for _, panel := range p.sheet.Drawn {
		all = append(all, sheetDrawing{panel, func(b Box) { p.exercise(b, shown, panel.ExerciseID) }})
	}
	return append(all, lean, straddle)[:max(len(all), min(len(all)+2, 4))]
}

// exercise is how an exercise begins and ends.
func (p *testSheet) exercise(b Box, shown Shown, id string) {
	if shown.Pictures == nil {
		return
	}
	all := framesOf(shown.Pictures(id))
	scale := all.scale(b.W, b.H)
	corner := Point{b.X + (b.W-all.width(scale))/2, b.Y + (b.H-all.height(scale))/2}
	p.add(all.at(corner, scale)...)
}

const panelText = 15.5 // mm of a panel for its words

func (p *testSheet) panel(b Box, words view.SheetPanel, draw func(Box)) {
	p.add(Frame{b, 0.25, 0, Line},
		p.fit(Box{b.X + 2, b.Y + 1, b.W - 4, 4}, style{Face: Bold, Size: sheetSize}, words.Title),
		p.fit(Box{b.X + 2, b.Bottom() - panelText - 0.5, b.W - 4, panelText}, style{Size: 8.5, Least: leastPage, Leading: 1.15}, words.Text))
	draw(Box{b.X + 3, b.Y + 5.5, b.W - 6, b.H - 5.5 - panelText - 2})
}

// placed is a body in a box: where its metres are on the page.
type placed struct {
	scale float64 // mm a metre
	zero  Point   // of the page, where the hands are
}

func (a placed) at(p figure.Point) Point {
	return Point{a.zero.X + a.scale*p.X, a.zero.Y - a.scale*p.Y}
}

// place stands a drawing in the middle of a box's width.
func (p *testSheet) place(d figure.Drawing, b Box) placed {
	scale := d.Scale(b.W, b.H)
	b.X += (b.W - scale*d.Width()) / 2
	p.add(p.drawn(d, b)...)
	return placed{scale, Point{b.X - scale*d.Min.X, b.Y + scale*d.Max.Y}}
}

// rig is a hold under a band, with the two heights.
func (p *testSheet) rig(b Box, shown Shown) {
	s := shown.Banded
	switch {
	case !s.Drawn():
		return
	case s.Hang:
		p.hung(Box{b.X + 0.2*b.W, b.Y, 0.8 * b.W, b.H}, s, figure.Options{}, b.X+16)
		return
	}
	at := p.place(figure.Draw(s, figure.Options{}), Box{b.X + 0.3*b.W, b.Y, 0.7 * b.W, b.H})
	m, floor := p.sheet.Marks, at.at(figure.Point{Y: s.Floor}).Y
	anchor, support := at.at(s.Anchor), at.at(figure.Point{})
	p.upright(b.X+16, floor, anchor.Y, m.Anchor)
	p.upright(b.X+32, floor, support.Y, m.Support)
	p.add(Stroke{Points: []Point{{b.X + 16, anchor.Y}, {anchor.X, anchor.Y}}, Width: 0.2, Dash: 0.8, Tone: Quiet},
		Stroke{Points: []Point{{b.X + 32, support.Y}, {support.X, support.Y}}, Width: 0.2, Dash: 0.8, Tone: Quiet},
		Stroke{Points: []Point{{b.X, floor}, {support.X, floor}}, Width: 0.2, Tone: Quiet},
		Stroke{Points: []Point{anchor, {anchor.X, floor}}, Width: 0.2, Dash: 0.8, Tone: Quiet})
}

// upright is a measured height with its name at the left.
func (p *testSheet) upright(x, from, to float64, name string) {
	p.add(arrow(Point{x, from}, Point{x, to})...)
	w := Regular.width(p.clean(name), sheetSize)
	p.add(p.fit(Box{x - w - 1.2, math.Min((from+to)/2-2, from-4.6), w + 0.1, 4}, style{Size: sheetSize, Least: leastPage, Middle: true}, name))
}

// arrow is a measure: a line with a short stroke across each end.
func arrow(a, b Point) []Mark {
	const half = 1.1
	across := Point{half, 0}
	if math.Abs(b.X-a.X) > math.Abs(b.Y-a.Y) {
		across = Point{0, half}
	}
	end := func(p Point) Mark {
		return Stroke{Points: []Point{{p.X - across.X, p.Y - across.Y}, {p.X + across.X, p.Y + across.Y}}, Width: 0.35, Tone: Accent}
	}
	return []Mark{Stroke{Points: []Point{a, b}, Width: 0.35, Tone: Accent}, end(a), end(b)}
}

// hung is a body under a bar, above the floor, with the bar's height measured at x.
func (p *testSheet) hung(b Box, s program.Stance, o figure.Options, x float64) {
	d := figure.Draw(s, o)
	d.Min.Y = min(d.Min.Y, s.Floor)
	at := p.place(d, b)
	floor, bar := at.at(figure.Point{Y: s.Floor}), at.at(figure.Point{})
	p.upright(x, floor.Y, bar.Y, p.sheet.Marks.Bar)
	p.add(Stroke{Points: []Point{{x, bar.Y}, bar}, Width: 0.2, Dash: 0.8, Tone: Quiet},
		Stroke{Points: []Point{{x - 6, floor.Y}, {b.Right(), floor.Y}}, Width: 0.2, Tone: Quiet})
}

// second is the straight hang, or the planche lean with its measure from the wrist crease.
func (p *testSheet) second(b Box, s program.Stance) {
	switch {
	case !s.Drawn():
		return
	case s.Hang:
		p.hung(b, s, figure.Options{Plain: true}, b.X+b.W/4)
		return
	}
	at := p.place(figure.Draw(s, figure.Options{Plain: true}), Box{b.X, b.Y, b.W, b.H - 8})
	floor := at.at(figure.Point{Y: s.Floor}).Y
	wrist, shoulder := at.at(s.Wrist), at.at(s.Shoulder)
	y := floor + 3
	p.add(Stroke{Points: []Point{shoulder, {shoulder.X, y + 1}}, Width: 0.3, Dash: 0.8, Tone: Accent},
		Stroke{Points: []Point{wrist, {wrist.X, y + 1}}, Width: 0.3, Dash: 0.8, Tone: Accent})
	p.add(arrow(Point{wrist.X, y}, Point{shoulder.X, y})...)
	p.add(p.fit(Box{wrist.X - 20, y + 1, shoulder.X - wrist.X + 40, 4}, style{Size: sheetSize, Align: AlignCentre, Middle: true}, p.sheet.Marks.Lean))
}

// board is a body lying on a board on two edges, one of them on a scale. Drawn
// from plain shapes: a lying body carries nothing on its hands.
func (p *testSheet) board(b Box) {
	m := p.sheet.Marks
	left, right := b.X+12, b.Right()-16 // soles at the left edge
	y := b.Y + 0.5*b.H
	unit := (right - left) / 2.1 // mm a metre
	p.add(p.drawn(drawingOf(figure.Point{}, figure.Point{X: 1.72, Y: 0.25}, supine), Box{left, y - 0.25*unit, 1.72 * unit, 0.25 * unit})...)
	p.add(Fill{Box{left - 6, y, right - left + 12, 1.2}, Quiet})
	p.add(Fill{Box{right - 6, y + 5.6, 12, 2.2}, Ink}, Fill{Box{left - 4, y + 5.6, 8, 2.2}, Tint})
	for _, x := range []float64{left, right} {
		p.add(Stroke{Points: []Point{{x, y + 1.4}, {x - 2, y + 5.4}, {x + 2, y + 5.4}, {x, y + 1.4}}, Width: 0.4, Tone: Ink})
	}
	p.add(p.fit(Box{right - 14, y + 8.2, 28, 4}, style{Size: sheetSize, Align: AlignCentre, Middle: true}, m.Scale))
	p.add(arrow(Point{left, y + 13.5}, Point{right, y + 13.5})...)
	p.add(p.fit(Box{left, y + 14, right - left, 4}, style{Size: sheetSize, Align: AlignCentre, Middle: true}, m.Edges))
	point := left + 0.55*1.7*unit // the usual share of stature (common practice: 55 to 57 %)
	p.add(arrow(Point{left, y - 12}, Point{point, y - 12})...)
	p.add(Stroke{Points: []Point{{point, y - 12}, {point, y - 3}}, Width: 0.3, Dash: 0.8, Tone: Accent})
	p.add(p.fit(Box{left, y - 16.4, point - left, 4}, style{Size: sheetSize, Align: AlignCentre, Middle: true}, m.Point))
}
