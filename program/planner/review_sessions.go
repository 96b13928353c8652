package planner

import (
	"math"
	"slices"

	"gatepost/program"
)

// sessions lays the printed sessions of the block on the wall beside those done.
func (r *reading) sessions() (out []program.SessionRead, done, missed int) {
	for _, w := range r.weeks {
		if w.start < r.block {
			continue
		}
		for i := range w.Sessions {
			s := &w.Sessions[i]
			read := program.SessionRead{Printed: s.Date}
			for _, d := range w.days {
				if d.printed == s {
					d.count(&read)
				}
			}
			if read.Done == 0 && s.Date >= r.on {
				continue // this evening is not over
			}
			if read.Done != 0 {
				done++
			} else {
				missed++
			}
			out = append(out, read)
		}
		for _, d := range w.days {
			if d.printed == nil {
				var read program.SessionRead
				d.count(&read)
				out = append(out, read)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b program.SessionRead) int { return int(sessionDate(a) - sessionDate(b)) })
	return out, done, missed
}

func sessionDate(s program.SessionRead) program.Date {
	if s.Done != 0 {
		return s.Done
	}
	return s.Printed
}

// count sums up a day's straight-arm holds.
func (d *dayRead) count(read *program.SessionRead) {
	read.Done = d.date
	if d.printed != nil {
		for i := range d.printed.Items {
			if item := &d.printed.Items[i]; isArm(item) {
				read.Sets += item.Sets
			}
		}
	}
	for i := range d.sets {
		s := &d.sets[i]
		switch {
		case s.item == nil || !isArm(s.item) || !s.said():
		case s.short():
			read.Short++
		default:
			read.Held++
		}
	}
}

// pace is ln of the capacity believed over the one that the block's first version
// on the wall planned for the same Monday; 0 where it planned none.
func (r *reading) pace() float64 {
	for i := range r.wall {
		for j := range r.wall[i].Weeks {
			if w := &r.wall[i].Weeks[j]; w.Start == r.from && w.Capacity > 0 && r.wall[i].Weeks[0].Start == r.block {
				return math.Log(r.est.state.C12() / w.Capacity)
			}
		}
	}
	if n := len(r.progress); n > 0 && r.progress[n-1].Planned > 0 {
		return math.Log(r.progress[n-1].Held12 / r.progress[n-1].Planned)
	}
	return 0
}
