package planner

import "gatepost/program"

// clearance lists why no program may be made yet: under 18 without a guardian's
// word, an injured joint or a condition without somebody's clearance.
func clearance(a *program.Assessment) []program.Note {
	var out []program.Note
	h := a.Health
	if a.Measured.YearsSince(a.Athlete.Born) < adultAge && h.Guardian == "" {
		out = append(out, note(noteUnder18))
	}
	if h.ClearedBy.Name != "" && h.ClearedBy.On != 0 {
		return out
	}
	for _, j := range []struct {
		state program.Joint
		key   string
	}{{h.Wrists, "joint.wrists"}, {h.Elbows, "joint.elbows"}, {h.Shoulders, "joint.shoulders"}} {
		if j.state == program.JointInjured {
			out = append(out, note(noteInjured, word("joint", j.key)))
		}
	}
	if len(h.Conditions) > 0 { // which one stays with the coach: health is never printed
		out = append(out, note(noteCondition))
	}
	return out
}
