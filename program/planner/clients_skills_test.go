package planner

import (
	"slices"

	"pgregory.net/rapid"

	"gatepost/program"
)

// skilled draws clients of another skill than the planche's: any body, week and health of
// clients, and of the skill what its coach would have asked and tested.
func skilled(lib *program.Library, skill string, rest func(*rapid.T, *program.Assessment)) *rapid.Generator[program.Assessment] {
	road, _ := lib.RoadMap(skill)
	var steps []string
	for i := range road.Steps {
		steps = append(steps, road.Steps[i].ID)
	}
	return rapid.Custom(func(t *rapid.T) program.Assessment {
		a := clients.Draw(t, "somebody")
		a.Goal.Skill, a.Goal.Step = skill, rapid.SampledFrom(steps).Draw(t, "step wanted")
		if a.Training.Best != nil {
			a.Training.Best = &program.Hold{Step: rapid.SampledFrom(steps).Draw(t, "former best"), Seconds: 8}
		}
		rest(t, &a)
		a.Tests = entryShown(t, road)
		for range rapid.IntRange(0, 2).Draw(t, "steps tested") {
			a.Tests = append(a.Tests, stepTested(t, &a, rapid.SampledFrom(steps).Draw(t, "step")))
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

// stepTested is a step held, in some with the client's first band.
func stepTested(t *rapid.T, a *program.Assessment, step string) program.Hold {
	h := program.Hold{Step: step, Seconds: float64(rapid.IntRange(0, 30).Draw(t, "seconds"))}
	if len(a.Bands) > 0 && rapid.Bool().Draw(t, "in a band") {
		b := a.Bands[0]
		h.Rig = program.Rig{Bands: []string{b.Name}, At: b.At, Folded: b.Folded}
	}
	return h
}

// levers draws clients of the front lever: bars from 2 m to 2.6 m, anchors around them, and
// bands at hip, thigh or ankle, in some laid double. Without a bar or rings intake lets no
// goal through.
func levers(lib *program.Library) *rapid.Generator[program.Assessment] {
	return skilled(lib, "front-lever", func(t *rapid.T, a *program.Assessment) {
		if from := rapid.SampledFrom([]string{"pull-up bar", "rings"}).Draw(t, "from"); !slices.Contains(a.Kit, from) {
			a.Kit = append(a.Kit, from)
		}
		a.Hanging.Bar = float64(rapid.IntRange(200, 260).Draw(t, "bar")) / 100
		a.Hanging.Anchor = a.Hanging.Bar + float64(rapid.IntRange(-10, 60).Draw(t, "above the bar"))/100
		for i := range a.Bands {
			a.Bands[i].At = rapid.SampledFrom([]program.BandAt{program.AtHip, program.AtThigh, program.AtAnkle}).Draw(t, "at")
			a.Bands[i].Folded = rapid.Bool().Draw(t, "folded")
		}
	})
}

// skillDrawn are the clients of a skill.
type skillDrawn struct {
	id      string
	clients *rapid.Generator[program.Assessment]
}

func everySkill(lib *program.Library) []skillDrawn {
	return []skillDrawn{{"planche", clients}, {"front-lever", levers(lib)}}
}
