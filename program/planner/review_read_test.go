package planner

import (
	"math"
	"slices"
	"testing"

	"gatepost/program"
	"gatepost/program/ladder"
)

// Wrists that bear no weight, and no handles: three weeks done as printed are no weeks
// off. Strength is neither gained nor lost, and nobody is told of weeks with nothing
// done; the fourth, in which nothing was done, is one, and costs one per cent.
func TestWeeksWithoutStraightArmsAreNoWeeksOff(t *testing.T) {
	lib, a := library(t), maren(t)
	a.Training.Away, a.Kit, a.Health.Wrists = nil, []string{"wall"}, program.JointSore
	p, _ := Plan(lib, &a)
	for i := range p.Weeks[:3] {
		for _, s := range p.Weeks[i].Sessions {
			for _, item := range s.Items {
				if isArm(&item) {
					t.Fatalf("%s holds %s", s.Date, item.Exercise)
				}
			}
		}
	}
	a.Log = asPrinted(&p, 0, 1, 2)
	wall := []program.PlanVersion{Version(&p, 1, a.Measured)}
	for _, c := range []struct {
		weeks int
		off   float64
		lost  float64 // ln C
	}{{3, 0, 0}, {4, 1, 0.01}} {
		review, _, _ := Read(lib, &a, wall, p.Weeks[c.weeks-1].Start+6)
		off := 0.0
		for _, n := range review.Notes {
			if n.Code == noteWeeksOff {
				off = n.Values[0].Number
			}
		}
		lost := math.Log(review.Progress[0].Held12 / review.After.Held12)
		if off != c.off || math.Abs(lost-c.lost) > 1e-9 {
			t.Errorf("after %d weeks: %g weeks off, %.4f lost, wanted %g and %g", c.weeks, off, lost, c.off, c.lost)
		}
	}
	// On the Wednesday of the fourth, with nothing done yet, its Friday is still to come.
	if _, q, _ := Read(lib, &a, wall, p.Weeks[3].Start+2); q.Weeks[3].Kind == program.WeekAway || len(q.Weeks[3].Sessions) != len(p.Weeks[3].Sessions) {
		t.Errorf("the week begun has become %s, with %d sessions", q.Weeks[3].Kind, len(q.Weeks[3].Sessions))
	}
}

// A band retired on Saturday was hung on Monday: the line of that day is read with it,
// on the strap that the exercise last hung from, 40 cm in week 1, although week 2 does
// not print it. Bands that nobody printed together hang from a strap that nobody knows,
// but for a client who has only one.
func TestSnappedBandIsStillRead(t *testing.T) {
	lib, a := library(t), maren(t)
	a.Training.Away = nil
	p, _ := Plan(lib, &a)
	wall := []program.PlanVersion{Version(&p, 1, a.Measured)}
	for i := range wall[0].Weeks[1].Sessions {
		first, second := wall[0].Weeks[0].Sessions[i].Items, &wall[0].Weeks[1].Sessions[i].Items
		for j := range first {
			if first[j].Exercise == "half-open-tuck-hold" {
				first[j].Rig = program.Rig{Bands: []string{"narrow"}, Drop: 0.4}
			}
		}
		*second = slices.DeleteFunc(*second, func(item program.Prescription) bool { return item.Exercise == "half-open-tuck-hold" })
	}
	monday := p.Weeks[1].Start
	a.Bands = slices.Clone(a.Bands)
	a.Bands[0].Retired = monday + 5
	for _, c := range []struct {
		bands  []string
		straps []float64
		strap  float64 // m
		unread string
	}{
		{[]string{"narrow"}, []float64{0, 0.2, 0.4}, 0.4, ""},
		{[]string{"narrow", "middle"}, []float64{0, 0.2, 0.4}, ladder.DropPrinted, noteStrapUnsaid},
		{[]string{"narrow", "middle"}, []float64{0.3}, 0.3, ""},
	} {
		a.Hanging.Drops = c.straps
		a.Log = asPrinted(&p, 0)
		a.Log.Entries = append(a.Log.Entries, program.Entry{Date: monday, Exercise: "half-open-tuck-hold", Step: "half-open-tuck",
			Rig: program.Rig{Bands: c.bands}, RigGiven: true, Sets: []program.SetDone{{Seconds: 10, RPE: 7, Clean: program.CleanYes}}})
		_, plan, _ := begin(lib, &a)
		r := newReading(plan, wall, monday+6)
		last := r.days[len(r.days)-1].sets[0]
		unread := ""
		for _, n := range r.est.unread {
			unread += n.Code
		}
		if !slices.Equal(last.Rig.Bands, c.bands) || last.Rig.Drop != c.strap || unread != c.unread {
			t.Errorf("%v: hung as %+v, unread %q; wanted %g m, %q", c.bands, last.Rig, unread, c.strap, c.unread)
		}
	}
}

// A band that snaps in week 3: plan 1 was printed while it was whole, so that its sets
// are read as asked for; every later card that names it changes, and the review says
// why, once.
func TestASnappedBandIsNamed(t *testing.T) {
	lib, a := library(t), maren(t)
	a.Training.Away = nil
	p, _ := Plan(lib, &a)
	band := p.Weeks[0].Rig.Bands[0]
	a.Bands = slices.Clone(a.Bands)
	i := slices.IndexFunc(a.Bands, func(b program.Band) bool { return b.Name == band })
	a.Bands[i].Retired = p.Weeks[2].Start + 5
	a.Log = asPrinted(&p, 0, 1, 2)
	r, q, _ := Read(lib, &a, nil, p.Weeks[2].Start+6)
	for _, s := range r.Sessions {
		if s.Printed == 0 {
			t.Errorf("the session of %s was not printed", s.Done)
		}
	}
	named := func(s program.Session) bool {
		return slices.ContainsFunc(s.Items, func(i program.Prescription) bool { return slices.Contains(i.Rig.Bands, band) })
	}
	var changed []program.Date
	for _, c := range r.Changes {
		changed = append(changed, c.Cards...)
	}
	cards := 0
	for n := 3; n < len(p.Weeks); n++ {
		for _, s := range p.Weeks[n].Sessions {
			if named(s) {
				if cards++; !slices.Contains(changed, s.Date) {
					t.Errorf("the card of %s still names %s", s.Date, band)
				}
			}
		}
		if slices.ContainsFunc(q.Weeks[n].Sessions, named) {
			t.Errorf("week %d hangs %s", n+1, band)
		}
	}
	said := slices.DeleteFunc(slices.Clone(r.Notes), func(n program.Note) bool { return n.Code != noteBandRetired })
	if cards == 0 || len(said) != 1 || said[0].Values[0].Text != band || said[0].Values[1].Number != float64(a.Bands[i].Retired) {
		t.Errorf("%d cards named %s; %+v", cards, band, r.Notes)
	}
	kept := []program.PlanVersion{Version(&p, 1, a.Measured), Version(&q, 2, r.On)}
	if again, _, _ := Read(lib, &a, kept, r.On); hasNote(again.Notes, noteBandRetired) {
		t.Error("said again of a plan without it")
	}
}
