package planner

// choice is one rig that a build week could use.
type choice struct {
	rig  int // which, among all rigs of the step
	help int // tenths of a newton
	hold int // s
}

// menu is one build week's choices. Weeks of the same step stand together. A gate
// week has one choice, free, which need not stay two weeks, nor the one before it.
type menu struct {
	step    int
	gate    bool
	choices []choice
}

// bill is what a choice of rigs costs: total help first, then changes, then how
// far the holds lie from twelve seconds.
type bill struct{ help, changes, off int }

func (b bill) less(c bill) bool {
	if b.help != c.help {
		return b.help < c.help
	}
	if b.changes != c.changes {
		return b.changes < c.changes
	}
	return b.off < c.off
}

func (b bill) plus(c bill) bill { return bill{b.help + c.help, b.changes + c.changes, b.off + c.off} }

// middleHold is the hold that a rig is best for, s.
const middleHold = 12

func (c choice) bill() bill {
	return bill{help: c.help, off: max(c.hold-middleHold, middleHold-c.hold)}
}

// chain is a way through the weeks so far, ending in one choice.
type chain struct {
	bill
	first bool // the choice is in its first week, with more of its step to come
	picks []int
}

// chooseRigs picks a choice for every week, exactly, by dynamic programming over
// (choice, whether it is new): within a step help never rises and a rig stays at
// least two weeks; the least bill wins, ties go to the earlier choices. It
// returns nil where no way through exists.
func chooseRigs(menus []menu) []int {
	chains := []chain{{}}
	for i := range menus {
		chains = extend(chains, menus, i)
	}
	best := -1
	for i, c := range chains {
		if last := len(menus) - 1; c.first && !lonely(menus, last) && !menus[last].gate {
			continue // a rig changed in the very last week
		}
		if best < 0 || c.less(chains[best].bill) {
			best = i
		}
	}
	if best < 0 {
		return nil
	}
	return chains[best].picks
}

// lonely says that a week is the only one of its step.
func lonely(menus []menu, i int) bool { return i < 0 || newStep(menus, i) && endsStep(menus, i) }

func newStep(menus []menu, i int) bool { return i == 0 || menus[i-1].step != menus[i].step }

func endsStep(menus []menu, i int) bool { return i+1 == len(menus) || menus[i+1].step != menus[i].step }

// extend adds one week to every chain and keeps, for each choice new or kept,
// the cheapest.
func extend(chains []chain, menus []menu, i int) []chain {
	var out []chain
	for pick, c := range menus[i].choices {
		var kept, fresh *chain
		for k := range chains {
			next, ok := chains[k].with(menus, i, pick, c)
			if !ok {
				continue
			}
			slot := &kept
			if next.first {
				slot = &fresh
			}
			if *slot == nil || next.less((*slot).bill) {
				*slot = &next
			}
		}
		for _, c := range []*chain{kept, fresh} {
			if c != nil {
				c.picks = append(append([]int(nil), c.picks...), pick)
				out = append(out, *c)
			}
		}
	}
	return out
}

// with is the chain one week longer, where the rules allow it.
func (c *chain) with(menus []menu, i, pick int, now choice) (chain, bool) {
	next := chain{bill: c.bill.plus(now.bill()), picks: c.picks}
	if newStep(menus, i) {
		next.first = true
		if i > 0 {
			next.changes++
		}
		return next, true
	}
	before := menus[i-1].choices[c.picks[i-1]]
	if before.rig == now.rig {
		return next, true
	}
	free := menus[i].gate || menus[i-1].gate
	if c.first && !free || now.help > before.help {
		return next, false
	}
	next.first = true
	next.changes++
	return next, true
}
