package paper

import (
	"math"
	"strings"

	"gatepost/program/publish/view"
)

const (
	leastCap = 10 // mm on A3: 2 m / 200 (common practice for reading distance)
	mostCap  = 16
)

// weeks writes each column from its number down to its tick boxes.
func (c *chart) weeks() {
	size, stacked := c.figureSize()
	for i, w := range c.v.Weeks {
		c.head(i, w)
		c.figure(i, w, size, stacked)
		step := w.Step
		if w.Test != "" {
			step = w.Test
		}
		c.add(
			c.fit(c.cell(i, c.rows.step()+c.mm(1.5), c.rows.Step-c.mm(1.5)),
				style{Face: Bold, Size: c.pt(17), Least: c.Least, Leading: 1.1}, step),
			c.fit(c.cell(i, c.rows.rig(), c.rows.Rig-c.mm(1)),
				style{Size: c.pt(15), Least: c.Least, Leading: 1.15}, joined(w.Rig, w.Drop)),
		)
		c.ticks(i, w)
	}
}

func joined(parts ...string) string {
	return strings.Join(strings.FieldsFunc(strings.Join(parts, "\x00"), func(r rune) bool { return r == 0 }), ", ")
}

// head is the week's number and days.
func (c *chart) head(i int, w view.Week) {
	b := c.cell(i, c.rows.head(), c.rows.Head)
	number := style{Face: Bold, Size: c.pt(30), Leading: 1}
	text, _ := c.flow(b.X, b.Y+c.mm(1.5), c.mm(12), number, w.Title[len(w.Title)-digits(w.Number):])
	text.W = Bold.width(text.Lines[0], text.Size)
	x := b.X + text.W + c.mm(2)
	c.add(text, c.fit(Box{x, b.Y + c.mm(1.5), b.Right() - x, b.H - c.mm(2)},
		style{Size: c.pt(12), Least: c.Least, Tone: Quiet, Leading: 1.1}, w.Dates))
}

func digits(n int) int {
	if n < 10 {
		return 1
	}
	return 2
}

// figure parts: the sets with their ×, the number, and its unit.
func figureParts(main string) (sets, number, unit string) {
	sets, rest, ok := strings.Cut(main, "×")
	if !ok {
		return "", main, ""
	}
	number, unit, _ = strings.Cut(strings.Trim(rest, " \u00a0"), "\u00a0")
	return sets + "×", number, unit
}

const unitShare = 0.6 // the unit is smaller than its number

// figureSize is one type size for all weeks: the largest at which each figure
// fits its column, in one line if that can be as high as a wall asks, else with
// the sets above the seconds.
func (c *chart) figureSize() (size float64, stacked bool) {
	width := c.columnWidth - c.mm(3.6)
	one, two := math.Inf(1), math.Inf(1)
	for _, w := range c.v.Weeks {
		sets, number, unit := figureParts(w.Main)
		seconds := Bold.width(number, 1) + unitShare*Bold.width("\u00a0"+unit, 1)
		one = math.Min(one, width/math.Max(seconds+Bold.width(sets+"\u00a0", 1), 1e-9))
		two = math.Min(two, width/math.Max(math.Max(seconds, Bold.width(sets, 1)), 1e-9))
	}
	most := Bold.sizeForCap(c.mm(mostCap))
	if one >= Bold.sizeForCap(c.mm(leastCap)) {
		return math.Min(one, math.Min(most, c.sizeForHeight(1))), false
	}
	return math.Min(two, math.Min(most, c.sizeForHeight(2))), true
}

// sizeForHeight is the size at which so many lines fill the row of figures.
func (c *chart) sizeForHeight(lines float64) float64 {
	return (c.rows.Main - c.mm(3)) / lines / mmPerPoint
}

// figure sets the week's main figure; provisional weeks in outline.
func (c *chart) figure(i int, w view.Week, size float64, stacked bool) {
	if w.Main == "" {
		return
	}
	sets, number, unit := figureParts(w.Main)
	lead := size * mmPerPoint
	b := c.cell(i, c.rows.main(), c.rows.Main)
	y := b.Y + (b.H-lead)/2
	x := b.X
	if stacked {
		y = b.Y + b.H/2 - lead
	}
	if sets != "" {
		x = c.piece(x, y, sets, size, lead, w.Provisional)
		if stacked {
			x, y = b.X, y+lead
		} else {
			x += Bold.width("\u00a0", size)
		}
	}
	x = c.piece(x, y, number, size, lead, w.Provisional)
	if unit != "" {
		down := (Bold.capHeight(size) - Bold.capHeight(unitShare*size)) / 2 // to one baseline
		c.piece(x+unitShare*Bold.width("\u00a0", size), y+down, unit, unitShare*size, lead-2*down, w.Provisional)
	}
}

// piece sets a part of a figure and says where it ends. The lead of a small
// part is chosen so that its baseline is that of the large ones.
func (c *chart) piece(x, y float64, s string, size, lead float64, outline bool) float64 {
	s = c.clean(s)
	w := Bold.width(s, size)
	c.add(Text{Box: Box{x, y, w, lead}, Lines: []string{s}, Face: Bold, Size: size, Lead: lead, Outline: outline})
	return x + w
}

// ticks has a box to tick for each session.
func (c *chart) ticks(i int, w view.Week) {
	if len(w.Sessions) == 0 {
		return
	}
	b := c.cell(i, c.rows.done()+c.mm(2), c.rows.Done-c.mm(3))
	pitch := math.Min(c.mm(10), b.H/float64(len(w.Sessions)))
	side := math.Min(c.mm(7.5), pitch-c.mm(1))
	for n, s := range w.Sessions {
		y := b.Y + float64(n)*pitch
		c.add(
			Fill{Box{b.X, y, side, side}, Paper},
			Frame{Box{b.X, y, side, side}, c.mm(0.5), 0, Ink},
			c.fit(Box{b.X + side + c.mm(1.5), y, b.W - side - c.mm(1.5), side},
				style{Size: c.pt(13), Least: math.Min(c.Least, c.pt(13)), Leading: side / (c.pt(13) * mmPerPoint)}, s.Short),
		)
	}
}
