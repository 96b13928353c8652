package planner

import (
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// Readers of a public program were not measured. They are planned for as a body
// of the mean build: the mean of de Leva's samples (published: 1996, women
// 61.9 kg, 1.735 m; men 73.0 kg, 1.741 m), thirty years old, with joints that
// are fine. Whoever differs in that is sent to a professional or a coach by the
// page itself.
const (
	readerMass   = (61.9 + 73.0) / 2   // kg
	readerHeight = (1.735 + 1.741) / 2 // m
	readerAge    = 30                  // years
)

// readerMasses are those the band help is given for, in kg.
var readerMasses = []float64{50, 60, 70, 80, 90}

// readersMonday is a Monday to count weeks from; no reader sees it.
const readersMonday = program.Date(11323) // 2001-01-01

// Levels plans a public program for every starting level of its road map: for
// whoever cannot show its entry yet, where it asks for one; for whoever cannot hold the
// first step yet, then for each step from the first to the one before the goal. Each is
// the plan of an assessment in which just that threshold was shown, so whatever holds for
// a client's program holds here. Problems are those of the bands, as in Plan.
func Levels(lib *program.Library, from *program.PublicProgram) ([]program.Level, program.Problems) {
	starts, problems := startsOf(lib, from)
	levels := make([]program.Level, len(starts))
	for i, s := range starts {
		levels[i] = s.level
		levels[i].Program, _ = Plan(lib, &s.reader)
		levels[i].Program.Notes = forReaders(levels[i].Program.Notes)
		unmark(&levels[i].Program)
		levels[i].Help = helpByMass(&levels[i].Program)
		if i+1 < len(starts) {
			levels[i].Helped = helpedPast(&levels[i].Program, s.level.Next, starts[i+1].level.Next)
		}
		if levels[i].Helped == "" && !trains(levels[i].Program.Weeks, s.level.Next) {
			levels[i].Longer = mostWeeksOn(levels[i].Program.Weeks)
		}
	}
	return levels, problems
}

// helpedPast is the step after the next one, where the weeks train it with help and the
// next one not at all, since help makes the harder one the easier; else empty.
func helpedPast(p *program.Program, next, after string) string {
	trained := func(id string) bool {
		return slices.ContainsFunc(p.Weeks, func(w program.Week) bool { return w.Step == id })
	}
	if next == "" || trained(next) || !trained(after) {
		return ""
	}
	return after
}

// mostWeeksOn is the step that most weeks are on, the first of equals; empty where none is.
func mostWeeksOn(weeks []program.Week) (most string) {
	on := map[string]int{}
	for _, w := range weeks {
		if w.Step == "" {
			continue
		}
		if on[w.Step]++; on[w.Step] > on[most] {
			most = w.Step
		}
	}
	return most
}

// start is a level before it is planned, and the reader who has just reached it.
type start struct {
	level  program.Level
	reader program.Assessment
}

func startsOf(lib *program.Library, from *program.PublicProgram) ([]start, program.Problems) {
	road, ok := lib.RoadMap(from.Goal.Skill)
	if ok {
		_, ok = road.Step(from.Goal.Step)
	}
	if !ok {
		return nil, nil
	}
	a := reader(from)
	for _, h := range road.Entry { // a level past the entry has shown it
		a.Athlete.Fold = max(a.Athlete.Fold, h.Fold)
	}
	body, problems := ladder.New(&a, road, lib.Words)
	if problems.Stop() {
		return nil, problems
	}
	c := client{lib: lib, road: road, athlete: &a, body: body, limits: limitsIn(road, &a, blockStart(&a)), today: a.Measured}
	c.narrow()
	way := map[string]float64{}
	if road.Load != program.LoadBalance {
		way = newcomer(c)
	}
	var starts []start
	if len(road.Entry) > 0 {
		before := a
		before.Tests, before.Athlete.Fold = halfOf(road.Entry), 0
		starts = append(starts, start{program.Level{Number: 1, RPE: levelRPE, Mass: readerMass, Entry: road.Entry}, before})
		a.Tests = road.Entry
	}
	for i := range body.Steps {
		if e, ok := lib.Exercise(body.Steps[i].Exercise); ok && len(c.lacks(e)) > 0 { // balance keeps its order
			continue
		}
		l := program.Level{Number: len(starts) + 1, RPE: levelRPE, Mass: readerMass,
			Next: body.Steps[i].ID, NextFor: threshold(&body.Steps[i])}
		reader := a
		if i > 0 {
			below := &body.Steps[i-1]
			l.Step, l.Hold = below.ID, threshold(below)
			reader = startedAbove(below, a, way)
		}
		if road.Load == program.LoadBalance {
			l.RPE = 0 // nobody asks how hard a try was
		}
		if i == len(body.Steps)-1 {
			l.NextFor = int(from.Goal.Hold)
		}
		starts = append(starts, start{l, reader})
	}
	return starts, problems
}

// halfOf is what whoever begins with the entry is taken to show of it: half. Our judgement;
// their cards name the easier exercise as well.
func halfOf(entry []program.Hold) []program.Hold {
	half := slices.Clone(entry)
	for i := range half {
		half[i].Seconds, half[i].Reps = math.Floor(half[i].Seconds/2), half[i].Reps/2
	}
	return half
}

// threshold is how long a step is held to start above it, in s; of what is repeated two
// repetitions more than the gate's.
func threshold(r *ladder.Rung) int {
	if r.Gate.Reached > 0 { // tries are shown by their number
		return r.Gate.Hold
	}
	if r.Gate.Reps > 0 {
		return r.Gate.Hold + 2*program.SecondsPerRep
	}
	return r.Gate.Hold + levelMargin
}

// shownOf is what whoever starts above a step has shown of it.
func shownOf(r *ladder.Rung) program.Hold {
	if g := &r.Gate; g.Reached > 0 {
		return program.Hold{Step: r.ID, Seconds: float64(g.Hold), Tries: program.Tries{Reached: g.Reached, Of: g.Sets}}
	}
	return program.Hold{Step: r.ID, Seconds: float64(threshold(r) + levelReserve)}
}

// reader is an assessment of the mean build that has held nothing yet.
func reader(from *program.PublicProgram) program.Assessment {
	a := program.Assessment{
		Slug: from.ID, Measured: readersMonday,
		Athlete: program.Athlete{Mass: readerMass, Height: readerHeight,
			Born: program.NewDate(readersMonday.Time().Year()-readerAge, 1, 1)},
		Health:   program.Health{Wrists: program.JointFine, Elbows: program.JointFine, Shoulders: program.JointFine},
		Training: from.Training, Goal: from.Goal, Kit: from.Kit, Bands: from.Bands, Hanging: from.Hanging, Places: from.Places, Wishes: from.Wishes, Rules: from.Rules,
	}
	a.Goal.By = readersMonday + farGoal
	return a
}

// farGoal is a goal date that shortens no block and is forecast as far as any is.
const farGoal = 3 * 52 * 7 // days

// newcomer is the way of somebody who begins with nothing: how many weeks each
// rung of the ladder likely takes to its threshold.
func newcomer(c client) map[string]float64 {
	p, _ := firstPlan(&measures{client: c}, blockStart(c.athlete))
	look := newOutlook(&p.season)
	weeks := map[string]float64{}
	for i := range c.body.Steps {
		r := &c.body.Steps[i]
		_, likely, _ := look.path.At(c.body.Site(r)).Arrival(r.Load, shownOf(r).Seconds)
		weeks[r.ID] = math.Min(likely, farGoal/7)
	}
	return weeks
}

// startedAbove is the reader who has just shown a step.
func startedAbove(r *ladder.Rung, a program.Assessment, way map[string]float64) program.Assessment {
	a.Tests = append(slices.Clone(a.Tests), shownOf(r))
	a.Training.Experience = math.Max(0, math.Round(way[r.ID]))
	a.Training.Since = a.Measured - 7*program.Date(math.Min(a.Training.Experience, readerSpell))
	return a
}

// forReaders keeps what is of use to somebody without a coach, floor rungs and what is left
// out for want of kit: the other notes speak of tests, dates and bodies that a reader has
// not given.
func forReaders(notes []program.Note) []program.Note {
	var kept []program.Note
	for _, n := range notes {
		if n.Code == noteRungs || n.Code == noteOmitKit || n.Code == noteOmitBlock {
			kept = append(kept, n)
		}
	}
	return kept
}

// helpByMass gives the help of each stretch of build weeks for other bodies.
// Loads, arms and band pull of bodies of one build all grow with their weight, so
// the same share of it is the same help.
func helpByMass(p *program.Program) []program.HelpByMass {
	var rows []program.HelpByMass
	for _, w := range p.Weeks {
		share := (w.Help + w.Scale) / (ladder.Newtons(readerMass))
		if w.Kind != program.WeekBuild || share == 0 {
			continue
		}
		if n := len(rows); n > 0 && rows[n-1].Step == w.Step && rows[n-1].Share == share {
			rows[n-1].To = w.Number
			continue
		}
		row := program.HelpByMass{From: w.Number, To: w.Number, Step: w.Step, Share: share, Mass: slices.Clone(readerMasses)}
		for _, mass := range readerMasses {
			row.Help = append(row.Help, share*ladder.Newtons(mass))
		}
		rows = append(rows, row)
	}
	return rows
}
