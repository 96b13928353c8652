package paper

import (
	"strings"

	"gatepost/program"
	"gatepost/program/figure"
	"gatepost/program/publish/view"
)

// layLargePage is the plan to hand over in large print, on as many pages as it takes: the
// same words in the same order, weeks and steps in rows.
func layLargePage(ts *typesetter, v *view.View) []*Page {
	r := newRoll(ts, v, v.Labels.Plan)
	r.head()
	if len(v.Withheld) > 0 || len(v.Weeks) == 0 {
		r.passages(letterText(v))
		return r.end()
	}
	l, a := &v.Labels, &v.Advice
	r.passages([]passage{{l.Where, title}, {v.Where, prose}})
	if v.After != "" {
		r.passages([]passage{{l.After, title}, {v.After, prose}})
	}
	r.passages([]passage{{l.Goal, title}, {capital(v.Forecast.Range) + ".", prose}, {v.Forecast.ChanceLine, prose}})
	r.rungs()
	r.table()
	if len(v.Notes) > 0 {
		r.passages(bullets(l.Notes, v.Notes))
	}
	r.gate()
	r.passages(bullets(a.DayTitle, a.DayRule))
	r.passages(bullets(a.MissedTitle, a.Missed))
	r.passages(bullets(a.PainTitle, a.PainRule))
	r.passages([]passage{{a.StopTitle, title}, {a.StopLine, prose}})
	r.cue()
	r.passages(bullets(l.Terms, v.PageTerms))
	r.passages(append(bullets(a.CautionTitle, a.Cautions), passage{a.NotMedical, prose}))
	return r.end()
}

const (
	rungRow   = 19 // mm, a step of the ladder
	rungBody  = 46 // mm of it for the figure
	rungFloor = 17 // mm from its top
)

// rungs are the steps in this body's order, a row each: the figure, the step, its share,
// where it stands.
func (r *roll) rungs() {
	rungs := r.v.Ladder
	if len(rungs) < 2 {
		return
	}
	r.title(r.v.Labels.Ladder, rungRow)
	var stances []program.Stance
	for _, g := range rungs {
		stances = append(stances, g.Stance)
	}
	bodies := bodiesOf(stances, func(int) figure.Options { return figure.Options{Plain: true} })
	tall, wide := 0.0, 0.0
	for _, b := range bodies {
		tall, wide = max(tall, b.above()+b.below()), max(wide, b.Width())
	}
	scale := 0.0
	if tall > 0 {
		scale = min(rungFloor/tall, rungBody/wide)
	}
	for i, g := range rungs {
		r.need(rungRow)
		if scale > 0 {
			r.add(r.stand(bodies[i], largeMargin, r.y+scale*bodies[i].above()+1, scale)...)
		}
		b := Box{largeMargin + rungBody + 4, r.y, r.width() - rungBody - 4, rungRow / 2}
		r.add(r.fit(b, style{Face: Bold, Size: 18, Least: leastLarge, Bottom: true}, g.Step))
		b.Y = b.Bottom()
		r.add(r.fit(b, style{Size: leastLarge}, joined(append([]string{g.Share}, stairNotes(g)...)...)))
		r.y += rungRow
	}
}

// table has a week in two lines, or in one where it has no main work.
func (r *roll) table() {
	l := &r.v.Labels
	r.title(l.Weeks, 16)
	for _, w := range r.v.Weeks {
		kind := w.Check
		if w.Gate || w.KindKey != program.WeekBuild {
			kind = w.Kind
		}
		first := joined(w.Title+": "+w.Dates, kind)
		second := joined(strings.TrimSpace(w.Range+" "+w.Step), w.Rig, w.Drop, w.Helped)
		all := []passage{{first, strong}}
		if second != "" {
			all = append(all, passage{second, prose})
		}
		_, h := r.column(0, 0, r.width(), leastLarge, 0, all)
		r.need(h + 1.5)
		marks, end := r.column(largeMargin, r.y, r.width(), leastLarge, 0, all)
		r.add(marks...)
		r.y = end + 0.8
		r.add(Stroke{Points: []Point{{largeMargin, r.y}, {r.right(), r.y}}, Width: 0.2, Tone: Line})
		r.y += 0.7
	}
	for _, text := range []string{l.From, testsOf(r.v), r.v.Turns} {
		if text != "" {
			r.passages([]passage{{text, prose}})
		}
	}
}

// gate is the words of the next gate and of the goal's, and who signs.
func (r *roll) gate() {
	r.passages(gateText(r.v))
	for _, label := range []string{r.v.Labels.Passed, r.v.Labels.Signed} {
		r.need(11)
		s := style{Size: leastLarge, Tone: Quiet, Bottom: true}
		t := r.fit(Box{largeMargin, r.y, r.width() / 2, 10}, s, label)
		t.W = Regular.width(t.Lines[0], t.Size)
		y := t.Bottom()
		r.add(t, Stroke{Points: []Point{{t.Right() + 2, y}, {largeMargin + 0.6*r.width(), y}}, Width: 0.3, Tone: Ink})
		r.y += 11
	}
}
