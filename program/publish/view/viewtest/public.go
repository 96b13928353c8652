package viewtest

import (
	"time"

	"gatepost/program"
)

// Public is a public program with bands, and its first two levels. Their weeks
// are Maren's, dates and forecasts and all, which no reader may see.
func Public() (*program.PublicProgram, []program.Level) {
	from := &program.PublicProgram{
		ID: "open-hours", Title: "Open hours", Blurb: "Three hours a week, with two bands.",
		Goal:     program.Goal{Skill: "planche", Step: "half-open-tuck", Hold: 10},
		Training: program.Training{Days: []time.Weekday{time.Monday, time.Wednesday, time.Friday}, Minutes: 60, Weeks: 12},
		Kit:      []string{"parallettes", "wall"},
		Bands: []program.Band{
			{Name: "narrow", Rest: 1, Pulls: []program.Pull{{At: 1.3, Force: 1.6 * 9.80665}, {At: 1.9, Force: 3 * 9.80665}}},
			{Name: "middle", Rest: 1, Pulls: []program.Pull{{At: 1.3, Force: 3.6 * 9.80665}, {At: 1.9, Force: 6.8 * 9.80665}}},
		},
		File: "content/programs/open-hours.yaml",
	}
	help := program.HelpByMass{From: 1, To: 3, Step: "tuck", Share: 0.1,
		Mass: []float64{50, 90}, Help: []float64{5 * 9.80665, 9 * 9.80665}}
	one := program.HelpByMass{From: 5, To: 5, Step: "tuck", Share: 0.05,
		Mass: []float64{50, 90}, Help: []float64{2.5 * 9.80665, 4.5 * 9.80665}}
	return from, []program.Level{
		{Number: 1, RPE: 8, Next: "tuck", NextFor: 12, Mass: 67.45, Program: *Program(), Help: []program.HelpByMass{help, one}},
		{Number: 2, RPE: 8, Step: "tuck", Hold: 12, Next: "half-open-tuck", NextFor: 10, Mass: 67.45, Program: *Program()},
	}
}
