package paper

import (
	"math"
	"strconv"
	"strings"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// The weeks' table: shares of the page's width for number, days, hold, step,
// bands, help (with a bar as long as the help) and the kind of week.
var tableShares = []float64{0.05, 0.15, 0.095, 0.19, 0.25, 0.155, 0.11}

const helpText = 11 // mm of the help's column; the bar has the rest

// columnsOf are the boxes of one row.
func (p *onePage) columnsOf(y, h float64) []Box {
	var all []Box
	x := float64(pageMargin)
	for _, share := range tableShares {
		w := share * p.width()
		all = append(all, Box{x + 1, y, w - 2, h})
		x += w
	}
	return all
}

func (p *onePage) table(y float64) float64 {
	l := p.v.Labels
	half := 0.4 * p.width()
	y0 := y
	y = p.passages(pageMargin, y, half, []passage{{l.Weeks, title}})
	if l.From != "" {
		p.add(p.fit(Box{pageMargin + half, y0, p.width() - half, p.line()},
			style{Size: p.size, Least: leastPage, Tone: Quiet, Align: AlignRight}, l.From))
	}
	y = max(y, y0+p.line()) + 0.5
	h := 1.12 * p.line()
	most, help := 0.0, ""
	for _, w := range p.v.Weeks {
		if most = math.Max(most, w.HelpKG); w.HelpKG > 0 {
			help = l.Help
		}
	}
	p.row(y, h, []string{"", l.Dates, l.Hold, l.Step, rigCaption(p.v), help, ""}, nil, Quiet, help == "")
	y += h
	p.rule(y, 0.4, 0)
	for i, w := range p.v.Weeks {
		var above view.Week
		if i > 0 {
			above = p.v.Weeks[i-1]
		}
		p.weekRow(y, h, w, above, most)
		y += h
		firm := i+1 < len(p.v.Weeks) && !w.Provisional && p.v.Weeks[i+1].Provisional
		if firm {
			p.rule(y, 0.5, 1)
		} else {
			p.rule(y, 0.15, 0)
		}
	}
	return p.underTable(y)
}

// underTable says what is tested, and in which week, and how sides take turns.
func (p *onePage) underTable(y float64) float64 {
	for _, text := range []string{testsOf(p.v), p.v.Turns} {
		if text != "" {
			y = p.passages(pageMargin+1, y+0.5, p.width()-1, []passage{{text, prose}})
		}
	}
	return y
}

// testsOf are what is tested, and in which week.
func testsOf(v *view.View) string {
	var tests []string
	for _, w := range v.Weeks {
		if w.Test != "" {
			tests = append(tests, joined(w.Title, w.Test))
		}
	}
	return strings.Join(tests, "; ")
}

func (p *onePage) rule(y, width, dash float64) {
	tone := Line
	if width > 0.3 {
		tone = Ink
	}
	p.add(Stroke{Points: []Point{{pageMargin, y}, {p.right(), y}}, Width: width, Dash: dash, Tone: tone})
}

// ditto stands for what the line above says.
const ditto = "\u2033"

// weekRow is a week's line. The same help as in the line above is said by its bar alone, the
// same bands or lean by a ditto mark.
func (p *onePage) weekRow(y, h float64, w, above view.Week, most float64) {
	row := Box{pageMargin, y, p.width(), h}
	kind := w.Check
	if w.Gate {
		kind = w.Kind
	}
	switch w.KindKey {
	case program.WeekDeload, program.WeekAway:
		p.add(Fill{row, Tint}, Hatch{Box{p.right() - 3, y, 3, h}, 0.9, 0.25, false, Ink})
		kind = w.Kind
	case program.WeekTest:
		p.add(Fill{row, Tint}, Fill{Box{p.right() - 3, y, 3, h}, Ink})
		kind = w.Kind
	}
	cells := p.columnsOf(y, h)
	if w.HelpKG > 0 && most > 0 {
		b := cells[5]
		p.add(Fill{Box{b.X + helpText + 1, y + 0.3*h, (b.W - helpText - 2) * w.HelpKG / most, 0.4 * h}, Accent})
	}
	help, rig := w.Help, joined(w.Rig, w.Drop, w.Mark)
	if w.StepID == above.StepID && help == above.Help {
		help = ""
	}
	if w.Step == above.Step && rig != "" && rig == joined(above.Rig, above.Drop, above.Mark) {
		rig = ditto
	}
	p.row(y, h, []string{strconv.Itoa(w.Number), w.Dates, w.Range, w.Step, rig, help, kind}, []int{0, 2}, Ink, w.Help == "")
}

// row sets one line of cells; those listed in bold. Without help the cells before have
// its room.
func (p *onePage) row(y, h float64, texts []string, bold []int, tone Tone, helpless bool) {
	cells := p.columnsOf(y, h)
	for i, b := range cells {
		s := style{Size: p.size, Least: leastPage, Tone: tone, Middle: true, Leading: h / (p.size * mmPerPoint)}
		for _, n := range bold {
			if n == i {
				s.Face = Bold
			}
		}
		switch {
		case i == 5:
			b.W = helpText
		case i == 3 && texts[4] == "" && helpless: // an exercise without either
			b.W = cells[5].Right() - b.X
		case i == 4 && helpless: // a lean needs the room, and has no help
			b.W = cells[5].Right() - b.X
		}
		if texts[i] != "" {
			p.add(p.fitLine(b, s, texts[i]))
		}
	}
}

// fitLine sets one line, whatever its size leaves of the leading.
func (p *onePage) fitLine(b Box, s style, text string) Text {
	for size := s.Size; ; size -= 0.25 {
		lines, _ := p.linesOf(s.Face, size, b.W, p.clean(text))
		if len(lines) == 1 || size <= s.Least {
			t := s.text(b, size, clip(s.Face, size, b.W, lines, 1))
			t.Y, t.H, t.Lead = b.Y, b.H, b.H
			return t
		}
	}
}
