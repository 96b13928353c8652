package view

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"gatepost/program"
)

// charts makes the charts of some weeks.
type charts struct {
	*speech
	weeks []weekDone
	goal  float64 // N·m
	after program.Capacity
	ahead int // index of the first week that is not read; -1: none
}

var none = math.NaN()

// chart is one without series where the first has no value.
func (c *charts) chart(key string, ticks []Tick, series ...Series) Chart {
	v := Chart{Key: key, Title: c.say("progress." + key), Axis: Axis{Title: c.say("progress." + key + "_axis"), Ticks: ticks}}
	for _, w := range c.weeks {
		v.Weeks = append(v.Weeks, w.name)
	}
	for i, s := range series {
		if slices.ContainsFunc(s.Values, func(x float64) bool { return !math.IsNaN(x) }) {
			v.Series = append(v.Series, s)
		} else if i == 0 {
			return Chart{}
		}
	}
	return v
}

// read makes a value of each week that is over; NaN of the others.
func (c *charts) read(of func(w *program.WeekRead) float64) []float64 {
	return c.each(func(w weekDone) float64 {
		if w.read == nil {
			return none
		}
		return of(w.read)
	})
}

func (c *charts) each(of func(w weekDone) float64) []float64 {
	all := make([]float64, len(c.weeks))
	for i, w := range c.weeks {
		all[i] = of(w)
	}
	return all
}

// some is a number that is not there when it is nothing.
func some(x float64) float64 {
	if x == 0 {
		return none
	}
	return x
}

// strength is the estimate at each week's start, the one of now included, as a
// share of the goal's load.
func (c *charts) strength() Chart {
	if c.goal == 0 {
		return Chart{}
	}
	share := func(x float64) float64 { return some(100 * x / c.goal) }
	of := func(read func(*program.WeekRead) float64, now float64) []float64 {
		values := c.read(func(w *program.WeekRead) float64 { return share(read(w)) })
		if c.ahead >= 0 {
			values[c.ahead] = share(now)
		}
		return values
	}
	now := Series{Name: c.say("progress.strength_now"), Form: SeriesCurve,
		Values: of(func(w *program.WeekRead) float64 { return w.Held12 }, c.after.Held12),
		Low:    of(func(w *program.WeekRead) float64 { return w.Low }, c.after.Low),
		High:   of(func(w *program.WeekRead) float64 { return w.High }, c.after.High)}
	planned := Series{Name: c.say("progress.strength_planned"), Form: SeriesLevel, Values: c.each(func(w weekDone) float64 {
		if w.read != nil {
			return share(w.read.Planned)
		}
		return share(w.printed.Capacity)
	})}
	tests := Series{Name: c.say("progress.strength_test"), Form: SeriesSpots, Values: c.read(func(w *program.WeekRead) float64 {
		best := 0.0
		for _, t := range w.Tests {
			best = max(best, t.Held12)
		}
		return share(best)
	})}
	v := c.chart("strength", ticks(5, false, now.Values, now.Low, now.High, planned.Values, tests.Values), now, planned, tests)
	v.Desc = c.describe("strength", now.Values, 0)
	return v
}

func (c *charts) holds() Chart {
	done := Series{Name: c.say("progress.done"), Form: SeriesBars, Values: c.read(func(w *program.WeekRead) float64 { return some(w.HoldDone) })}
	printed := c.printed(func(w *program.Week) float64 { return float64(w.Hold) })
	v := c.chart("hold", ticks(5, true, done.Values, printed.Values), done, printed)
	v.Desc = c.describe("hold", done.Values, 0)
	return v
}

// printed is what the plan has for each week; nothing on the way to it.
func (c *charts) printed(of func(w *program.Week) float64) Series {
	return Series{Name: c.say("progress.printed"), Form: SeriesLevel, Values: c.each(func(w weekDone) float64 {
		if w.printed == nil || w.printed.Kind == program.WeekAway {
			return none
		}
		return some(of(w.printed))
	})}
}

// help counts only in weeks with main work; a bar of nothing is help of nothing.
func (c *charts) help() Chart {
	helped := false
	done := Series{Name: c.say("progress.done"), Form: SeriesBars, Values: c.read(func(w *program.WeekRead) float64 {
		if w.HoldDone == 0 {
			return none
		}
		helped = helped || HalfKilograms(w.Help) > 0
		return w.Help / standardGravity
	})}
	if !helped {
		return Chart{}
	}
	printed := c.printed(func(w *program.Week) float64 { return (w.Help + w.Scale) / standardGravity })
	for i, w := range c.weeks { // no help is a number here
		if math.IsNaN(printed.Values[i]) && w.printed != nil && w.printed.Hold > 0 {
			printed.Values[i] = 0
		}
	}
	v := c.chart("help", ticks(1, true, done.Values, printed.Values), done, printed)
	v.Desc = c.describe("help", done.Values, 1)
	return v
}

