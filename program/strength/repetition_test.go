package strength

import (
	"math"
	"testing"
)

// Repetition-maximum equations as listed in Biol Sport (PMC4042664, Table 1):
// one-repetition maximum over the load lifted r times.
var equations = []struct {
	name string
	f    func(r float64) float64
	at   [4]float64 // at 1, 5, 10 and 15 repetitions, computed in another program
}{
	{"Epley", func(r float64) float64 { return 1 + r/30 }, [4]float64{1.0333, 1.1667, 1.3333, 1.5}},
	{"Brzycki", func(r float64) float64 { return 36 / (37 - r) }, [4]float64{1, 1.1250, 1.3333, 1.6364}},
	{"Lombardi", func(r float64) float64 { return math.Pow(r, .10) }, [4]float64{1, 1.1746, 1.2589, 1.3110}},
	{"Mayhew", func(r float64) float64 { return 100 / (52.2 + 41.9*math.Exp(-.055*r)) }, [4]float64{1.0886, 1.1901, 1.3093, 1.4172}},
	{"O'Conner", func(r float64) float64 { return 1 + .025*r }, [4]float64{1.025, 1.125, 1.25, 1.375}},
	{"Wathan", func(r float64) float64 { return 100 / (48.8 + 53.8*math.Exp(-.075*r)) }, [4]float64{1.0130, 1.1658, 1.3475, 1.5091}},
	{"Lander", func(r float64) float64 { return 100 / (101.3 - 2.67123*r) }, [4]float64{1.0139, 1.1371, 1.3407, 1.6331}},
}

func TestOneRepetitionAgainstTheOtherEquations(t *testing.T) {
	for _, e := range equations {
		for i, r := range []float64{1, 5, 10, 15} {
			near(t, e.name, e.f(r), e.at[i], 0.00006)
		}
		for r := 2.0; r <= 10; r++ {
			near(t, "Epley against "+e.name, OneRepetition(1, r), e.f(r), 0.085)
		}
	}
}

// The chart of the National Strength and Conditioning Association: per cent of
// the maximum at so many repetitions (12 from memory).
func TestOneRepetitionAgainstTheChart(t *testing.T) {
	for r, percent := range map[float64]float64{
		1: 100, 2: 95, 3: 93, 4: 90, 5: 87, 6: 85, 7: 83, 8: 80, 9: 77, 10: 75, 11: 70, 12: 67, 15: 65,
	} {
		near(t, "share", 1/OneRepetition(1, r), percent/100, 0.045)
	}
}

func TestRepetitionsAtTheEdges(t *testing.T) {
	near(t, "one repetition", OneRepetition(50, 1), 50, 0)
	near(t, "none", OneRepetition(50, math.NaN()), 50, 0)
	near(t, "forty count as fifteen", OneRepetition(50, 40), 75, 1e-12)
	near(t, "five repetitions", HoldOf(5), 15, 0)
	near(t, "none", HoldOf(0), 0, 0)
}
