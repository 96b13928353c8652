package site

import (
	"strings"
	"testing"
)

func TestSummary(t *testing.T) {
	long := strings.Repeat("word ", 40)
	for text, want := range map[string]string{
		"":                                       "",
		"## Head\n\nOne *two* `three`.\n\nNext.": "One two three.",
		"See [the lean](../exercises/lean.md), <b>now</b>.": "See the lean, now.",
		"Short. " + long:        "Short.",
		"- a list\n\nThen text": "Then text",
		long:                    strings.TrimSpace(strings.Repeat("word ", 32)) + " …", // 32 × 5 − 1 = 159 letters
	} {
		if got := summary(text); got != want {
			t.Errorf("%.30q: %q, want %q", text, got, want)
		}
	}
}
