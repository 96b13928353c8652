package planner

import (
	"cmp"
	"slices"

	"gatepost/program"
)

// OnWall is the program that hangs on the wall, and what the log says of it.
type OnWall struct {
	Program program.Program
	Changed []program.Change // what its version changed of the one before
	Review  program.Review   // of the last day that is written down; without Last: no log
	Next    program.Program  // the plan that Review comes to
}

// Wall is the program that hangs on the wall: the plan of the assessment until a
// later one is kept, then the last kept. Weeks that were kept are printed as they
// are, whatever has become of assessment and log since; forecasts and loads are
// those of the day that the plan was made, read again.
//
// The review is of the day of the last line of the log, so that it follows from
// the files alone. Where the plan on the wall was made on that day or later, it
// is the review that the plan was made from.
func Wall(lib *program.Library, a *program.Assessment) (OnWall, program.Problems) {
	versions := byVersion(a.Plans)
	n := len(versions)
	var out OnWall
	var problems program.Problems
	on := lastLine(&a.Log)
	switch {
	case n < 2:
		out.Program, problems = Plan(lib, a)
	default:
		out.Review, out.Program, problems = Read(lib, a, versions[:n-1], versions[n-1].On, versions[n-1].Passed...)
		out.Next = out.Program
		out.Changed = changes(versions[n-2].Weeks, versions[n-1].Weeks, versions[n-1].On)
	}
	if problems.Stop() || len(out.Program.Withheld) > 0 {
		return OnWall{Program: out.Program}, problems
	}
	if n > 0 {
		out.hang(lib, a, &versions[n-1])
	}
	if on != 0 && (n < 2 || on > versions[n-1].On) {
		out.Review, out.Next, _ = Read(lib, a, versions, on)
	}
	return out, problems
}

func byVersion(versions []program.PlanVersion) []program.PlanVersion {
	versions = slices.Clone(versions)
	slices.SortStableFunc(versions, func(x, y program.PlanVersion) int { return cmp.Compare(x.Version, y.Version) })
	return versions
}

// lastLine is the last day of a log; 0 where it has none.
func lastLine(log *program.Log) program.Date {
	last := program.Date(0)
	for _, e := range log.Entries {
		last = max(last, e.Date)
	}
	return last
}

// hang puts the kept weeks in place of those planned again, with their figures
// drawn anew.
func (o *OnWall) hang(lib *program.Library, a *program.Assessment, v *program.PlanVersion) {
	p := &o.Program
	_, plan, _ := begin(lib, a)
	if plan == nil || len(v.Weeks) == 0 {
		return
	}
	p.Version, p.Start, p.From, p.Client.Clock = v.Version, v.Weeks[0].Start, 0, v.Clock
	if v.Version > 1 {
		p.From = madeFor(v)
	}
	p.Weeks, p.Rungs = slices.Clone(v.Weeks), false
	for i := range p.Weeks {
		w := &p.Weeks[i]
		w.Stance = plan.stanceOf(w)
		p.Rungs = p.Rungs || w.Step == "" && w.Exercise != "" || w.Scale > 0
	}
	say(a.Wishes, p.Weeks, v.On)
	p.Wishes = plan.hanging(p)
	p.Place = placeOfWeeks(p.Weeks[min(len(p.Weeks)-1, max(0, int(p.From-p.Start)/7)):])
	p.Gates = plan.gates(p.Weeks)
}
