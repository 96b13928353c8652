package program

// Point is a place in the side view, in metres: X ahead, the way the head
// points, and Y up. Of a body upside down the fingers point ahead, and its back faces there.
type Point struct{ X, Y float64 }

// Stance is a pose in balance as seen from the side: where the joints of this
// body are, for whoever draws it. The origin is the point where the hands carry.
// The zero Stance is "no figure".
type Stance struct {
	Height float64 // m, stature; what thickness is drawn from

	Fingers, Wrist, Elbow, Shoulder Point
	C7, Head, Crown, Hip            Point // Head is the head's centre of mass
	Knees, Ankles, Toes             [2]Point
	KneesOut, AnklesOut, ToesOut    [2]float64 // m out to the side, which the side view does not see

	CoM      Point // centre of mass of the whole body
	Rounding float64
	Floor    float64 // m, height of the floor against the hands; never above 0
	Grip     bool    // parallettes or a bar; otherwise flat hands
	Hang     bool    // the bar is above; no floor is drawn

	Help      float64 // N, vertical, of the bands; 0: no band, and Anchor means nothing
	Anchor    Point
	Acts      Point   // where they act; the zero Point: at the hip
	Strap     float64 // m of strap between anchor and bands
	Slack     float64 // m, length of a loop that hangs from the bar about the body and lifts nothing; 0: none
	ToesCarry float64 // N that the floor, or a scale, takes off the hands; 0: the feet are free

	// Of a press, 0: none. Flat hands over a lower floor stand on blocks.
	Box  float64 // m above the floor, the top of what carries toes or knees
	Wall float64 // X of the face of a wall: behind 0 the toes are at it, ahead of 0 the heels
	Pad  float64 // m, the thickness of what lies under the head
}

// Drawn says that there is a figure.
func (s *Stance) Drawn() bool { return s.Height > 0 }
