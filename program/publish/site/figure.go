package site

import (
	"html/template"
	"strconv"
	"strings"

	"gatepost/program"
	"gatepost/program/figure"
	"gatepost/program/publish/view"
)

// Of a band so much is drawn above the body, and words are so large, m (our
// judgement: the body is what is looked at).
const (
	shownBand = 0.5
	shownText = 0.085
)

// figureKey names the figure of a step.
type figureKey struct{ roadMap, step string }

// draw makes each step's figure once; pages that show the step share it. It is
// that of an average body, so that nobody's proportions are published.
func (b *builder) draw() {
	b.poses = map[string]*program.Illustration{}
	for i := range b.Illustrations {
		b.poses[b.Illustrations[i].Name] = &b.Illustrations[i]
	}
	b.figures = map[figureKey]template.HTML{}
	add := func(m *program.RoadMap, id, name string) {
		title := b.words.fill("figure.title", "step", sentence(name))
		if svg, ok := b.illustrate(m.ID+"/"+id, title, "pose-"+id); ok {
			b.figures[figureKey{m.ID, id}] = svg
		}
	}
	for i := range b.Library.RoadMaps {
		m := &b.Library.RoadMaps[i]
		for _, s := range m.Steps {
			add(m, s.ID, s.Name)
		}
		for _, r := range m.Rungs {
			if e, ok := b.Library.Exercise(r.Exercise); ok {
				add(m, e.ID, e.Name)
			}
		}
	}
}

// illustrate draws the illustration of a name, with a title for those who hear
// the page and an id that is its own on a page; false: there is none of that name.
func (b *builder) illustrate(name, title, id string) (template.HTML, bool) {
	i, ok := b.poses[name]
	if !ok {
		return "", false
	}
	var d figure.Drawing
	switch i.Kind {
	case program.WallIllustration:
		d = figure.AtWall(i.Stance, b.words.word("figure.wall"))
	case program.BoardIllustration:
		d = figure.OnBoard(i.Stance, b.words.word("figure.board"), b.words.word("figure.point"), b.words.word("figure.scale"))
	default:
		d = figure.Draw(i.Stance, figure.Options{Help: b.kilograms(i.Stance.Help), Toes: b.kilograms(i.Stance.ToesCarry),
			Headroom: shownBand, Text: shownText})
	}
	return b.svg(d, &i.Stance, title, id), true
}

func (b *builder) svg(d figure.Drawing, s *program.Stance, title, id string) template.HTML {
	svg := figure.SVG(d, title, b.told(s), figure.SVGOptions{Prefix: id, Scale: 250})
	return template.HTML(svg) // the figure package escapes what it is given
}

// levelFigure is the stance of a public level: the body is nobody's, so that the
// figure may show the program's own kit and rig.
func (b *builder) levelFigure(s program.Stance, step, id string) template.HTML {
	d := figure.Draw(s, figure.Options{Help: b.kilograms(s.Help), Toes: b.kilograms(s.ToesCarry), Headroom: shownBand, Text: shownText})
	return b.svg(d, &s, b.words.fill("figure.title", "step", sentence(step)), "pose-"+id)
}

// testFigure is the hold that a level's readers test.
func (b *builder) testFigure(l *view.Level) template.HTML {
	step := l.Tests[0].StepID
	for _, r := range l.Ladder {
		if r.StepID == step && r.Stance.Drawn() {
			return b.levelFigure(r.Stance, r.Step, r.StepID)
		}
	}
	return b.figures[figureKey{l.SkillID, step}]
}

// told describes a drawing for those who hear the page.
func (b *builder) told(s *program.Stance) string {
	switch {
	case s.Help > 0:
		return b.words.fill("figure.desc_band", "help", b.kilograms(s.Help))
	case s.ToesCarry > 0:
		return b.words.fill("figure.desc_toes", "help", b.kilograms(s.ToesCarry))
	case s.Hang:
		return b.words.word("figure.desc_hang")
	}
	return b.words.word("figure.desc")
}

// kilograms writes a force as help is written; empty for none.
func (b *builder) kilograms(newtons float64) string {
	if newtons <= 0 {
		return ""
	}
	number := strconv.FormatFloat(view.HalfKilograms(newtons), 'f', -1, 64)
	number = strings.Replace(number, ".", b.words.word("unit.decimal"), 1)
	return b.words.fill("unit.kilograms", "number", number)
}

// figureOf is the figure of an exercise: of the step or floor rung it holds.
func (b *builder) figureOf(exercise string) template.HTML {
	for _, m := range b.Library.RoadMaps {
		if svg, ok := b.figures[figureKey{m.ID, exercise}]; ok {
			return svg
		}
		for _, s := range m.Steps {
			if s.Exercise == exercise {
				return b.figures[figureKey{m.ID, s.ID}]
			}
		}
	}
	return ""
}
