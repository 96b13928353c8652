package planner

import "gatepost/program"

// volume keeps count of the straight-arm work done, in half seconds, and says
// how much the next week may hold.
type volume struct {
	limits  limits
	done    []int // by week
	rounds  []int // the first build week of each round between deloads
	inRound int   // build weeks of this round so far
	off     int   // weeks without straight-arm work in a row
	easy    int   // weeks still eased after a long break
	built   int   // of the last build week; 0: none yet
}

// Rises and returns (our judgement: what elbow tendons bear).
const (
	lookBack     = 4  // weeks whose highest counts as done
	longBreak    = 4  // weeks off after which two weeks are eased
	shortBreak   = 2  // weeks off after which work restarts lower
	restartShare = 70 // per cent
)

// next is the most half seconds for a build week. A set of main work weighs
// oneSet; first says that the week opens a round after a deload.
func (v *volume) next(week, oneSet int, first bool) int {
	cap := v.limits.ceiling(week, v.easy > 0)
	highest := v.highest()
	if highest == 0 {
		return min(cap, v.limits.startVolume(v.easy > 0))
	}
	if v.off >= shortBreak {
		return min(cap, highest*restartShare/100)
	}
	if first && len(v.rounds) > 0 {
		highest = min(highest, v.rounds[len(v.rounds)-1])
	}
	return min(cap, max(highest*11/10, highest+oneSet))
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

// add notes a week's work as it was done, or else planned in the end, and as it
// was printed: a session missed in a round's first week is no reason to begin the
// next round lower.
func (v *volume) add(kind program.WeekKind, halfSeconds, printed int, first bool) {
	v.done = append(v.done, halfSeconds)
	if kind == program.WeekBuild && first {
		v.rounds = append(v.rounds, printed)
	}
	if kind == program.WeekBuild {
		v.built = halfSeconds
	}
	v.inRound++
	if kind != program.WeekBuild {
		v.inRound = 0
	}
	if kind == program.WeekAway {
		v.off++
		if v.off >= longBreak {
			v.easy = easyReturn
		}
		return
	}
	v.off = 0
	v.easy = max(0, v.easy-1)
}

// worked is a week's counted work with the open set of its gate, which is printed
// without seconds, at those of the gate; a share of it where less of the week was done.
func worked(w *program.Week, halfSeconds int) int {
	open := 0
	for i := range w.Sessions {
		for _, item := range w.Sessions[i].Items {
			if w.Gate && isOpen(item) {
				open += work{hold: w.Hold, share: item.Load}.halfSeconds()
			}
		}
	}
	if w.HalfSeconds == 0 {
		return halfSeconds
	}
	return halfSeconds + open*halfSeconds/w.HalfSeconds
}
