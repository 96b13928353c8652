package planner

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gatepost/program"
	"gatepost/program/ladder"
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
	{"effort", checkEffort},
	{"2 help", checkHelp},
	{"3 deloads", checkDeloads},
	{"4 volume", checkVolume},
	{"5 taper", checkTaper},
	{"6 days", checkDays},
	{"7 health", checkHealth},
	{"8 pulls", checkPulls},
	{"9 kit", checkKit},
	{"gates", checkGates},
	{"nothing stands still", checkMoves},
	{"dates", checkDates},
	{"entry", checkEntry},
	{"signs of life", checkLife},
	{"finds", checkFinds},
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

// gateOf is a step's gate on the road map of the goal.
func gateOf(lib *program.Library, p *program.Program, id string) program.Gate {
	road, _ := lib.RoadMap(p.Skill)
	s, _ := road.Step(id)
	return s.Gate
}

// fromABar reports whether a program's skill hangs from the hands.
func fromABar(lib *program.Library, p *program.Program) bool {
	road, _ := lib.RoadMap(p.Skill)
	return road.Hands == program.HandsHang
}

// inReps reports whether a program is counted in repetitions.
func inReps(lib *program.Library, p *program.Program) bool {
	road, _ := lib.RoadMap(p.Skill)
	return road.Load.Repeats()
}

// anySore reports whether a joint is sore that the skill loads: in a hang wrists are straight.
func anySore(lib *program.Library, a *program.Assessment, p *program.Program) bool {
	h := a.Health
	return sore(h.Elbows) || sore(h.Shoulders) || sore(h.Wrists) && !fromABar(lib, p)
}

// limitsFor are the limits of a program's skill.
func limitsFor(lib *program.Library, a *program.Assessment, p *program.Program) limits {
	road, _ := lib.RoadMap(p.Skill)
	return limitsIn(road, a, p.Start)
}

// entryOpen reports whether something is missing of what a skill asks for first.
func entryOpen(p *program.Program) bool {
	return slices.ContainsFunc([]string{noteEntryHold, noteEntryReps, noteEntryLean, noteEntryFold}, func(code string) bool { return hasNote(p.Notes, code) })
}

// checkGates: a gate week asks for the whole gate on each main day, free, with nothing
// heavy before it; the second of these days closes with an open set, but for those who
// test nothing to its end. And a step has no more gate weeks in a printed version than
// the gate wants days, and one where it was not passed.
func checkGates(lib *program.Library, a *program.Assessment, p *program.Program) (v verdict) {
	weeks := map[string]int{}
	for _, w := range ahead(p) {
		if !w.Gate {
			continue
		}
		g := gateOf(lib, p, w.Step)
		weeks[w.Step]++
		v.want(weeks[w.Step] <= g.Sessions+1, "week %d: gate week number %d of one step", w.Number, weeks[w.Step])
		v.want(w.Kind == program.WeekBuild && w.Rig.Free() && w.Help == 0, "week %d: a gate with help", w.Number)
		days := 0
		for _, s := range w.Sessions {
			sets, open := gateSets(&s, g)
			if sets+open == 0 {
				continue
			}
			days++
			testable := a.Measured.YearsSince(a.Athlete.Born) >= 16 && !anySore(lib, a, p)
			longer := min(1, g.Single) // one set more, after the others
			v.want(sets+open == g.Sets+longer, "%s: %d of a gate's %d sets", s.Date, sets+open, g.Sets+longer)
			v.want((open == 1) == (days == 2 && testable), "%s: %d open sets on main day %d of a gate week", s.Date, open, days)
			apart := open // the longer set, or the open one in its place
			for _, it := range s.Items {
				if it.Role == program.RoleMain && it.Hold == g.Single {
					apart += it.Sets
				}
				v.want(it.Role != program.RoleAhead, "%s: heavy work in a gate week", s.Date)
				v.want(it.Role != program.RoleMain || it.Rig.Free() && (it.Hold == g.Hold || it.Hold == g.Single), "%s: a gate's set of %d s", s.Date, it.Hold)
			}
			v.want(g.Single == 0 || apart == 1, "%s: %d sets are longer than the gate's", s.Date, apart)
		}
		v.want(days > 0, "week %d: a gate week without a gate", w.Number)
	}
	return v
}

