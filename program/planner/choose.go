package planner

import (
	"slices"

	"gatepost/program"
)

// can says whether this client has the kit and the wrists for an exercise.
func (c *client) can(e *program.Exercise) bool {
	return !c.avoids(e.ID) && len(c.lacks(e)) == 0 && c.bears(e)
}

// lacks are what of an exercise's kit is not there, each as what would do.
func (c *client) lacks(e *program.Exercise) (kit [][]string) {
	for _, oneOf := range e.Kit {
		if !slices.ContainsFunc(oneOf, c.has) {
			kit = append(kit, oneOf)
		}
	}
	return kit
}

// bears says whether the wrists stand for an exercise what it asks of them.
func (c *client) bears(e *program.Exercise) bool {
	switch e.Grip {
	case program.GripFlat:
		return !c.limits.neutralOnly
	case program.GripSupport:
		return c.gripHere() || !c.limits.neutralOnly
	}
	return true
}

// has reports whether a client has a piece of kit; bands, where one is still in use.
func (c *client) has(kit string) bool {
	inUse := func(b program.Band) bool { return b.InUse(c.today) }
	return c.hasHere(kit) && (kit == bandsKit && slices.ContainsFunc(c.athlete.Bands, inUse) || slices.Contains(c.athlete.Kit, kit))
}

// need is what an item of a session asks of an exercise.
type need struct {
	purpose  program.Purpose
	bentArms bool          // no straight arms: a day between straight-arm days, or before the test
	easier   bool          // for somebody who is still on the floor
	other    bool          // the second in rank, where there is one
	at       *program.Wish // another place than always
}

// choose takes the highest-ranked exercise that serves a purpose first and that
// this client can do; of equals the first by id. Sore elbows are spared pulling
// with straight arms.
func (x *exercises) choose(n need) *program.Exercise {
	if x.limits.elbowSore && n.purpose == program.ForStraightPull {
		n.purpose = program.ForCurl
	}
	n.at = x.here
	if e, ok := x.chosen[n]; ok {
		return e
	}
	if e := x.preferred(n); e != nil {
		return e
	}
	var best, next *program.Exercise
	for i := range x.lib.Exercises {
		e := &x.lib.Exercises[i]
		if len(e.Trains) == 0 || e.Trains[0] != n.purpose || !x.can(e) || n.bentArms && e.StraightArm {
			continue
		}
		switch {
		case best == nil || e.Rank > best.Rank:
			best, next = e, best
		case next == nil || e.Rank > next.Rank:
			next = e
		}
	}
	if n.other && next != nil {
		best = next
	}
	if best != nil && n.easier {
		best = x.easier(best, n)
	}
	x.chosen[n] = best
	return best
}

// easier is the nearest easier version of an exercise that serves the same need,
// looking past those that ask for kit which is not there.
func (c *client) easier(e *program.Exercise, n need) *program.Exercise {
	seen := map[string]bool{e.ID: true}
	for ids := e.Easier; len(ids) > 0; {
		var next []string
		for _, id := range ids {
			x, ok := c.lib.Exercise(id)
			if !ok || seen[id] {
				continue
			}
			if c.can(x) && x.Trains[0] == n.purpose && !(n.bentArms && x.StraightArm) {
				return x
			}
			seen[id] = true
			next = append(next, x.Easier...)
		}
		ids = next
	}
	return e
}
