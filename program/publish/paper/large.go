package paper

import (
	"gatepost/program/publish/view"
)

// Large print is for weak eyes. No text is under 14 points, where 12 are called clear and
// 16 to 18 large print (from memory); at arm's length, .7 m, capitals of 14 points are 20
// minutes of arc high, as ISO 9241-3 prefers. What does not fit a sheet goes on on the next.
const (
	leastLarge  = 14 // points
	largeName   = 34
	largeTitle  = 20
	largeMargin = 12 // mm
)

// roll is a document in large print, being laid out from top to bottom over as many pages
// as it takes.
type roll struct {
	*typesetter
	v     *view.View
	sheet Sheet
	name  string // bookmark of the first page
	pages []*Page
	y     float64
}

// newRoll begins with its first page; the pages' number is not known before the end.
func newRoll(ts *typesetter, v *view.View, name string) *roll {
	hand, _ := sheets(v.Coach.Paper)
	r := &roll{typesetter: ts, v: v, sheet: hand, name: name}
	r.turn()
	return r
}

func (r *roll) width() float64 { return r.sheet.Width - 2*largeMargin }
func (r *roll) right() float64 { return r.sheet.Width - largeMargin }
func (r *roll) page() *Page    { return r.pages[len(r.pages)-1] }

// bottom is where the foot begins.
func (r *roll) bottom() float64 { return r.sheet.Height - largeMargin - r.footHeight() }

// turn begins a page.
func (r *roll) turn() {
	name := ""
	if len(r.pages) == 0 {
		name = r.name
	}
	r.pages, r.y = append(r.pages, r.sheet.portrait(name, leastLarge)), largeMargin
}

// need begins a page where less than a height is left of this one.
func (r *roll) need(h float64) {
	if r.y+h > r.bottom() && r.y > largeMargin {
		r.turn()
	}
}

func (r *roll) add(marks ...Mark) { r.page().add(marks...) }

// space leaves some air, but none at the top of a page.
func (r *roll) space(h float64) {
	if r.y > largeMargin {
		r.y += h
	}
}

// say sets a text over the whole width; where a page ends, it goes on on the next.
func (r *roll) say(s style, text string) {
	if text == "" {
		return
	}
	t, _ := r.flow(0, 0, r.width(), s, text)
	for lines := t.Lines; len(lines) > 0; {
		r.need(s.lead(s.Size))
		n := min(len(lines), max(1, int((r.bottom()-r.y+0.01)/s.lead(s.Size))))
		b := Box{largeMargin, r.y, r.width(), float64(n) * s.lead(s.Size)}
		r.add(s.text(b, s.Size, lines[:n]))
		lines, r.y = lines[n:], b.Bottom()
	}
}

// passages sets running text, each piece whole on its page and no title at the end of one.
func (r *roll) passages(all []passage) {
	for i, p := range all {
		here := all[i : i+1]
		if p.kind == title && i+1 < len(all) {
			r.space(3)
			_, end := r.column(0, 0, r.width(), leastLarge, 0, all[i:i+2])
			r.need(end)
		}
		_, end := r.column(0, 0, r.width(), leastLarge, 0, here)
		r.need(end)
		marks, end := r.column(largeMargin, r.y, r.width(), leastLarge, 0, here)
		r.add(marks...)
		r.y = end
	}
}

// title begins a part, on a page that has room for what comes next.
func (r *roll) title(text string, next float64) {
	r.space(3)
	_, h := r.column(0, 0, r.width(), leastLarge, 0, []passage{{text, title}})
	r.need(h + next)
	r.passages([]passage{{text, title}})
}

// cue is the one to think of, in a band.
func (r *roll) cue() {
	if r.v.Cue == "" {
		return
	}
	s := style{Face: Bold, Size: 24, Leading: 1.15}
	t, h := r.flow(largeMargin+4, 0, r.width()-8, s, r.v.Cue)
	r.title(r.v.Labels.Cue, h+4)
	t.Y = r.y + 2
	r.add(Fill{Box{largeMargin, r.y, r.width(), h + 4}, Tint}, Fill{Box{largeMargin, r.y, 1.6, h + 4}, Accent}, t)
	r.y += h + 4
}

// head is the skill, whose sheet it is, the goal and the block's dates.
func (r *roll) head() {
	v := r.v
	r.say(style{Face: Bold, Size: leastLarge, Tone: Accent}, v.Skill+" · "+v.Coach.Studio)
	r.say(style{Face: Bold, Size: largeName, Leading: 1.1}, v.Client)
	r.say(style{Face: Bold, Size: largeTitle, Leading: 1.15}, v.Goal)
	r.say(style{Size: leastLarge, Tone: Quiet}, v.Block)
	r.y += 1.5
	r.add(Fill{Box{largeMargin, r.y, r.width(), 0.9}, Ink})
	r.y += 4
}

// footLines are who to ask, and whose page this is; the number of pages may have two figures.
func (r *roll) footLines(number, pages int) []string {
	v := r.v
	return []string{joined(v.Coach.Name, v.Coach.Studio, v.Coach.Contact), joined(v.Client, v.Block),
		joined(v.Labels.Measured, v.Labels.PageOf(number, pages), v.VersionLine())}
}

func (r *roll) foot(y float64, number, pages int) ([]Mark, float64) {
	marks := []Mark{Stroke{Points: []Point{{largeMargin, y}, {r.right(), y}}, Width: 0.3, Tone: Line}}
	y += 0.8
	for _, line := range r.footLines(number, pages) {
		var t Text
		t, y = r.flow(largeMargin, y, r.width(), style{Size: leastLarge, Leading: 1.1, Tone: Quiet}, line)
		marks = append(marks, t)
	}
	return marks, y
}

func (r *roll) footHeight() float64 {
	_, end := r.foot(0, 10, 10)
	return end + 1
}

// end numbers the pages.
func (r *roll) end() []*Page {
	for i, page := range r.pages {
		marks, _ := r.foot(r.bottom()+1, i+1, len(r.pages))
		page.add(marks...)
	}
	return r.pages
}
