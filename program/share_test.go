package program_test

import (
	"math"
	"testing"

	"gatepost/program"
)

// Fifty bodies by whole kilograms and centimetres have one plan; on paper each has its own.
func TestFiftyBodiesShareAPlan(t *testing.T) {
	shared := func(kg, cm int) program.Athlete {
		a := program.Assessment{Share: program.ShareSite, Athlete: program.Athlete{Mass: float64(kg), Height: float64(cm) / 100}}
		return a.Body()
	}
	alike := map[program.Athlete]int{}
	for kg := 28; kg <= 147; kg++ { // whole rounds of five and of ten
		for cm := 120; cm <= 219; cm++ {
			alike[shared(kg, cm)]++
		}
	}
	for body, n := range alike {
		if n != 50 {
			t.Errorf("%d bodies have the plan of %.0f kg and %.0f cm", n, body.Mass, 100*body.Height)
		}
	}
	if len(alike) != 24*10 {
		t.Errorf("there are %d plans", len(alike))
	}
}

func TestTheBodyThatAPlanIsFor(t *testing.T) {
	own := program.Athlete{Name: "Ann", Sex: program.SexFemale, Mass: 61.37, Height: 1.638, ArmSpan: 1.719, Straddle: 1.9, Fold: 2, BalancePoint: 0.907}
	a := program.Assessment{Share: program.SharePrint, Athlete: own}
	if a.Body() != own {
		t.Errorf("on paper it is for %+v", a.Body())
	}
	a.Share = program.ShareSite
	got := a.Body()
	for what, is := range map[string][2]float64{
		"mass": {got.Mass, 60}, "height": {got.Height, 1.65}, "arm span": {got.ArmSpan, 1.70},
		"straddle": {got.Straddle, 1.9}, "fold": {got.Fold, 2}, "balance point": {got.BalancePoint, 0},
	} {
		if math.Abs(is[0]-is[1]) > 1e-9 {
			t.Errorf("%s %v, want %v", what, is[0], is[1])
		}
	}
	for cm, want := range map[float64]float64{160: 165, 169.9: 165, 170: 175, 179: 175, 180: 185, 110: 115, 210: 215} {
		a.Athlete.Height = cm / 100
		if got := 100 * a.Body().Height; math.Abs(got-want) > 1e-6 {
			t.Errorf("%v cm become %v, want %v", cm, got, want)
		}
	}
	for kg, want := range map[float64]float64{57.4: 55, 57.5: 60, 62.4: 60, 62.5: 65} {
		a.Athlete.Mass = kg
		if got := a.Body().Mass; got != want {
			t.Errorf("%v kg become %v, want %v", kg, got, want)
		}
	}
	a.Athlete.ArmSpan = 0
	if a.Body().ArmSpan != 0 {
		t.Error("a span that nobody measured is there")
	}
}
