package paper

import (
	"strconv"
	"strings"

	"gatepost/program"
	"gatepost/program/figure"
	"gatepost/program/publish/view"
)

// layLargeChart has the weeks of the wall chart in rows instead of columns, on sheets of
// the hand-out's size that hang beside each other, and then what its foot says.
func layLargeChart(ts *typesetter, v *view.View) []*Page {
	r := newRoll(ts, v, v.Labels.Weeks)
	r.head()
	r.positions()
	for _, w := range v.Weeks {
		r.week(w)
		for _, g := range v.Gates {
			if g.Week == w.Number {
				r.flag(g)
			}
		}
	}
	a := &v.Advice
	r.cue()
	r.passages([]passage{{a.DayTitle, title}, {a.DayShort, prose}, {a.StopTitle, title}, {a.StopShort, prose}})
	r.passages(bullets(v.Labels.Terms, v.ChartTerms))
	r.passages(append(bullets(a.CautionTitle, a.Cautions), passage{a.NotMedical, prose}))
	return r.end()
}

const largeFigure = 34 // mm, the height of a figure

// positions are the block's first position and the goal's, beside each other.
func (r *roll) positions() {
	all := r.v.Pictures
	if len(all) == 0 {
		return
	}
	if n := len(all); n > 2 {
		all = []view.Picture{all[0], all[n-1]}
	}
	var stances []program.Stance
	for _, p := range all {
		stances = append(stances, p.Stance)
	}
	w := (r.width() - 8) / 2
	bodies := bodiesOf(stances, func(int) figure.Options { return figure.Options{Headroom: bandShown} })
	tall, deep := 0.0, 0.0
	for _, b := range bodies {
		tall, deep = max(tall, b.above()), max(deep, b.below())
	}
	scale := min(largeFigure/(tall+deep), widest(bodies, w, 0))
	bottom := r.y
	for i, b := range bodies {
		x := largeMargin + float64(i)*(w+8)
		b.Labels = nil // smaller than the rest; the week says it
		r.add(r.stand(b, x+(w-scale*b.Width())/2, r.y+scale*tall, scale)...)
		s := style{Face: Bold, Size: 16, Align: AlignCentre}
		name, end := r.flow(x, r.y+scale*(tall+deep)+1, w, s, all[i].Step)
		when, end := r.flow(x, end, w, style{Size: leastLarge, Align: AlignCentre, Tone: Quiet}, joined(all[i].When, all[i].Help, all[i].Raised))
		r.add(name, when)
		bottom = max(bottom, end)
	}
	r.y = bottom + 3
}

// Columns of a week's row: its number and dates, the main work, the days.
const (
	largeNumber = 36 // mm
	largeDays   = 62
	dayBox      = 8.5
)

// week is one row: when, what and with which help, and a box for each day.
func (r *roll) week(w view.Week) {
	_, h := r.weekRow(w, 0)
	r.need(h)
	if r.y > largeMargin {
		r.add(Stroke{Points: []Point{{largeMargin, r.y}, {r.right(), r.y}}, Width: 0.3, Tone: Line})
	}
	marks, h := r.weekRow(w, r.y)
	r.add(marks...)
	r.y += h
}

func (r *roll) weekRow(w view.Week, y float64) ([]Mark, float64) {
	const air = 2.5
	y += air
	when, a := r.weekWhen(w, Box{largeMargin, y, largeNumber, 0})
	x := float64(largeMargin + largeNumber + 3)
	what, b := r.weekWhat(w, Box{x, y, r.right() - largeDays - 3 - x, 0})
	days, c := r.weekDays(w, Box{r.right() - largeDays, y, largeDays, 0})
	return append(append(when, what...), days...), max(a, b, c) - y + 2*air
}

