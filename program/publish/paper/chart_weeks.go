package paper

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"gatepost/program/publish/view"
)

const (
	leastCap = 10 // mm on A3: 2 m / 200 (common practice for reading distance)
	mostCap  = 16
)

// weeks writes each column from its number down to its tick boxes. Texts of one
// row have one size.
func (c *chart) weeks() {
	size, stacked := c.figureSize()
	for i, w := range c.v.Weeks {
		c.figure(i, w, size, stacked)
	}
	if h := c.thenHeight(); h > 0 {
		c.row(c.rows.step()-h, h, c.thenStyle(), func(w view.Week) string { return w.Then })
	}
	c.heads()
	c.row(c.rows.step()+c.mm(1.5), c.rows.Step-c.mm(1.5), style{Face: Bold, Size: c.pt(18), Least: c.pt(12), Leading: 1.1},
		func(w view.Week) string { return w.Step })
	marks := c.marks()
	c.rigSize = c.row(c.rows.rig(), c.rows.Rig-c.mm(1)-marks, style{Size: c.pt(15), Least: c.Least, Leading: 1.15},
		c.rig)
	c.ticks()
}

// marks say under its bands that a week is of the coach's own hand, and how high they are:
// nothing where no week is.
func (c *chart) marks() float64 {
	if !slices.ContainsFunc(c.v.Weeks, func(w view.Week) bool { return w.Mark != "" }) {
		return 0
	}
	h := c.mm(4.8)
	c.row(c.rows.help()-c.mm(0.6)-h, h, style{Face: Bold, Size: c.pt(12), Least: c.Least, Leading: 1.05, Tone: Accent},
		func(w view.Week) string { return w.Mark })
	return h
}

// row sets one text a week, all at one size, which it gives.
func (c *chart) row(y, h float64, s style, of func(view.Week) string) (size float64) {
	var boxes []Box
	var texts []string
	for i, w := range c.v.Weeks {
		boxes, texts = append(boxes, c.cell(i, y, h)), append(texts, of(w))
	}
	for _, m := range c.fitAlike(boxes, s, texts) {
		t := m.(Text)
		t.H, size = float64(len(t.Lines))*t.Lead, t.Size
		c.add(t)
	}
	return size
}

func joined(parts ...string) string {
	return strings.Join(strings.FieldsFunc(strings.Join(parts, "\x00"), func(r rune) bool { return r == 0 }), ", ")
}

// heads are the weeks' numbers and days: first to last where the columns have
// room, else the first.
func (c *chart) heads() {
	number := style{Face: Bold, Size: math.Min(c.pt(30), 0.95*c.columnWidth), Leading: 1}
	days := style{Size: c.pt(13), Least: c.Least, Tone: Quiet, Leading: 1.1}
	var boxes []Box
	var spans, firsts []string
	room := true
	for i, w := range c.v.Weeks {
		b := c.cell(i, c.rows.head(), c.rows.Head)
		text, _ := c.flow(b.X, b.Y+c.mm(1.5), b.W, number, strconv.Itoa(w.Number))
		text.W = Bold.width(text.Lines[0], text.Size)
		c.add(text)
		x := b.X + text.W + c.mm(1.6)
		b = Box{x, b.Y + c.mm(1.5), b.Right() - x, b.H - c.mm(2)}
		boxes, spans, firsts = append(boxes, b), append(spans, w.Dates), append(firsts, w.From)
		_, ok := c.fits(b, days, days.Least, c.clean(w.Dates))
		room = room && ok
	}
	if !room {
		spans = c.whole(boxes, days, firsts)
	}
	c.add(c.fitAlike(boxes, days, spans)...)
}

// whole are texts that may break between day and month, where else a word would be broken.
func (c *chart) whole(boxes []Box, s style, texts []string) []string {
	for i, text := range texts {
		if _, ok := c.fits(boxes[i], s, s.Least, c.clean(text)); !ok {
			texts[i] = strings.ReplaceAll(text, "\u00a0", " ")
		}
	}
	return texts
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
	return (c.rows.Main - c.thenHeight() - c.mm(3)) / lines / mmPerPoint
}

// thenHeight is what the longer set that a gate has after the others takes under the figures.
func (c *chart) thenHeight() float64 {
	s, lines := c.thenStyle(), 0
	for i, w := range c.v.Weeks {
		if w.Then != "" {
			set, _ := c.linesOf(s.Face, s.least(), c.cell(i, 0, 0).W, c.clean(w.Then))
			lines = max(lines, len(set))
		}
	}
	return float64(lines) * s.lead(s.least())
}

func (c *chart) thenStyle() style { return style{Size: c.pt(13), Least: c.Least, Leading: 1.1} }

// figure sets the week's main figure; provisional weeks in outline.
func (c *chart) figure(i int, w view.Week, size float64, stacked bool) {
	if w.Main == "" {
		return
	}
	sets, number, unit := figureParts(w.Main)
	lead := size * mmPerPoint
	b := c.cell(i, c.rows.main(), c.rows.Main-c.thenHeight())
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

// ticks has a box to tick for each session. A day's name says where its sets are
// fewer than the week's figure, as long as every column has room for that.
func (c *chart) ticks() {
	most := 1
	for _, w := range c.v.Weeks {
		most = max(most, len(w.Sessions))
	}
	room := c.rows.Done - c.mm(3)
	if c.rows.Help == 0 {
		room -= c.mm(testLine)
	}
	pitch := math.Min(c.mm(13), room/float64(most))
	side := math.Min(math.Min(c.mm(9), 0.26*c.columnWidth), pitch-c.mm(0.6))
	names := style{Size: c.pt(14), Least: c.Least, Leading: 1.05, Middle: true}
	var boxes []Box
	var texts, days []string
	all := true
	for i, w := range c.v.Weeks {
		b := c.cell(i, c.rows.done()+c.mm(2), side)
		for _, s := range w.Sessions {
			tick := Box{b.X, b.Y, side, side}
			c.add(Fill{tick, Paper}, Frame{tick, c.mm(0.5), 0, Ink})
			boxes = append(boxes, Box{b.X + side + c.mm(1.3), b.Y, b.W - side - c.mm(1.3), side})
			texts, days = append(texts, s.Short), append(days, s.DayDate)
			_, ok := c.fits(boxes[len(boxes)-1], names, c.Least, c.clean(s.Short))
			all = all && ok
			b.Y += pitch
		}
		if c.rows.Help == 0 {
			c.test(w, Box{b.X, b.Y, b.W, c.rows.gate() - c.mm(1) - b.Y})
		}
	}
	if !all {
		texts = days
	}
	c.add(c.fitAlike(boxes, names, texts)...)
}
