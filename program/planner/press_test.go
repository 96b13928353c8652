package planner_test

import (
	"math"
	"slices"
	"testing"
	"time"

	"gatepost/program"
	"gatepost/program/planner"
)

// pressing is somebody who presses from a box six times, and the way to the wall.
func pressing(t *testing.T) (*program.Library, program.Assessment) {
	t.Helper()
	deg := math.Pi / 180
	gate := func(sets, reps int) program.Gate {
		return program.Gate{Sets: sets, Reps: reps, Hold: 3 * reps, RPEMax: 9, Sessions: 2, Apart: 48, PainMax: 2}
	}
	files := readPanel(t, []string{"testdata/panel/22-tuck-25.txt"})
	lib := *files[0].library
	step := func(id string, p program.Press, allowance float64, g program.Gate) program.Step {
		return program.Step{ID: id, Name: id, Exercise: "tuck-hold", Press: p, Allowance: allowance, Gate: g}
	}
	lib.RoadMaps = append(lib.RoadMaps, program.RoadMap{ID: "press", Name: "Press", Hands: program.HandsSupport, Load: program.LoadPress,
		Prepare: []program.Purpose{program.ForWrists, program.ForElbows, program.ForBlades}, Strength: []program.Purpose{program.ForPush, program.ForRaise},
		Against: []program.Purpose{program.ForRow, program.ForRearShoulder, program.ForPullUp},
		Steps: []program.Step{
			step("pike", program.Press{Trunk: 45 * deg}, 0, gate(3, 10)),
			step("pike-30", program.Press{Trunk: 60 * deg, Feet: .3}, 0, gate(3, 8)),
			step("pike-45", program.Press{Trunk: 75 * deg, Feet: .45}, 0, gate(3, 8)),
			step("box", program.Press{Trunk: 90 * deg, Feet: .8}, 0, gate(3, 6)),
			step("lower", program.Press{Rest: program.PressAtWall, Gap: .15, Lower: true}, 0, gate(5, 3)),
			step("wall", program.Press{Rest: program.PressAtWall, Gap: .15}, 0, gate(3, 5)),
			step("chest", program.Press{Rest: program.PressAtWall, Gap: .05}, 1.05, gate(3, 4)),
			step("raised-5", program.Press{Rest: program.PressAtWall, Gap: .15, Hands: .05}, 0, gate(3, 3)),
			step("raised-10", program.Press{Rest: program.PressAtWall, Gap: .15, Hands: .1}, 0, gate(3, 3)),
			step("free", program.Press{Rest: program.PressFree}, 1.15, gate(3, 2)),
		}})
	a := program.Assessment{Slug: "x", Measured: program.NewDate(2027, 1, 4),
		Athlete:  program.Athlete{Name: "X", Sex: program.SexMale, Born: program.NewDate(1995, 1, 1), Mass: 73, Height: 1.76},
		Training: program.Training{Experience: 45, Days: []time.Weekday{1, 3, 5}, Minutes: 60},
		Health:   program.Health{Wrists: program.JointFine, Elbows: program.JointFine, Shoulders: program.JointFine},
		Goal:     program.Goal{Skill: "press", Step: "wall", Hold: 15, By: program.NewDate(2027, 12, 1)},
		Kit:      []string{"wall", "box", "pull-up bar"}, Hanging: program.Hanging{Pads: []float64{.05, .10, .15}},
		Tests: []program.Hold{{Step: "box", Reps: 6}}, Places: program.Places{}}
	return &lib, a
}

// hardReps are the repetitions of a week's main and heavy work. All items of a step are
// printed with three seconds a repetition, and looked at.
func hardReps(t *testing.T, w *program.Week, look func(*program.Prescription)) (hard int) {
	t.Helper()
	for i := range w.Sessions {
		for _, item := range onSteps(&w.Sessions[i]) {
			if item.Hold != 3*item.Reps {
				t.Errorf("week %d: %d s for %d repetitions", w.Number, item.Hold, item.Reps)
			}
			if item.Role == program.RoleMain || item.Role == program.RoleAhead {
				hard += item.Sets * item.Reps
			}
			look(&item)
		}
	}
	return hard
}

