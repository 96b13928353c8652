package planner

import (
	"slices"
	"testing"
	"time"

	"gatepost/program"
	"gatepost/program/ladder"
)

// tested are the tests of a block's last day.
func tested(p *program.Program) (tests []program.Prescription) {
	last := p.Weeks[len(p.Weeks)-1]
	for _, it := range last.Sessions[len(last.Sessions)-1].Items {
		if it.Role == program.RoleTest {
			tests = append(tests, it)
		}
	}
	return tests
}

// A tuck of 160 seconds and a harder step beside it take 27 minutes to test. In twenty
// there is time for the tuck alone, which is what the block trained.
func TestNoTimeForTwoTestsLeavesOne(t *testing.T) {
	long := func(a *program.Assessment) {
		a.Tests = []program.Hold{{Step: "tuck", Seconds: 160}}
		a.Goal.Step, a.Goal.Hold = "half-open-tuck", 10
		noBands(a)
	}
	for minutesEach, want := range map[int]int{20: 1, 60: 1} {
		p := programOf(t, clientOf(t, long, minutes(minutesEach), on(sat)))
		tests := tested(&p)
		if len(tests) != want || !tests[0].Max || tests[0].Step != p.Weeks[len(p.Weeks)-2].Step {
			t.Errorf("%d minutes: tests %+v", minutesEach, tests)
		}
	}
}

// Who may not put weight on the hands trains the trunk, and the block ends with a
// clean trunk hold as long as the block came to: with sore wrists nothing goes to its end.
func TestBlockWithoutHandsTestsTheTrunk(t *testing.T) {
	for age, open := range map[int]bool{15: false, 30: false} {
		p := programOf(t, clientOf(t, untrained, soreWrists, aged(age), on(sat)))
		tests := tested(&p)
		if len(tests) != 1 || tests[0].Exercise != "hollow-hold" || !tests[0].Check || tests[0].Max || tests[0].Sets != 1 || (tests[0].Hold == 0) != open {
			t.Errorf("%d years: tests %+v", age, tests)
		}
		trained := false
		for _, it := range items(&p.Weeks[0]) {
			trained = trained || it.Exercise == "hollow-hold"
		}
		if !trained {
			t.Error("the first week trains something else")
		}
	}
	presses := func(a *program.Assessment) { // push-ups and a line at the wall are asked for first
		a.Goal = program.Goal{Skill: "handstand-push-up", Step: "wall", Hold: 9, By: a.Measured + 180}
		a.Kit, a.Tests = []string{"wall"}, []program.Hold{{Step: "raised-pike", Reps: 4, Seconds: 12}}
	}
	p := programOf(t, clientOf(t, presses, soreWrists, aged(15), on(sat)))
	if tests := tested(&p); len(tests) != 1 || tests[0].Exercise != "hollow-hold" || !tests[0].Check || tests[0].Hold == 0 {
		t.Errorf("before the entry of a press: tests %+v", tests)
	}
}

// A girl of thirteen with a sore elbow is away for all of a block of five weeks but the last, and sound
// ones in her place would only try a lowering: her one day tests the trunk.
func TestABlockThatIsAwayEndsWithATest(t *testing.T) {
	p := planOf(t, func(a *program.Assessment) {
		a.Athlete = program.Athlete{Name: "Some One", Sex: program.SexFemale, Born: a.Measured - 4745, Mass: 40, Height: 1.45, ArmSpan: 1.3775}
		a.Training = program.Training{Days: []time.Weekday{time.Sunday}, Minutes: 20, Away: []program.Interval{{From: a.Measured, To: blockStart(a) + 27}}}
		a.Health = program.Health{Wrists: program.JointFine, Elbows: program.JointSore, Shoulders: program.JointFine, Guardian: "Some Body"}
		a.Goal = program.Goal{Skill: "handstand-push-up", Step: "free", Hold: 3, Reps: 1, By: blockStart(a) + 30}
		a.Kit, a.Bands, a.Hanging = []string{ladder.Parallettes}, nil, program.Hanging{Anchor: 1.8, Support: .1, Drops: []float64{0}}
		a.Tests = []program.Hold{{Exercise: "wall-handstand-line", Seconds: 45}, {Exercise: "push-up", Reps: 15}, {Step: "free", Reps: 5}}
	})
	if tests := tested(&p); len(p.Weeks) != 5 || len(tests) != 1 || tests[0].Exercise != "hollow-hold" {
		t.Errorf("%d weeks, tests %+v", len(p.Weeks), tests)
	}
}

// Where a test's day is spent without the box that the next step stands on, which is the goal,
// the step that needs none is tested alone.
func TestTheTestNeedsWhatIsThere(t *testing.T) {
	p := planOf(t, func(a *program.Assessment) {
		a.Athlete = program.Athlete{Name: "Some One", Born: monday - 6205, Mass: 40, Height: 1.52, ArmSpan: 1.4592}
		a.Health = program.Health{Wrists: program.JointFine, Elbows: program.JointFine, Shoulders: program.JointFine, Guardian: "Some Body"}
		a.Measured, a.Training = monday, program.Training{Days: []time.Weekday{time.Friday}, Minutes: 20}
		a.Goal = program.Goal{Skill: "handstand-push-up", Step: "raised-pike", Hold: 3, Reps: 1, By: monday + 1}
		a.Kit, a.Bands, a.Hanging = []string{"box"}, nil, program.Hanging{Anchor: 1.8, Support: .1, Drops: []float64{0}, Pads: []float64{.2}}
		a.Tests = []program.Hold{{Exercise: "wall-handstand-line", Seconds: 45}, {Exercise: "push-up", Reps: 15}}
		a.Wishes = program.Wishes{{Kind: program.WishAt, From: monday, To: monday + 4}}
	})
	if tests := tested(&p); len(tests) != 1 || tests[0].Step != "pike" {
		t.Errorf("tests %+v", tests)
	}
}

