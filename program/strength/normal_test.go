package strength

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

func TestNormalAgainstGonum(t *testing.T) {
	for z := -8.0; z <= 8; z += 0.25 {
		near(t, "density", density(z), distuv.UnitNormal.Prob(z), 1e-15)
		near(t, "below", below(z), distuv.UnitNormal.CDF(z), 1e-15)
	}
	for _, p := range []float64{1e-9, 0.1, 0.3, 0.5, 0.9, 0.999} {
		near(t, "quantile", quantile(p), distuv.UnitNormal.Quantile(p), 1e-7)
	}
	near(t, "80 % range", quantile(0.9), 1.2816, 5e-5)
	for _, p := range []float64{-1, 0, 1, 2, math.NaN()} {
		if q := quantile(p); math.IsNaN(q) || math.IsInf(q, 0) {
			t.Errorf("quantile(%g) = %g", p, q)
		}
	}
}

// Values to nine digits from another program; the series meets the quotient at −10.
func TestMills(t *testing.T) {
	near(t, "φ/Φ(−5)", mills(-5), 5.18650397, 5e-9)
	near(t, "φ/Φ(−12)", mills(-12), 12.08221697, 5e-8)
	near(t, "φ/Φ(0.5)", mills(0.5), 0.50916043, 5e-9)
	near(t, "step at −10", mills(-10-1e-9), mills(-10), 2e-5)
	near(t, "far out", mills(-1e6), 1e6, 1e-3)
}

// Moments of a cut normal against plain summation.
func TestTruncated(t *testing.T) {
	for _, ends := range [][2]float64{{-1, 1}, {-0.2, 2.5}, {1.5, 3}, {-4, -2}, {3, 3.2}, {5, 7}} {
		var mass, first, second float64
		const n = 20000
		for i := range n {
			z := ends[0] + (ends[1]-ends[0])*(float64(i)+0.5)/n
			d := density(z) * (ends[1] - ends[0]) / n
			mass, first, second = mass+d, first+d*z, second+d*z*z
		}
		mean, variance, z := truncated(ends[0], ends[1])
		near(t, "chance", z/mass, 1, 1e-7)
		near(t, "mean", mean, first/mass, 1e-7)
		near(t, "variance", variance, second/mass-(first/mass)*(first/mass), 1e-6)
	}
	if _, _, z := truncated(40, 41); z != 0 {
		t.Errorf("an impossible interval has chance %g", z)
	}
}
