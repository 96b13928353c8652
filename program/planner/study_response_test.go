package planner

import "math"

// response is how gain answers to training. Each counts what a set stimulates; a
// week's sum, against the counted seconds that its sessions asked for, gives the share of
// the law's gain. Seconds beyond those bring nothing, so that policies are compared
// at equal volume. More of it brings less and less: by the square root
// (our judgement; sets bring diminishing returns).
type response int

const (
	byLoad   response = iota // seconds × (load / 0.8 of the maximum)³
	byEffort                 // counted seconds × what a hold is of the own longest, levelling off
	flat                     // sessions alone
	responses
)

func (r response) String() string { return [...]string{"by load", "by effort", "flat"}[r] }

// of is what one set stimulates, in seconds of usual work. Usual work is at 0.8 of
// the maximum and held for 0.7 of the longest hold.
func (r response) of(seconds, limit, share float64) float64 {
	if r == byLoad {
		return seconds * math.Pow(share/0.8, 3)
	}
	effort := min(1, seconds/max(limit, 0.5))
	counted := seconds * float64(work{share: share}.halves()) / 2
	return counted * levelling(effort) / levelling(usualEffort)
}

// levelling is worth 0.43 at a quarter of the longest hold, 0.86 at seven tenths,
// 0.94 at all of it: what is left undone matters less, the less it is (published
// for repetitions: sets to failure bring no more than sets near it at equal volume;
// from memory).
func levelling(effort float64) float64 { return 1 - math.Exp(-effort/0.35) }

func (r response) share(stimulus float64) float64 {
	if r == flat {
		return 1
	}
	return min(1.5, math.Sqrt(stimulus))
}
