package paper

import (
	"strings"
	"testing"
)

// The same help in twelve weeks is said once on the wall chart and once in the table of
// weeks, where the bars go on; a change is said again.
func TestTheSameHelpIsSaidOnce(t *testing.T) {
	for _, changed := range []int{0, 1} {
		v := fixture(t)
		for i := range v.Weeks {
			w := &v.Weeks[i]
			w.StepID, w.HelpKG, w.Help, w.LeanCM, w.Free = "tuck", 6.5, "6.5 kg", 0, false
			if changed > 0 && i >= len(v.Weeks)/2 {
				w.HelpKG, w.Help = 5, "5 kg"
			}
		}
		v.Pictures = nil
		_, wall := sheets(v.Coach.Paper)
		for name, page := range map[string]*Page{"chart": layChart(setter(), v, wall), "page": layOnePage(setter(), v)} {
			said, after := 0, 0
			for line := range strings.Lines(textOf(page)) {
				switch strings.TrimSpace(line) {
				case "6.5 kg":
					said++
				case "5 kg":
					after++
				}
			}
			if said != 1 || after != changed {
				t.Errorf("%s: 6.5 kg is said %d times and 5 kg %d times, want 1 and %d", name, said, after, changed)
			}
		}
	}
}

// A lean stands once in each week of the wall chart.
func TestALeanIsSaidOnceAWeek(t *testing.T) {
	v := fixture(t)
	for i := range v.Weeks {
		w := &v.Weeks[i]
		w.StepID, w.HelpKG, w.Help, w.LeanCM, w.Free = "", 0, "", 14, false
		w.Main, w.Rig, w.Drop, w.Bands = "4 × 9 s", "lean 14 cm", "", nil
	}
	_, wall := sheets(v.Coach.Paper)
	if said := strings.Count(textOf(layChart(setter(), v, wall)), "lean 14 cm"); said != len(v.Weeks) {
		t.Errorf("14 cm are said %d times in %d weeks", said, len(v.Weeks))
	}
}

// Bands and leans stand in the table of weeks once, and again where they change; a ditto mark
// stands for them between.
func TestTheSameRigIsSaidOnce(t *testing.T) {
	v := fixture(t)
	for i := range v.Weeks {
		w := &v.Weeks[i]
		w.StepID, w.Step, w.Rig, w.Drop, w.Main, w.Range = "tuck", "tuck", "narrow", "strap 20 cm", "4 × 9 s", "4 × 9 s"
		if i >= 6 {
			w.Drop = "strap 40 cm"
		}
	}
	text := textOf(layOnePage(setter(), v))
	for rig, want := range map[string]int{"narrow, strap 20 cm\n": 1, "narrow, strap 40 cm\n": 1, "\u2033\n": len(v.Weeks) - 2} {
		if n := strings.Count(text, rig); n != want {
			t.Errorf("%q stands there %d times, want %d", rig, n, want)
		}
	}
}
