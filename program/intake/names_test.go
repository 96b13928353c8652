package intake

import (
	"strings"
	"testing"

	"gatepost/program"
)

// Worked examples of edit distances: kitten–sitting and Saturday–Sunday are the
// textbook ones for Levenshtein's distance, CA–ABC tells the restricted
// Damerau–Levenshtein distance (3) from the full one (2) (from memory).
func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"kitten", "sitting", 3}, {"saturday", "sunday", 3}, {"ca", "abc", 3}, {"tukc", "tuck", 1},
		{"", "tuck", 4}, {"tuck", "", 4}, {"", "", 0}, {"zoë", "zoe", 1},
	} {
		if got := distance(c.a, c.b); got != c.want {
			t.Errorf("%q to %q: %d, want %d", c.a, c.b, got, c.want)
		}
	}
}

func TestOffer(t *testing.T) {
	steps := []string{"tuck", "advanced-tuck", "straddle"}
	for written, want := range map[string]string{
		"Tukc": `Did you mean "tuck"?`, "adv tuck": `Did you mean "advanced-tuck"?`, "stradle": `Did you mean "straddle"?`,
		"backflip": "Known are tuck, advanced-tuck, straddle.", "": "Known are tuck, advanced-tuck, straddle.",
	} {
		if got := offer(written, steps); got != want {
			t.Errorf("%q: %s, want %s", written, got, want)
		}
	}
}

// Whoever writes "tuck planche" or "planche full" means a step; where a word is another
// step's name already, that is meant.
func TestStepsWithTheirSkill(t *testing.T) {
	m := &program.RoadMap{ID: "front-lift", Name: "Front lift", Steps: []program.Step{
		{ID: "tuck", Name: "tuck"}, {ID: "adv-tuck", Name: "advanced tuck"}, {ID: "x", Name: "tuck front lift"}, {ID: "full", Name: "full"}}}
	for written, want := range map[string]string{
		"full front lift": "full", "Front-Lift Full": "full", "advanced tuck front lift": "adv-tuck", "front lift adv tuck": "adv-tuck",
		"front lift tuck": "tuck", "tuck front lift": "x", "front lift": "", "full back lift": "",
	} {
		if got, err := StepNamed(m, written); got != want || (err != nil) != (want == "") {
			t.Errorf("%q is %q, %v; want %q", written, got, err, want)
		}
	}
}

func TestSlug(t *testing.T) {
	for name, want := range map[string]string{
		"Maren": "maren", "Anselm O'Hara": "anselm-o-hara", "  Zoë  Brûlée ": "zoe-brulee", "Łukasz Weiß": "lukasz-weiss",
		"Åse Ørn": "ase-orn", "../../etc": "etc", "a--b": "a-b", "٣": "", "": "", "李": "", "-": "",
		strings.Repeat("abc ", 20): "abc-abc-abc-abc-abc-abc-abc-abc-abc-abc",
	} {
		got, err := Slug(name)
		if got != want || (err != nil) != (want == "") {
			t.Errorf("%q: %q %v, want %q", name, got, err, want)
		}
		if err == nil && !slugForm.MatchString(got) {
			t.Errorf("%q is no slug", got)
		}
	}
}

// The caret stands under the column, however long the line is.
func TestExcerpt(t *testing.T) {
	long := strings.Repeat("é", 150) + "X" + strings.Repeat("é", 150)
	for _, c := range []struct {
		text   string
		column int
	}{{"aXa", 2}, {long, 151}, {"X", 1}, {strings.Repeat("a", 99) + "X", 100}} {
		line, caret := excerpt(c.text, c.column)
		if r := []rune(line); len(r) > 110 || r[caret] != 'X' {
			t.Errorf("column %d of %q: %q, caret at %d", c.column, c.text, line, caret)
		}
	}
	if line, caret := excerpt("ab", 3); line != "ab" || caret != 2 {
		t.Errorf("past the end: %q %d", line, caret)
	}
}
