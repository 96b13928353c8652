package planner

import (
	"slices"
	"time"

	"gatepost/program"
)

// # The coach's own hand
//
// What a coach asks for by hand goes into the plan where the planner would decide
// otherwise: which exercises there are (choose.go asks avoids and preferred), what a
// session holds beside its main work (wish_items.go), a week's main work (wish_set.go),
// where the client is (wish_place.go). Everything after that runs as ever: sessions fit
// their minutes, pain takes away what it takes away, and a plan with bad news is held to
// the one without it, in which the same wishes are done. So a wish never makes bad news
// ask for more.
//
// What breaks a rule of health is refused, with the rule (wish_health.go); what breaks
// another is done, and the rule is named. What became of a wish is read off the weeks as
// they are printed in the end (wish_read.go): whatever gave way is seen there.

// hand is what the coach asks for, as one plan takes it.
type hand struct {
	wishes  program.Wishes
	refused [][]program.Note // by wish: why it is not done; nil: nothing stands against it
	over    []program.Note   // by wish: why it no longer applies
	weekly  [][]program.Note // by wish: why a week is not set, as it was planned last
	rules   [][]program.Note // by wish: the rules that it goes against
	avoided map[string]bool  // exercise ids
	prefers map[program.Purpose]*program.Exercise
}

// newHand takes in the wishes of a client, if there are some.
func (c *client) newHand() {
	all := c.athlete.Wishes
	if len(all) == 0 {
		return
	}
	h := &hand{wishes: all, refused: make([][]program.Note, len(all)), over: make([]program.Note, len(all)), weekly: make([][]program.Note, len(all)), rules: make([][]program.Note, len(all)),
		avoided: map[string]bool{}, prefers: map[program.Purpose]*program.Exercise{}}
	c.hand = h
	for i := range all {
		switch w := &all[i]; {
		case w.Gone:
			h.over[i] = note(noteWishGone)
		case w.Studio && slices.ContainsFunc(all, func(own program.Wish) bool { return !own.Studio && goesBefore(&own, w) }):
			h.over[i] = note(noteWishOwn)
		case w.Kind == program.WishAvoid:
			c.avoid(i)
		}
	}
	for i := range all {
		if w := &all[i]; w.Kind == program.WishPrefer && h.stands(i) {
			c.prefer(i)
		}
	}
}

// stands reports whether nothing is known to be against a wish.
func (h *hand) stands(i int) bool { return h.over[i].Code == "" && len(h.refused[i]) == 0 }

// goesBefore reports whether what is asked for one client takes the place of what is asked
// for the studio.
func goesBefore(own, studio *program.Wish) bool {
	same := own.Kind == studio.Kind
	switch studio.Kind {
	case program.WishAvoid:
		return (own.Kind == program.WishPrefer || own.Kind == program.WishAdd) && own.Exercise == studio.Exercise || own.Kind == program.WishInstead && own.Use == studio.Exercise
	case program.WishPrefer:
		return same && own.Purpose == studio.Purpose || own.Kind == program.WishAvoid && own.Exercise == studio.Exercise
	case program.WishAdd:
		return own.Kind == program.WishAvoid && own.Exercise == studio.Exercise ||
			same && own.Exercise == studio.Exercise && slices.ContainsFunc(own.Days, func(d time.Weekday) bool { return slices.Contains(studio.Days, d) })
	case program.WishInstead:
		return own.Kind == program.WishAvoid && own.Exercise == studio.Use || same && own.Exercise == studio.Exercise && own.From == studio.From
	case program.WishRule:
		return same && own.Rule == studio.Rule && slices.Equal(own.Days, studio.Days)
	}
	return false
}

// avoid leaves an exercise out, but for what the goal is held in, and the last that
// prepares a joint: the beginning of a session is never dropped.
func (c *client) avoid(i int) {
	h, id := c.hand, c.hand.wishes[i].Exercise
	if s, ok := c.road.Step(c.athlete.Goal.Step); ok && s.Exercise == id {
		h.refused[i] = []program.Note{note(noteWishGoal)}
		return
	}
	before := c.prepared()
	if h.avoided[id] = true; c.prepared() < before {
		delete(h.avoided, id)
		h.refused[i] = []program.Note{note(noteWishPrepare)}
		return
	}
	e, ok := c.lib.Exercise(id)
	if ok && slices.Contains(c.road.Against, e.Trains[0]) && !c.serves(e.Trains[0], false) {
		h.rules[i] = append(h.rules[i], note(noteWishNoneLeft, word("purpose", "purpose."+string(e.Trains[0]))))
	}
}

// prepared is how many of the purposes that a session begins with have something without
// straight arms, which serves every day.
func (c *client) prepared() (n int) {
	for _, purpose := range c.road.Prepare {
		if c.serves(purpose, true) {
			n++
		}
	}
	return n
}

// serves reports whether an exercise that this client can do serves a purpose first.
func (c *client) serves(purpose program.Purpose, bentArms bool) bool {
	return slices.ContainsFunc(c.lib.Exercises, func(e program.Exercise) bool {
		return len(e.Trains) > 0 && e.Trains[0] == purpose && c.can(&e) && !(bentArms && e.StraightArm)
	})
}

// prefer takes an exercise wherever its purpose is wanted, if this client can do it.
func (c *client) prefer(i int) {
	h, w := c.hand, &c.hand.wishes[i]
	e, ok := c.lib.Exercise(w.Exercise)
	if !ok {
		h.over[i] = note(noteWishGone)
		return
	}
	switch why := c.cannot(e); {
	case len(why) > 0:
		h.refused[i] = why
	case c.limits.elbowSore && pullsStraight(e):
		h.refused[i] = []program.Note{note(noteWishJoint, word("joint", "joint.elbows"))}
	case c.isMain(e.ID):
		h.refused[i] = []program.Note{note(noteWishMain)}
	default:
		h.prefers[w.Purpose] = e
	}
}

// avoids reports whether the coach leaves an exercise out for this client.
func (c *client) avoids(id string) bool { return c.hand != nil && c.hand.avoided[id] }

// preferred is the exercise that the coach wants for a purpose, where it can be done here
// today; nil where there is none.
func (c *client) preferred(n need) *program.Exercise {
	if c.hand == nil {
		return nil
	}
	e := c.hand.prefers[n.purpose]
	if e == nil || !c.can(e) || n.bentArms && e.StraightArm {
		return nil
	}
	return e
}

// isPreferred reports whether the coach wants an exercise for some purpose: then it stays
// what it is, and nothing harder takes its place.
func (c *client) isPreferred(id string) bool {
	if c.hand == nil {
		return false
	}
	for _, e := range c.hand.prefers {
		if e.ID == id {
			return true
		}
	}
	return false
}

// isMain reports whether an exercise holds a step of this road map, which is main work.
func (c *client) isMain(id string) bool {
	return slices.ContainsFunc(c.road.Steps, func(s program.Step) bool { return s.Exercise == id })
}

// wishesOf are the wishes of a kind that stand, by their places.
func (c *client) wishesOf(kind program.WishKind) (places []int) {
	if c.hand == nil {
		return nil
	}
	for i := range c.hand.wishes {
		if c.hand.wishes[i].Kind == kind && c.hand.stands(i) {
			places = append(places, i)
		}
	}
	return places
}
