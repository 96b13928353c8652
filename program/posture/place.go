package posture

import (
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/mechanics"
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

// placing is one figure while it is placed.
type placing struct {
	form
	figure program.Figure // whole, with what the first figure said
	before *placing       // the first figure; nil: this is it
	meant  []float64      // of everything that may be moved
	stiff  []bool         // the page says it
	touch  []touch
	fresh  float64 // how much of what the first figure does not touch counts, while the body moves there
	q      []float64
	placed program.Placed
}

// usualHigh is how high things are that stand under something where the page does not
// say, m (common practice).
var usualHigh = map[program.ThingKind]float64{program.ThingCushion: .08, program.ThingBlocks: .10, program.ThingScale: .03, program.ThingHandles: .10}

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
	p.solve()
	p.fromTheFirst()
	p.placed = p.lay(p.q)
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
		p.held[i] = map[program.Bend]float64{}
		for _, j := range heldJoints {
			p.held[i][j] = p.still(i, j)
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
	return p.before.held[side][j]
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
			}
		}
	}
	return hand
}

// touchThings finds for each thing where it is, or leaves that to be found.
func (p *placing) touchThings() {
	first := p.lay(p.onItsLowest(slices.Clone(p.meant)))
	free := func(at float64) level {
		p.meant, p.stiff = append(p.meant, at), append(p.stiff, false)
		return level{q: len(p.meant) - 1}
	}
	for i := range p.figure.Things {
		t := touch{Thing: &p.figure.Things[i]}
		if t.Kind.Carried() || len(t.Parts) == 0 {
			p.touch = append(p.touch, t)
			continue
		}
		of, sides := t.Parts[0].Side()
		at := rounds(&first, of, sides[0])[0].at
		was := p.was(t.Kind)
		switch {
		case was != nil:
			t.x, t.y, t.side = was.x, was.y, was.side
		case t.Kind == program.ThingWall:
			t.x, t.side = free(at.X), facing(&first, of, at)
		default:
			t.y = p.height(&t, at, free)
			if t.Kind.Gripped() {
				t.x = free(at.X)
			}
		}
		if t.Kind == program.ThingWall {
			p.liesOn(&t)
		}
		p.touch = append(p.touch, t)
	}
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
func (p *placing) height(t *touch, at space, free func(float64) level) level {
	switch high, usual := usualHigh[t.Kind]; {
	case t.Kind == program.ThingFloor, (t.Kind == program.ThingBar || t.Kind == program.ThingRings) && !p.onFloor():
		return level{known: true}
	case t.High > 0:
		return level{known: true, at: t.High * p.scale()}
	case usual:
		return level{known: true, at: high}
	}
	return free(math.Max(at.Y, .1))
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
			case program.PartHands:
				p.lies[i] = space{X: t.side}
			case program.PartToes:
				p.toes[i] = space{X: t.side}
			}
		}
	}
}

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

// touches reports whether a part of a side touches a thing of the kind.
func (p *placing) touches(kind program.ThingKind, part program.Part, side int) bool {
	return slices.ContainsFunc(p.figure.Things, func(t program.Thing) bool {
		return t.Kind == kind && slices.ContainsFunc(t.Parts, func(o program.Part) bool {
			of, sides := o.Side()
			return of == part && slices.Contains(sides, side)
		})
	})
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
		p.placed.Circles = append(p.placed.Circles, middle(&p.placed, of, side))
	})
	if p.before == nil {
		return
	}
	each(p.figure.Moves, func(of program.Part, side int) {
		p.placed.Arrows = append(p.placed.Arrows, program.Arrow{From: middle(&p.before.placed, of, side), To: middle(&p.placed, of, side)})
	})
}

// middle is where an arrow points to for a part.
func middle(p *program.Placed, of program.Part, side int) space {
	if of == program.PartHands || of == program.PartFists {
		return p.Arms[side].Grip
	}
	return rounds(p, of, side)[0].at
}
