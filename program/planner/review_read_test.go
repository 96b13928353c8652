package planner

import (
	"math"
	"testing"

	"gatepost/program"
)

// Wrists that bear no weight, and no handles: three weeks done as printed are no weeks
// off. Strength is neither gained nor lost, and nobody is told of weeks with nothing
// done; the fourth, in which nothing was done, is one, and costs one per cent.
func TestWeeksWithoutStraightArmsAreNoWeeksOff(t *testing.T) {
	lib, a := library(t), maren(t)
	a.Training.Away, a.Kit, a.Health.Wrists = nil, []string{"wall"}, program.JointSore
	p, _ := Plan(lib, &a)
	for i := range p.Weeks[:3] {
		for _, s := range p.Weeks[i].Sessions {
			for _, item := range s.Items {
				if isArm(&item) {
					t.Fatalf("%s holds %s", s.Date, item.Exercise)
				}
			}
		}
	}
	a.Log = asPrinted(&p, 0, 1, 2)
	wall := []program.PlanVersion{Version(&p, 1, a.Measured)}
	for _, c := range []struct {
		weeks int
		off   float64
		lost  float64 // ln C
	}{{3, 0, 0}, {4, 1, 0.01}} {
		review, _, _ := Read(lib, &a, wall, p.Weeks[c.weeks-1].Start+6)
		off := 0.0
		for _, n := range review.Notes {
			if n.Code == noteWeeksOff {
				off = n.Values[0].Number
			}
		}
		lost := math.Log(review.Progress[0].Held12 / review.After.Held12)
		if off != c.off || math.Abs(lost-c.lost) > 1e-9 {
			t.Errorf("after %d weeks: %g weeks off, %.4f lost, wanted %g and %g", c.weeks, off, lost, c.off, c.lost)
		}
	}
	// On the Wednesday of the fourth, with nothing done yet, its Friday is still to come.
	if _, q, _ := Read(lib, &a, wall, p.Weeks[3].Start+2); q.Weeks[3].Kind == program.WeekAway || len(q.Weeks[3].Sessions) != len(p.Weeks[3].Sessions) {
		t.Errorf("the week begun has become %s, with %d sessions", q.Weeks[3].Kind, len(q.Weeks[3].Sessions))
	}
}
