package paper

import "gatepost/program"

// Sheet is a paper size in mm, portrait.
type Sheet struct {
	Name          string
	Width, Height float64
}

// Sizes of ISO 216, and of ANSI/ASME Y14.1 (8.5 × 11 in and 11 × 17 in).
var (
	A4      = Sheet{"A4", 210, 297}
	A3      = Sheet{"A3", 297, 420}
	Letter  = Sheet{"Letter", 215.9, 279.4}
	Tabloid = Sheet{"Tabloid", 279.4, 431.8}
)

// office printers leave so many mm white at each edge (common practice).
const freeEdge = 5

// sheets are the hand-out's size and the wall's.
func sheets(p program.Paper) (hand, wall Sheet) {
	if p == program.PaperLetter {
		return Letter, Tabloid
	}
	return A4, A3
}

func (s Sheet) portrait(name string, least float64) *Page {
	return &Page{Width: s.Width, Height: s.Height, Free: freeEdge, Least: least, Name: name}
}

func (s Sheet) landscape(name string, least float64) *Page {
	return &Page{Width: s.Height, Height: s.Width, Free: freeEdge, Least: least, Name: name}
}
