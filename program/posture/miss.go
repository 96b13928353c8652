package posture

import (
	"math"
	"slices"

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
)

// limits is what joints can do, rad (common practice; a little more than books say, so
// that nothing stops at the end of it).
var limits = [ofSide][2]float64{{-1.2, 3.6}, {0, 2.75}, {-.6, 2.6}, {0, 2.8}, {-.7, 1.5}}

// miss is everything by which a body at q is not as it should be.
func (p *placing) miss(q []float64) []float64 {
	body := p.lay(q)
	r := make([]float64, 0, 200)
	for i := range q {
		weight := asWas
		switch {
		case i < trunk || i >= moved:
			weight = lost
		case p.stiff[i]:
			weight = asSaid
		}
		r = append(r, weight*(q[i]-p.meant[i]))
	}
	for i := range 2 {
		for k, l := range limits {
			v := q[firstOfSide+ofSide*i+k]
			r = append(r, within*(math.Max(0, l[0]-v)+math.Max(0, v-l[1])))
		}
	}
	r = append(r, steady*p.overhang(&body))
	r = p.missThings(r, &body, q)
	return p.missSolids(r, &body, q)
}

// missThings is how far off the things are what touches them, and how far it has slid.
func (p *placing) missThings(r []float64, body *program.Placed, q []float64) []float64 {
	for i := range p.touch {
		t := &p.touch[i]
		p.eachRound(t, body, func(part program.Part, side, k int, at round) {
			kept := float64(kept)
			if p.before != nil && !p.before.touches(t.Kind, part, side) {
				kept *= p.fresh
			}
			switch {
			case t.Kind.Gripped():
				r = append(r, kept*(at.at.X-t.x.of(q)), kept*(at.at.Y-t.y.of(q)))
			case t.Kind == program.ThingWall:
				r = append(r, kept*(at.at.X-t.side*at.r-t.x.of(q)))
			default:
				r = append(r, kept*(at.at.Y-at.r-t.y.of(q)))
			}
			if was, ok := p.stood(t.Kind, part, side, k); ok {
				r = append(r, kept*slid(t.Kind, at, was))
			}
		})
	}
	return r
}

// missSolids is how far a body is in the floor and in walls.
func (p *placing) missSolids(r []float64, body *program.Placed, q []float64) []float64 {
	floor := p.onFloor()
	for _, s := range solid(body) {
		into := 0.0
		if floor {
			into = math.Max(0, s.r-s.at.Y)
		}
		r = append(r, kept*into)
		for _, t := range p.touch {
			if t.Kind == program.ThingWall {
				r = append(r, kept*math.Max(0, s.r-t.side*(s.at.X-t.x.of(q))))
			}
		}
	}
	return r
}

// eachRound goes through what touches a thing.
func (p *placing) eachRound(t *touch, body *program.Placed, do func(part program.Part, side, k int, at round)) {
	if t.Kind.Carried() {
		return
	}
	for _, part := range t.Parts {
		of, sides := part.Side()
		for _, side := range sides {
			for k, at := range rounds(body, of, side) {
				do(of, side, k, at)
			}
		}
	}
}

// slid is how far a part is from where it was on a thing. What is gripped stays as it is.
func slid(kind program.ThingKind, at, was round) float64 {
	switch {
	case kind.Gripped():
		return 0
	case kind == program.ThingWall:
		return at.at.Y - was.at.Y
	}
	return at.at.X - was.at.X
}

// stood is where a part touched a thing of the kind in the first figure, and is to stay.
func (p *placing) stood(kind program.ThingKind, part program.Part, side, k int) (round, bool) {
	if p.before == nil || slices.Contains(p.figure.Slides, part) {
		return round{}, false
	}
	var found round
	ok := false
	for i := range p.before.touch {
		if t := &p.before.touch[i]; t.Kind == kind {
			p.before.eachRound(t, &p.before.placed, func(o program.Part, s, n int, at round) {
				if o == part && s == side && n == k {
					found, ok = at, true
				}
			})
		}
	}
	return found, ok
}
