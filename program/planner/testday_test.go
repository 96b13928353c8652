package planner

import (
	"testing"

	"gatepost/program"
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
}
