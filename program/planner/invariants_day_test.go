package planner

import (
	"math"
	"slices"

	"gatepost/program"
)

func checkDays(_ *program.Library, a *program.Assessment, p *program.Program) (v verdict) {
	for _, w := range ahead(p) {
		for _, s := range w.Sessions {
			v.want(slices.Contains(a.Training.Days, s.Date.Weekday()), "%s is no training day", s.Date)
			v.want(!away(a, s.Date), "%s is away", s.Date)
			v.want(s.Date >= w.Start && s.Date < w.Start+7, "%s lies outside week %d", s.Date, w.Number)
			v.want(s.Minutes <= a.Training.Minutes, "%s takes %d of %d min", s.Date, s.Minutes, a.Training.Minutes)
			v.want(s.Minutes >= minutesOf(s.Items, a.Training.Minutes), "%s is said to take %d min", s.Date, s.Minutes)
		}
	}
	return v
}

// minutesOf is the least that a session takes: work and rests, without set-up.
func minutesOf(items []program.Prescription, minutes int) int {
	total := 240
	for _, it := range items {
		if it.Role != program.RolePrepare && !it.InRests {
			total += it.Sets*max(it.Hold, 3*it.Reps) + (it.Sets-1)*it.Rest
		}
	}
	return total / 60
}

func checkHealth(lib *program.Library, a *program.Assessment, p *program.Program) (v verdict) {
	age := a.Measured.YearsSince(a.Athlete.Born)
	h := a.Health
	neutral := slices.Contains(a.Kit, "parallettes")
	for _, w := range ahead(p) {
		armDays := 0
		for _, s := range w.Sessions {
			arm := false
			for _, it := range s.Items {
				e, ok := lib.Exercise(it.Exercise)
				v.want(ok, "no exercise %q", it.Exercise)
				if !ok {
					continue
				}
				arm = arm || it.StraightArm && it.MaxHold > 0
				if sore(h.Wrists) || age < 16 {
					v.want(e.Grip != program.GripFlat && (e.Grip != program.GripSupport || neutral), "%s: %s loads flat hands", s.Date, it.Exercise)
				}
				if sore(h.Elbows) {
					v.want(it.Load <= 0.75+1e-9, "%s: load %.2f on sore elbows", s.Date, it.Load)
					v.want(it.MaxHold == 0 || it.Hold > 0 && float64(it.Hold) <= 0.6*it.MaxHold+1e-6 || w.Kind == program.WeekDeload, "%s: %d of %.1f s on sore elbows", s.Date, it.Hold, it.MaxHold)
					v.want(e.Trains[0] != program.ForStraightPull, "%s: straight-arm pulling with sore elbows", s.Date)
				}
				noAhead := anySore(lib, a, p) || age < 16
				v.want(!noAhead || it.Role != program.RoleAhead, "%s: heavy work", s.Date)
				v.want(age >= 16 || !it.Max, "%s: a maximal test at %d", s.Date, age)
			}
			if arm {
				armDays++
			}
		}
		v.want(age >= 16 || armDays <= 3, "week %d: %d straight-arm days at %d", w.Number, armDays, age)
	}
	if sore(h.Elbows) { // who goes to the floor, rests, or holds what lasts longer has no step up; an easier step may be free
		weeks := ahead(p)
		first := &weeks[0]
		for i := range weeks {
			w := &weeks[i]
			v.want(w.Step == first.Step || w.Step == "" || w.MaxHold >= first.MaxHold || w.Kind != program.WeekBuild || first.Hold == 0 || hasNote(first.Notes, noteComeback), "week %d: a step up with sore elbows", w.Number)
			v.want(w.Kind != program.WeekBuild || w.Scale > 0 || w.Hold == 0 || w.Help >= first.Help || w.Step != first.Step && w.MaxHold >= first.MaxHold, "week %d: less help with sore elbows", w.Number)
		}
	}
	return v
}

