package planner

import (
	"testing"

	"gatepost/program"
)

// Someone who misses one session of three goes on with the work that was printed:
// it neither rises on sessions that were not done nor comes down week by week, at
// the end of a block as little as within it.
func TestMissedSessionsDoNotShrinkTheWork(t *testing.T) {
	lib, a := library(t), maren(t)
	a.Training.Away, a.Goal.By = nil, a.Measured+500
	p, _ := Plan(lib, &a)
	wall := []program.PlanVersion{Version(&p, 1, a.Measured)}
	start, first, most := p.Start, p.Weeks[0].HalfSeconds, 0
	for n := range 20 {
		monday := start + program.Date(7*n)
		var w *program.Week
		for i := range p.Weeks {
			if p.Weeks[i].Start == monday {
				w = &p.Weeks[i]
			}
		}
		work := w.HalfSeconds
		if hasNote(w.Notes, noteCheckHold) { // which stands outside
			work += 2 * w.Hold
		}
		if w.Kind == program.WeekBuild && !w.Gate && n >= 16 && 10*work < 7*first { // a gate week asks for its gate; sets are whole, and one of fifteen easy seconds a fifth of a week
			t.Errorf("week %d prints %d half seconds, the first week printed %d", n+1, work, first)
		}
		most = max(most, w.HalfSeconds)
		for i, s := range w.Sessions {
			if i != n%3 {
				a.Log.Entries = append(a.Log.Entries, program.Entry{Date: s.Date, AsPrinted: true})
			}
		}
		_, p, _ = Read(lib, &a, wall, monday+6)
		wall = append(wall, Version(&p, len(wall)+1, monday+6))
	}
	if most > first*5/4 {
		t.Errorf("%d half seconds printed on work that was never done in full; the first week printed %d", most, first)
	}
}
