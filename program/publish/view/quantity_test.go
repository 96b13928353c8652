package view

import (
	"testing"

	"gatepost/program"
)

func words() *speech {
	return newSpeech(program.Coach{}, &program.Library{Words: program.Words{
		"unit.kilograms": "{number} kg", "unit.decimal": ",", "unit.seconds": "{number} s", "unit.minutes": "{number} min",
	}}, &program.Program{})
}

// One kilogram-force is 9.80665 N (3rd CGPM, 1901).
func TestKilograms(t *testing.T) {
	for newtons, want := range map[float64]string{
		0: "", 1: "<0,5 kg", 9.80665: "1 kg", 6.5 * 9.80665: "6,5 kg", 6.7 * 9.80665: "6,5 kg", 6.8 * 9.80665: "7 kg",
	} {
		if got := words().kilograms(newtons); got != want {
			t.Errorf("%g N: got %q, want %q", newtons, got, want)
		}
	}
}

// 3, 4, 5, 6 hand-breadths from wall to wrist crease are leans of about 0, 9,
// 18, 28 cm (common practice).
func TestHands(t *testing.T) {
	for lean, want := range map[float64]string{0: "3", .09: "4", .18: "5", .28: "6", .225: "5½", .38: "7",
		.08: "", .10: "", .12: "", .14: "4½", .16: "", .20: ""} { // half a hand is 4.5 cm: 16 and 20 are not 18
		if got := hands(lean); got != want {
			t.Errorf("%g m: got %q, want %q", lean, got, want)
		}
	}
}

func TestPause(t *testing.T) {
	for s, want := range map[int]string{0: "", 45: "45 s", 105: "105 s", 120: "2 min", 150: "2½ min", 165: "2:45 min", 125: "2:05 min"} {
		if got := words().pause(s); got != want {
			t.Errorf("%d: got %q, want %q", s, got, want)
		}
	}
}

func TestChanceWords(t *testing.T) {
	for share, want := range map[float64]string{
		0: "unlikely", .194: "unlikely", .2: "open", .6: "open", .61: "likely", .85: "likely", .86: "very_likely", 1: "very_likely",
	} {
		if got := chance(share); got != want {
			t.Errorf("%g: got %q, want %q", share, got, want)
		}
	}
}

// What is said of several weeks is said once, with the weeks: a coach reads it once.
func TestWeeksInRuns(t *testing.T) {
	for want, weeks := range map[string][]int{"4": {4}, "1–3": {1, 2, 3}, "1–3, 5–7, 9": {1, 2, 3, 5, 6, 7, 9}, "2, 4": {2, 4}, "5": {5, 5}} {
		if got := runs(weeks); got != want {
			t.Errorf("%v: %q, want %q", weeks, got, want)
		}
	}
}
