package intake

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"gatepost/program"

	"gopkg.in/yaml.v3"
)

// deepest is how far a head can go below what the hands stand on, or how high pads
// can lie under it, in cm: as deep as an arm is long from the shoulder to the wrist,
// less what the neck and the head take of it (our judgement, for tall bodies).
const deepest = 40

// press is what is pressed up from. Limits are our judgement: boxes up to a tall
// hip for the feet and for the hands of an easier push-up.
func press(p *program.Press) read {
	return group(
		must("rest", "toes", choice(&p.Rest, program.PressOnToes, program.PressOnKnees, program.PressAtWall, program.PressHeels, program.PressFree)),
		may("trunk", "45 deg", angle.between(0, 90).into(&p.Trunk)),
		may("feet", "30 cm", length.between(0, 120).into(&p.Feet)),
		may("hands", "5 cm", length.between(0, 120).into(&p.Hands)),
		may("gap", "15 cm", length.between(3, 60).into(&p.Gap)),
		may("lower", "yes", yesNo(&p.Lower)),
	)
}

// What a step has by the load of its road map, and what its gate has.
var (
	stepKeys = []loadKey{
		{program.LoadHold, must("pose", "{hip: 90 deg, knee: 90 deg}", nil)},
		{program.LoadPress, must("press", "{rest: toes, trunk: 45 deg}", nil)},
		{program.LoadLift, must("lift", "{stance: 60 deg, open: 100 deg}", nil)},
	}
	gateKeys = []loadKey{{program.LoadHold, must("hold", "10 s", nil)}, {program.LoadPress, must("reps", "8", nil)}}
)

// loadKey is a key of a road map with a load, or of the first that has it.
type loadKey struct {
	load program.Load
	field
}

// checkLoad sees that each step is written as the road map's steps are done: held in
// a pose for seconds, or pressed up from or lifted into for repetitions.
func (s *source) checkLoad(m *program.RoadMap) {
	load := cmp.Or(m.Load, program.LoadHold)
	if load.Repeats() && m.Hands == program.HandsHang {
		s.say(s.at("hands"), fmt.Sprintf("a %s stands on its hands, and these hang", load), "Write hands: support, or load: hold")
	}
	for i := range m.Steps {
		at := fmt.Sprintf("steps[%d]", i)
		if !s.hasKeys(at) {
			continue // no group: said already
		}
		s.written(at, load, stepKeys)
		if counted := program.LoadPress; s.hasKeys(at + ".gate") {
			if !load.Repeats() {
				counted = program.LoadHold
			}
			s.written(at+".gate", counted, gateKeys)
		}
		if !load.Repeats() {
			continue
		}
		m.Steps[i].Gate.Hold = program.SecondsPerRep * m.Steps[i].Gate.Reps
		if s.given(at + ".gate.then") {
			s.say(s.at("%s.gate.then", at), fmt.Sprintf("a %s is counted, and this is a longer hold", load), "Take it away.")
		}
		if load == program.LoadPress {
			s.checkPress(at, m.Steps[i].Press)
		} else {
			s.checkLift(at, m.Steps[i].Lift)
		}
	}
}

// written asks for the key that this road map's steps have, and refuses the others.
func (s *source) written(at string, load program.Load, keys []loadKey) {
	var wanted field
	for _, k := range keys {
		if k.load == load {
			wanted = k.field
		}
	}
	other := false
	for _, k := range keys {
		if k.load != load && s.given(at+"."+k.key) {
			s.say(s.at("%s.%s", at, k.key), fmt.Sprintf("%s is for a road map with load: %s", quote(k.key), k.load), "Write in its place: "+wanted.line())
			other = true
		}
	}
	if !other && !s.given(at+"."+wanted.key) {
		s.lacks(at, wanted)
	}
}

// checkPress refuses what no body can stand in.
func (s *source) checkPress(at string, p program.Press) {
	atWall := p.Rest == program.PressAtWall || p.Rest == program.PressHeels
	upright := atWall || p.Rest == program.PressFree
	wrong := func(key, message, advice string) {
		if s.given(at + "." + key) {
			s.say(s.at("%s.%s", at, key), message, advice)
		}
	}
	if upright {
		wrong("press.trunk", `a body that stands on its hands is one straight line and has no "trunk"`, "Take it away.")
		wrong("press.feet", "a body that stands on its hands has nothing under its feet", "Take it away.")
	}
	if p.Rest != "" && !atWall {
		wrong("press.gap", "there is no wall here to be away from", "Take gap: away, or write rest: wall")
	}
	if upright && p.Hands > deepest/100.+1e-9 {
		wrong("press.hands", "no arm is long enough to go so far below the hands", fmt.Sprintf("Expected at most %d cm.", deepest))
	}
	if steep(p) {
		wrong("press.trunk", "no legs reach down to the feet from a trunk as steep as this", "Raise the feet, for example: feet: 60 cm; or write fewer degrees.")
	}
}

// steep reports whether, with bent hips, the feet are out of everybody's reach. Shares of the height
// after Drillis and Contini (1966), as in Winter, Biomechanics and Motor Control: wrist
// to shoulder .333 (.313 where it leans by 20 degrees), shoulder to hip .288, hip to sole
// .530, and .05 for tiptoe; of 150 cm, for whom a box is high.
func steep(p program.Press) bool {
	const height, arm, trunk, leg = 1.5, .313, .288, hips + .05
	return p.Rest == program.PressOnToes && p.Trunk > 0 && p.Hands+height*(arm+trunk*math.Sin(p.Trunk)) > p.Feet+height*leg
}

// given reports whether a path was written.
func (s *source) given(path string) bool { _, ok := s.places[path]; return ok }

// hasKeys reports whether a group has any.
func (s *source) hasKeys(path string) bool {
	for at := range s.places {
		if strings.HasPrefix(at, path+".") {
			return true
		}
	}
	return false
}

// amountFields are how long something is held, or, of a press, how often it is done:
// one of the two has to be there.
func (v value) amountFields(hold, reps field) []field {
	for i := 0; v.node.Kind == yaml.MappingNode && i+1 < len(v.node.Content); i += 2 {
		hold.needed = hold.needed && v.node.Content[i].Value != reps.key
	}
	return []field{hold, reps}
}

// repeats reports whether the goal's road map is one of repetitions.
func (c *client) repeats() bool { return c.roadMap != nil && c.roadMap.Load.Repeats() }

// checkCounted sees that what is repeated is counted and everything else timed.
func (c *client) checkCounted(path string) {
	if c.roadMap != nil {
		c.countedAs(c.roadMap, path)
	}
}

func (c *client) countedAs(m *program.RoadMap, path string) {
	switch {
	case m.Load.Repeats() && c.given(path+".hold"):
		c.wrong(path+".hold", "press_held", "example", "reps: 5")
	case !m.Load.Repeats() && c.given(path+".reps"):
		c.wrong(path+".reps", "hold_counted", "example", "hold: 10 s")
	}
}

// padHeight is how high pads under the head lie. The crown of most adults is 26 to 28 cm
// above the floor when their arms are straight: pads as high leave no way to press.
var padHeight = length.between(1, deepest).usually(1, 25)
