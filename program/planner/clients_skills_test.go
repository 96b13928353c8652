package planner

import (
	"math"
	"math/rand/v2"
	"slices"

	"pgregory.net/rapid"

	"gatepost/program"
	"gatepost/program/ladder"
)

// skilled draws clients of another skill than the planche's: any body, week and health of
// clients, the kit without which intake lets no goal through, and of the skill what its
// coach would have asked and tested.
func skilled(lib *program.Library, skill string, rigs func(*rapid.T, *program.Assessment), tested func(*rapid.T, *program.Assessment) program.Hold) *rapid.Generator[program.Assessment] {
	road, _ := lib.RoadMap(skill)
	var steps []string
	for i := range road.Steps {
		steps = append(steps, road.Steps[i].ID)
	}
	return rapid.Custom(func(t *rapid.T) program.Assessment {
		a := clients.Draw(t, "somebody")
		a.Goal.Skill, a.Goal.Step = skill, rapid.SampledFrom(steps).Draw(t, "step wanted")
		if a.Training.Best != nil {
			a.Training.Best = &program.Hold{Step: rapid.SampledFrom(steps).Draw(t, "former best"), Seconds: 9}
		}
		wanted, _ := road.Step(a.Goal.Step)
		e, _ := lib.Exercise(wanted.Exercise)
		for _, oneOf := range e.Kit {
			if !slices.ContainsFunc(oneOf, func(k string) bool { return slices.Contains(a.Kit, k) }) {
				a.Kit = append(a.Kit, rapid.SampledFrom(oneOf).Draw(t, "kit wanted"))
			}
		}
		rigs(t, &a)
		a.Tests = entryShown(t, road)
		for range rapid.IntRange(0, 2).Draw(t, "steps tested") {
			h := tested(t, &a)
			h.Step = rapid.SampledFrom(steps).Draw(t, "step")
			a.Tests = append(a.Tests, h)
		}
		if _, problems := ladder.New(&a, road, nil); problems.Stop() {
			t.Skip("a body that can't stand so, which is refused")
		}
		return a
	})
}

// entryShown is all of a road map's entry, some of it, or half of each thing.
func entryShown(t *rapid.T, road *program.RoadMap) []program.Hold {
	shown := slices.Clone(road.Entry)
	switch rapid.IntRange(0, 3).Draw(t, "entry") {
	case 0:
		return halfOf(road.Entry)
	case 1:
		return subsetOf(t, shown, "shown")
	}
	return shown
}

// levers draws clients of the front lever: bars from 2 m to 2.6 m, anchors around them, and
// bands at hip, thigh or ankle, in some laid double; steps held free or in the first band.
func levers(lib *program.Library) *rapid.Generator[program.Assessment] {
	return skilled(lib, "front-lever", func(t *rapid.T, a *program.Assessment) {
		a.Hanging.Bar = float64(rapid.IntRange(200, 260).Draw(t, "bar")) / 100
		a.Hanging.Anchor = a.Hanging.Bar + float64(rapid.IntRange(-10, 60).Draw(t, "above the bar"))/100
		for i := range a.Bands {
			a.Bands[i].At = rapid.SampledFrom([]program.BandAt{program.AtHip, program.AtThigh, program.AtAnkle}).Draw(t, "at")
			a.Bands[i].Folded = rapid.Bool().Draw(t, "folded")
		}
	}, func(t *rapid.T, a *program.Assessment) program.Hold {
		h := program.Hold{Seconds: float64(rapid.IntRange(0, 30).Draw(t, "seconds"))}
		if len(a.Bands) > 0 && rapid.Bool().Draw(t, "in a band") {
			b := a.Bands[0]
			h.Rig = program.Rig{Bands: []string{b.Name}, At: b.At, Folded: b.Folded}
		}
		return h
	})
}

// presses draws clients of the handstand push-up, with pads of five to twenty centimetres or
// none; steps pressed up to twelve times, free or to the first pad.
func presses(lib *program.Library) *rapid.Generator[program.Assessment] {
	return skilled(lib, "handstand-push-up", func(t *rapid.T, a *program.Assessment) {
		wantReps(t, a, 8)
		a.Hanging.Pads = subsetOf(t, []float64{0.05, 0.10, 0.15, 0.20}, "pads")
	}, func(t *rapid.T, a *program.Assessment) program.Hold {
		return repsTested(t, 12, a.Hanging.Pads, func(pad float64) program.Rig { return program.Rig{Pad: pad} })
	})
}

// wantReps draws a goal of one repetition or more.
func wantReps(t *rapid.T, a *program.Assessment, most int) {
	a.Goal.Reps = rapid.IntRange(1, most).Draw(t, "goal repetitions")
	a.Goal.Hold = float64(program.SecondsPerRep * a.Goal.Reps)
}

