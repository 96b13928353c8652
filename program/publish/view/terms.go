package view

import (
	"cmp"
	"slices"
	"strings"

	"gatepost/program"
)

// terms are words of the trade that one sheet uses, explained on that sheet: "RPE: how
// hard, 1 to 10 …". Only what is met there is explained, and what is met most comes first.
type terms struct {
	*speech
	all []string
}

func (t *terms) add(met bool, name string, pairs ...string) {
	if met {
		t.all = append(t.all, t.say("term."+name, pairs...))
	}
}

// cardTerms are those of one card.
func (s *speech) cardTerms(c *Card, items []program.Prescription) []string {
	t := terms{speech: s}
	finds := slices.ContainsFunc(items, func(p program.Prescription) bool { return p.Find.Any() })
	t.add(finds || c.asks(s.say("rpe.title")), "rpe")
	t.add(finds, "found")
	if i := slices.IndexFunc(items, practised); i >= 0 {
		t.add(true, "tries", "box", s.say("card.reached", "hold", s.seconds(items[i].Hold)))
	}
	t.add(slices.ContainsFunc(items, func(p program.Prescription) bool { return leans(p) && s.wall(p.Ahead) != "" }), "hands")
	if i := slices.IndexFunc(items, leans); i >= 0 {
		t.add(true, "ahead", "length", s.centimetres(items[i].Ahead))
	}
	t.add(c.Kind != "" && c.KindKey == program.WeekBuild, "gate")
	t.add(c.KindKey == program.WeekDeload, "deload")
	t.add(!s.repeats() && !s.balances() && slices.ContainsFunc(items, heldFree), "free")
	t.add(c.asks(s.say("card.clean")), "boxes")
	return t.all
}

// lead puts that term first which was first on the fewest cards before: a full card has room
// for the first ones alone, and so each is explained sooner or later.
func lead(terms []string, led map[string]int) {
	least := slices.MinFunc(terms, func(a, b string) int { return cmp.Compare(led[a], led[b]) })
	i := slices.Index(terms, least)
	copy(terms[1:i+1], terms[:i])
	terms[0] = least
	led[least]++
}

// leans reports whether an item is a lean whose mark is printed.
func leans(p program.Prescription) bool { return p.Ahead > 0 && !p.Find.Any() }

// asks reports whether a card has a box of this name for the whole of an exercise.
func (c *Card) asks(caption string) bool {
	return slices.ContainsFunc(c.Items, func(i CardItem) bool { return slices.Contains(i.Boxes, CardBox{caption, true}) })
}

// heldFree reports whether an item is a step that nothing helps with.
func heldFree(p program.Prescription) bool { return p.Step != "" && p.Rig.Free() && p.Scale == 0 }

// blockTerms are those of a sheet that shows the whole block: of the one-page plan, or of
// the wall chart, which has names of days that say more than the day.
func (s *speech) blockTerms(v *View, days bool) []string {
	t := terms{speech: s}
	has := func(is func(Week) bool) bool { return slices.ContainsFunc(v.Weeks, is) }
	t.add(true, "rpe")
	if fewer := v.fewer(); days && fewer != "" {
		t.add(true, "fewer", "sets", fewer)
	}
	t.add(len(v.Gates) > 0, "gate")
	t.add(has(func(w Week) bool { return w.Check == s.say("week.check") }), "check")
	t.add(has(func(w Week) bool { return w.Check == s.say("week.open") }), "open")
	t.add(has(func(w Week) bool { return w.HelpKG > 0 }), "help")
	free := len(v.Gates) > 0 && !s.repeats() && !s.balances() // as they are asked for
	t.add(free || has(func(w Week) bool { return w.Free }), "free")
	t.add(has(func(w Week) bool { return w.KindKey == program.WeekDeload }), "deload")
	t.add(has(func(w Week) bool { return w.LeanCM > 0 }), "lean")
	t.add(has(func(w Week) bool { return w.LeanCM > 0 && w.Drop != "" }), "hands")
	t.add(days && has(func(w Week) bool { return w.Provisional }), "outlined")
	return t.all
}

// fewer is what stands beside the first day that has other sets than its week: "4 ×".
func (v *View) fewer() string {
	for _, w := range v.Weeks {
		for _, d := range w.Sessions {
			if d.Short != d.DayDate {
				return strings.TrimLeft(strings.TrimPrefix(d.Short, d.DayDate), ", ")
			}
		}
	}
	return ""
}
