package paper

import (
	"strings"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// cardRow is one item in full, or several that share a row.
type cardRow struct {
	items   []view.CardItem
	caption string // of a shared row
	first   bool   // what the session is about, and tests: larger
}

// mostRows is what a person takes in at the wall, the preparation counted (our
// judgement).
const (
	mostRows = 7
	leastGap = 1 // mm between rows
)

// sharing says which items a session gives a row together, when its items are
// more than the card has room for. Holds and tests never share.
type sharing struct {
	finish, pulls, rests, strength bool
	tight                          bool // no rests in shared rows, a smaller figure
}

// sharings are the ways, the roomiest first.
var sharings = []sharing{
	{}, {finish: true}, {finish: true, pulls: true}, {finish: true, pulls: true, rests: true},
	{finish: true, pulls: true, rests: true, tight: true},
	{finish: true, pulls: true, rests: true, strength: true, tight: true},
}

// rows lays the items between two heights, in the first way that fits, and gives
// what is left over to the gaps.
func (p *card) rows(top, bottom float64) {
	rows, heights := p.arrange(bottom - top)
	spare := bottom - top
	for _, h := range heights {
		spare -= h
	}
	gap := max(min(spare/float64(max(len(rows), 1)), 3.5), 0)
	y := top
	for i, r := range rows {
		if i > 0 {
			p.rule(y, 0.2, Line)
		}
		marks, _ := p.row(r, y+gap/2)
		p.put(marks...)
		y += heights[i] + gap
	}
	p.notes(y, bottom)
}

// notes are lines to write on where the items leave room for two or more.
func (p *card) notes(y, bottom float64) {
	const line = 7
	if bottom-y < 2*line {
		return
	}
	p.rule(y, 0.2, Line)
	p.put(p.fit(Box{p.X, y + 0.8, p.W / 3, 2.8}, style{Size: leastCard, Leading: 1.1, Tone: Quiet}, p.v.CardText.Notes))
	for y += line; y <= bottom; y += line {
		p.put(Stroke{Points: []Point{{p.X, y}, {p.Right(), y}}, Width: 0.2, Dash: 0.6, Tone: Quiet})
	}
}

func (p *card) arrange(room float64) (rows []cardRow, heights []float64) {
	for _, s := range sharings {
		rows, heights = s.rows(p.c, p.v.CardText), nil
		p.tight = s.tight
		total := 0.0
		for _, r := range rows {
			_, h := p.row(r, 0)
			heights = append(heights, h)
			total += h
		}
		if total+leastGap*float64(len(rows)) <= room && len(rows) < mostRows {
			break
		}
	}
	return rows, heights
}

// rows groups a card's items, each group where its first item stands.
func (s sharing) rows(c *view.Card, t view.CardWords) []cardRow {
	var rows []cardRow
	at := map[string]int{}
	for i, item := range c.Items {
		caption := s.caption(item, t)
		if n, ok := at[caption]; ok && caption != "" {
			rows[n].items = append(rows[n].items, item)
			continue
		}
		at[caption] = len(rows)
		first := i == c.Main || item.RoleKey == program.RoleTest && !item.Check
		rows = append(rows, cardRow{[]view.CardItem{item}, caption, first})
	}
	return rows
}

// caption is the name of the row that an item shares; empty: it has its own.
func (s sharing) caption(item view.CardItem, t view.CardWords) string {
	pull := item.RoleKey == program.RolePull && (s.rests || s.pulls && item.Remark == "")
	switch {
	case pull:
		return t.Pull
	case item.RoleKey == program.RoleStrength && s.strength:
		return t.Strength
	case s.finish && (item.RoleKey == program.RoleTrunk || item.RoleKey == program.RoleMobility):
		return t.Finish
	}
	return ""
}

// row lays one row and says how high it is.
func (p *card) row(r cardRow, y float64) ([]Mark, float64) {
	switch {
	case len(r.items) > 1:
		return p.shared(r, y)
	case r.first:
		return p.large(r.items[0], y)
	}
	return p.small(r.items[0], y)
}

const (
	figureWidth       = 36 // mm
	figureHeight      = 21
	tightFigureHeight = 15
	boxesALine        = 7
)

// large is the main hold: name, dose and figure, bands, where the hands go, and
// under them the boxes.
func (p *card) large(item view.CardItem, y float64) ([]Mark, float64) {
	marks, w, end := p.figure(item, y)
	head, below := p.largeHead(item, y, w)
	marks = append(marks, head...)
	for _, line := range []string{joined(item.Rig, item.Help), item.Spot} {
		if line != "" {
			var t Text
			t, below = p.lines(p.X, below, w, style{Face: Bold, Size: 9, Leading: 1.08}, line, 2)
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
func (p *card) figure(item view.CardItem, y float64) (marks []Mark, left, end float64) {
	h := float64(figureHeight)
	if p.tight {
		h = tightFigureHeight
	}
	plate := p.plate(h)
	if plate == nil || item.Max {
		return nil, p.W, y
	}
	b := Box{p.Right() - figureWidth, y, figureWidth, h}.Inset((figureWidth-plate.Width)/2, (h-plate.Height)/2)
	return []Mark{Picture{b, plate}}, p.W - figureWidth - 2, y + h
}

// beside are the rest and, in small print, the easier and the harder version.
// Where these have no room beside the boxes they go under them; it says how much
// that adds.
func (p *card) beside(b Box, item view.CardItem) ([]Mark, float64) {
	var marks []Mark
	y := b.Y
	if pause := joined(item.Pause, item.Sides); pause != "" {
		t, end := p.lines(b.X, y, b.W, style{Size: 9, Leading: 1.08}, pause, 2)
		marks, y = append(marks, t), end
	}
	s := style{Size: leastCard, Leading: 1.08, Tone: Quiet}
	texts := p.waysOf(item)
	lines := 0
	for _, text := range texts {
		lines += len(breakLines(s.Face, s.Size, b.W, p.clean(text)))
	}
	if more := 0.6 + s.lead(s.Size); y+float64(lines)*s.lead(s.Size) > b.Bottom()+0.01 {
		under := Box{p.X, b.Bottom() + 0.6, p.W, s.lead(s.Size)}
		return append(marks, p.fit(under, s, strings.Join(texts, ". "))), more
	}
	for _, text := range texts {
		t, end := p.flow(b.X, y, b.W, s, text)
		marks, y = append(marks, t), end
	}
	return marks, 0
}

// largeHead is the name and, beside it, the dose in large figures; of a test,
// which has none, what to do.
func (p *card) largeHead(item view.CardItem, y, w float64) ([]Mark, float64) {
	const h = 8
	name := style{Face: Bold, Size: 14, Least: 8, Leading: 1.05, Middle: true}
	if item.Max || item.Check {
		marks := []Mark{p.fit(Box{p.X, y, w, 5.6}, name, item.Name)}
		t, end := p.lines(p.X, y+5.6, w, style{Face: Bold, Size: 11, Leading: 1.1}, item.Amount, 2)
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

const doseWidth = 18 // mm

// small is any other item of its own: words at the left, dose, boxes at the right.
func (p *card) small(item view.CardItem, y float64) ([]Mark, float64) {
	perLine := 5
	if n := sets(item) + 1; n > perLine {
		perLine = (n + 1) / 2
	}
	_, width, bottom := p.boxes(0, y, item, perLine)
	boxes, _, _ := p.boxes(p.Right()-width, y, item, perLine)
	dose := p.Right() - width - 1.5 - doseWidth
	if item.Max || item.Check {
		dose += doseWidth
	}
	w := dose - 1.5 - p.X
	name, end := p.lines(p.X, y, w, style{Face: Bold, Size: 9.5, Leading: 1.08}, item.Name, 2)
	marks := append(boxes, name)
	for _, line := range []string{joined(item.Rig, item.Help), item.Spot} {
		if line != "" {
			var t Text
			t, end = p.lines(p.X, end, w, style{Size: 8, Leading: 1.08, Face: Bold}, line, 2)
			marks = append(marks, t)
		}
	}
	if item.Max || item.Check {
		t, below := p.lines(p.X, end, w, style{Size: 9, Leading: 1.08}, item.Amount, 2)
		return append(marks, t), max(below, bottom) - y
	}
	marks = append(marks, p.dose(item, Box{dose, y, doseWidth, bottom - y})...)
	for _, text := range p.waysOf(item) {
		var t Text
		t, end = p.lines(p.X, end, w, style{Size: leastCard, Leading: 1.08, Tone: Quiet}, text, 2)
		marks = append(marks, t)
	}
	return marks, max(end, bottom) - y
}

// dose is sets and seconds or repetitions, over sides and rest.
func (p *card) dose(item view.CardItem, b Box) []Mark {
	s := style{Face: Bold, Size: 13, Least: leastHold, Leading: 1.02}
	return []Mark{p.fit(Box{b.X, b.Y, b.W, 5}, s, item.Amount),
		p.fit(Box{b.X, b.Y + 5, b.W, b.H - 5}, style{Size: 7.5, Least: leastCard, Leading: 1.06}, joined(item.Sides, item.Pause))}
}

func sets(item view.CardItem) int {
	if item.Max || item.Check {
		return 1
	}
	return max(item.Sets, 1)
}

// boxes has one for each set, numbered, and one for the RPE of the last. It says
// how wide they are and where they end.
func (p *card) boxes(x, y float64, item view.CardItem, perLine int) (marks []Mark, width, bottom float64) {
	n := sets(item)
	perLine = min(perLine, n+1)
	for i := range n + 1 {
		b := Box{x + float64(i%perLine)*writingBox, y + float64(i/perLine)*writingBox, writingBox, writingBox}
		caption := p.caption(item, i)
		if i == n {
			caption = p.v.CardText.RPE
			marks = append(marks, Fill{b, Tint})
		}
		marks = append(marks, Frame{b, 0.3, 0, Ink},
			p.fit(Box{b.X + 0.6, b.Y + 0.4, b.W - 1.2, 2.8}, style{Size: leastCard, Leading: 1.1, Tone: Quiet}, caption))
	}
	return marks, float64(perLine) * writingBox, y + float64(n/perLine+1)*writingBox
}

// waysOf are the easier and the harder version, named.
func (p *card) waysOf(item view.CardItem) []string {
	var all []string
	add := func(label, text string) {
		if text != "" {
			all = append(all, label+": "+text)
		}
	}
	add(p.v.CardText.Easier, item.Easier)
	add(p.v.CardText.Harder, item.Harder)
	return all
}
