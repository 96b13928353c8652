package people

import (
	"math"

	"gatepost/program"
	"gatepost/program/mechanics"
)

// Of what is repeated (our judgement, written here once more).
const (
	repsSpread = 0.25                // sd of ln of the repetitions that people do of a share
	lowered    = 0.80                // of the way up, a slow lowering
	blades     = 0.035               // m that shoulders are pushed up in a lift
	closedFold = 140 * math.Pi / 180 // rad that hips fold that lift closed legs, at the most
)

var rests = map[program.PressRest]mechanics.Rest{
	program.PressOnToes: mechanics.OnToes, program.PressOnKnees: mechanics.OnKnees,
	program.PressAtWall: mechanics.AtWall, program.PressHeels: mechanics.HeelsAtWall, program.PressFree: mechanics.Nothing,
}

// repeated is what a step asks that is pressed, N, or lifted into, N·m; with nothing under
// the toes. What a pad or a block takes off is a little more or less than it should be.
func (p *Person) repeated(s *step, rig program.Rig, _ float64) float64 {
	demand, lower := p.pressed, s.Press.Lower
	if s.Press.Rest == "" {
		demand, lower = p.lifted, s.Lift.Lower
	}
	height := max(rig.Pad, rig.Block)
	load := demand(s, 0)
	if height > 0 {
		off := p.Band * p.dice(forBand, int(math.Round(100*height))).NormFloat64()
		load *= math.Pow(demand(s, height)/load, math.Exp(off))
	}
	if lower {
		load *= lowered
	}
	return load
}

func (p *Person) pressed(s *step, pad float64) float64 {
	stood, err := p.frame.Press(mechanics.PressPose{Rest: rests[s.Press.Rest], Trunk: s.Press.Trunk, Feet: s.Press.Feet, Hands: s.Press.Hands, Gap: s.Press.Gap})
	depth, tooHigh := p.frame.PressDepth(pad, s.Press.Hands)
	if err != nil || tooHigh != nil {
		return math.Inf(1)
	}
	return stood.Moved * p.Client.Athlete.Mass * mechanics.Gravity * mechanics.DepthFactor(depth)
}

func (p *Person) lifted(s *step, block float64) float64 {
	fold := p.Client.Athlete.Fold
	if s.Lift.Stance == 0 {
		fold = min(fold, closedFold)
	}
	pose := mechanics.Pose{Depression: -blades, Legs: mechanics.Both(mechanics.Leg{Hip: fold, Abduction: s.Lift.Stance / 2})}
	l, err := p.frame.Lift(pose, max(block, s.Lift.Block), s.Lift.Open/2, mechanics.Support{})
	if err != nil {
		return math.Inf(1)
	}
	return l.Torque
}
