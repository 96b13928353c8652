package posture

import (
	"fmt"
	"math"

	"gatepost/program"
	"gatepost/program/ladder"
	"gatepost/program/mechanics"
)

// The body that pages show: the mean of the published average bodies (de Leva 1996,
// Table 4), as in package ladder.
const (
	shownMass   = 67.5
	shownHeight = 1.738
)

// Pictures are those of every exercise, by its id: as its page says, or else as the road
// map draws the step that it holds. One is a hold; two are start and end. The body is
// nobody's.
func Pictures(lib *program.Library) (map[string][]program.Picture, program.Problems) {
	all, problems := map[string][]program.Picture{}, program.Problems(nil)
	stances := map[string]program.Stance{}
	for i := range lib.RoadMaps {
		for _, s := range ladder.Illustrations(&lib.RoadMaps[i]) {
			stances[s.Name] = s.Stance
		}
	}
	b, _ := mechanics.NewBody(mechanics.Unspecified, shownMass, shownHeight, 0, 0)
	for i := range lib.Exercises {
		e := &lib.Exercises[i]
		if len(e.Figures) == 0 {
			all[e.ID] = onRoadMap(lib, e.ID, stances)
			continue
		}
		placed, wrong := Place(&b, e.Figures)
		problems = append(problems, wrong...)
		for _, p := range placed {
			all[e.ID] = append(all[e.ID], program.Picture{Placed: p})
		}
	}
	return all, problems
}

// onRoadMap are the stances of the step or floor rung that an exercise holds; of a press
// also its lowest point, of a lift its middle.
func onRoadMap(lib *program.Library, exercise string, stances map[string]program.Stance) []program.Picture {
	for i := range lib.RoadMaps {
		m := &lib.RoadMaps[i]
		names := []string{m.ID + "/" + exercise}
		for _, s := range m.Steps {
			if s.Exercise == exercise {
				names = append(names, m.ID+"/"+s.ID, m.ID+"/"+s.ID+"/low", m.ID+"/"+s.ID+"/middle")
				break
			}
		}
		var pictures []program.Picture
		for _, name := range names {
			s := stances[name]
			if p := (program.Picture{Stance: s}); p.Drawn() && (len(pictures) == 0 || pictures[len(pictures)-1].Stance != s) {
				pictures = append(pictures, p)
			}
		}
		if pictures != nil {
			return pictures
		}
	}
	return nil
}

// Place puts the figures of an exercise on a body. What cannot be as a figure says is a
// problem, and drawn as near as it comes.
func Place(b *mechanics.Body, figures []program.Figure) ([]program.Placed, program.Problems) {
	var all []program.Placed
	var problems program.Problems
	var before *placing
	for i := range figures {
		p := place(b, &figures[i], before)
		if before == nil {
			before = p
		}
		all = append(all, p.placed)
		problems = append(problems, p.wrong()...)
	}
	return all, problems
}

// How far off a placed body may be from what its page says (our judgement: less is not
// seen).
const (
	offThing = .01
	offAngle = 8 * math.Pi / 180
)

// wrong is what is not as the page says.
func (p *placing) wrong() program.Problems {
	var problems program.Problems
	say := func(what, advice string) {
		problems = append(problems, program.Problem{Place: p.figure.Place, Message: what, Advice: advice, Warning: true})
	}
	far := map[string]bool{}
	for i := range p.touch {
		t := &p.touch[i]
		p.eachRound(t, &p.placed, func(part program.Part, side, k int, at round) {
			if off := p.off(t, part, side, k, at); off > offThing && !far[string(part)+string(t.Kind)] {
				far[string(part)+string(t.Kind)] = true
				say(fmt.Sprintf("%q and %q do not meet in this drawing: %.0f cm are missing", part, t.Kind, 100*off),
					"change the angles of the trunk or of that limb, or let it go along: slides: ["+string(part)+"]")
			}
		})
	}
	for at, stiff := range p.stiff {
		if off := math.Abs(p.q[at] - p.meant[at]); stiff && off > offAngle {
			say(fmt.Sprintf("in this drawing %q can't be %.0f: it comes out as %.0f", nameOf(at), degrees(p.meant[at]), degrees(p.q[at])),
				"write the angle that fits, or leave it out, and it is found; or let what it rests on go along: slides: [feet]")
		}
	}
	return problems
}

func degrees(rad float64) float64 { return math.Round(rad * 180 / math.Pi) }

func nameOf(at int) program.Bend {
	switch at {
	case trunk:
		return program.BendTrunk
	case neck:
		return program.BendNeck
	}
	return movedJoints[(at-firstOfSide)%ofSide]
}

// off is how far a part is from where it touches, or has slid, m.
func (p *placing) off(t *touch, part program.Part, side, k int, at round) float64 {
	x, y, along := at.at.X-t.x.of(p.q), at.at.Y-t.y.of(p.q), 0.0
	if was, ok := p.stood(t.Kind, part, side, k); ok {
		along = slid(t.Kind, at, was)
	}
	switch {
	case t.Kind.Gripped():
		return math.Hypot(x, y)
	case t.Kind == program.ThingWall:
		return math.Hypot(x-t.side*at.r, along)
	}
	return math.Hypot(y-at.r, along)
}
