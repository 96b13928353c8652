package planner

import (
	"cmp"
	"slices"

	"gatepost/program"
)

// compose puts a session together: the preparation, the groups, and sets against them
// in a ratio (per cent) to the sets of those groups: pulling against pushing.
func (x *exercises) compose(d day, groups []group, ratio int) []program.Prescription {
	items := x.prepare(d)
	work, rests := 0, 0
	for _, g := range groups {
		items = append(items, g.items...)
		for _, item := range g.items {
			if weighed(item.Role) && !item.Try {
				work += item.Sets
			}
			if item.Role == program.RoleMain && item.Rest >= pullRest {
				rests = item.Sets - 1
			}
		}
	}
	if !d.test || d.load.main.none() {
		items = append(items, x.against(d, max(0, d.against+(work*ratio+99)/100-setsAgainst(items)), rests)...)
	}
	return x.handed(d, items)
}

// weighed reports whether a role's sets are balanced by others.
func weighed(r program.Role) bool {
	switch r {
	case program.RoleMain, program.RoleAhead, program.RoleSecond, program.RoleStrength:
		return true
	}
	return false
}

// usualItems is how many the fullest sessions of two hundred clients had (measured).
const usualItems = 12

// prepare is the floor of every session.
func (x *exercises) prepare(d day) []program.Prescription {
	out := make([]program.Prescription, 0, usualItems) // of a session: what follows is added to it
	for _, purpose := range x.road.Prepare {
		if e := x.choose(need{purpose: purpose, bentArms: d.clear || !d.straight}); e != nil {
			item := x.dose(day{}, e, program.RolePrepare)
			item.Rest = 0 // the three take turns
			out = append(out, item)
		}
	}
	return out
}

// thirdFrom is how many sets against the work are shared among three exercises.
const thirdFrom = 6

// against shares the sets that balance the work between two exercises, in a long session
// three; one of them is done in the rests of the main work where those are long enough.
func (x *exercises) against(d day, sets, rests int) []program.Prescription {
	var shares []*program.Exercise
	for _, purpose := range x.sharing(d, sets) {
		if e := x.choose(need{purpose: purpose, bentArms: !d.straight || d.clear, easier: len(x.open) > 0}); e != nil {
			shares = append(shares, e)
		}
	}
	if sets == 1 && len(shares) > 1 && d.rear {
		shares[0] = shares[1]
	}
	var out []program.Prescription
	for i, e := range shares {
		n := sets / len(shares)
		if i < sets%len(shares) {
			n++
		}
		if n == 1 && sets > 1 && e.EachSide && d.straight {
			n = 2 // one of each side
		}
		if n == 0 {
			continue
		}
		item := x.dose(d, e, x.road.RoleAgainst())
		item.Sets = n
		if n <= rests && setTime(item)+20 <= mainRest {
			item.InRests, rests = true, 0
		}
		out = append(out, item)
	}
	return out
}

// sharing are the two purposes that share the sets against the work, and a third for many
// sets: the further ones take turns, or it is slow curls for elbows that are sore and pull.
func (x *exercises) sharing(d day, sets int) []program.Purpose {
	all := x.road.Against
	first, further := all[:min(2, len(all))], all[min(2, len(all)):]
	curl := x.limits.elbowSore && x.road.RoleAgainst() == program.RolePull
	if sets < thirdFrom && !(curl && sets > len(first)) {
		return first
	}
	third := 0
	switch {
	case curl:
		further = []program.Purpose{program.ForCurl}
	case len(further) == 0:
		return first
	case d.straight:
		third = d.number % len(further)
	}
	return slices.Concat(first, further[third:third+1])
}

// lengthIn is the time in seconds, rests counted, of a session that has so many minutes.
func lengthIn(minutes int, items []program.Prescription) int {
	total := prepareTime
	if minutes <= shortSession {
		total = prepareTimeShort
	}
	for _, item := range items {
		if item.Role != program.RolePrepare && !item.InRests {
			total += changeOver + item.Sets*setTime(item) + (item.Sets-1)*item.Rest
		}
		if item.Max {
			total += item.Rest // the next one waits
		}
	}
	return total
}

// longestTest is what the longest test lasts, s; a longer one is not read.
const longestTest = 300

// setTime is how long one set takes; a maximal hold is reckoned at what it is
// predicted to last.
func setTime(item program.Prescription) int {
	t := item.Hold
	if item.Reps > 0 {
		t = program.SecondsPerRep * item.Reps
	}
	if t == 0 {
		t = min(int(item.MaxHold), longestTest)
	}
	if item.Try {
		t = max(t, tryReckoned)
	}
	return t
}

// inOrder sorts items as they are done: test and heavy work fresh, pulls that
// fill the main work's rests right after it, an open set last of the main work.
func inOrder(items []program.Prescription, open bool) []program.Prescription {
	slices.SortStableFunc(items, func(a, b program.Prescription) int { return cmp.Compare(place(a, open), place(b, open)) })
	return items
}

func place(item program.Prescription, open bool) int {
	order := []program.Role{program.RolePrepare, program.RoleTest, program.RoleAhead, program.RoleMain,
		program.RoleSecond, program.RoleStrength, program.RolePull, program.RolePush, program.RoleTrunk, program.RoleMobility}
	at := 2 * slices.Index(order, item.Role)
	if item.InRests || open && item.Check {
		at = 2*slices.Index(order, program.RoleMain) + 1
	}
	return at
}

// dropped says what the minutes left no room for beside items, and what a light day, one held
// to another plan's, or one that is hard elsewhere, leaves out on purpose.
func (x *exercises) dropped(d day, items []program.Prescription, groups []group) []program.Note {
	var out []program.Note
	if d.straight && !d.load.main.none() && !slices.ContainsFunc(items, func(i program.Prescription) bool { return isMain(&i) }) && !d.test {
		out = append(out, note(noteLightDay, word("role", "role.main")))
	}
	why := noteNoTime
	if d.hard {
		why = noteHardDay
		if d.straight {
			out = append(out, note(why, word("role", "role.strength")))
		}
	}
	said := ""
	for _, g := range groups {
		if g.key != said {
			out = append(out, note(why, word("role", g.key)))
		}
		said = g.key
	}
	return out
}
