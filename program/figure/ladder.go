package figure

import (
	"math"

	"gatepost/program"
)

// Rung is one figure of a ladder with what is written under it.
type Rung struct {
	Stance program.Stance
	Name   string // "advanced tuck"
	Note   string // under the name, "75 % of full"
	Strong bool   // name in bold and a bar of the second ink under the floor: here, now
}

// LadderOptions say how a ladder is laid out. Lengths are metres of the figures.
type LadderOptions struct {
	Columns int     // figures in a row; 0: all in one
	Gap     float64 // between figures; 0: 0.10
	Cell    float64 // least width of a figure's place, for long names; 0: the figure's own
	Text    float64 // type size; 0: 0.10
	Marks   bool    // with centre of mass and plumb line
}

// Ladder stands figures side by side at one scale on one floor line, in rows
// from the top.
func Ladder(rungs []Rung, o LadderOptions) Drawing {
	o.Gap, o.Text = orElse(o.Gap, 0.10), orElse(o.Text, 0.10)
	if o.Columns <= 0 {
		o.Columns = max(1, len(rungs))
	}
	var d Drawing
	top := 0.0
	for len(rungs) > 0 {
		n := min(o.Columns, len(rungs))
		row := ladderRow(rungs[:n], o)
		d.put(row, Point{Y: top - row.Max.Y})
		top -= row.Height() + o.Gap
		rungs = rungs[n:]
	}
	return d
}

// ladderRow has its floor at height zero.
func ladderRow(rungs []Rung, o LadderOptions) Drawing {
	var d Drawing
	x := 0.0
	for _, r := range rungs {
		f := draw(r.Stance, Options{Plain: !o.Marks}, false)
		place := math.Max(f.Width(), o.Cell)
		middle := x + place/2
		d.put(f, Point{X: middle - (f.Min.X+f.Max.X)/2, Y: -r.Stance.Floor})
		d.rungWords(r, middle, place, o)
		x += place + o.Gap
	}
	d.add(floorLine(-o.Gap/2, x-o.Gap/2, 0))
	return d
}

func (d *Drawing) rungWords(r Rung, middle, place float64, o LadderOptions) {
	base := -1.5 * o.Text
	if o.Marks {
		base -= handMark * r.Stance.Height
	}
	if r.Strong {
		bar := rectangle(Point{X: middle - place/2, Y: -0.35 * o.Text}, Point{X: middle + place/2, Y: -lineThick})
		d.add(Shape{Ink: Accent, Paths: []Path{bar}})
	}
	d.label(Label{Text: r.Name, At: Point{X: middle, Y: base}, Align: Middle, Size: o.Text, Ink: Line, Bold: r.Strong})
	d.label(Label{Text: r.Note, At: Point{X: middle, Y: base - 1.25*o.Text}, Align: Middle, Size: o.Text, Ink: Line})
	d.hold(Point{X: middle, Y: base - 1.55*o.Text}, 0) // letters below the line
}
