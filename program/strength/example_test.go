package strength_test

import (
	"fmt"
	"math"

	"gatepost/program/strength"
)

// A client of 58 kg: tuck 117.3 N·m, straddle 175.4 N·m with an allowance of 1.02.
func Example() {
	s := strength.Prior(math.Log(117.3)).Assess([]strength.Observation{
		{Position: "tuck", Load: 117.3, Seconds: 14, Max: true},
		{Position: "advanced tuck", Rig: "narrow, middle", Load: 120, Seconds: 10, Max: true},
	})
	low, high := s.Range(0.8)
	fmt.Printf("held twelve seconds: %.0f N·m, %.0f to %.0f\n", s.C12(), low, high)

	path := strength.NewPath(s, strength.Schedule{Career: strength.Career{Age: 35}})
	fmt.Printf("in twelve weeks, with seven chances in ten, at least %.0f N·m\n", path.Quantile(12, 0.3))
	early, likely, late := path.Arrival(175.4*1.02, 10)
	fmt.Printf("straddle: early %.0f weeks, likely %.0f, late %.0f\n", early, likely, late)
	fmt.Printf("chance in 47 weeks: %.2f\n", path.Chance(175.4*1.02, 10, 47))
	// Output:
	// held twelve seconds: 119 N·m, 113 to 125
	// in twelve weeks, with seven chances in ten, at least 124 N·m
	// straddle: early 42 weeks, likely 134, late +Inf
	// chance in 47 weeks: 0.12
}
