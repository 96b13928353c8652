package figure

// Arrival is one row of a forecast: when a step is likely to be held. Dates are
// days, counted as the axis counts them.
type Arrival struct {
	Name                string
	Early, Likely, Late float64
	Text                string // beside the row: "Aug 2027"
	Open                bool   // no late date is forecast: the band runs out of the chart
	Held                bool   // already: a full mark at Likely, no band
	Strong              bool   // the goal
}

// ForecastChart shows each step's arrival as a band from early to late with a
// mark at likely, against the goal's date. The axis' first and last tick are the
// chart's ends. Goal 0 is no goal line.
func ForecastChart(rows []Arrival, days Axis, goal float64, goalText string, o ChartOptions) Drawing {
	o = o.filled()
	var d Drawing
	d.frame(o)
	p := rowPlot(days, o)
	if n := len(days.Ticks); n > 0 {
		p.fromX, p.toX = days.Ticks[0].At, days.Ticks[n-1].At
	}
	p.level(&d, days)
	for i, r := range rows {
		p.arrival(&d, r, p.row(i, len(rows)))
	}
	p.goalLine(&d, goal, goalText)
	return d
}

func (p *plot) goalLine(d *Drawing, goal float64, text string) {
	if goal <= p.fromX || goal > p.toX {
		return
	}
	s := line(Accent, lineWide, Point{X: p.x(goal), Y: p.low.Y}, Point{X: p.x(goal), Y: p.high.Y + 0.4*p.text})
	s.Dash = dashOn
	d.add(s)
	align := Middle
	if p.x(goal) > p.high.X-8*p.text {
		align = End
	}
	d.label(Label{Text: text, At: Point{X: p.x(goal), Y: p.high.Y + 0.9*p.text}, Align: align, Size: p.text, Ink: Accent, Bold: true})
}

// arrival draws a row at a height: name, band, mark, words.
func (p *plot) arrival(d *Drawing, r Arrival, y float64) {
	base := y - 0.35*p.text
	d.label(Label{Text: r.Name, At: Point{X: p.low.X - 0.8*p.text, Y: base}, Align: End, Size: p.text, Ink: Line, Bold: r.Strong})
	right := p.within(r.Likely) + markSize
	if !r.Held {
		right = p.band(d, r, y)
	}
	if p.fromX <= r.Likely && r.Likely <= p.toX {
		d.add(Shape{Ink: Near, Edge: lineWide, Paths: []Path{disc(Point{X: p.x(r.Likely), Y: y}, markSize)}})
	}
	d.label(Label{Text: r.Text, At: Point{X: right + 0.6*p.text, Y: base}, Size: p.text, Ink: Line})
}

// band draws early to late, without an end where it runs out of the chart, and
// says where it ends on paper.
func (p *plot) band(d *Drawing, r Arrival, y float64) float64 {
	left, right, half := p.within(r.Early), p.within(r.Late), 0.55*p.text
	open := r.Open || r.Late > p.toX
	if open {
		right = p.high.X
	}
	d.add(Shape{Ink: Far, Paths: []Path{rectangle(Point{X: left, Y: y - half}, Point{X: right, Y: y + half})}})
	ends := []float64{left, right}
	if open {
		ends = ends[:1]
	}
	for _, x := range ends {
		d.add(line(Line, axisThick, Point{X: x, Y: y - half}, Point{X: x, Y: y + half}))
	}
	return right
}

// within is the place of a value, at the nearer end where it is outside.
func (p *plot) within(v float64) float64 { return max(p.low.X, min(p.high.X, p.x(v))) }

// Worth is one row of what better positions are worth.
type Worth struct {
	Name string  // "two centimetres more depression"
	Help float64 // band help worth as much
	Text string  // at the bar's end: "1.4 kg, about one narrow band"
}

// WorthChart shows what cues save, as bars of band help.
func WorthChart(rows []Worth, help Axis, o ChartOptions) Drawing {
	o = o.filled()
	var d Drawing
	d.frame(o)
	p := rowPlot(help, o)
	for _, r := range rows {
		p.toX = most(help, p.toX, r.Help)
	}
	p.level(&d, help)
	for i, r := range rows {
		y, half := p.row(i, len(rows)), 0.7*o.Text
		d.add(Shape{Ink: Near, Paths: []Path{rectangle(Point{X: p.low.X, Y: y - half}, Point{X: p.x(r.Help), Y: y + half})}})
		d.label(Label{Text: r.Name, At: Point{X: p.low.X - 0.8*o.Text, Y: y - 0.35*o.Text}, Align: End, Size: o.Text, Ink: Line})
		d.label(Label{Text: r.Text, At: Point{X: p.x(r.Help) + 0.5*o.Text, Y: y - 0.35*o.Text}, Size: o.Text, Ink: Line})
	}
	return d
}

// rowPlot leaves room for names at the left and an axis below.
func rowPlot(a Axis, o ChartOptions) plot {
	below := 2.0
	if a.Title != "" {
		below = 3.4
	}
	return plot{
		low:  Point{X: orElse(o.Names, 12*o.Text), Y: below * o.Text},
		high: Point{X: o.Width - orElse(o.Texts, 10*o.Text), Y: o.Height - 2.2*o.Text}, text: o.Text,
	}
}

// row is the height of the middle of a row, the first at the top.
func (p *plot) row(i, n int) float64 {
	return p.high.Y - (float64(i)+0.5)/float64(n)*(p.high.Y-p.low.Y)
}
