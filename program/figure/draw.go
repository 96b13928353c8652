package figure

import "gatepost/program"

// Options say how a figure is drawn. The zero value marks hands and centre of
// mass, shows a band up to its anchor and says nothing.
type Options struct {
	Help  string  // beside the band, "6.5 kg"
	Hands string  // below the hands
	Mass  string  // beside the centre of mass
	Toes  string  // below the toes where something carries them, "12 kg"
	Text  float64 // m of the figure, type size of these; 0: left to the ink

	Plain    bool    // without marks and plumb line
	Headroom float64 // m of band drawn above the body, or the bar, then a break; 0: to its anchor
}

// Draw is a stance as a drawing. A stance that is not Drawn gives an empty one.
func Draw(s program.Stance, o Options) Drawing {
	var d Drawing
	if !s.Drawn() {
		return d
	}
	b := bodyOf(&s)
	b.ground(&d)
	b.bandBehind(&d, o)
	b.trunkAndLegs(&d)
	if !o.Plain {
		b.plumb(&d)
	}
	d.add(Shape{Ink: Near, Paths: b.arm(Point{}), Edge: b.flesh(edge)})
	b.floor(&d)
	b.bandBefore(&d, o)
	if !o.Plain {
		b.marks(&d)
	}
	b.words(&d, o)
	return d
}

// body is a stance with the directions its flesh is laid along.
type body struct {
	*program.Stance
	near, far int     // legs by how they are drawn
	tail      Point   // from the shoulder to the hip
	belly     Point   // square to it
	turn      float64 // +1 where belly is tail turned counter-clockwise, else −1
	placed    bool    // the joints are those of a figure, which says itself how the head is held
	curve     float64 // rad, of a placed back
}

func bodyOf(s *program.Stance) body {
	b := body{Stance: s, far: 1, tail: unit(minus(s.Hip, s.Shoulder)), turn: 1}
	if s.Hang {
		b.turn = -1
	}
	b.belly = b.front(b.tail)
	// The leg that reaches further is the near one: the dark line is the long one.
	if distance(s.Hip, s.Toes[1]) > distance(s.Hip, s.Toes[0])+0.01 {
		b.near, b.far = 1, 0
	}
	return b
}

// front is the direction a body part's front faces, for a part that runs along u.
func (b *body) front(u Point) Point { return times(b.turn, turned(u)) }

// flesh is a thickness: a share of stature as metres.
func (b *body) flesh(share float64) float64 { return share * b.Height }

// edge is how much paper is left free around a near limb, share of stature (our
// judgement: parts a crossing thigh from the trunk at 25 mm of width).
const edge = 0.006

// trunkAndLegs are drawn from the far side to the near one, the far arm first.
func (b *body) trunkAndLegs(d *Drawing) {
	far := append(b.leg(b.far, true), b.arm(Point{X: b.flesh(armsApart)})...)
	d.add(Shape{Ink: Far, Paths: far})
	free := b.flesh(edge)
	d.add(Shape{Ink: Near, Paths: b.trunk(), Edge: free})
	d.add(Shape{Ink: Near, Paths: b.leg(b.near, false), Edge: free})
	d.add(Shape{Ink: Near, Paths: b.seat()})
}
