package paper

import (
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// The curve is the help that falls from week to week, or, where no week has any,
// the lean that grows.

func (c *chart) hasHelp() bool {
	return slices.ContainsFunc(c.v.Weeks, func(w view.Week) bool { return w.HelpKG > 0 })
}

func (c *chart) hasCurve() bool {
	return c.hasHelp() || slices.ContainsFunc(c.v.Weeks, func(w view.Week) bool { return w.LeanCM > 0 })
}

// caption names the curve; a lean's has its name in the row above.
func (c *chart) caption() string {
	if c.hasHelp() {
		return c.v.Labels.Help
	}
	return ""
}

// rigCaption names what stands with a week's step: bands, or before the first step the lean.
// What needs no caption has none.
func rigCaption(v *view.View) string {
	has := func(is func(view.Week) bool) bool { return slices.ContainsFunc(v.Weeks, is) }
	switch {
	case has(func(w view.Week) bool { return len(w.Bands) > 0 }):
		return v.Labels.Bands
	case has(func(w view.Week) bool { return w.LeanCM > 0 }) && !has(func(w view.Week) bool { return w.HelpKG > 0 }):
		return v.Labels.Lean
	}
	return ""
}

// rig is what helps in a week, or its lean, which says where the wall is as it begins.
func (c *chart) rig(w view.Week) string {
	if i := w.Number - 2; i >= 0 && w.LeanCM > 0 && c.v.Weeks[i].LeanCM == w.LeanCM {
		return w.Rig
	}
	return joined(w.Rig, w.Drop)
}

// value is what the curve shows of a week, with its label; false: nothing.
func (c *chart) value(w view.Week) (float64, string, bool) {
	if !c.hasHelp() {
		return float64(w.LeanCM), w.Rig, w.LeanCM > 0
	}
	label := w.Help
	if w.Free {
		label = c.v.Labels.Free
	}
	return w.HelpKG, label, w.Main != "" && (w.Free || w.HelpKG > 0)
}

func (c *chart) curve() {
	if c.rows.Help == 0 {
		return
	}
	most := 0.0
	for _, w := range c.v.Weeks {
		value, _, _ := c.value(w)
		most = math.Max(most, value)
	}
	top, base := c.rows.help()+c.mm(12), c.rows.done()-c.mm(5)
	var path []Point
	for i, w := range c.v.Weeks {
		value, label, ok := c.value(w)
		at := Point{c.cell(i, 0, 0).X + c.mm(2.4), base - (base-top)*value/most}
		if !ok || i > 0 && w.StepID != c.v.Weeks[i-1].StepID {
			c.path(path)
			path = nil
		}
		c.testBeside(i, w, at.Y, top, base, ok)
		if !ok {
			continue
		}
		c.add(Stroke{Points: []Point{{at.X, base}, at}, Width: c.mm(0.3), Dash: c.mm(1), Tone: Quiet})
		path = append(path, at)
		if c.told(i, label) {
			c.label(i, at, label)
		}
	}
	c.path(path)
	c.dots(top, base, most)
	c.add(Stroke{Points: []Point{{c.left, base}, {c.Width - c.mm(chartMargin), base}}, Width: c.mm(0.5), Tone: Ink})
}

// told reports whether a week's dot has its label: where it begins and where it changes,
// and never a lean, which the row above names.
func (c *chart) told(i int, label string) bool {
	if !c.hasHelp() || i == 0 {
		return c.hasHelp()
	}
	_, before, ok := c.value(c.v.Weeks[i-1])
	return !ok || before != label || c.v.Weeks[i-1].StepID != c.v.Weeks[i].StepID
}

func (c *chart) path(points []Point) {
	if len(points) > 1 {
		c.add(Stroke{Points: points, Width: c.mm(1.4), Tone: Accent})
	}
}

// dots lie over the line; those of deload and test weeks are rings.
func (c *chart) dots(top, base, most float64) {
	for i, w := range c.v.Weeks {
		value, _, ok := c.value(w)
		if ok {
			at := Point{c.cell(i, 0, 0).X + c.mm(2.4), base - (base-top)*value/most}
			c.add(Dot{At: at, Radius: c.mm(2.1), Hollow: w.KindKey != program.WeekBuild, Tone: Accent})
		}
	}
}

// label stands right of the dot and above the line, which falls.
func (c *chart) label(i int, at Point, label string) {
	b := c.cell(i, 0, 0)
	x := at.X + c.mm(1)
	c.add(c.fit(Box{x, at.Y - c.mm(9.5), b.Right() - x, c.mm(7)},
		style{Face: Bold, Size: c.pt(17), Least: c.Least, Bottom: true}, label))
}

// testBeside names what is tested, above or below the week's dot, where there is
// more room, and clear of the line to the next dot.
func (c *chart) testBeside(i int, w view.Week, dot, top, base float64, drawn bool) {
	b := c.cell(i, c.rows.help()+c.mm(2), 0)
	b.X, b.W = b.X+c.mm(4), b.W-c.mm(4)
	b.H = base - c.mm(1) - b.Y
	if drawn && base-dot > dot-top {
		below := math.Max(dot, c.lineEnd(i, dot, top, base))
		b.Y, b.H = below+c.mm(3), base-below-c.mm(4)
	} else if drawn {
		b.H = dot - c.mm(10) - b.Y
	}
	if !c.test(w, b) {
		c.underRig(i, w)
	}
}

// underRig names what is tested under the week's bands, where these leave a line: the last
// place there is.
func (c *chart) underRig(i int, w view.Week) {
	const line = 4.9 // A3 mm
	b := c.cell(i, c.rows.help()-c.mm(line), c.mm(line))
	s := style{Size: c.rigSize, Leading: 1.15}
	_, end := c.flow(b.X, c.rows.rig(), b.W, s, c.rig(w))
	if end <= b.Y {
		c.test(w, b)
	}
}

// lineEnd is how low the line from a week's dot is where the next column begins.
func (c *chart) lineEnd(i int, dot, top, base float64) float64 {
	if i+1 == len(c.v.Weeks) || c.v.Weeks[i+1].StepID != c.v.Weeks[i].StepID {
		return dot
	}
	now, _, _ := c.value(c.v.Weeks[i])
	next, _, ok := c.value(c.v.Weeks[i+1])
	if !ok || now == 0 {
		return dot
	}
	return base - (base-dot)*next/now
}

// test names what a week tests, or that it opens with a check hold, if there is room; it
// reports whether all is said.
func (c *chart) test(w view.Week, b Box) bool {
	s := style{Face: Bold, Size: c.pt(14), Least: c.Least, Leading: 1.1, Tone: Accent}
	text := w.Test
	if last := c.v.Weeks[len(c.v.Weeks)-1].Number; text != "" && w.Number == last && c.testTold {
		return true
	}
	if text == "" {
		text, s.Tone, s.Face = w.Check, Ink, Regular
		if _, room := c.fits(b, s, s.Least, c.clean(text)); !room {
			text = w.CheckShort
		}
	}
	_, room := c.fits(b, s, s.Least, c.clean(text))
	if room && text != "" {
		c.add(c.fit(b, s, text))
	}
	return room || text == ""
}
