package ladder

import "gatepost/program/mechanics"

// Leans are prescribed in steps of 2 cm, up to where the toes all but leave the floor. Near
// the wrists, where two are a quarter more load, by single ones, which a tape shows.
const (
	LeanStep   = 0.02 // m
	leanFine   = 10   // cm up to which every one is a lean
	leanMargin = 0.04 // m short of the lean at which the toes carry nothing
)

// Leans are those of 0, 1, 2 … 10, 12, 14 … cm.
func (b *Body) Leans() []Aid {
	var all []Aid
	limit := b.LeanLimit(b.support) - leanMargin
	for cm := 0; float64(cm)/100 <= limit; cm++ {
		if cm <= leanFine || cm%2 == 0 {
			all = append(all, b.LeanOf(float64(cm)/100))
		}
	}
	return all
}

// LeanOf is a lean of so many m.
func (b *Body) LeanOf(ahead float64) Aid {
	return Aid{Ahead: ahead, Load: max(0, b.PlancheLean(ahead, b.support).Torque), Site: LeanSite}
}

// ScaleStep is how finely toes can be told what to carry, in kg (common practice: a
// bathroom scale reads half kilograms).
const ScaleStep = 0.5

// Scales are the ways to do a step with a scale under the toes, the least weight on it
// first, up to a share of the body's.
func (r *Rung) Scales(most float64) []Aid {
	all := make([]Aid, 0, int(most*r.body.Weight/(ScaleStep*mechanics.Gravity)))
	for kg := ScaleStep; kg*mechanics.Gravity <= most*r.body.Weight; kg += ScaleStep {
		all = append(all, r.Carried(r.Free(), kg*mechanics.Gravity))
	}
	return all
}

// Carried is an aid with so many newtons on the toes beside it; with none, as it was.
func (r *Rung) Carried(a Aid, newtons float64) Aid {
	if newtons > 0 {
		a.Scale, a.Load, a.Site = newtons, a.Load-newtons*r.toesReach()*allowance(r.Step), r.toes
	}
	return a
}
