package ladder

import (
	"crypto/rand"
	"math"
	"os"
	"slices"
	"testing"

	"gatepost/program/intake"
	"gatepost/program/mechanics"
)

func TestShareBesideTheDrawings(t *testing.T) {
	root := os.DirFS("../..")
	studio, _ := intake.Read(root, root, rand.Reader)
	road, ok := studio.Library.RoadMap("planche")
	if !ok {
		t.Fatal("no road map planche")
	}
	b, _ := New(&drawnAthlete, road)
	for name, want := range map[string]float64{"tuck": .58, "advanced-tuck": .74, "straddle": .89, "open-half-lay": .83} {
		r := stepOf(b, name)
		if got := r.FreeHold.Torque / b.full; math.Abs(got-want) > .0051 {
			t.Errorf("%s: %.3f, the page says %.2f", name, got, want)
		}
	}
	r := stepOf(b, "advanced-tuck")
	flat := *r
	flat.pose.Rounding, flat.pose.Depression = 0, 0
	if got := mechanics.Solve(b.Body, flat.pose, b.support, nil).Torque / b.full; math.Abs(got-.82) > .0051 {
		t.Errorf("flat: %.3f", got)
	}
	if got := b.WithRig(r, 0, 0).Hold.Torque / b.full; math.Abs(got-.62) > .0051 {
		t.Errorf("under the band: %.3f", got)
	}
}

func stepOf(b *Body, id string) *Rung {
	return &b.All[slices.IndexFunc(b.All, func(r Rung) bool { return r.ID == id })]
}