// weekWhen is the week's number over its dates; a kind other than the ordinary stands on a
// plate.
func (r *roll) weekWhen(w view.Week, b Box) ([]Mark, float64) {
	number, y := r.flow(b.X, b.Y, b.W, style{Face: Bold, Size: 36, Leading: 1}, strconv.Itoa(w.Number))
	dates, y := r.flow(b.X, y, b.W, style{Size: leastLarge, Leading: 1.1}, w.Dates)
	marks := []Mark{number, dates}
	if w.KindKey == program.WeekBuild && !w.Gate {
		return marks, y
	}
	s := style{Face: Bold, Size: 16, Leading: 1.25}
	kind, end := r.flow(b.X+3, y+1.5, b.W-6, s, w.Kind)
	plate := Box{b.X, y + 1.5, min(Bold.width(kind.Lines[0], s.Size)+6, b.W), end - y - 1.5}
	switch {
	case w.KindKey == program.WeekTest || w.Gate:
		kind.Tone = Paper
		marks = append(marks, Fill{plate, Ink})
	default:
		marks = append(marks, Hatch{plate, 1.6, 0.3, false, Ink}, Fill{plate.Inset(2, 0), Tint}, Frame{plate, 0.3, 0, Ink})
	}
	return append(marks, kind), end
}

// weekWhat is the main figure, in outline where it is provisional, over the step and what
// helps; and what the week opens with or tests.
func (r *roll) weekWhat(w view.Week, b Box) ([]Mark, float64) {
	var marks []Mark
	y := b.Y
	line := func(s style, text string) {
		if text != "" {
			var t Text
			t, y = r.flow(b.X, y, b.W, s, text)
			marks = append(marks, t)
		}
	}
	if w.Main != "" {
		t := r.fit(Box{b.X, y, b.W, 15}, style{Face: Bold, Size: 40, Least: leastLarge, Leading: 1, Outline: w.Provisional}, w.Main)
		t.H = float64(len(t.Lines)) * t.Lead
		marks, y = append(marks, t), t.Bottom()+0.5
	}
	line(style{Size: 16, Leading: 1.15}, w.Then)
	line(style{Face: Bold, Size: 18, Leading: 1.15}, w.Step)
	line(style{Size: 16, Leading: 1.15}, joined(w.Rig, w.Drop, w.Helped))
	line(style{Size: leastLarge, Face: Bold, Tone: Accent}, w.Test)
	line(style{Size: leastLarge, Face: Bold}, w.Check)
	return marks, y
}

// weekDays has a box to tick for each session, in two columns where there are many.
func (r *roll) weekDays(w view.Week, b Box) ([]Mark, float64) {
	var marks []Mark
	columns := 1
	if len(w.Sessions) > 3 && fewerFits(r, w, b.W/2) {
		columns = 2
	}
	pitch := dayBox + 2.0
	for i, s := range w.Sessions {
		x, y := b.X+float64(i%columns)*b.W/2, b.Y+float64(i/columns)*pitch
		box := Box{x, y, dayBox, dayBox}
		name := Box{box.Right() + 2, y, b.W/float64(columns) - dayBox - 2.5, dayBox}
		marks = append(marks, Frame{box, 0.6, 0, Ink}, r.fit(name, style{Size: 16, Least: leastLarge, Middle: true}, s.Short))
	}
	rows := (len(w.Sessions) + columns - 1) / columns
	return marks, b.Y + float64(rows)*pitch
}

// fewerFits reports whether all day names have room beside their boxes in a column.
func fewerFits(r *roll, w view.Week, width float64) bool {
	for _, s := range w.Sessions {
		if Regular.width(r.clean(s.Short), leastLarge) > width-dayBox-2.5 {
			return false
		}
	}
	return true
}

// flag is a gate after its week: what is shown, and a box for each showing.
func (r *roll) flag(g view.Gate) {
	s := style{Face: Bold, Size: 18, Leading: 1.15}
	text := capital(r.v.Labels.Gate) + ": " + g.Short
	x, w := float64(largeMargin+3), r.width()-2*(dayBox+3)-8
	_, h := r.flow(x, 0, w, s, text)
	h = max(h, dayBox) + 4
	r.need(h + 2)
	b := Box{largeMargin, r.y, r.width(), h}
	t, _ := r.flow(x, r.y+2, w, s, text)
	r.add(Fill{b, Tint}, Fill{Box{b.X, b.Y, 1.4, b.H}, Accent}, t)
	for n := range 2 {
		box := Box{b.Right() - float64(2-n)*(dayBox+3), b.Y + (h-dayBox)/2, dayBox, dayBox}
		r.add(Fill{box, Paper}, Frame{box, 0.6, 0, Ink})
	}
	r.y += h + 2
}

func capital(s string) string {
	if s == "" {
		return s
	}
	r := []rune(s)
	return strings.ToUpper(string(r[:1])) + string(r[1:])
}
