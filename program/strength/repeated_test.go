package strength

import (
	"math"
	"testing"
)

// Epley's equation, load over the most that is lifted once: 1/(1 + n/30) (Boyd Epley 1985,
// from memory), for 1 to 16 repetitions of three seconds (common practice).
func TestRepetitionsFollowEpley(t *testing.T) {
	for n, want := range map[int]float64{1: .968, 3: .909, 5: .857, 8: .789, 10: .750, 12: .714, 16: .652} {
		if got := Share(float64(3*n), RepeatedK); math.Abs(got-want) > .012 {
			t.Errorf("%d repetitions: %.3f, Epley %.3f", n, got, want)
		}
	}
	if k := Prior(6).Repeating().K(); k != RepeatedK {
		t.Errorf("a press is planned with %.2f", k)
	}
}
