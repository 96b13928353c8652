package posture

import (
	"slices"

	"gatepost/program"
)

// contact is a spot of the body on a thing.
type contact struct {
	spotOf
	on    *touch
	part  program.Part
	count int   // of the part's spots
	fresh bool  // there was none in the first figure
	stays bool  // there was, and it stays
	was   space // where
}

// meet finds what touches what, and what goes through nothing.
func (p *placing) meet() {
	for i := range p.touch {
		t := &p.touch[i]
		if t.Kind.Carried() {
			continue
		}
		for _, part := range t.Parts {
			of, sides := part.Side()
			for _, side := range sides {
				for k, s := range p.spotsOf(of, side) {
					p.contacts = append(p.contacts, p.since(contact{on: t, spotOf: spotOf{s, side}, part: of, count: k}))
				}
			}
		}
	}
	for _, c := range p.contacts {
		p.carry = append(p.carry, c.spotOf)
		if c.part == program.PartHands && p.hands[c.side] == program.FlatHand { // up to the knuckles
			p.carry = append(p.carry, spotOf{spot{landmark: atKnuckle}, c.side})
		}
	}
	p.floor, p.solids, p.balanced = p.onFloor(), p.form.solids(), p.carried()
}

// since says what of a contact there was in the first figure.
func (p *placing) since(c contact) contact {
	if p.before == nil {
		return c
	}
	c.fresh = true
	for _, o := range p.before.contacts {
		if o.on.Kind == c.on.Kind && o.part == c.part && o.side == c.side {
			c.fresh = false
			if o.count == c.count && !slices.Contains(p.figure.Slides, c.part) {
				c.stays, c.was = true, o.at(&p.before.placed)
			}
		}
	}
	return c
}

// eachOn goes through what touches a thing.
func (p *placing) eachOn(t *touch, do func(c *contact)) {
	for i := range p.contacts {
		if p.contacts[i].on == t {
			do(&p.contacts[i])
		}
	}
}
