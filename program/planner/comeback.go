package planner

import "gatepost/program"

// # After weeks off
//
// Two weeks or more without training: for two weeks the work is on the step before, or
// on the same step with more help, with seven sets in ten; then it comes back, and is
// whole again after as many weeks as were missed, four at most. Until then nobody begins
// a new step or shows a gate. Our judgement, near common practice: what was built in
// months is not lost in three weeks, but elbows have to get used to it again.

const (
	comebackFrom  = 2  // weeks off in a row
	comebackEasy  = 2  // weeks of the easier step or rig
	comebackMost  = 4  // weeks until the work is whole again, at the most
	comebackShare = 70 // per cent of the sets and of the counted seconds
)

// comeback is how a week lies after weeks off: how many there were, and its place among
// the weeks of training since, from 0. Off is 0 where the way back is over, or nothing
// was trained before it.
func (p *plan) comeback(week int) (off, since int) {
	kinds := p.kinds()
	at := len(p.past.before) + week
	for since = 0; at-since-1 >= 0 && kinds[at-since-1] != program.WeekAway; since++ {
	}
	last := at - since - 1
	for ; last >= 0 && kinds[last] == program.WeekAway; last-- {
		if off++; last >= len(p.past.before) && illIn(p.athlete, p.weeks[last-len(p.past.before)].start) {
			off++ // a week in bed takes as much as two without training
		}
	}
	if last < 0 || off < comebackFrom || since >= min(off, comebackMost) {
		return 0, 0
	}
	return off, since
}

// back is the note of a week on the way back.
func (p *plan) back(week int) []program.Note {
	off, _ := p.comeback(week)
	if off == 0 {
		return nil
	}
	return []program.Note{note(noteComeback, count("weeks", off), shareOf("share", float64(p.comebackPart(week))/100))}
}

// kinds are those of all weeks, the earlier blocks' first.
func (p *plan) kinds() []program.WeekKind {
	var out []program.WeekKind
	for _, w := range p.past.before {
		out = append(out, w.kind)
	}
	for _, w := range p.weeks {
		out = append(out, w.kind)
	}
	return out
}

// returning reports whether a week is on the way back from weeks off, and easy whether
// it is one of the first, on an easier step or rig.
func (p *plan) returning(week int) (back, easy bool) {
	off, since := p.comeback(week)
	return off > 0, off > 0 && since < comebackEasy
}

// stepsBack reports whether a build week is trained on the step before; sore elbows keep
// to one step, with fewer sets.
func (p *plan) stepsBack(week int, now stage) bool {
	_, easy := p.returning(week)
	return easy && now.rung > 0 && p.weeks[week].kind == program.WeekBuild && !p.limits.elbowSore
}

// stepBeforeOff is the step worked on before weeks off that lie just behind; empty where
// there are none.
func (p *plan) stepBeforeOff() string {
	over := p.past.over()
	off, since := p.comeback(over)
	for i := over - since - 1; off > 0 && i >= 0; i-- {
		if w := &p.past.weeks[i]; w.Kind == program.WeekBuild && w.Scale == 0 {
			return w.Step
		}
	}
	return ""
}

// comeBack takes from a week after weeks off what is over its share of the work before
// them, in counted seconds and in sets.
func (p *plan) comeBack(i int, l *load, done []int) {
	off, since := p.comeback(i)
	if off == 0 {
		return
	}
	part := p.comebackPart(i)
	most, sets := 0, 0
	last := i - since // the first week off
	for last > 0 && p.weeks[last-1].kind == program.WeekAway {
		last--
	}
	for k := max(0, last-lookBack); k < last; k++ {
		most = max(most, done[len(p.past.before)+k])
		if p.weeks[k].kind == program.WeekBuild {
			sets = p.setsOf(k)
		}
	}
	if most > 0 {
		l.shrink(most * part / 100)
	}
	l.easeTo(sets, part)
}

// setsOf is how many sets of straight-arm work a week holds.
func (p *plan) setsOf(week int) int {
	if week < p.past.over() {
		l := p.loadOf(&p.past.weeks[week])
		return total(l.sets)
	}
	return total(p.loads[week].sets)
}

// comebackPart is the share of the work before, in per cent, that a week on the way back
// may hold; 100 on no such way.
func (p *plan) comebackPart(week int) int {
	off, since := p.comeback(week)
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
