package mechanics

import "math"

// Place is where on the body bands act.
type Place int

// The zero value is the hip. Around the thighs bands act halfway to the knee (our
// judgement). Where the legs differ, they act on the one that reaches further.
const (
	AtHip Place = iota
	AtThigh
	AtAnkle
)

// Rig is how bands are hung: side by side, from an anchor to the body. In a hang
// the anchor is the bar itself, between the hands, or a beam over it: where both
// heights above the floor are given it is higher than the bar by their difference, by
// nothing else. A band that is longer than the way is slack and does nothing. A rig
// without bands only measures the way, as Hold.BandLength.
type Rig struct {
	Bands  []Curve // see Curve.Folded for loops laid double
	At     Place
	Pull   float64 // N beside those, of a band that was hung until a scale read so much; as much at any length
	Drop   float64 // m of unstretched strap between anchor and bands
	Height float64 // m, the anchor above the floor, as Support.Height is the hands'
	Offset float64 // m, anchor ahead (toward the head) of the spot above where they act; in a hang of the hands

	// Anchor is the anchor's height above the hands' support, in m, for whoever has
	// taken Support.Height off already. It counts where Height is zero, and never in a
	// hang.
	Anchor float64
}

// way leads from where the bands act to their anchor.
func (r *Rig) way(at Point, s Support) Point {
	switch {
	case s.Hang && r.Height > 0 && s.Height > 0:
		return Point{r.Offset - at.X, r.Height - s.Height - at.Y}
	case s.Hang:
		return Point{r.Offset - at.X, -at.Y}
	case r.Height > 0:
		return Point{r.Offset, r.Height - s.Height - at.Y}
	}
	return Point{r.Offset, r.Anchor - at.Y}
}

// Length is how long the bands are, in m, between their anchor and a place on a body
// on a support, less the strap.
func (r *Rig) Length(at Point, s Support) float64 { return r.pull(at, s).length }

// pull is what a rig does to a body.
type pull struct {
	anchor Point
	force  Point   // N, on the body
	length float64 // m, of the bands
	angle  float64 // rad off the vertical
}

// pull returns the rig's pull on a place of a body on a support.
func (r *Rig) pull(at Point, s Support) pull {
	way := r.way(at, s)
	distance := math.Hypot(way.X, way.Y)
	p := pull{anchor: at.plus(way), length: distance - r.Drop}
	if distance == 0 {
		return p
	}
	force := r.Pull
	for _, c := range r.Bands {
		force += c.Force(p.length)
	}
	p.force = way.times(force / distance)
	p.angle = math.Atan2(math.Abs(way.X), math.Abs(way.Y))
	return p
}

// stretch returns the largest strain at a length and whether any band is longer
// than it was measured.
func (r *Rig) stretch(length float64) (strain float64, beyond bool) {
	for _, c := range r.Bands {
		strain = max(strain, length/c.Rest-1)
		beyond = beyond || c.Longest > 0 && length > c.Longest
	}
	return strain, beyond
}

// attached is where bands act on a posed body, relative to the shoulder.
func (s *shape) attached(at Place) Point {
	place := func(l limb) Point {
		switch at {
		case AtThigh:
			return s.hip.plus(l.knee).times(0.5)
		case AtAnkle:
			return l.ankle
		}
		return s.hip
	}
	p, q := place(s.legs[0]), place(s.legs[1])
	if math.Hypot(q.X, q.Y) > math.Hypot(p.X, p.Y) {
		return q
	}
	return p
}

// Reach is how high a body standing on its soles grips a bar overhead, in m.
func (b Body) Reach() float64 {
	return b.hipHeight() + b.Trunk.Length + b.UpperArm.Length + b.Forearm.Length + b.Hand.CoM
}
