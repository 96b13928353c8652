package paper

import (
	"math"

	"gatepost/program/figure"
)

const (
	columnGap = 8   // mm
	rigHeight = 105 // mm, the drawing of the first rig
	worthRow  = 8   // mm

	coachNotes = 9.5  // points
	roomyNotes = 12.0 // points, on a page of their own
)

// second is the worths over two columns, the rig and week by week, and what was noted
// about the whole. It says where it
// ends in full: beyond the page it was squeezed.
func (p *coachPage) second(y float64) float64 {
	if len(p.c.Worth) > 0 {
		y = p.worth(Box{pageMargin, y, p.width(), 0}) + 3
	}
	w, bottom := (p.width()-columnGap)/2, p.guidance()
	left := y
	if p.c.Rig.Stance.Drawn() {
		left = p.rig(Box{pageMargin, y, w, rigHeight}) + 4
	}
	var weeks, notes []passage
	if len(p.c.WeekNotes) > 0 {
		weeks = bullets(p.c.WeeksTitle, p.c.WeekNotes)
	}
	for _, part := range []struct {
		title string
		lines []string
	}{{p.c.AsksTitle, p.c.Asks}, {p.c.WishesTitle, p.c.Wishes}, {p.c.OffsetsTitle, p.c.Offsets}, {p.c.NotesTitle, p.v.AllNotes}, {p.c.DroppedTitle, p.c.Dropped}} {
		if len(part.lines) > 0 {
			notes = append(notes, bullets(part.title, part.lines)...)
		}
	}
	x := pageMargin + w + columnGap
	if left == y { // nothing is drawn: both columns as high as each other
		weeks, notes = p.halves(w, append(weeks, notes...))
	}
	first := p.part(Box{pageMargin, left, w, bottom - left}, weeks)
	second := p.part(Box{x, y, w, bottom - y}, notes)
	return max(first, second) + p.bottom() - bottom
}

// halves cuts passages in two where both columns are most alike, never after a title.
func (p *coachPage) halves(w float64, all []passage) (left, right []passage) {
	cut, least := len(all), math.Inf(1)
	for i := 1; i <= len(all); i++ {
		if all[i-1].kind == title {
			continue
		}
		_, a := p.column(0, 0, w, p.size, 0, all[:i])
		_, b := p.column(0, 0, w, p.size, 0, all[i:])
		if high := max(a, b); high < least {
			cut, least = i, high
		}
	}
	return all[:cut], all[cut:]
}

// part sets passages into a box, squeezed where they have no room, and says where they
// end in full.
func (p *coachPage) part(b Box, all []passage) float64 {
	marks, end := p.column(b.X, b.Y, b.W, p.size, 0, all)
	if end > b.Bottom() {
		marks = p.squeezed(b, all)
	}
	p.add(marks...)
	return end
}

// rig draws the first banded week from the floor to the anchor, to one scale, with
// what to set up under it; it says where it ends.
func (p *coachPage) rig(b Box) float64 {
	p.add(p.fit(Box{b.X, b.Y, b.W, 4.5}, style{Face: Bold, Size: 10, Least: leastPage, Tone: Accent}, p.c.RigTitle))
	d := figure.Draw(p.c.Rig.Stance, figure.Options{Help: p.c.Rig.Help})
	box := Box{b.X, b.Y + 6, b.W, b.H - 6}
	scale := d.Scale(box.W, box.H)
	for i := range d.Labels {
		d.Labels[i].Size = 10 * mmPerPoint / scale
	}
	box.X += (b.W - scale*d.Width()) / 2
	p.add(p.drawn(d, box)...)
	y := box.Y + scale*d.Height() + 2
	for _, words := range p.c.RigWords {
		t, end := p.flow(b.X, y, b.W, style{Size: coachSize}, words)
		if words != "" {
			p.add(t)
			y = end
		}
	}
	return y
}

// worth is a bar for each better position, longest first.
func (p *coachPage) worth(b Box) float64 {
	lead, y := p.flow(b.X, b.Y+5.5, b.W, style{Size: coachSize}, p.c.WorthLead)
	p.add(p.fit(Box{b.X, b.Y, b.W, 4.5}, style{Face: Bold, Size: 10, Least: leastPage, Tone: Accent}, p.c.WorthTitle), lead)
	var rows []figure.Worth
	names, texts := 0.0, 0.0
	for _, w := range p.c.Worth {
		r := figure.Worth{Name: p.shorten(w.Cue, Regular, 0.4*b.W), Help: w.Help, Text: p.shorten(w.Text, Regular, 0.4*b.W)}
		names, texts = math.Max(names, Regular.width(r.Name, coachSize)), math.Max(texts, Regular.width(r.Text, coachSize))
		rows = append(rows, r)
	}
	h := float64(len(rows))*worthRow + 17
	o := figure.ChartOptions{Width: b.W / 1000, Height: h / 1000, Text: coachSize * mmPerPoint / 1000, Names: (names + 4) / 1000, Texts: (texts + 4) / 1000}
	p.add(p.drawn(figure.WorthChart(rows, axis(p.c.WorthAxis), o), Box{b.X, y, b.W, h})...)
	return y + h
}

// shorten cuts a text that is wider than a chart has room for.
func (ts *typesetter) shorten(s string, f Face, width float64) string {
	lines, _ := ts.linesOf(f, coachSize, width, ts.clean(s))
	return clip(f, coachSize, width, lines, 1)[0]
}

// squeezed sets passages into a box: in smaller type, then each held to fewer
// lines, at last without those that have no room.
func (p *coachPage) squeezed(b Box, all []passage) []Mark {
	for _, try := range tries(coachNotes) {
		if marks, end := p.column(b.X, b.Y, b.W, try.size, try.most, all); end <= b.Bottom() {
			return marks
		}
	}
	for n := len(all) - 1; n > 0; n-- {
		if marks, end := p.column(b.X, b.Y, b.W, leastPage, 1, append(all[:n:n], passage{"…", prose})); end <= b.Bottom() {
			return marks
		}
	}
	return nil
}
