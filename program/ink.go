package program

import (
	"math"
	"strconv"
)

// Inks are the two colours of the print.
type Inks struct{ Dark, Accent Ink }

// Ink is a colour as "#rrggbb"; empty means the built-in one.
type Ink string

// RGB are the shares of red, green and blue, 0 to 255; black where the ink is not
// written as it should be.
func (i Ink) RGB() (r, g, b int) {
	if len(i) != 7 || i[0] != '#' {
		return 0, 0, 0
	}
	n, err := strconv.ParseUint(string(i[1:]), 16, 32)
	if err != nil {
		return 0, 0, 0
	}
	return int(n >> 16), int(n >> 8 & 0xff), int(n & 0xff)
}

// OnWhite is the ink's contrast on white paper, 1 to 21 (published: WCAG 2.2,
// definitions of contrast ratio and relative luminance).
func (i Ink) OnWhite() float64 {
	r, g, b := i.RGB()
	return 1.05 / (0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b) + 0.05)
}

func linear(part int) float64 {
	c := float64(part) / 255
	if c <= 0.04045 {
		return c / 12.92
	}
	return math.Pow((c+0.055)/1.055, 2.4)
}
