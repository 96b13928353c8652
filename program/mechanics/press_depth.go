package mechanics

import (
	"errors"
	"math"
)

// ErrTravel says that a pad is as thick as the crown is high over straight arms, or
// that a height is not one.
var ErrTravel = errors.New("mechanics: the pad leaves no way to press")

// crownShare is how much of the full travel the crown leaves: it meets the floor
// ahead of the hands, half of the way down (our judgement, 26 to 28 cm in adults of
// 1.66 to 1.76 m).
const crownShare = 0.52

// PressTravel is how far the shoulders of a body upside down sink, in m: until the
// crown touches the floor that the hands stand on, and until the elbows are closed
// and the shoulders are at the hands.
func (b Body) PressTravel() (crown, full float64) {
	full = b.armLength(0) - b.armLength(math.Pi)
	return crownShare * full, full
}

// PressDepth is the share of the full travel that is left where the crown touches a
// pad, or the floor below raised hands; pad and raised are heights in m. Hands
// raised by more than the arms can bend give 1, the shoulders at the hands. A pad
// that the crown touches with straight arms, or a height that is none, gives
// ErrTravel.
func (b Body) PressDepth(pad, raised float64) (share float64, err error) {
	crown, full := b.PressTravel()
	way := crown - pad + raised
	if !(pad >= 0 && raised >= 0 && way > 0) {
		return 0, ErrTravel
	}
	return min(1, way/full), nil
}

// depths are shares of the full travel and what a press so deep weighs against one
// whose crown touches the floor: pads of 15, 10 and 5 cm, the floor, hands raised by
// 5, 10 and 15 cm, and shoulders at the hands, on an adult of middle height. All are
// our judgement; the first goes on from the next two.
var depths = [...]struct{ share, factor float64 }{
	{0, 0.52}, {0.23, 0.75}, {0.33, 0.85}, {0.42, 0.93}, {crownShare, 1},
	{0.62, 1.06}, {0.71, 1.12}, {0.81, 1.18}, {1, 1.25},
}

// DepthFactor is what a press down to a share of the full travel weighs against one
// to crownShare of it: a table of our judgement, read along straight lines. Shares
// below 0 and above 1 count as those.
func DepthFactor(share float64) float64 {
	last := depths[0]
	for _, next := range depths[1:] {
		if share <= next.share {
			part := max(0, share-last.share) / (next.share - last.share)
			return last.factor + part*(next.factor-last.factor)
		}
		last = next
	}
	return last.factor
}
