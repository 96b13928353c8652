package paper

import (
	"strings"

	"gatepost/program/publish/view"
)

// pause is the rest, and how the sides share the sets: where the boxes have their
// letters, only if a line has room for both.
func (p *card) pause(item *view.CardItem, width float64, s style) string {
	both := joined(item.Pause, item.Sides)
	if len(item.Turns) > 0 && item.Pause != "" && s.Face.width(p.clean(both), s.Size) > width {
		return item.Pause
	}
	return both
}

// aside is sides and rest; where both have no room, what is said of the rest.
func (p *card) aside(b Box, s style, item *view.CardItem) Text {
	text := joined(item.Sides, item.Pause)
	if _, fits := p.fits(b, s, s.least(), p.clean(text)); !fits && item.Pause != "" {
		text = item.Pause
	}
	return p.fit(b, s, text)
}

// waysOf are the easier and the harder version, named.
func (p *card) waysOf(item *view.CardItem) []string {
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

// termsGap is the air over and under the card's words, mm.
const termsGap = 0.4

// said are what a star means, and so many of the card's words of the trade, explained, and how
// much they take.
func (p *card) said(told int) (Text, float64) {
	if told == 0 && p.c.Mark == "" {
		return Text{}, 0
	}
	if p.words == nil {
		p.words = make([]Text, len(p.c.Terms)+1)
	}
	if p.words[told].Lines == nil {
		text := sentences(append([]string{p.c.Mark}, p.c.Terms[:told]...)...)
		p.words[told], _ = p.flow(p.X, 0, p.W, style{Size: leastCard, Leading: 1.08, Tone: Quiet}, text)
	}
	return p.words[told], p.words[told].H + 2*termsGap
}

// explain takes as many words as a height has room for, the first always, but where even the
// cue gives way. It reports whether they fit.
func (p *card) explain(room float64) bool {
	p.told = min(1, len(p.c.Terms))
	if _, h := p.said(p.told); h > room {
		if p.mute {
			p.told = 0
			_, h = p.said(0)
		}
		return p.told == 0 && room >= h
	}
	for p.told < len(p.c.Terms) {
		if _, h := p.said(p.told + 1); h > room {
			break
		}
		p.told++
	}
	return true
}

// terms puts them over a height, and says where they begin.
func (p *card) terms(bottom float64) float64 {
	t, h := p.said(p.told)
	if h > 0 {
		t.Y = bottom - h + termsGap
		p.put(t)
	}
	return bottom - h
}