// checkPulls: what balances the skill's own work is eight to fifteen tenths of its sets,
// of two kinds: rows and the rear shoulder; of who hangs push-ups and raises.
func checkPulls(lib *program.Library, _ *program.Assessment, p *program.Program) (v verdict) {
	against, kinds := program.RolePull, [2]program.Purpose{program.ForRow, program.ForRearShoulder}
	if fromABar(lib, p) {
		against, kinds = program.RolePush, [2]program.Purpose{program.ForPush, program.ForRaise}
	}
	for _, w := range ahead(p) {
		push, pull, sided := 0, 0, 0
		var row, rear, blades bool
		for _, it := range items(&w) {
			e, _ := lib.Exercise(it.Exercise)
			if slices.Contains([]program.Role{program.RoleMain, program.RoleAhead, program.RoleSecond, program.RoleStrength}, it.Role) {
				push += it.Sets
			}
			if it.Role == against {
				if pull += it.Sets; e.EachSide {
					sided += it.Sets
				}
			}
			row = row || e.Trains[0] == kinds[0]
			rear = rear || e.Trains[0] == kinds[1]
			blades = blades || e.Trains[0] == program.ForBlades
		}
		// one set of each side is one set of both
		if push == 0 || hasNote(p.Notes, noteWayBack) { // pain took pushing away, and pulling stayed
			continue
		}
		v.want(10*pull >= 8*push && 10*(pull-sided/2) <= 15*push, "week %d: %d sets against %d", w.Number, pull, push)
		rear = rear || w.Kind == program.WeekTest && fromABar(lib, p) // raises have straight arms, which rest before a test
		v.want(blades && (row && rear || pull < 2), "week %d: %s %v, %s %v, blades %v", w.Number, kinds[0], row, kinds[1], rear, blades)
	}
	return v
}

func checkKit(lib *program.Library, a *program.Assessment, p *program.Program) (v verdict) {
	has := func(kit string) bool {
		return slices.Contains(a.Kit, kit) || kit == "bands" && len(a.Bands) > 0
	}
	for _, w := range ahead(p) {
		for _, it := range items(&w) {
			e, _ := lib.Exercise(it.Exercise)
			for _, any := range e.Kit {
				v.want(slices.ContainsFunc(any, has), "week %d: %s needs %v", w.Number, it.Exercise, any)
			}
			for _, b := range it.Rig.Bands {
				v.want(slices.ContainsFunc(a.Bands, func(x program.Band) bool { return x.Name == b }), "week %d: no band %q", w.Number, b)
			}
			v.want(len(it.Rig.Bands) <= 2, "week %d: %d bands", w.Number, len(it.Rig.Bands))
			v.want(it.Rig.Drop == 0 || slices.Contains(a.Hanging.Drops, it.Rig.Drop), "week %d: no strap of %.2f m", w.Number, it.Rig.Drop)
			share := it.Help / (a.Athlete.Mass * 9.80665)
			v.want(share <= 0.25+1e-4 || it.Role == program.RoleAhead && share <= 0.30+1e-4, "week %d: help of %.2f body weight", w.Number, share)
		}
	}
	return v
}

func checkLife(lib *program.Library, a *program.Assessment, p *program.Program) (v verdict) {
	l := limitsFor(lib, a, p)
	hands := l.hands && !hasNote(p.Notes, noteNoHands)
	// in a plan made anew, held to the one without it, a sore joint's week may have no main work
	hurt := p.From != 0 && (sore(a.Health.Wrists) || sore(a.Health.Elbows) || sore(a.Health.Shoulders))
	road, _ := lib.RoadMap(p.Skill)
	// without a floor to lean on, who holds no step tries the first one, on a rig or from a box;
	// ten seconds are no ten any more after the weeks off that a block begins with
	least := 10.0
	if p.Weeks[0].Kind == program.WeekAway {
		least = 12
	}
	floorless, unable := len(road.Rungs) == 0, !heldAll(a, least) && !slices.Contains(a.Kit, "box")
	for _, w := range ahead(p) {
		v.want(len(w.Sessions) == len(trainingDays(a, w.Start)), "week %d: %d sessions", w.Number, len(w.Sessions))
		for _, s := range w.Sessions {
			v.want(len(s.Items) >= 3 || hasNote(s.Dropped, noteJointRests), "%s: %d items", s.Date, len(s.Items))
			arm, main := false, false
			for _, it := range s.Items {
				arm = arm || it.Role == program.RoleSecond || it.Role == program.RoleAhead
				main = main || it.Role == program.RoleMain || it.Role == program.RoleTest
			}
			v.want(!arm || main || hurt || hasNote(s.Dropped, noteLightDay), "%s: straight-arm work without main work", s.Date)
		}
		if w.Kind == program.WeekBuild && hands {
			v.want(w.Hold > 0 && w.Sets > 0 || hurt || entryOpen(p) || floorless && (sore(a.Health.Elbows) || tried(&w) || unable) || len(p.Weeks) == 1 || armless(p, &w) || hasNote(p.Notes, noteWayBack), "week %d: no main work", w.Number)
		}
	}
	last := &p.Weeks[len(p.Weeks)-1]
	final := last.Sessions[len(last.Sessions)-1]
	tested := slices.ContainsFunc(final.Items, func(it program.Prescription) bool { return it.Role == program.RoleTest })
	tested = tested || hasNote(p.Notes, noteEntryFold) || // a fold is measured
		entryOpen(p) && slices.ContainsFunc(road.Entry, func(h program.Hold) bool { return !mayDo(lib, a, h.Exercise) })
	rests := hasNote(final.Dropped, noteJointRests) || hasNote(p.Notes, noteWayBack) // pain, and the test is off
	v.want(tested || rests || !hands, "no test at the end")
	v.want(p.Goal.Chance >= 0 && p.Goal.Chance <= 1 && !math.IsNaN(p.Goal.Chance), "chance %v", p.Goal.Chance)
	return v
}

