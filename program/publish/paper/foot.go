package paper

import "gatepost/program/publish/view"

const footLine = 3.4 // mm

// foot is the last two lines of a handed-over page: who to ask; whose page this
// is, of which block, which of how many, and which version of the plan.
func foot(page *Page, ts *typesetter, v *view.View, number, pages int) {
	b := Box{pageMargin, page.Height - pageMargin - footLine, page.Width - 2*pageMargin, footLine}
	page.add(Stroke{Points: []Point{{b.X, b.Y - 0.7}, {b.Right(), b.Y - 0.7}}, Width: 0.25, Tone: Line})
	left, right := b, b
	left.W, right.W = 0.62*b.W-2, 0.38*b.W
	right.X = b.Right() - right.W
	s, r := style{Size: leastPage, Tone: Quiet}, style{Size: leastPage, Tone: Quiet, Align: AlignRight}
	page.add(ts.fit(left, s, joined(v.Coach.Name, v.Coach.Studio, v.Coach.Contact)), ts.fit(right, r, v.Labels.Measured))
	left.Y, right.Y = left.Bottom(), right.Bottom()
	page.add(ts.fit(left, s, joined(v.Client, v.Block)), ts.fit(right, r, joined(v.Labels.PageOf(number, pages), v.VersionLine())))
}
