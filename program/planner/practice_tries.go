package planner

import "gatepost/program"

// dayTries are what a day's log has of one step.
type dayTries struct {
	date program.Date
	program.Tries
	best float64 // s
	pain int     // the worst of the day
	sets []*setRead
}

// daysTries are a day's tries of a step; not ok where it had none. A step that is held is
// reached by one set.
func daysTries(d *dayRead, s *program.Step) (t dayTries, ok bool) {
	t.date = d.date
	for _, j := range joints {
		t.pain = max(t.pain, d.worst(j.pain))
	}
	t.pain = max(t.pain, d.worst(func(p program.Pain) int { return p.Other }))
	for i := range d.sets {
		set := &d.sets[i]
		if set.Step != s.ID || !set.said() && set.Done.Tries.Of == 0 {
			continue
		}
		tries := triesIn(set.Done.Tries, set.Done.Seconds, s)
		if set.Done.Tries.Of == 0 && broke(set.Done) {
			tries.Reached = 0
		}
		t.Of, t.Reached = t.Of+tries.Of, t.Reached+tries.Reached
		t.best = max(t.best, set.Done.Seconds)
		t.sets = append(t.sets, set)
	}
	if !s.Gate.Tried() && t.Of > 0 {
		t.Tries = program.Tries{Reached: min(t.Reached, 1), Of: 1}
	}
	return t, t.Of > 0
}

// shows reports whether a day's tries count for a gate.
func (t *dayTries) shows(g *program.Gate) bool {
	return g.ReachedIn(t.Reached, t.Of) && t.pain <= g.PainMax
}

// triesIn are the tries that are written, or a single one of so many seconds.
func triesIn(written program.Tries, seconds float64, s *program.Step) program.Tries {
	if written.Of > 0 {
		return written
	}
	one := program.Tries{Of: 1}
	if seconds >= float64(s.Gate.Hold) {
		one.Reached = 1
	}
	return one
}

// fair reports whether as many of some tries reached as a step has to have for it to be
// practised.
func fair(t program.Tries) bool { return 100*t.Reached >= trainedFrom*t.Of }

// placed is the step that the tests speak for, and whether they show the goal's gate: after
// the hardest whose gate they show, or the hardest that a fifth of the tries reached, or
// else the one below a step that was tried.
func (m *measures) placed() (at int, gated bool) {
	last := len(m.body.Steps) - 1
	for i := range m.body.Steps {
		s := m.body.Steps[i].Step
		for n := range m.athlete.Tests {
			t := &m.athlete.Tests[n]
			if t.Step != s.ID {
				continue
			}
			switch tries := triesIn(t.Tries, t.Seconds, s); {
			case s.Gate.ReachedIn(tries.Reached, tries.Of):
				at, gated = max(at, i+1), i == last
			case fair(tries) && s.Gate.Tried():
				at = max(at, i)
			default:
				at = max(at, i-1)
			}
		}
	}
	return min(at, last), gated
}

// bestOf is the longest that a step, or one that stands alike, was stood for in tests or
// log, s.
func (p *practice) bestOf(at int) float64 {
	r, best := &p.body.Steps[at], 0.0
	for i := range p.road.Steps {
		s := &p.road.Steps[i]
		if s.ID != r.ID && (s.Press != r.Press || !s.Gate.Tried() || !r.Gate.Tried()) {
			continue
		}
		best = max(best, float64(p.best(program.Hold{Exercise: s.Exercise}, p.athlete.Log.Entries)))
		for _, t := range p.athlete.Tests {
			if t.Step == s.ID {
				best = max(best, t.Seconds)
			}
		}
	}
	return best
}

// way is where a log has led: the step practised, since when, and when gates were shown.
type way struct {
	at     int
	since  program.Date   // days from here on count for its gate
	shown  []program.Date // by step: the day its gate was shown; 0: not yet
	fallen int            // the step last fallen back from, with the week after; −1: none
	fellOn program.Date
}

// wayOf follows the log week by week. A gate that is shown opens the next step. Where in two
// weeks of tries not one day had a fifth of them reach, the step below comes back, until its
// gate is shown anew. What the coach signed counts as shown.
func (r *reading) wayOf() way {
	at, _ := r.placed()
	out := way{at: at, shown: make([]program.Date, len(r.body.Steps)), fallen: -1}
	poor := 0
	for _, w := range r.weeks {
		for i := range r.body.Steps {
			if on := r.gateShown(i, out.since, w.start+7); on != 0 && i >= out.at && (out.shown[i] == 0 || i == out.at) {
				out.shown[i] = on
				if i < len(r.body.Steps)-1 {
					out.at, out.since, poor = i+1, on+1, 0
				} else {
					out.at = i
				}
			}
		}
		tried, reached := r.fairWeek(w, out.at)
		switch {
		case reached:
			poor = 0
		case tried:
			poor++
		}
		if poor >= backAfter && out.at > 0 {
			out.fallen, out.fellOn = out.at, w.start+7
			out.at, out.since, poor = out.at-1, w.start+7, 0
		}
	}
	return out
}

// fairWeek reports whether a week tried a step, and whether a day of it had a fifth of the
// tries reach.
func (r *reading) fairWeek(w *weekPrinted, at int) (tried, reached bool) {
	s := r.body.Steps[at].Step
	for _, d := range w.days {
		if t, ok := daysTries(d, s); ok && s.Gate.Tried() {
			tried, reached = true, reached || fair(t.Tries)
		}
	}
	return tried, reached
}

// gateShown is the day on which a step's gate was shown, from a day on and before another;
// 0 where it was not.
func (r *reading) gateShown(at int, from, before program.Date) program.Date {
	s := r.body.Steps[at].Step
	for _, sign := range r.signed {
		if sign.step == s.ID && sign.on < max(before, r.on+1) && sign.on >= from {
			return sign.on
		}
	}
	if days := r.countingFor(s, from, before); len(days) >= s.Gate.Sessions {
		return days[s.Gate.Sessions-1].date
	}
	return 0
}

// countingFor are the days that count for a step's gate, as far apart as it asks.
func (r *reading) countingFor(s *program.Step, from, before program.Date) []dayTries {
	var days []dayTries
	for _, d := range r.days {
		t, ok := daysTries(d, s)
		if !ok || d.date < from || d.date >= before || !t.shows(&s.Gate) {
			continue
		}
		if n := len(days); n == 0 || 24*int(d.date-days[n-1].date) >= s.Gate.Apart {
			days = append(days, t)
		}
	}
	return days
}

// bestDay is the day's tries of a step that had the largest share reach, the last of equals.
func bestDay(days []*dayRead, s *program.Step) (best dayTries) {
	for _, d := range days {
		if t, ok := daysTries(d, s); ok && (best.Of == 0 || t.Reached*best.Of >= best.Reached*t.Of) {
			best = t
		}
	}
	return best
}
