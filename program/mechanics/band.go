package mechanics

import (
	"errors"
	"math"
)

// Pull is one reading of a luggage scale: the band's length in m and its pull
// in N.
type Pull struct{ Length, Force float64 }

// Curve is a rubber band's pull over its length (Mooney–Rivlin, in force rather
// than stress; Treloar 1975, The Physics of Rubber Elasticity):
//
//	F = (A + B/λ)(λ − λ⁻²), λ = length / rest
//
// A and B are the two material constants times twice the cross-section.
type Curve struct {
	A, B    float64 // N
	Rest    float64 // m, unstretched length
	Longest float64 // m, longest length measured; 0 means not known
}

// Residual is what the curve misses a reading by.
type Residual struct {
	Pull  int     // index of the reading
	Share float64 // (curve − reading) / reading
}

// Force is the band's pull in N at a length in m; 0 when slack.
func (c Curve) Force(length float64) float64 {
	if !(length > c.Rest) {
		return 0
	}
	inverse := c.Rest / length
	return (c.A + c.B*inverse) * (1/inverse - inverse*inverse)
}

// Errors of FitCurve.
var (
	ErrTooFewPulls = errors.New("mechanics: a band needs two pulls at different lengths")
	ErrBadPull     = errors.New("mechanics: a pull needs a length above the rest length and a force above zero")
)

// FitCurve fits a curve through measured pulls by least squares on the force,
// A and B not negative. Rest is the unstretched length in m. It needs pulls at
// two lengths at least half a per cent of rest apart (ErrTooFewPulls), all above
// rest (ErrBadPull). The residuals are in the order of pulls.
func FitCurve(rest float64, pulls []Pull) (Curve, []Residual, error) {
	if err := checkPulls(rest, pulls); err != nil {
		return Curve{}, nil, err
	}
	c := Curve{Rest: rest}
	c.A, c.B = leastSquares(rest, pulls)
	residuals := make([]Residual, len(pulls))
	for i, p := range pulls {
		c.Longest = max(c.Longest, p.Length)
		residuals[i] = Residual{Pull: i, Share: c.Force(p.Length)/p.Force - 1}
	}
	return c, residuals, nil
}

// closest is how near two lengths may lie, in rest lengths, and still tell two
// constants apart (our judgement: half a centimetre of a one-metre band).
const closest = 0.005

func checkPulls(rest float64, pulls []Pull) error {
	shortest, longest := math.Inf(1), 0.0
	for _, p := range pulls {
		if !(rest > 0 && p.Length > rest && p.Force > 0) || math.IsInf(p.Length, 0) || math.IsInf(p.Force, 0) {
			return ErrBadPull
		}
		shortest, longest = min(shortest, p.Length), max(longest, p.Length)
	}
	if !(longest-shortest >= closest*rest) {
		return ErrTooFewPulls
	}
	return nil
}

// leastSquares solves the two normal equations; where one constant would be
// negative, the best fit lies on the edge where it is zero.
func leastSquares(rest float64, pulls []Pull) (a, b float64) {
	var uu, uv, vv, uf, vf float64
	for _, p := range pulls {
		stretch := p.Length / rest
		u := stretch - 1/(stretch*stretch)
		v := u / stretch
		uu, uv, vv = uu+u*u, uv+u*v, vv+v*v
		uf, vf = uf+u*p.Force, vf+v*p.Force
	}
	det := uu*vv - uv*uv
	a, b = (uf*vv-vf*uv)/det, (vf*uu-uf*uv)/det
	switch {
	case a < 0:
		return 0, vf / vv
	case b < 0:
		return uf / uu, 0
	}
	return a, b
}

// Folded is the band as a loop laid double: twice the strands, half the rest
// length. It pulls twice as much at half the length.
func (c Curve) Folded() Curve {
	return Curve{A: 2 * c.A, B: 2 * c.B, Rest: c.Rest / 2, Longest: c.Longest / 2}
}
