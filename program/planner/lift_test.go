package planner_test

import (
	"math"
	"testing"

	"gatepost/program"
	"gatepost/program/planner"
)

// lifting is the middle client of the panel: four from a block of 30 cm.
func lifting(t *testing.T) (*program.Library, program.Assessment) {
	t.Helper()
	c := readPanel(t, []string{"testdata/panel/36-lift-middle.txt"})[0]
	return c.library, *c.assessment
}

// Lifts are printed in repetitions, two to five of the main work (common practice for
// lifts near the maximum), fifteen to thirty in the first week (our judgement), on
// straight arms; what is left of help never grows within a step.
func TestLiftIsPlannedInRepetitions(t *testing.T) {
	lib, a := lifting(t)
	p, problems := planner.Plan(lib, &a)
	if problems.Stop() || len(p.Weeks) != 12 {
		t.Fatal(problems, p.Withheld)
	}
	step, block := "", 1.0
	for _, w := range p.Weeks {
		hard := hardReps(t, &w, func(item *program.Prescription) {
			if !item.StraightArm && !item.Max && !item.Check {
				t.Errorf("week %d: %s on bent arms", w.Number, item.Step)
			}
			if item.Role == program.RoleMain && w.Kind == program.WeekBuild && (item.Reps < 2 || item.Reps > 5) {
				t.Errorf("week %d: %d repetitions of main work", w.Number, item.Reps)
			}
		})
		if w.Step == step && w.Rig.Block > block {
			t.Errorf("week %d: a block of %.2f m after one of %.2f", w.Number, w.Rig.Block, block)
		}
		step, block = w.Step, w.Rig.Block
		if w.Number == 1 && (w.Step != "block-30" || hard < 15 || hard > 30) {
			t.Errorf("week 1: %s, %d hard repetitions", w.Step, hard)
		}
	}
}

// Nobody lifts who has not leant far enough, held the straddle support and the line at the
// wall; a fold is asked of who has not lifted yet.
func TestLiftsAskForTheirEntry(t *testing.T) {
	const degree = math.Pi / 180
	for name, c := range map[string]struct {
		line, support, ahead, lean, fold float64
		lifted, trains                   bool
	}{
		"all of it":           {30, 8, .18, 15, 130, false, true},
		"a short line":        {29, 8, .18, 15, 130, true, false},
		"a short support":     {30, 7, .18, 15, 130, true, false},
		"a lean not far":      {30, 8, .16, 15, 130, true, false},
		"a lean not long":     {30, 8, .18, 14, 130, true, false},
		"a stiff hip":         {30, 8, .18, 15, 124, false, false},
		"a stiff hip, lifted": {30, 8, .18, 15, 124, true, true},
		"nobody measured":     {30, 8, .18, 15, 0, false, false},
	} {
		lib, a := lifting(t)
		a.Athlete.Fold = c.fold * degree
		a.Tests = []program.Hold{{Exercise: "wall-handstand-line", Seconds: c.line}, {Exercise: "straddle-support", Seconds: c.support},
			{Exercise: "planche-lean", Ahead: c.ahead, Seconds: c.lean}}
		if c.lifted {
			a.Tests = append(a.Tests, program.Hold{Step: "block-40", Reps: 3})
		}
		p, _ := planner.Plan(lib, &a)
		if got := p.Weeks[0].Step != "" || p.Weeks[0].Exercise != ""; got != c.trains {
			t.Errorf("%s: lifts or leans in week 1: %v", name, got)
		}
	}
}

// Whose hips fold by 132 degrees is told once that the forecast reckons with that; who has not
// measured them is told elsewhere that they are not (hour-fold).
func TestTheForecastReckonsWithTheFold(t *testing.T) {
	for degrees, want := range map[float64]int{132: 1, 0: 0} {
		lib, a := lifting(t)
		a.Athlete.Fold = degrees * math.Pi / 180
		p, _ := planner.Plan(lib, &a)
		told := 0
		for _, n := range p.Notes {
			if n.Code == "fold-stands" {
				if told++; n.Values[0].Number != 132 {
					t.Errorf("%.0f degrees", n.Values[0].Number)
				}
			}
		}
		if told != want {
			t.Errorf("a fold of %.0f: told %d times", degrees, told)
		}
	}
}

// Three with closed legs from 15 cm are too few for sets of main work, with four straddles
// from the floor below them: what the goal asks for is done ahead of that, one or two at a
// time, from the height of the test; 30 cm are no easier, since the middle of the lift
// decides. Once the straddle alone was trained for twelve weeks.
func TestATestedGoalIsWorkedOnAhead(t *testing.T) {
	c := readPanel(t, []string{"testdata/panel/37-lift-strong.txt"})[0]
	p, _ := planner.Plan(c.library, c.assessment)
	ahead := 0
	for _, w := range p.Weeks {
		hardReps(t, &w, func(item *program.Prescription) {
			if item.Role != program.RoleAhead {
				return
			}
			if ahead++; item.Step != "together" || item.Rig.Block != 0.15 || item.Reps > 2 || item.Sets < 4 || item.Sets > 6 {
				t.Errorf("week %d: ahead %s %d × %d from %.2f m", w.Number, item.Step, item.Sets, item.Reps, item.Rig.Block)
			}
		})
	}
	if ahead < 6 {
		t.Errorf("%d weeks with closed legs", ahead)
	}
}
