package planner

import (
	"testing"

	"gatepost/program"
)

// Read week after week, a rig does not come and go with every wobble of the
// estimate: help rises, and a rig gives way after a single week, only where it no
// longer serves some week ahead, or where a gate was not passed.
func TestRigsStay(t *testing.T) {
	lib, like := library(t), maren(t)
	builds, changes := 0, 0
	for i := range uint64(40) {
		p := newPerson(2000+i, lib, like)
		c := newCoached(p, true)
		follow(newLife(p, byLoad), c, func(w *program.Week) {
			last := c.past.main()
			if w.Kind != program.WeekBuild || last.step() != w.Step || w.Gate || c.gateBefore() {
				return // a gate is shown free
			}
			builds++
			if sameRig(w.Rig, last.option.rig) {
				return
			}
			changes++
			if up := tenths(w.Help) > last.option.help; (up || c.past.rigged == 1) && !c.past.moreHelp && c.serves(last.option) {
				t.Errorf("week of %s: %v for %v after %d weeks, which would have served", w.Start, w.Rig.Bands, last.option.rig.Bands, c.past.rigged)
			}
		})
	}
	if changes == 0 || 100*changes > 40*builds {
		t.Errorf("%d changes of the rig in %d build weeks", changes, builds)
	}
}

// gateBefore says that the last build week was a gate week.
func (c *coached) gateBefore() bool {
	for i := len(c.past.weeks) - 1; i >= 0; i-- {
		if w := &c.past.weeks[i]; w.Kind == program.WeekBuild {
			return w.Gate
		}
	}
	return false
}

// serves says that ten seconds are no more than three quarters of what is predicted
// in each build week ahead.
func (c *coached) serves(o option) bool {
	for i := c.past.over(); i < len(c.plan.weeks); i++ {
		if c.plan.weeks[i].kind == program.WeekBuild && 3*c.look.maxHold(o, i) < 400 {
			return false
		}
	}
	return true
}
