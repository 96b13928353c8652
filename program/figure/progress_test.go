package figure_test

import (
	"math"
	"testing"

	"gatepost/program/figure"
)

var gap = math.NaN()

var toTwenty = figure.Axis{Title: "s", Ticks: []figure.Tick{{At: 10, Label: "10"}, {At: 15, Label: "15"}, {At: 20, Label: "20"}}}

// Bars and marks stand in proportion to their numbers above the axis' foot, and a
// gap has neither.
func TestProgressIsToScale(t *testing.T) {
	d := figure.ProgressChart([]string{"1", "2", "3", "4"}, []figure.Series{
		{Form: figure.FormBars, Values: []float64{12, gap, 14, 18}},
		{Name: "plan", Form: figure.FormLevels, Values: []float64{12, 12, gap, 20}},
	}, toTwenty, figure.ChartOptions{})
	holdsEverything(t, "progress", d)
	var heights, dashed []float64
	for _, s := range d.Shapes {
		switch p := s.Paths[0]; {
		case s.Ink == figure.Near:
			heights = append(heights, math.Abs(p.Curves[1].To.Y-p.From.Y))
		case s.Dash > 0:
			dashed = append(dashed, p.Curves[len(p.Curves)-1].To.X-p.From.X)
		}
	}
	alike(t, "bars", []float64{heights[1] / heights[0], heights[2] / heights[0]}, 2, 4)
	alike(t, "levels", []float64{dashed[0] / dashed[1]}, 2) // two weeks, a gap, one week
}

// A curve joins its points over a gap; its range, the dashed line and the marks
// tell series apart without colour.
func TestCurvesDifferWithoutColour(t *testing.T) {
	values := []float64{12, gap, 14}
	d := figure.ProgressChart([]string{"1", "2", "3"}, []figure.Series{
		{Name: "wrists", Form: figure.FormCurve, Values: values, Low: []float64{11, 12, 13}, High: []float64{13, 14, 15}},
		{Name: "elbows", Form: figure.FormCurve, Values: values},
		{Name: "shoulders", Form: figure.FormCurve, Values: values},
		{Form: figure.FormSpots, Values: []float64{gap, 13, gap}},
	}, toTwenty, figure.ChartOptions{Texts: 0.03})
	holdsEverything(t, "curves", d)
	lines, ranges, rings, squares := 0, 0, 0, 0
	for _, s := range d.Shapes {
		n := len(s.Paths[0].Curves)
		switch {
		case s.Stroke && s.Ink == figure.Near && n == 1:
			lines++
		case s.Ink == figure.Far && !s.Stroke:
			ranges++
		case s.Ink == figure.Paper:
			rings++
		case s.Ink == figure.Near && !s.Stroke && n == 3:
			squares++
		}
	}
	if lines != 3 || ranges != 1 || rings != 3 || squares != 2 {
		t.Errorf("%d lines, %d ranges, %d rings, %d squares", lines, ranges, rings, squares)
	}
	var at []float64
	for _, l := range d.Labels {
		if l.Text == "wrists" || l.Text == "elbows" || l.Text == "shoulders" {
			at = append(at, l.At.Y)
		}
	}
	for i := range at {
		for j := range i {
			if math.Abs(at[i]-at[j]) < 0.003 {
				t.Errorf("names lie over each other: %v", at)
			}
		}
	}
	if len(at) != 3 {
		t.Errorf("%d names", len(at))
	}
}

func TestNamesOfManyWeeksKeepApart(t *testing.T) {
	var weeks []string
	for i := range 16 {
		weeks = append(weeks, string(rune('a'+i))+"xy")
	}
	d := figure.ProgressChart(weeks, []figure.Series{{Form: figure.FormBars, Values: make([]float64, 16)}}, toTwenty, figure.ChartOptions{Width: 0.05})
	named := 0
	for _, l := range d.Labels {
		if len(l.Text) == 3 {
			named++
		}
	}
	if named < 2 || named > 8 {
		t.Errorf("%d of 16 weeks are named", named)
	}
}

func TestProgressOfNothing(t *testing.T) {
	for _, series := range [][]figure.Series{nil, {{}}, {{Form: figure.FormCurve, Values: []float64{gap}, Low: []float64{gap}, High: []float64{gap}}}} {
		holdsEverything(t, "nothing", figure.ProgressChart([]string{"1"}, series, figure.Axis{}, figure.ChartOptions{}))
	}
	holdsEverything(t, "no weeks", figure.ProgressChart(nil, nil, figure.Axis{}, figure.ChartOptions{}))
}
