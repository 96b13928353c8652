package paper

import (
	"math"

	"gatepost/program"
	"gatepost/program/figure"
	"gatepost/program/publish/view"
)

const (
	rungLeast = 14.5 // mm, the least width of a rung, for its name
	rungGap   = 1.5  // mm between rungs
	rungTall  = 1.9  // mm for each point of type, the highest figure
	barHeight = 2.2  // mm, the sign of a rung's state
)

// ladder stands this body on each step in this body's order, at one scale, with
// the share of the full position under each. The bar under a figure tells where
// the step stands: those behind the client filled, the present one in the accent,
// those of the block hatched, the rest in outline.
func (p *onePage) ladder(y float64) float64 {
	rungs := p.v.Ladder
	if len(rungs) < 2 || p.bare { // the goal is the first step, or there is no room
		return y - p.gap
	}
	y = p.passages(pageMargin, y, p.width(), []passage{{p.v.Labels.Ladder, title}})
	bodies, floor, scale := p.rungBodies(y + 1)
	room := p.width()
	for _, b := range bodies {
		room -= math.Max(scale*b.Width(), rungLeast)
	}
	gap := math.Min(room/float64(len(bodies)), 6)
	x, names := float64(pageMargin), p.line()
	boxes := make([]Box, len(rungs))
	for i, b := range bodies {
		w := math.Max(scale*b.Width(), rungLeast)
		boxes[i] = Box{x, floor + 0.8, w + gap - rungGap, barHeight}
		if Bold.width(p.clean(rungs[i].Step), p.size) > boxes[i].W {
			names = 2 * p.line()
		}
		p.add(p.stand(b, x+(w-scale*b.Width())/2, floor, scale)...)
		x += w + gap
	}
	p.add(Stroke{Points: []Point{{pageMargin, floor}, {x - rungGap, floor}}, Width: 0.4, Tone: Ink})
	for i, r := range rungs {
		p.stair(boxes[i], r)
		p.rungWords(boxes[i], r, names)
	}
	return floor + 1.2 + barHeight + names + 3*p.line()
}

// rungBodies are the figures, the line they stand on, and their scale in mm a
// metre.
func (p *onePage) rungBodies(top float64) (all []body, floor, scale float64) {
	bodies, tall := p.bodies, 0.0
	for _, b := range bodies {
		tall = math.Max(tall, b.above())
	}
	if tall == 0 { // nothing to draw
		return bodies, top, 0
	}
	width := p.width() - rungGap*float64(len(bodies))
	height := rungTall * p.size
	if p.small {
		height /= 2
	}
	scale = math.Min(height/tall, widest(bodies, width, rungLeast))
	return bodies, top + scale*tall, scale
}

// rungFigures are drawn once, for all tries.
func rungFigures(v *view.View) []body {
	var stances []program.Stance
	for _, r := range v.Ladder {
		stances = append(stances, r.Stance)
	}
	return bodiesOf(stances, func(int) figure.Options { return figure.Options{Plain: true} })
}

// rungWords are share and name of a step and, in the second rank, where it stands
// and the month it is likely held.
func (p *onePage) rungWords(b Box, r view.Rung, names float64) {
	s := style{Size: p.size, Least: leastPage}
	y := b.Bottom() + 0.4
	p.add(p.fitLine(Box{b.X, y, b.W, p.line()}, s, r.Share))
	y += p.line()
	s.Face = Bold
	p.add(p.fit(Box{b.X, y, b.W, names}, s, r.Step))
	y += names
	s.Face, s.Tone = Regular, Quiet
	for _, note := range stairNotes(r) {
		p.add(p.fitLine(Box{b.X, y, b.W, p.line()}, s, note))
		y += p.line()
	}
}

// stairNotes are a rung's state, where it is more than "later", and the month it
// is likely held.
func stairNotes(r view.Rung) []string {
	var notes []string
	if r.State != view.RungLater {
		notes = append(notes, r.StateWord)
	}
	if r.Month != "" {
		notes = append(notes, r.Month)
	}
	return notes
}

func (p *onePage) stair(b Box, r view.Rung) {
	switch r.State {
	case view.RungHeld, view.RungBehind:
		p.add(Fill{b, Ink})
	case view.RungNow:
		p.add(Fill{b, Accent})
	case view.RungBlock:
		p.add(Fill{b, Tint}, Hatch{b, 0.9, 0.3, false, Ink}, Frame{b.Inset(0.15, 0.15), 0.3, 0, Ink})
	case view.RungGoal:
		p.add(Frame{b.Inset(0.4, 0.4), 0.8, 0, Accent})
	default:
		p.add(Frame{b.Inset(0.1, 0.1), 0.2, 0, Ink})
	}
}
