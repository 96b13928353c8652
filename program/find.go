package program

import "slices"

// Measure is what a mark is told by: what has to be found by trying, since no scale or
// tape tells it of a body.
type Measure string

const (
	MeasureNone  Measure = ""
	MeasureLean  Measure = "lean"  // m, shoulders ahead of the wrist crease
	MeasurePad   Measure = "pad"   // m of pads under the head
	MeasureBlock Measure = "block" // m of a block under the feet
	MeasureScale Measure = "scale" // N left on a scale by the toes
	MeasurePull  Measure = "pull"  // N that a scale reads when a band hangs that nobody measured
)

// Find is how a mark is found that a client never showed: a few repetitions or a short
// hold at each of its marks, the easiest first. The zero Find is none.
type Find struct {
	Marks []Mark
	RPE   int  // at which to stop
	Easy  bool // on to the next mark only where the one before was easy
	For   int  // s of each set that a try stands in place of
}

// Any reports whether there is something to find.
func (f *Find) Any() bool { return len(f.Marks) > 0 }

// asks reports whether two cards ask for the same marks.
func (f *Find) asks(other *Find) bool {
	at := func(a, b Mark) bool { return a.At == b.At }
	return f.RPE == other.RPE && f.Easy == other.Easy && slices.EqualFunc(f.Marks, other.Marks, at)
}

// Mark is one of those to try.
type Mark struct {
	At   float64 // of the item's measure
	Load float64 // share of the instant maximum there, as careful as work is planned
}

// Found is what an item becomes by the mark that was found.
type Found struct {
	Mark float64 // the last good one, of the item's measure
	At   float64 // in place of what is printed
}

// Measured is what an item is told by, and how much of it; nothing where no mark is found.
func (p *Prescription) Measured() (Measure, float64) {
	switch {
	case p.Ahead > 0:
		return MeasureLean, p.Ahead
	case p.Scale > 0:
		return MeasureScale, p.Scale
	}
	return p.Rig.Measured()
}

// Measured is what a rig is told by, and how much of it; nothing of bands that were measured.
func (r *Rig) Measured() (Measure, float64) {
	switch {
	case r.Pad > 0:
		return MeasurePad, r.Pad
	case r.Block > 0:
		return MeasureBlock, r.Block
	case r.Pull > 0:
		return MeasurePull, r.Pull
	}
	return MeasureNone, 0
}

// Moved is an item at another mark of its measure.
func (p Prescription) Moved(at float64) Prescription {
	switch m, _ := p.Measured(); m {
	case MeasureLean:
		p.Ahead = at
	case MeasureScale:
		p.Scale = at
	default:
		p.Rig = p.Rig.Moved(at)
	}
	return p
}

// Moved is a rig at another mark of its measure.
func (r Rig) Moved(at float64) Rig {
	switch m, _ := r.Measured(); m {
	case MeasurePad:
		r.Pad = at
	case MeasureBlock:
		r.Block = at
	case MeasurePull:
		r.Pull = at
	}
	return r
}
