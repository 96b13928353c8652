package paper

import (
	"math"
	"strings"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// HowTo prints how a client's exercises of the block are done: drawings, set-up, cues,
// faults, easier and harder, about six a page, each whole in its column, as large as the
// pages have room for. In large print they go on under each other. A program without exercises has none: no bytes and no
// problems.
func HowTo(v *view.View, h *view.HowTo) ([]byte, program.Problems) {
	if len(h.Guides) == 0 {
		return nil, nil
	}
	ts := &typesetter{lost: map[rune]bool{}}
	return write(v, ts, h.Title, layHowTo(ts, v, h)...)
}

func layHowTo(ts *typesetter, v *view.View, h *view.HowTo) []*Page {
	if v.Large {
		return layLargeHowTo(ts, v, h)
	}
	g := newGuides(ts, v, h)
	g.set(g.largest())
	for i, page := range g.pages {
		foot(page, ts, v, i+1, len(g.pages))
	}
	return g.pages
}

// pieces are the name over the drawings, and the words.
func (g *guides) pieces(e *view.Guide, drawings *frames, grown float64) []piece {
	w := g.width()
	all := []piece{g.heading(e, drawings, w, grown)}
	for _, p := range guideText(e, &g.h.Labels) {
		marks, end := g.column(0, 0, w, g.size, 0, []passage{p})
		all = append(all, piece{end, func(x, y float64) []Mark { return moved(marks, x, y) }})
	}
	return all
}

// moved are the marks of a column, measured at the corner, in another place.
func moved(marks []Mark, x, y float64) []Mark {
	all := make([]Mark, len(marks))
	for i, m := range marks {
		switch m := m.(type) {
		case Text:
			m.X, m.Y = m.X+x, m.Y+y
			all[i] = m
		case Dot:
			m.At = Point{m.At.X + x, m.At.Y + y}
			all[i] = m
		}
	}
	return all
}

// heading is the name and the part of a session that it plays, over the cues; the drawings
// stand at the right, and where there are none the cues are in a line.
func (g *guides) heading(e *view.Guide, drawings *frames, w, grown float64) piece {
	share := min(drawingsShare*math.Sqrt(grown), drawingsMost)
	scale := drawings.scale(share*w, grown*guideFigure)
	tall := drawings.height(scale)
	left, cues := w, []passage{{strings.Join(e.Cues, " · "), strong}}
	if scale > 0 {
		left, cues = w-drawings.width(scale)-4, nil
		for _, cue := range e.Cues {
			cues = append(cues, passage{cue, bullet})
		}
	}
	name, below := g.flow(0, 0.8, w, style{Face: Bold, Size: guideName, Leading: 1.15}, e.Name)
	role, under := g.flow(0, below, left, style{Size: leastPage, Tone: Accent, Face: Bold}, e.Role)
	list, end := g.column(0, under, left, g.size, 0, cues)
	words := append([]Mark{name, role}, list...)
	return piece{max(end, below+tall+1) + 0.8, func(x, y float64) []Mark {
		rule := Stroke{Points: []Point{{x, y}, {x + w, y}}, Width: 0.4, Tone: Ink}
		marks := append([]Mark{rule}, moved(words, x, y)...)
		return append(marks, drawings.at(Point{x + w - drawings.width(scale), y + below + 0.5}, scale)...)
	}}
}

// guideText is what an exercise's page says beside its cues, each part under its name.
func guideText(e *view.Guide, l *view.GuideLabels) []passage {
	all := named(l.SetUp, e.SetUp)
	all = append(all, bullets(l.Faults, e.Faults)...)
	all = append(all, named(l.Easier, e.Easier)...)
	return append(all, named(l.Harder, e.Harder)...)
}

// named are paragraphs, the first of which begins with what they are.
func named(label string, all []string) []passage {
	var out []passage
	for i, text := range all {
		if i == 0 {
			text = label + ": " + text
		}
		out = append(out, passage{text, prose})
	}
	return out
}

// layLargeHowTo has them under each other, on as many pages as they take.
func layLargeHowTo(ts *typesetter, v *view.View, h *view.HowTo) []*Page {
	r := newRoll(ts, v, h.Name)
	r.head()
	r.passages([]passage{{h.Name, title}, {h.Lead + " " + v.Advice.StopShort + " " + v.Advice.NotMedical, prose}})
	for i := range h.Guides {
		e := &h.Guides[i]
		all := framesOf(e.Pictures)
		scale := all.scale(r.width(), largeFigure)
		high := all.height(scale)
		name := style{Face: Bold, Size: largeTitle, Leading: 1.15}
		_, tall := r.flow(0, 0, r.width(), name, e.Name)
		r.space(6)
		r.need(tall + high + 30)
		r.add(Stroke{Points: []Point{{largeMargin, r.y}, {r.right(), r.y}}, Width: 0.6, Tone: Ink})
		r.y += 1.5
		r.say(name, e.Name)
		r.say(style{Face: Bold, Size: leastLarge, Tone: Accent}, e.Role)
		r.add(all.at(Point{largeMargin, r.y + 1}, scale)...)
		if scale > 0 {
			r.y += high + 3
		}
		r.passages(bullets(h.Labels.Cues, e.Cues))
		r.passages(guideText(e, &h.Labels))
	}
	return r.end()
}
