package planner

import (
	"slices"

	"gatepost/program"
)

// gateTry is one day's free sets of a step, held against its gate.
type gateTry struct {
	date     program.Date
	shown    []*setRead // that decide
	criteria []criterion
}

// criterion is one with the sets that decide it, not yet written out.
type criterion struct {
	program.Criterion
	sets []*setRead
}

func (t *gateTry) counts() bool { return t.score() == len(t.criteria) }

// missed says that something was shown not to be there yet.
func (t *gateTry) missed() bool {
	return slices.ContainsFunc(t.criteria, func(c criterion) bool { return !c.Met && !c.Unsaid })
}

func (t *gateTry) score() int {
	n := 0
	for _, c := range t.criteria {
		if c.Met {
			n++
		}
	}
	return n
}

// tryGate looks at a day; nil where the step was not held on it.
func tryGate(d *dayRead, g program.StepGate) *gateTry {
	var sets, helped []*setRead
	for i := range d.sets {
		s := &d.sets[i]
		switch {
		case s.Step != g.Step || s.Done.Seconds == 0 || s.item != nil && (s.item.Scale > 0 || s.item.Role == program.RoleAhead):
		case s.Rig.Free():
			sets = append(sets, s)
		default:
			helped = append(helped, s)
		}
	}
	if len(sets)+len(helped) == 0 {
		return nil
	}
	t := &gateTry{date: d.date}
	free := criterion{Criterion: program.Criterion{Name: "free", Met: len(sets) >= g.Sets, Wanted: float64(g.Sets), Shown: float64(len(sets))}}
	if len(sets) == 0 {
		free.sets = helped
	}
	t.shown = longEnough(sets, g)
	hold := program.Criterion{Name: "hold", Met: len(t.shown) >= g.Sets, Wanted: float64(g.Hold), Shown: nthLongest(sets, g.Sets)}
	t.criteria = append(t.criteria, free, criterion{hold, sets})
	if g.Single > 0 { // one set more, or all of them as long as that one
		longest := nthLongest(sets, 1)
		met := longest >= float64(g.Single) && len(sets) > g.Sets || nthLongest(sets, g.Sets) >= float64(g.Single)
		t.criteria = append(t.criteria, criterion{Criterion: program.Criterion{Name: "single", Met: met, Wanted: float64(g.Single), Shown: longest}})
	}
	t.criteria = append(t.criteria, clean(t.shown), lastRPE(sets, g), pain(sets, g))
	return t
}

func reads(sets []*setRead) []program.SetRead {
	var out []program.SetRead
	for _, s := range sets {
		out = append(out, s.SetRead)
	}
	return out
}

// longEnough are the sets that reach the gate's seconds; of more than it asks
// for, those that are clean first.
func longEnough(sets []*setRead, g program.StepGate) []*setRead {
	var long []*setRead
	for _, want := range []program.Clean{program.CleanYes, program.CleanUnsaid, program.CleanNo} {
		for _, s := range sets {
			if s.Done.Seconds >= float64(g.Hold) && s.Done.Clean == want {
				long = append(long, s)
			}
		}
	}
	asked := g.Sets
	if g.Single > 0 {
		asked++
	}
	return long[:min(len(long), asked)]
}

func nthLongest(sets []*setRead, n int) float64 {
	var seconds []float64
	for _, s := range sets {
		seconds = append(seconds, s.Done.Seconds)
	}
	slices.Sort(seconds)
	if n < 1 || n > len(seconds) {
		return 0
	}
	return seconds[len(seconds)-n]
}

func clean(sets []*setRead) criterion {
	c := criterion{Criterion: program.Criterion{Name: "clean", Met: len(sets) > 0}}
	for _, s := range sets {
		if s.Done.Clean != program.CleanYes {
			c.Met = false
			c.Unsaid = c.Unsaid || s.Done.Clean == program.CleanUnsaid
			c.sets = append(c.sets, s)
		}
	}
	return c
}

func lastRPE(sets []*setRead, g program.StepGate) criterion {
	c := criterion{Criterion: program.Criterion{Name: "rpe", Wanted: g.RPEMax}}
	if len(sets) == 0 {
		return c
	}
	last := sets[len(sets)-1]
	c.Shown, c.Unsaid, c.sets = last.Done.RPE, last.Done.RPE == 0, sets[len(sets)-1:]
	if last.item != nil && isOpen(*last.item) { // how hard it was at the gate's seconds
		c.Shown -= max(0, last.Done.Seconds-float64(longestSet(g.Gate))) / secondsPerRPE
	}
	c.Met = !c.Unsaid && c.Shown <= g.RPEMax
	return c
}

func pain(sets []*setRead, g program.StepGate) criterion {
	c := criterion{Criterion: program.Criterion{Name: "pain", Met: len(sets) > 0, Wanted: float64(g.PainMax), Unsaid: true}}
	for _, s := range sets {
		worst := s.Done.Pain.Worst()
		c.Unsaid = c.Unsaid && !s.Done.Pain.Given
		c.Shown = max(c.Shown, float64(worst))
		if worst > g.PainMax {
			c.Met = false
			c.sets = append(c.sets, s)
		}
	}
	return c
}
