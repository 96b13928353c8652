package paper

import (
	"slices"
	"strings"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// OnePage prints the plan to hand over: always one page, but in large print. What is long makes the
// type smaller, down to eight points; then the notes are left out, then the rules
// are said in a sentence each, then the ladder's figures shrink and the ladder
// goes, and last of all texts are held to a few lines, the cautions never. A
// withheld program gets a letter with the reasons instead.
func OnePage(v *view.View) ([]byte, program.Problems) {
	ts := &typesetter{lost: map[rune]bool{}}
	if v.Large {
		return write(v, ts, v.Title, layLargePage(ts, v)...)
	}
	return write(v, ts, v.Title, layOnePage(ts, v))
}

const (
	pageMargin = 13 // mm
	leastPage  = 8  // points
)

// onePage is the plan being laid out, in one of the ways to make it fit.
type onePage struct {
	*Page
	*typesetter
	try
	v   *view.View
	gap float64 // mm between zones

	bodies []body // of the ladder
}

// try is a way to make the page fit.
type try struct {
	size  float64 // of running text, points
	notes bool    // the planner's notes are there
	short bool    // the rules in one sentence each, no outlook
	small bool    // the ladder's figures are half as tall
	bare  bool    // no ladder
	most  int     // lines of a passage; 0: as many as it takes
}

// tries are the ways, the best first.
func tries(largest float64) []try {
	var all []try
	add := func(from, to float64, t try) {
		for t.size = from; t.size >= to; t.size -= 0.25 {
			all = append(all, t)
		}
	}
	add(largest, 8.5, try{notes: true})
	add(largest-1, leastPage, try{})
	add(leastPage, leastPage, try{small: true})
	add(leastPage, leastPage, try{short: true, small: true})
	add(leastPage, leastPage, try{bare: true})
	add(leastPage, leastPage, try{short: true, bare: true})
	for most := 8; most > 0; most-- {
		add(leastPage, leastPage, try{short: true, bare: true, most: most})
	}
	return all
}

// zone lays one part of the page from y down and says where it ends.
type zone func(y float64) float64

func layOnePage(ts *typesetter, v *view.View) *Page {
	hand, _ := sheets(v.Coach.Paper)
	if len(v.Withheld) > 0 || len(v.Weeks) == 0 {
		return layLetter(ts, v, hand)
	}
	var p *onePage
	bodies := rungFigures(v)
	for _, try := range tries(10) {
		p = &onePage{Page: hand.portrait(v.Labels.Plan, leastPage), typesetter: ts, v: v, try: try, gap: 2.5, bodies: bodies}
		if slack := p.bottom() - p.lay(); slack >= 0 {
			p.Marks = nil
			p.gap += min(slack/float64(len(p.zones())), 5)
			p.lay()
			break
		}
	}
	return p.Page
}

func (p *onePage) zones() []zone {
	return []zone{p.header, p.aim, p.ladder, p.table, p.remarks, p.rules, p.cue, p.terms, p.cautions}
}

func (p *onePage) lay() float64 {
	y := float64(pageMargin)
	for _, zone := range p.zones() {
		y = zone(y) + p.gap
	}
	foot(p.Page, p.typesetter, p.v, 1, 1)
	return y - p.gap
}

func (p *onePage) width() float64  { return p.Width - 2*pageMargin }
func (p *onePage) right() float64  { return p.Width - pageMargin }
func (p *onePage) bottom() float64 { return p.Height - pageMargin - p.line() - 1 }
func (p *onePage) line() float64   { return style{}.lead(p.size) }

func (p *onePage) passages(x, y, width float64, all []passage) float64 {
	marks, end := p.column(x, y, width, p.size, p.most, all)
	p.add(marks...)
	return end
}

func (p *onePage) header(y float64) float64 {
	left := 0.56 * p.width()
	p.add(
		p.fit(Box{pageMargin, y, left, 5}, style{Face: Bold, Size: 10, Least: leastPage, Tone: Accent},
			p.v.Skill+" · "+p.v.Coach.Studio),
		p.fit(Box{pageMargin, y + 5, left - 4, 12}, style{Face: Bold, Size: 30, Least: 12, Leading: 1}, p.v.Client),
		p.fit(Box{pageMargin + left, y, p.width() - left, 11}, style{Face: Bold, Size: 13, Least: leastPage, Bottom: true, Align: AlignRight},
			p.v.Goal),
		p.fit(Box{pageMargin + left, y + 11.5, p.width() - left, 5}, style{Size: 10, Least: leastPage, Tone: Quiet, Align: AlignRight},
			p.v.Block),
		Fill{Box{pageMargin, y + 18, p.width(), 0.7}, Ink},
	)
	return y + 18.7
}

// aim is where the client is, and where this goes.
func (p *onePage) aim(y float64) float64 {
	left := 0.36 * p.width()
	x := pageMargin + left + 7
	where := []passage{{p.v.Labels.Where, title}, {p.v.Where, prose}}
	if !p.short && p.v.After != "" {
		where = append(where, passage{p.v.Labels.After, title}, passage{p.v.After, prose})
	}
	end := p.passages(pageMargin, y, left, where)
	goal := p.passages(x, y, p.right()-x, []passage{{p.v.Labels.Goal, title}})
	goal = p.timeline(x, goal+0.5, p.right()-x)
	goal = p.passages(x, goal+0.5, p.right()-x, []passage{{p.v.Forecast.ChanceLine, prose}})
	return max(end, goal)
}

// remarks are the planner's notes about the whole program.
func (p *onePage) remarks(y float64) float64 {
	if !p.notes || len(p.v.Notes) == 0 {
		return y - p.gap
	}
	return p.passages(pageMargin, y, p.width(), bullets(p.v.Labels.Notes, p.v.Notes))
}

// rules is what must be shown, what a day answers to, and what to do when a
// session is missed or a joint complains.
func (p *onePage) rules(y float64) float64 {
	const gap = 6
	a := p.v.Advice
	narrow := 0.27 * (p.width() - 2*gap)
	wide := (p.width() - 2*gap - narrow) / 2
	day, stop := bullets(a.DayTitle, a.DayRule), passage{a.StopLine, prose}
	if p.short {
		day, stop = []passage{{a.DayTitle, title}, {a.DayShort, prose}}, passage{a.StopShort, prose}
	}
	end := p.gate(pageMargin, y, narrow)
	end = max(end, p.passages(pageMargin+narrow+gap, y, wide, append(day, bullets(a.MissedTitle, a.Missed)...)))
	pain := append(bullets(a.PainTitle, a.PainRule), passage{a.StopTitle, title}, stop)
	return max(end, p.passages(p.right()-wide, y, wide, pain))
}

// gate is the words of the next gate and of the goal's, and who signs.
func (p *onePage) gate(x, y, w float64) float64 {
	y = p.passages(x, y, w, gateText(p.v)) + 1.7*p.line()
	l := p.v.Labels
	for _, label := range []string{l.Passed, l.Signed} {
		s := style{Size: p.size, Least: leastPage, Tone: Quiet}
		t := p.fit(Box{x, y - p.line(), w / 2, p.line()}, s, label)
		p.add(t, Stroke{Points: []Point{{x + Regular.width(t.Lines[0], t.Size) + 1.5, y}, {x + w, y}}, Width: 0.25, Tone: Ink})
		y += 1.7 * p.line()
	}
	return y - 1.2*p.line()
}

// gateText are the gates of the block and the goal's, the same one once, the terms of the
// first in full.
func gateText(v *view.View) []passage {
	var all []passage
	for i, g := range slices.CompactFunc(slices.Clone(v.Gates), func(a, b view.Gate) bool { return a.StepID == b.StepID }) {
		if i == 0 {
			all = append(all, passage{v.Labels.Gate, title})
		}
		all = append(all, passage{g.Short, strong})
		if i == 0 {
			for _, term := range g.Terms[1:] {
				all = append(all, passage{term, bullet})
			}
		}
	}
	if len(all) > 0 {
		all = append(all, passage{v.Labels.Moves, prose})
	}
	return all
}

func (p *onePage) cue(y float64) float64 {
	if p.v.Cue == "" {
		return y - p.gap
	}
	h := 9.0
	p.add(Fill{Box{pageMargin, y, p.width(), h}, Tint}, Fill{Box{pageMargin, y, 1.2, h}, Accent})
	label := p.fit(Box{pageMargin + 4, y, 0.22 * p.width(), h}, style{Size: p.size, Least: leastPage, Tone: Accent, Face: Bold, Middle: true},
		p.v.Labels.Cue)
	x := label.X + Bold.width(label.Lines[0], label.Size) + 4
	label.W = x - label.X - 1
	p.add(label, p.fit(Box{x, y, p.right() - x - 2, h}, style{Face: Bold, Size: 16, Least: leastPage, Middle: true, Leading: 1.1}, p.v.Cue))
	return y + h
}

// terms are the page's words of the trade, explained; like the cautions never left out.
func (p *onePage) terms(y float64) float64 {
	lead := p.passages(pageMargin, y, p.width(), []passage{{p.v.Labels.Terms, title}})
	t, end := p.flow(pageMargin, lead, p.width(), style{Size: leastPage}, strings.Join(p.v.PageTerms, " "))
	p.add(t)
	return end
}

func (p *onePage) cautions(y float64) float64 {
	a := p.v.Advice
	text := strings.Join(append(slices.Clone(a.Cautions), a.NotMedical), " ")
	lead := p.passages(pageMargin, y, p.width(), []passage{{a.CautionTitle, title}})
	t, end := p.flow(pageMargin, lead, p.width(), style{Size: leastPage}, text)
	p.add(t)
	return end
}
