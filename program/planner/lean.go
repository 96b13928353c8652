package planner

import "gatepost/program/mechanics"

// Leans are prescribed in steps of 2 cm, up to where the toes all but leave the
// floor.
const (
	leanStep   = 0.02 // m
	leanMargin = 0.04 // m short of the lean at which the toes carry nothing
)

// leans are those of 0, 2, 4 … cm.
func (b *body) leans() []option {
	var all []option
	limit := b.LeanLimit(b.support) - leanMargin
	for d := 0.0; d <= limit; d += leanStep {
		o := b.leanOf(d)
		o.ahead, o.load = float64(len(all))*leanStep, max(0, o.load)
		all = append(all, o)
	}
	return all
}

// leanOf is a lean of so many m.
func (b *body) leanOf(ahead float64) option {
	return option{ahead: ahead, load: b.PlancheLean(ahead, b.support).Torque, site: leanSite}
}

// scaleStep is how finely toes can be told what to carry, in kg (common practice: a
// bathroom scale reads half kilograms).
const scaleStep = 0.5

// onScale are the ways to do a step with a scale under the toes, the least weight on it
// first, up to a share of the body's.
func (r *rung) onScale(most float64) []option {
	var all []option
	for kg := scaleStep; kg*mechanics.Gravity <= most*r.body.weight; kg += scaleStep {
		all = append(all, r.carried(kg*mechanics.Gravity))
	}
	return all
}

// carried is a step with so many newtons on the toes.
func (r *rung) carried(newtons float64) option {
	return option{scale: newtons, load: r.load - newtons*r.toesReach()*allowance(r.Step), site: r.toes}
}
