package paper

import (
	"cmp"

	"gatepost/program"
	"gatepost/program/figure"
	"gatepost/program/publish/view"
)

// card is a session's card being laid out.
type card struct {
	*typesetter
	Box    // what may be written on
	v      *view.View
	c      *view.Card
	plates plateSet
	marks  []Mark
	told   int    // of the card's words, how many it has room to explain
	words  []Text // those, by their number, as far as they were measured

	heights map[rowKey]float64
	sharing
}

func layCard(page *Page, ts *typesetter, v *view.View, c *view.Card, b Box, plates plateSet) {
	p := &card{typesetter: ts, Box: b.Inset(cardMargin, cardMargin), v: v, c: c, plates: plates, heights: map[rowKey]float64{}}
	top, floor := p.says(p.header(p.Y)+1.4), p.rules(p.foot()-1.2)-1.4
	rows, heights := p.arrange(top, floor)
	marks, y := p.prepare(top)
	p.put(marks...)
	p.lay(rows, heights, y+p.air(), p.cue(p.terms(floor))-p.air())
	page.add(p.marks...)
}

func (p *card) put(marks ...Mark) { p.marks = append(p.marks, marks...) }

func (p *card) rule(y, width float64, tone Tone) {
	p.put(Stroke{Points: []Point{{p.X, y}, {p.Right(), y}}, Width: width, Tone: tone})
}

const (
	jointBox     = 12.2 // mm wide
	jointsHeight = 12.1
	nameHeight   = 5.8
	weekHeight   = 4.3
	dateHeight   = 3.7
	noteHeight   = 2.9
	leastName    = 11 // points, of whose card it is: found among others at the wall
)

// header is whose card it is, week, session, date and minutes, what the session has to
// say first, and how the joints are before. Where name and week have room on one line they
// share it.
func (p *card) header(y float64) float64 {
	joints := 3*jointBox + 2
	w := p.W - joints - 3
	p.joints(Box{p.Right() - joints, y, joints, jointsHeight}, p.v.CardText.Before)
	top := y
	name := p.name(Box{p.X, y, w, nameHeight})
	p.put(name)
	x := p.X + Bold.width(name.Lines[0], name.Size) + 3
	y += nameHeight
	if p.weekWidth() <= p.X+w-x {
		p.week(x, top+0.9, p.X+w)
	} else {
		p.week(p.X, y, p.X+w)
		y += weekHeight
	}
	p.put(p.fit(Box{p.X, y, w, dateHeight}, style{Face: Bold, Size: 9.5, Least: leastCard, Leading: 1.1, Middle: true}, p.c.Date+" · "+p.c.Minutes))
	y += dateHeight
	if text := cmp.Or(p.c.Joint, p.c.Note); text != "" {
		note := style{Face: Bold, Size: 7.5, Least: leastCard, Leading: 1.1}
		b := Box{p.X, y, w, noteHeight}
		if _, beside := p.fits(b, note, leastCard, p.clean(text)); !beside || y+noteHeight > top+jointsHeight+0.8 {
			b.Y, b.W = max(y, top+jointsHeight+0.4), p.W
		}
		p.put(p.fit(b, note, text))
		y = b.Bottom()
	}
	y = max(y, top+jointsHeight+0.2)
	p.rule(y+0.3, 0.5, Ink)
	return y + 0.5
}

var (
	weekStyle = style{Face: Bold, Size: 12, Least: 9, Leading: 1.05, Middle: true}
	kindStyle = style{Face: Bold, Size: 9.5, Least: leastCard, Leading: 1.1, Middle: true}
)

// weekWidth is how wide kind, week and session are at the least.
func (p *card) weekWidth() float64 {
	w := Bold.width(p.clean(p.c.Week), weekStyle.Least) + 1.8 + Regular.width(p.clean(p.c.Session), leastCard+1)
	if p.c.Kind != "" {
		w += Bold.width(p.clean(p.c.Kind), kindStyle.Size) + 7
	}
	return w
}

