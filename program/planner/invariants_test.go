package planner

import (
	"fmt"
	"math"
	"slices"

	"gatepost/program"
)

// verdict collects what a checker finds.
type verdict []string

func (v *verdict) want(ok bool, format string, args ...any) {
	if !ok {
		*v = append(*v, fmt.Sprintf(format, args...))
	}
}

// checkers hold the promises every program keeps, by the number under which the
// project's rules list them.
var checkers = []struct {
	name  string
	check func(*program.Library, *program.Assessment, *program.Program) verdict
}{
	{"1 holds", checkHolds},
	{"2 help", checkHelp},
	{"3 deloads", checkDeloads},
	{"4 volume", checkVolume},
	{"5 taper", checkTaper},
	{"6 days", checkDays},
	{"7 health", checkHealth},
	{"8 pulls", checkPulls},
	{"9 kit", checkKit},
	{"gates", checkGates},
	{"signs of life", checkLife},
}

func items(w *program.Week) []program.Prescription {
	var out []program.Prescription
	for _, s := range w.Sessions {
		out = append(out, s.Items...)
	}
	return out
}

// ahead are the weeks that a program plans; those before are over, and stay as
// another version printed them.
func ahead(p *program.Program) []program.Week {
	for i := range p.Weeks {
		if p.Weeks[i].Start >= p.From {
			return p.Weeks[i:]
		}
	}
	return nil
}

func hasNote(notes []program.Note, code string) bool {
	return slices.ContainsFunc(notes, func(n program.Note) bool { return n.Code == code })
}

// gateOf is a step's gate on the road map of the goal.
func gateOf(lib *program.Library, p *program.Program, id string) program.Gate {
	road, _ := lib.RoadMap(p.Skill)
	s, _ := road.Step(id)
	return s.Gate
}

// checkGates: a gate week's main work is the gate, free, with as many sets and
// seconds, and nothing heavy before it; and a step has one such week at most in a
// printed version, two where the gate was not passed.
func checkGates(lib *program.Library, _ *program.Assessment, p *program.Program) (v verdict) {
	weeks := map[string]int{}
	for _, w := range ahead(p) {
		if !w.Gate {
			continue
		}
		g := gateOf(lib, p, w.Step)
		weeks[w.Step]++
		v.want(weeks[w.Step] <= 2, "week %d: gate week number %d of one step", w.Number, weeks[w.Step])
		v.want(w.Kind == program.WeekBuild && w.Rig.Free() && w.Help == 0, "week %d: a gate with help", w.Number)
		for _, it := range items(&w) {
			v.want(it.Role != program.RoleAhead, "week %d: heavy work in a gate week", w.Number)
			if it.Role == program.RoleMain {
				v.want(it.Hold == max(g.Hold, g.Single) && it.Sets <= g.Sets && it.Rig.Free(), "week %d: %d x %d s for a gate of %d x %d s", w.Number, it.Sets, it.Hold, g.Sets, g.Hold)
			}
		}
	}
	return v
}

func checkHolds(_ *program.Library, _ *program.Assessment, p *program.Program) (v verdict) {
	for _, w := range ahead(p) {
		for _, it := range items(&w) {
			if it.Hold == 0 || it.MaxHold == 0 || it.Max {
				continue
			}
			limit := 75.0
			least, most := 4, 25
			switch {
			case it.Role == program.RoleAhead:
				limit, least, most = 80, aheadLeast, aheadMost
			case w.Kind != program.WeekBuild:
			case it.Role == program.RoleMain && w.Gate: // see checkGates
			case it.Role == program.RoleMain && hasNote(w.Notes, noteShortSets):
				least, most = 5, 9
			case it.Role == program.RoleMain:
				least, most = 10, 15
			case it.Role == program.RoleSecond:
				least, most = 15, 25
			}
			v.want(it.Hold >= least && it.Hold <= most, "week %d: %s of %d s, wanted %d to %d", w.Number, it.Role, it.Hold, least, most)
			v.want(100*float64(it.Hold) <= limit*it.MaxHold+1e-6, "week %d: %s of %d s is over %.0f %% of %.1f s", w.Number, it.Role, it.Hold, limit, it.MaxHold)
		}
	}
	return v
}

func checkHelp(_ *program.Library, _ *program.Assessment, p *program.Program) (v verdict) {
	var before *program.Week
	off := 0
	weeks := ahead(p)
	for i := range weeks {
		w := &weeks[i]
		if w.Kind == program.WeekAway {
			off++
		}
		if w.Kind != program.WeekBuild || w.Hold == 0 {
			continue
		}
		if before != nil && before.Exercise == w.Exercise && off < 2 {
			v.want(w.Help <= before.Help, "week %d: help rises from %.1f to %.1f N", w.Number, before.Help, w.Help)
			v.want(w.Scale <= before.Scale, "week %d: more weight on the toes", w.Number)
		}
		before, off = w, 0
	}
	return v
}