// gateSets counts a session's main sets of a gate's length, and its open sets.
func gateSets(s *program.Session, g program.Gate) (sets, open int) {
	for _, it := range s.Items {
		switch {
		case it.Role == program.RoleMain && it.Hold >= g.Hold:
			sets += it.Sets
		case it.Role == program.RoleTest && it.Check && it.Hold == 0:
			open += it.Sets
		}
	}
	return sets, open
}

// felt is a week's counted work in half seconds with the check holds and open sets that
// the count leaves out.
func felt(w *program.Week) int {
	sum := w.HalfSeconds
	for _, it := range items(w) {
		sum += halves(asMain(w, it)) - halves(it)
	}
	return sum
}

// atMarks are the half seconds of a week's tries at marks: in the place of leans that are too light
// to count, they may be more than a week is dosed with.
func atMarks(w *program.Week) int {
	sum := 0
	for _, it := range items(w) {
		if it.Find.Any() {
			sum += halves(it)
		}
	}
	return sum
}

// asMain is a build week's check hold or open set as the main set that it stands for, and
// as long where it is printed without seconds.
func asMain(w *program.Week, it program.Prescription) program.Prescription {
	if it.Check && (it.StraightArm || it.Step != "") && w.Kind == program.WeekBuild {
		if it.Role = program.RoleMain; it.Hold == 0 {
			it.Hold = w.Hold
		}
	}
	return it
}

// mostRepeated are the seconds of the most repetitions of main work: five, or two more than the
// step's gate.
func mostRepeated(lib *program.Library, p *program.Program, step string) int {
	return max(15, gateOf(lib, p, step).Hold+6)
}

func checkHolds(lib *program.Library, _ *program.Assessment, p *program.Program) (v verdict) {
	for _, w := range ahead(p) {
		for _, it := range items(&w) {
			if it.Hold == 0 || it.MaxHold == 0 || it.Max {
				continue
			}
			limit := 75.0
			least, most := 4, 25
			switch {
			case it.Role == program.RoleAhead:
				limit, least, most = 80, heavyLeast, heavyMost
			case w.Kind != program.WeekBuild:
			case it.Role == program.RoleMain && w.Gate: // see checkGates
				most = max(most, gateOf(lib, p, w.Step).Hold)
			case it.Role == program.RoleMain && hasNote(w.Notes, noteShortSets):
				least, most = 5, 9
			case it.Role == program.RoleMain:
				if least, most = 10, 15; inReps(lib, p) && w.Step != "" {
					most = mostRepeated(lib, p, w.Step)
				}
			case it.Role == program.RoleSecond: // fifteen, and four repetitions where it would stand still
				least, most = 12, 25
				v.want(it.Reps == 0 || it.Hold == 3*it.Reps, "week %d: %d repetitions for %d s", w.Number, it.Reps, it.Hold)
			}
			if hasNote(p.Notes, noteWayBack) || len(it.Find.Marks) > 0 { // shorter, session by session; a try is short
				least = min(least, 4)
			}
			if inReps(lib, p) { // in whole repetitions of three seconds
				if least -= least % 3; w.Kind != program.WeekBuild || it.Check {
					most = max(most, 36)
				}
			}
			v.want(it.Hold >= least && it.Hold <= most, "week %d: %s of %d s, wanted %d to %d", w.Number, it.Role, it.Hold, least, most)
			v.want(100*float64(it.Hold) <= limit*it.MaxHold+1e-6, "week %d: %s of %d s is over %.0f %% of %.1f s", w.Number, it.Role, it.Hold, limit, it.MaxHold)
		}
	}
	return v
}

