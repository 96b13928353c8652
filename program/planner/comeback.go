package planner

import "gatepost/program"

// # After weeks off
//
// Two weeks or more without training: for two weeks the work is on the step before, or
// on the same step with more help, with seven sets in ten; then it comes back, and is
// whole again after as many weeks as were missed, four at most. Until then nobody begins
// a new step or shows a gate. Our judgement, near common practice: what was built in
// months is not lost in three weeks, but elbows have to get used to it again.

// comeback is how a week lies after weeks off: how many there were, and its place among
// the weeks of training since, from 0. Off is 0 where the way back is over, or nothing
// was trained before it.
func (sn *season) comeback(week int) (off, since int) {
	kinds := sn.kinds()
	at := len(sn.past.before) + week
	for since = 0; at-since-1 >= 0 && kinds[at-since-1] != program.WeekAway; since++ {
	}
	last := at - since - 1
	for ; last >= 0 && kinds[last] == program.WeekAway; last-- {
		if off++; last >= len(sn.past.before) && illIn(sn.athlete, sn.weeks[last-len(sn.past.before)].start) {
			off++ // a week in bed takes as much as two without training
		}
	}
	if last < 0 || off < comebackFrom || since >= min(off, comebackMost) {
		return 0, 0
	}
	return off, since
}

// back is the note of a week on the way back.
func (sn *season) back(week int) []program.Note {
	off, _ := sn.comeback(week)
	if off == 0 {
		return nil
	}
	return []program.Note{note(noteComeback, count("weeks", off), shareOf("share", float64(sn.comebackPart(week))/100))}
}

// kinds are those of all weeks, the earlier blocks' first.
func (sn *season) kinds() []program.WeekKind {
	var out []program.WeekKind
	for _, w := range sn.past.before {
		out = append(out, w.kind)
	}
	for _, w := range sn.weeks {
		out = append(out, w.kind)
	}
	return out
}

// returning reports whether a week is on the way back from weeks off, and easy whether
// it is one of the first, on an easier step or rig.
func (sn *season) returning(week int) (back, easy bool) {
	off, since := sn.comeback(week)
	return off > 0, off > 0 && since < comebackEasy
}

// stepsBack reports whether a build week is trained on the step before; sore elbows keep
// to one step, with fewer sets.
func (rt *route) stepsBack(week int, now stage) bool {
	_, easy := rt.returning(week)
	return easy && now.rung > 0 && rt.weeks[week].kind == program.WeekBuild && !rt.limits.elbowSore
}

// stepBeforeOff is the step worked on before weeks off that lie just behind; empty where
// there are none.
func (sn *season) stepBeforeOff() string {
	over := sn.past.over()
	off, since := sn.comeback(over)
	for i := over - since - 1; off > 0 && i >= 0; i-- {
		if w := &sn.past.weeks[i]; w.Kind == program.WeekBuild && w.Scale == 0 {
			return w.Step
		}
	}
	return ""
}

// comeBack takes from a week after weeks off what is over its share of the work before
// them, in counted seconds and in sets.
func (ds *doses) comeBack(i int, l *load, done []int) {
	off, since := ds.comeback(i)
	if off == 0 {
		return
	}
	part := ds.comebackPart(i)
	most, sets := 0, 0
	last := i - since // the first week off
	for last > 0 && ds.weeks[last-1].kind == program.WeekAway {
		last--
	}
	for k := max(0, last-lookBack); k < last; k++ {
		most = max(most, done[len(ds.past.before)+k])
		if ds.weeks[k].kind == program.WeekBuild {
			sets = ds.setsOf(k)
		}
	}
	if most > 0 {
		l.shrink(most * part / 100)
	}
	l.easeTo(sets, part)
}

// setsOf is how many sets of straight-arm work a week holds.
func (ds *doses) setsOf(week int) int {
	if week < ds.past.over() {
		l := ds.loadOf(&ds.past.weeks[week])
		return total(l.sets)
	}
	return total(ds.loads[week].sets)
}

// comebackPart is the share of the work before, in per cent, that a week on the way back
// may hold; 100 on no such way.
func (sn *season) comebackPart(week int) int {
	off, since := sn.comeback(week)
	if off == 0 {
		return 100
	}
	whole := min(off, comebackMost)
	if since < comebackEasy || whole <= comebackEasy {
		return comebackShare
	}
	steps := whole - comebackEasy + 1
	return comebackShare + (100-comebackShare)*(since-comebackEasy+1)/steps
}