func (c *charts) work() Chart {
	done := Series{Name: c.say("progress.done"), Form: SeriesBars, Values: c.read(func(w *program.WeekRead) float64 { return some(float64(w.HalfSeconds) / 2) })}
	printed := c.printed(func(w *program.Week) float64 { return float64(w.HalfSeconds) / 2 })
	return c.chart("seconds", ticks(50, true, done.Values, printed.Values), done, printed)
}

func (c *charts) sessions() Chart {
	done := Series{Name: c.say("progress.done"), Form: SeriesBars, Values: c.read(func(w *program.WeekRead) float64 { return some(float64(w.Done)) })}
	printed := c.printed(func(w *program.Week) float64 { return float64(len(w.Sessions)) })
	return c.chart("sessions", ticks(1, true, done.Values, printed.Values), done, printed)
}

func (c *charts) effort() Chart {
	rpe := Series{Form: SeriesCurve, Values: c.read(func(w *program.WeekRead) float64 { return some(w.RPE) })}
	return c.chart("rpe", ticks(1, false, rpe.Values, []float64{6, 10}), rpe)
}

// joints is a line for each pair of joints that has complained at all in a session,
// and a spot for the worst of them on the mornings of the week, if any was above 0.
func (c *charts) joints() Chart {
	var all []Series
	for _, joint := range []struct {
		name string
		of   func(program.Pain) int
	}{
		{"joint.wrists", func(p program.Pain) int { return p.Wrists }},
		{"joint.elbows", func(p program.Pain) int { return p.Elbows }},
		{"joint.shoulders", func(p program.Pain) int { return p.Shoulders }},
		{"progress.other", func(p program.Pain) int { return p.Other }},
	} {
		hurt := false
		s := Series{Name: c.say(joint.name), Form: SeriesCurve, Values: c.read(func(w *program.WeekRead) float64 {
			n := joint.of(w.Pain)
			hurt = hurt || n > 0
			if w.Done == 0 {
				return none
			}
			return float64(max(n, 0))
		})}
		if hurt {
			all = append(all, s)
		}
	}
	if mornings, hurt := c.mornings(); hurt {
		all = append(all, mornings)
	}
	if len(all) == 0 {
		return Chart{}
	}
	return c.chart("pain", ticks(2, true, []float64{0, 10}), all...)
}

func (c *charts) mornings() (s Series, hurt bool) {
	s = Series{Name: c.say("progress.mornings"), Form: SeriesSpots, Values: c.read(func(w *program.WeekRead) float64 {
		hurt = hurt || w.Mornings.Worst() > 0
		if !w.Mornings.Given {
			return none
		}
		return float64(w.Mornings.Worst())
	})}
	return s, hurt
}

// ticks goes by steps, the least one or a multiple that leaves no more than six
// gaps, from nothing or from below the lowest value to above the highest.
func ticks(step float64, fromZero bool, values ...[]float64) []Tick {
	low, high := math.Inf(1), math.Inf(-1)
	for _, list := range values {
		for _, x := range list {
			if !math.IsNaN(x) {
				low, high = min(low, x), max(high, x)
			}
		}
	}
	if math.IsInf(low, 1) {
		return nil
	}
	if fromZero {
		low = 0
	}
	for ; math.Ceil(high/step)-math.Floor(low/step) > 6; step *= 2 {
	}
	var all []Tick
	for at := math.Floor(low/step) * step; ; at += step {
		all = append(all, Tick{At: at, Text: strconv.Itoa(round(at))})
		if at >= high && len(all) > 1 {
			return all
		}
	}
}

// describe says a chart's values.
func (c *charts) describe(key string, values []float64, digits int) string {
	var all []string
	for i, x := range values {
		if !math.IsNaN(x) {
			number := c.decimal(places(x, digits))
			all = append(all, c.say("progress.value", "number", c.weeks[i].name, "value", number))
		}
	}
	if len(all) == 0 {
		return ""
	}
	return c.say("progress."+key+"_desc", "values", strings.Join(all, ", "))
}
