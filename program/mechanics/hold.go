package mechanics

import "math"

// Support is how the hands carry the body. The zero value is the floor: flat
// hands, fingers ahead.
type Support struct {
	Grip bool // a bar or parallettes: the hands carry at their own centre of mass
	Hang bool // the bar is above and the body hangs from it; implies Grip

	// Ahead is how far ahead of the wrist flat hands carry, in m. Zero means
	// 0.05, under the base of the fingers (common practice).
	Ahead   float64
	AtWrist bool // the hands are points at the wrist, as simple textbook models have it

	// Height of the support above the floor, in m: of the grips, or of the bar in a
	// hang. Zero means that hands and feet share a floor.
	Height float64
	Clear  bool // knees and toes have to clear that floor; Solve raises the hips for it
}

const fingerBase = 0.05 // m ahead of the wrist, common practice

// ahead returns the distance from wrist to support, m.
func (s Support) ahead() float64 {
	switch {
	case s.Grip || s.Hang || s.AtWrist:
		return 0
	case s.Ahead == 0:
		return fingerBase
	}
	return s.Ahead
}

// Hold is a pose in balance.
type Hold struct {
	Torque        float64 // N·m about the shoulder line, both shoulders; negative where the bands do more than all
	Lean          float64 // rad, the arm off the vertical; positive: shoulder ahead of the hand
	ShoulderAhead float64 // m, shoulder ahead of the wrist (floor) or of the grip
	HipHeight     float64 // m above the hands' support; negative in a hang
	WristAngle    float64 // rad of extension: π/2 + Lean for flat hands, 0 for a grip

	Help           float64 // N, vertical part of the bands' pull
	BandLength     float64 // m, anchor to where they act, less the unstretched strap
	BandAngle      float64 // rad off the vertical, never negative
	Strain         float64 // largest stretch of a band, length / rest − 1; 0 when slack
	BeyondMeasured bool    // a band is longer than any length it was measured at

	// HandsAheadOfAnchor is how far the support lies ahead of the spot under the
	// anchor, m; without a rig, of the spot under the hip.
	HandsAheadOfAnchor float64

	// Unbalanced says that no lean brings this body into balance: the arms are
	// too short for it, or the bands lift it off. Lean is then the limit, ±π/2
	// from the vertical, and only Torque of a free hold means anything.
	Unbalanced bool

	// Pitch of the body's axis, rad: the pose's own, or more where knees or toes
	// would not clear the floor.
	Pitch float64

	Joints Joints
}

// Joints are places in the side view; the origin is the hands' support.
type Joints struct {
	Fingers, Wrist, Elbow, Shoulder Point
	C7, Head, Crown, Hip            Point // Head is the head's centre of mass
	Knees, Ankles, Toes             [2]Point
	CoM                             Point // of the whole body
	Anchor                          Point // of the bands; the hip without a rig
	Attached                        Point // where the bands act; the hip without a rig
}

// Solve finds the balance of body b in pose p on support s. Rig is nil for a
// free hold. Where s.Clear and knees or toes would not clear the floor, the hips
// rise: the body's axis is pitched until they do. It allocates nothing.
func Solve(b Body, p Pose, s Support, rig *Rig) Hold {
	h := solve(&b, &p, s, rig)
	if !s.Clear || s.Hang || h.clears(&b, s) >= 0 {
		return h
	}
	level := p.Pitch
	p.Pitch, _ = root(func(pitch float64) float64 {
		p.Pitch = pitch
		h = solve(&b, &p, s, rig)
		return h.clears(&b, s)
	}, level, max(level, steepest))
	return solve(&b, &p, s, rig)
}

const (
	floorGap  = 0.02        // m that stay free under knees and toes (our judgement)
	kneeDepth = 0.024       // from a bent knee's joint down to its skin, share of stature (common practice: girth 37 cm at 1.74 m)
	steepest  = math.Pi / 4 // as far as an axis is pitched for the floor; then the pose is another one (our judgement)
)

// clears is by how much, in m, the lowest of knees and toes is higher than it has to be.
func (h *Hold) clears(b *Body, s Support) float64 {
	j := &h.Joints
	knee := min(j.Knees[0].Y, j.Knees[1].Y) - kneeDepth*b.Height
	return min(knee, j.Toes[0].Y, j.Toes[1].Y) + s.Height - floorGap
}

func solve(b *Body, p *Pose, s Support, rig *Rig) Hold {
	c := newChain(b, p, s)
	lean, ok := c.freeLean()
	if rig != nil && (len(rig.Bands) > 0 || rig.Pull > 0) {
		lean, ok = c.rigLean(rig)
	}
	h := c.hold(lean, ok, rig)
	h.Pitch = p.Pitch
	return h
}

// chain is a posed body on its arms, ready to lean.
type chain struct {
	body  *Body
	shape shape
	s     Support
	up    float64 // +1 supported from below, −1 hanging
	ahead float64 // m, support ahead of the wrist (floor)
	arm   float64 // m, shoulder to grip, or to wrist

	// Σ mass × X of the whole body about the support is fixed + swing·sin(lean).
	fixed, swing float64 // kg·m
}

