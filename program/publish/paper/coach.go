package paper

import (
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/figure"
	"gatepost/program/publish/view"
)

// CoachPage prints what only the coach sees: a page of charts, and one of what
// better positions are worth, how the first rig hangs, and the planner's notes. A
// withheld program has none: no bytes and no problems.
func CoachPage(v *view.View) ([]byte, program.Problems) {
	if len(v.Weeks) == 0 {
		return nil, nil
	}
	ts := &typesetter{lost: map[rune]bool{}}
	return write(v, ts, v.ForCoach.Title+": "+v.Title, layCoach(ts, v)...)
}

const coachSize = 8.5 // points, of charts and notes

// coachPage is a page for the coach being laid out.
type coachPage struct {
	*Page
	*typesetter
	v    *view.View
	c    *view.CoachPage
	size float64 // points, of what was noted
}

func layCoach(ts *typesetter, v *view.View) []*Page {
	hand, _ := sheets(v.Coach.Paper)
	page := func(title string) *coachPage {
		return &coachPage{hand.portrait(title, leastPage), ts, v, &v.ForCoach, coachNotes}
	}
	notes := page(v.ForCoach.NotesTitle)
	top := notes.head()
	high := notes.second(top) - top
	var pages []*Page
	for _, scale := range []float64{1, 0.8, 0.65} { // charts lower, where that makes it one page and leaves the axes room
		charts := page(v.ForCoach.HelpTitle)
		y := charts.charts(charts.head(), scale) + 3
		if y+high <= charts.bottom() && (scale > 0.7 || charts.Faults() == nil) {
			charts.second(y)
			pages = []*Page{charts.Page}
			break
		}
		if pages == nil {
			pages = []*Page{charts.Page, nil}
		}
	}
	if len(pages) > 1 {
		pages[1] = roomy(page, v.ForCoach.NotesTitle).Page
	}
	for i, p := range pages {
		foot(p, ts, v, i+1, len(pages))
	}
	return pages
}

// roomy is the second page in the largest type with which it fits: a page that it does not
// share is not left half empty.
func roomy(page func(string) *coachPage, name string) *coachPage {
	for size := roomyNotes; size > coachNotes; size -= 0.5 {
		p := page(name)
		p.size = size
		if p.second(p.head()) <= p.bottom() {
			return p
		}
	}
	p := page(name)
	p.second(p.head())
	return p
}

func (p *coachPage) width() float64  { return p.Width - 2*pageMargin }
func (p *coachPage) bottom() float64 { return p.Height - pageMargin - 6 }

// head says whom it is for in a bar, whose it is, and what the goal is.
func (p *coachPage) head() float64 {
	v, y, half := p.v, float64(pageMargin), p.width()/2
	bar := Box{pageMargin, y, p.width(), 7}
	p.add(Fill{bar, Ink},
		p.fit(Box{bar.X + 3, y, 0.33 * bar.W, bar.H}, style{Face: Bold, Size: 12, Least: leastPage, Tone: Paper, Middle: true}, p.c.Title),
		p.fit(Box{bar.X + 0.36*bar.W, y, 0.64*bar.W - 3, bar.H}, style{Size: 9, Least: leastPage, Tone: Paper, Middle: true, Align: AlignRight}, p.c.Lead),
		p.fit(Box{pageMargin, y + 9, half, 10}, style{Face: Bold, Size: 22, Least: 10, Leading: 1}, v.Client),
		p.fit(Box{pageMargin + half, y + 9, half, 5.5}, style{Face: Bold, Size: 11, Least: leastPage, Align: AlignRight}, v.Goal),
		p.fit(Box{pageMargin + half, y + 14.5, half, 4.5}, style{Size: 9, Least: leastPage, Align: AlignRight, Tone: Quiet}, v.Block),
		Fill{Box{pageMargin, y + 20, p.width(), 0.7}, Ink})
	return y + 22.5
}

