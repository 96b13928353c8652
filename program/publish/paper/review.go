package paper

import (
	"strings"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// Review prints a client's log read back, for the coach: a page of what needs a
// look and of charts by week, and one of gates, sets and changes. A review of no
// log has no page: no bytes and no problems.
func Review(v *view.View, r *view.Review) ([]byte, program.Problems) {
	if len(r.Standing) == 0 {
		return nil, nil
	}
	ts := &typesetter{lost: map[rune]bool{}}
	return write(v, ts, r.Title, layReview(ts, v, r)...)
}

// reviewPage is one of its pages, headed and set like the coach's other page.
type reviewPage struct {
	*coachPage
	r *view.Review
}

func layReview(ts *typesetter, v *view.View, r *view.Review) []*Page {
	hand, _ := sheets(v.Coach.Paper)
	titles := &view.CoachPage{Title: r.Labels.Page, Lead: r.Title}
	page := func(name string) *reviewPage {
		return &reviewPage{&coachPage{hand.portrait(name, leastPage), ts, v, titles, coachNotes}, r}
	}
	first, second := page(r.Labels.Progress), page(r.Labels.Gates)
	y := first.standing(first.head())
	if charts := append(append([]view.Chart{}, r.Progress.Public...), r.Progress.Coach...); len(charts) > 0 {
		first.progress(y, charts)
	}
	second.words(second.head(), second.guidance())
	pages := []*Page{first.Page, second.Page}
	for i, p := range pages {
		foot(p, ts, v, i+1, len(pages))
	}
	return pages
}

// flagRoom is the most that the flags take of the first page, mm: about fourteen
// lines (our judgement: with as many flags as a bad fortnight has none is cut, and
// the charts keep 40 mm each).
const flagRoom = 62

// standing is where the client is, and what needs the coach.
func (p *reviewPage) standing(y float64) float64 {
	r := p.r
	all := []passage{{strings.Join(r.Standing, " "), prose}}
	if r.Course != "" {
		all = append(all, passage{r.Labels.Course + ": " + r.Course + ".", strong})
	}
	if len(r.Flags) == 0 {
		all = append(all, passage{r.Labels.NoFlags, prose})
	} else {
		all = append(all, passage{r.Labels.Flags, title})
		for _, f := range r.Flags {
			all = append(all, passage{f.Word + ": " + f.Text, bullet})
		}
	}
	b := Box{pageMargin, y, p.width(), flagRoom}
	marks := p.squeezed(b, all)
	p.add(marks...)
	return lowest(marks, y) + 3
}

// lowest is where some marks end.
func lowest(marks []Mark, y float64) float64 {
	for _, m := range marks {
		y = max(y, m.extent().Bottom())
	}
	return y
}

// guidance is when to stop and who decides, over the foot; it says where it begins.
func (p *coachPage) guidance() float64 {
	const gap = 1.5
	s, text := style{Size: leastPage}, p.v.Advice.StopShort+" "+p.v.Advice.NotMedical
	_, height := p.flow(0, 0, p.width(), s, text)
	t, _ := p.flow(pageMargin, p.bottom()-height-gap, p.width(), s, text)
	p.add(t)
	return t.Y - gap
}

// words are the second page, in two columns, in the largest type with which they fit: what
// was learned, and what follows.
func (p *reviewPage) words(y, bottom float64) {
	const gap = 8
	r, l := p.r, p.r.Labels
	var learned, follows []passage
	part := func(to *[]passage, title string, lines []string) {
		if len(lines) > 0 {
			*to = append(*to, bullets(title, lines)...)
		}
	}
	part(&learned, l.Forecast, append(append([]string{}, r.Forecast...), r.NextTest))
	part(&learned, l.Estimate, r.Estimate)
	part(&learned, l.Offsets, r.Offsets)
	part(&learned, l.Moves, r.Moves)
	part(&learned, l.Doubted, r.Doubted)
	part(&learned, l.Unread, r.Unread)
	part(&follows, l.Asks, r.Asks)
	part(&follows, l.Wishes, r.Wishes)
	follows = append(follows, p.gates()...)
	follows = append(follows, p.changes()...)
	w, columns := (p.width()-gap)/2, [][]passage{learned, follows}
	for size := roomyNotes; size > coachNotes; size -= 0.5 { // the page is theirs alone
		var all []Mark
		fits := true
		for i, column := range columns {
			marks, end := p.column(pageMargin+float64(i)*(w+gap), y, w, size, 0, column)
			all, fits = append(all, marks...), fits && end <= bottom
		}
		if fits {
			p.add(all...)
			return
		}
	}
	for i, column := range columns {
		if len(column) > 0 {
			p.add(p.squeezed(Box{pageMargin + float64(i)*(w+gap), y, w, bottom - y}, column)...)
		}
	}
}

func (p *reviewPage) gates() []passage {
	var all []passage
	for i, g := range p.r.Gates {
		if i == 0 {
			all = append(all, passage{p.r.Labels.Gates, title})
		}
		all = append(all, passage{g.Line, strong})
		for _, t := range g.Terms {
			all = append(all, passage{t.Line, bullet})
		}
	}
	return all
}

func (p *reviewPage) changes() []passage {
	r := p.r
	all := []passage{{r.Labels.Changes, title}}
	if len(r.Changes) == 0 {
		return append(all, passage{r.Labels.NoChanges + " " + r.Reprint, prose})
	}
	for _, line := range r.Changes {
		all = append(all, passage{line, bullet})
	}
	if len(r.Notes) > 0 {
		all = append(all, bullets(r.Labels.Why, r.Notes)...)
	}
	all = append(all, passage{r.Labels.Print, title})
	if r.Keep != "" { // before it is printed
		all = append(all, passage{r.Keep, strong})
	}
	return append(all, passage{r.Reprint, prose})
}
