package paper

import (
	"math"

	"gatepost/program/figure"
	"gatepost/program/publish/view"
)

// forms are how a view's series are drawn.
var forms = map[view.SeriesForm]figure.Form{
	view.SeriesBars: figure.FormBars, view.SeriesLevel: figure.FormLevels, view.SeriesCurve: figure.FormCurve, view.SeriesSpots: figure.FormSpots,
}

// Heights of a chart with its title, mm.
const (
	chartMost = 52
)

// progress lays the charts: the first over the whole width, the others two to a
// row, the rest of the page in equal rows.
func (p *reviewPage) progress(y float64, charts []view.Chart) {
	const gap = 6
	note := p.fit(Box{pageMargin, y, p.width(), 4}, style{Size: leastPage, Tone: Quiet}, p.r.Progress.Note)
	p.add(note)
	y += 5
	rows := 1 + len(charts)/2
	height := math.Min(chartMost, (p.bottom()-y)/float64(rows))
	half := (p.width() - gap) / 2
	for i, c := range charts {
		b := Box{pageMargin, y, p.width(), height}
		if i > 0 {
			b = Box{pageMargin + float64((i-1)%2)*(half+gap), y + height*float64((i+1)/2), half, height}
		}
		p.week(b, c)
	}
}

// week lays one chart by weeks with its title.
func (p *reviewPage) week(b Box, c view.Chart) {
	p.add(p.fit(Box{b.X, b.Y, b.W, 4.5}, style{Face: Bold, Size: 10, Least: leastPage, Tone: Accent}, c.Title))
	box := Box{b.X, b.Y + 4.5, b.W, b.H - 7}
	var series []figure.Series
	names := 0.0
	for _, s := range c.Series {
		f := figure.Series{Name: p.clean(s.Name), Form: forms[s.Form], Values: s.Values, Low: s.Low, High: s.High}
		if f.Form != figure.FormBars {
			names = math.Max(names, Regular.width(f.Name, leastPage))
		}
		series = append(series, f)
	}
	o := figure.ChartOptions{Width: box.W / 1000, Height: box.H / 1000, Text: leastPage * mmPerPoint / 1000, Texts: (names + 3) / 1000}
	p.add(p.drawn(figure.ProgressChart(c.Weeks, series, axis(c.Axis), o), box)...)
}
