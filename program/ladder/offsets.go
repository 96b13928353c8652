package ladder

import (
	"math"

	"gatepost/program"
	"gatepost/program/strength"
)

// Places among a body's sites: of what has none, and of the lean.
const (
	noSite = iota
	LeanSite
)

// rungs notes the road map's lean and its work on a scale.
func (b *Body) rungs(m *program.RoadMap) {
	for _, r := range m.Rungs {
		switch {
		case r.Kind == program.RungLean && b.leanID == "":
			b.leanID = r.Exercise
		case r.Kind == program.RungScale && b.toesID == "":
			b.toesID = r.Exercise
		}
	}
	b.sites = &[]strength.Site{noSite: {}, LeanSite: {Model: strength.LeanModel, Position: b.leanID}}
}

// newSite notes a place where something is held, and gives its number.
func (b *Body) newSite(s strength.Site) int {
	*b.sites = append(*b.sites, s)
	return len(*b.sites) - 1
}

// settle gives a step its sites: held free, and with the toes on a scale.
func (b *Body) settle(r *Rung) {
	r.site = b.newSite(strength.Site{Model: strength.StepModel, Position: r.ID})
	r.toes = b.newSite(strength.Site{Model: strength.ToesModel, Position: onToes(r)})
}

// onToes names a step with part of the weight on the toes.
func onToes(r *Rung) string { return r.ID + ", toes" }

// Site is where a step is held free.
func (b *Body) Site(r *Rung) strength.Site { return (*b.sites)[r.site] }

// Sites are the places where something is held, by the numbers that aids have.
func (b *Body) Sites() []strength.Site { return *b.sites }

// What makes an offset worth a coach's eye (our judgement): known twice as well as
// before anything was held, and three per cent at least.
const (
	knownShare  = 0.5
	offsetLeast = 0.03
)

// Known are the offsets of steps, leans and scale holds that the client's own sets
// have taught.
func (b *Body) Known(s strength.State) []program.Offset {
	var out []program.Offset
	for _, o := range s.Offsets() {
		still := b.load == program.LoadLift && o.Model == strength.LeanModel // of lifts it tells little
		if o.Model == strength.PressModel || still || o.Spread > knownShare*o.Prior || math.Abs(o.Mean) < offsetLeast {
			continue
		}
		known := program.Offset{Ln: o.Mean, Spread: o.Spread}
		switch o.Model {
		case strength.StepModel:
			known.Step = o.Position
		case strength.ToesModel:
			known.Exercise = b.toesID
		default:
			known.Exercise = o.Position
		}
		out = append(out, known)
	}
	return out
}
