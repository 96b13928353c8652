package mechanics

import "math"

// Leg is one leg's joint angles, in radians.
type Leg struct {
	Hip       float64 // flexion: 0 straight, π/2 thigh square to the trunk
	Abduction float64 // out to the side; the side view shortens by its cosine
	Knee      float64 // flexion: 0 straight
}

// Pose is the body's shape in the side view. The zero value is the full lay:
// horizontal, straight, legs together.
type Pose struct {
	Legs       [2]Leg
	Rounding   float64 // fraction by which a rounded spine shortens the trunk
	Depression float64 // m, how far the shoulders move toward the hips
	Pitch      float64 // rad, body axis against the horizontal; positive lifts the feet
}

// Both returns two equal legs.
func Both(l Leg) [2]Leg { return [2]Leg{l, l} }

// shape is a posed body without arms, relative to the shoulder.
type shape struct {
	c7, head, crown, hip Point
	legs                 [2]limb
	moment               Point   // Σ mass × place, kg·m
	mass                 float64 // kg
}

type limb struct{ knee, ankle, toe Point }

// frame holds the side view's directions: tail points from shoulder to hip, belly
// square to it, to the side the hips flex.
type frame struct{ tail, belly Point }

// frameOf returns the directions at a pitch. Supported on the hands the belly
// faces down, hanging under them it faces up.
func frameOf(pitch float64, hang bool) frame {
	sin, cos := math.Sincos(pitch)
	f := frame{tail: Point{-cos, sin}, belly: Point{-sin, -cos}}
	if hang {
		f.belly = Point{sin, cos}
	}
	return f
}

// toward returns the direction flexed by an angle from the body's axis.
func (f frame) toward(angle float64) Point {
	sin, cos := math.Sincos(angle)
	return Point{f.tail.X*cos + f.belly.X*sin, f.tail.Y*cos + f.belly.Y*sin}
}

// shapeOf lays the body out in a pose.
func (b *Body) shapeOf(p *Pose, hang bool) shape {
	f := frameOf(p.Pitch, hang)
	trunk := 1 - p.Rounding
	s := shape{
		c7:    Point{}.along(f.tail, -b.Neck),
		head:  Point{}.along(f.tail, -b.Neck-b.Head.CoM),
		crown: Point{}.along(f.tail, -b.Neck-b.Head.Length),
		hip:   Point{}.along(f.tail, b.Trunk.Length*trunk-p.Depression),
	}
	s.add(b.Head.Mass, s.head)
	s.add(b.Trunk.Mass, Point{}.along(f.tail, b.Trunk.CoM*trunk-p.Depression))
	for i, leg := range p.Legs {
		s.legs[i] = s.addLeg(b, f, leg)
	}
	return s
}

// addLeg hangs one leg on the hip. The foot is pointed, in line with the shank.
func (s *shape) addLeg(b *Body, f frame, l Leg) limb {
	thigh := f.toward(l.Hip).times(math.Cos(l.Abduction))
	shank := f.toward(l.Hip - l.Knee).times(math.Cos(l.Abduction))
	knee := s.hip.along(thigh, b.Thigh.Length)
	ankle := knee.along(shank, b.Shank.Length)
	s.add(b.Thigh.Mass, s.hip.along(thigh, b.Thigh.CoM))
	s.add(b.Shank.Mass, knee.along(shank, b.Shank.CoM))
	s.add(b.Foot.Mass, ankle.along(shank, b.Foot.CoM))
	return limb{knee: knee, ankle: ankle, toe: ankle.along(shank, b.Foot.Length)}
}

func (s *shape) add(mass float64, at Point) {
	s.mass += mass
	s.moment.X += mass * at.X
	s.moment.Y += mass * at.Y
}
