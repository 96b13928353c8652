package paper

import (
	"slices"

	"gatepost/program/publish/view"
)

const (
	guidesAPage = 6
	guideGap    = 7    // mm between columns
	guideAir    = 4.5  // mm between exercises
	guideSpread = 9    // mm more, at the most, where a column is not full
	guideName   = 12   // points
	guideFigure = 18.0 // mm high, as usual

	drawingsShare = 0.5  // of a column's width, as usual
	drawingsMost  = 0.62 // and at the most: German words have to fit beside them
)

// guidePoints are sizes of type, the largest first; guideGrown is how much larger than usual a
// column's drawings may be.
var (
	guidePoints = []float64{11, 10.5, 10, 9.5, 9, 8.5, leastPage}
	guideGrown  = []float64{2, 1.75, 1.5, 1.25, 1.1}
)

const usualGuide = 4 // of guidePoints

// guides are the exercises being laid into columns.
type guides struct {
	*typesetter
	v        *view.View
	h        *view.HowTo
	drawings []*frames
	size     float64 // points
	pages    []*Page
	x, y     float64
	top      float64 // of the page's columns
}

func newGuides(ts *typesetter, v *view.View, h *view.HowTo) *guides {
	g := &guides{typesetter: ts, v: v, h: h}
	for i := range h.Guides {
		g.drawings = append(g.drawings, framesOf(h.Guides[i].Pictures))
	}
	g.turn()
	return g
}

func (g *guides) page() *Page     { return g.pages[len(g.pages)-1] }
func (g *guides) width() float64  { return (g.page().Width - 2*pageMargin - guideGap) / 2 }
func (g *guides) bottom() float64 { return g.page().Height - pageMargin - 9 }

// largest is the largest size that takes no more pages than the usual one, or than a smaller
// one takes that brings six exercises to a page; with it the exercises' pieces.
func (g *guides) largest() [][]piece {
	most := (len(g.h.Guides) + guidesAPage - 1) / guidesAPage
	at := usualGuide
	all := g.sized(at)
	pages := g.pagesOf(all)
	for ; pages > most && at+1 < len(guidePoints); pages = g.pagesOf(all) {
		at++
		all = g.sized(at)
	}
	for at > 0 {
		larger := g.sized(at - 1)
		if g.pagesOf(larger) > pages {
			break
		}
		at, all = at-1, larger
	}
	g.size = guidePoints[at]
	return all
}

func (g *guides) sized(at int) [][]piece {
	g.size = guidePoints[at]
	return g.grown(1, 0, len(g.h.Guides))
}

// grown are the pieces of some exercises with drawings so much larger than usual.
func (g *guides) grown(by float64, from, to int) [][]piece {
	var all [][]piece
	for i := from; i < to; i++ {
		all = append(all, g.pieces(&g.h.Guides[i], g.drawings[i], by))
	}
	return all
}

func (g *guides) full() float64 { return g.bottom() - g.top }

func (g *guides) pagesOf(all [][]piece) int {
	_, columns := columnsOf(all, g.full())
	return (columns + 1) / 2
}

// columnsOf fills columns of a height in order: with which exercise each begins, and how many
// there are. One that is higher than a column goes on in the next.
func columnsOf(all [][]piece, height float64) (begins []int, columns int) {
	y := height
	for i, entry := range all {
		if high := highOf(entry); i == 0 || y+high > height {
			begins, columns, y = append(begins, i), columns+1, 0
		}
		for y += highOf(entry); y > height; y -= height {
			columns++
		}
		y += guideAir
	}
	return begins, columns
}

func highOf(entry []piece) float64 {
	high := 0.0
	for _, p := range entry {
		high += p.high
	}
	return high
}

// set puts the exercises into columns as high as each other, on as few pages as they take.
func (g *guides) set(all [][]piece) {
	low, high := 0.0, g.full()
	for range 12 { // to a tenth of a millimetre
		if middle := (low + high) / 2; g.fits(all, middle) {
			high = middle
		} else {
			low = middle
		}
	}
	begins, _ := columnsOf(all, high)
	for n, from := range begins {
		to := len(all)
		if n+1 < len(begins) {
			to = begins[n+1]
		}
		if n > 0 {
			g.next()
		}
		g.fill(g.filling(all, from, to))
	}
}

func (g *guides) fits(all [][]piece, height float64) bool {
	_, columns := columnsOf(all, height)
	return columns <= 2*g.pagesOf(all) && !slices.ContainsFunc(all, func(entry []piece) bool { return highOf(entry) > height })
}

// filling are a column's exercises with drawings as large as it has room for.
func (g *guides) filling(all [][]piece, from, to int) [][]piece {
	for _, by := range guideGrown {
		if larger := g.grown(by, from, to); g.spare(larger) >= 0 {
			return larger
		}
	}
	return all[from:to]
}

// spare is what exercises leave free of a column.
func (g *guides) spare(all [][]piece) float64 {
	spare := g.full() + guideAir
	for _, entry := range all {
		spare -= highOf(entry) + guideAir
	}
	return spare
}

// fill lays exercises into a column, and some of what is left of it between them.
func (g *guides) fill(all [][]piece) {
	air := guideAir
	if gaps := float64(len(all) - 1); gaps > 0 {
		air += min(max(0, g.spare(all)/gaps), guideSpread)
	}
	for _, entry := range all {
		for _, p := range entry {
			if g.y+p.high > g.bottom()+.01 && g.y > g.top {
				g.next()
			}
			g.page().add(p.lay(g.x, g.y)...)
			g.y += p.high
		}
		g.y += air
	}
}

// turn begins a page: its head says whose it is and, on the first, when to stop.
func (g *guides) turn() {
	hand, _ := sheets(g.v.Coach.Paper)
	page := hand.portrait("", leastPage)
	g.pages = append(g.pages, page)
	if len(g.pages) == 1 {
		page.Name = g.h.Name
	}
	width := page.Width - 2*pageMargin
	name := g.fit(Box{pageMargin, pageMargin, 0.62 * width, 9}, style{Face: Bold, Size: 22, Least: 10, Leading: 1, Bottom: true}, g.v.Client)
	page.add(name,
		g.fit(Box{pageMargin + 0.62*width, pageMargin, 0.38 * width, 9}, style{Face: Bold, Size: 12, Least: leastPage, Align: AlignRight, Bottom: true}, g.h.Name),
		Fill{Box{pageMargin, pageMargin + 10, width, 0.7}, Ink})
	lead, end := g.flow(pageMargin, pageMargin+12, width, style{Size: leastPage}, g.h.Lead+" "+g.v.Advice.StopShort+" "+g.v.Advice.NotMedical)
	page.add(lead)
	g.x, g.top = pageMargin, end+3
	g.y = g.top
}

// next goes to the next column, on the next page after the second.
func (g *guides) next() {
	if g.x > pageMargin {
		g.turn()
		return
	}
	g.x, g.y = pageMargin+g.width()+guideGap, g.top
}

// piece is a part of an exercise that stays together.
type piece struct {
	high float64
	lay  func(x, y float64) []Mark
}