// charts share the page in proportion to what they have to show, those without anything
// to show left out; it says where they end.
func (p *coachPage) charts(y, scale float64) float64 {
	room := scale * (p.bottom() - y - 9) // mm, for the sentence below
	any := func(has func(view.WeekValue) bool) bool { return slices.ContainsFunc(p.c.Weeks, has) }
	if any(func(w view.WeekValue) bool { return w.Hold > 0 }) {
		y = p.chart(y, 0.36*room, p.c.HelpTitle, p.c.Legend, p.helpChart)
	}
	if len(p.c.Arrivals) > 0 { // nothing is counted, or dated, where balance is practised
		if any(func(w view.WeekValue) bool { return w.Seconds > 0 }) {
			y = p.chart(y, 0.25*room, p.c.SecondsTitle, p.c.Ceiling, p.secondsChart)
		}
		rows := math.Min(float64(len(p.c.Arrivals))*8+22, 0.39*room/scale)
		y = p.chart(y, rows, p.c.ForecastTitle, "", p.forecastChart)
	}
	t, end := p.flow(pageMargin, y, p.width(), style{Size: coachSize}, joined(p.v.Forecast.Sentence))
	p.add(t)
	return end
}

// chart lays a title and, under it, a drawing of the height that is left.
func (p *coachPage) chart(y, height float64, title, legend string, draw func(figure.ChartOptions) figure.Drawing) float64 {
	t := p.fit(Box{pageMargin, y, p.width(), 4.5}, style{Face: Bold, Size: 10, Least: leastPage, Tone: Accent}, title)
	t.W = Bold.width(t.Lines[0], t.Size)
	p.add(t, p.fit(Box{t.Right() + 4, y, pageMargin + p.width() - t.Right() - 4, 4.5},
		style{Size: leastPage, Tone: Quiet, Align: AlignRight, Middle: true}, legend))
	box := Box{pageMargin, y + 5.5, p.width(), height - 8.5}
	p.add(p.drawn(draw(figure.ChartOptions{Width: box.W / 1000, Height: box.H / 1000, Text: coachSize * mmPerPoint / 1000}), box)...)
	return y + height
}

func axis(a view.Axis) figure.Axis {
	out := figure.Axis{Title: a.Title}
	for _, t := range a.Ticks {
		out.Ticks = append(out.Ticks, figure.Tick{At: t.At, Label: t.Text})
	}
	return out
}

func (p *coachPage) helpChart(o figure.ChartOptions) figure.Drawing {
	var bars []figure.WeekBar
	for _, w := range p.c.Weeks {
		bars = append(bars, figure.WeekBar{Name: w.Name, Kind: w.Kind, Value: float64(w.Hold), Text: w.HoldText, Help: w.HelpKG, HelpText: w.HelpText})
	}
	return figure.HelpChart(bars, axis(p.c.HelpAxis), axis(p.c.HoldAxis), o)
}

func (p *coachPage) secondsChart(o figure.ChartOptions) figure.Drawing {
	var bars []figure.WeekBar
	for _, w := range p.c.Weeks {
		bars = append(bars, figure.WeekBar{Name: w.Name, Kind: w.Kind, Value: w.Seconds, Text: w.SecondsText, Ceiling: w.Most})
	}
	return figure.SecondsChart(bars, axis(p.c.WorkAxis), "", o)
}

// forecastChart has a row a step. What is not forecast is drawn beyond the end.
func (p *coachPage) forecastChart(o figure.ChartOptions) figure.Drawing {
	var rows []figure.Arrival
	days := axis(p.c.DateAxis)
	beyond := days.Ticks[len(days.Ticks)-1].At + 1
	at := func(d program.Date) float64 {
		if d == 0 {
			return beyond
		}
		return float64(d)
	}
	names, texts := 0.0, 0.0
	for _, a := range p.c.Arrivals {
		r := figure.Arrival{Name: p.clean(a.Step), Early: at(a.Early), Likely: at(a.Likely), Late: at(a.Late), Text: a.Text,
			Open: a.Late == 0, Held: a.Held, Strong: a.Goal}
		names, texts = math.Max(names, Bold.width(r.Name, coachSize)), math.Max(texts, Regular.width(r.Text, coachSize))
		rows = append(rows, r)
	}
	o.Names, o.Texts = (names+4)/1000, (texts+4)/1000
	return figure.ForecastChart(rows, days, float64(p.v.Forecast.GoalOn), p.c.GoalDate, o)
}
