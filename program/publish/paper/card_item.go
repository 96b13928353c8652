package paper

import "gatepost/program/publish/view"

const boxesALine = 8

// mm of the figure; tight where rows are many.
const (
	figureWidth, figureHeight           = 32.0, 20.0
	tightFigureWidth, tightFigureHeight = 28.0, 15.0
)

// large is the main hold: name, dose and figure, bands, where the hands go, and
// under them the boxes.
func (p *card) large(item *view.CardItem, y float64) ([]Mark, float64) {
	marks, w, end := p.figure(item, y)
	head, below := p.largeHead(item, y, w)
	marks = append(marks, head...)
	for _, line := range []string{joined(item.Rig, item.Help), item.Spot, item.Found} {
		if line != "" {
			var t Text
			t, below = p.lines(p.X, below, w, style{Face: Bold, Size: 8.5, Leading: 1.1}, line, 2)
			marks = append(marks, t)
		}
	}
	end = max(end, below) + 0.8
	boxes, width, bottom := p.boxes(p.X, end, item, boxesALine)
	x := p.X + width + 2.5
	beside, more := p.beside(Box{x, end, p.Right() - x, bottom - end}, item)
	return append(append(marks, boxes...), beside...), bottom + more - y
}

// figure is the session's figure at the right of a row: how much width it
// leaves, and where it ends.
func (p *card) figure(item *view.CardItem, y float64) (marks []Mark, left, end float64) {
	width, h := figureWidth, figureHeight
	if p.tight {
		width, h = tightFigureWidth, tightFigureHeight
	}
	plate := p.plate(width, h)
	if plate == nil || !item.Shown {
		return nil, p.W, y
	}
	b := Box{p.Right() - width, y, width, h}.Inset((width-plate.Width)/2, (h-plate.Height)/2)
	return []Mark{Picture{b, plate}}, p.W - width - 1, y + h
}

// beside are the rest and, in small print, the easier and the harder version.
// Where these have no room beside the boxes they go under them; it says how much
// that adds.
func (p *card) beside(b Box, item *view.CardItem) ([]Mark, float64) {
	var marks []Mark
	y := b.Y
	s := style{Size: 9, Leading: 1.08}
	if pause := p.pause(item, b.W, s); pause != "" {
		t, end := p.lines(b.X, y, b.W, s, pause, 2)
		marks, y = append(marks, t), end
	}
	s = style{Size: leastCard, Leading: 1.08, Tone: Quiet}
	texts := p.waysOf(item)
	lines := 0
	for _, text := range texts {
		set, _ := p.linesOf(s.Face, s.Size, b.W, p.clean(text))
		lines += len(set)
	}
	if more := 0.6 + s.lead(s.Size); y+float64(lines)*s.lead(s.Size) > b.Bottom()+0.01 {
		under := Box{p.X, b.Bottom() + 0.6, p.W, s.lead(s.Size)}
		return append(marks, p.fit(under, s, sentences(texts...))), more
	}
	for _, text := range texts {
		t, end := p.flow(b.X, y, b.W, s, text)
		marks, y = append(marks, t), end
	}
	return marks, 0
}