// checkEffort: in a build week the main hold is .60 of its predicted maximum or more,
// .50 for those who train gently. Exceptions, by name: the floor, whose leans go in two
// centimetres; a gate week; sore elbows, which keep one rig; the goal's step held free,
// past which there is none, and without bands, or with none that helps at any step, a step
// held free, with the next out of reach; a sore joint, or weeks just after some off or after pain, which are held to an
// easier plan; a step whose gate was asked for in two weeks, and waits for the coach's word;
// and where nothing else is left the program says what would mend it, or that a gate waits. Repetitions are whole, and there is a most
// of them: pads and blocks come in the heights that there are.
func checkEffort(lib *program.Library, a *program.Assessment, p *program.Program) (v verdict) {
	h := a.Health
	said := sore(h.Wrists) || sore(h.Shoulders) || hasNote(p.Notes, noteWayBack) || hasNote(p.Notes, noteMendStrap) || hasNote(p.Notes, noteMendBand) || hasNote(p.Notes, noteGateSeconds) || hasNote(p.Notes, noteGateMinutes)
	for _, w := range ahead(p) {
		free := w.Rig.Free() && (w.Step == a.Goal.Step || len(a.Bands) == 0 || w.Hold == mainMost && (gateAfter(p, &w) || askedBefore(p, &w)))
		if w.Kind != program.WeekBuild || w.Step == "" || w.Scale > 0 || w.Gate || sore(a.Health.Elbows) || free || said || hasNote(w.Notes, noteComeback) {
			continue
		}
		least := 60.0
		if w.Effort < 0.65 {
			least = 50
		}
		hold := float64(w.Hold)
		if inReps(lib, p) {
			if w.Hold == mostRepeated(lib, p, w.Step) {
				continue
			}
			hold += 2
		}
		v.want(100*hold >= least*w.MaxHold-1e-6 || w.Rig.Free() && w.Hold == mainMost && !bandsHelp(lib, a), "week %d: %s %d s of %.1f with %.1f N: under %.0f %%", w.Number, w.Step, w.Hold, w.MaxHold, w.Help, least)
	}
	return v
}

// bandsHelp reports whether a client's bands help at some step.
func bandsHelp(lib *program.Library, a *program.Assessment) bool {
	_, m, _ := begin(lib, a)
	return slices.ContainsFunc(m.body.Steps, func(r ladder.Rung) bool { return len(r.Aids()) > 1 })
}

// gateAfter reports whether a step's gate has its week later: one that waits for room is
// held free meanwhile, since nobody moves on without it.
func gateAfter(p *program.Program, w *program.Week) bool {
	return slices.ContainsFunc(p.Weeks, func(x program.Week) bool { return x.Gate && x.Step == w.Step && x.Number > w.Number })
}

// askedBefore reports whether two weeks before one were gate weeks of its step.
func askedBefore(p *program.Program, w *program.Week) bool {
	n := 0
	for i := range p.Weeks {
		if x := &p.Weeks[i]; x.Gate && x.Step == w.Step && x.Number < w.Number {
			n++
		}
	}
	return n >= 2
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
		if before != nil && before.Exercise == w.Exercise && before.Step == w.Step && off < 2 {
			eased := p.From != 0 // a reading may bring help back: see TestRigsStay
			v.want(w.Help <= before.Help || eased, "week %d: help rises from %.1f to %.1f N", w.Number, before.Help, w.Help)
			v.want(w.Scale <= before.Scale || eased, "week %d: more weight on the toes", w.Number)
		}
		before, off = w, 0
	}
	return v
}

