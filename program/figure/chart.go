package figure

// ChartOptions are the same for every chart. Lengths are metres of paper.
type ChartOptions struct {
	Width, Height float64 // of the whole chart; 0: 0.18 and 0.08
	Text          float64 // type size; 0: 0.003
	Names         float64 // width kept at the left for names, or for an axis' numbers; 0: 12 letters' height, or 3
	Texts         float64 // width kept at the right for what is written beside rows; 0: 10 letters' height
}

// Axis is a scale with its unit. Ticks are in the axis' own unit, from zero or
// from the first day on; the words are the caller's.
type Axis struct {
	Title string // with the unit: "band help, kg"
	Ticks []Tick
}

// Tick is one mark of an axis; without a label a short one.
type Tick struct {
	At    float64
	Label string
}

// Sizes of what every chart is made of, m of paper (our judgement).
const (
	axisThick = 0.0003
	gridThick = 0.0001
	lineWide  = 0.0006
	dashOn    = 0.0012
	markSize  = 0.0012
)

// plot is a rectangle of the paper with a scale for each direction.
type plot struct {
	low, high  Point   // corners
	fromX, toX float64 // values at the corners
	fromY, toY float64
	text       float64
}

func (o ChartOptions) filled() ChartOptions {
	o.Width, o.Height, o.Text = orElse(o.Width, 0.18), orElse(o.Height, 0.08), orElse(o.Text, 0.003)
	return o
}

func (p *plot) x(v float64) float64 {
	return p.low.X + (v-p.fromX)/span(p.fromX, p.toX)*(p.high.X-p.low.X)
}
func (p *plot) y(v float64) float64 {
	return p.low.Y + (v-p.fromY)/span(p.fromY, p.toY)*(p.high.Y-p.low.Y)
}
func (p *plot) at(x, y float64) Point { return Point{X: p.x(x), Y: p.y(y)} }

// span is a range to divide by, never nothing.
func span(from, to float64) float64 {
	if to > from {
		return to - from
	}
	return 1
}

// upright draws a vertical axis at the left: title above, a thin line across at
// every tick.
func (p *plot) upright(d *Drawing, a Axis) {
	for _, t := range a.Ticks {
		y := p.y(t.At)
		ink, width := Far, gridThick
		if t.At == p.fromY {
			ink, width = Line, axisThick
		}
		d.add(line(ink, width, Point{X: p.low.X, Y: y}, Point{X: p.high.X, Y: y}))
		d.label(Label{Text: t.Label, At: Point{X: p.low.X - 0.4*p.text, Y: y - 0.35*p.text}, Align: End, Size: p.text, Ink: Line})
	}
	d.label(Label{Text: a.Title, At: Point{X: p.low.X, Y: p.high.Y + 0.9*p.text}, Size: p.text, Ink: Line, Bold: true})
}

// level draws a horizontal axis below the plot, its title at the end.
func (p *plot) level(d *Drawing, a Axis) {
	d.add(line(Line, axisThick, p.low, Point{X: p.high.X, Y: p.low.Y}))
	for _, t := range a.Ticks {
		x := p.x(t.At)
		d.add(line(Line, gridThick, Point{X: x, Y: p.low.Y}, Point{X: x, Y: p.low.Y - 0.3*p.text}))
		d.label(Label{Text: t.Label, At: Point{X: x, Y: p.low.Y - 1.4*p.text}, Align: Middle, Size: p.text, Ink: Line})
	}
	d.label(Label{Text: a.Title, At: Point{X: p.high.X, Y: p.low.Y - 2.8*p.text}, Align: End, Size: p.text, Ink: Line, Bold: true})
}

// line joins points with a stroke.
func line(ink Ink, width float64, points ...Point) Shape {
	return Shape{Ink: ink, Stroke: true, Width: width, Paths: []Path{polygon(points...)}}
}

// most is the largest of an axis' ticks and some values.
func most(a Axis, values ...float64) float64 {
	top := 0.0
	for _, t := range a.Ticks {
		top = max(top, t.At)
	}
	for _, v := range values {
		top = max(top, v)
	}
	return top
}

// frame makes the box as large as the options say, whatever is in it.
func (d *Drawing) frame(o ChartOptions) {
	d.hold(Point{}, 0)
	d.hold(Point{X: o.Width, Y: o.Height}, 0)
}
