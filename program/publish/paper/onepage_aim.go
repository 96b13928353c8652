package paper

import (
	"math"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// timeline draws the range of the goal's date: a bar from early to late, the
// likely date marked on it, and the agreed date as a flag.
func (p *onePage) timeline(x, y, width float64) float64 {
	f := p.v.Forecast
	if f.EarlyOn == 0 || f.GoalOn == 0 {
		return p.passages(x, y, width, []passage{{f.Range, strong}})
	}
	from, to := timeSpan(p.v)
	at := func(d program.Date) float64 {
		return x + width*float64(min(d, to)-from)/float64(to-from)
	}
	bar := y + 2*p.line() + 1
	late, open := f.LateOn, false
	if late == 0 {
		late, open = to, true
	}
	p.add(Stroke{Points: []Point{{x, bar + 2}, {x + width, bar + 2}}, Width: 0.25, Tone: Line})
	box := Box{at(f.EarlyOn), bar, max(at(late)-at(f.EarlyOn), 1), 4}
	p.add(Fill{box, Tint}, Hatch{box, 1, 0.2, false, Quiet}, Frame{box.Inset(0.15, 0.15), 0.3, 0, Ink})
	if open {
		p.add(Fill{Box{box.Right() - 1.2, bar - 0.4, 1.2, 4.8}, Paper})
	}
	if f.LikelyOn != 0 {
		p.add(Fill{Box{at(f.LikelyOn) - 0.9, bar - 0.8, 1.8, 5.6}, Accent})
	}
	p.flagDate(x, y, width, at(f.GoalOn), bar)
	end := max(at(p.v.Start), at(p.v.Weeks[len(p.v.Weeks)-1].Start+6))
	p.add(Fill{Box{at(p.v.Start), bar + 1.2, end - at(p.v.Start), 1.6}, Ink})
	likely := box.Right()
	if f.LikelyOn != 0 {
		likely = at(f.LikelyOn)
	}
	return p.rangeNames(x, bar+6, width, [3]float64{at(f.EarlyOn), likely, at(late)})
}

// timeSpan is the stretch of days drawn: from the first week to a little beyond
// the last date there is.
func timeSpan(v *view.View) (from, to program.Date) {
	f := v.Forecast
	from = min(v.Start, f.EarlyOn, f.GoalOn)
	to = max(f.EarlyOn, f.LikelyOn, f.LateOn, f.GoalOn)
	return from, to + (to-from)/20 + 7
}

// flagDate names the agreed date above the bar, on the side that has room.
func (p *onePage) flagDate(x, y, width, at, bar float64) {
	p.add(Stroke{Points: []Point{{at, y + 1}, {at, bar + 5.5}}, Width: 0.5, Dash: 0.8, Tone: Ink})
	s := style{Size: p.size, Least: leastPage, Face: Bold}
	box := Box{at + 1.2, y, x + width - at - 1.2, 2 * p.line()}
	if at > x+width/2 {
		box, s.Align = Box{x, y, at - x - 1.2, 2 * p.line()}, AlignRight
	}
	p.add(p.fit(box, s, p.v.Labels.By))
}

// rangeNames writes each of the three dates under its place on the bar, as far
// as they leave each other room.
func (p *onePage) rangeNames(x, y, width float64, places [3]float64) float64 {
	f, l := p.v.Forecast, p.v.Labels
	names, dates := [3]string{l.Early, l.Likely, l.Late}, [3]string{f.Early, f.Likely, f.Late}
	var widths [3]float64
	for i := range dates {
		if dates[i] == "" {
			dates[i] = l.Far
		}
		needed := max(Bold.width(p.clean(dates[i]), p.size), Regular.width(p.clean(names[i]), p.size))
		widths[i] = min(needed+0.1, (width-2*nameGap)/3)
	}
	all := spread(x, width, places, widths)
	if lines := leaders(all, places, y); len(lines) > 0 {
		p.add(lines...)
		y += leaderHeight
	}
	for i, b := range all {
		s := style{Size: p.size, Least: leastPage, Align: AlignCentre, Tone: Quiet}
		b.Y, b.H = y, p.line()
		p.add(p.fitLine(b, s, names[i]))
		b.Y += p.line()
		s.Face, s.Tone = Bold, Ink
		p.add(p.fitLine(b, s, dates[i]))
	}
	return y + 2*p.line()
}

const (
	nameGap      = 2.5 // mm
	leaderHeight = 2   // mm
	leaderFrom   = 3   // mm aside, which a reader would take for another place
)

// leaders lead from places on the bar to names that had to stand aside.
func leaders(names [3]Box, places [3]float64, y float64) (all []Mark) {
	for i, b := range names {
		if middle := b.X + b.W/2; math.Abs(middle-places[i]) > leaderFrom {
			all = append(all, Stroke{Points: []Point{{places[i], y - 1}, {middle, y + leaderHeight}}, Width: 0.2, Tone: Quiet})
		}
	}
	return all
}

// spread puts three boxes as near to their places as a line allows without
// overlap.
func spread(x, width float64, places, widths [3]float64) [3]Box {
	var all [3]Box
	least, later := x, widths[0]+widths[1]+widths[2]+3*nameGap
	for i := range all {
		most := x + width - later + nameGap // what the later ones leave
		all[i] = Box{X: max(min(places[i]-widths[i]/2, most), least), W: widths[i]}
		later -= widths[i] + nameGap
		least = all[i].Right() + nameGap
	}
	return all
}