func newChain(b *Body, p *Pose, s Support) chain {
	s.Grip = s.Grip || s.Hang
	c := chain{body: b, s: s, up: 1, ahead: s.ahead(), shape: b.shapeOf(p, s.Hang)}
	if s.Hang {
		c.up = -1
	}
	c.arm = b.UpperArm.Length + b.Forearm.Length
	if s.Grip {
		c.arm += b.Hand.CoM
	}
	arms := 2 * (b.UpperArm.Mass + b.Forearm.Mass)
	c.swing = c.shape.mass*c.arm +
		2*b.UpperArm.Mass*(c.arm-b.UpperArm.CoM) +
		2*b.Forearm.Mass*(c.arm-b.UpperArm.Length-b.Forearm.CoM)
	c.fixed = c.shape.moment.X - (c.shape.mass+arms)*c.ahead
	c.fixed += 2 * b.Hand.Mass * c.handCoM()
	return c
}

// handCoM is how far a hand's centre of mass lies ahead of the support, m.
func (c *chain) handCoM() float64 {
	if c.s.Grip || c.s.AtWrist {
		return 0
	}
	return c.body.Hand.CoM - c.ahead
}

// freeLean returns the lean at which gravity alone balances.
func (c *chain) freeLean() (lean float64, ok bool) {
	sin := -c.fixed / c.swing
	if !(math.Abs(sin) <= 1) {
		return math.Copysign(math.Pi/2, sin), false
	}
	return math.Asin(sin), true
}

// shoulder returns the shoulder's place at a lean.
func (c *chain) shoulder(lean float64) Point {
	sin, cos := math.Sincos(lean)
	return Point{c.arm*sin - c.ahead, c.up * c.arm * cos}
}

// rigLean returns the lean at which gravity and the bands balance. Up to half of
// body weight there is only one.
func (c *chain) rigLean(rig *Rig) (lean float64, ok bool) {
	return root(func(lean float64) float64 { return c.turning(rig, lean) }, -math.Pi/2, math.Pi/2)
}

// turning is the moment of gravity and the bands about the support, N·m,
// positive where it turns the head down.
func (c *chain) turning(rig *Rig, lean float64) float64 {
	at := c.shoulder(lean).plus(c.shape.attached(rig.At))
	force := rig.pull(at, c.s).force
	return Gravity*(c.fixed+c.swing*math.Sin(lean)) - at.X*force.Y + at.Y*force.X
}

// hold fills in the result at a lean.
func (c *chain) hold(lean float64, ok bool, rig *Rig) Hold {
	j := c.joints(lean)
	h := Hold{
		Torque:        -Gravity * c.shape.moment.X,
		Lean:          lean,
		ShoulderAhead: j.Shoulder.X + c.ahead,
		HipHeight:     j.Hip.Y,
		Unbalanced:    !ok,
	}
	if !c.s.Grip {
		h.WristAngle = math.Pi/2 + lean
	}
	if rig != nil {
		h.pulledBy(rig, c, &j)
	}
	h.HandsAheadOfAnchor = -j.Anchor.X
	h.Joints = j
	return h
}

// pulledBy adds the bands.
func (h *Hold) pulledBy(rig *Rig, c *chain, j *Joints) {
	at := c.shape.attached(rig.At)
	j.Attached = j.Shoulder.plus(at)
	p := rig.pull(j.Attached, c.s)
	h.Torque += p.force.Y*at.X - p.force.X*at.Y
	h.Help = p.force.Y
	h.BandLength = p.length
	h.BandAngle = p.angle
	h.Strain, h.BeyondMeasured = rig.stretch(p.length)
	j.Anchor = p.anchor
}

func (c *chain) joints(lean float64) Joints {
	b, sh := c.body, &c.shape
	shoulder := c.shoulder(lean)
	sin, cos := math.Sincos(lean)
	down := Point{-sin, -c.up * cos} // along the arm, toward the hand
	at := func(p Point) Point { return shoulder.plus(p) }
	j := Joints{
		Shoulder: shoulder,
		Elbow:    shoulder.along(down, b.UpperArm.Length),
		Wrist:    shoulder.along(down, b.UpperArm.Length+b.Forearm.Length),
		C7:       at(sh.c7), Head: at(sh.head), Crown: at(sh.crown), Hip: at(sh.hip),
		CoM: Point{}, Anchor: at(sh.hip), Attached: at(sh.hip),
	}
	j.Fingers = Point{j.Wrist.X + b.FingerTip, j.Wrist.Y}
	if c.s.Grip {
		j.Fingers = Point{}
	}
	for i, l := range sh.legs {
		j.Knees[i], j.Ankles[i], j.Toes[i] = at(l.knee), at(l.ankle), at(l.toe)
	}
	whole := Point{}.along(shoulder, sh.mass).plus(sh.moment).
		along(shoulder.along(down, b.UpperArm.CoM), 2*b.UpperArm.Mass).
		along(j.Elbow.along(down, b.Forearm.CoM), 2*b.Forearm.Mass).
		along(Point{X: c.handCoM()}, 2*b.Hand.Mass)
	j.CoM = whole.times(1 / b.segmentMass())
	return j
}
