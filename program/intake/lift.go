package intake

import (
	"fmt"
	"math"
	"strconv"

	"gatepost/program"
)

// Heights of blocks that the feet are lifted from, in cm: of a client up to a table, of
// a step up to a small person's hips. From more than a seat the lift begins half done.
// Our judgement.
const lowestBlock, highestBlock = 2, 100

var (
	blockHeight = length.between(lowestBlock, highestBlock).usually(5, 50)
	stepBlock   = length.between(lowestBlock, 75)
)

// lift is what is lifted into. A stance or an opening past 130 degrees puts the feet out
// of everybody's reach of the floor (computed with the statics of package mechanics).
func lift(l *program.Lift) read {
	return group(
		must("stance", "60 deg", angle.between(0, 130).into(&l.Stance)),
		may("open", "100 deg", angle.between(0, 180).into(&l.Open)),
		may("block", "30 cm", stepBlock.into(&l.Block)),
		may("lower", "yes", yesNo(&l.Lower)),
	)
}

// checkLift refuses a lowering from a block, and legs that close on the way up.
func (s *source) checkLift(at string, l program.Lift) {
	if s.given(at+".lift.open") && l.Open > 0 && l.Open < l.Stance {
		s.say(s.at("%s.lift.open", at), "the legs open on the way up, and here they close", "Write more degrees than in stance, or take open: away.")
	}
	if l.Lower && l.Block > 0 {
		s.say(s.at("%s.lift.block", at), "a lowering ends on the floor; the blocks there are make it easier", "Take it away.")
	}
}

// lifts reports whether the goal's road map is one of lifts.
func (c *client) lifts() bool { return c.roadMap != nil && c.roadMap.Load == program.LoadLift }

// hips is how high the hips stand, of the height (Drillis and Contini 1966, as in
// Winter, Biomechanics and Motor Control).
const hips = 0.530

// checkHips refuses blocks above the hips.
func (c *client) checkHips() {
	for i, block := range c.Hanging.Blocks {
		if h := c.Athlete.Height; h > 0 && block >= hips*h {
			c.wrong(fmt.Sprintf("rig.blocks[%d]", i), "block_hip", "hip", program.Centimetres(hips*h))
		}
	}
}

// checkLifting asks for what a lift needs of a client: the fold of the hips, and the block
// that the goal's step begins on.
func (c *client) checkLifting() {
	if !c.lifts() {
		return
	}
	if c.public == nil && c.given("body") && !c.given("body.fold") {
		c.unusual("body", "fold_missing", "fold", strconv.Itoa(int(math.Round(program.DefaultFold*180/math.Pi))), "example", "fold: 130 deg")
	}
	step, _ := c.roadMap.Step(c.Goal.Step)
	if step == nil || step.Lift.Block == 0 || c.Hanging.HasBlock(step.Lift.Block) {
		return
	}
	at := "goal.step"
	if c.given("rig.blocks") {
		at = "rig.blocks"
	}
	c.wrong(at, "goal_block", "step", quote(step.ID), "block", program.Centimetres(step.Lift.Block), "example", fmt.Sprintf("rig: {blocks: [%s cm]}", program.Centimetres(step.Lift.Block)))
}