// mayDo reports whether kit and wrists allow an exercise on the floor or at a wall.
func mayDo(lib *program.Library, a *program.Assessment, id string) bool {
	e, ok := lib.Exercise(id)
	spared := sore(a.Health.Wrists) || a.Measured.YearsSince(a.Athlete.Born) < 16
	if !ok || spared && (e.Grip == program.GripFlat || e.Grip == program.GripSupport && !slices.Contains(a.Kit, "parallettes")) {
		return false
	}
	for _, oneOf := range e.Kit {
		if !slices.ContainsFunc(oneOf, func(k string) bool { return slices.Contains(a.Kit, k) }) {
			return false
		}
	}
	return true
}

// heldAll reports whether steps were tested and each was held free for so many seconds or more.
func heldAll(a *program.Assessment, least float64) bool {
	step := func(h program.Hold) bool { return h.Step != "" }
	short := func(h program.Hold) bool { return step(h) && (h.Seconds < least || !h.Rig.Free()) }
	return slices.ContainsFunc(a.Tests, step) && !slices.ContainsFunc(a.Tests, short)
}

// tried reports whether somebody tries the first step in a week.
func tried(w *program.Week) bool {
	return slices.ContainsFunc(items(w), func(it program.Prescription) bool { return it.Try })
}

// armless weeks have no day that lies 48 h from straight-arm work or hanging before and from
// the rest that the test asks for.
func armless(p *program.Program, w *program.Week) bool {
	last := p.Weeks[len(p.Weeks)-1].Sessions
	test := last[len(last)-1].Date
	for _, s := range w.Sessions {
		near := test-s.Date < 3
		for i := range p.Weeks {
			for _, o := range p.Weeks[i].Sessions {
				arm := slices.ContainsFunc(o.Items, func(it program.Prescription) bool { return isArm(&it) || it.Role == program.RoleStrength })
				near = near || arm && p.Weeks[i].Start != w.Start && abs(float64(o.Date-s.Date)) < 2
			}
		}
		if !near {
			return false
		}
	}
	return true
}

// checkEntry: while something is missing of what a skill asks for first, no card holds or
// tries a step.
func checkEntry(_ *program.Library, _ *program.Assessment, p *program.Program) (v verdict) {
	for _, w := range ahead(p) {
		for _, it := range items(&w) {
			v.want(!entryOpen(p) || it.Step == "" && !it.Try && it.Role != program.RoleMain, "week %d: %s before the entry", w.Number, it.Exercise)
		}
	}
	return v
}

// checkDates: what nobody has shown has no date on or before the day of the tests, nor
// before the first card ahead that has a step held with the feet off the floor; without
// such a card, none within the block.
func checkDates(_ *program.Library, a *program.Assessment, p *program.Program) (v verdict) {
	from := p.Weeks[len(p.Weeks)-1].Start + 7
	for _, w := range ahead(p) {
		for _, s := range w.Sessions {
			for _, it := range s.Items {
				if it.Step != "" && it.Scale == 0 && s.Date > a.Measured {
					from = min(from, s.Date)
				}
			}
		}
	}
	for _, f := range p.Forecasts {
		v.want(f.Held || f.Early == 0 || f.Early >= from, "%s early on %s, the first card with a step is of %s", f.Step, f.Early, from)
	}
	return v
}
