package program

import (
	"slices"
	"testing"
)

// someWeeks are weeks of two sessions from a Monday on, whose holds last as many
// seconds as is given for each week; of a week of 0 s nothing is trained.
func someWeeks(monday Date, holds ...int) []Week {
	var weeks []Week
	for i, hold := range holds {
		w := Week{Number: i + 1, Start: monday + Date(7*i)}
		if hold > 0 {
			for _, day := range []Date{0, 3} {
				w.Sessions = append(w.Sessions, Session{Date: w.Start + day, Items: []Prescription{{Exercise: "tuck-hold", Sets: 3, Hold: hold}}})
			}
		}
		weeks = append(weeks, w)
	}
	return weeks
}

// A coach who prints, after each review, what ToPrint names has the right cards on
// paper whenever a week begins.
func TestCardsThatWaitedArePrinted(t *testing.T) {
	monday := NewDate(2027, 1, 4)
	kept := func(version int, on Date, holds ...int) PlanVersion {
		return PlanVersion{Version: version, On: on, Weeks: someWeeks(monday, holds...)}
	}
	first := kept(1, monday-1, 10, 10, 10, 10)
	third := []Date{monday + 14, monday + 17}
	fourth := []Date{monday + 21, monday + 24}
	for name, c := range map[string]struct {
		plans   []PlanVersion
		from    Date
		holds   []int
		changes []Change
		want    []Date
	}{
		"no plan is kept yet": {from: monday + 14, holds: []int{10, 10, 11, 11},
			changes: []Change{{Start: monday + 14, Cards: third[1:]}, {Start: monday + 21, Cards: fourth}}, want: third[1:]},
		"nothing changed":         {plans: []PlanVersion{first}, from: monday + 14, holds: []int{10, 10, 10, 10}},
		"only later weeks change": {plans: []PlanVersion{first}, from: monday + 14, holds: []int{10, 10, 10, 11}, changes: []Change{{Start: monday + 21, Cards: fourth}}},
		"changed while it was a later week": {plans: []PlanVersion{first, kept(2, monday+6, 10, 10, 11, 10)}, from: monday + 14,
			holds: []int{10, 10, 11, 10}, want: third},
		"changed while it was the coming week": {plans: []PlanVersion{first, kept(2, monday+13, 10, 10, 11, 10)}, from: monday + 14,
			holds: []int{10, 10, 11, 10}},
		"changed on its own Monday": {plans: []PlanVersion{first, kept(2, monday+14, 10, 10, 11, 10)}, from: monday + 14,
			holds: []int{10, 10, 11, 10}},
		"changed and changed back while it waited": {plans: []PlanVersion{first, kept(2, monday+6, 10, 10, 10, 11), kept(3, monday+13, 10, 10, 10, 10)},
			from: monday + 21, holds: []int{10, 10, 10, 10}},
		"the week between is away": {plans: []PlanVersion{first, kept(2, monday+13, 10, 10, 0, 11)}, from: monday + 21,
			holds: []int{10, 10, 0, 11}},
		"a week that no printed plan had": {plans: []PlanVersion{kept(1, monday-1, 10, 10)}, from: monday + 14, holds: []int{10, 10, 10, 10},
			changes: []Change{{Start: monday + 14, Cards: third}}, want: third},
		"no week ahead": {plans: []PlanVersion{first}, from: monday + 28, holds: []int{10, 10, 10, 10}},
	} {
		p := Program{From: c.from, Weeks: someWeeks(monday, c.holds...)}
		if got := p.ToPrint(c.changes, c.plans, len(c.plans)); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}

// Of a plan on the wall, what was printed is what hung before it.
func TestTheVersionItselfIsNotOnPaper(t *testing.T) {
	monday := NewDate(2027, 1, 4)
	plans := []PlanVersion{{Version: 1, On: monday - 1, Weeks: someWeeks(monday, 10, 10)}, {Version: 2, On: monday + 6, Weeks: someWeeks(monday, 10, 11)}}
	p := Program{Version: 2, From: monday + 7, Weeks: plans[1].Weeks}
	want := []Date{monday + 7, monday + 10}
	changes := []Change{{Start: monday + 7, Cards: want[:1]}}
	if got := p.ToPrint(changes, plans, p.Version-1); !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	if got := p.ToPrint(nil, plans, p.Version); got != nil {
		t.Errorf("%v, and all were printed", got)
	}
}
