package view

import (
	"slices"
	"strconv"

	"gatepost/program"
)

// Progress is a block as it was done, as charts by week. Public may be published:
// strength as a share of the goal, holds, help. Coach may not: work, sessions,
// effort, joints.
type Progress struct {
	Title  string
	Words  string // strength as a share of the goal's load
	Note   string // how the charts are read
	Public []Chart
	Coach  []Chart
}

// Chart is some series over the weeks of a block.
type Chart struct {
	Key    string // "strength", "hold", "tries", "help", "seconds", "sessions", "rpe", "pain"
	Title  string
	Desc   string // the values in a sentence, for those who hear the page
	Weeks  []string
	Axis   Axis // upright, from its foot to its top
	Series []Series
}

// SeriesForm is how a series is drawn.
type SeriesForm string

const (
	SeriesBars  SeriesForm = "bars"
	SeriesLevel SeriesForm = "level" // dashed, level over each week: what was printed
	SeriesCurve SeriesForm = "curve" // with a band where Low and High are given
	SeriesSpots SeriesForm = "spots"
)

// Series is one number a week; NaN where there is none.
type Series struct {
	Name      string
	Form      SeriesForm
	Values    []float64
	Low, High []float64
}

// most weeks that a chart shows: the last ones, and what is left of the block.
const weeksShown = 16

// weekDone is a week of the charts: read, printed, or both.
type weekDone struct {
	name    string
	read    *program.WeekRead // nil: still ahead
	printed *program.Week     // nil: not in the block as it is planned now
}

// NewProgress draws up what a review has of a block against the program that hangs
// on the wall, in the words of the library.
func NewProgress(coach program.Coach, lib *program.Library, wall *program.Program, r *program.Review) (Progress, program.Problems) {
	s := newSpeech(coach, lib, wall)
	return s.progress(wall, r), s.problems()
}

func (s *speech) progress(p *program.Program, r *program.Review) Progress {
	if len(r.Progress) == 0 || r.Last == 0 {
		return Progress{}
	}
	c := charts{speech: s, weeks: weeksDone(p, r), goal: goalLoad(p), after: r.After}
	c.ahead = slices.IndexFunc(c.weeks, func(w weekDone) bool { return w.read == nil })
	v := Progress{Title: s.say("progress.title"), Note: s.say("progress.weeks")}
	if words := s.estimates(p, r); len(words) > 0 {
		v.Words = words[0]
	}
	for _, chart := range []Chart{c.strength(), c.holds(), c.tries(), c.help()} {
		if len(chart.Series) > 0 {
			v.Public = append(v.Public, chart)
		}
	}
	for _, chart := range []Chart{c.work(), c.sessions(), c.effort(), c.joints()} {
		if len(chart.Series) > 0 {
			v.Coach = append(v.Coach, chart)
		}
	}
	return v
}

func weeksDone(p *program.Program, r *program.Review) []weekDone {
	var all []weekDone
	last := program.Date(0)
	for i := range r.Progress {
		w := weekDone{read: &r.Progress[i], printed: weekOf(p, r.Progress[i].Start)}
		if n := r.Progress[i].Number; n > 0 {
			w.name = strconv.Itoa(n)
		}
		all, last = append(all, w), r.Progress[i].Start
	}
	ahead := 0
	for i := range p.Weeks {
		if w := &p.Weeks[i]; w.Start > last {
			all = append(all, weekDone{name: strconv.Itoa(w.Number), printed: w})
			ahead++
		}
	}
	from := max(0, min(len(all)-weeksShown, len(r.Progress)-1))
	return all[from:min(len(all), from+weeksShown)]
}

func weekOf(p *program.Program, start program.Date) *program.Week {
	i := slices.IndexFunc(p.Weeks, func(w program.Week) bool { return w.Start == start })
	if i < 0 {
		return nil
	}
	return &p.Weeks[i]
}
