package view

import (
	"maps"
	"slices"
	"strconv"

	"gatepost/program"
)

// odd is a day's work of one side at a time with an odd number of sets: one side
// gets a set more.
type odd struct {
	day      program.Date
	exercise string
	role     program.Role
	sets     int
}

// oddOf says whether a day's work is such. A test and a check hold are not: they
// are single holds, and of the same side every time, or two of them could not be
// compared. The exercise's page says which.
func oddOf(day program.Date, p *program.Prescription) (odd, bool) {
	return odd{day, p.Exercise, p.Role, p.Sets}, p.EachSide && p.Sets%2 == 1 && !open(*p)
}

// turns says who gets the set more, in a plan and in those before it: true for the
// right side.
type turns map[odd]bool

// after are the turns of a plan that comes after others. What one of them had as it
// is keeps its side, so that a card printed then stays true; all else goes to the
// side that has had less of its exercise in the block, the left first. So it evens
// out, whatever days of a week are odd.
func (t turns) after(weeks []program.Week) turns {
	next, left := turns{}, map[string]int{} // sets more, by exercise
	maps.Copy(next, t)
	for _, w := range weeks {
		for _, session := range w.Sessions {
			for i := range session.Items {
				work, is := oddOf(session.Date, &session.Items[i])
				if !is {
					continue
				}
				if _, stands := t[work]; !stands {
					next[work] = left[work.exercise] > 0
				}
				if next[work] {
					left[work.exercise]--
				} else {
					left[work.exercise]++
				}
			}
		}
	}
	return next
}

// sides says how many sets each side gets, where it is the same; empty where both
// work at once.
func (s *speech) sides(p program.Prescription) string {
	if !p.EachSide || p.Sets%2 == 1 || open(p) {
		return ""
	}
	return s.say("amount.sides", "half", strconv.Itoa(p.Sets/2))
}

// oddSides says of each odd number of sets in a block who gets how many. Sets
// alternate, so it says who begins as well.
func (s *speech) oddSides(written []Week, from []program.Week, turns turns) {
	for i, w := range from {
		for j, session := range w.Sessions {
			for k := range session.Items {
				if work, is := oddOf(session.Date, &session.Items[k]); is {
					item := &written[i].Sessions[j].Items[k]
					item.Begins = begins(turns[work])
					item.share(s.oddSplit(work.sets, item.Begins))
				}
			}
		}
	}
}

// takingTurns says it for the whole block, for whoever has no card at hand; empty
// where no step is held so.
func (s *speech) takingTurns(weeks []program.Week) string {
	var steps []string
	for _, w := range weeks {
		for _, session := range w.Sessions {
			for i := range session.Items {
				p := &session.Items[i]
				if _, is := oddOf(session.Date, p); is && p.Step != "" && !slices.Contains(steps, s.step(p.Step)) {
					steps = append(steps, s.step(p.Step))
				}
			}
		}
	}
	if steps == nil {
		return ""
	}
	return s.say("plan.turns", "step", capital(join(steps...)))
}

func begins(right bool) Side {
	if right {
		return Right
	}
	return Left
}

// Side is a side of the body; empty: it is the client's to choose.
type Side string

const (
	Left  Side = "left"
	Right Side = "right"
)

func (s Side) other() Side { return begins(s == Left) }

// oddSplit names the side first that begins.
func (s *speech) oddSplit(sets int, first Side) string {
	if sets == 1 {
		return s.say("amount." + string(first) + "_only")
	}
	return s.say("amount."+string(first)+"_first", "more", strconv.Itoa(sets/2+1), "fewer", strconv.Itoa(sets/2))
}

// sidesInTurn are the letters of the sides, set by set.
func (s *speech) sidesInTurn(i Item) []string {
	var all []string
	for side := i.Begins; side != "" && len(all) < i.Sets; side = side.other() {
		all = append(all, s.say("card."+string(side)))
	}
	return all
}

// share writes the sides into an item.
func (i *Item) share(sides string) {
	i.Sides, i.Dose = sides, join(i.Amount, sides)
	i.Line = join(i.Dose, i.Rig)
}

// GateSets are the key and the values of a gate's sets and seconds.
func GateSets(g program.Gate, sides int) (key string, pairs []string) {
	pairs = []string{"sets", strconv.Itoa(g.Sets), "hold", strconv.Itoa(g.Hold), "reps", strconv.Itoa(g.Hold / program.SecondsPerRep)}
	switch fewer := g.Sets / 2; {
	case g.Tried():
		return "gate.reach", append(pairs, "tries", strconv.Itoa(g.Sets), "reached", strconv.Itoa(g.Reached))
	case g.Reached > 0:
		return "gate.held", pairs
	case g.Reps > 0:
		return "gate.sets_reps", pairs
	case sides < 2 || fewer == 0:
		return "gate.sets", pairs
	case g.Sets%2 == 0:
		return "gate.sets_each_side", append(pairs, "half", strconv.Itoa(fewer))
	default: // on the second day the other way round
		return "gate.sets_odd_sides", append(pairs, "more", strconv.Itoa(fewer+1), "fewer", strconv.Itoa(fewer))
	}
}
