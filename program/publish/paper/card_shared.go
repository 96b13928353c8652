package paper

import (
	"cmp"
	"slices"
	"strings"

	"gatepost/program/publish/view"
)

const (
	captionWidth = 13.5 // mm, of a shared row's name
	cellsALine   = 3
	tick         = 3.6 // mm, a set of a shared exercise
	leastTick    = 2.6
	cellDose     = 5   // mm
	cellPause    = 2.7 // mm
	cellTicks    = 4.0 // mm, under a dose
)

// prepare is the preparation in one row with one tick; it says where it ends.
func (p *card) prepare(y float64) ([]Mark, float64) {
	if len(p.c.Prepare) == 0 {
		return nil, y
	}
	row := cardRow{items: pointers(p.c.Prepare), caption: p.v.CardText.Prepare}
	marks, h := p.listed(row, y)
	if !p.list {
		marks, h = p.cells(row, y, p.W-doneBox-2, false)
		h = max(h, doneBox)
		marks = append(marks, p.doneBox(y+(h-doneBox)/2))
	}
	line := Stroke{Points: []Point{{p.X, y + h + 0.9}, {p.Right(), y + h + 0.9}}, Width: 0.5, Tone: Ink}
	return append(marks, line), y + h + 1.1
}

func pointers(items []view.CardItem) (all []*view.CardItem) {
	for i := range items {
		all = append(all, &items[i])
	}
	return all
}

const doneBox = 8 // mm, of a tick for a whole row

func (p *card) doneBox(y float64) Mark {
	return Frame{Box{p.Right() - doneBox, y, doneBox, doneBox}, 0.4, 0, Ink}
}

// shared is a row of several exercises, each with a tick for each set.
func (p *card) shared(r cardRow, y float64) ([]Mark, float64) {
	if p.list {
		return p.listed(r, y)
	}
	return p.cells(r, y, p.W, true)
}

// listed are a row's exercises one after the other, with one tick for all.
func (p *card) listed(r cardRow, y float64) ([]Mark, float64) {
	var all []string
	for _, item := range r.items {
		all = append(all, item.Name+" "+item.Amount)
	}
	s := style{Face: Bold, Size: leastCard, Leading: 1.06}
	text, end := p.lines(p.X, y, p.W-doneBox-2, s, r.caption+": "+strings.Join(all, ", "), 4)
	return []Mark{text, p.doneBox(y)}, max(end-y, doneBox)
}

// cells are the exercises of a row beside each other: name over dose.
func (p *card) cells(r cardRow, y, width float64, ticks bool) ([]Mark, float64) {
	marks := []Mark{p.fit(Box{p.X, y, captionWidth - 1, 7.2}, style{Face: Bold, Size: 9, Least: leastCard, Leading: 1.1}, r.caption)}
	least := 0.0
	if p.hush && ticks {
		least = marks[0].(Text).H + cellPause
		under := Box{p.X, y + marks[0].(Text).H, captionWidth - 1, cellPause}
		marks = append(marks, p.fit(under, style{Size: leastCard, Leading: 1.08, Tone: Quiet}, longestPause(r.items)))
	}
	columns := min(len(r.items), cellsALine)
	switch {
	case len(r.items) == 4 && p.tight && (p.hush || p.pausesFit(r.items, (width-captionWidth)/4-2)):
		columns = 4
	case len(r.items) == 4:
		columns = 2
	}
	w := (width - captionWidth) / float64(columns)
	top := y
	for i := 0; i < len(r.items); i += columns {
		line := r.items[i:min(i+columns, len(r.items))]
		names, foot := 0.0, p.footHeight(line, w-2, ticks)
		for _, item := range line {
			_, end := p.cellName(item, 0, 0, w-2)
			names = max(names, end)
		}
		for j, item := range line {
			x := p.X + captionWidth + float64(j)*w
			name, _ := p.cellName(item, x, top, w-2)
			name.Y += names - name.H // close to its dose
			marks = append(append(marks, name), p.cellFoot(item, Box{x, top + names, w - 2, foot}, ticks)...)
		}
		top += names + foot
		if i+columns < len(r.items) {
			top++
		}
	}
	return marks, max(top-y, least)
}

