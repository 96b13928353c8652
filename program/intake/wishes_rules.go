package intake

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"gatepost/program"
)

// percent reads a share, with or without its sign.
func percent(into *int, least, most int) read {
	return func(v value) {
		s, ok := v.scalar()
		if !ok {
			return
		}
		x, wrong := parseNumber(strings.TrimSpace(strings.TrimSuffix(s, "%")))
		switch {
		case wrong != "":
			v.fault("number", "what", v.words().Say("fault."+wrong, "written", quote(s)), "example", v.example())
		case x < float64(least) || x > float64(most):
			v.fault("out_of_range", "written", quote(s), "name", quote(v.name()), "least", strconv.Itoa(least), "most", strconv.Itoa(most))
		case x != float64(int(x)):
			v.fault("not_whole", "example", v.example())
		default:
			*into = int(x)
		}
	}
}

// rule is a rule of training that a coach may set: its bounds, what it is, and where it goes.
// How far each may go is our judgement: towards caution, or a little beside what is usual.
// Whose health asks for more than that has it all the same: the planner sees to it.
type rule struct {
	key, like   string
	least, most int
	is          string // for the blank
	set         func(*program.Rules, int)
}

var ruleTable = []rule{
	{"deload_every", "3", 2, 6, "which week of a round is the easy one", func(r *program.Rules, n int) { r.DeloadEvery = n }},
	{"main_sets", "4", 1, 5, "main sets of a day, at the most", nil},
	{"arm_days", "2", 1, 3, "days a week with straight-arm work, at the most", func(r *program.Rules, n int) { r.ArmDays = n }},
	{"effort", "65 %", 60, 72, "of the longest hold predicted, what a main hold is planned for", func(r *program.Rules, n int) { r.Effort = float64(n) / 100 }},
	{"ceiling", "80 %", 50, 100, "of the straight-arm seconds that a week may count", func(r *program.Rules, n int) { r.Ceiling = n }},
	{"rise", "8 %", 5, 10, "that a week may count over what it rises from", func(r *program.Rules, n int) { r.Rise = n }},
	{"heavy_after", "52", 26, 104, "weeks of training before heavy work", func(r *program.Rules, n int) { r.HeavyAfter = n }},
	{"test_rest", "3", 2, 4, "days without straight arms before the test", func(r *program.Rules, n int) { r.TestRest = n }},
	{"older", "42", 40, 45, "years from which the rules for older clients hold", func(r *program.Rules, n int) { r.Older = n }},
}

// rulesIn are the rules that wishes set; those of a client come after the studio's, and count.
func rulesIn(wishes program.Wishes) (set program.Rules) {
	for _, w := range wishes {
		for _, r := range ruleTable {
			if w.Kind == program.WishRule && w.Rule == r.key && r.set != nil && w.Number > 0 {
				r.set(&set, w.Number)
			}
		}
	}
	return set
}

// read reads its number, a share with or without its sign.
func (r rule) read(into *int) read {
	if strings.HasSuffix(r.like, "%") {
		return percent(into, r.least, r.most)
	}
	return whole(into, r.least, r.most)
}

// rules reads them, each a wish of its own.
func (h *hand) rules() read {
	var fields []field
	for _, r := range ruleTable {
		fields = append(fields, may(r.key, r.like, func(v value) {
			w := program.Wish{Kind: program.WishRule, Rule: r.key}
			r.read(&w.Number)(v)
			h.take(v, w)
		}))
	}
	return group(append(fields, may("minutes", "{sat: 90}", h.minutesByDay))...)
}

// ruleLines are the rules as a blank explains them.
func ruleLines() []string {
	lines := []string{"rules:"}
	for _, r := range ruleTable {
		lines = append(lines, fmt.Sprintf("  %-22s # %s (%d to %d)", r.key+": "+r.like, r.is, r.least, r.most))
	}
	return append(lines, fmt.Sprintf("  %-22s # of a session on some weekdays (20 to 240)", "minutes: {sat: 90}"))
}

// minutesByDay are the minutes of a session by its weekday.
func (h *hand) minutesByDay(v value) {
	names := slices.Clone(weekdays)
	for _, day := range weekdays {
		names = append(names, day[:3])
	}
	v.keyed(names, "not_weekday", func(name string, child value) {
		at := slices.Index(names, name) % len(weekdays)
		w := program.Wish{Kind: program.WishRule, Rule: "minutes", Days: []time.Weekday{time.Weekday((at + 1) % 7)}}
		minutes.between(20, 240).whole(&w.Number)(child)
		h.take(child, w)
	})
}
