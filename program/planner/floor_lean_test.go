package planner

import (
	"slices"
	"testing"

	"gatepost/program"
)

// A man of 112 kg who leans 6 cm for 20 s: two centimetres more are a third more load, and
// he would stay where he is for twelve weeks. By one he is at 7 cm from the fifth on.
func TestShortLeansGoFurtherByOneCentimetre(t *testing.T) {
	a := clientOf(t, untrained)
	a.Athlete.Sex, a.Athlete.Mass, a.Athlete.Height, a.Athlete.ArmSpan = program.SexMale, 112, 1.85, 1.87
	a.Tests = []program.Hold{{Exercise: "planche-lean", Ahead: 0.06, Seconds: 20}}
	p := programOf(t, a)
	var got []int
	for i := range p.Weeks {
		got = append(got, centimetres(p.Weeks[i].Ahead))
	}
	if want := []int{6, 6, 6, 6, 7, 7, 7, 7, 7, 7, 7, 7}; !slices.Equal(got, want) {
		t.Errorf("leans of %v cm, wanted %v", got, want)
	}
}

// Up to ten centimetres there is a lean at each, then at every second. Those that a find tries
// lie two apart, the work's own among them.
func TestWhereLeansLie(t *testing.T) {
	p := capableOf(t, 20, nil)
	var all, beside []int
	for _, l := range p.leans[:13] {
		all = append(all, centimetres(l.Ahead))
	}
	if want := []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14}; !slices.Equal(all, want) {
		t.Errorf("leans at %v cm, wanted %v", all, want)
	}
	for _, l := range p.leansBeside(0.07)[:5] {
		beside = append(beside, centimetres(l.Ahead))
	}
	if want := []int{1, 3, 5, 7, 9}; !slices.Equal(beside, want) {
		t.Errorf("beside 7 cm: %v, wanted %v", beside, want)
	}
}
