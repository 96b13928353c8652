package mechanics

import (
	"math"
	"testing"
)

// Source: Kepler's equation E − e sin E = M for e = 0.1, M = 5°, solved as
// E = 5.554589° in Meeus, Astronomical Algorithms, example 30.a (from memory).
func TestRootOfKeplersEquation(t *testing.T) {
	calls := 0
	e, ok := root(func(x float64) float64 { calls++; return x - 0.1*math.Sin(x) - 5*degree }, -math.Pi/2, math.Pi/2)
	if !ok || calls > 12 {
		t.Errorf("found %v after %d calls", ok, calls)
	}
	near(t, "E°", e/degree, 5.554589, 5e-7)
}

// Plain false position creeps along curves like these from one side only.
func TestRootClosesBothEnds(t *testing.T) {
	fifth := func(x float64) float64 { return x * x * x * x * x }
	for _, c := range []struct {
		f    func(float64) float64
		want float64
	}{
		{func(x float64) float64 { return fifth(x) - 0.01 }, math.Pow(0.01, 0.2)},
		{func(x float64) float64 { return 0.01 - fifth(2-x) }, 2 - math.Pow(0.01, 0.2)},
	} {
		calls := 0
		x, ok := root(func(x float64) float64 { calls++; return c.f(x) }, 0, 2)
		if !ok || calls > 40 {
			t.Errorf("found %v after %d calls", ok, calls)
		}
		near(t, "x", x, c.want, 1e-10)
	}
}

func TestRootWithoutChangeOfSign(t *testing.T) {
	for _, c := range []struct{ add, want float64 }{{3, -1}, {-3, 1}} {
		if x, ok := root(func(x float64) float64 { return x + c.add }, -1, 1); ok || x != c.want {
			t.Errorf("x %+g: root %v, found %v", c.add, x, ok)
		}
	}
}
