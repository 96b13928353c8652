package planner

import (
	"testing"

	"gatepost/cmd/study/people"
	"gatepost/program"
	"gatepost/program/ladder"
)

// Read week after week, a rig does not come and go with every wobble of the
// estimate: help rises, and a rig gives way after a single week, only where it no
// longer serves some week ahead, where a gate was not passed, or after a week missed.
func TestRigsStay(t *testing.T) {
	lib := library(t)
	builds, changes := 0, 0
	for i := range uint64(40) {
		p := people.Draw(people.Base(), lib, "planche", 2000, i)
		readWeekly(t, lib, p, func(r *reading, w *program.Week) {
			last := r.next.past.main()
			if w.Kind != program.WeekBuild || last.step() != w.Step || last.floor != nil || w.Gate || r.gateBefore() {
				return // a gate is shown free, and on the scale the toes help
			}
			builds++
			if ladder.SameRig(w.Rig, last.aid.Rig) {
				return
			}
			changes++
			if r.missedWeek() != 0 || r.toughDay() != 0 {
				return // no less help than without the week missed, or the bad sets
			}
			if up := tenths(w.Help) > last.aid.Help; (up || r.next.past.rigged == 1) && !r.next.past.moreHelp && r.serves(last.aid) {
				t.Errorf("person %d, week of %s: %v for %v after %d weeks, which would have served", i, w.Start, w.Rig.Bands, last.aid.Rig.Bands, r.next.past.rigged)
			}
		})
	}
	if changes == 0 || 100*changes > 40*builds {
		t.Errorf("%d changes of the rig in %d build weeks", changes, builds)
	}
}

// readWeekly lets a person live a block as Read plans it, and shows each coming week
// beside the reading that planned it.
func readWeekly(t *testing.T, lib *program.Library, p *people.Person, look func(*reading, *program.Week)) {
	printed, problems := Plan(lib, &p.Client)
	if problems.Stop() {
		t.Fatal(problems)
	}
	wall := []program.PlanVersion{Version(&printed, 1, p.Client.Measured)}
	for n := range len(printed.Weeks) - 1 {
		p.Client.Log.Entries = append(p.Client.Log.Entries, p.Do(&printed.Weeks[n]).Entries...)
		if nothingDone(&p.Client.Log) {
			continue
		}
		sunday := printed.Weeks[n].Start + 6
		next, plan, _ := begin(lib, &p.Client)
		r := newReading(plan, wall, sunday)
		gates := r.gatesRead()
		_, eased := r.painFlags()
		r.replan(&next, &eased, gates)
		look(r, &next.Weeks[n+1])
		if printed = next; next.Version > wall[len(wall)-1].Version {
			wall = append(wall, Version(&next, next.Version, sunday))
		}
	}
}

// gateBefore says that the last build week was a gate week.
func (r *reading) gateBefore() bool {
	for i := len(r.next.past.weeks) - 1; i >= 0; i-- {
		if w := &r.next.past.weeks[i]; w.Kind == program.WeekBuild {
			return w.Gate
		}
	}
	return false
}

// serves says that ten seconds are within the effort of each build week ahead.
func (r *reading) serves(o ladder.Aid) bool {
	for i := r.next.past.over(); i < len(r.next.weeks); i++ {
		if r.next.weeks[i].kind == program.WeekBuild && held(r.next.limits.mostEffortIn(i), r.next.look.maxHold(o, i)) < 10 {
			return false
		}
	}
	return true
}
