package planner

import (
	"slices"

	"gatepost/program"
)

// # Nothing stands still
//
// No exercise keeps the same dose for more than three build weeks running.
//
// What the planner does not compute moves by small steps (common practice): one
// repetition or a few seconds more every second build week since the exercise came
// in, to half as much again and never beyond fifteen repetitions, which is as far as
// repetitions tell of strength. Then comes the exercise's harder move, or else one set
// more. Of pulling, whose sets follow the pushing, every third week. A deload goes back
// to the exercise as it began, and so does whoever was off for two weeks or has a joint
// sore since. A week in which a set did not come off takes the exercise one move back, and
// it goes on from there. The preparation stays: warming up is no work to add to.

// progressed is an exercise and its dose in a build week; back are build weeks that do not count.
func (x *exercises) progressed(e *program.Exercise, d day, role program.Role, back int) (*program.Exercise, program.Dose) {
	dose, from := e.Dose, e.Dose
	came, ok := x.came[e.ID]
	if !ok {
		return e, dose
	}
	for range (d.builds - came - back) / movesBy(role) {
		next, more := longer(dose, from)
		if !more {
			if h := x.harder(e, d); h != nil {
				e, from = h, h.Dose
				next = from
			} else if next = from; !role.Against() { // heavier, from the start
				next = oneSetMore(dose, from)
			}
		}
		dose = next
	}
	return e, dose
}

// movesBy is how many build weeks lie between two small moves of an exercise.
func movesBy(role program.Role) int {
	if role.Against() {
		return againstMovesEvery
	}
	return movesEvery
}

// longer is the next dose of as many sets, up to the top of where it began.
func longer(now, from program.Dose) (program.Dose, bool) {
	step, top := doseStep(from)
	if now.Reps > 0 {
		now.Reps += step
		return now, now.Reps <= top
	}
	now.Hold += step
	return now, now.Hold <= top
}

// doseStep is by how much a dose moves, and how far.
func doseStep(from program.Dose) (step, top int) {
	if from.Reps > 0 {
		return 1, min(mostReps, from.Reps*3/2)
	}
	if step = 5; from.Hold < 20 {
		step = 2
	}
	return step, from.Hold + from.Hold/2/step*step
}

// oneSetMore is a dose with a set more and no less work in all; of sets there are
// five at most.
func oneSetMore(now, from program.Dose) program.Dose {
	next := from
	if next.Sets = max(1, now.Sets) + 1; next.Sets > mostSets {
		return from
	}
	for next.Sets*(next.Reps+next.Hold) < now.Sets*(now.Reps+now.Hold) {
		next, _ = longer(next, from)
	}
	return next
}

// harder is the next harder version of an exercise that this client may do today; a
// joint that is sore is not given more, and what the entry asks for is not come to by weeks.
func (x *exercises) harder(e *program.Exercise, d day) *program.Exercise {
	if x.isPreferred(e.ID) {
		return nil
	}
	for _, id := range e.Harder {
		h, ok := x.lib.Exercise(id)
		if ok && x.can(h) && h.Trains[0] == e.Trains[0] && !x.reaches(h) && !(h.StraightArm && (d.clear || !d.straight)) && !slices.ContainsFunc(h.Loads, x.isSore) {
			return h
		}
		if x.isNew(d) {
			return nil
		}
	}
	return nil
}

// reaches reports whether an exercise is as hard as one that is missing of the entry.
func (c *client) reaches(e *program.Exercise) bool {
	return slices.ContainsFunc(c.open, func(o opening) bool {
		asked, ok := c.lib.Exercise(o.Exercise)
		return ok && asked.Trains[0] == e.Trains[0] && e.Rank >= asked.Rank
	})
}

func (c *client) isSore(joint string) bool {
	switch h := c.athlete.Health; joint {
	case "wrists":
		return sore(h.Wrists)
	case "elbows":
		return sore(h.Elbows)
	case "shoulders":
		return sore(h.Shoulders)
	}
	return false
}

// comeIn notes a week, and which exercises came in with it: they move on from there.
// Two weeks off, or work that was printed for joints that were well, begin anew.
func (lo *layout) comeIn(i int, w *program.Week) {
	lo.behind = append(lo.behind, *w)
	if i > 0 && w.Kind == program.WeekAway && lo.weeks[i-1].kind == program.WeekAway {
		clear(lo.exercises.came)
		clear(lo.exercises.back)
		lo.anew = lo.buildsIn(i)
	}
	if w.Kind != program.WeekBuild {
		return
	}
	if w.Effort > lo.limits.effort {
		lo.anew = lo.buildsIn(i + 1)
		return
	}
	for _, s := range w.Sessions {
		for _, item := range s.Items {
			if _, ok := lo.exercises.came[item.Exercise]; !ok {
				lo.exercises.came[item.Exercise] = lo.buildsIn(i)
			}
		}
	}
	if i < len(lo.past.fell) {
		lo.exercises.fall(lo.past.fell[i], lo.buildsIn(i+1))
	}
}

// leanHold is how long easy leans last: fifteen seconds at first, and up to twenty-five.
func (sn *season) leanHold(week int) int {
	from := program.Dose{Hold: secondLeast}
	step, _ := doseStep(from)
	return min(secondMost, secondLeast+(sn.buildsIn(week)-sn.anew)/movesEvery*step)
}

// buildsIn is how many build weeks of the block come before a week.
func (sn *season) buildsIn(week int) int {
	n := 0
	for _, w := range sn.weeks[:week] {
		if w.kind == program.WeekBuild {
			n++
		}
	}
	return n
}
