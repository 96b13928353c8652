package paper

import (
	"strings"

	"gatepost/program/publish/view"
)

// pause is the rest, and how the sides share the sets: where the boxes have their
// letters, only if a line has room for both.
func (p *card) pause(item view.CardItem, width float64, s style) string {
	both := joined(item.Pause, item.Sides)
	if len(item.Turns) > 0 && item.Pause != "" && s.Face.width(p.clean(both), s.Size) > width {
		return item.Pause
	}
	return both
}

// aside is sides and rest; where both have no room, what is said of the rest.
func (p *card) aside(b Box, s style, item view.CardItem) Text {
	text := joined(item.Sides, item.Pause)
	if _, fits := s.fits(b, s.least(), p.clean(text)); !fits && item.Pause != "" {
		text = item.Pause
	}
	return p.fit(b, s, text)
}

// waysOf are the easier and the harder version, named.
func (p *card) waysOf(item view.CardItem) []string {
	var all []string
	add := func(label, text string) {
		if text != "" {
			all = append(all, label+": "+text)
		}
	}
	add(p.v.CardText.Easier, item.Easier)
	add(p.v.CardText.Harder, item.Harder)
	return all
}

// sentences sets texts behind each other, those without words left out. One that ends
// in an abbreviation has its stop already.
func sentences(texts ...string) string {
	line := ""
	for _, text := range texts {
		if line != "" && text != "" {
			line = strings.TrimSuffix(line, ".") + ". "
		}
		line += text
	}
	return line
}
