package paper

import (
	"os"
	"testing"

	"gatepost/program/publish/view"
	"gatepost/program/publish/view/viewtest"
)

func TestLook(t *testing.T) {
	v, problems := view.New(viewtest.Coach(), viewtest.Library(), viewtest.Program())
	t.Log(problems)
	ts := &typesetter{lost: map[rune]bool{}}
	for _, s := range []Sheet{A3, A4, Tabloid, Letter} {
		for _, f := range layChart(ts, v, s).Faults() {
			t.Error(s.Name, f)
		}
	}
	pdf, problems := WallChart(v)
	t.Log(problems, len(pdf))
	os.WriteFile("/tmp/chart.pdf", pdf, 0o644)
	for _, f := range layOnePage(ts, v).Faults() {
		t.Error(f)
	}
	pdf, _ = OnePage(v)
	os.WriteFile("/tmp/page.pdf", pdf, 0o644)
}

func TestLookSheet(t *testing.T) {
	pdf, problems := TestSheet(viewtest.Coach(), viewtest.Library())
	t.Log(problems)
	os.WriteFile("/tmp/sheet.pdf", pdf, 0o644)
	sheet, _ := view.NewSheet(viewtest.Coach(), viewtest.Library())
	for _, f := range layTestSheet(&typesetter{lost: map[rune]bool{}}, sheet).Faults() {
		t.Error(f)
	}
}
