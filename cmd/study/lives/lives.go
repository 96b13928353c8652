// Gatepost lives are what becomes of simulated people who train by what is printed:
// planned once, read on every Sunday, planned anew, with every kept plan on the wall. A
// course says what was believed on the way and what was true. It asks package planner
// for what everybody else may ask it for: Plan, Read and Version.
package lives

import (
	"fmt"
	"math"
	"slices"

	"gatepost/cmd/study/people"
	"gatepost/program"
	"gatepost/program/planner"
)

// Looks are how often a course is looked at: after each third of its weeks.
const Looks = 3

// Course is how one life went, and what was believed of it.
type Course struct {
	Began string // what was held on the first day: nothing, a step, or a step for long

	Held, Step [Looks]Believed // C12; the torque held twelve seconds at the step trained
	Date       Dated

	Sets, Failed     int
	Efforts          []float64
	Reviews, Changed int // that change the coming week
	Rises, Stays     int // build weeks with more help than the last on their step; all that have one before
}

// Believed is one number as it was believed and as it is.
type Believed struct {
	Known   bool
	Off     float64 // ln of what was believed over the truth
	Covered bool    // by the 80 % range
}

// Dated is how the dates of a step came out.
type Dated struct {
	Known   bool    // whether there was one to be dated
	Off     float64 // of the likely date, as a share of the time left
	Least   float64 // the same of who knows everything but the own rate of gain
	Covered bool    // the true date lies between early and late
}

// Follow lets a person live by their program, read on each Sunday and planned anew.
func Follow(p *people.Person, lib *program.Library, weeks int) (Course, error) {
	c := Course{Began: began(p.Client.Tests)}
	printed, problems := planner.Plan(lib, &p.Client)
	if problems.Stop() || len(printed.Weeks) == 0 {
		return c, fmt.Errorf("%s has no program: %v %v", p.Client.Slug, problems, printed.Withheld)
	}
	wall := []program.PlanVersion{planner.Version(&printed, 1, p.Client.Measured)}
	var last *program.Week // the last build week that was no gate week
	var step string
	for n := range weeks {
		monday := wall[0].Weeks[0].Start + program.Date(7*n)
		w := WeekOf(&printed, monday)
		if w == nil {
			return c, fmt.Errorf("%s has no week of %s", p.Client.Slug, monday)
		}
		if w.Kind == program.WeekBuild {
			step = w.Step
			last = c.compare(last, w)
		}
		c.add(p, w, monday)
		review, next, problems := planner.Read(lib, &p.Client, wall, monday+6)
		if problems.Stop() || len(next.Weeks) == 0 {
			return c, fmt.Errorf("%s on %s: %v %v", p.Client.Slug, monday+6, problems, next.Withheld)
		}
		if WeekOf(&printed, monday+7) != nil { // the first week of a block changes nothing
			if c.Reviews++; slices.ContainsFunc(review.Changes, func(x program.Change) bool { return x.Start == monday+7 }) {
				c.Changed++
			}
		}
		if printed = next; printed.Version > wall[len(wall)-1].Version {
			wall = append(wall, planner.Version(&printed, printed.Version, monday+6))
		}
		if third := weeks / Looks; third > 0 && (n+1)%third == 0 && (n+1)/third <= Looks {
			c.look((n+1)/third-1, p, &printed, step)
		}
	}
	c.Date = dated(p, &printed, wall[0].Weeks[0].Start+program.Date(7*weeks))
	return c, nil
}

// began says what the first tests were like.
func began(tests []program.Hold) string {
	held := 0.0
	for _, t := range tests {
		if t.Step != "" {
			held = max(held, t.Seconds)
		}
	}
	switch {
	case held == 0:
		return "nothing held"
	case held > 25:
		return "held over 25 s"
	}
	return "held"
}

// add lets a person do a week and write it down.
func (c *Course) add(p *people.Person, w *program.Week, monday program.Date) {
	done := p.Do(w)
	p.Client.Log.Entries = append(p.Client.Log.Entries, done.Entries...)
	if done.Ill {
		p.Client.Training.Ill = append(p.Client.Training.Ill, program.Interval{From: monday, To: monday + 6})
	}
	c.Sets, c.Failed, c.Efforts = c.Sets+done.Sets, c.Failed+done.Failed, append(c.Efforts, done.Efforts...)
}

// compare counts whether help rose since the last build week, within a step. Gate
// weeks, which are free, stand aside.
func (c *Course) compare(last, now *program.Week) *program.Week {
	if now.Gate || now.Step == "" {
		return last
	}
	if last != nil && last.Step == now.Step {
		if c.Stays++; now.Help+now.Scale > last.Help+last.Scale+0.5 {
			c.Rises++
		}
	}
	kept := *now
	return &kept
}

// WeekOf is the week of a program that begins on a Monday; nil where there is none.
func WeekOf(p *program.Program, monday program.Date) *program.Week {
	for i := range p.Weeks {
		if p.Weeks[i].Start == monday {
			return &p.Weeks[i]
		}
	}
	return nil
}

// look holds what is believed against the truth. A free hold is compared as the torque
// that it means at twelve seconds, or four repetitions at three seconds each; its range is
// that of C12 laid around it.
func (c *Course) look(n int, p *people.Person, printed *program.Program, step string) {
	now := &printed.Capacity
	c.Held[n] = Believed{true, math.Log(now.Held12) - p.C, math.Log(now.Low) <= p.C && p.C <= math.Log(now.High)}
	for i := range printed.Steps {
		s := &printed.Steps[i]
		if s.ID != step {
			continue
		}
		load := math.Log(s.Torque * s.Allowance)
		twelve := people.Margin(12, now.Endurance)
		believe := math.Log(now.Held12) - offset(printed.Offsets, step)
		if s.FreeHold > 0 {
			believe = load + people.Margin(s.FreeHold, now.Endurance) - twelve
		}
		low, high := believe+math.Log(now.Low/now.Held12), believe+math.Log(now.High/now.Held12)
		held := func(c12 float64) float64 {
			return max(0, people.Lasts(c12-load+twelve, now.Endurance))
		}
		free := p.Load(step, program.Rig{}, 0)
		truth := p.C + load - math.Log(free) // as far as this step shows it
		if hold := p.Longest(free, 0); hold > 0 || held(believe) > 0 {
			c.Step[n] = Believed{true, believe - truth, held(low) <= hold && hold <= held(high)}
		}
	}
}

// offset is how much heavier than drawn a step is believed to be, ln.
func offset(of []program.Offset, step string) float64 {
	for _, o := range of {
		if o.Step == step {
			return o.Ln
		}
	}
	return 0
}

// dated holds the dates of a free hold of the goal's seconds against the true one, at the
// first step not shown yet that is six weeks to two years away. A likely date that is
// beyond what is forecast is taken to be five years away.
func dated(p *people.Person, printed *program.Program, today program.Date) Dated {
	const beyond = 260.0
	weeks := func(d program.Date) float64 {
		if d == 0 {
			return beyond
		}
		return max(0, float64(d-today)/7)
	}
	for _, f := range printed.Forecasts {
		left := p.Until(f.Step, p.Client.Goal.Hold)
		if f.Held || left < 6 || left > 104 {
			continue
		}
		usual := min(beyond, p.UntilUsual(f.Step, p.Client.Goal.Hold))
		return Dated{true, math.Abs(weeks(f.Likely)-left) / left, math.Abs(usual-left) / left, weeks(f.Early) <= left && left <= weeks(f.Late)}
	}
	return Dated{}
}
