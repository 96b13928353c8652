package planner

import (
	"testing"

	"gatepost/program"
)

// Four leans of fifteen seconds, that were printed at .49 of the maximum, which weighs
// nothing, and are at .51 by today's estimate: the same four leans ask no more than
// themselves, a fifth would.
func TestSetsAreWeighedByOneEstimate(t *testing.T) {
	p := capableOf(t, 20, nil)
	lean := program.Prescription{Exercise: "planche-lean", Role: program.RoleMain, Sets: 4, Hold: 15, Ahead: 0.14, StraightArm: true, MaxHold: 75, Load: 0.51}
	then := lean
	then.Load = 0.49
	for _, sets := range []int{4, 5} {
		lean.Sets = sets
		got := p.boundTo(p.armWorkOf([]program.Prescription{then}, 0), []group{{"role.main", []program.Prescription{lean}}}, 0)
		if len(got) != 1 || len(got[0].items) != 1 || got[0].items[0].Sets != 4 {
			t.Errorf("of %d leans, four of them printed: %+v", sets, got)
		}
	}
}
