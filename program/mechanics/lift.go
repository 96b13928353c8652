package mechanics

import (
	"errors"
	"math"
)

// Lift is a body that lifts its straight legs from a block, or the floor, until it
// stands on its hands.
type Lift struct {
	Off    Hold    // the toes touch the block and weigh nothing
	Middle Hold    // the legs level, the trunk nearly upright
	Torque float64 // N·m about the shoulder line, both shoulders: the largest from there on up
	Fold   float64 // rad the hips are folded when the toes leave the block
}

// ErrBlock says that the toes do not touch a block in balance: it is below the
// floor or above the hips, or the legs are too short, too wide or too little folded
// to come down to it.
var ErrBlock = errors.New("mechanics: the toes do not reach the block")

// middlePitch is how far the trunk is up, rad, when the legs are level: five degrees
// short of upright (our judgement).
const middlePitch = 85 * math.Pi / 180

// Lift finds the lift in a pose: the hips folded as far as they go, the straight legs
// out to the side by half the stance each. The side view of such a leg is shorter by
// the cosine of that angle in both axes. The pose's own pitch means nothing: the trunk
// is pitched until the toes touch a block, m above the floor, with the whole body
// balanced over the hands. From the floor a very deep fold keeps the trunk low, or the
// toes off it: then the hips fold only as far as makes the lift lightest. Up from the
// block the legs open to the sides by an angle each, rad. Push the shoulders up by a
// negative depression. Compare the torque with a level hold's.
//
// A block that the toes do not touch gives ErrBlock.
func (b Body) Lift(p Pose, block, open float64, s Support) (Lift, error) {
	s.Hang, s.Clear = false, false
	fold := min(p.Legs[0].Hip, p.Legs[1].Hip)
	if !(block >= 0 && block < b.hipHeight() && fold > 0 && fold < math.Pi) {
		return Lift{}, ErrBlock
	}
	l := lifting{body: &b, pose: p, s: s, block: block}
	fold = l.lightest(fold)
	off, ok := l.off(fold)
	if !ok {
		return Lift{}, ErrBlock
	}
	worst := l.worstFrom(off.Pitch)
	p.Pitch, p.Legs = middlePitch, Both(Leg{Hip: middlePitch, Abduction: open})
	middle := solve(&b, &p, s, nil)
	return Lift{Off: off, Middle: middle, Torque: max(off.Torque, worst, middle.Torque), Fold: fold}, nil
}

// lifting is a body looking for the pitch at which its toes touch the block.
type lifting struct {
	body  *Body
	pose  Pose
	s     Support
	block float64 // m above the floor
}

const (
	pitchStep = 5 * math.Pi / 180 // rad: how finely the pitch is searched before it is solved
	leastFold = math.Pi / 2       // rad the hips are folded at least (our judgement)
)

// lightest is the fold up to a deepest one, rad, that makes the lift lightest: nearly
// always the deepest itself. Otherwise it is found by halving: the torque falls with
// the fold and, past the best, rises again or the toes come down no more. Off the
// floor with a stance past 70° there may be two best ones, a hundredth apart: then it
// is either.
func (l *lifting) lightest(deepest float64) float64 {
	const little = math.Pi / 1800
	weighs := l.weighs(deepest)
	if deepest <= leastFold || !math.IsInf(weighs, 1) && weighs <= l.weighs(deepest-little) {
		return deepest
	}
	low, high := leastFold, deepest
	for range 24 {
		if mid := (low + high) / 2; l.weighs(mid) > l.weighs(mid+little/100) {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// weighs is the largest torque of a fold, N·m; infinite where the toes do not come down.
func (l *lifting) weighs(fold float64) float64 {
	h, ok := l.off(fold)
	if !ok {
		return math.Inf(1)
	}
	return l.worstFrom(h.Pitch)
}

// off is the hold when the toes leave the block, with the hips folded by an angle.
func (l *lifting) off(fold float64) (h Hold, ok bool) {
	low, high, gap := l.down(fold)
	if gap > 0 || l.toes(high, &h) < 0 {
		return h, false
	}
	pitch, found := root(func(pitch float64) float64 { return l.toes(pitch, &h) }, low, high)
	l.toes(pitch, &h)
	return h, found && !h.Unbalanced
}

// down folds the hips and pitches the trunk down from where the legs are level, until
// the toes are below the block or rise again. It returns the last two pitches and how
// far, in m, the toes are above the block at their lowest.
func (l *lifting) down(fold float64) (low, high, gap float64) {
	for i := range l.pose.Legs {
		l.pose.Legs[i].Hip = fold
	}
	var h Hold
	low, gap = fold, l.toes(fold, &h)
	for gap > 0 && low > pitchStep {
		next := l.toes(low-pitchStep, &h)
		if next >= gap {
			low, gap = l.lowest(low)
			break
		}
		low, gap = low-pitchStep, next
	}
	return low, low + pitchStep, gap
}

// lowest finds the pitch, within a step of one, where the toes are lowest, and how far
// they are above the block there.
func (l *lifting) lowest(near float64) (pitch, gap float64) {
	var h Hold
	low, high := near-pitchStep, near+pitchStep
	for range 20 {
		third := (high - low) / 3
		if l.toes(low+third, &h) < l.toes(high-third, &h) {
			high -= third
		} else {
			low += third
		}
	}
	return low, l.toes(low, &h)
}

// worstFrom is the largest torque, N·m, of the folded body with its trunk pitched up
// from an angle to upright. It goes with the cosine of the pitch, and is largest at
// the first where the lift starts nearly level and the legs swing out behind.
func (l *lifting) worstFrom(pitch float64) float64 {
	p := l.pose
	p.Pitch = 0
	level := -l.body.shapeOf(&p, false).moment.X
	p.Pitch = math.Pi / 2
	upright := -l.body.shapeOf(&p, false).moment.X
	at := max(pitch, math.Atan2(upright, level))
	return Gravity * (level*math.Cos(at) + upright*math.Sin(at))
}

// toes is how far, in m, the lower toes are above the block at a pitch.
func (l *lifting) toes(pitch float64, h *Hold) float64 {
	l.pose.Pitch = pitch
	*h = solve(l.body, &l.pose, l.s, nil)
	return min(h.Joints.Toes[0].Y, h.Joints.Toes[1].Y) + l.s.Height - l.block
}
