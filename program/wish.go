package program

import (
	"slices"
	"time"
)

// Wishes are what a coach asks of plans by their own hand: for one client in coach.yaml,
// for the whole studio in content/rules.yaml. The studio's come first.
type Wishes []Wish

// Wish is one thing that a coach asks for. Which fields it has depends on its kind; those
// it has not are zero.
type Wish struct {
	Kind     WishKind
	Studio   bool  // of the studio's rules, for every client
	Place    Place // where it was written
	From, To Date  // the days it is for, both included; zero: no end on that side
	Days     []time.Weekday
	Week     int     // of the block that the assessment begins, from 1
	Purpose  Purpose // of prefer
	Exercise string  // exercise id
	Use      string  // exercise id, of instead
	Gone     bool    // the exercise has been taken away from the library
	Step     string  // step id
	Rig      *Rig    // nil: as planned; a drop of AnyDrop leaves the strap to the planner
	Ahead    float64 // m, of a lean
	Sets     int     // of balance, where steps are tried, the tries; 0: as planned
	Hold     int     // s; 0: as planned
	Reps     int     // 0: as planned
	Kit      []string
	AllKit   bool   // of at: nothing was said of the kit
	Minutes  int    // a session
	Rule     string // of a rule: its key in the file
	Number   int    // of a rule: what it is set to
	Text     string
}

// AnyDrop is the drop of a rig whose strap nobody named.
const AnyDrop = -1.0

// WishKind is a key of the file that wishes are written in.
type WishKind string

const (
	WishAvoid   WishKind = "avoid"   // an exercise, never
	WishPrefer  WishKind = "prefer"  // an exercise, wherever its purpose is wanted
	WishInstead WishKind = "instead" // one exercise in place of another, on one day
	WishSet     WishKind = "set"     // a week's main work
	WishAdd     WishKind = "add"     // an exercise beside what is planned, on weekdays
	WishSay     WishKind = "say"     // words on cards
	WishAt      WishKind = "at"      // another place for some days: its kit, its minutes, its days
	WishRule    WishKind = "rules"   // a rule of training, otherwise than the planner has it
)

// Has reports whether a wish is for a day: within its dates, and on one of its weekdays.
func (w *Wish) Has(d Date) bool {
	return (w.From == 0 || w.From <= d) && (w.To == 0 || d <= w.To) && (len(w.Days) == 0 || slices.Contains(w.Days, d.Weekday()))
}

// Within reports whether a day lies within the dates of a wish, whatever its weekday.
func (w *Wish) Within(d Date) bool { return w.From <= d && d <= w.To }

// KitOn is what kit there is on a day: the client's, or that of the place where they are.
// What is asked for the client goes before what is asked for the studio.
func (a *Assessment) KitOn(d Date) []string {
	for i := len(a.Wishes) - 1; i >= 0; i-- {
		if w := &a.Wishes[i]; w.Kind == WishAt && w.Within(d) {
			if w.AllKit {
				break
			}
			return w.Kit
		}
	}
	return a.Kit
}

// WishState is what became of a wish in a plan.
type WishState string

const (
	WishDone    WishState = "done"
	WishPart    WishState = "part"    // on some of its days, or less of it
	WishRefused WishState = "refused" // a rule of health, or what is not there, stands against it
	WishOver    WishState = "over"    // it no longer applies
	WishWaits   WishState = "waits"   // what hangs was kept before it was written
)

// WishRead is a wish, and what became of it. Why says of what is done which rules of
// training it goes against, and of all others why they are not.
type WishRead struct {
	Wish
	State WishState
	Why   []Note
}
