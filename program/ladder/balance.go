package ladder

import "gatepost/program"

// balance is a ladder of what is practised: steps in the order of the road map, the last of
// them the goal. None has a load that anything could be reckoned from, nor an aid: a figure
// is all that mechanics has to say of it.
func (b *Body) balance(a *program.Assessment, steps []*program.Step) {
	b.full = 1
	for _, s := range steps {
		b.All = append(b.All, Rung{Step: s, body: b, hung: []Aid{{}}})
	}
	for _, r := range b.All {
		if b.Steps = append(b.Steps, r); r.ID == a.Goal.Step {
			break
		}
	}
}
