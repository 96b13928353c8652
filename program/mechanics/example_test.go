package mechanics_test

import (
	"fmt"
	"math"

	"gatepost/program/mechanics"
)

func ExampleSolve() {
	b, _ := mechanics.NewBody(mechanics.Female, 58, 1.66, 1.68, 0)
	full := mechanics.Pose{Rounding: 0.02, Depression: 0.02}
	straddle := full
	straddle.Legs = mechanics.Both(mechanics.Leg{Abduction: 50 * math.Pi / 180})
	grip := mechanics.Support{Grip: true}

	h := mechanics.Solve(b, straddle, grip, nil)
	fmt.Printf("straddle %.1f N·m, %.3f of full, lean %.1f°\n",
		h.Torque, h.Torque/mechanics.Solve(b, full, grip, nil).Torque, h.Lean*180/math.Pi)

	narrow, _, _ := mechanics.FitCurve(1.00, []mechanics.Pull{
		{Length: 1.30, Force: 15.7}, {Length: 1.60, Force: 23.5}, {Length: 1.90, Force: 29.4},
	})
	h = mechanics.Solve(b, straddle, grip, &mechanics.Rig{Bands: []mechanics.Curve{narrow}, Anchor: 2.05})
	fmt.Printf("with a band %.1f N·m, help %.1f N at %.2f m\n", h.Torque, h.Help, h.BandLength)
	// Output:
	// straddle 175.4 N·m, 0.887 of full, lean 33.8°
	// with a band 165.1 N·m, help 23.0 N at 1.57 m
}