func checkDeloads(lib *program.Library, a *program.Assessment, p *program.Program) (v verdict) {
	every := map[int]int{1: 9, 2: 6}[len(a.Training.Days)] // the deload's week
	age := a.Measured.YearsSince(a.Athlete.Born)
	often := anySore(lib, a, p) || age >= 45 || age < 16
	switch days := len(a.Training.Days); {
	case often:
		every = max(3, map[int]int{1: 7, 2: 4}[days])
	case days > 2:
		every = 4
	}
	run, sets, off := 0, 0, 0
	for i := range p.Weeks {
		w := &p.Weeks[i]
		if w.Kind == program.WeekAway {
			off++
		}
		if w.Kind == program.WeekBuild {
			run++
			off = 0
			sets = armSets(w)
			if w.Start < p.From {
				continue
			}
			v.want(run < every || run == every && p.Weeks[i+1].Kind != program.WeekBuild, "week %d: %d build weeks in a row", w.Number, run)
			continue
		}
		run = 0
		if w.Kind == program.WeekTest || off >= 2 {
			sets = 0 // what follows is another block, or begins anew after two weeks off
		}
		if w.Kind == program.WeekDeload && w.Start >= p.From {
			v.want(i > 0 || daysAway(a, w.Start) >= 5, "week 1 is a deload")
			v.want(i+1 < len(p.Weeks), "a deload ends the block")
			v.want(sets == 0 || hasNote(p.Notes, noteWayBack) || armSets(w) <= max(sets*60/100, 1), "week %d: %d sets after %d", w.Number, armSets(w), sets)
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

// checkVolume: what the body feels, check holds and open sets included, is under the
// ceiling of the spell and rises by a tenth or one main set at the most: over the highest
// of the last four weeks; in a round's first week also over that of the round before; and
// later also over the most of the round so far. A gate week is asked the first alone, and
// counts for what another would have risen from. Rounds that open with a gate week, with
// nothing but a check, or after two weeks off, are no measure. Of plans made anew only the first is asked here:
// rounds are measured by what was printed. The least is one set a day, and the ninety
// seconds that a beginner starts with, less for age and joints.
func checkVolume(lib *program.Library, a *program.Assessment, p *program.Program) (v verdict) {
	l := limitsFor(lib, a, p)
	off, opened, from, most, back := 0, 0, 0, 0, false
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
				if it = asMain(w, it); it.Role == program.RoleMain || it.Role == program.RoleSecond {
					oneEach += halves(it) / it.Sets
				}
			}
		}
		v.want(felt(w) <= max(l.ceiling(i, false), oneEach), "week %d: %d half seconds over the ceiling %d", w.Number, felt(w), l.ceiling(i, false))
		if w.Kind == program.WeekAway {
			off++
			continue
		}
		highest := 0
		for j := max(0, i-4); j < i; j++ {
			highest = max(highest, felt(&p.Weeks[j]))
		}
		if w.Kind == program.WeekBuild && highest > 0 {
			oneSet := 0
			for _, it := range items(w) {
				if it = asMain(w, it); it.Role == program.RoleMain {
					oneSet = max(oneSet, halves(it)/it.Sets)
				}
			}
			base, first := highest, p.Weeks[i-1].Kind != program.WeekBuild
			if back = off >= 2 || back && !first; !back && p.From == 0 {
				if from = max(from, most); first {
					from = opened
				}
				if from > 0 {
					base = min(highest, from)
				}
				if w.Gate {
					from, base = base, highest
				} else if first {
					from = 0
				}
			}
			v.want(10*felt(w) <= 11*base || felt(w) <= max(oneEach, max(base+oneSet, scale(180, l.factors))+atMarks(w)), "week %d: %d half seconds after at most %d", w.Number, felt(w), base)
			v.want(off < 2 || 100*felt(w) <= max(70*highest, 100*oneEach), "week %d: %d half seconds after %d weeks off, before them %d", w.Number, felt(w), off, highest)
		}
		if most = max(most, felt(w)); w.Kind != program.WeekBuild {
			most = 0
		} else if (i == 0 || p.Weeks[i-1].Kind != program.WeekBuild) && !w.Gate && off < 2 {
			if opened = felt(w); w.HalfSeconds == 0 {
				opened = 0
			}
		}
		off = 0
	}
	return v
}

