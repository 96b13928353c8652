package planner

import (
	"cmp"

	"gatepost/program"
)

// Tells are what whoever knows training reads off a client's exercises and rhythm: the
// joints that are sore, by their names in a log, "youth", and "older". Gentle preparation
// says which joint it is, the first deload a week sooner that it is one of these.
func Tells(a *program.Assessment) []string {
	var all []string
	for _, joint := range []struct {
		name string
		is   program.Joint
	}{{"wrists", a.Health.Wrists}, {"elbows", a.Health.Elbows}, {"shoulders", a.Health.Shoulders}} {
		if sore(joint.is) {
			all = append(all, joint.name)
		}
	}
	switch age := a.Measured.YearsSince(a.Athlete.Born); {
	case age < youthAge:
		all = append(all, "youth")
	case age >= cmp.Or(a.Rules.Older, olderAge):
		all = append(all, "older")
	}
	return all
}