// compact is a hold where there is no room for more: all words at the left, the
// boxes at the right.
func (p *card) compact(item *view.CardItem, y float64) ([]Mark, float64) {
	perLine := boxColumns(item)
	width := boxesWidth(item, perLine)
	marks, _, bottom := p.boxes(p.Right()-width, y, item, perLine)
	w := p.W - width - 2
	dose := min(Bold.width(p.clean(item.Amount), 14)+0.1, w/2)
	marks = append(marks,
		p.fit(Box{p.X, y, w - dose - 2, 5.4}, style{Face: Bold, Size: 11, Least: leastCard, Leading: 1.05}, item.Name),
		p.fit(Box{p.X + w - dose, y, dose, 5.4}, style{Face: Bold, Size: 14, Least: leastHold, Leading: 1.05}, item.Amount))
	end := y + 5.4
	if p.terse {
		s := style{Face: Bold, Size: leastCard, Leading: 1.05}
		t, below := p.lines(p.X, end, w, s, joined(item.Rig, item.Help, item.Spot, item.Found, p.pause(item, w, s)), 3)
		marks = append(marks, t)
		if ways := sentences(p.waysOf(item)...); ways != "" && !p.silent {
			s.Face, s.Tone = Regular, Quiet
			t, below = p.lines(p.X, below, w, s, ways, 2)
			marks = append(marks, t)
		}
		return marks, max(below, bottom) - y
	}
	bold, fine := style{Face: Bold, Size: 8, Leading: 1.08}, style{Size: leastCard, Leading: 1.08}
	last := sentences(append([]string{p.pause(item, w, fine)}, p.waysOf(item)...)...)
	for _, line := range []struct {
		text  string
		style style
	}{{joined(item.Rig, item.Help), bold}, {item.Spot, bold}, {item.Found, bold}, {last, fine}} {
		if line.text != "" {
			var t Text
			t, end = p.lines(p.X, end, w, line.style, line.text, 3)
			marks = append(marks, t)
		}
	}
	return marks, max(end, bottom) - y
}

// boxColumns is how many boxes stand beside each other at the right of a row.
func boxColumns(item *view.CardItem) int {
	if n := len(item.Boxes); n > 5 {
		return (n + 1) / 2
	}
	return 5
}

// largeHead is the name and, beside it, the dose in large figures; of a test,
// which has none, what to do.
func (p *card) largeHead(item *view.CardItem, y, w float64) ([]Mark, float64) {
	const h = 8
	name := style{Face: Bold, Size: 14, Least: 8, Leading: 1.05, Middle: true}
	if item.Open {
		marks := []Mark{p.fit(Box{p.X, y, w, 5.6}, name, item.Name)}
		t, end := p.lines(p.X, y+5.6, w, style{Face: Bold, Size: 11, Leading: 1.1}, item.Amount, 3)
		return append(marks, t), end
	}
	dose := style{Face: Bold, Size: 22, Least: leastHold, Leading: 1.02, Middle: true}
	width := min(Bold.width(p.clean(item.Amount), dose.Size), 0.6*w)
	t := p.fit(Box{p.X, y, w - width - 3, h}, name, item.Name)
	t.W = 0
	for _, line := range t.Lines {
		t.W = max(t.W, Bold.width(line, t.Size))
	}
	return []Mark{t, p.fit(Box{t.Right() + 3, y, width + 0.1, h}, dose, item.Amount)}, y + h
}

// lines sets a text in as many lines as it takes, but no more than most.
func (p *card) lines(x, y, w float64, s style, text string, most int) (Text, float64) {
	t, end := p.flow(x, y, w, s, text)
	if len(t.Lines) > most {
		t.Lines = clip(t.Face, t.Size, t.W, t.Lines, most)
		t.H = float64(most) * t.Lead
		end = y + t.H
	}
	return t, end
}

const (
	nameSize   = 9.5 // points
	doseWidth  = 18  // mm
	usualBoxes = 4   // doses stand under each other where there are no more
)

