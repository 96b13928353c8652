package mechanics

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	_ "gatepost/program/steady"
)

// Source: Treloar 1944, Trans Faraday Soc 40:59–70, vulcanised natural rubber in
// simple tension, stretch and engineering stress in kgf/cm², two independent
// digitisations. Below a stretch of 1.05 the digitisations do not agree.
var (
	treloarFirst = []Pull{
		{1.125, 1.37}, {1.24, 2.30}, {1.39, 3.23}, {1.585, 4.16}, {1.9, 5.10},
	}
	treloarSecond = []Pull{
		{1.1267, 1.2927}, {1.2437, 2.2745}, {1.3946, 3.185}, {1.6039, 4.1203}, {1.8861, 5.1043},
	}
)

// The curve is to follow the rubber within 3 % up to a stretch of 2. Below 1.2
// the digitisations differ from each other by up to 7 %, so the second one's
// first point may be 5 % off.
func TestFitAgreesWithTreloarsRubber(t *testing.T) {
	for _, c := range []struct {
		name   string
		pulls  []Pull
		first  float64
		others float64
	}{
		{"first", treloarFirst, 0.03, 0.03},
		{"second", treloarSecond, 0.05, 0.03},
	} {
		_, residuals, err := FitCurve(1, c.pulls)
		if err != nil {
			t.Fatal(err)
		}
		for i, r := range residuals {
			within := c.others
			if i == 0 {
				within = c.first
			}
			if r.Pull != i || math.Abs(r.Share) > within {
				t.Errorf("%s digitisation, stretch %.3f: off by %.1f %%", c.name, c.pulls[i].Length, 100*r.Share)
			}
		}
	}
}

// Source: the same data fitted elsewhere with a general least-squares library:
// C1 = 0.0828 MPa, C2 = 0.1372 MPa; A and B are twice that.
func TestFitFindsTreloarsConstants(t *testing.T) {
	const mega = 0.0980665 // MPa in a kgf/cm²
	withStart := append([]Pull{{1.02, 0.26}}, treloarFirst...)
	c, _, err := FitCurve(1, withStart)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "C1, MPa", c.A*mega/2, 0.0828, 0.0002)
	near(t, "C2, MPa", c.B*mega/2, 0.1372, 0.0002)
}

// Source: Mooney–Rivlin and neo-Hookean stresses computed by hand from the
// textbook formulas (Treloar 1975): shear modulus 0.4 MPa, and C1 0.15, C2 0.05 MPa.
// A cross-section of 1 mm² makes MPa into N.
func TestForceOfTextbookRubber(t *testing.T) {
	neo := Curve{A: 0.4, Rest: 2}
	mooney := Curve{A: 0.30, B: 0.10, Rest: 2}
	for _, c := range []struct{ stretch, neo, mooney float64 }{
		{1.25, 0.2440, 0.2318}, {1.5, 0.4222, 0.3870}, {2, 0.7000, 0.6125},
		{2.5, 0.9360, 0.7956}, {3, 1.1556, 0.9630}, {3.5, 1.3673, 1.1232},
	} {
		near(t, "neo-Hookean", neo.Force(2*c.stretch), c.neo, 0.00006)
		near(t, "Mooney–Rivlin", mooney.Force(2*c.stretch), c.mooney, 0.00006)
	}
}

func TestSlackBandsDoNotPush(t *testing.T) {
	c := Curve{A: 20, B: 30, Rest: 1}
	for _, length := range []float64{1, 0.5, 0, -1, math.Inf(-1), math.NaN()} {
		if f := c.Force(length); f != 0 {
			t.Errorf("Force(%v) = %v", length, f)
		}
	}
}

func TestForceGrowsWithLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCurve(t)
		length := rapid.Float64Range(0.5, 3).Draw(t, "length")
		longer := length + rapid.Float64Range(0.001, 1).Draw(t, "more")
		if c.Force(longer) < c.Force(length) {
			t.Errorf("%+v pulls %v at %v and %v at %v", c, c.Force(length), length, c.Force(longer), longer)
		}
	})
}

