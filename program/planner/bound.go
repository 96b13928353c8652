package planner

import (
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// bounds are what a week in the making is held to: other plans' weeks, and the days of
// those that were made of the same news.
type bounds struct {
	days []*program.Week
	wall []armWork
}

// easierBy is how much longer, in per cent, what is held must be predicted to last to
// count as easier work: some two per cent of load. Sets and seconds are then its own.
const easierBy = 110

func easier(max, than int) bool { return 100*max > easierBy*than }

// armWork is what a day asks of straight arms.
type armWork struct {
	max     int // tenths of a second, predicted here for the heaviest hold
	sets    int
	counted int // of them those that are tests or weigh in the week's seconds
	items   []program.Prescription
}

func (h *holds) armWorkOf(items []program.Prescription, week int) armWork {
	a := armWork{max: math.MaxInt32}
	for i := range items {
		if isArm(&items[i]) && !isLight(&items[i]) {
			a.items = append(a.items, items[i])
			a.max = min(a.max, h.lasts(&items[i], week))
			a.sets += items[i].Sets
			if h.weighs(&items[i], week) {
				a.counted += items[i].Sets
			}
		}
	}
	return a
}

// weighs reports whether an item is a test or weighs in a week's seconds, by what it is
// predicted to ask now: other plans' items and marks were weighed by another estimate.
func (h *holds) weighs(item *program.Prescription, week int) bool {
	now := *item
	now.Load = h.look.shareHeld(h.lasts(item, week))
	now.Find.Marks = slices.Clone(item.Find.Marks)
	for i := range now.Find.Marks {
		m := &now.Find.Marks[i]
		at := item.Moved(m.At)
		m.Load = h.look.shareHeld(h.lasts(&at, week))
	}
	return item.Role == program.RoleTest || counted(now) > 0
}

// lasts is how long an item is predicted to last at the most, tenths of a second.
func (h *holds) lasts(item *program.Prescription, week int) int {
	return h.look.maxHold(h.workOf(item).aid, week)
}

// bound holds a day's straight-arm work to what other plans ask of the day: nothing
// heavier, and unless all of it is lighter, no more sets and no longer holds.
func (lo *layout) bound(d day, groups []group) []group {
	var others []armWork
	for _, w := range lo.bounds.days {
		if s := sessionOn(w, d.date); s != nil {
			others = append(others, lo.armWorkOf(s.Items, d.week))
		}
	}
	tested := false
	for _, than := range others {
		if groups = lo.boundTo(than, groups, d.week); d.test && !d.load.main.none() && !tests(groups) {
			groups = append([]group{{"role.test", lo.testedThere(than.items, d)}}, groups...)
			tested = true
		}
	}
	if tested { // what one plan tests may be more than an earlier one asks of the day
		for _, than := range others {
			groups = lo.boundTo(than, groups, d.week)
		}
	}
	for _, most := range lo.bounds.wall {
		if d.test {
			break // which shows where the client is now
		}
		groups = lo.boundTo(most, groups, d.week)
	}
	return groups
}

// tests reports whether a day's work tests straight arms.
func tests(groups []group) bool {
	return anyItem(groups, func(i program.Prescription) bool { return isTest(&i) && isArm(&i) })
}

// anyItem reports whether a day's work has an item of a kind.
func anyItem(groups []group, is func(program.Prescription) bool) bool {
	return slices.ContainsFunc(groups, func(g group) bool { return slices.ContainsFunc(g.items, is) })
}

// testedThere is what another plan tests, at the hold that is predicted here; of a step that
// sore wrists leave out, the nearest below that lasts as long.
func (lo *layout) testedThere(items []program.Prescription, d day) []program.Prescription {
	var out []program.Prescription
	for i := range items {
		if !isTest(&items[i]) || len(out) > 0 && d.oneTest {
			continue
		}
		w := lo.workOf(&items[i])
		if !lo.goesOn(w) {
			w = lo.noHeavier(d.load.main, lo.lasts(&items[i], d.week), d.week)
		}
		if !w.none() {
			out = append(out, lo.testOf(lo.again(w, d.week)))
		}
	}
	return out
}

// hardestDay is the most that any day of a printed week asks, of each kind.
func (h *holds) hardestDay(w *program.Week, week int) armWork {
	most := armWork{max: math.MaxInt32}
	for i := range w.Sessions {
		day := h.armWorkOf(w.Sessions[i].Items, week)
		most.max, most.sets, most.counted = min(most.max, day.max), max(most.sets, day.sets), max(most.counted, day.counted)
		most.items = append(most.items, day.items...)
	}
	return most
}

func (lo *layout) boundTo(than armWork, groups []group, week int) []group {
	var out []group
	var kept []program.Prescription
	for _, g := range groups {
		g.items = slices.DeleteFunc(slices.Clone(g.items), func(item program.Prescription) bool {
			return lo.tooHard(&item, than, week)
		})
		if len(g.items) > 0 {
			out, kept = append(out, g), append(kept, g.items...)
		}
	}
	mine := lo.armWorkOf(kept, week)
	if easier(mine.max, than.max) {
		return out
	}
	over, all := mine.counted-than.counted, mine.sets-than.sets
	for i := len(out) - 1; i >= 0; i-- {
		out[i].items = lo.trim(out[i].items, than.items, week, &over, &all)
	}
	return slices.DeleteFunc(out, func(g group) bool { return len(g.items) == 0 })
}

// tooHard reports whether straight-arm work asks more than another day's, of whatever kind:
// it is heavier than all of it, or than its tests, or a try where it has none as hard.
func (h *holds) tooHard(item *program.Prescription, than armWork, week int) bool {
	if !isArm(item) || isLight(item) {
		return false
	}
	return h.lasts(item, week) < than.max || h.heavierTest(item, than.items, week) || item.Try && !triedThere(item, than.items)
}

// heavierTest reports whether a test is heavier than every test of the same exercise among
// others, of which there are some: the tries beside them may be heavier still.
func (h *holds) heavierTest(item *program.Prescription, than []program.Prescription, week int) bool {
	if !isTest(item) {
		return false
	}
	same := false
	for i := range than {
		t := &than[i]
		if !isTest(t) || t.Exercise != item.Exercise {
			continue
		}
		if h.lasts(item, week) >= h.lasts(t, week) {
			return false
		}
		same = true
	}
	return same
}

// isTest reports whether an item tests something, which a try does not.
func isTest(item *program.Prescription) bool { return item.Role == program.RoleTest && !item.Try }

// triedThere reports whether a try is among others as hard as this one, or harder: of what is not
// likely to be held yet no hold is predicted, so that the help tells.
func triedThere(item *program.Prescription, than []program.Prescription) bool {
	return slices.ContainsFunc(than, func(t program.Prescription) bool {
		return t.Try && (t.Step != item.Step || t.Help+t.Scale <= item.Help+item.Scale+1e-9)
	})
}

// isLight reports whether an item is a try with the toes on the floor, which nobody can
// weigh and everybody may have.
func isLight(item *program.Prescription) bool { return item.Try && item.Step == "" }

// trim takes sets that are over from straight-arm items, those that weigh and all, and
// seconds that are over those of the same work.
func (h *holds) trim(items, than []program.Prescription, week int, over, all *int) []program.Prescription {
	for i := len(items) - 1; i >= 0; i-- {
		item := &items[i]
		if !isArm(item) || item.Try { // of a try there are three, or none
			continue
		}
		counts := h.weighs(item, week) // while it has sets
		for item.Sets > 0 && (*over > 0 && counts || *all > max(0, *over)) {
			if item.Sets--; counts {
				*over--
			}
			*all--
		}
		if longest := h.longestOf(item, than); longest > 0 && item.Hold > longest {
			if item.Hold = longest; item.Role == program.RoleSecond && longest < secondLeast {
				item.Sets = 0 // the lighter work is held long, or it is none
			}
		}
	}
	return slices.DeleteFunc(items, func(item program.Prescription) bool { return item.Sets == 0 })
}

// longestOf is the longest hold of the same work among others; 0 where there is none, or
// one to its end.
func (h *holds) longestOf(item *program.Prescription, than []program.Prescription) int {
	longest, exercise := 0, h.heldAs(item.Exercise)
	for i := range than {
		t := h.asPlanned(than[i])
		if h.heldAs(t.Exercise) != exercise || t.Step != item.Step || t.Ahead != item.Ahead || t.Scale != item.Scale || ladder.RigName(t.Rig) != ladder.RigName(item.Rig) {
			continue
		}
		if t.Hold == 0 {
			return 0
		}
		longest = max(longest, t.Hold)
	}
	return longest
}
