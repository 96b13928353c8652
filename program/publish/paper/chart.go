package paper

import (
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// WallChart prints the weeks as columns: page 1 for the wall (A3, or Tabloid
// where the coach's paper is Letter), page 2 the same on the small sheet for who
// has no large printer. In large print the weeks are rows, on small sheets. A withheld program has no chart: no bytes and no
// problems. Problems are warnings about characters that could not be printed.
func WallChart(v *view.View) ([]byte, program.Problems) {
	if len(v.Weeks) == 0 {
		return nil, nil
	}
	ts := &typesetter{lost: map[rune]bool{}}
	return write(v, ts, v.Title, layCharts(ts, v)...)
}

// layCharts are the chart's pages.
func layCharts(ts *typesetter, v *view.View) []*Page {
	if v.Large {
		return layLargeChart(ts, v)
	}
	hand, wall := sheets(v.Coach.Paper)
	return []*Page{layChart(ts, v, wall), layChart(ts, v, hand)}
}

func write(v *view.View, ts *typesetter, title string, pages ...*Page) ([]byte, program.Problems) {
	out, err := ink(document{Title: title, Author: v.Coach.Name, Subject: v.Goal, Lang: v.Lang,
		Date: int(v.Measured), Shades: paletteOf(v.Coach.Inks), Pages: pages})
	if err != nil {
		return nil, program.Problems{{Place: program.Place{File: assessmentOf(v)}, Message: err.Error()}}
	}
	return out, ts.warnings(v)
}

// chart is the wall chart being laid out. All lengths are those of the A3 sheet
// times unit; sizes of type likewise.
type chart struct {
	*Page
	*typesetter
	v           *view.View
	unit        float64 // mm for each mm of A3
	left        float64 // mm, where the first column begins
	columnWidth float64 // mm, width of a column
	rows        rows
	footHeight  float64
	testTold    bool    // what is tested stands before the last week
	rigSize     float64 // points, of the row of bands
}

// rows are the heights of the bands of the chart, from Top down, in mm.
type rows struct {
	Top, Strip, Head, Main, Step, Rig, Help, Done, Gate float64
}

func (r rows) strip() float64  { return r.Top }
func (r rows) head() float64   { return r.strip() + r.Strip }
func (r rows) main() float64   { return r.head() + r.Head }
func (r rows) step() float64   { return r.main() + r.Main }
func (r rows) rig() float64    { return r.step() + r.Step }
func (r rows) help() float64   { return r.rig() + r.Rig }
func (r rows) done() float64   { return r.help() + r.Help }
func (r rows) gate() float64   { return r.done() + r.Done }
func (r rows) bottom() float64 { return r.gate() + r.Gate }

const (
	leastChart  = 7   // points, on any sheet
	chartMargin = 10  // A3 mm
	chartGutter = 17  // A3 mm for the captions of the rows
	chartFoot   = 46  // A3 mm at least for cue, rules, words and cautions
	curveLeast  = 40  // A3 mm, the curve's row before the foot grows
	curveNeeds  = 26  // A3 mm, with the names of what is tested beside it; the main figures give
	mainGives   = 3.8 // A3 mm of theirs for that, which leaves two lines of least capitals
	testLine    = 9   // A3 mm under the boxes to tick, for what is tested, where there is no curve
)

func layChart(ts *typesetter, v *view.View, sheet Sheet) *Page {
	c := &chart{Page: sheet.landscape(sheet.Name, 0), typesetter: ts, v: v}
	c.unit = math.Min(c.Width/A3.Height, c.Height/A3.Width)
	c.Least = math.Max(10*c.unit, leastChart)
	c.left = c.mm(chartMargin + chartGutter)
	c.columnWidth = (c.Width - c.left - c.mm(chartMargin)) / float64(len(v.Weeks))
	c.shareHeight()
	c.header()
	c.captions()
	c.grounds()
	c.weeks()
	c.curve()
	c.gates()
	c.foot()
	return c.Page
}

// mm is a length of the A3 sheet on this one; pt a type size.
func (c *chart) mm(a3 float64) float64 { return a3 * c.unit }
func (c *chart) pt(a3 float64) float64 { return a3 * c.unit }

// shareHeight gives each row its height; what is left over goes to the curve, or
// to the main figures where there is no curve. A tall sheet's foot grows too.
func (c *chart) shareHeight() {
	r := rows{Top: chartMargin + chartHead + 3, Strip: 8, Head: 13, Main: 35 + c.thenHeight()/c.unit, Step: 17, Rig: 18, Help: 0, Done: 32, Gate: 15}
	foot := c.footNeeds()
	spare := c.Height/c.unit - chartMargin - foot - r.bottom()
	c.footHeight = foot + math.Min(math.Max(spare-curveLeast, 0)/2, 10)
	spare -= c.footHeight - foot
	if c.hasCurve() {
		r.Help = math.Max(spare, math.Min(curveNeeds, spare+mainGives))
		r.Main -= r.Help - math.Max(spare, 0)
	} else {
		named := math.Min(spare, testLine)
		r.Main += math.Min(spare-named, 20)
		r.Done += spare - math.Min(spare-named, 20)
	}
	c.footHeight = c.mm(c.footHeight)
	c.rows = rows{c.mm(r.Top), c.mm(r.Strip), c.mm(r.Head), c.mm(r.Main), c.mm(r.Step), c.mm(r.Rig),
		c.mm(r.Help), c.mm(r.Done), c.mm(r.Gate)}
}

// cell is a week's box in a row, with a little air at the left and right.
func (c *chart) cell(week int, y, h float64) Box {
	return Box{c.left + float64(week)*c.columnWidth, y, c.columnWidth, h}.Inset(c.mm(1.8), 0)
}

// captions name the rows in the gutter.
func (c *chart) captions() {
	l := c.v.Labels
	what := c.caption()
	for _, row := range []struct {
		text string
		y    float64
	}{
		{l.Week, c.rows.head()}, {l.Hold, c.rows.main()}, {l.Step, c.rows.step()}, {rigCaption(c.v), c.rows.rig()},
		{what, c.rows.help()}, {l.Done, c.rows.done()}, {c.gateCaption(), c.rows.gate()},
	} {
		if row.text == "" || row.text == what && c.rows.Help == 0 {
			continue
		}
		c.add(c.fit(Box{c.mm(chartMargin), row.y + c.mm(2), c.mm(chartGutter - 1), c.mm(9)},
			style{Size: c.pt(11), Least: c.Least, Tone: Quiet, Leading: 1.1}, row.text))
	}
	for _, y := range []float64{c.rows.strip(), c.rows.main(), c.rows.step(), c.rows.help(), c.rows.done(), c.rows.gate()} {
		c.add(Stroke{Points: []Point{{c.mm(chartMargin), y}, {c.Width - c.mm(chartMargin), y}}, Width: c.mm(0.25), Tone: Line})
	}
}

// grounds tell the kinds of weeks apart: a deload is tinted under a hatched
// strip, a test framed under a solid one.
func (c *chart) grounds() {
	bottom := c.rows.gate()
	for i, w := range c.v.Weeks {
		b := Box{c.left + float64(i)*c.columnWidth, c.rows.strip(), c.columnWidth, bottom - c.rows.strip()}
		strip := Box{b.X, b.Y, b.W, c.rows.Strip}
		switch w.KindKey {
		case program.WeekDeload, program.WeekAway:
			c.add(Fill{b, Tint}, Hatch{strip, c.mm(1.6), c.mm(0.45), false, Ink})
		case program.WeekTest:
			c.add(Fill{strip, Ink}, Frame{b.Inset(c.mm(.5), c.mm(.5)), c.mm(1), 0, Ink})
		}
		if i > 0 {
			c.add(Stroke{Points: []Point{{b.X, c.rows.head()}, {b.X, bottom}}, Width: c.mm(0.25), Tone: Line})
		}
		c.kind(strip, w)
	}
	c.provisional()
}

// provisional says over the widest stretch of outlined figures what the outline
// means.
func (c *chart) provisional() {
	tested := c.tested()
	var widest, b Box
	for i, w := range c.v.Weeks {
		if !w.Provisional || w.KindKey != program.WeekBuild || w.Gate {
			b = Box{}
			continue
		}
		if b.W == 0 {
			b = c.cell(i, c.rows.strip(), c.rows.Strip)
		} else {
			b.W += c.columnWidth
		}
		free := b
		if b.overlaps(tested) {
			free.W = tested.X - b.X - c.mm(2)
		}
		if free.W > widest.W {
			widest = free
		}
		if c.guarded(i) { // a line goes down here
			b = Box{}
		}
	}
	if widest.W > c.mm(provisionalLeast) {
		c.add(c.fit(widest, style{Size: c.pt(12), Least: c.Least, Leading: 1.05, Tone: Quiet, Middle: true}, c.v.Labels.Provisional))
	}
}

const provisionalLeast = 24 // A3 mm, its words in two lines

// tested says before the last week what is tested in it, where the weeks before
// leave the room, and says where.
func (c *chart) tested() Box {
	last := len(c.v.Weeks) - 1
	w := c.v.Weeks[last]
	s := style{Face: Bold, Size: c.pt(12), Least: c.Least, Tone: Accent, Middle: true, Align: AlignRight}
	width := s.Face.width(c.clean(w.Test), s.Size) + c.mm(0.1)
	b := c.cell(last, c.rows.strip(), c.rows.Strip)
	b.X, b.W = b.X-c.mm(3.6)-width, width
	free := c.left + float64(last)*c.columnWidth
	for i := last - 1; i >= 0 && c.v.Weeks[i].KindKey == program.WeekBuild && !c.guarded(i); i-- {
		free -= c.columnWidth
	}
	c.testTold = w.KindKey == program.WeekTest && w.Test != "" && b.X > free+c.mm(3)
	if !c.testTold {
		return Box{}
	}
	c.add(c.fit(b, s, w.Test))
	return b
}

// guarded says that a gate stands after a week.
func (c *chart) guarded(i int) bool {
	return slices.ContainsFunc(c.v.Gates, func(g view.Gate) bool { return g.Week == c.v.Weeks[i].Number })
}

// kind names a week that is not an ordinary one, on a plate of its own.
func (c *chart) kind(strip Box, w view.Week) {
	s := style{Face: Bold, Size: c.pt(14), Least: c.Least}
	switch {
	case w.KindKey == program.WeekBuild && !w.Gate:
		return
	case w.KindKey == program.WeekTest:
		s.Tone = Paper
	}
	in := strip.Inset(c.mm(1.8), 0)
	s.Middle = true
	t := c.fit(in, s, w.Kind)
	if w.KindKey != program.WeekTest {
		c.add(Fill{Box{strip.X, strip.Y, t.Face.width(t.Lines[0], t.Size) + c.mm(3.4), strip.H}, Tint})
	}
	c.add(t)
}
