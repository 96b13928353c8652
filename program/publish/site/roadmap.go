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

func (b *builder) roadMap(m *program.RoadMap) {
	v := roadMapView{frame: b.frame(m.Name, roadMapPage(m.ID), "")}
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
