package intake

import (
	"bytes"
	"cmp"
	_ "embed"
	"slices"
	"strconv"
	"strings"
	"text/template"

	"gatepost/program"
)

//go:embed blank.yaml.tmpl
var blankText string

var blankForm = template.Must(template.New("blank").Parse(blankText))

// samples are names of the library that examples speak of.
type samples struct {
	Skill, FirstStep, SecondStep, Step string // Step is the one in the middle of the road
	Lean, Scale, Counted               string // exercises; empty where there is none
	Press, Pressed                     string // a road map that is pressed, and the step in its middle; empty where there is none
	Lift, Lifted                       string // one that is lifted into, and its last step but one
	Repeated                           string // the two
	Balanced                           string // a step in the middle of one of balance; empty where there is none
	Row, PullUp, Push, Easier, Line    string // exercises of a purpose, and the one easier than the push
}

// sample takes examples from the road map with the most floor rungs, which has every
// kind of test to speak of; of equals the first.
func sample(lib *program.Library) samples {
	s := samples{Skill: "skill", FirstStep: "first-step", SecondStep: "second-step", Step: "step"}
	for _, e := range lib.Exercises {
		if e.Dose.Reps > 0 && slices.Contains(e.Trains, program.ForPush) {
			s.Counted = e.ID
		}
	}
	s.drills(lib)
	if len(lib.RoadMaps) == 0 {
		return s
	}
	for i := range lib.RoadMaps {
		m := &lib.RoadMaps[i]
		switch n := len(m.Steps); {
		case m.Load == program.LoadBalance && n > 1:
			s.Balanced = m.Steps[n/2].ID
			continue
		case n < 2 || !m.Load.Repeats():
			continue
		case m.Load == program.LoadPress:
			s.Press, s.Pressed = m.ID, m.Steps[n/2].ID
		default:
			s.Lift, s.Lifted = m.ID, m.Steps[n-2].ID
		}
		s.Repeated = strings.TrimPrefix(s.Repeated+", "+m.ID, ", ")
	}
	m := slices.MaxFunc(lib.RoadMaps, func(x, y program.RoadMap) int { return cmp.Compare(len(x.Rungs), len(y.Rungs)) })
	if len(m.Steps) < 2 {
		return s
	}
	s.Skill, s.FirstStep, s.SecondStep, s.Step = m.ID, m.Steps[0].ID, m.Steps[1].ID, m.Steps[len(m.Steps)/2].ID
	for _, r := range m.Rungs {
		switch r.Kind {
		case program.RungLean:
			s.Lean = r.Exercise
		case program.RungScale:
			s.Scale = r.Exercise
		}
	}
	return s
}

// blankNeeds are the values that a blank form waits for.
var blankNeeds = []string{"born", "body.mass", "body.height", "training.experience", "training.days", "training.minutes",
	"health.wrists", "health.elbows", "health.shoulders", "goal.skill", "goal.step", "goal.hold", "goal.by"}

// isBlank reports whether nobody has filled in a single value of a blank form: each
// of those it waits for is empty, and nothing else is wrong.
func (s *source) isBlank() bool {
	return slices.Equal(s.empty, blankNeeds) && len(s.problems) == len(blankNeeds)
}

// kitOffered is what a gym may have, as pages and sheets call it. Bands have a list of
// their own.
func kitOffered(lib *program.Library) string {
	var things []string
	for _, id := range kit(lib).list {
		if id != "bands" {
			things = append(things, cmp.Or(lib.Words["kit."+id], id))
		}
	}
	return strings.Join(things, ", ")
}

// Blank is an assessment to fill in, every field explained, for a client who is
// assessed on a day. As long as nobody has filled in any of it, reading it says
// that it waits; then there is one problem for each value that is still missing.
func Blank(name string, lib *program.Library, on program.Date) []byte {
	data := struct {
		samples
		Name, On, Kit string
		RoadMaps      []program.RoadMap
	}{sample(lib), strconv.Quote(name), on.String(), kitOffered(lib), lib.RoadMaps}
	var out bytes.Buffer
	if err := blankForm.Execute(&out, data); err != nil {
		panic("intake: blank form: " + err.Error())
	}
	return out.Bytes()
}