// week is the week's kind, its number and which session it is, from x to a right edge.
func (p *card) week(x, y, right float64) {
	if p.c.Kind != "" {
		x = p.kind(x, y)
	}
	session := Regular.width(p.clean(p.c.Session), leastCard+1)
	week := p.fit(Box{x, y, right - x - 1.8 - session, weekHeight}, weekStyle, p.c.Week)
	week.W = min(Bold.width(week.Lines[0], week.Size), week.W)
	x = week.Right() + 1.8
	p.put(week, p.fit(Box{x, y, right - x, weekHeight}, style{Size: 10, Least: leastCard, Leading: 1.1, Middle: true}, p.c.Session))
}

// name is the client's, in full where it stands large, else what the client is called, of
// a level its number; the foot has all of it.
func (p *card) name(b Box) Text {
	s := style{Face: Bold, Size: 16.5, Least: leastName, Leading: 1, Middle: true}
	name := p.v.Client
	if _, whole := p.fits(b, s, leastName, p.clean(name)); !whole {
		name = cmp.Or(p.v.Short, p.v.First)
	}
	t := p.fit(b, s, name)
	t.W = min(b.W, Bold.width(t.Lines[0], t.Size)+0.1)
	return t
}

// mostSaid is how many lines a coach's words take on a card, all of them together.
const mostSaid = 4

// says are the coach's own words, under the header; it says where they end.
func (p *card) says(y float64) float64 {
	s := style{Face: Bold, Size: 8.5, Leading: 1.1, Tone: Accent}
	for left, i := mostSaid, 0; i < len(p.c.Say) && left > 0; i++ {
		t, end := p.lines(p.X, y, p.W, s, p.c.Say[i], left)
		p.put(t)
		y, left = end, left-len(t.Lines)
	}
	return y
}

// kind is a plate before the week of a deload (hatched), a gate or a test (dark),
// and says where it ends.
func (p *card) kind(x, y float64) float64 {
	const h = 4
	s := kindStyle
	shown := p.c.KindKey == program.WeekTest || p.c.KindKey == program.WeekBuild // a gate, in a build week
	if shown {
		s.Tone = Paper
	}
	t := p.fit(Box{x + 2.4, y + 0.2, 20, h}, s, p.c.Kind)
	t.W = min(t.W, Bold.width(t.Lines[0], t.Size))
	plate := Box{x, y + 0.2, t.W + 4.8, h}
	if shown {
		p.put(Fill{plate, Ink})
	} else {
		p.put(Hatch{plate, 1, 0.25, false, Ink}, Fill{plate.Inset(1.4, 0), Paper}, Frame{plate, 0.25, 0, Ink})
	}
	p.put(t)
	return plate.Right() + 2
}

// joints has a box for each pair of joints, its name inside, under a caption.
func (p *card) joints(b Box, caption string) {
	const captionHeight = 2.9
	p.put(p.fit(Box{b.X, b.Y, b.W, captionHeight}, style{Size: 7.5, Least: leastCard, Leading: 1.08, Face: Bold}, caption))
	p.jointBoxes(b.X, b.Bottom()-writingBox)
}

func (p *card) jointBoxes(x, y float64) {
	for _, name := range p.v.CardText.Joints {
		b := Box{x, y, jointBox, writingBox}
		p.put(Frame{b, 0.3, 0, Ink},
			p.fit(Box{b.X + 0.7, b.Y + 0.4, b.W - 1.4, 2.8}, style{Size: leastCard, Leading: 1.1, Tone: Quiet}, name))
		x += jointBox + 1
	}
}

const stripHeight = writingBox

