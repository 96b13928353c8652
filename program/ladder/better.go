package ladder

import (
	"math"
	"sort"

	"gatepost/program"
	"gatepost/program/mechanics"
)

// What a better position is tried with: two centimetres of depression, the trunk
// four per cent shorter, ten degrees more between the legs, or of fold.
const (
	moreDepression = 0.02
	moreRounding   = 0.04
	moreStraddle   = 10 * math.Pi / 180
	moreFold       = 10 * math.Pi / 180
	seat           = 50 // cm
)

// Cues are what better positions save at the goal's step, as a share of its load
// and as band help worth as much.
func (b *Body) Cues(now program.Date) []program.CueWorth {
	goal := &b.Steps[len(b.Steps)-1]
	switch {
	case b.load == program.LoadLift:
		return b.foldWorth(goal)
	case b.Repeats():
		return nil
	}
	try := []struct {
		cue    string
		tried  float64
		change func(*mechanics.Pose)
	}{
		{"depression", moreDepression, func(q *mechanics.Pose) { q.Depression += moreDepression }},
		{"rounding", moreRounding, func(q *mechanics.Pose) { q.Rounding += moreRounding }},
		{"straddle", moreStraddle, func(q *mechanics.Pose) { widen(q, goal.Step) }},
	}
	var out []program.CueWorth
	for _, t := range try {
		if t.cue == "rounding" && goal.Pose.Rounding == 0 { // where the shape is straight, a round back is a fault
			continue
		}
		pose := goal.pose
		t.change(&pose)
		saved := goal.FreeHold.Torque - mechanics.Solve(b.Body, pose, b.support, nil).Torque
		if saved > 0 {
			help := saved / goal.hipReach()
			out = append(out, program.CueWorth{Cue: t.cue, Saves: saved / goal.FreeHold.Torque, Help: help, Tried: t.tried, Rig: goal.like(help, now)})
		}
	}
	return out
}

// foldWorth is what ten degrees more of fold save at a lift, and the block that would save
// as much; none where the block could be as high as a seat and would not.
func (b *Body) foldWorth(r *Rung) []program.CueWorth {
	deeper := *b
	deeper.fold += moreFold
	deeper.lifts = map[liftFrom]mechanics.Lift{}
	less, ok := deeper.demand(r.Step, 0)
	saved := r.FreeHold.Torque - less
	if !ok || saved <= 0 {
		return nil
	}
	cm := sort.Search(seat, func(cm int) bool {
		demand, ok := b.demand(r.Step, r.Lift.Block+float64(cm)/100)
		return ok && demand <= less
	})
	if cm == seat {
		return nil
	}
	return []program.CueWorth{{Cue: "fold", Saves: saved / r.FreeHold.Torque, Help: saved / b.Trunk.Length, Tried: moreFold,
		Rig: program.Rig{Block: float64(cm) / 100}}}
}

// like is the rig of one band whose help comes nearest to some newtons, if it is
// within a third of them (our judgement of "about").
func (r *Rung) like(newtons float64, now program.Date) program.Rig {
	var best program.Rig
	least := math.Log(4.0 / 3)
	for _, o := range r.Aids() {
		if len(o.Rig.Bands) != 1 || o.Help <= 0 || !o.HangsIn(now) {
			continue
		}
		if off := math.Abs(math.Log(float64(o.Help) / 10 / newtons)); off < least {
			best, least = o.Rig, off
		}
	}
	return best
}

func widen(q *mechanics.Pose, s *program.Step) {
	for i := range q.Legs {
		if s.Pose.Legs[i].Straddle {
			q.Legs[i].Abduction += moreStraddle / 2
		}
	}
}

// HelpedBy is a step under a band, which nobody has yet, that helps by so many newtons.
func (r *Rung) HelpedBy(newtons int) Aid {
	return Aid{Help: 10 * newtons, Load: r.Load - float64(newtons)*r.hipReach()*allowance(r.Step)}
}

// hipReach is how far behind the shoulder a band at the hip lifts, in m.
func (r *Rung) hipReach() float64 {
	return r.FreeHold.Joints.Shoulder.X - r.FreeHold.Joints.Hip.X
}

// toesReach is how far behind the shoulder a scale under the toes lifts, in m.
func (r *Rung) toesReach() float64 {
	return r.FreeHold.Joints.Shoulder.X - r.FreeHold.Joints.Toes[0].X
}