// A press is printed in repetitions, three to five of the main work (common practice for
// strength), with hard ones beside it, thirty to forty-five a week to start (our
// judgement); pads are help, and no step is held on straight arms.
func TestPressIsPlannedInRepetitions(t *testing.T) {
	lib, a := pressing(t)
	p, problems := planner.Plan(lib, &a)
	if len(problems) > 0 || len(p.Weeks) != 12 {
		t.Fatal(problems, p.Withheld)
	}
	pads := map[float64]bool{}
	for _, w := range p.Weeks {
		hard := hardReps(t, &w, func(item *program.Prescription) {
			if item.StraightArm {
				t.Errorf("week %d: %s on straight arms", w.Number, item.Step)
			}
			if item.Role == program.RoleMain && w.Kind == program.WeekBuild && !w.Gate && (item.Reps < 3 || item.Reps > 5) {
				t.Errorf("week %d: %d repetitions of main work", w.Number, item.Reps)
			}
			pads[item.Rig.Pad] = true
		})
		if w.Number == 1 && (w.Step != "box" || hard < 30 || hard > 45) {
			t.Errorf("week 1: %s, %d hard repetitions", w.Step, hard)
		}
	}
	if !pads[0.10] || !pads[0.05] {
		t.Errorf("pads under the head: %v", pads)
	}
}

// Ten pikes from the floor tell nothing of being upside down: until the line at the wall is
// shown nobody presses there, whatever was tested.
func TestPressesAskForTheirEntry(t *testing.T) {
	lib, a := pressing(t)
	road := &lib.RoadMaps[len(lib.RoadMaps)-1]
	road.Entry = []program.Hold{{Exercise: "wall-handstand-line", Seconds: 45}}
	for seconds, presses := range map[float64]bool{0: false, 30: false, 45: true} {
		a.Tests = []program.Hold{{Step: "box", Reps: 6}, {Exercise: "wall-handstand-line", Seconds: seconds}}
		p, _ := planner.Plan(lib, &a)
		if got := p.Weeks[0].Step != ""; got != presses {
			t.Errorf("a line of %.0f s: presses in week 1: %v", seconds, got)
		}
	}
}

// Six repetitions at RPE 7, where four are printed, are good news; two, with the form
// broken at RPE 10, are bad news, and nothing gets harder.
func TestRepetitionsAreRead(t *testing.T) {
	lib, a := pressing(t)
	first, _ := planner.Plan(lib, &a)
	before := first.Capacity.Held12
	after := func(reps int, rpe float64, clean program.Clean) float64 {
		b := a
		for _, s := range first.Weeks[0].Sessions {
			if slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return i.Role == program.RoleMain }) {
				b.Log.Entries = append(b.Log.Entries, program.Entry{Date: s.Date, Exercise: "tuck-hold", Step: "box", RigGiven: true,
					Sets: []program.SetDone{{Number: 1, Reps: reps, RPE: rpe, Clean: clean}, {Number: 2, Reps: reps, RPE: rpe, Clean: clean}}})
			}
		}
		r, next, _ := planner.Read(lib, &b, nil, first.Weeks[1].Start)
		if len(next.Weeks) == 0 {
			t.Fatal(r.Withheld)
		}
		return next.Capacity.Held12
	}
	good, bad := after(6, 7, program.CleanYes), after(2, 10, program.CleanNo)
	if good < before*1.02 || bad > before*0.97 {
		t.Errorf("%.0f N before; %.0f after six, %.0f after two broken ones", before, good, bad)
	}
}

// Nine from a box, which is the goal: five or six are the first work (common practice: three
// or four are left), six by the fourth week, seven before the test, as strength comes; never
// a set with less than a quarter in hand of what is reckoned with. Once it was five for eleven
// weeks, half of what there was by then. Who comes back goes faster, to eight, two more than
// the gate: then the wall is the better goal.
func TestRepetitionsGrowWhereTheStepStays(t *testing.T) {
	for best, want := range map[int][]int{0: {5, 6, 6, 0, 6, 6, 6, 0, 7, 7, 7, 0}, 4: {5, 6, 0, 7, 7, 0, 7, 8, 0, 8, 8, 0}} {
		c := readPanel(t, []string{"testdata/panel/33-press-box.txt"})[0]
		a := *c.assessment
		a.Hanging.Pads, a.Goal.Step, a.Goal.Hold = nil, "box-pike", 36
		a.Tests = slices.Clone(a.Tests)
		if a.Tests[0].Reps = 9; best > 0 {
			a.Training.Experience, a.Training.Best = 10, &program.Hold{Step: "wall", Reps: best}
		}
		p, _ := planner.Plan(c.library, &a)
		for i, w := range p.Weeks {
			if w.Kind != program.WeekBuild {
				continue
			}
			if w.Step != "box-pike" || w.Hold != 3*want[i] {
				t.Errorf("best %d, week %d: %s, %d repetitions, wanted %d", best, w.Number, w.Step, w.Hold/3, want[i])
			}
			if part := float64(w.Hold) / w.MaxHold; part < 0.60 || part > 0.75 {
				t.Errorf("best %d, week %d: %.2f of %.1f s", best, w.Number, part, w.MaxHold)
			}
		}
	}
}