// small is any other item of its own: words at the left, dose, boxes at the right.
func (p *card) small(whole *view.CardItem, y float64) ([]Mark, float64) {
	part := *whole // what is said otherwise is so in this row only
	item := &part
	perLine := boxColumns(item)
	width := boxesWidth(item, perLine)
	boxes, _, bottom := p.boxes(p.Right()-width, y, item, perLine)
	dose := p.Right() - max(width, usualBoxes*writingBox) - 1.5 - doseWidth
	if item.Open {
		dose = p.Right() - width - 1.5
	}
	w := dose - 1.5 - p.X
	below := false
	if p.tight && item.Check {
		item.Help, item.Spot = "", "" // as in the main row, which follows
		if below = item.Rig != "" && Bold.width(p.clean(joined(item.Name, item.Rig)), nameSize) > w; below {
			item.Rig = p.v.CardText.AsBelow
		}
	}
	if below || item.StepID != "" && item.Help == "" && item.Spot == "" && item.Full == "" {
		item.Name, item.Rig = joined(item.Name, item.Rig), "" // "Open tuck, free"
	}
	bold := style{Face: Bold, Size: nameSize, Least: leastCard, Leading: 1.08}
	name := p.fit(Box{p.X, y, w, 2 * bold.lead(nameSize)}, bold, item.Name)
	name.H = float64(len(name.Lines)) * name.Lead
	marks, end := append(boxes, name), name.Bottom()
	strong := Bold
	help := func() {
		for _, line := range []string{joined(item.Rig, item.Help), item.Spot, item.Found} {
			if line != "" {
				var t Text
				t, end = p.lines(p.X, end, w, style{Size: 8, Leading: 1.08, Face: strong}, line, 4)
				marks = append(marks, t)
			}
		}
	}
	if item.Full == "" { // what is found comes first, and then how
		help()
	}
	if item.Open {
		s := style{Size: 9, Leading: 1.08}
		if p.terse {
			s.Size = leastCard
		}
		if item.Sets > 1 {
			item.Amount = joined(item.Amount, item.Pause)
		}
		if item.Full != "" {
			s.Face, strong = Bold, Regular
		}
		var t Text
		t, end = p.lines(p.X, end, w, s, item.Amount, 3)
		if marks = append(marks, t); item.Full != "" {
			help()
		}
		return marks, max(end, bottom) - y
	}
	marks = append(marks, p.dose(item, Box{dose, y, doseWidth, bottom - y})...)
	small := style{Size: leastCard, Leading: 1.08, Tone: Quiet}
	ways := p.waysOf(item)
	if one := sentences(ways...); Regular.width(p.clean(one), leastCard) <= w {
		ways = []string{one}
	}
	for i, text := range ways {
		if p.bare && i > 0 && end+small.lead(small.Size) > bottom {
			break // the easier version is said, the harder one may wait
		}
		var t Text
		t, end = p.lines(p.X, end, w, small, text, 2)
		marks = append(marks, t)
	}
	return marks, max(end, bottom) - y
}

// dose is sets and seconds or repetitions, over sides and rest.
func (p *card) dose(item *view.CardItem, b Box) []Mark {
	s := style{Face: Bold, Size: 13, Least: leastHold, Leading: 1.02}
	return []Mark{p.fit(Box{b.X, b.Y, b.W, 5}, s, item.Amount),
		p.aside(Box{b.X, b.Y + 5, b.W, b.H - 5}, style{Size: 7.5, Least: leastCard, Leading: 1.06}, item)}
}

// boxes are an item's, perLine beside each other, those of the whole on a ground.
// It says how wide they are and where they end.
func (p *card) boxes(x, y float64, item *view.CardItem, perLine int) (marks []Mark, width, bottom float64) {
	perLine = min(perLine, len(item.Boxes))
	marks = make([]Mark, 0, 3*len(item.Boxes))
	for i, box := range item.Boxes {
		b := Box{x + float64(i%perLine)*writingBox, y + float64(i/perLine)*writingBox, writingBox, writingBox}
		if box.After {
			marks = append(marks, Fill{b, Tint})
		}
		marks = append(marks, Frame{b, 0.3, 0, Ink},
			p.fit(Box{b.X + 0.6, b.Y + 0.4, b.W - 1.2, 2.8}, style{Size: leastCard, Leading: 1.1, Tone: Quiet}, box.Caption))
		bottom = b.Bottom()
	}
	return marks, boxesWidth(item, perLine), bottom
}

// boxesWidth is how wide a line of boxes is.
func boxesWidth(item *view.CardItem, perLine int) float64 {
	return float64(min(perLine, len(item.Boxes))) * writingBox
}