// repsTested draws a test in repetitions, free or with the first of the heights there are.
func repsTested(t *rapid.T, most int, heights []float64, rig func(float64) program.Rig) program.Hold {
	h := program.Hold{Reps: rapid.IntRange(0, most).Draw(t, "repetitions")}
	if len(heights) > 0 && rapid.IntRange(0, 2).Draw(t, "with help") == 0 {
		h.Rig = rig(heights[0])
	}
	return h
}

// lifts draws clients of the press to handstand: folds of ninety to a hundred and fifty
// degrees, or nobody's measure, and blocks; steps lifted up to eight times, free or from a block.
func lifts(lib *program.Library) *rapid.Generator[program.Assessment] {
	return skilled(lib, "press-to-handstand", func(t *rapid.T, a *program.Assessment) {
		wantReps(t, a, 5)
		a.Hanging.Blocks = subsetOf(t, []float64{0.10, 0.20, 0.30, 0.40}, "blocks")
		a.Athlete.Fold = float64(rapid.SampledFrom([]int{0, 90, 110, 125, 135, 150}).Draw(t, "fold")) * math.Pi / 180
	}, func(t *rapid.T, a *program.Assessment) program.Hold {
		return repsTested(t, 8, a.Hanging.Blocks, func(block float64) program.Rig { return program.Rig{Block: block} })
	})
}

// skillDrawn are the clients of a skill, and its steps.
type skillDrawn struct {
	id      string
	clients *rapid.Generator[program.Assessment]
	steps   []string
}

func everySkill(lib *program.Library) []skillDrawn {
	all := []skillDrawn{{"planche", clients, stepIDs}, {"front-lever", levers(lib), nil}, {"handstand-push-up", presses(lib), nil}, {"press-to-handstand", lifts(lib), nil}}
	for i := range all[1:] {
		road, _ := lib.RoadMap(all[1+i].id)
		for _, s := range road.Steps {
			all[1+i].steps = append(all[1+i].steps, s.ID)
		}
	}
	return all
}

// entered draws clients of a skill of whom three in four have shown its entry.
func (s skillDrawn) entered(lib *program.Library) *rapid.Generator[program.Assessment] {
	road, _ := lib.RoadMap(s.id)
	return rapid.Custom(func(t *rapid.T) program.Assessment {
		a := s.clients.Draw(t, "client of the skill")
		if rapid.IntRange(0, 3).Draw(t, "entry shown") > 0 {
			a.Tests = append(slices.Clone(road.Entry), a.Tests...)
			a.Athlete.Fold = max(a.Athlete.Fold, 130*math.Pi/180)
		}
		return a
	})
}

// lives draws clients of a skill who do what is printed, or what of it they can: each set
// lasts as long as was reckoned for it, for this one more or less, and scatters by a tenth.
func (s skillDrawn) lives(lib *program.Library) *rapid.Generator[life] {
	return lived(lib, s.entered(lib), s.steps, func(t *rapid.T, _ *life) func(*program.Week) []program.Entry {
		able := rapid.Float64Range(0.7, 1.4).Draw(t, "able")
		dice := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1))
		return func(w *program.Week) (out []program.Entry) {
			for i := range w.Sessions {
				out = append(out, doneOf(&w.Sessions[i], able, dice)...)
			}
			return out
		}
	})
}

// doneOf is what is written of a session: nothing one time in six, that it went as printed
// another, else each set of straight-arm work.
func doneOf(s *program.Session, able float64, dice *rand.Rand) []program.Entry {
	switch dice.IntN(6) {
	case 0:
		return nil
	case 1:
		return []program.Entry{{Date: s.Date, AsPrinted: true}}
	}
	out := []program.Entry{{Date: s.Date, AsPrinted: true}}
	for i := range s.Items {
		item := &s.Items[i]
		if !isArm(item) || item.MaxHold == 0 {
			continue
		}
		e := program.Entry{Date: s.Date, Exercise: item.Exercise, Step: item.Step}
		for n := range item.Sets {
			e.Sets = append(e.Sets, setOf(item, n+1, able*item.MaxHold*math.Exp(0.1*dice.NormFloat64())))
		}
		out = append(out, e)
	}
	return out
}

// setOf is a set as it is written that could have lasted so long.
func setOf(item *program.Prescription, number int, limit float64) program.SetDone {
	s := program.SetDone{Number: number, Seconds: math.Floor(min(limit, float64(item.Hold))), Clean: program.CleanYes}
	if item.Hold == 0 {
		s.Seconds = math.Floor(limit)
	} else {
		s.RPE = math.Round(2*max(5, 10-12*(1-s.Seconds/limit))) / 2
	}
	return asCounted(item, s)
}

// asCounted is a set in repetitions, where that is how the step is counted.
func asCounted(item *program.Prescription, s program.SetDone) program.SetDone {
	if item.Reps > 0 && item.Step != "" {
		s.Reps, s.Seconds = int(s.Seconds)/program.SecondsPerRep, 0
	}
	if s.Reps == 0 && s.Seconds == 0 {
		s.Clean = program.CleanNo // tried, and not done: so a log is read
	}
	return s
}
