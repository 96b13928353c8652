package program

import "testing"

// Names are replaced, values never; what nothing fills stays to be seen, and is told.
func TestFill(t *testing.T) {
	for _, c := range []struct {
		text, want, left string
		pairs            []string
	}{
		{"{a} and {b}, {a}", "b and c {a}, b", "", []string{"a", "b", "b", "c {a}"}},
		{"{a} of {c}", "1 of {c}", "c", []string{"a", "1"}},
		{"none, {open", "none, {open", "", nil},
	} {
		if got, left := Fill(c.text, c.pairs...); got != c.want || left != c.left {
			t.Errorf("%s: %q, left %q", c.text, got, left)
		}
	}
	words := Words{"a.x": "{n} lines", "a.x_one": "one line", "a.y": "{n} y"}
	if got := words.Say(words.Plural("a.x", 1)) + words.Say(words.Plural("a.y", 1), "n", "1") + words.Say("a.z"); got != "one line1 ya.z" {
		t.Error(got)
	}
}