func checkDeloads(_ *program.Library, a *program.Assessment, p *program.Program) (v verdict) {
	every := 4
	age := a.Measured.YearsSince(a.Athlete.Born)
	h := a.Health
	if sore(h.Wrists) || sore(h.Elbows) || sore(h.Shoulders) || age >= 45 || age < 16 {
		every = 3
	}
	run, sets := 0, 0
	for i := range p.Weeks {
		w := &p.Weeks[i]
		if w.Kind == program.WeekBuild {
			run++
			sets = armSets(w)
			if w.Start < p.From {
				continue
			}
			v.want(run < every || run == every && p.Weeks[i+1].Kind != program.WeekBuild, "week %d: %d build weeks in a row", w.Number, run)
			continue
		}
		run = 0
		if w.Kind == program.WeekTest {
			sets = 0 // what follows is another block
		}
		if w.Kind == program.WeekDeload && w.Start >= p.From {
			v.want(i > 0 || daysAway(a, w.Start) >= 5, "week 1 is a deload")
			v.want(i+1 < len(p.Weeks), "a deload ends the block")
			v.want(sets == 0 || armSets(w) <= max(sets*60/100, 1), "week %d: %d sets after %d", w.Number, armSets(w), sets)
			for _, it := range items(w) {
				v.want(it.Role != program.RoleAhead, "week %d: heavy work in a deload", w.Number)
			}
		}
	}
	return v
}

// armSets counts the sets of straight-arm holds, check holds included.
func armSets(w *program.Week) int {
	n := 0
	for _, it := range items(w) {
		if it.Role == program.RoleMain || it.Role == program.RoleSecond || it.Role == program.RoleAhead ||
			it.Check && w.Kind == program.WeekBuild {
			n += it.Sets
		}
	}
	return n
}

func checkVolume(_ *program.Library, a *program.Assessment, p *program.Program) (v verdict) {
	l := newLimits(a, p.Start)
	off := 0
	for i := range p.Weeks {
		w := &p.Weeks[i]
		if w.Start < p.From {
			if off++; w.Kind != program.WeekAway {
				off = 0
			}
			continue
		}
		sum := 0
		for _, it := range items(w) {
			sum += halves(it)
		}
		v.want(sum == w.HalfSeconds, "week %d: %d half seconds printed, %d counted", w.Number, w.HalfSeconds, sum)
		oneEach := 0 // one set a day is the least that a week can hold
		for _, s := range w.Sessions {
			for _, it := range s.Items {
				if it.Role == program.RoleMain || it.Role == program.RoleSecond {
					oneEach += halves(it) / it.Sets
				}
			}
		}
		v.want(w.HalfSeconds <= max(l.ceiling(i, false), oneEach), "week %d: %d half seconds over the ceiling %d", w.Number, w.HalfSeconds, l.ceiling(i, false))
		if w.Kind == program.WeekAway {
			off++
			continue
		}
		highest := 0
		for j := max(0, i-4); j < i; j++ {
			highest = max(highest, p.Weeks[j].HalfSeconds)
		}
		if w.Kind == program.WeekBuild && highest > 0 {
			oneSet := 0
			for _, it := range items(w) {
				if it.Role == program.RoleMain {
					oneSet = max(oneSet, halves(it)/it.Sets)
				}
			}
			v.want(10*w.HalfSeconds <= 11*highest || w.HalfSeconds <= max(highest+oneSet, oneEach), "week %d: %d half seconds after at most %d", w.Number, w.HalfSeconds, highest)
			v.want(off < 2 || 100*w.HalfSeconds <= max(70*highest, 100*oneEach), "week %d: %d half seconds after %d weeks off, before them %d", w.Number, w.HalfSeconds, off, highest)
		}
		off = 0
	}
	return v
}

// halves weighs an item's straight-arm seconds anew, in half seconds: nothing
// under half of the maximum, a half to .70, one to .85, one and a half above.
func halves(it program.Prescription) int {
	if it.Role != program.RoleMain && it.Role != program.RoleSecond && it.Role != program.RoleAhead {
		return 0
	}
	weight := 3
	for i, top := range []float64{0.5, 0.7, 0.85} {
		if it.Load <= top && !(i == 0 && it.Load == top) {
			weight = i
			break
		}
	}
	return it.Sets * it.Hold * weight
}