// strong is a client who has trained for a year, of whom nothing hurts and who holds the
// open half lay eleven seconds, the straddle ten with a narrow band.
func strong(a *program.Assessment) {
	a.Athlete.Sex, a.Athlete.Mass, a.Athlete.Height, a.Athlete.ArmSpan = program.SexMale, 71, 1.75, 1.78
	a.Health.Wrists, a.Training.Experience, a.Training.Since, a.Training.Minutes, a.Training.Weeks = program.JointFine, 52, 0, 75, 16
	a.Goal.Step, a.Goal.Hold = "straddle", 10
	a.Tests = []program.Hold{{Step: "open-half-lay", Seconds: 11}, {Step: "straddle", Rig: program.Rig{Bands: []string{"narrow"}}, Seconds: 10}}
}

// In a block that ends with the goal's day, a goal that was held ten seconds with a band
// is the main work of every build week, ten seconds or more, with less help in the end
// than in the beginning, and it is what the last day tests, free. A goal a year off, and
// one held nine seconds only, wait for the step before (our judgement).
func TestTheGoalOfTheBlockIsItsMainWork(t *testing.T) {
	for _, c := range []struct {
		name  string
		days  program.Date // to the goal, from the tests
		hold  float64
		works string
	}{
		{"in sixteen weeks", 111, 10, "straddle"},
		{"in a year", 365, 10, "open-half-lay"},
		{"held nine seconds", 111, 9, "open-half-lay"},
	} {
		p := planOf(t, func(a *program.Assessment) {
			strong(a)
			a.Goal.By, a.Tests[1].Seconds = a.Measured+c.days, c.hold
		})
		weeks := builds(&p)
		for _, w := range weeks {
			if w.Step != c.works || w.Hold < 10 || w.Hold > 15 {
				t.Errorf("%s: week %d has %d s of the %s", c.name, w.Number, w.Hold, w.Step)
			}
		}
		if first, last := weeks[0].Help, weeks[len(weeks)-1].Help; last >= first {
			t.Errorf("%s: %.0f N of help in the end, %.0f in the beginning", c.name, last, first)
		}
		if tests := tested(&p); tests[0].Step != c.works && c.works == "straddle" || !tests[0].Max || !tests[0].Rig.Free() {
			t.Errorf("%s: tests %+v", c.name, tests)
		}
	}
}

// The last day tests what the block trained, and that first. A harder step is tested
// beside it where the block held it too (heavy work, from half a year on), or where it
// is the goal; the goal first if its day has come (our judgement).
func TestTheLastDayTestsWhatTheBlockTrained(t *testing.T) {
	fine := func(seconds float64, goal string, more ...func(*program.Assessment)) func(*program.Assessment) {
		return func(a *program.Assessment) {
			noBands(a)
			a.Health.Wrists, a.Training.Experience, a.Training.Since = program.JointFine, 12, 0
			a.Tests, a.Goal.Step = []program.Hold{{Step: "tuck", Seconds: seconds}}, goal
			for _, bend := range more {
				bend(a)
			}
		}
	}
	for _, c := range []struct {
		name   string
		change func(*program.Assessment)
		want   []string
	}{
		{"the next step was not trained", fine(12, "straddle"), []string{"tuck"}},
		{"the next step is the goal, later", fine(12, "half-open-tuck"), []string{"tuck", "half-open-tuck"}},
		{"the goal's day is in the block", fine(12, "half-open-tuck", func(a *program.Assessment) { a.Goal.By = a.Measured + 60 }), []string{"half-open-tuck", "tuck"}},
		{"the goal's day, but out of reach", fine(12, "advanced-tuck", func(a *program.Assessment) { a.Goal.By = a.Measured + 60 }), []string{"tuck"}},
		{"trained for half a year", fine(12, "straddle", func(a *program.Assessment) { a.Training.Experience = 30 }), []string{"tuck", "half-open-tuck"}},
	} {
		p := planOf(t, c.change)
		var got []string
		for _, it := range tested(&p) {
			got = append(got, it.Step)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: tests %v, wanted %v", c.name, got, c.want)
		}
	}
}

// A block that ends after a week in which nothing was held, with its goal's day past, is
// followed by one of a test week alone: its short sessions are a part of the week before
// that one, and not of nothing.
func TestTheTestWeekAfterAMissedOne(t *testing.T) {
	lib, a := library(t), clientOf(t, on(mon, thu, fri))
	a.Goal.By = 20856 // 2027-02-07, a Sunday
	p, _ := Plan(lib, &a)
	wall := []program.PlanVersion{Version(&p, 1, a.Measured)}
	n := len(p.Weeks)
	missed, last := &p.Weeks[n-2], &p.Weeks[n-3]
	a.Log = asPrinted(&p, n-3)
	friday := missed.Sessions[len(missed.Sessions)-1]
	a.Log.Entries = append(a.Log.Entries, program.Entry{Date: friday.Date, AsPrinted: true})
	q := Replan(lib, &a, wall, a.Goal.By-1)
	test := &q.Weeks[0]
	if len(q.Weeks) != 1 || test.Kind != program.WeekTest || last.HalfSeconds != 233 || countedOf(&friday) != 0 {
		t.Fatalf("%d weeks, the first %s, after %d half seconds", len(q.Weeks), test.Kind, last.HalfSeconds)
	}
	if test.HalfSeconds == 0 || test.HalfSeconds > 137 {
		t.Errorf("the test week holds %d half seconds, wanted 137 at the most", test.HalfSeconds)
	}
}
