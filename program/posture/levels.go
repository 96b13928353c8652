package posture

import (
	"math"
	"slices"

	"gatepost/program"
)

// level is where a surface or a grip is along one axis: known, or moved until it fits.
type level struct {
	known bool
	at    float64 // m, where it is known
	q     int     // of what may be moved, where it is not
}

func (l level) of(q []float64) float64 {
	if l.known {
		return l.at
	}
	return q[l.q]
}

// touch is a thing with what touches it.
type touch struct {
	*program.Thing
	x, y level
	side float64 // of a wall: +1 where the body is ahead of it
}

// usualHigh is how high things are that stand under something where the page does not
// say, m (common practice).
var usualHigh = map[program.ThingKind]float64{program.ThingCushion: .08, program.ThingBlocks: .10, program.ThingScale: .03, program.ThingHandles: .10}

// touchThings finds for each thing where it is, or leaves that to be found.
func (p *placing) touchThings() {
	first := p.lay(p.onItsLowest(slices.Clone(p.meant)))
	for i := range p.figure.Things {
		t := touch{Thing: &p.figure.Things[i]}
		switch was := p.was(t.Kind); {
		case t.Kind.Carried():
		case was != nil:
			t.x, t.y, t.side = was.x, was.y, was.side
			if t.Kind == program.ThingRings && slices.Contains(p.figure.Slides, program.PartHands) { // they swing
				t.x = p.free(t.x.at)
			}
		case len(t.Parts) == 0:
			continue // nothing says where it is
		default:
			p.find(&t, &first.Placed)
		}
		if t.Kind == program.ThingWall {
			p.liesOn(&t)
		}
		p.touch = append(p.touch, t)
	}
}

// find is for a thing that nothing said yet where it is.
func (p *placing) find(t *touch, first *program.Placed) {
	of, sides := t.Parts[0].Side()
	at := spotOf{p.spotsOf(of, sides[0])[0], sides[0]}.at(first)
	if t.Kind == program.ThingWall {
		t.x, t.side = p.free(at.X), facing(first, of, at)
		return
	}
	t.y = p.height(t, at)
	if t.Kind.Gripped() {
		t.x = p.free(at.X)
	}
}

// free is a level that is moved until it fits.
func (p *placing) free(at float64) level {
	p.meant, p.stiff = append(p.meant, at), append(p.stiff, false)
	return level{q: len(p.meant) - 1}
}

// was is where the first figure has a thing of the kind, all of it known.
func (p *placing) was(kind program.ThingKind) *touch {
	if p.before == nil {
		return nil
	}
	for _, t := range p.before.touch {
		if t.Kind == kind {
			t.x = level{known: true, at: t.x.of(p.before.q)}
			t.y = level{known: true, at: t.y.of(p.before.q)}
			return &t
		}
	}
	return nil
}

// height is that of what is touched of a thing, above the floor; hanging with none it is
// nothing.
func (p *placing) height(t *touch, at space) level {
	switch high, usual := usualHigh[t.Kind]; {
	case t.Kind == program.ThingFloor, (t.Kind == program.ThingBar || t.Kind == program.ThingRings) && !p.onFloor():
		return level{known: true}
	case t.High > 0:
		return level{known: true, at: t.High * p.scale()}
	case usual:
		return level{known: true, at: high}
	}
	return p.free(math.Max(at.Y, .1))
}

// scale is by how much this body is taller than that for which pages say heights.
func (p *placing) scale() float64 { return p.body.Height / shownHeight }

// onFloor reports whether the floor is part of the figure.
func (p *placing) onFloor() bool {
	return slices.ContainsFunc(p.figure.Things, func(t program.Thing) bool {
		hangs := t.Kind == program.ThingBar || t.Kind == program.ThingRings
		return !t.Kind.Carried() && !hangs || hangs && t.High > 0
	})
}

// facing is on which side of a wall a body is whose part touches it: +1 ahead.
func facing(p *program.Placed, of program.Part, at space) float64 {
	toward := at.X - p.Top.X
	if math.Abs(toward) < .2*p.Height && math.Abs(p.Front.X) > .5 {
		toward = p.Front.X
	}
	switch of {
	case program.PartBack, program.PartSeat, program.PartShoulders, program.PartHeels:
		if math.Abs(p.Front.X) > .5 {
			toward = -p.Front.X
		}
	case program.PartBelly, program.PartToes, program.PartTips, program.PartKnees, program.PartHead:
		if math.Abs(p.Front.X) > .5 {
			toward = p.Front.X
		}
	}
	return -math.Copysign(1, toward)
}

// liesOn lays hands and the balls of feet on a wall.
func (p *placing) liesOn(t *touch) {
	for _, part := range t.Parts {
		of, sides := part.Side()
		for _, i := range sides {
			switch of {
			case program.PartHands, program.PartFingers:
				p.lies[i] = space{X: t.side}
			case program.PartToes:
				p.toes[i] = space{X: t.side}
			}
		}
	}
}

// touches reports whether a part of a side touches a thing of the kind.
func (p *placing) touches(kind program.ThingKind, part program.Part, side int) bool {
	return slices.ContainsFunc(p.figure.Things, func(t program.Thing) bool {
		return t.Kind == kind && slices.ContainsFunc(t.Parts, func(o program.Part) bool {
			of, sides := o.Side()
			return of == part && slices.Contains(sides, side)
		})
	})
}
