package intake

import (
	"strings"
	"testing"
)

// Slips that make a file unreadable are found where they are, not where the
// parser gave up. The spots were set by hand.
func TestSuspect(t *testing.T) {
	for _, c := range []struct {
		text         string
		line, column int
		says         string
	}{
		{"a: 1\nb: [1, 2\nc: 3\n", 2, 4, "never closed"},
		{"a: 1\nb: {x: 1\n", 2, 4, "never closed"},
		{"a: \"x\nb: 1\n", 1, 4, "never closed"},
		{"a: 1\n\tb: 2\n", 2, 1, "something other than spaces"},
		{"a:\n \u00a0b: 2\n c: [\n", 2, 2, "something other than spaces"},
		{"a: 1\nb: c: d\n", 2, 4, "colon in it needs quotes"},
		{"a: 1\nb:2\n", 2, 2, "a space is missing"},
		{"a: 1\n  b: 2\n", 2, 3, "indented more"},
		{"a:\n  b: 1\n c: 2\n", 3, 2, "indented less"},
		{"body:\n  mass: 58 kg\n   height: 3\n", 3, 4, "indented more"},
		{"bands:\n  - name: x\n    rest: 1 cm\n   pulls: []\n", 4, 4, "indented less"},
		{"a: 'it's'\n", 1, 8, "after its closing quote"},
		{"a: \"x\" y\n", 1, 7, "after its closing quote"},
		{"a: @x\n", 1, 4, "begins with @"},
		{"a: 1\nb\nc: 2\n", 2, 1, "a colon is missing"},
		{"text: |\n  one: two: three\n  [\nb: c: d\n", 4, 4, "colon in it"},
	} {
		src := newSource("x.yaml", c.text, false)
		src.readYAML("a: 1", func(value) { t.Errorf("%q can be read", c.text) })
		if len(src.problems) != 1 {
			t.Errorf("%q: %v", c.text, src.problems)
			continue
		}
		p := src.problems[0]
		if p.Line != c.line || p.Column != c.column || !strings.Contains(p.Message, c.says) {
			t.Errorf("%q: %v; want %d:%d … %s", c.text, p, c.line, c.column, c.says)
		}
	}
}
