package figure

import (
	"math"
	"testing"

	"gatepost/program"
)

// Source: an arc's rise and chord by textbook trigonometry: for a chord that is
// a share r shorter than its arc, sin(φ)/φ = 1−r, rise = chord·(1−cos φ)/(2 sin φ).
// The roundest back of the road map has r = 0.08, φ = 0.7.
func TestRoundBackRisesLikeAnArc(t *testing.T) {
	for _, phi := range []float64{0.2, 0.4, 0.6, 0.7} {
		b := body{Stance: &program.Stance{Hip: Point{X: -0.5}, Rounding: 1 - math.Sin(phi)/phi}}
		want := 0.5 * (1 - math.Cos(phi)) / (2 * math.Sin(phi))
		if got := b.bulge(0.5); math.Abs(got/want-1) > 0.06 {
			t.Errorf("φ %v: rise %.4f m, the arc's %.4f m", phi, got, want)
		}
	}
	if b := (body{Stance: &program.Stance{Hip: Point{X: -0.5}}}); b.bulge(0.5) != 0 {
		t.Error("a straight back bulges")
	}
}

// A disc's boundary keeps its distance within 0.03 % (published with the
// approximation), a smooth curve passes through its points, and outlines all
// turn the same way.
func TestCurves(t *testing.T) {
	for _, c := range disc(Point{}, 1).Curves {
		from := turned(turned(turned(c.To)))
		middle := times(1.0/8, plus(plus(from, times(3, c.A)), plus(times(3, c.B), c.To)))
		if r := math.Hypot(middle.X, middle.Y); math.Abs(r-1) > 0.0003 {
			t.Errorf("radius %v in the middle of a quarter", r)
		}
	}
	corners := []Point{{X: 0}, {X: 1}, {X: 1, Y: 1}, {Y: 1}}
	for i, c := range round(corners).Curves {
		if c.To != corners[(i+1)%4] {
			t.Errorf("piece %d ends at %v", i, c.To)
		}
	}
	for _, p := range []Path{polygon(corners...), polygon(corners[3], corners[2], corners[1], corners[0])} {
		q := counterClockwise(p)
		a, b, c := q.From, q.Curves[0].To, q.Curves[1].To
		if (b.X-a.X)*(c.Y-b.Y)-(b.Y-a.Y)*(c.X-b.X) <= 0 {
			t.Errorf("%v turns clockwise", q)
		}
	}
}
