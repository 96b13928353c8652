package figure_test

import (
	"flag"
	"os"
	"slices"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/figure"
	"gatepost/program/ladder"
)

var update = flag.Bool("update", false, "write what is drawn now into testdata")

// A figure costs a page at most 4 KB, half a kilobyte more with a band.
func TestSVGOfEveryStance(t *testing.T) {
	largest := 0
	for _, s := range append(stances(t), worked(t)...) {
		svg := figure.SVG(figure.Draw(s.Stance, figure.Options{Help: "4 kg"}), "A & B", "1 < 2", figure.SVGOptions{Prefix: "f1"})
		_, text := parsed(t, s.name, svg)
		if !strings.Contains(text, "A & B") || !strings.Contains(text, "1 < 2") {
			t.Errorf("%s: title or description are lost: %s", s.name, text)
		}
		limit := 4096
		if s.Help > 0 {
			limit += 512
		}
		if len(svg) > limit {
			t.Errorf("%s: %d bytes", s.name, len(svg))
		}
		largest = max(largest, len(svg))
		if strings.Contains(string(svg), "NaN") {
			t.Errorf("%s: not a number", s.name)
		}
	}
	t.Logf("largest: %d bytes", largest)
}

// Sources: SVG 2 (presentation attributes, the img role with a title), CSP level
// 3 (style attributes are inline style).
func TestSVGIsAnImageWithoutStyle(t *testing.T) {
	s := stances(t)[0]
	elements, _ := parsed(t, s.name, figure.SVG(figure.Draw(s.Stance, figure.Options{}), "T", "D", figure.SVGOptions{Prefix: "p7"}))
	var ids []string
	allowed := []string{"svg", "title", "desc", "path", "text"}
	for _, e := range elements {
		if !slices.Contains(allowed, e.Name.Local) {
			t.Errorf("element %s", e.Name.Local)
		}
		for _, a := range e.Attr {
			switch a.Name.Local {
			case "style":
				t.Error("a style attribute")
			case "id":
				ids = append(ids, a.Value)
			case "role":
				if a.Value != "img" {
					t.Errorf("role %s", a.Value)
				}
			case "aria-labelledby":
				ids = append(ids, strings.Fields(a.Value)...)
			}
		}
	}
	if want := []string{"p7-t", "p7-d", "p7-t", "p7-d"}; !slices.Equal(ids, want) {
		t.Errorf("ids %v, want the labels and then the elements they name, %v", ids, want)
	}
}

// A person reads the difference; -update writes the file anew.
func TestGoldenStraddle(t *testing.T) {
	road, _ := library(t).RoadMap("planche")
	loads := ladder.Reference(road, program.SexFemale)
	i := slices.IndexFunc(loads, func(l program.StepLoad) bool { return l.ID == "straddle" })
	got := figure.SVG(figure.Draw(loads[i].Stance, figure.Options{}), "Straddle", "Seen from the side.", figure.SVGOptions{})
	const file = "testdata/straddle.svg"
	if *update {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != string(want) {
		t.Errorf("the straddle is drawn differently:\n%s", got)
	}
}
