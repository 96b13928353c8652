package posture

import (
	"math"
	"slices"

	"gatepost/program"
)

// Sizes of what stands around a body, m (our judgement, as in package figure).
const (
	overPart   = .12 // of a box beyond the parts on it
	boxWide    = .34
	blockWide  = .26
	tableLong  = 1.10
	wallOver   = .15 // of a wall above what touches it
	wallTall   = .35 // and above the head where nobody is upside down
	ringStrap  = .60
	plateApart = .13 // from the middle of a dumbbell to its ends
)

// setThings puts up what is around a placed body.
func (p *placing) setThings() {
	p.placed.OnFloor = p.onFloor()
	for i := range p.touch {
		t := &p.touch[i]
		switch {
		case t.Kind == program.ThingFloor:
		case len(t.Parts) == 0:
			p.placed.Set = append(p.placed.Set, p.again(t.Kind)...)
		case t.Kind == program.ThingDumbbells:
			p.dumbbells(t)
		case t.Kind.Carried():
			p.strand(t)
		case t.Kind.Gripped():
			p.gripped(t)
		case t.Kind == program.ThingWall:
			p.wall(t)
		default:
			p.under(t)
		}
	}
}

func (p *placing) add(s program.Set) { p.placed.Set = append(p.placed.Set, s) }

// again is a thing of the first figure, which stands where it stood; one for each hand.
func (p *placing) again(kind program.ThingKind) []program.Set {
	if p.before == nil {
		return nil
	}
	return slices.DeleteFunc(slices.Clone(p.before.placed.Set), func(s program.Set) bool { return s.Kind != kind })
}

// under is what parts lie or stand on: as wide as they are, and further out on the side
// away from the body.
func (p *placing) under(t *touch) {
	if s := p.again(t.Kind); s != nil {
		p.add(s[0])
		return
	}
	low, high, top := math.Inf(1), math.Inf(-1), t.y.of(p.q)
	p.eachOn(t, func(c *contact) {
		x := c.at(&p.placed).X
		low, high = math.Min(low, x), math.Max(high, x)
	})
	low, high = low-overPart, high+overPart
	wide := boxWide
	if t.Kind != program.ThingBox {
		wide = blockWide
	}
	if short := wide - (high - low); short > 0 {
		if middle := (p.placed.Hip.X + p.placed.Top.X) / 2; math.Abs(middle-(low+high)/2) < wide/2 {
			low, high = low-short/2, high+short/2
		} else if middle > high {
			low -= short
		} else {
			high += short
		}
	}
	p.add(program.Set{Kind: t.Kind, From: space{X: low}, To: space{X: high, Y: top}})
}

func (p *placing) wall(t *touch) {
	x, top := t.x.of(p.q), p.placed.Crown.Y+wallTall
	p.eachOn(t, func(c *contact) { top = math.Max(top, c.at(&p.placed).Y+wallOver) })
	for _, s := range p.again(t.Kind) {
		top = math.Max(top, s.To.Y)
	}
	p.add(program.Set{Kind: t.Kind, From: space{X: x}, To: space{X: x, Y: top}, Side: t.side})
}

// gripped is what hands close around.
func (p *placing) gripped(t *touch) {
	at := space{X: t.x.of(p.q), Y: t.y.of(p.q)}
	s := program.Set{Kind: t.Kind, From: at, To: at}
	switch t.Kind {
	case program.ThingRings:
		s.To.Y += ringStrap
		for _, was := range p.again(t.Kind) { // from where they hang
			s.To = was.To
		}
	case program.ThingTable:
		s.To.X += math.Copysign(tableLong, p.placed.Hip.X-p.placed.Top.X)
	}
	_, sides := t.Parts[0].Side()
	for _, i := range sides { // each hand has its own place across
		s.From.Z = p.placed.Arms[i].Grip.Z
		s.To.Z = s.From.Z
		if p.add(s); t.Kind == program.ThingTable || t.Kind == program.ThingBar || p.side() {
			return
		}
	}
}

func (p *placing) side() bool { return p.figure.View == "" || p.figure.View == program.FromSide }

// dumbbells lie in the hands square to the forearm: along the thumb, or across.
func (p *placing) dumbbells(t *touch) {
	for _, part := range t.Parts {
		_, sides := part.Side()
		for _, i := range sides {
			a := &p.placed.Arms[i]
			lies := a.Thumb
			if t.Across {
				lies = cross(unit(minus(a.Wrist, a.Elbow)), a.Thumb)
			}
			p.add(program.Set{Kind: t.Kind, From: along(a.Grip, lies, -plateApart), To: along(a.Grip, lies, plateApart)})
			if p.side() {
				return // the far one is behind it
			}
		}
	}
}

// strand is a band or towel: from its anchor to what it is held by, or from part to part.
func (p *placing) strand(t *touch) {
	for i := range 2 {
		var run []space
		for _, part := range t.Parts {
			of, sides := part.Side()
			if len(sides) == 2 || sides[0] == i {
				run = append(run, p.runsBy(of, i))
			} else {
				run = append(run, p.runsBy(of, sides[0]))
			}
		}
		anchored := len(run) == 1
		if anchored {
			run = append([]space{{X: t.Ahead * p.scale(), Y: t.High * p.scale()}}, run...)
		}
		p.add(program.Set{Kind: t.Kind, Run: run, Anchored: anchored})
		if p.side() {
			return
		}
	}
}

// runsBy is where a strand runs at a part: under a foot, through a hand.
func (p *placing) runsBy(of program.Part, side int) space {
	l := &p.placed.Legs[side]
	switch of {
	case program.PartFeet, program.PartToes:
		sole := unit(minus(l.Ball, l.Heel))
		middle := mix(.6, l.Ball, .4, l.Heel)
		down := space{X: sole.Y, Y: -sole.X} // of who looks ahead
		return along(middle, down, .012*p.placed.Height)
	}
	return p.middle(of, side)
}
