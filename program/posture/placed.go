package posture

import (
	"fmt"
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/mechanics"
)

// Place puts the figures of an exercise on a body. What cannot be as a figure says is a
// problem, and drawn as near as it comes.
func Place(b *mechanics.Body, figures []program.Figure) ([]program.Placed, program.Problems) {
	var all []program.Placed
	var problems program.Problems
	var before *placing
	for i := range figures {
		p := place(b, &figures[i], before)
		if before == nil {
			before = p
		}
		all = append(all, p.placed)
		problems = append(problems, p.wrong()...)
	}
	return all, problems
}

// How far off a placed body may be from what its page says (our judgement: less is not
// seen).
const (
	offThing = .01
	offAngle = 8 * math.Pi / 180
)

// wrong is what is not as the page says.
func (p *placing) wrong() program.Problems {
	var problems program.Problems
	say := func(what, advice string) {
		problems = append(problems, program.Problem{Place: p.figure.Place, Message: what, Advice: advice, Warning: true})
	}
	far := map[string]bool{}
	for i := range p.contacts {
		c := &p.contacts[i]
		if off := p.off(c); off > offThing && !far[string(c.part)+string(c.on.Kind)] {
			far[string(c.part)+string(c.on.Kind)] = true
			say(fmt.Sprintf("%q and %q do not meet in this drawing: %.0f cm are missing", c.part, c.on.Kind, 100*off),
				"change the angles of the trunk or of that limb, or let it go along: slides: ["+string(c.part)+"]")
		}
	}
	p.unheld(say)
	for at, stiff := range p.stiff {
		if off := math.Abs(p.q[at] - p.meant[at]); stiff && off > offAngle {
			say(fmt.Sprintf("in this drawing %q can't be %.0f: it comes out as %.0f", nameOf(at), degrees(p.meant[at]), degrees(p.q[at])),
				"write the angle that fits, or leave it out, and it is found; or let what it rests on go along: slides: [feet]")
		}
	}
	return problems
}

// unheld says what stands untouched and has never stood, and what presses into nothing.
func (p *placing) unheld(say func(what, advice string)) {
	for i := range p.figure.Things {
		if t := &p.figure.Things[i]; len(t.Parts) == 0 && !t.Gone && p.was(t.Kind) == nil {
			say(fmt.Sprintf("nothing says where the untouched %q stands", t.Kind), "let something touch it in the first drawing")
		}
	}
	for _, part := range p.figure.Press {
		of, sides := part.Side()
		if !slices.ContainsFunc(program.Things, func(k program.ThingKind) bool { return !k.Carried() && p.touches(k, of, sides[0]) }) {
			say(fmt.Sprintf("%q press into nothing", part), "say what they touch, for example: floor: ["+string(part)+"]")
		}
	}
}

func degrees(rad float64) float64 { return math.Round(rad * 180 / math.Pi) }

func nameOf(at int) program.Bend {
	switch at {
	case trunk:
		return program.BendTrunk
	case neck:
		return program.BendNeck
	}
	return movedJoints[(at-firstOfSide)%ofSide]
}

// off is how far a part is from where it touches, or has slid, m.
func (p *placing) off(c *contact) float64 {
	at := c.round(&p.placed)
	x, y := at.at.X-c.on.x.of(p.q), at.at.Y-c.on.y.of(p.q)
	slid := space{}
	if c.stays {
		slid = minus(at.at, c.was)
	}
	switch {
	case c.on.Kind.Gripped():
		return math.Hypot(x, y)
	case c.on.Kind == program.ThingWall:
		return math.Hypot(x-c.on.side*at.r, slid.Y)
	}
	return math.Hypot(y-at.r, slid.X)
}