// halves weighs an item's straight-arm seconds anew, in half seconds, set by set: on
// straight lines from nothing at half of the maximum to one at .80 and one and a half
// at .90.
func halves(it program.Prescription) int {
	if it.Role != program.RoleMain && it.Role != program.RoleSecond && it.Role != program.RoleAhead {
		return 0
	}
	if len(it.Find.Marks) > 0 { // a try at each, or as the sets in whose place they stand
		sum := 0
		for _, m := range it.Find.Marks {
			sum += halves(program.Prescription{Role: it.Role, Sets: 1, Hold: it.Hold, Load: m.Load})
		}
		return max(sum, halves(program.Prescription{Role: it.Role, Sets: it.Sets, Hold: it.Find.For, Load: it.Load}))
	}
	load := math.Round(100 * it.Load)
	weight := max(0, (load-50)/30)
	if load > 80 {
		weight = 1 + (load-80)/20
	}
	return it.Sets * int(math.Round(2*weight*float64(it.Hold)))
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
			before = felt(&w)
		}
	}
	sets := armSets(last)
	v.want(before == 0 || 100*last.HalfSeconds <= 59*before || sets <= len(last.Sessions), "the test week holds %d half seconds after %d", last.HalfSeconds, before)
	return v
}

// failed reports whether a log has a set that was broken, at RPE 9.5 or above, or of less than
// was ever printed, of something that trains what an exercise trains.
func failed(lib *program.Library, log *program.Log, p *program.Program, exercise string) bool {
	trains := func(id string) program.Purpose {
		e, _ := lib.Exercise(id)
		return e.Trains[0]
	}
	most := map[string]float64{}
	for i := range p.Weeks {
		for _, it := range items(&p.Weeks[i]) {
			most[it.Exercise] = max(most[it.Exercise], float64(it.Reps+it.Hold))
		}
	}
	return slices.ContainsFunc(log.Entries, func(e program.Entry) bool {
		return e.Exercise != "" && trains(e.Exercise) == trains(exercise) && slices.ContainsFunc(e.Sets, func(s program.SetDone) bool {
			return s.Clean == program.CleanNo || s.RPE >= 9.5 || float64(s.Reps)+s.Seconds < most[e.Exercise]
		})
	})
}

// checkMoves: no exercise keeps the same dose for more than three build weeks running,
// whatever weeks without it or easy ones lie between. A gate is what it is, and may be asked
// in two weeks after two like it. The preparation may, and after two weeks off all begins
// anew. Sets at marks to be found are not the sets that they stand for. What an entry asks
// for waits at nine tenths of what was shown until more is shown, and what did not come off,
// or is a harder move of it, goes back.
func checkMoves(lib *program.Library, a *program.Assessment, p *program.Program) (v verdict) {
	road, _ := lib.RoadMap(p.Skill)
	entry := func(id string) bool {
		return slices.ContainsFunc(road.Entry, func(h program.Hold) bool { return h.Exercise == id })
	}
	before, same := map[string]string{}, map[string]int{}
	off := 0
	for _, w := range ahead(p) {
		if off++; w.Kind != program.WeekAway {
			off = 0
		}
		if off >= 2 {
			clear(same)
			clear(before)
		}
		if w.Kind != program.WeekBuild {
			continue
		}
		doses := map[string][]string{}
		for _, it := range items(&w) {
			if it.Role != program.RolePrepare && it.Role != program.RoleTest && !(entryOpen(p) && entry(it.Exercise)) {
				key := string(it.Role) + " " + it.Exercise
				dose := fmt.Sprint(it.Sets, it.Hold, it.Reps, it.Ahead, it.Scale, it.Rig)
				for _, mark := range it.Find.Marks {
					dose += fmt.Sprint(" at ", mark.At)
				}
				doses[key] = append(doses[key], dose)
			}
		}
		for key, d := range doses {
			if _, exercise, _ := strings.Cut(key, " "); failed(lib, &a.Log, p, exercise) {
				continue
			}
			slices.Sort(d)
			now := fmt.Sprint(slices.Compact(d))
			if same[key]++; now != before[key] {
				same[key] = 1
			}
			before[key] = now
			v.want(same[key] <= 3 || w.Gate, "week %d: %s stays at %s for %d build weeks", w.Number, key, now, same[key])
		}
	}
	return v
}