// longestPause is the longest of some exercises' rests, which suits the others as well;
// what stands between the holds has none of its own.
func longestPause(items []*view.CardItem) string {
	own := func(i *view.CardItem) int { return cmp.Compare(0, len(i.Remark)) }
	longest := slices.MaxFunc(items, func(x, y *view.CardItem) int {
		return cmp.Or(cmp.Compare(own(x), own(y)), cmp.Compare(x.Item.Pause, y.Item.Pause))
	})
	return longest.Pause
}

// cellName is in two lines at most, or in three of the smallest type.
func (p *card) cellName(item *view.CardItem, x, y, w float64) (Text, float64) {
	s := style{Face: Bold, Size: 8, Leading: 1.06}
	if lines, whole := p.linesOf(s.Face, s.Size, w, p.clean(item.Name)); len(lines) <= 2 && whole && !p.terse {
		return p.flow(x, y, w, s, item.Name)
	}
	s.Size = leastCard
	return p.lines(x, y, w, s, item.Name, 3)
}

// pausesFit reports whether what is said of each rest has room in cells of a width.
func (p *card) pausesFit(items []*view.CardItem, w float64) bool {
	return !slices.ContainsFunc(items, func(i *view.CardItem) bool { return Regular.width(p.clean(i.Pause), leastCard) > w })
}

// footHeight is what a line of cells has under its names: the doses, the ticks where
// they have no room beside one of them, and the rests.
func (p *card) footHeight(line []*view.CardItem, w float64, ticks bool) float64 {
	h := float64(cellDose)
	if !ticks {
		return h
	}
	if slices.ContainsFunc(line, func(i *view.CardItem) bool { return !p.ticksBeside(i, w) }) {
		h += cellTicks
	}
	if !p.hush && slices.ContainsFunc(line, func(i *view.CardItem) bool { return joined(i.Sides, i.Pause) != "" }) {
		h += cellPause
	}
	return h
}

// ticksBeside reports whether a cell of a width has room for a tick a set beside its dose.
func (p *card) ticksBeside(item *view.CardItem, w float64) bool {
	room := w - Bold.width(p.clean(item.Amount), leastHold) - 1.5
	return room/float64(max(item.Sets, 1))-0.4 >= leastTick
}

// cellFoot is the dose, with ticks beside it or, where these have no room, under it,
// and the rest under them.
func (p *card) cellFoot(item *view.CardItem, b Box, ticks bool) []Mark {
	line := Box{b.X, b.Y, b.W, cellDose}
	dose := p.fit(line, style{Face: Bold, Size: leastHold, Leading: 1.05, Middle: true}, item.Amount)
	dose.W = min(Bold.width(dose.Lines[0], dose.Size), b.W)
	marks := []Mark{dose}
	below := line.Bottom()
	switch {
	case ticks && p.ticksBeside(item, b.W):
		x := dose.Right() + 1.5
		marks = append(marks, p.ticks(Box{x, line.Y, b.Right() - x, line.H}, item)...)
	case ticks:
		marks = append(marks, p.ticks(Box{b.X, below, b.W, cellTicks}, item)...)
		below += cellTicks
	}
	if ticks && !p.hush && joined(item.Sides, item.Pause) != "" {
		under := Box{b.X, below, b.W, cellPause}
		marks = append(marks, p.aside(under, style{Size: leastCard, Leading: 1.08, Tone: Quiet}, item))
	}
	return marks
}

// ticks are boxes, one a set; in them the letters of the sides.
func (p *card) ticks(b Box, item *view.CardItem) []Mark {
	n := max(item.Sets, 1)
	side := min(tick, b.W/float64(n)-0.4)
	var marks []Mark
	for i := range n {
		box := Box{b.X + float64(i)*(side+0.4), b.Y + (b.H-side)/2, side, side}
		marks = append(marks, Frame{box, 0.25, 0, Ink})
		if n == len(item.Turns) {
			letter := style{Size: leastCard, Leading: 1, Tone: Quiet, Align: AlignCentre, Middle: true}
			marks = append(marks, p.fit(box, letter, item.Turns[i]))
		}
	}
	return marks
}
