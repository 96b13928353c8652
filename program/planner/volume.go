package planner

import "gatepost/program"

// volume keeps count of the straight-arm work done, in half seconds, check holds and
// open sets included, and says how much the next week may hold.
type volume struct {
	limits  limits
	done    []int // by week
	rounds  []int // what each round between deloads opened with, see add
	inRound int   // build weeks of this round so far
	from    int   // what this round's second week may rise from, whatever the first held
	most    int   // the most of this round's weeks
	off     int   // weeks without straight-arm work in a row
	easy    int   // weeks still eased after a long break
	built   int   // of the last build week; 0: none yet
}

// next is the most half seconds for a build week: a tenth, or one set of its main work,
// above what it rises from, and what a beginner starts with at the least: light weeks
// count little, and the next need not be as light. A gate, which is what the work builds up to, may rise from
// the highest of the weeks behind.
func (v *volume) next(week int, main work) int {
	cap, base := v.limits.ceiling(week, v.easy > 0), v.base()
	if main.gate {
		base = v.highest()
	}
	switch {
	case base == 0:
		return min(cap, v.limits.startVolume(v.easy > 0))
	case v.off >= shortBreak:
		return min(cap, base*restartShare/100)
	default:
		return min(cap, max(base*(100+v.limits.rise)/100, base+main.halfSeconds(), v.limits.anybodys(v.easy > 0)))
	}
}

// base is what a build week rises from: in a round's first week what the round before
// opened with, later the most of this round, where that weighs anything. Never more than the highest of the weeks
// behind, which is what counts alone after weeks off.
func (v *volume) base() int {
	base := v.highest()
	switch n := len(v.rounds); {
	case v.off >= shortBreak:
	case v.inRound > 0 && max(v.from, v.most) > 0:
		base = min(base, max(v.from, v.most))
	case n > 0 && v.rounds[n-1] > 0:
		base = min(base, v.rounds[n-1])
	}
	return base
}

// highest is the most of the last four weeks, or of all before them where those
// were empty.
func (v *volume) highest() int {
	most := 0
	for i := len(v.done) - 1; i >= 0 && (i >= len(v.done)-lookBack || most == 0); i-- {
		most = max(most, v.done[i])
	}
	return most
}

// weekDone is what a week weighs in the count of straight-arm work.
type weekDone struct {
	kind        program.WeekKind
	halfSeconds int  // as it was done, or else planned in the end
	printed     int  // half seconds
	gate        bool // its gate alone, with little beside it
}

// add notes a week. A round opens with what its first week printed: a session missed in
// it is no reason to go on, or to begin the next round, lower. Nor is a gate in that week,
// or its being the first after some off: the next week rises from what this one did, and
// the next round from what the one before did.
func (v *volume) add(w weekDone) {
	if w.kind == program.WeekBuild && v.inRound == 0 {
		opened := w.printed
		v.from, v.most = w.printed, 0
		if w.gate || v.off >= shortBreak {
			v.from = v.base()
			opened = v.from
			if n := len(v.rounds); n > 0 {
				opened = v.rounds[n-1]
			}
		}
		v.rounds = append(v.rounds, opened)
	}
	v.done = append(v.done, w.halfSeconds)
	v.most = max(v.most, w.halfSeconds)
	if w.kind == program.WeekBuild {
		v.built = w.halfSeconds
	}
	v.inRound++
	if w.kind != program.WeekBuild {
		v.inRound = 0
	}
	if w.kind == program.WeekAway {
		v.off++
		if v.off >= longBreak {
			v.easy = easyReturn
		}
		return
	}
	v.off = 0
	v.easy = max(0, v.easy-1)
}

// worked is a week's counted work with its check holds and open sets, which the count
// leaves out: those without seconds at those of the main work. Where less of the week
// was done, as large a share of them.
func worked(w *program.Week, halfSeconds int) int {
	tests := 0
	for i := range w.Sessions {
		for _, item := range w.Sessions[i].Items {
			if item.Check && armed(&item) && w.Kind == program.WeekBuild {
				hold := item.Hold
				if hold == 0 {
					hold = w.Hold
				}
				tests += item.Sets * work{hold: hold, share: item.Load}.halfSeconds()
			}
		}
	}
	if w.HalfSeconds == 0 {
		return halfSeconds
	}
	return halfSeconds + tests*halfSeconds/w.HalfSeconds
}

// weekDoneOf is a printed week of which so many half seconds were done.
func weekDoneOf(w *program.Week, kind program.WeekKind, halfSeconds int) weekDone {
	return weekDone{kind, worked(w, halfSeconds), worked(w, w.HalfSeconds), w.Gate}
}
