package planner

import "slices"

// choice is one rig that a build week could use.
type choice struct {
	rig   int // which, among all rigs of the step
	help  int // tenths of a newton
	hold  int // s
	short int // s, short of ten, or of three repetitions
	slack int // hundredths of the maximum that the hold falls short of its least effort
}

// candidates are one build week's choices, by their help. Weeks of the same step stand
// together. A gate week has one choice, free, which need not stay two weeks, nor the
// one before it.
type candidates struct {
	step    int
	gate    bool
	choices []choice
}

// cost is what a choice of rigs costs, the first that differs decides: effort below
// what trains, then seconds short of ten, help, changes, and how far the holds lie from
// twelve seconds.
type cost struct{ slack, short, help, changes, off int }

func (a cost) less(b cost) bool {
	switch {
	case a.slack != b.slack:
		return a.slack < b.slack
	case a.short != b.short:
		return a.short < b.short
	case a.help != b.help:
		return a.help < b.help
	case a.changes != b.changes:
		return a.changes < b.changes
	}
	return a.off < b.off
}

func (a cost) plus(b cost) cost {
	return cost{a.slack + b.slack, a.short + b.short, a.help + b.help, a.changes + b.changes, a.off + b.off}
}

func (c choice) cost() cost {
	return cost{slack: c.slack, short: c.short, help: c.help, off: max(c.hold-middleHold, middleHold-c.hold)}
}

// path is the cheapest way through the weeks so far to a choice; from is where it
// comes from, twice the choice before and one more where that was in its first week.
type path struct {
	cost
	open bool // there is such a way
	from int
}

func (p path) then(c cost) path {
	p.cost = p.cost.plus(c)
	return p
}

// cheaper is the cheaper of two paths, the first of equals.
func cheaper(p, q path) path {
	if !p.open || q.open && q.less(p.cost) {
		return q
	}
	return p
}

// ends are the paths to one choice: as a rig kept from the week before, or in its
// first week, with more of its step to come.
type ends struct{ kept, fresh path }

// chooseRigs picks a choice for every week, exactly, by dynamic programming over
// (choice, whether it is new): within a step help never rises and a rig stays at
// least two weeks; the least cost wins. It returns nil where no way through exists.
func chooseRigs(weeks []candidates) []int {
	table := make([][]ends, len(weeks))
	for i := range weeks {
		table[i] = extend(weeks, table, i)
	}
	if len(weeks) == 0 {
		return []int{}
	}
	last := len(weeks) - 1
	best := least(table[last], lonely(weeks, last) || weeks[last].gate)
	if !best.open { // or a rig changes in the very last week
		return nil
	}
	picks := make([]int, len(weeks))
	for i := last; i >= 0; i-- {
		picks[i] = best.from / 2
		if at := table[i][best.from/2]; best.from%2 == 1 {
			best = at.fresh
		} else {
			best = at.kept
		}
	}
	return picks
}

// least is the cheapest of a week's paths, as seen from the next week; fresh ones
// count where they may end.
func least(all []ends, fresh bool) path {
	var best path
	for i, e := range all {
		best = cheaper(best, e.left(i, fresh))
	}
	return best
}

// left is the cheaper path to a choice, as seen from the next week.
func (e ends) left(choice int, fresh bool) path {
	e.kept.from, e.fresh.from = 2*choice, 2*choice+1
	if !fresh {
		return e.kept
	}
	return cheaper(e.kept, e.fresh)
}

// lonely says that a week is the only one of its step.
func lonely(weeks []candidates, i int) bool { return newStep(weeks, i) && endsStep(weeks, i) }

func newStep(weeks []candidates, i int) bool { return i == 0 || weeks[i-1].step != weeks[i].step }

func endsStep(weeks []candidates, i int) bool {
	return i+1 == len(weeks) || weeks[i+1].step != weeks[i].step
}

// extend are the paths one week longer.
func extend(weeks []candidates, table [][]ends, i int) []ends {
	out := make([]ends, len(weeks[i].choices))
	if newStep(weeks, i) {
		way := path{open: true}
		if i > 0 {
			way = least(table[i-1], true).then(cost{changes: 1})
		}
		for pick, c := range weeks[i].choices {
			out[pick].fresh = way.then(c.cost())
		}
		return out
	}
	before := weeks[i-1].choices
	changed := fromThere(table[i-1], weeks[i].gate || weeks[i-1].gate)
	for pick, c := range weeks[i].choices {
		same := slices.IndexFunc(before, func(b choice) bool { return b.rig == c.rig })
		if same >= 0 {
			out[pick].kept = table[i-1][same].left(same, true).then(c.cost())
		}
		if more := slices.IndexFunc(before, func(b choice) bool { return b.help >= c.help }); more >= 0 {
			out[pick].fresh = changed[more].then(c.cost().plus(cost{changes: 1}))
		}
	}
	return out
}

// fromThere are, for each choice, the cheapest of the paths to it and to those that
// help more.
func fromThere(all []ends, fresh bool) []path {
	out := make([]path, len(all))
	var best path
	for i := len(all) - 1; i >= 0; i-- {
		best = cheaper(all[i].left(i, fresh), best)
		out[i] = best
	}
	return out
}
