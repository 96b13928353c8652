package figure

import "gatepost/program"

// WeekBar is one week of a chart by weeks.
type WeekBar struct {
	Name     string // under the bar: "3"
	Kind     program.WeekKind
	Value    float64 // seconds
	Text     string  // above the bar
	Help     float64 // of the bands; in HelpChart only
	HelpText string  // above the line where the help changes
	Ceiling  float64 // what the bar may not pass; in SecondsChart only; 0: none
}

// HelpChart shows the help of the bands above the seconds held with it, week by
// week; where there is no help at all, the seconds alone. Build weeks are dark
// bars, easier ones light, test weeks outlines.
func HelpChart(weeks []WeekBar, help, hold Axis, o ChartOptions) Drawing {
	o = o.filled()
	var d Drawing
	d.frame(o)
	upper, lower := weekPlot(len(weeks), o), weekPlot(len(weeks), o)
	helped := false
	for _, w := range weeks {
		lower.toY, upper.toY = most(hold, lower.toY, w.Value), most(help, upper.toY, w.Help)
		helped = helped || w.Help > 0
	}
	if helped {
		middle := lower.low.Y + 0.52*(upper.high.Y-lower.low.Y)
		lower.high.Y, upper.low.Y = middle-1.5*o.Text, middle+1.2*o.Text
		upper.upright(&d, help)
		upper.steps(&d, weeks, func(w WeekBar) float64 { return w.Help }, 0)
		upper.helpTexts(&d, weeks)
	}
	lower.upright(&d, hold)
	lower.bars(&d, weeks, false)
	return d
}

// SecondsChart shows the straight-arm seconds of each week under the most that
// the week may hold; ceiling is that line's name.
func SecondsChart(weeks []WeekBar, seconds Axis, ceiling string, o ChartOptions) Drawing {
	o = o.filled()
	var d Drawing
	d.frame(o)
	p := weekPlot(len(weeks), o)
	for _, w := range weeks {
		p.toY = most(seconds, p.toY, w.Value, w.Ceiling)
	}
	p.upright(&d, seconds)
	p.bars(&d, weeks, true)
	p.steps(&d, weeks, func(w WeekBar) float64 { return w.Ceiling }, dashOn)
	for i := len(weeks) - 1; i >= 0; i-- {
		if c := weeks[i].Ceiling; c > 0 {
			at := plus(p.at(float64(i+1), c), Point{Y: 0.4 * o.Text})
			d.label(Label{Text: ceiling, At: at, Align: End, Size: o.Text, Ink: Accent})
			break
		}
	}
	return d
}

// weekPlot leaves room for numbers at the left, a title above and names below.
func weekPlot(weeks int, o ChartOptions) plot {
	return plot{
		low: Point{X: orElse(o.Names, 3*o.Text), Y: 1.8 * o.Text}, high: Point{X: o.Width - 0.5*o.Text, Y: o.Height - 2.2*o.Text},
		toX: float64(weeks), text: o.Text,
	}
}

// bars stand on the week's place, named below and told above, or inside where
// they are dark and tall enough and a line runs above them.
func (p *plot) bars(d *Drawing, weeks []WeekBar, inside bool) {
	const free = 0.18 // of a week's width, at each side
	for i, w := range weeks {
		x := float64(i)
		middle := p.x(x + 0.5)
		d.label(Label{Text: w.Name, At: Point{X: middle, Y: p.low.Y - 1.4*p.text}, Align: Middle, Size: p.text, Ink: Line})
		if w.Value <= 0 {
			continue
		}
		d.add(barShape(w.Kind, rectangle(p.at(x+free, 0), p.at(x+1-free, w.Value))))
		told := Label{Text: w.Text, At: Point{X: middle, Y: p.y(w.Value) + 0.35*p.text}, Align: Middle, Size: p.text, Ink: Line}
		if inside && w.Kind == program.WeekBuild && p.y(w.Value) > p.low.Y+1.8*p.text {
			told.At.Y, told.Ink = p.y(w.Value)-1.2*p.text, Paper
		}
		d.label(told)
	}
}

// barShape tells the kinds of week apart without colour.
func barShape(kind program.WeekKind, box Path) Shape {
	switch kind {
	case program.WeekTest:
		box.lineTo(box.From)
		return Shape{Ink: Line, Stroke: true, Width: axisThick, Paths: []Path{box}}
	case program.WeekDeload, program.WeekAway:
		return Shape{Ink: Far, Paths: []Path{box}}
	}
	return Shape{Ink: Near, Paths: []Path{box}}
}

// steps is a line that is level over each week; weeks without a value break a
// dashed line and are the ground for a solid one.
func (p *plot) steps(d *Drawing, weeks []WeekBar, value func(WeekBar) float64, dash float64) {
	var points []Point
	draw := func() {
		if len(points) > 0 {
			s := line(Accent, lineWide, points...)
			s.Dash = dash
			d.add(s)
		}
		points = nil
	}
	for i, w := range weeks {
		if v := value(w); v > 0 || dash == 0 {
			points = append(points, p.at(float64(i), v), p.at(float64(i+1), v))
		} else {
			draw()
		}
	}
	draw()
}

// helpTexts name the help where it changes.
func (p *plot) helpTexts(d *Drawing, weeks []WeekBar) {
	for i, w := range weeks {
		if i > 0 && weeks[i-1].HelpText == w.HelpText {
			continue
		}
		at := plus(p.at(float64(i), w.Help), Point{X: 0.2 * p.text, Y: 0.5 * p.text})
		d.label(Label{Text: w.HelpText, At: at, Size: p.text, Ink: Accent})
	}
}
