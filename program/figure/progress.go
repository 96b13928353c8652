package figure

import (
	"cmp"
	"math"
	"slices"
)

// Form is how a series of a chart by weeks is drawn.
type Form int

const (
	FormBars   Form = iota // a dark bar a week
	FormLevels             // a dashed line, level over each week
	FormCurve              // points joined, in a light band where the series has one
	FormSpots              // rings
)

// Series is one number a week; NaN where there is none.
type Series struct {
	Name      string // at the last of its values; curves and levels only
	Form      Form
	Values    []float64
	Low, High []float64 // of a FormCurve; nil: no band
}

// ProgressChart shows series over weeks on one upright axis, which runs from its
// first tick to its last. Ranges lie lowest, spots on top. Curves differ by their
// marks: full, ring, square, in turn.
func ProgressChart(weeks []string, series []Series, axis Axis, o ChartOptions) Drawing {
	o = o.filled()
	var d Drawing
	d.frame(o)
	p := progressPlot(len(weeks), series, axis, o)
	p.upright(&d, axis)
	apart := p.apart(weeks)
	for i, name := range weeks {
		if (len(weeks)-1-i)%apart > 0 {
			continue
		}
		d.label(Label{Text: name, At: Point{X: p.x(float64(i) + 0.5), Y: p.low.Y - 1.4*o.Text}, Align: Middle, Size: o.Text, Ink: Line})
	}
	d.add(line(Line, axisThick, p.low, Point{X: p.high.X, Y: p.low.Y}))
	for _, s := range series {
		p.ranges(&d, s)
	}
	for _, form := range []Form{FormBars, FormLevels, FormCurve, FormSpots} {
		nth := 0
		for _, s := range series {
			if s.Form == form {
				p.series(&d, s, nth)
				nth++
			}
		}
	}
	p.names(&d, series)
	return d
}

// progressPlot leaves room at the right for the series' names.
func progressPlot(weeks int, series []Series, axis Axis, o ChartOptions) plot {
	p := weekPlot(weeks, o)
	p.high.X = o.Width - orElse(o.Texts, 0.5*o.Text)
	if n := len(axis.Ticks); n > 0 {
		p.fromY, p.toY = axis.Ticks[0].At, axis.Ticks[n-1].At
	}
	for _, s := range series {
		for _, v := range slices.Concat(s.Values, s.Low, s.High) {
			if !math.IsNaN(v) {
				p.toY = max(p.toY, v)
			}
		}
	}
	return p
}

// apart is every how manyeth week is named, so that names keep a letter between
// them; a letter is about six tenths as wide as high.
func (p *plot) apart(weeks []string) int {
	longest := 0
	for _, name := range weeks {
		longest = max(longest, len([]rune(name)))
	}
	n := 1
	for float64(n)*(p.x(1)-p.x(0)) < 0.6*p.text*float64(longest+1) && n < len(weeks) {
		n++
	}
	return n
}

func (p *plot) series(d *Drawing, s Series, nth int) {
	switch s.Form {
	case FormBars:
		const free = 0.18
		for i, v := range s.Values {
			if !math.IsNaN(v) && v > p.fromY {
				d.add(Shape{Ink: Near, Paths: []Path{rectangle(p.at(float64(i)+free, p.fromY), p.at(float64(i)+1-free, v))}})
			}
		}
	case FormLevels:
		for _, run := range runs(s.Values) {
			var points []Point
			for i := run.from; i < run.to; i++ {
				points = append(points, p.at(float64(i), s.Values[i]), p.at(float64(i)+1, s.Values[i]))
			}
			shape := line(Accent, lineWide, points...)
			shape.Dash = dashOn
			d.add(shape)
		}
	case FormCurve:
		p.curve(d, s, nth)
	case FormSpots:
		for i, v := range s.Values {
			if !math.IsNaN(v) {
				d.add(Shape{Ink: Paper, Paths: []Path{disc(p.at(float64(i)+0.5, v), 1.5*markSize)}})
				d.add(Shape{Ink: Line, Stroke: true, Width: lineWide, Paths: []Path{disc(p.at(float64(i)+0.5, v), 1.3*markSize)}})
			}
		}
	}
}

// ranges draws a curve's band, which breaks at gaps.
func (p *plot) ranges(d *Drawing, s Series) {
	for _, run := range runs(s.Low) {
		var up, down []Point
		for i := run.from; i < run.to && i < len(s.High); i++ {
			up = append(up, p.at(float64(i)+0.5, s.High[i]))
			down = append(down, p.at(float64(i)+0.5, s.Low[i]))
		}
		slices.Reverse(down)
		if len(up) > 1 {
			d.add(Shape{Ink: Far, Paths: []Path{polygon(append(up, down...)...)}})
		}
	}
}

// curve joins the values over gaps.
func (p *plot) curve(d *Drawing, s Series, nth int) {
	var points []Point
	for i, v := range s.Values {
		if !math.IsNaN(v) {
			points = append(points, p.at(float64(i)+0.5, v))
		}
	}
	if len(points) > 1 {
		d.add(line(Near, lineWide, points...))
	}
	for _, at := range points {
		for _, shape := range mark(at, nth) {
			d.add(shape)
		}
	}
}

// mark is a curve's: full, ring or square, in turn.
func mark(at Point, nth int) []Shape {
	outer, half := disc(at, markSize), 0.9*markSize
	switch nth % 3 {
	case 1:
		return []Shape{{Ink: Near, Paths: []Path{outer}}, {Ink: Paper, Paths: []Path{disc(at, 0.55*markSize)}}}
	case 2:
		outer = rectangle(Point{X: at.X - half, Y: at.Y - half}, Point{X: at.X + half, Y: at.Y + half})
	}
	return []Shape{{Ink: Near, Paths: []Path{outer}}}
}

// names stand at the right, level with the last values, moved apart where they
// are too near each other.
func (p *plot) names(d *Drawing, series []Series) {
	var tags []Label
	for _, s := range series {
		if last := lastGiven(s.Values); s.Name != "" && s.Form != FormBars && last >= 0 {
			at := Point{X: p.high.X + 0.5*p.text, Y: p.y(s.Values[last]) - 0.35*p.text}
			tags = append(tags, Label{Text: s.Name, At: at, Size: p.text, Ink: Line})
		}
	}
	slices.SortStableFunc(tags, func(a, b Label) int { return cmp.Compare(b.At.Y, a.At.Y) })
	lead := 1.15 * p.text
	for i := range tags {
		if i > 0 {
			tags[i].At.Y = min(tags[i].At.Y, tags[i-1].At.Y-lead)
		}
	}
	for i := len(tags) - 1; i >= 0; i-- { // lift those pushed below the plot
		tags[i].At.Y = max(tags[i].At.Y, p.low.Y+lead*float64(len(tags)-1-i))
		d.label(tags[i])
	}
}

// stretch is from one index up to another.
type stretch struct{ from, to int }

// runs are the stretches without a gap.
func runs(values []float64) []stretch {
	var all []stretch
	for i, v := range values {
		switch n := len(all); {
		case math.IsNaN(v):
		case n > 0 && all[n-1].to == i:
			all[n-1].to++
		default:
			all = append(all, stretch{i, i + 1})
		}
	}
	return all
}

func lastGiven(values []float64) int {
	last := -1
	for i, v := range values {
		if !math.IsNaN(v) {
			last = i
		}
	}
	return last
}
