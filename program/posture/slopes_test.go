package posture

import (
	"math"
	"testing"

	"gatepost/program"
	"gatepost/program/mechanics"
)

// What misses change by is what a small step changes them by (the definition of a
// derivative): a body in a corner, its toes bent, an arm out and turned, hands on a wall.
func TestSlopesAreThoseOfSmallSteps(t *testing.T) {
	body, _ := mechanics.NewBody(mechanics.Female, 61.9, 1.735, 0, 0)
	for name, f := range map[string]program.Figure{
		"wall": {Things: []program.Thing{{Kind: program.ThingFloor, Parts: []program.Part{program.PartToes, "left hand"}},
			{Kind: program.ThingWall, Parts: []program.Part{"right hand", program.PartHead}}, {Kind: program.ThingBox, Parts: []program.Part{program.PartShins, program.PartBelly}}}},
		"bar":  {Things: []program.Thing{{Kind: program.ThingBar, Parts: []program.Part{program.PartHands}, High: 1.2}}},
		"feet": {Things: []program.Thing{{Kind: program.ThingFloor, Parts: []program.Part{program.PartFeet}}}},
		"lies": {Things: []program.Thing{{Kind: program.ThingFloor, Parts: []program.Part{program.PartBack, program.PartForearms, program.PartTips, program.PartThighs, program.PartHeels}}}},
	} {
		f.Angles = map[program.Bend]float64{program.BendOut: .5, program.BendTurn: .4, program.BendApart: .3, program.BendSpine: .3, program.ShoulderUp: .03, program.ShoulderAhead: .02}
		p := &placing{figure: f, form: form{body: &body}, fresh: 1}
		p.take()
		p.touchThings()
		p.meet()
		q := make([]float64, len(p.meant))
		for i := range q {
			q[i] = p.meant[i] + .35*math.Sin(float64(3*i+1))
		}
		const small = 1e-5
		s := newSquares(len(q))
		s.clear(true)
		p.miss(q, s)
		for i := range q {
			slope := 0.0
			for _, way := range []float64{1, -1} {
				o, stepped := newSquares(len(q)), append([]float64(nil), q...)
				stepped[i] += way * small
				o.clear(false)
				p.miss(stepped, o)
				slope += way * o.sum / (2 * small)
			}
			if got := 2 * s.g[i]; math.Abs(got-slope) > 1e-4*math.Abs(slope)+1e-2 { // of squares twice
				t.Errorf("%s: %d: %.5g, and by steps %.5g", name, i, got, slope)
			}
		}
	}
}
