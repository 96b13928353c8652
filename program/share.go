package program

import "math"

// How far the body of a shared client is rounded. Of bodies by whole kilograms and
// centimetres fifty have one plan, so that nothing which is published of it, now or later,
// tells them apart; the rounding shifts what a rig leaves of a step by one or two per cent
// against what was tested, less than half of what drawn joint angles are off by on one
// person (ladder's test has the numbers).
const (
	massStep   = 5    // kg
	heightStep = 0.10 // m
	spanStep   = 0.05 // m
)

// Body is the body that a plan is made for: the athlete's own on paper, and of who is on
// the site one that fifty others share. The arm span is rounded as well, and of the
// balance point, which a stature can be read from, the table is taken.
func (a *Assessment) Body() Athlete {
	b := a.Athlete
	if a.Share != ShareSite {
		return b
	}
	const exact = 1e-9 // 1.70 is of 170 to 179 cm, however it is stored
	b.Mass = massStep * math.Round(b.Mass/massStep)
	b.Height = heightStep * (math.Floor(b.Height/heightStep+exact) + 0.5)
	b.ArmSpan = spanStep * math.Round(b.ArmSpan/spanStep)
	b.BalancePoint = 0
	return b
}
