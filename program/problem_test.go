package program

import "testing"

func TestPlacesFallBackToTheNearestParent(t *testing.T) {
	p := Places{"": {File: "a"}, "bands[0]": {Line: 3}, "body.mass": {Line: 7, Column: 9}}
	for path, want := range map[string]int{"body.mass": 7, "bands[0].pulls[1].force": 3, "goal.step": 0} {
		if got := p.At(path).Line; got != want {
			t.Errorf("%s: line %d, want %d", path, got, want)
		}
	}
}

func TestPlaceIsWhatEditorsJumpTo(t *testing.T) {
	for want, p := range map[string]Place{"a.yaml": {File: "a.yaml"}, "a.yaml:7": {File: "a.yaml", Line: 7}, "a.yaml:7:9": {File: "a.yaml", Line: 7, Column: 9}} {
		if p.String() != want {
			t.Errorf("%q, want %q", p, want)
		}
	}
}

func TestProblemsReadDownwards(t *testing.T) {
	ps := Problems{
		{Place: Place{File: "b", Line: 1}, Message: "x"},
		{Place: Place{File: "a", Line: 2, Column: 5}, Message: "y", Warning: true},
		{Place: Place{File: "a", Line: 2, Column: 5}, Message: "x"},
		{Place: Place{File: "a", Line: 2, Column: 1}, Message: "z"},
	}
	ps.Sort()
	want := []string{"a:2:1: z", "a:2:5: x", "a:2:5: y", "b:1: x"}
	for i, p := range ps {
		if p.Error() != want[i] {
			t.Errorf("%d: %s, want %s", i, p.Error(), want[i])
		}
	}
	if !ps.Stop() || (Problems{{Warning: true}}).Stop() {
		t.Error("only more than a warning stops")
	}
}
