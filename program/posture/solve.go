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
		q, free := slices.Clone(p.meant), false
		for i := range 2 {
			if at := firstOfSide + ofSide*i + 2; !p.stiff[at] {
				q[at], free = hip, true
			}
		}
		q, off := p.settle(p.onItsLowest(q))
		if off < best*.99 {
			best, p.q = off, q
		}
		if !free {
			return
		}
	}
}

// settle moves the body by careful steps to what is nearest, and then by bold ones on along
// what touches, where careful ones hardly get ahead.
func (p *placing) settle(q []float64) (at []float64, missed float64) {
	q, _ = least(p.miss, q, patience/2, careful)
	return least(p.miss, q, patience, bold)
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
		p.q, _ = least(p.miss, p.q, patience/4, careful)
	}
	p.meant = meant
	p.q, _ = p.settle(p.q)
}

// fromTheFirst moves everything along until the first part that touches something is above
// nothing. Only a first figure has nothing that says where it is.
func (p *placing) fromTheFirst() {
	if p.before != nil || len(p.contacts) == 0 {
		return
	}
	body := p.lay(p.q)
	by := p.contacts[0].at(&body.Placed).X
	p.q[atX] -= by
	for i := range p.touch {
		if x := p.touch[i].x; !x.known && x.q > 0 {
			p.q[x.q] -= by
		}
	}
}

// onItsLowest is a body that stands on its lowest part: on the floor, or on the only thing
// that it touches.
func (p *placing) onItsLowest(q []float64) []float64 {
	body := p.lay(q)
	low := math.Inf(1)
	for _, s := range p.form.solids() {
		r := s.round(&body.Placed)
		low = math.Min(low, r.at.Y-r.r)
	}
	q[atY] = p.ground() - low
	return q
}

// ground is how high what the lowest part stands on is.
func (p *placing) ground() float64 {
	high := math.Inf(1)
	for i := range p.figure.Things {
		t := &p.figure.Things[i]
		if !t.Kind.Carried() && !t.Kind.Gripped() && t.Kind != program.ThingWall && len(t.Parts) > 0 {
			high = math.Min(high, max(t.High*p.scale(), usualHigh[t.Kind]))
		}
	}
	if math.IsInf(high, 1) {
		return 0
	}
	return high
}
