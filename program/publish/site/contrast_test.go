package site_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"gatepost/templates"
)

// Text must stand out by 4.5 to 1 (WCAG 2.2, success criterion 1.4.3, level
// AA), in light and in dark. The formula is WCAG's relative luminance.
func TestContrast(t *testing.T) {
	css, err := templates.FS.ReadFile("style.css")
	if err != nil {
		t.Fatal(err)
	}
	light, dark, _ := strings.Cut(string(css), "prefers-color-scheme: dark")
	dark, _, _ = strings.Cut(dark, "}\n}")
	for name, block := range map[string]string{"light": light, "dark": dark} {
		colours := map[string]float64{}
		for _, m := range regexp.MustCompile(`--([a-z-]+): #([0-9a-f]{6});`).FindAllStringSubmatch(block, -1) {
			colours[m[1]] = luminance(t, m[2])
		}
		for _, pair := range [][2]string{
			{"ink", "ground"}, {"ink", "card"}, {"ink", "bed"}, {"ink", "wash"},
			{"soft", "ground"}, {"soft", "card"}, {"soft", "bed"}, {"soft", "wash"},
			{"accent", "ground"}, {"accent", "card"}, {"accent", "bed"}, {"accent", "wash"},
			{"on-accent", "accent"},
		} {
			a, b := colours[pair[0]], colours[pair[1]]
			if ratio := (math.Max(a, b) + .05) / (math.Min(a, b) + .05); ratio < 4.5 {
				t.Errorf("%s: %s on %s is %.2f to 1", name, pair[0], pair[1], ratio)
			}
		}
	}
}

func TestLuminance(t *testing.T) {
	// #777777 on white is 4.48 to 1, just too little: WebAIM's and WCAG's usual
	// example, from memory.
	if ratio := 1.05 / (luminance(t, "777777") + .05); math.Abs(ratio-4.48) > .005 {
		t.Errorf("#777777 on white: %.3f", ratio)
	}
}

func luminance(t *testing.T, hex string) float64 {
	rgb, err := strconv.ParseUint(hex, 16, 32)
	if err != nil {
		t.Fatal(err)
	}
	linear := func(c uint64) float64 {
		s := float64(c&0xff) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+.055)/1.055, 2.4)
	}
	return .2126*linear(rgb>>16) + .7152*linear(rgb>>8) + .0722*linear(rgb)
}
