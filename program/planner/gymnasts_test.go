package planner

import (
	"testing"

	"gatepost/program"
)

// Handstand push-ups of gymnasts who compete, on average: 3.0 at the lowest level that was
// tested, 15.7 at the highest (Sleeper and others 2016, Int. J. Sports Phys. Ther. 11:1082,
// from a summary). Years of training lie between the two (common practice). So whoever does
// three works at the wall or below it and is told of years until sixteen, and whoever does
// sixteen has the gate of five behind them and works beyond.
func TestHandstandPushUpsOfGymnasts(t *testing.T) {
	plan := func(reps, wanted int, goal string) program.Program {
		a := maren(t)
		a.Training = program.Training{Experience: 104, Days: a.Training.Days, Minutes: 60}
		a.Kit, a.Bands = []string{"wall", "box", "blocks"}, nil
		a.Hanging.Pads = []float64{0.05, 0.10, 0.15}
		a.Goal = program.Goal{Skill: "handstand-push-up", Step: goal, Reps: wanted, Hold: float64(3 * wanted), By: monday + 700}
		a.Tests = []program.Hold{{Exercise: "wall-handstand-line", Seconds: 60}, {Exercise: "push-up", Reps: 30}, {Step: "wall", Reps: reps, Seconds: float64(3 * reps)}}
		p, problems := Plan(library(t), &a)
		if problems.Stop() || len(p.Weeks) == 0 {
			t.Fatal(problems, p.Withheld)
		}
		return p
	}
	p := plan(3, 16, "wall")
	if f := p.Forecasts[len(p.Forecasts)-1]; f.Step != "wall" || f.Early < monday+365 || f.Likely != 0 && f.Likely < monday+730 {
		t.Errorf("from three to sixteen: %+v", f)
	}
	for _, w := range plan(16, 2, "free").Weeks {
		if w.Step != "free" && w.Step != "raised-hands-10" && w.Step != "raised-hands-15" {
			t.Errorf("week %d of who does sixteen is on the %s", w.Number, w.Step)
		}
	}
}
