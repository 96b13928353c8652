package planner

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"gatepost/cmd/study/people"
	"gatepost/program"
)

// life is a client some weeks into a block, with a log and whatever has changed.
type life struct {
	a    program.Assessment
	wall []program.PlanVersion
	on   program.Date
}

// GoString is what a failing check prints; the whole would fill a book.
func (l life) GoString() string {
	last := l.wall[len(l.wall)-1]
	return fmt.Sprintf("{%+v %+v %+v on %s, %d lines, %d versions, block from %s of %d weeks}", l.a.Training, l.a.Health, l.a.Goal, l.on, len(l.a.Log.Entries), len(l.wall), last.Weeks[0].Start, len(last.Weeks))
}

// whole puts the weeks of earlier blocks before a program's, and counts in all
// that are over the work that was done, so that a checker sees the work behind.
func whole(p program.Program, r *reading) program.Program {
	var earlier []program.Week
	p.Weeks = slices.Clone(p.Weeks)
	for i, w := range r.weeks {
		week := *w.Week
		if week.HalfSeconds = r.countedIn(i, w); r.kindDone(w) == program.WeekAway {
			week.Kind, week.Sessions = program.WeekAway, nil
		}
		if week.HalfSeconds == 0 {
			week.Sessions = nil // nor were its check holds and open sets done
		}
		if at := int(w.start-p.Start) / 7; w.start >= p.Start {
			if p.Weeks[at].HalfSeconds = week.HalfSeconds; week.HalfSeconds == 0 {
				p.Weeks[at].Sessions = nil
			}
		} else if w.Number > 0 {
			earlier = append(earlier, week)
		}
	}
	if len(earlier) > 0 {
		p.Start, p.Weeks = earlier[0].Start, append(earlier, p.Weeks...)
	}
	return p
}

// lives draws any client of the planche.
func lives(lib *program.Library) *rapid.Generator[life] { return livesOf(lib, clients) }

// livesOf draws the lives of some clients, who train as simulated people do.
func livesOf(lib *program.Library, drawn *rapid.Generator[program.Assessment]) *rapid.Generator[life] {
	return lived(lib, drawn, stepIDs, func(t *rapid.T, l *life) func(*program.Week) []program.Entry {
		_, behind, _ := begin(lib, &l.a)
		state, _ := behind.assess(behind.athlete.Tests)
		world := people.Base()
		world.Ill, world.Skips = 0, rapid.SampledFrom([]float64{0, 0.6, 1.4}).Draw(t, "skips")
		held12 := math.Exp(state.C + rapid.Float64Range(-0.2, 0.2).Draw(t, "off"))
		client := people.Of(world, lib, l.a, held12, rapid.Uint64().Draw(t, "seed"))
		return func(w *program.Week) []program.Entry { return client.Do(w).Entries }
	})
}

// lived draws a client, lets them do some weeks of the plan, and changes
// things: sessions missed, weeks off, days ill, pain, another goal, band or joint.
func lived(lib *program.Library, drawn *rapid.Generator[program.Assessment], steps []string, does func(*rapid.T, *life) func(*program.Week) []program.Entry) *rapid.Generator[life] {
	return rapid.Custom(func(t *rapid.T) life {
		l := life{a: drawn.Draw(t, "client")}
		p, problems := Plan(lib, &l.a)
		if problems.Stop() || len(p.Weeks) == 0 {
			t.Skip("no program")
		}
		l.wall = []program.PlanVersion{Version(&p, 1, l.a.Measured)}
		do := does(t, &l)
		n := rapid.IntRange(1, min(8, len(p.Weeks))).Draw(t, "weeks")
		off := rapid.IntRange(0, n).Draw(t, "off from")
		l.on = p.Weeks[0].Start
		for i := range n {
			if i >= off && i < off+3 && off%2 == 0 {
				do(&program.Week{Kind: program.WeekAway})
			} else {
				l.a.Log.Entries = append(l.a.Log.Entries, do(&p.Weeks[i])...)
			}
			l.on = p.Weeks[i].Start + program.Date(rapid.IntRange(0, 7).Draw(t, "day"))
			if rapid.IntRange(0, 2).Draw(t, "read") == 0 {
				if p = Replan(lib, &l.a, l.wall, p.Weeks[i].Start+6); len(p.Weeks) <= i+1 || p.Weeks[i].Start > l.on {
					break // the next block
				}
				if p.Version > l.wall[len(l.wall)-1].Version { // nothing done yet is nothing new
					l.wall = append(l.wall, Version(&p, p.Version, p.Weeks[i].Start+6))
				}
			}
		}
		l.change(t, steps)
		numberSets(&l.a.Log)
		l.mornings(t)
		return l
	})
}

