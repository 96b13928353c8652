package planner

import (
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// Marks lie so many aids apart: half hands of a lean, two kilograms.
const (
	scaleApart = 4 // of half a kilogram
	pullApart  = 2 // of a kilogram
	leansApart = 2 // of two centimetres
)

// grid is the ways there are to do an item at marks of its measure, the easiest first.
type grid struct {
	aids  []ladder.Aid
	work  int // the place of the item's own
	apart int // places from mark to mark
	first int // the first that is a mark
}

// gridOf is what an item's marks are taken from; not ok where there are none.
func (h *holds) gridOf(item *program.Prescription) (g grid, ok bool) {
	measure, at := item.Measured()
	w := h.workOf(item)
	switch {
	case measure == program.MeasureNone || w.none():
		return g, false
	case measure == program.MeasureLean:
		g = grid{aids: h.leansBeside(at), apart: leansApart, first: 1}
	case measure == program.MeasureScale:
		g = grid{aids: w.rung.Scales(bandShare), apart: scaleApart}
	default:
		others := func(o ladder.Aid) bool {
			m, _ := o.Rig.Measured()
			return m != measure || !slices.Equal(o.Rig.Bands, item.Rig.Bands)
		}
		g = grid{aids: slices.DeleteFunc(slices.Clone(w.rung.Aids()), others), apart: 1}
	}
	its := func(o ladder.Aid) bool { return math.Abs(markOf(o)-at) < 1e-6 }
	if measure != program.MeasureLean { // the most help first
		slices.Reverse(g.aids)
	}
	switch measure {
	case program.MeasurePull:
		g.apart = pullApart
	case program.MeasurePad, program.MeasureBlock:
		g.aids = apart(g.aids, its)
	}
	g.work = slices.IndexFunc(g.aids, its)
	return g, g.work >= g.first
}

// leansBeside are the leans by two centimetres, one of so many metres among them.
func (h *holds) leansBeside(ahead float64) []ladder.Aid {
	var all []ladder.Aid
	for cm := centimetres(ahead) % 2; cm <= centimetres(h.leans[len(h.leans)-1].Ahead); cm += 2 {
		all = append(all, h.body.LeanOf(float64(cm)/100))
	}
	return all
}

// sameLoad is how close two heights load that are no use to tell apart (our judgement): a
// block that makes nothing easier is none.
const sameLoad = 1.01

// apart leaves out heights that load like the harder one after them, but for the item's own.
func apart(aids []ladder.Aid, its func(ladder.Aid) bool) []ladder.Aid {
	var out []ladder.Aid
	for i, o := range aids {
		if i+1 == len(aids) || its(o) || aids[i+1].Load > o.Load*sameLoad {
			out = append(out, o)
		}
	}
	return out
}

// even is the place of a whole kilogram, where marks are read from a scale.
func (g *grid) even(p int) int {
	if o := g.aids[min(p, len(g.aids)-1)]; o.Scale > 0 && math.Mod(math.Round(2*o.Scale/ladder.Newtons(1)), 2) != 0 {
		return max(g.first, p-1)
	}
	return p
}

// measured is what an aid is told by, and how much of it.
func measured(o ladder.Aid) (program.Measure, float64) {
	return measuredBy(o.Rig, o.Ahead, o.Scale)
}

// measuredBy is the same of a rig, a lean and a weight on the toes.
func measuredBy(rig program.Rig, ahead, scale float64) (program.Measure, float64) {
	return (&program.Prescription{Rig: rig, Ahead: ahead, Scale: scale}).Measured()
}

// markOf is an aid's place on its measure.
func markOf(o ladder.Aid) float64 {
	_, at := measured(o)
	return at
}

// nearest is the place of what loads nearest to so many N·m, and for who trains gently no
// more than that.
func (g *grid) nearest(load float64, atMost bool) int {
	best := g.first
	for i := g.first; i < len(g.aids); i++ {
		off := math.Abs(g.aids[i].Load - load)
		if off < math.Abs(g.aids[best].Load-load)-1e-9 && (!atMost || g.aids[i].Load <= load+1e-9) {
			best = i
		}
	}
	return best
}
