package planner

import (
	"testing"

	"gatepost/program"
)

// A week's work stays on the wall while it trains: of a hold of twenty seconds twelve
// to fifteen, six to seven and a half tenths. Eleven are too little and sixteen too much
// (our judgement), and another exercise or rig is another week.
func TestWorkThatStillServes(t *testing.T) {
	p := capableOf(t, 20, nil)
	r := &p.body.Steps[0]
	now := p.at(r, r.Free(), 0)
	for hold, want := range map[int]bool{10: false, 11: false, 12: true, 14: true, 15: true, 16: false} {
		was, kept := now, now
		was.hold = hold
		if got := p.serves(&kept, &was, 0); got != want || want && kept.hold != hold {
			t.Errorf("%d s of 20: serves %v with %d s, want %v", hold, got, kept.hold, want)
		}
	}
	was := now
	was.aid.Rig = program.Rig{Bands: []string{"narrow"}}
	if p.serves(&now, &was, 0) {
		t.Error("a band that hangs no more serves")
	}
}

// A plan that may ask no more than another asks no more sets of any day than it: two
// of the main work where that one has two, three of the second where it has three.
func TestNoMoreSetsThanTheOther(t *testing.T) {
	a := maren(t)
	a.Training.Away = nil
	first, _ := Plan(library(t), &a)
	other := deep(first)
	for w := range other.Weeks {
		eachMain(&other.Weeks[w], func(i *program.Prescription) { i.Sets = min(i.Sets, 2) })
	}
	p := retraced(library(t), &a)
	p.gentlerThan = []otherPlan{{weeks: other.Weeks}}
	var out program.Program
	p.fill(&out, nil)
	before, weeks := 0, 0
	for i, w := range out.Weeks {
		if w.Kind != program.WeekBuild || w.Gate || first.Weeks[i].Gate || w.Step != first.Weeks[i].Step {
			continue
		}
		before, weeks = max(before, first.Weeks[i].Sets), weeks+1
		for _, s := range w.Sessions {
			sets := 0
			for _, it := range s.Items {
				if isMain(&it) {
					sets += it.Sets
				}
			}
			if sets > 2+1 { // a check beside them
				t.Errorf("%s: %d main sets, the other plan has 2", s.Date, sets)
			}
		}
	}
	if before < 4 || weeks < 3 {
		t.Fatalf("%d weeks of up to %d sets", weeks, before)
	}
}
