package site

import (
	"html/template"
	"math"
	"strconv"
	"unicode/utf8"

	"gatepost/program/figure"
	"gatepost/program/publish/view"
)

// progressView is what was done of a block: strength as a share of what the goal
// asks, holds, help. Of all that a log says, only this may be published.
type progressView struct {
	Title, Words, Note string
	Charts             []chartView
}

// chartView is a chart by weeks.
type chartView struct {
	Title string
	SVG   template.HTML
}

// Sizes of a chart, m: read on a phone, where it is as wide as the page (our
// judgement: letters are a twenty-fifth of the width).
const (
	chartWidth  = 0.10
	chartHeight = 0.056
	chartText   = 0.004
)

var forms = map[view.SeriesForm]figure.Form{
	view.SeriesBars: figure.FormBars, view.SeriesLevel: figure.FormLevels, view.SeriesCurve: figure.FormCurve, view.SeriesSpots: figure.FormSpots,
}

func progress(v *view.View) *progressView {
	if len(v.Progress.Public) == 0 {
		return nil
	}
	p := &progressView{Title: v.Progress.Title, Words: v.Progress.Words, Note: v.Progress.Note}
	for i, c := range v.Progress.Public {
		svg := figure.SVG(chart(c), c.Title+": "+c.Axis.Title, c.Desc, figure.SVGOptions{Prefix: "progress-" + strconv.Itoa(i), Scale: 1e4, Margin: 0.001})
		p.Charts = append(p.Charts, chartView{c.Title, template.HTML(svg)}) // its texts are escaped by the writer
	}
	return p
}

func chart(c view.Chart) figure.Drawing {
	var series []figure.Series
	names := 0
	for _, s := range c.Series {
		f := figure.Series{Name: s.Name, Form: forms[s.Form], Values: s.Values, Low: s.Low, High: s.High}
		if f.Form != figure.FormBars {
			names = max(names, utf8.RuneCountInString(s.Name))
		}
		series = append(series, f)
	}
	axis := figure.Axis{Title: c.Axis.Title}
	for _, t := range c.Axis.Ticks {
		axis.Ticks = append(axis.Ticks, figure.Tick{At: t.At, Label: t.Text})
	}
	right := math.Max(1, 0.55*float64(names)+1) * chartText // a letter is about half as wide as high
	return figure.ProgressChart(c.Weeks, series, axis, figure.ChartOptions{Width: chartWidth, Height: chartHeight, Text: chartText, Texts: right})
}