func checkTaper(_ *program.Library, a *program.Assessment, p *program.Program) (v verdict) {
	last := &p.Weeks[len(p.Weeks)-1]
	v.want(last.Kind == program.WeekTest, "the block ends with a %s week", last.Kind)
	test := last.Sessions[len(last.Sessions)-1].Date
	rest := 2
	if a.Measured.YearsSince(a.Athlete.Born) >= 45 {
		rest = 3
	}
	weeks := ahead(p)
	for i := range weeks {
		for _, s := range weeks[i].Sessions {
			for _, it := range s.Items {
				near := s.Date < test && s.Date > test-program.Date(rest)
				v.want(!near || !it.StraightArm || it.Role == program.RolePrepare, "%s of %s within %d days of the test", it.Exercise, s.Date, rest)
			}
		}
	}
	before := 0
	for _, w := range p.Weeks {
		if w.Kind == program.WeekBuild {
			before = w.HalfSeconds
		}
	}
	sets := armSets(last)
	v.want(before == 0 || 100*last.HalfSeconds <= 59*before || sets <= len(last.Sessions), "the test week holds %d half seconds after %d", last.HalfSeconds, before)
	return v
}

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
				noAhead := sore(h.Wrists) || sore(h.Elbows) || sore(h.Shoulders) || age < 16
				v.want(!noAhead || it.Role != program.RoleAhead, "%s: heavy work", s.Date)
				v.want(age >= 16 || !it.Max, "%s: a maximal test at %d", s.Date, age)
			}
			if arm {
				armDays++
			}
		}
		v.want(age >= 16 || armDays <= 3, "week %d: %d straight-arm days at %d", w.Number, armDays, age)
	}
	if sore(h.Elbows) {
		weeks := ahead(p)
		first := &weeks[0]
		for i := range weeks {
			w := &weeks[i]
			v.want(w.Step == first.Step || w.Kind != program.WeekBuild || first.Hold == 0, "week %d: a step up with sore elbows", w.Number)
			v.want(w.Kind != program.WeekBuild || w.Scale > 0 || w.Help >= first.Help, "week %d: less help with sore elbows", w.Number)
		}
	}
	return v
}

func checkPulls(lib *program.Library, _ *program.Assessment, p *program.Program) (v verdict) {
	for _, w := range ahead(p) {
		push, pull := 0, 0
		var row, rear, blades bool
		for _, it := range items(&w) {
			e, _ := lib.Exercise(it.Exercise)
			if pushing(it.Role) {
				push += it.Sets
			}
			if it.Role == program.RolePull {
				pull += it.Sets
			}
			row = row || e.Trains[0] == program.ForRow
			rear = rear || e.Trains[0] == program.ForRearShoulder
			blades = blades || e.Trains[0] == program.ForBlades
		}
		if push == 0 {
			continue
		}
		v.want(10*pull >= 8*push && 10*pull <= 15*push, "week %d: %d pulling to %d pushing sets", w.Number, pull, push)
		v.want(blades && (row && rear || pull < 2), "week %d: row %v rear shoulder %v blades %v", w.Number, row, rear, blades)
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

func checkLife(_ *program.Library, a *program.Assessment, p *program.Program) (v verdict) {
	l := newLimits(a, p.Start)
	for _, w := range ahead(p) {
		v.want(len(w.Sessions) == len(trainingDays(a, w.Start)), "week %d: %d sessions", w.Number, len(w.Sessions))
		for _, s := range w.Sessions {
			v.want(len(s.Items) >= 3, "%s: %d items", s.Date, len(s.Items))
			arm, main := false, false
			for _, it := range s.Items {
				arm = arm || it.Role == program.RoleSecond || it.Role == program.RoleAhead
				main = main || it.Role == program.RoleMain || it.Role == program.RoleTest
			}
			v.want(!arm || main || hasNote(s.Dropped, noteLightDay), "%s: straight-arm work without main work", s.Date)
		}
		if w.Kind == program.WeekBuild && l.hands {
			v.want(w.Hold > 0 && w.Sets > 0 || len(p.Weeks) == 1 || armless(p, &w), "week %d: no main work", w.Number)
		}
	}
	last := &p.Weeks[len(p.Weeks)-1]
	final := last.Sessions[len(last.Sessions)-1]
	tested := slices.ContainsFunc(final.Items, func(it program.Prescription) bool { return it.Role == program.RoleTest })
	v.want(tested || !l.hands, "no test at the end")
	v.want(p.Goal.Chance >= 0 && p.Goal.Chance <= 1 && !math.IsNaN(p.Goal.Chance), "chance %v", p.Goal.Chance)
	return v
}

// armless weeks have no day that lies 48 h from straight-arm work before and from
// the rest that the test asks for.
func armless(p *program.Program, w *program.Week) bool {
	last := p.Weeks[len(p.Weeks)-1].Sessions
	test := last[len(last)-1].Date
	for _, s := range w.Sessions {
		near := test-s.Date < 3
		for i := range p.Weeks {
			for _, o := range p.Weeks[i].Sessions {
				arm := slices.ContainsFunc(o.Items, func(it program.Prescription) bool { return isArm(&it) })
				near = near || arm && p.Weeks[i].Start != w.Start && abs(float64(o.Date-s.Date)) < 2
			}
		}
		if !near {
			return false
		}
	}
	return true
}