func TestFitFindsTheCurveItsPullsCameFrom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCurve(t)
		var pulls []Pull
		for _, stretch := range []float64{1.3, 1.6, 1.9} {
			pulls = append(pulls, Pull{stretch * c.Rest, c.Force(stretch * c.Rest)})
		}
		got, residuals, err := FitCurve(c.Rest, pulls)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(got.A-c.A) > 1e-6 || math.Abs(got.B-c.B) > 1e-6 || got.Longest != pulls[2].Length {
			t.Errorf("fitted %+v, pulled from %+v", got, c)
		}
		for _, r := range residuals {
			if math.Abs(r.Share) > 1e-9 {
				t.Errorf("residual %+v", r)
			}
		}
	})
}

// The conditions of Karush, Kuhn and Tucker for least squares with constants
// that may not be negative: no slope where a constant is free, none downhill
// where it is zero.
func TestFitIsTheBestWithoutNegativeConstants(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var pulls []Pull
		for i := range rapid.IntRange(2, 6).Draw(t, "n") {
			pulls = append(pulls, Pull{1.2 + 0.2*float64(i), rapid.Float64Range(1, 100).Draw(t, "force")})
		}
		c, _, err := FitCurve(1, pulls)
		if err != nil {
			t.Fatal(err)
		}
		var slopeA, slopeB float64
		for _, p := range pulls {
			u := p.Length - 1/(p.Length*p.Length)
			miss := c.Force(p.Length) - p.Force
			slopeA, slopeB = slopeA+miss*u, slopeB+miss*u/p.Length
		}
		for _, s := range []struct{ constant, slope float64 }{{c.A, slopeA}, {c.B, slopeB}} {
			if s.constant < 0 || s.slope < -1e-6 || s.constant > 0 && s.slope > 1e-6 {
				t.Errorf("constant %v with slope %v for %v", s.constant, s.slope, pulls)
			}
		}
	})
}

func TestFitRefuses(t *testing.T) {
	for _, c := range []struct {
		rest  float64
		pulls []Pull
		want  error
	}{
		{1, nil, ErrTooFewPulls},
		{1, []Pull{{1.3, 20}}, ErrTooFewPulls},
		{1, []Pull{{1.3, 20}, {1.3, 21}}, ErrTooFewPulls},
		{1, []Pull{{1.3, 20}, {1.301, 21}}, ErrTooFewPulls},
		{1, []Pull{{0.9, 20}, {1.3, 21}}, ErrBadPull},
		{1, []Pull{{1.3, 0}, {1.6, 21}}, ErrBadPull},
		{0, []Pull{{1.3, 20}, {1.6, 21}}, ErrBadPull},
		{1, []Pull{{1.3, math.NaN()}, {1.6, 21}}, ErrBadPull},
		{1, []Pull{{1.3, 20}, {math.Inf(1), 21}}, ErrBadPull},
	} {
		if _, _, err := FitCurve(c.rest, c.pulls); !errors.Is(err, c.want) {
			t.Errorf("FitCurve(%v, %v): error %v, want %v", c.rest, c.pulls, err, c.want)
		}
	}
}

// A reading error of ten per cent shows at the reading that has it.
func TestResidualNamesTheOddReading(t *testing.T) {
	c := Curve{A: 20, B: 25, Rest: 1}
	pulls := []Pull{}
	for _, length := range []float64{1.3, 1.5, 1.7, 1.9, 2.1} {
		pulls = append(pulls, Pull{length, c.Force(length)})
	}
	pulls[2].Force *= 0.75
	_, residuals, _ := FitCurve(1, pulls)
	worst := residuals[0]
	for _, r := range residuals {
		if math.Abs(r.Share) > math.Abs(worst.Share) {
			worst = r
		}
	}
	if worst.Pull != 2 || worst.Share < 0.10 {
		t.Errorf("worst residual %+v, want reading 2, curve above it", worst)
	}
}

// anyCurve draws a band between a thin and a very strong one.
func anyCurve(t *rapid.T) Curve {
	return Curve{
		A:    rapid.Float64Range(0, 80).Draw(t, "A"),
		B:    rapid.Float64Range(1, 120).Draw(t, "B"),
		Rest: rapid.Float64Range(0.5, 1.2).Draw(t, "rest"),
	}
}
