package planner

import "gatepost/program"

// Rules that a coach may set, as their file has them. All but the first two go into the
// limits of the client, under what health asks for (limits.go).
const (
	ruleMinutes    = "minutes"
	ruleMainSets   = "main_sets"
	ruleDeload     = "deload_every"
	ruleEffort     = "effort"
	ruleTestRest   = "test_rest"
	ruleCeiling    = "ceiling"
	ruleRise       = "rise"
	ruleHeavyAfter = "heavy_after"
)

// readRule says what became of a rule that is set: where health asks for more it is refused,
// and where it is laxer than the table it is named.
func (p *plan) readRule(r *program.WishRead) {
	refuse := func(n program.Note) { r.State, r.Why = program.WishRefused, []program.Note{n} }
	table := *p.athlete
	table.Rules = program.Rules{}
	usual := limitsIn(p.road, &table, p.weeks[0].start)
	switch r.Rule {
	case ruleDeload:
		if r.Number > p.limits.deloadEvery {
			refuse(note(noteWishDeloadKept, count("weeks", p.limits.deloadEvery)))
		} else if r.Number > usual.deloadEvery {
			r.Why = append(r.Why, note(noteWishDeload, count("weeks", usual.deloadEvery)))
		}
	case ruleEffort:
		if set := float64(r.Number) / 100; set > p.limits.effort+1e-9 {
			refuse(note(noteWishEffortKept, shareOf("most", p.limits.effort)))
		} else if set > usual.effort+1e-9 {
			r.Why = append(r.Why, note(noteWishPlanned, shareOf("most", usual.effort)))
		}
	case ruleTestRest:
		if r.Number < p.limits.testRest {
			refuse(note(noteWishRestKept, count("days", p.limits.testRest)))
		}
	}
}
