package planner

import (
	"math"
	"strings"
	"testing"

	"gatepost/program"
	"gatepost/program/ladder"
)

// What the pages say beside the drawings must be what is drawn. Shares and leans
// are those of content/pages/leverage.md; that the hands stand under the
// centre of mass is statics.
func TestIllustrationsShowWhatThePagesSay(t *testing.T) {
	road := roadMap(t)
	all := map[string]program.Stance{}
	for _, i := range ladder.Illustrations(road) {
		all[i.Name] = i.Stance
	}
	for name, ahead := range map[string]float64{"tuck": .23, "straddle": .35, "full": .40} {
		s := all["planche/"+name]
		if got := s.Shoulder.X; math.Abs(got-ahead) > .005 {
			t.Errorf("%s: shoulders %.3f m ahead, the page says %.2f", name, got, ahead)
		}
		if math.Abs(s.CoM.X) > 1e-9 {
			t.Errorf("%s: centre of mass %.4f m off the hands", name, s.CoM.X)
		}
	}
	band, slant := all["planche/advanced-tuck/band"], all["planche/advanced-tuck/slant"]
	if angle(band) > 1 || angle(slant) < 10 {
		t.Errorf("bands hang at %.1f and %.1f degrees", angle(band), angle(slant))
	}
	if d := (slant.Help - band.Help) / 9.80665; math.Abs(d) > .25 {
		t.Errorf("the help changes by %.2f kg", d)
	}
	if d := slant.Shoulder.X - band.Shoulder.X; math.Abs(d+.02) > .005 {
		t.Errorf("the lean changes by %.3f m", d)
	}
	zero, lean := all["planche/zero"], all["planche/lean"]
	if math.Abs(zero.Shoulder.X-zero.Wrist.X) > 1e-9 || math.Abs(lean.Shoulder.X-lean.Wrist.X-0.20) > 1e-9 {
		t.Errorf("leans of %.3f and %.3f m", zero.Shoulder.X-zero.Wrist.X, lean.Shoulder.X-lean.Wrist.X)
	}
}

// Every step and rung of the road map has its drawing, and no name stands twice.
func TestEveryStepIsIllustrated(t *testing.T) {
	road := roadMap(t)
	seen := map[string]bool{}
	for _, i := range ladder.Illustrations(road) {
		if seen[i.Name] || !strings.HasPrefix(i.Name, road.ID+"/") || !i.Stance.Drawn() {
			t.Errorf("%q", i.Name)
		}
		seen[i.Name] = true
	}
	for _, s := range road.Steps {
		for _, suffix := range []string{"", "/flat", "/band", "/slant"} {
			if name := road.ID + "/" + s.ID + suffix; !seen[name] {
				t.Errorf("no %s", name)
			}
		}
	}
}

// angle is how far off the vertical a band hangs, in degrees.
func angle(s program.Stance) float64 {
	return math.Abs(math.Atan2(s.Anchor.X-s.Hip.X, s.Anchor.Y-s.Hip.Y)) * 180 / math.Pi
}

func roadMap(t *testing.T) *program.RoadMap {
	t.Helper()
	road, ok := library(t).RoadMap("planche")
	if !ok {
		t.Fatal("no road map planche")
	}
	return road
}
