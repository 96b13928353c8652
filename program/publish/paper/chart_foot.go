package paper

import (
	"math"
	"slices"
	"strings"

	"gatepost/program/publish/view"
)

// gates draws a heavy line after the last week on a step, between the weeks that
// the gate guards, with a flag that says what has to be shown there and has a box
// for each showing. Where gates follow each other closely, their flags hang on
// two levels.
func (c *chart) gates() {
	levels := 1
	for c.hang(levels, false) < c.mm(flagLeast) && levels < 2 {
		levels++
	}
	c.hang(levels, true)
}

const flagLeast = 40 // A3 mm, a flag's width for words and boxes

// hang puts the flags on so many levels, or only measures the narrowest.
func (c *chart) hang(levels int, draw bool) (narrowest float64) {
	top, h := c.rows.gate()+c.mm(1.5), (c.rows.Gate-c.mm(3))/float64(levels)
	from := slices.Repeat([]float64{c.left}, levels)
	narrowest, n := c.Width, 0
	var flags []func() // over all lines
	for i, w := range c.v.Weeks {
		for _, g := range c.v.Gates {
			if g.Week != w.Number {
				continue
			}
			x := c.left + float64(i+1)*c.columnWidth
			if i == len(c.v.Weeks)-1 {
				x -= c.mm(0.7)
			}
			level := n % levels
			left := math.Max(from[level], x-c.mm(92))
			narrowest = math.Min(narrowest, x-c.mm(0.7)-left)
			if draw {
				b := Box{left, top + float64(level)*h, x - c.mm(0.7) - left, h - c.mm(0.5)}
				c.add(Stroke{Points: []Point{{x, c.rows.strip()}, {x, b.Bottom()}}, Width: c.mm(1.4), Tone: Accent})
				flags = append(flags, func() { c.flag(b, g) })
			}
			from[level] = x + c.mm(3)
			n++
		}
	}
	for _, flag := range flags {
		flag()
	}
	return narrowest
}

// gateCaption names the row of flags; empty where the block has no gate.
func (c *chart) gateCaption() string {
	if slices.ContainsFunc(c.v.Gates, func(g view.Gate) bool { return g.Week > 0 && g.Week <= len(c.v.Weeks) }) {
		return c.v.Labels.Gate
	}
	return ""
}

func (c *chart) flag(b Box, g view.Gate) {
	if b.W < c.mm(12) {
		return
	}
	c.add(Fill{b, Tint})
	in := b.Inset(c.mm(2), 0)
	side := math.Min(c.mm(8), b.H-c.mm(1))
	s := style{Face: Bold, Size: c.pt(16), Least: c.Least, Leading: 1.05, Middle: true}
	words := in
	words.W -= 2*side + c.mm(4)
	_, boxes := c.fits(words, s, s.Least, c.clean(g.Short)) // else the words need the room
	if boxes {
		in = words
	}
	c.add(c.fit(in, s, g.Short))
	for n := 0; boxes && n < 2; n++ {
		box := Box{in.Right() + c.mm(2) + float64(n)*(side+c.mm(2)), b.Y + (b.H-side)/2, side, side}
		c.add(Fill{box, Paper}, Frame{box, c.mm(0.5), 0, Ink})
	}
}

// foot has the cue, what each day's sets answer to, when to stop, the chart's words, and
// the cautions.
func (c *chart) foot() {
	v := c.v
	x, y, width := c.mm(chartMargin), c.Height-c.mm(chartMargin)-c.footHeight+c.mm(3), c.footWidth()
	c.add(Fill{Box{x, y - c.mm(2), width, c.mm(0.6)}, Ink})
	cue := Box{x, y + c.mm(1), cueShare * width, c.footHeight - c.mm(footRest)}
	c.add(
		c.fit(Box{cue.X, cue.Y, cue.W, c.mm(6)}, style{Size: c.pt(12), Least: c.Least, Face: Bold, Tone: Accent}, v.Labels.Cue),
		c.fit(Box{cue.X, cue.Y + c.mm(6), cue.W, cue.H - c.mm(7)}, style{Face: Bold, Size: c.pt(30), Least: c.pt(14), Leading: 1.1}, v.Cue),
	)
	x = cue.Right() + c.mm(footGap)
	for _, part := range c.footParts() {
		c.block(Box{x, cue.Y, part.share * width, cue.H}, part.size, part.all)
		x += part.share*width + c.mm(footGap)
	}
	c.lastLine()
}

const (
	footRest = 11 // A3 mm of the foot that are no text of its columns
	footGap  = 8  // A3 mm between them
	cueShare = 0.17
)

// footPart is a column of the foot beside the cue: its share of the width and its largest type.
type footPart struct {
	share, size float64
	all         []passage
}

func (c *chart) footParts() []footPart {
	a := &c.v.Advice
	cautions := strings.Join(slices.Concat(a.Cautions, []string{a.NotMedical}), " ")
	return []footPart{
		{0.20, 13, []passage{{a.DayTitle, title}, {a.DayShort, prose}, {a.StopTitle, title}, {a.StopShort, prose}}},
		{0.21, 11, []passage{{c.v.Labels.Terms, title}, {strings.Join(c.v.ChartTerms, " "), prose}}},
		{0.42 - 3*c.mm(footGap)/c.footWidth(), 11, []passage{{a.CautionTitle, title}, {cautions, prose}}},
	}
}

func (c *chart) footWidth() float64 { return c.Width - 2*c.mm(chartMargin) }

// footNeeds is how high the foot is, in A3 mm, so that all its texts have room in the
// smallest type.
func (c *chart) footNeeds() float64 {
	high := float64(chartFoot)
	for _, part := range c.footParts() {
		_, end := c.column(0, 0, part.share*c.footWidth(), c.Least, 0, part.all)
		high = math.Max(high, end/c.unit+footRest+0.1)
	}
	return high
}

// block sets passages at the largest size that lets all of them fit; at the
// smallest, each gives way a little.
func (c *chart) block(b Box, size float64, all []passage) {
	for s := c.pt(size); s > c.Least; s -= 0.25 {
		if marks, end := c.column(b.X, b.Y, b.W, s, 0, all); end <= b.Bottom() {
			c.add(marks...)
			return
		}
	}
	for most := int(b.H / (1.2 * c.Least * mmPerPoint)); most > 0; most-- {
		if marks, end := c.column(b.X, b.Y, b.W, c.Least, most, all); end <= b.Bottom() || most == 1 {
			c.add(marks...)
			return
		}
	}
}

// lastLine says who to ask, whose chart this is, of which block, which page of
// two, and which version.
func (c *chart) lastLine() {
	v, l := c.v, &c.v.Labels
	b := Box{c.mm(chartMargin), c.Height - c.mm(chartMargin+6), c.Width - 2*c.mm(chartMargin), c.mm(5)}
	s := style{Size: c.pt(11), Least: c.Least, Tone: Quiet}
	left, right := b, b
	left.W, right.W = 0.42*b.W-c.mm(2), 0.58*b.W
	right.X = b.Right() - right.W
	c.add(c.fit(left, s, joined(v.Coach.Name, v.Coach.Studio, v.Coach.Contact)))
	s.Align = AlignRight
	number := 2
	if _, wall := sheets(v.Coach.Paper); c.Name == wall.Name {
		number = 1
	}
	c.add(c.fit(right, s, joined(v.Client, v.Block, l.Measured, l.PageOf(number, 2), c.v.VersionLine())))
}
