package program

import (
	"math"
	"testing"
)

// Published pairs: WCAG 2.2, Understanding 1.4.3, and its widely used example
// greys: #767676 is the lightest that reaches 4.5 on white, #777777 does not.
func TestContrastOnWhite(t *testing.T) {
	for ink, want := range map[Ink]float64{"#000000": 21, "#ffffff": 1, "#767676": 4.54, "#777777": 4.48, "#0000ff": 8.59, "#ff0000": 4.00} {
		if got := ink.OnWhite(); math.Abs(got-want) > 0.005 {
			t.Errorf("%s: %.3f, want %.2f", ink, got, want)
		}
	}
}

func TestInkParts(t *testing.T) {
	if r, g, b := Ink("#b0371B").RGB(); r != 0xb0 || g != 0x37 || b != 0x1b {
		t.Error(r, g, b)
	}
}
