package planner

import (
	"testing"

	"gatepost/program"
)

// Three sets of a one-legged lift or of a row become one in a deload, which would be the left
// side alone: there are two, one of each side. What has no sides is halved.
func TestDeloadsHaveBothSides(t *testing.T) {
	deloads := func(change func(*program.Assessment)) map[string]int {
		p := programOf(t, clientOf(t, change, on(mon, wed, fri), minutes(45), func(a *program.Assessment) {
			a.Kit, a.Bands = []string{"parallettes", "dumbbells"}, nil
		}))
		sets := map[string]int{}
		for i := range p.Weeks {
			for _, it := range items(&p.Weeks[i]) {
				if p.Weeks[i].Kind == program.WeekDeload {
					sets[it.Exercise] = max(sets[it.Exercise], it.Sets)
				}
			}
		}
		return sets
	}
	strong, novice := deloads(func(*program.Assessment) {}), deloads(untrained)
	for _, c := range []struct {
		exercise  string
		got, want int
	}{
		{"dumbbell-row", strong["dumbbell-row"], 2},
		{"compression-lift", strong["compression-lift"], 1},
		{"one-leg-compression-lift", novice["one-leg-compression-lift"], 2},
	} {
		if c.got != c.want {
			t.Errorf("%s: %d sets in a deload, wanted %d", c.exercise, c.got, c.want)
		}
	}
}
