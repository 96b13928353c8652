package planner

import (
	"slices"

	"gatepost/program"
)

// Version is a program as it is kept: what was printed, without its figures.
func Version(p *program.Program, version int, on program.Date) program.PlanVersion {
	v := program.PlanVersion{Version: version, On: on, Weeks: slices.Clone(p.Weeks), Forecasts: p.Forecasts, Clock: p.Client.Clock, Shared: p.Client.Share == program.ShareSite}
	for i := range v.Weeks {
		v.Weeks[i].Stance = program.Stance{}
	}
	return v
}

// changes compares the weeks of two plans from a day on; of the week that has begun by
// then only the cards still to come. Only what a card or the chart prints counts: a
// prediction that moved by half a second is no news.
func changes(before, after []program.Week, from program.Date) []program.Change {
	var out []program.Change
	for i := range after {
		w, was := &after[i], weekAt(before, after[i].Start)
		if w.Start < from {
			w, was = toCome(w, from), toCome(was, from)
		}
		if w == nil || w.Start < from && was == nil {
			continue
		}
		if c := change(was, w); len(c.Cards)+len(c.Gone) > 0 || w.Start >= from && len(c.Notes) > 0 {
			out = append(out, c)
		}
	}
	for i := range before {
		w := &before[i]
		if w.Start >= from && weekAt(after, w.Start) == nil {
			c := program.Change{Week: w.Number, Start: w.Start, Notes: []program.Note{note(changeGone)}}
			for _, s := range w.Sessions {
				c.Gone = append(c.Gone, s.Date)
			}
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b program.Change) int { return int(a.Start - b.Start) })
	return out
}

// toCome is a week that has begun, with the sessions from a day on and the main work that
// those hold; nil where the week is over, or nothing was done in it at all.
func toCome(w *program.Week, from program.Date) *program.Week {
	if w == nil || w.Kind == program.WeekAway || w.Start+6 < from {
		return nil
	}
	left := *w
	left.Sessions = slices.DeleteFunc(slices.Clone(w.Sessions), func(s program.Session) bool { return s.Date < from })
	easeWeek(&left)
	left.Sets = 0
	for _, s := range left.Sessions {
		left.Sets = max(left.Sets, mainSets(&s))
	}
	return &left
}

func mainSets(s *program.Session) int {
	n := 0
	for i := range s.Items {
		if isMain(&s.Items[i]) {
			n += s.Items[i].Sets
		}
	}
	return n
}

func weekAt(weeks []program.Week, monday program.Date) *program.Week {
	for i := range weeks {
		if weeks[i].Start == monday {
			return &weeks[i]
		}
	}
	return nil
}

// change is what differs in one week; before is nil where there was none.
func change(before, after *program.Week) program.Change {
	c := program.Change{Week: after.Number, Start: after.Start}
	if before == nil {
		c.Notes = []program.Note{note(changeNew)}
		before = &program.Week{Kind: after.Kind, Step: after.Step, Exercise: after.Exercise, Rig: after.Rig, Hold: after.Hold, Sets: after.Sets, Ahead: after.Ahead, Scale: after.Scale}
	}
	c.Notes = append(c.Notes, differences(before, after)...)
	for i := range after.Sessions {
		s := &after.Sessions[i]
		if old := sessionOn(before, s.Date); old == nil || !old.SameCard(s) || before.Gate != after.Gate && s.HoldsMain() {
			c.Cards = append(c.Cards, s.Date)
		}
	}
	for _, s := range before.Sessions {
		if sessionOn(after, s.Date) == nil {
			c.Gone = append(c.Gone, s.Date)
		}
	}
	return c
}

// differences in the main work of a week.
func differences(before, after *program.Week) []program.Note {
	var out []program.Note
	if before.Kind != after.Kind {
		out = append(out, note(changeKind, word("before", "week."+string(before.Kind)), word("after", "week."+string(after.Kind))))
	}
	if after.Gate && !before.Gate {
		out = append(out, note(changeGate))
	}
	switch {
	case after.Hold == 0 && before.Hold > 0 && len(after.Sessions) > 0:
		return append(out, note(changeNone))
	case after.Hold == 0 || before.Hold == 0:
		return out
	}
	if before.Exercise != after.Exercise || before.Step != after.Step {
		return append(out, note(changeStep, exercise("before", before.Exercise), exercise("after", after.Exercise)))
	}
	if !slices.Equal(before.Rig.Bands, after.Rig.Bands) || before.Rig.Drop != after.Rig.Drop || before.Scale != after.Scale {
		out = append(out, note(changeHelp, newtons("before", before.Help+before.Scale), newtons("after", after.Help+after.Scale)))
	}
	if before.Ahead != after.Ahead {
		out = append(out, note(changeLean, metres("before", before.Ahead), metres("after", after.Ahead)))
	}
	if before.Hold != after.Hold {
		out = append(out, note(changeHold, seconds("before", float64(before.Hold)), seconds("after", float64(after.Hold))))
	}
	if before.Sets != after.Sets {
		out = append(out, note(changeSets, count("before", before.Sets), count("after", after.Sets)))
	}
	return out
}

func sessionOn(w *program.Week, d program.Date) *program.Session {
	for i := range w.Sessions {
		if w.Sessions[i].Date == d {
			return &w.Sessions[i]
		}
	}
	return nil
}
