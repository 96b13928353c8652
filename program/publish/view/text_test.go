package view_test

import (
	"strings"
	"testing"

	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

// A week of leans fits its line of the terminal: how far, and nothing cut. Hands from a
// wall are said on the card.
func TestALeanIsWholeInTheTerminal(t *testing.T) {
	p := viewtest.Program()
	w := &p.Weeks[0]
	w.Step, w.Exercise, w.Ahead, w.Rig.Bands = "", "planche-lean", 0.14, nil
	v, problems := view.New(viewtest.Coach(), viewtest.Library(), p)
	if problems != nil {
		t.Fatal(problems)
	}
	var out strings.Builder
	if err := view.Text(&out, v); err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(out.String(), "\n") {
		if strings.HasPrefix(line, " 1 ") && (!strings.HasSuffix(strings.ReplaceAll(line, "\u00a0", " "), "lean 14 cm") || strings.Contains(line, "…")) {
			t.Errorf("%q", line)
		}
	}
	if !strings.Contains(out.String(), "lean 14") {
		t.Error("no week of leans")
	}
}
