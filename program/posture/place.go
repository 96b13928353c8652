package posture

import (
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/mechanics"
)

// placing is one figure while it is placed.
type placing struct {
	form
	figure program.Figure // whole, with what the first figure said
	before *placing       // the first figure; nil: this is it
	meant  []float64      // of everything that may be moved
	stiff  []bool         // the page says it
	touch  []touch

	contacts []contact
	carry    []spotOf // as far as what carries the body reaches
	solids   []spotOf
	floor    bool // is there
	balanced bool // over what carries it

	fresh  float64 // how much of what the first figure does not touch counts, while the body moves there
	q      []float64
	placed program.Placed
}

// place puts a figure on a body.
func place(b *mechanics.Body, f *program.Figure, before *placing) *placing {
	p := &placing{figure: *f, before: before, form: form{body: b}, fresh: 1}
	if before != nil {
		p.figure.Things = together(before.figure.Things, f.Things)
		if f.View == "" {
			p.figure.View = before.figure.View
		}
	}
	p.take()
	p.touchThings()
	p.meet()
	p.solve()
	p.fromTheFirst()
	p.placed = p.lay(p.q).Placed
	p.placed.View = p.figure.View
	p.setThings()
	p.mark()
	return p
}

// together are the things of a second figure: those of the first but for what it says.
func together(first, second []program.Thing) []program.Thing {
	all := slices.Clone(first)
	for _, t := range second {
		if i := slices.IndexFunc(all, func(o program.Thing) bool { return o.Kind == t.Kind }); i >= 0 {
			all[i] = t
		} else {
			all = append(all, t)
		}
	}
	return slices.DeleteFunc(all, func(t program.Thing) bool { return t.Gone })
}

// said is an angle of a side that the page gives for this figure.
func said(f *program.Figure, side int, j program.Bend) (float64, bool) {
	if v, ok := f.Sides[side][j]; ok {
		return v, true
	}
	v, ok := f.Angles[j]
	return v, ok
}

// take reads the angles: those said, or else those of the first figure, or nothing.
func (p *placing) take() {
	p.meant, p.stiff = make([]float64, moved), make([]bool, moved)
	meant := func(at int, side int, j program.Bend) {
		v, ok := said(&p.figure, side, j)
		if p.stiff[at] = ok; ok {
			p.meant[at] = v
		}
	}
	if p.before != nil {
		copy(p.meant, p.before.q)
	}
	if p.before == nil {
		p.meant[trunk] = p.lying()
	}
	meant(trunk, 0, program.BendTrunk)
	meant(neck, 0, program.BendNeck)
	p.spine = p.still(0, program.BendSpine)
	for i := range p.held {
		for k, j := range movedJoints {
			meant(firstOfSide+ofSide*i+k, i, j)
		}
		for k, j := range heldJoints {
			p.held[i][k] = p.still(i, j)
		}
		p.hands[i], p.lies[i], p.toes[i] = p.hand(i), space{Y: 1}, space{}
	}
	for _, t := range p.figure.Things {
		for _, part := range t.Parts {
			if of, sides := part.Side(); of == program.PartToes {
				for _, i := range sides {
					p.toes[i] = space{Y: 1}
				}
			}
		}
	}
}

// lying is how the trunk lies where that goes without saying.
func (p *placing) lying() float64 {
	switch {
	case p.touches(program.ThingFloor, program.PartBack, 0):
		return -math.Pi / 2
	case p.touches(program.ThingFloor, program.PartBelly, 0):
		return math.Pi / 2
	}
	return 0
}

// still is an angle that stays as it is said.
func (p *placing) still(side int, j program.Bend) float64 {
	if v, ok := said(&p.figure, side, j); ok || p.before == nil {
		return v
	}
	if j == program.BendSpine {
		return p.before.spine
	}
	return p.before.held[side][slices.Index(heldJoints[:], j)]
}

// hand is how a hand is held, by what it touches.
func (p *placing) hand(side int) program.Hand {
	hand := program.OpenHand
	for _, t := range p.figure.Things {
		for _, part := range t.Parts {
			of, sides := part.Side()
			if !slices.Contains(sides, side) {
				continue
			}
			switch {
			case of == program.PartFists, of == program.PartHands && (t.Kind.Gripped() || t.Kind.Carried()):
				return program.ClosedHand
			case of == program.PartHands:
				hand = program.FlatHand
			case of == program.PartFingers:
				hand = program.FingerHand
			}
		}
	}
	if slices.Contains(p.figure.Circle, program.PartFists) || slices.Contains(p.figure.Moves, program.PartFists) {
		return program.ClosedHand
	}
	return hand
}

// mark are the arrows.
func (p *placing) mark() {
	each := func(parts []program.Part, do func(of program.Part, side int)) {
		for _, part := range parts {
			of, sides := part.Side()
			if p.figure.View == "" || p.figure.View == program.FromSide {
				sides = sides[:1]
			}
			for _, side := range sides {
				do(of, side)
			}
		}
	}
	each(p.figure.Circle, func(of program.Part, side int) {
		p.placed.Circles = append(p.placed.Circles, p.circle(of, side))
	})
	each(p.figure.Press, p.press)
	if p.before == nil {
		return
	}
	each(p.figure.Moves, func(of program.Part, side int) {
		p.placed.Arrows = append(p.placed.Arrows, program.Arrow{From: p.before.middle(of, side), To: p.middle(of, side)})
	})
}

// circle is round a part, or round the length of a forearm.
func (p *placing) circle(of program.Part, side int) program.Circle {
	if a := &p.placed.Arms[side]; of == program.PartForearms {
		return program.Circle{At: mix(.4, a.Elbow, .6, a.Wrist), Axis: unit(minus(a.Wrist, a.Elbow))}
	}
	return program.Circle{At: p.middle(of, side)}
}

// pressed is how far the arrow of a part that presses goes into what it touches, m (our
// judgement: what is seen on a card).
const pressed = .22

// press is an arrow from a part into what it touches.
func (p *placing) press(of program.Part, side int) {
	for i := range p.touch {
		t := &p.touch[i]
		if t.Kind.Carried() || !p.touches(t.Kind, of, side) {
			continue
		}
		into := space{Y: -1}
		if t.Kind == program.ThingWall {
			into = space{X: -t.side}
		}
		all := p.spotsOf(of, side)
		last := spotOf{all[len(all)-1], side}.round(&p.placed) // of a forearm the wrist
		from := along(last.at, into, last.r)
		p.placed.Arrows = append(p.placed.Arrows, program.Arrow{From: from, To: along(from, into, pressed)})
	}
}

// middle is where an arrow points to for a part.
func (p *placing) middle(of program.Part, side int) space {
	if of == program.PartHands || of == program.PartFists {
		return p.placed.Arms[side].Grip
	}
	return spotOf{p.spotsOf(of, side)[0], side}.at(&p.placed)
}
