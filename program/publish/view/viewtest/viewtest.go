// Package viewtest holds one realistic program, with the coach and the library
// it was made for, for the tests of the view and of every renderer.
//
// It is written by hand and does not follow the planner: it shows each thing
// that a renderer has to draw once at least. Twelve weeks of three sessions,
// deloads in weeks 4 and 8, a step up in week 9, bands that taper to none, the
// test in week 12. Names are made up.
package viewtest

import (
	"math"

	"gatepost/program"
)

// Coach is the coach of the program.
func Coach() program.Coach {
	return program.Coach{
		Name: "Tilda Roake", Studio: "Lantern Ringing Hall", Contact: "tilda@lantern.example.org",
		Paper: program.PaperA4, Site: "https://lantern.example.org/", Lang: "en",
	}
}

const (
	start    = 20829 // 2027-01-11, a Monday
	measured = start - 7
)

// Program is Maren's program; every call makes a new one.
func Program() *program.Program {
	return &program.Program{
		Client:   program.Client{Name: "Maren", Slug: "maren", Share: program.ShareSite, Page: "k7f3q9w2m4"},
		Skill:    "planche",
		Goal:     program.GoalForecast{Step: "straddle", Hold: 10, By: program.NewDate(2027, 11, 30), Chance: 0.46},
		Measured: measured,
		Start:    start,
		Steps:    steps(),
		Bands: []program.BandCurve{
			{Name: "narrow", A: 9.2, B: 4.1, Rest: 1, Longest: 1.9},
			{Name: "middle", A: 20.8, B: 9.6, Rest: 1, Longest: 1.9},
		},
		Capacity: program.Capacity{Held12: 131, Low: 124, High: 139, Endurance: 1.05, Typical: true},
		Forecasts: []program.Forecast{
			{Step: "tuck", Held: true},
			{Step: "half-open-tuck", Held: true},
			{Step: "open-tuck", Early: start + 12, Likely: start + 30, Late: start + 61, Chance: 0.99},
			{Step: "advanced-tuck", Early: start + 75, Likely: start + 118, Late: start + 220, Chance: 0.93},
			{Step: "one-leg-half-lay", Early: start + 112, Likely: start + 190, Late: start + 410, Chance: 0.75},
			{Step: "open-half-lay", Early: start + 140, Likely: start + 240, Late: start + 520, Chance: 0.62},
			{Step: "straddle", Early: start + 205, Likely: start + 345, Late: start + 860, Chance: 0.46},
			{Step: "full", Early: start + 640, Likely: 0, Late: 0, Chance: 0.03},
		},
		Weeks: weeks(),
		Gates: []program.StepGate{
			{Step: "open-tuck", Gate: gate(3, 12, 0), Week: 8},
			{Step: "advanced-tuck", Gate: gate(3, 10, 0), Week: 12},
			{Step: "straddle", Gate: gate(3, 8, 10)},
		},
		Outline: []program.Stage{
			{Step: "one-leg-half-lay", From: start + 118}, {Step: "open-half-lay", From: start + 190},
			{Step: "straddle", From: start + 240},
		},
		Cues: []program.CueWorth{
			{Cue: "depression", Saves: 0.021, Help: 17}, {Cue: "rounding", Saves: 0.018, Help: 14},
			{Cue: "straddle", Saves: 0.012, Help: 10},
		},
		Place: "open-tuck",
	}
}

func gate(sets, hold, single int) program.Gate {
	return program.Gate{Sets: sets, Hold: hold, Single: single, RPEMax: 9, Sessions: 2, Apart: 48, PainMax: 2}
}

// steps are the planche's for a body of 58 kg and 1.66 m (rounded by hand).
func steps() []program.StepLoad {
	load := func(id string, torque, allowance, lean, free float64) program.StepLoad {
		lean *= math.Pi / 180
		return program.StepLoad{ID: id, Torque: torque, Share: torque / 197.7, Allowance: allowance, Lean: lean,
			ShoulderAhead: 0.52 * math.Sin(lean), HipHeight: 0.52 * math.Cos(lean), FreeHold: free,
			HandsAhead: 0.38 - 0.3*math.Sin(lean)}
	}
	return []program.StepLoad{
		load("tuck", 117.3, 1, 21.9, 20), load("half-open-tuck", 125.6, 1, 23.5, 15.2),
		load("open-tuck", 133.1, 1, 25.1, 11.1), load("advanced-tuck", 148.7, 1, 28.2, 4.6),
		load("one-leg-half-lay", 159.0, 1.01, 30.3, 1.4), load("open-half-lay", 164.7, 1.01, 31.5, 0),
		load("straddle", 175.4, 1.02, 33.8, 0), load("full", 197.7, 1.1, 38.9, 0),
	}
}
