package figure_test

import (
	"math"
	"testing"

	"gatepost/program"
	"gatepost/program/figure"
)

var block = []figure.WeekBar{
	{Name: "1", Kind: program.WeekBuild, Value: 10, Text: "10", Help: 6, HelpText: "6 kg"},
	{Name: "2", Kind: program.WeekBuild, Value: 12, Text: "12", Help: 6, HelpText: "6 kg", Ceiling: 13},
	{Name: "3", Kind: program.WeekDeload, Value: 8, Text: "8", Help: 6, HelpText: "6 kg", Ceiling: 13},
	{Name: "4", Kind: program.WeekAway},
	{Name: "5", Kind: program.WeekBuild, Value: 11, Text: "11", Help: 3, HelpText: "3 kg", Ceiling: 14},
	{Name: "6", Kind: program.WeekTest, Value: 5, Text: "5", HelpText: "free", Ceiling: 14},
}

var toFifteen = figure.Axis{Title: "hold, s", Ticks: []figure.Tick{{At: 0, Label: "0"}, {At: 15, Label: "15"}}}

// bars are what stands on a base line, by their ink and whether they are outlines.
type bar struct {
	ink     figure.Ink
	outline bool
	height  float64
}

func bars(d figure.Drawing) []bar {
	var all []bar
	for _, s := range d.Shapes {
		p := s.Paths[0]
		if (s.Ink == figure.Near || s.Ink == figure.Far || s.Ink == figure.Line) && len(p.Curves) >= 3 {
			all = append(all, bar{s.Ink, s.Stroke, math.Abs(p.Curves[1].To.Y - p.From.Y)})
		}
	}
	return all
}

// Bars are as long as their numbers, and the kinds of week differ without colour.
func TestWeekBars(t *testing.T) {
	for _, d := range []figure.Drawing{
		figure.HelpChart(block, toFifteen, toFifteen, figure.ChartOptions{}),
		figure.SecondsChart(block, toFifteen, "at most", figure.ChartOptions{}),
	} {
		holdsEverything(t, "weeks", d)
		got := bars(d)
		if len(got) != 5 {
			t.Fatalf("%d bars for five weeks with work: %v", len(got), got)
		}
		for i, want := range []float64{10, 12, 8, 11, 5} {
			if math.Abs(got[i].height/got[0].height-want/10) > 1e-9 {
				t.Errorf("bar %d is %v, want %v tenths of the first", i, got[i].height/got[0].height, want)
			}
		}
		if got[0].ink != figure.Near || got[2].ink != figure.Far || !got[4].outline {
			t.Errorf("the kinds look alike: %v", got)
		}
		if math.Abs(d.Width()-0.18) > 1e-9 || math.Abs(d.Height()-0.08) > 1e-9 {
			t.Errorf("%v × %v, want the default size", d.Width(), d.Height())
		}
	}
}

// Help is named where it changes, and a block without bands has no help line.
func TestHelpLine(t *testing.T) {
	says := func(d figure.Drawing, text string) int {
		n := 0
		for _, l := range d.Labels {
			if l.Text == text {
				n++
			}
		}
		return n
	}
	d := figure.HelpChart(block, figure.Axis{Title: "band help, kg"}, toFifteen, figure.ChartOptions{})
	if says(d, "6 kg") != 1 || says(d, "3 kg") != 1 || says(d, "free") != 1 || says(d, "band help, kg") != 1 {
		t.Errorf("labels %v", d.Labels)
	}
	free := append([]figure.WeekBar(nil), block...)
	for i := range free {
		free[i].Help, free[i].HelpText = 0, "free"
	}
	if d := figure.HelpChart(free, figure.Axis{Title: "band help, kg"}, toFifteen, figure.ChartOptions{}); says(d, "band help, kg") != 0 {
		t.Error("a help line without help")
	}
}

// Early, likely and late stand in proportion to their dates; a band without a
// late date runs to the end of the chart and has no end mark.
func TestForecastBands(t *testing.T) {
	days := figure.Axis{Ticks: []figure.Tick{{At: 100, Label: "Jan"}, {At: 300, Label: "Jul"}}}
	rows := []figure.Arrival{
		{Name: "a", Likely: 110, Held: true},
		{Name: "b", Early: 150, Likely: 180, Late: 250, Text: "March"},
		{Name: "c", Early: 200, Likely: 280, Open: true, Strong: true},
		{Name: "d", Early: 250, Likely: 400, Late: 500},
	}
	d := figure.ForecastChart(rows, days, 240, "goal", figure.ChartOptions{Width: 0.2, Names: 0.05, Texts: 0.05})
	holdsEverything(t, "forecast", d)
	var left, right, likely []float64
	for _, s := range d.Shapes {
		p := s.Paths[0]
		switch s.Ink {
		case figure.Far:
			left, right = append(left, p.From.X), append(right, p.Curves[1].To.X)
		case figure.Near:
			likely = append(likely, (p.From.X+p.Curves[1].To.X)/2)
		}
	}
	x := func(day float64) float64 { return 0.05 + (day-100)/200*0.10 }
	alike(t, "early", left, x(150), x(200), x(250))
	alike(t, "late", right, x(250), x(300), x(300))
	alike(t, "likely", likely, x(110), x(180), x(280))
}

func TestWorthBars(t *testing.T) {
	rows := []figure.Worth{{Name: "depression", Help: 2, Text: "2 kg"}, {Name: "straddle", Help: 1, Text: "1 kg"}}
	d := figure.WorthChart(rows, figure.Axis{Title: "kg"}, figure.ChartOptions{Height: 0.04})
	holdsEverything(t, "worth", d)
	var long []float64
	for _, s := range d.Shapes {
		if s.Ink == figure.Near {
			long = append(long, s.Paths[0].Curves[1].To.X-s.Paths[0].From.X)
		}
	}
	alike(t, "bars", []float64{long[1] / long[0]}, 0.5)
}

func TestChartsOfNothing(t *testing.T) {
	for _, d := range []figure.Drawing{
		figure.HelpChart(nil, figure.Axis{}, figure.Axis{}, figure.ChartOptions{}),
		figure.SecondsChart(nil, figure.Axis{}, "", figure.ChartOptions{}),
		figure.ForecastChart(nil, figure.Axis{}, 0, "", figure.ChartOptions{}),
		figure.WorthChart(nil, figure.Axis{}, figure.ChartOptions{}),
		figure.WorthChart([]figure.Worth{{}}, figure.Axis{}, figure.ChartOptions{}),
		figure.ForecastChart([]figure.Arrival{{}}, figure.Axis{}, 0, "", figure.ChartOptions{}),
	} {
		holdsEverything(t, "nothing", d)
	}
}

func alike(t *testing.T, what string, got []float64, want ...float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%s: %v, want %v", what, got, want)
	}
	for i := range want {
		if math.Abs(got[i]-want[i]) > 1e-9 {
			t.Errorf("%s: %v, want %v", what, got, want)
		}
	}
}
