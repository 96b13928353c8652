package view

import (
	"math"
	"strconv"
	"time"

	"gatepost/program"
)

// Axis is a chart's scale: its title with the unit, and its marks.
type Axis struct {
	Title string
	Ticks []Tick
}

// Tick is a mark with its words. Dates are days, as program.Date counts them.
type Tick struct {
	At   float64
	Text string
}

// axis runs from zero to a round number not below most, in at most so many steps.
func (s *speech) axis(title string, most float64, steps int) Axis {
	a := Axis{Title: s.say("coach." + title)}
	step := roundStep(most / float64(steps))
	for i := 0; ; i++ {
		at := step * float64(i)
		a.Ticks = append(a.Ticks, Tick{at, s.decimal(at)})
		if at >= most && i > 0 {
			return a
		}
	}
}

// roundStep is the smallest of 1, 2, 5, 10 … and a half that is not below a step.
func roundStep(least float64) float64 {
	if least <= 0.5 {
		return 0.5
	}
	power := math.Pow(10, math.Floor(math.Log10(least)))
	for _, n := range []float64{1, 2, 5} {
		if n*power >= least-1e-9 {
			return n * power
		}
	}
	return 10 * power
}

// mostMonths is how many marks a date axis has at most.
const mostMonths = 8

// dateAxis runs by whole months from the measurements to the last date that is
// forecast, or the goal's.
func (s *speech) dateAxis(p *program.Program) Axis {
	last := p.Goal.By
	for _, l := range p.Steps {
		f := forecastOf(p, l.ID)
		last = max(last, f.Early, f.Likely, f.Late)
		if l.ID == p.Goal.Step {
			break
		}
	}
	from := firstOfMonth(p.Measured, 0)
	step := 1
	for _, n := range []int{1, 2, 3, 4, 6, 12, 24, 60, 120} {
		if step = n; firstOfMonth(from, n*mostMonths) >= last {
			break
		}
	}
	var a Axis
	for i := 0; ; i++ {
		d := firstOfMonth(from, i*step)
		a.Ticks = append(a.Ticks, Tick{float64(d), s.say("date.month", "month", s.monthShort(d), "year", strconv.Itoa(d.Time().Year()))})
		if d >= last && i > 0 {
			return a
		}
	}
}

// firstOfMonth is the first day of the month so many months on.
func firstOfMonth(d program.Date, months int) program.Date {
	year, month, _ := d.Time().Date()
	return program.NewDate(year, month+time.Month(months), 1)
}
