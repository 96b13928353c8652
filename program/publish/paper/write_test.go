package paper

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// An operand is written as the standard library writes it to three places, but for zeros at
// its end and a half thousandth, which may go either way.
func TestNumber(t *testing.T) {
	for v, want := range map[float64]string{0: "0 ", 1: "1 ", -0.5: "-0.5 ", 12.25: "12.25 ", 841.8898: "841.89 ", -0.0004: "0 ", 0.001: "0.001 ", 100: "100 "} {
		if got := string(number(nil, v)); got != want {
			t.Errorf("%v: %q, want %q", v, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-2000, 2000).Draw(t, "number")
		got := string(number(nil, v))
		back, err := strconv.ParseFloat(strings.TrimSuffix(got, " "), 64)
		if err != nil || math.Abs(back-v) > 0.00050001 || len(got) > len(strconv.FormatFloat(v, 'f', 3, 64))+1 {
			t.Errorf("%v: %q", v, got)
		}
	})
}
