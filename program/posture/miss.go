package posture

import (
	"math"

	"gatepost/program"
)

// Weights of what a placed body should be like: a centimetre off a thing that is touched
// counts as much as three radians off an angle that is said (our judgement: things are
// touched exactly).
const (
	kept   = 300  // per m
	asSaid = 1    // per rad
	asWas  = .08  // per rad, where nothing is said
	within = 30   // per rad beyond what a joint can
	steady = 3    // per m that the body's centre of mass is beside what carries it
	lost   = .002 // per m, where a body is that nothing holds
	even   = .3   // per rad that the sides differ where they are meant alike
)

// limits is what joints can do, rad (common practice; a little more than books say, so
// that nothing stops at the end of it).
var limits = [ofSide][2]float64{{-1.2, 3.6}, {0, 2.75}, {-.6, 2.6}, {0, 2.8}, {-.7, 1.5}}

// miss adds everything by which a body at q is not as it should be.
func (p *placing) miss(q []float64, s *squares) {
	body := p.lay(q)
	p.missAngles(q, s)
	if p.balanced {
		p.missBalance(&body, s)
	}
	for i := range p.contacts {
		p.missThing(&p.contacts[i], &body, q, s)
	}
	p.missSolids(&body, q, s)
}

// missAngles is how far off the angles are what the page says and what joints can do.
func (p *placing) missAngles(q []float64, s *squares) {
	for i := range q {
		weight := asWas
		switch {
		case i < trunk || i >= moved:
			weight = lost
		case p.stiff[i]:
			weight = asSaid
		}
		s.goes(i, weight)
		s.add(weight * (q[i] - p.meant[i]))
	}
	for right := firstOfSide; right < firstOfSide+ofSide; right++ {
		if left := right + ofSide; p.meant[left] == p.meant[right] {
			s.goes(left, even)
			s.goes(right, -even)
			s.add(even * (q[left] - q[right]))
		}
	}
	for i := range 2 {
		for k, l := range limits {
			at := firstOfSide + ofSide*i + k
			if beyond := math.Max(0, l[0]-q[at]) + math.Max(0, q[at]-l[1]); beyond > 0 {
				s.goes(at, math.Copysign(within, q[at]-l[0]))
				s.add(within * beyond)
			}
		}
	}
}

// missThing is how far off a thing is what touches it, and how far it has slid. What is
// gripped stays as it is.
func (p *placing) missThing(c *contact, body *laid, q []float64, s *squares) {
	weight := float64(kept)
	if c.fresh {
		weight *= p.fresh
	}
	at := c.round(&body.Placed)
	switch {
	case c.on.Kind.Gripped():
		body.gap(s, c.spotOf, alongX, weight, at.at.X-c.on.x.of(q), c.on.x)
		body.gap(s, c.spotOf, alongY, weight, at.at.Y-c.on.y.of(q), c.on.y)
	case c.on.Kind == program.ThingWall:
		body.gap(s, c.spotOf, alongX, weight, at.at.X-c.on.side*at.r-c.on.x.of(q), c.on.x)
		if c.stays {
			body.gap(s, c.spotOf, alongY, weight, at.at.Y-c.was.Y, fixed)
		}
	default:
		body.gap(s, c.spotOf, alongY, weight, at.at.Y-at.r-c.on.y.of(q), c.on.y)
		if c.stays {
			body.gap(s, c.spotOf, alongX, weight, at.at.X-c.was.X, fixed)
		}
	}
}

// missSolids is how far a body is in the floor and in walls.
func (p *placing) missSolids(body *laid, q []float64, s *squares) {
	for _, o := range p.solids {
		at := o.round(&body.Placed)
		if above := at.at.Y - at.r; p.floor && above < 0 {
			body.gap(s, o, alongY, kept, above, fixed)
		}
		for i := range p.touch {
			t := &p.touch[i]
			if t.Kind != program.ThingWall {
				continue
			}
			if off := at.at.X - t.side*at.r - t.x.of(q); t.side*off < 0 {
				body.gap(s, o, alongX, kept, off, t.x)
			}
		}
	}
}
