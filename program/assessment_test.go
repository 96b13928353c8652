package program

import (
	"slices"
	"testing"
)

func TestLengthsOfStrap(t *testing.T) {
	for name, c := range map[string]struct {
		hanging Hanging
		want    []float64
	}{
		"nothing said":        {Hanging{}, []float64{0}},
		"fixed ones":          {Hanging{Drops: []float64{0.4, 0, 0.2}}, []float64{0, 0.2, 0.4}},
		"any to 20 cm":        {Hanging{Strap: Strap{To: 0.2}}, []float64{0, 0.05, 0.1, 0.15, 0.2}},
		"any, and a long one": {Hanging{Drops: []float64{0.1, 0.6}, Strap: Strap{From: 0.05, To: 0.15}}, []float64{0.05, 0.1, 0.15, 0.6}},
		"not a whole step":    {Hanging{Strap: Strap{From: 0.1, To: 0.18}}, []float64{0.1, 0.15}},
	} {
		if got := c.hanging.Lengths(); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}
