package posture

import (
	"math"
	"slices"

	"gatepost/program"
)

// tried are hips to begin with where a page says nothing of them, rad: who stands, and who
// sits. The nearest way from one to the other may be through the floor.
var tried = []float64{0, math.Pi / 4, math.Pi / 2}

// patience is how many steps are taken for a figure at the most; twenty are usual.
const patience = 80

// solve moves the body until it is as it should be, from wherever that succeeds best.
func (p *placing) solve() {
	if p.before != nil {
		p.follow()
		return
	}
	best := math.Inf(1)
	for _, hip := range tried {
		q := slices.Clone(p.meant)
		for i := range 2 {
			if at := firstOfSide + ofSide*i + 2; !p.stiff[at] {
				q[at] = hip
			}
		}
		q = least(p.miss, p.onItsLowest(q), patience)
		if off := sum(p.miss(q)); off < best*.99 {
			best, p.q = off, q
		}
	}
}

// follow moves the body from the first figure to this one a little at a time, as who does the
// exercise would, so that no joint takes a way round.
func (p *placing) follow() {
	const steps = 8
	meant := p.meant
	p.q = append(slices.Clone(p.before.q[:moved]), meant[moved:]...)
	for k := 1; k <= steps; k++ {
		p.meant = slices.Clone(meant)
		for i := trunk; i < moved; i++ {
			p.meant[i] = p.before.q[i] + (meant[i]-p.before.q[i])*float64(k)/steps
		}
		p.fresh = math.Pow(float64(k)/steps, 6)
		p.q = least(p.miss, p.q, patience/4)
	}
	p.meant = meant
	p.q = least(p.miss, p.q, patience)
}

// fromTheFirst moves everything along until the first part that touches something is above
// nothing. Only a first figure has nothing that says where it is.
func (p *placing) fromTheFirst() {
	if p.before != nil {
		return
	}
	body, by := p.lay(p.q), math.NaN()
	for i := range p.touch {
		p.eachRound(&p.touch[i], &body, func(_ program.Part, _, _ int, at round) {
			if math.IsNaN(by) {
				by = at.at.X
			}
		})
	}
	if math.IsNaN(by) {
		return
	}
	p.q[atX] -= by
	for i := range p.touch {
		if x := p.touch[i].x; !x.known && x.q > 0 {
			p.q[x.q] -= by
		}
	}
}

// onItsLowest is a body that stands on its lowest part.
func (p *placing) onItsLowest(q []float64) []float64 {
	body := p.lay(q)
	low := math.Inf(1)
	for _, r := range solid(&body) {
		low = math.Min(low, r.at.Y-r.r)
	}
	q[atY] = -low
	return q
}
