package site

import (
	"cmp"
	"html/template"
	"math"
	"slices"
	"strconv"

	"gatepost/program"
)

// roadMapView is the page of one road map.
type roadMapView struct {
	frame
	Body  template.HTML
	Rungs []rungView
	Steps []stepView
	// Counts is when the sets of every gate count; empty where gates differ in
	// it and each step says so itself.
	Counts string
}

type rungView struct {
	link
	What string
}

// stepView is one step with what it asks of the reference bodies.
type stepView struct {
	ID, Name  string
	Exercise  link // no Href: there is no page
	Shares    []shareView
	Allowance string
	Gate      string
	Counts    string // when the gate's sets count
	Sides     bool
	Drills    []link
	Figure    template.HTML
}

// shareView is a step's share of the full position for one body, as text and
// as the width of a bar in hundredths.
type shareView struct{ Body, Text, Width string }

// roadMapsView lists the road maps, each with its steps as figures.
type roadMapsView struct {
	frame
	Strips []stripView
}

// stripView is the steps of a road map side by side, from the first to the last.
type stripView struct {
	link
	Steps []stepPicture
}

type stepPicture struct {
	link
	Picture *pictureView // nil: the step is not drawn
}

func (b *builder) roadMaps() {
	v := roadMapsView{frame: b.frame(b.words.word("nav.roadmaps"), roadMapsPage, "")}
	v.Description = b.words.word("site.roadmaps_lead")
	for i := range b.Library.RoadMaps {
		v.Strips = append(v.Strips, b.strip(&b.Library.RoadMaps[i]))
	}
	b.write(roadMapsPage, "roadmaps.html", v)
}

// shownFirst is the road map of the front page: the one with the most floor rungs,
// as in the blank form.
func (b *builder) shownFirst() *program.RoadMap {
	first := &b.Library.RoadMaps[0]
	for i := range b.Library.RoadMaps {
		if m := &b.Library.RoadMaps[i]; len(m.Rungs) > len(first.Rungs) {
			first = m
		}
	}
	return first
}

// In a strip a unit of the drawings is so many pixels, or fewer where they are high
// (our judgement: eight steps fit a desktop).
const (
	stripScale  = 0.31
	stripHeight = 130.0
)

func (b *builder) strip(m *program.RoadMap) stripView {
	v := stripView{link: link{Text: m.Name, Href: roadMapPage(m.ID)}}
	scale := stripScale
	for _, s := range m.Steps {
		p := b.picture(s.Exercise, "")
		if p != nil {
			scale = min(scale, stripHeight/float64(p.Height))
		}
		v.Steps = append(v.Steps, stepPicture{link{Text: sentence(s.Name), Href: v.Href + "#" + s.ID}, p})
	}
	for _, s := range v.Steps {
		if s.Picture != nil {
			s.Picture.Width, s.Picture.Height = scaled(s.Picture.Width, scale), scaled(s.Picture.Height, scale)
		}
	}
	return v
}

func scaled(n int, by float64) int { return int(math.Round(float64(n) * by)) }

func (b *builder) roadMap(m *program.RoadMap) {
	v := roadMapView{frame: b.frame(m.Name, roadMapPage(m.ID), "")}
	v.Description = summary(m.Body)
	b.way(&v.frame, link{Text: b.words.word("nav.roadmaps"), Href: roadMapsPage})
	v.Body = b.html(passage{text: m.Body, file: m.File, ids: newHeadingIDs()})
	for _, r := range m.Rungs {
		if e, ok := b.Library.Exercise(r.Exercise); ok {
			v.Rungs = append(v.Rungs, rungView{link{Text: e.Name, Href: exercisePage(e.ID)},
				b.words.word("floor_rung." + string(r.Kind))})
		}
	}
	for i := range m.Steps {
		v.Steps = append(v.Steps, b.step(m, &m.Steps[i]))
	}
	v.Counts = shareCounts(v.Steps)
	b.write(roadMapPage(m.ID), "roadmap.html", v)
}

func (b *builder) step(m *program.RoadMap, s *program.Step) stepView {
	v := stepView{
		ID:        s.ID,
		Name:      sentence(s.Name),
		Shares:    b.shares(m.ID, s.ID),
		Allowance: b.allowance(cmp.Or(s.Allowance, 1)),
		Gate:      b.gate(s.Gate, s.Sides),
		Counts:    b.conditions(s.Gate),
		Sides:     s.Sides == 2,
		Drills:    b.exerciseLinks(s.Drills),
		Figure:    b.figures[figureKey{m.ID, s.ID}],
	}
	if m.Load == program.LoadBalance { // which has neither
		v.Shares, v.Allowance = nil, ""
	}
	if e, ok := b.Library.Exercise(s.Exercise); ok {
		v.Exercise = link{Text: e.Name, Href: exercisePage(e.ID)}
	}
	return v
}

// shareCounts takes a condition that all steps have in common out of them.
func shareCounts(steps []stepView) string {
	for _, s := range steps {
		if s.Counts != steps[0].Counts {
			return ""
		}
	}
	shared := ""
	for i := range steps {
		shared, steps[i].Counts = steps[i].Counts, ""
	}
	return shared
}

func (b *builder) shares(roadMap, step string) []shareView {
	var shares []shareView
	for _, r := range b.References {
		i := slices.IndexFunc(r.Steps, func(s program.StepLoad) bool { return s.ID == step })
		if r.RoadMap != roadMap || i < 0 {
			continue
		}
		percent := strconv.Itoa(int(math.Round(100 * r.Steps[i].Share)))
		shares = append(shares, shareView{
			Body:  b.words.word("reference." + r.Name),
			Text:  b.words.fill("unit.percent", "number", percent),
			Width: percent,
		})
	}
	return shares
}
