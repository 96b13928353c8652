package strength

import "math"

// density is the standard normal density φ.
func density(z float64) float64 { return math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) }

// below is the standard normal distribution function Φ.
func below(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }

// quantile is Φ⁻¹; p is kept within 1e-12 of its ends so that it stays finite.
func quantile(p float64) float64 {
	if !(p > 1e-12) {
		p = 1e-12
	}
	return math.Sqrt2 * math.Erfinv(2*math.Min(p, 1-1e-12)-1)
}

// mills is φ(a)/Φ(a), by its asymptotic series where Φ runs out of digits
// (Abramowitz and Stegun 26.2.12).
func mills(a float64) float64 {
	if a < -10 {
		r := 1 / (a * a)
		return -a / (1 - r*(1-r*(3-15*r)))
	}
	return density(a) / below(a)
}

// truncated gives the mean and the variance of a standard normal value known to
// lie between a and b, and the chance Z of lying there. With Z = 0 the moments
// mean nothing.
func truncated(a, b float64) (mean, variance, z float64) {
	z = below(b) - below(a)
	if a > 0 {
		z = below(-a) - below(-b)
	}
	if !(z > 0) {
		return 0, 1, 0
	}
	fa, fb := density(a), density(b)
	mean = (fa - fb) / z
	variance = 1 + (a*fa-b*fb)/z - mean*mean
	return mean, math.Min(math.Max(variance, 0), 1), z
}