// foot is next morning's joints, and whose card it is; it says where it begins.
func (p *card) foot() float64 {
	y := p.Bottom() - stripHeight
	const label = 17.5
	p.rule(y-0.9, 0.2, Line)
	p.put(p.fit(Box{p.X, y, label - 0.5, stripHeight}, style{Size: 7.5, Least: leastCard, Leading: 1.08, Face: Bold, Middle: true},
		p.v.CardText.Tomorrow))
	p.jointBoxes(p.X+label, y)
	x := p.X + label + 3*jointBox + 4
	s := style{Size: leastCard, Leading: 0.99, Align: AlignRight, Tone: Quiet}
	y -= 0.6
	line := Box{W: p.Right() - x, H: s.lead(s.Size)}
	whose, block := p.v.Client, p.v.CardText.Foot
	if _, fits := p.fits(line, s, s.Size, p.clean(whose)); !fits {
		whose = cmp.Or(p.v.Short, whose)
	}
	if _, fits := p.fits(line, s, s.Size, p.clean(block)); !fits {
		block = p.v.Skill // each card has its own day
	}
	for _, text := range []string{whose, block, joined(p.c.Count, p.v.VersionLine()), p.v.CardText.Guidance} {
		p.put(p.fit(Box{x, y, p.Right() - x, s.lead(s.Size)}, s, text))
		y += s.lead(s.Size)
	}
	return p.Bottom() - stripHeight - 1
}

const (
	codeSide    = 16.5 // mm at most, white around it included
	rulesHeight = 16.3
	rulesShare  = 0.6 // of the width, for the day's rule
)

// rules are the day's rule and when to stop, beside the code that leads to the
// page; it says where they begin.
func (p *card) rules(bottom float64) float64 {
	y, w := bottom-rulesHeight, p.W
	if code := p.code(); code != nil {
		w -= code.Width // white around it included
		p.put(Picture{Box{p.Right() - code.Width, bottom - code.Height, code.Width, code.Height}, code})
		y = min(y, bottom-code.Height)
	}
	t := p.v.CardText
	left := rulesShare * (w - 2.5)
	p.ruleOf(Box{p.X, y, left, bottom - y}, t.DayTitle, t.DayRule)
	p.ruleOf(Box{p.X + left + 2.5, y, w - left - 2.5, bottom - y}, t.StopTitle, t.StopRule)
	return y
}

func (p *card) ruleOf(b Box, title, text string) {
	const height = 3.1
	p.put(p.fit(Box{b.X, b.Y, b.W, height}, style{Face: Bold, Size: 8, Least: leastCard, Leading: 1.08, Tone: Accent}, title),
		p.fit(Box{b.X, b.Y + height, b.W, b.H - height}, style{Size: 7.5, Least: leastCard, Leading: 1.05}, text))
}

func (p *card) code() *Plate {
	if p.c.Link == "" {
		return nil
	}
	return p.plates.of(p.c.Link, func() *Plate { return codePlate(p.c.Link, codeSide) })
}

// cueHeight is what the cue takes: less where the items need every line.
func (p *card) cueHeight() float64 {
	switch {
	case p.c.Cue == "" || p.mute:
		return 0
	case p.terse:
		return 5
	}
	return 6.8
}

// cue is the one to think of, large; it says where it begins. Where rows have no room for
// the figure, it stands small at the end of the band.
func (p *card) cue(bottom float64) float64 {
	h := p.cueHeight()
	if h == 0 {
		return bottom
	}
	b := Box{p.X, bottom - h, p.W, h}
	p.put(Fill{b, Tint}, Fill{Box{b.X, b.Y, 1.2, b.H}, Accent})
	text := b.Inset(3, 0.3)
	if plate := p.plate(bandFigure, h-0.6); plate != nil && p.bare && !p.terse {
		p.put(Picture{Box{b.Right() - plate.Width - 1.5, b.Y + (h-plate.Height)/2, plate.Width, plate.Height}, plate})
		text.W -= plate.Width
	}
	p.put(p.fit(text, style{Face: Bold, Size: 16, Least: 9, Leading: 1.05, Middle: true}, p.c.Cue))
	return b.Y
}

const bandFigure = 16 // mm wide, at the most

// plate is the week's figure at a size; nil where the session has none.
func (p *card) plate(w, h float64) *Plate {
	if !p.c.Figure.Drawn() {
		return nil
	}
	return p.plates.of(figureKey{p.c.Figure, w, h}, func() *Plate {
		return figurePlate(draw(p.c.Figure, figure.Options{Headroom: headroom * p.c.Figure.Height}), w, h)
	})
}

// figureKey tells figures apart; most weeks share theirs with a neighbour.
type figureKey struct {
	program.Stance
	w, h float64
}

// headroom is how much of the band is shown, as a share of stature.
const headroom = 0.2
