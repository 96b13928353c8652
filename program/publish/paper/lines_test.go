package paper

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestBreakLines(t *testing.T) {
	w := func(s string) float64 { return Regular.width(s, 10) + 0.01 }
	for _, c := range []struct {
		text  string
		width float64
		want  string
	}{
		{"", 20, ""},
		{"4 × 12 s", 50, "4 × 12 s"},
		{"hold 100\u00a0kg now", w("hold 100"), "hold|100\u00a0kg|now"},
		{"one-leg half lay", w("one-leg"), "one-leg|half lay"},
		{"one-leg half lay", w("one-l"), "one-|leg|half|lay"},
		{"abcdef", w("abc"), "abc|def"},
		{"Kompressionsheben", w("Kompressionsh-"), "Kompressions-|heben"},
		{"Kompressionsheben links", w("Kompressionshe-"), "Kompressionshe-|ben links"},
		{"Schleichweg", w("Schleich-"), "Schleich-|weg"},
		{"a  b", w("a"), "a|b"},
		{"10–12 s", w("10–"), "10–|12|s"},
	} {
		lines, _ := setter().linesOf(Regular, 10, c.width, c.text)
		if got := strings.Join(lines, "|"); got != c.want {
			t.Errorf("%q in %.1f mm: got %q, want %q", c.text, c.width, got, c.want)
		}
	}
}

// No line is wider than the box unless it is a single letter, no letter but hyphens is lost,
// no line begins with a combining mark or ends in a space.
func TestBreakLinesKeepsEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		raw := rapid.StringOfN(rapid.RuneFrom([]rune("ab ŁệΩЖ-–/×\u00a0\u0323\u030112□")), 0, 80, -1).Draw(t, "text")
		width := rapid.Float64Range(3, 60).Draw(t, "width")
		s, _ := clean(raw)
		lines, _ := setter().linesOf(Regular, 9, width, s)
		for _, line := range lines {
			if Regular.width(line, 9) > width && len([]rune(line)) > 3 {
				t.Fatalf("%q is too wide", line)
			}
		}
		squeeze := strings.NewReplacer(" ", "", "-", "")
		if squeeze.Replace(strings.Join(lines, "")) != squeeze.Replace(s) {
			t.Fatalf("%q became %q", s, lines)
		}
	})
}

func TestClip(t *testing.T) {
	lines := clip(Regular, 10, 20, []string{"first line", "second line", "third"}, 2)
	if len(lines) != 2 || !strings.HasSuffix(lines[1], "…") || Regular.width(lines[1], 10) > 20 {
		t.Errorf("got %q", lines)
	}
}
