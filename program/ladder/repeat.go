package ladder

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"gatepost/program"
	"gatepost/program/mechanics"
)

// # What is repeated
//
// A press asks for the push of both hands that moves the body, N, times what its depth
// weighs; pads under the head take depth off. A lift asks for the torque about the
// shoulders while straight legs come up from a block, N·m; a lower block asks for more.
// Pads and blocks are their aids, and taper to the floor.

// loweringEases is what a slow lowering alone weighs against the way up (our judgement:
// people lower a fifth to two fifths more than they press, common practice).
const loweringEases = 0.80

// liftedBlades is how far shoulders are pushed up in a lift, m (our judgement).
const liftedBlades = 0.035

var rests = map[program.PressRest]mechanics.Rest{
	program.PressOnToes: mechanics.OnToes, "": mechanics.OnToes, program.PressOnKnees: mechanics.OnKnees,
	program.PressAtWall: mechanics.AtWall, program.PressHeels: mechanics.HeelsAtWall, program.PressFree: mechanics.Nothing,
}

// Repeats reports whether the road map's steps are counted in repetitions.
func (b *Body) Repeats() bool { return b.load.Repeats() }

// Repeats reports whether the rung is counted in repetitions.
func (r *Rung) Repeats() bool { return r.body != nil && r.body.Repeats() }

// repeated is a step that is repeated, from the floor.
func (b *Body) repeated(s *program.Step) Rung {
	demand, _ := b.demand(s, 0)
	return Rung{Step: s, body: b, FreeHold: mechanics.Hold{Torque: demand}, Load: demand * allowance(s)}
}

// demand is what a step asks with pads or a block of a height in m, in N or N·m; not ok
// where this body cannot stand so.
func (b *Body) demand(s *program.Step, height float64) (demand float64, ok bool) {
	lower := s.Press.Lower
	if b.load == program.LoadLift {
		demand, ok = b.liftDemand(s, max(height, s.Lift.Block))
		lower = s.Lift.Lower
	} else {
		demand, ok = b.pressDemand(s, height)
	}
	if lower {
		demand *= loweringEases
	}
	return demand, ok
}

func (b *Body) pressDemand(s *program.Step, pad float64) (newtons float64, ok bool) {
	stood, err := b.Press(pressPose(s.Press))
	if err != nil {
		return 0, false
	}
	depth, err := b.PressDepth(pad, s.Press.Hands)
	return stood.Moved * b.Weight * mechanics.DepthFactor(depth), err == nil
}

func (b *Body) liftDemand(s *program.Step, block float64) (torque float64, ok bool) {
	l, ok := b.lift(s, block)
	return l.Torque, ok
}

// liftFrom is a lift from a block in m.
type liftFrom struct {
	program.Lift
	block float64
}

// lift solves a step from a block in m, once; not ok where nobody gets there.
func (b *Body) lift(s *program.Step, block float64) (mechanics.Lift, bool) {
	at := liftFrom{s.Lift, block}
	l, solved := b.lifts[at]
	if !solved {
		l, _ = b.Lift(b.folded(s), block, s.Lift.Open/2, mechanics.Support{}) // of an error all is 0
		b.lifts[at] = l
	}
	return l, l.Fold > 0
}

// closedFold is how far hips fold at the most that lift closed legs: a deeper fold, measured
// with the legs apart, is one that they lie in and do not lift from (our judgement).
const closedFold = 140 * math.Pi / 180

// folded is the pose in which a lift begins, the hips as folded as they go.
func (b *Body) folded(s *program.Step) mechanics.Pose {
	fold := b.fold
	if s.Lift.Stance == 0 {
		fold = min(fold, closedFold)
	}
	return mechanics.Pose{Depression: -liftedBlades, Legs: mechanics.Both(mechanics.Leg{Hip: fold, Abduction: s.Lift.Stance / 2})}
}

// heights are the pads or blocks that there are, m.
func (b *Body) heights() []float64 {
	if b.load == program.LoadLift {
		return b.Hanging.Blocks
	}
	return b.Hanging.Pads
}

// onHeights are the ways to do a step that is repeated on what there is. Hands that stand
// higher than the head comes have no use for pads, and a step on a block none for a lower one.
func (r *Rung) onHeights() (all []Aid) {
	for _, h := range r.body.heights() {
		if a, ok := r.onHeight(h); ok && r.Press.Hands == 0 && h > r.Lift.Block {
			all = append(all, a)
		}
	}
	return all
}

// onHeight is a step on pads or a block. The help of a block is what would help as much
// at the hips, a trunk's length from the shoulders.
func (r *Rung) onHeight(height float64) (Aid, bool) {
	demand, ok := r.body.demand(r.Step, height)
	a := Aid{Rig: program.Rig{Pad: height}, Load: demand * allowance(r.Step), Site: r.site}
	help := r.FreeHold.Torque - demand
	if r.body.load == program.LoadLift {
		a.Rig = program.Rig{Block: height}
		help /= r.body.Trunk.Length
	}
	a.Help = int(math.Round(10 * help))
	return a, ok
}

// unfit says which pads or blocks are of no use to this body at any step, and stops at a test
// on one: a crown that touches before the arms bend, toes that never come down so far up.
func (b *Body) unfit(words program.Words, a *program.Assessment, steps []*program.Step) (problems program.Problems) {
	if !b.Repeats() {
		return nil
	}
	what := "pad"
	if b.load == program.LoadLift {
		what = "block"
	}
	fits := func(step string, height float64) bool {
		return slices.ContainsFunc(steps, func(s *program.Step) bool {
			_, ok := b.demand(s, height)
			return ok && (step == s.ID || step == "" && s.Press.Hands == 0)
		})
	}
	say := func(place string, height float64, warning bool) {
		p := words.Problem(a.Places.At(place), "unfit."+what, "height", program.Centimetres(height))
		p.Warning = warning
		problems = append(problems, p)
	}
	for i, h := range b.heights() {
		if !fits("", h) {
			say(fmt.Sprintf("rig.%ss[%d]", what, i), h, true)
		}
	}
	for i, t := range a.Tests {
		if h := max(t.Rig.Pad, t.Rig.Block); h > 0 && !fits(t.Step, h) {
			say(fmt.Sprintf("tests[%d].%s", i, what), h, false)
		}
	}
	return problems
}

// stands leaves out the steps in which this body cannot stand, and says so; where it is
// the goal that stops everything.
func (b *Body) stands(words program.Words, a *program.Assessment, m *program.RoadMap) (steps []*program.Step, problems program.Problems) {
	for i := range m.Steps {
		s := &m.Steps[i]
		if !b.Repeats() {
			steps = append(steps, s)
			continue
		}
		if _, ok := b.demand(s, 0); ok {
			steps = append(steps, s)
			continue
		}
		p := words.Problem(a.Places.At("goal"), "unfit.step", "step", strconv.Quote(s.ID), "skill", strconv.Quote(m.ID))
		p.Warning = s.ID != a.Goal.Step
		problems = append(problems, p)
	}
	return steps, problems
}