func (l *life) change(t *rapid.T, steps []string) {
	a := &l.a
	switch rapid.IntRange(0, 7).Draw(t, "change") {
	case 0:
		a.Health.Elbows = program.JointSore
	case 1:
		if n := len(a.Log.Entries); n > 0 && len(a.Log.Entries[n-1].Sets) > 0 {
			last := &a.Log.Entries[n-1]
			last.Sets = slices.Clone(last.Sets)
			last.Sets[0].Pain = program.Pain{Given: true, Wrists: rapid.IntRange(0, 6).Draw(t, "wrists"), Elbows: rapid.IntRange(0, 6).Draw(t, "elbows"), Shoulders: 0, Other: -1}
		}
	case 2:
		a.Goal.By = l.on + program.Date(rapid.IntRange(1, 200).Draw(t, "by"))
	case 3:
		a.Goal.Step = rapid.SampledFrom(steps).Draw(t, "goal now")
	case 4:
		a.Bands, a.Hanging.Pads, a.Hanging.Blocks = nil, nil, nil
		a.Tests = slices.DeleteFunc(slices.Clone(a.Tests), func(h program.Hold) bool { return !h.Rig.Free() })
	case 5:
		band := bandsDrawn.Draw(t, "band now")
		band.Name = "one more"
		a.Bands = append(slices.Clone(a.Bands), band)
	case 6:
		a.Training.Ill = []program.Interval{{From: l.on - 20, To: l.on}}
	}
}

// mornings notes joints on some mornings of the last weeks.
func (l *life) mornings(t *rapid.T) {
	joint := rapid.IntRange(-1, 5)
	for range rapid.IntRange(0, 6).Draw(t, "mornings") {
		pain := program.Pain{Given: true, Wrists: joint.Draw(t, "wrists"), Elbows: joint.Draw(t, "elbows"), Shoulders: joint.Draw(t, "shoulders"), Other: joint.Draw(t, "other")}
		day := l.on - program.Date(rapid.IntRange(0, 20).Draw(t, "ago"))
		l.a.Log.Entries = append(l.a.Log.Entries, program.Entry{Date: day, Morning: true, Sets: []program.SetDone{{Pain: pain}}})
	}
}

// Every promise of a plan holds for the weeks planned anew, whatever happened;
// weeks that are over stay; lines may stand in any order; one more set held never
// lowers the estimate.
func TestLives(t *testing.T) {
	lib := library(t)
	lives := lives(lib)
	rapid.Check(t, func(t *rapid.T) {
		l := lives.Draw(t, "life")
		_, behind, _ := begin(lib, &l.a)
		if behind == nil || nothingDone(&l.a.Log) {
			t.Skip("no program, or the one of Plan")
		}
		r := newReading(behind, l.wall, l.on)
		morePassedSetsNeverLowerTheEstimate(t, lib, l, r)
		p := orderDoesNotMatter(t, lib, l)
		promisesHold(t, lib, l, r, p)
	})
}

func promisesHold(t *rapid.T, lib *program.Library, l life, r *reading, p program.Program) {
	if len(p.Withheld) > 0 {
		return
	}
	_, eased := r.painFlags()
	all := whole(p, r)
	var ahead plan
	ahead.athlete = &eased
	bad := len(r.withoutOne(&ahead)) > 0 || r.est.state.C < r.then.state.C // after bad news work may be too easy
	for _, k := range checkers {
		if bad && k.name == "effort" {
			continue
		}
		for _, fault := range k.check(lib, &eased, &all) {
			t.Error(k.name, fault)
		}
	}
	for i := range p.Weeks {
		w, was := &p.Weeks[i], wallWeek(l.wall, p.Weeks[i].Start)
		hurt := hasNote(p.Notes, noteWayBack) || hasNote(p.Notes, noteJointRests) || hasNote(w.Notes, noteComeback) // then cards still to come may change
		begun := w.Start+6 >= l.on
		if w.Start < p.From && w.Kind != program.WeekAway && !(hurt && begun) && !sameWeek(w, was) && !(begun && shorterHolds(w, was, l.on)) {
			t.Errorf("week %d is over and has changed", w.Number)
		}
	}
}

// shorterHolds reports whether a week differs from another by shorter holds alone, on its
// cards from a day on: those that nobody reached for two weeks.
func shorterHolds(a, b *program.Week, from program.Date) bool {
	return b != nil && slices.EqualFunc(a.Sessions, b.Sessions, func(x, y program.Session) bool {
		if x.Date >= from && len(x.Items) == len(y.Items) {
			x.Items = slices.Clone(x.Items)
			for i := range x.Items {
				if now, was := &x.Items[i], &y.Items[i]; now.Hold > 0 && now.Hold < was.Hold {
					now.Hold, now.Reps = was.Hold, was.Reps
				}
			}
		}
		return x.Date == y.Date && x.SameCard(&y)
	})
}

func sameWeek(a, b *program.Week) bool {
	return b != nil && slices.EqualFunc(a.Sessions, b.Sessions, func(x, y program.Session) bool { return x.Date == y.Date && x.SameCard(&y) })
}
