package paper

import "math"

// Drawings of exercises on a card take what its rows leave free, and move nothing.
const (
	drawnLeast = 6   // mm a metre: a body of 1 cm is made out at arm's length (our judgement)
	drawnMost  = 12  // as large as most main figures
	drawnStep  = .25 // so that many cards have the same drawings
	drawnAir   = 0.8 // mm to words
)

// drawnBeside are the drawings of a row's one exercise in what the row's marks leave free.
func (p *card) drawnBeside(r cardRow, marks []Mark, row Box) []Mark {
	if len(r.items) > 1 || len(r.items[0].Pictures) == 0 {
		return nil
	}
	all := framesOf(r.items[0].Pictures)
	b := freeBeside(marks, row.Inset(0, drawnAir), all.width(drawnLeast)/all.height(drawnLeast))
	scale := math.Floor(min(drawnMost, all.scale(b.W, b.H))/drawnStep) * drawnStep
	if scale < drawnLeast {
		return nil
	}
	return all.at(Point{b.Right() - all.width(scale), b.Y + (b.H-all.height(scale))/2}, scale)
}

// freeBeside is the box at the right of a row that its marks leave free and that has most
// room for what is so wide for its height.
func freeBeside(marks []Mark, row Box, shape float64) Box {
	tops, ends, inks := []float64{row.Y}, []float64{row.Bottom()}, make([]Box, len(marks))
	for i, m := range marks {
		inks[i] = inked(m)
		tops, ends = append(tops, inks[i].Bottom()+drawnAir), append(ends, inks[i].Y-drawnAir)
	}
	best, most := Box{}, 0.0
	for _, top := range tops {
		for _, end := range ends {
			b := Box{row.X, top, row.W, end - top}
			for _, ink := range inks {
				if ink.Y < end+drawnAir/2 && ink.Bottom() > top-drawnAir/2 {
					b.X = math.Max(b.X, ink.Right()+3*drawnAir)
				}
			}
			b.W = row.Right() - b.X
			if high := min(b.H, b.W/shape); high > most {
				best, most = b, high
			}
		}
	}
	return best
}

// inked is the part of a mark's box that has ink.
func inked(m Mark) Box {
	b := m.extent()
	if t, ok := m.(Text); ok && t.Align == AlignLeft {
		b.W = 0
		for _, line := range t.Lines {
			b.W = math.Max(b.W, t.Face.width(line, t.Size))
		}
	}
	return b
}
