package people

import (
	"math"
	"math/rand/v2"

	"gatepost/program"
)

// full is what a full week adds to ln of the torque at the own rate of one.
func full(age float64) float64 { return 0.024 / (1 + age/21) }

// bySessions is what so many sessions a week are worth against three.
var bySessions = [...]float64{0, 0.5, 0.8, 1, 1.1}

// share is how much of a full week's gain a week brings. By work it is the square root
// of the seconds over those that this person's training asks for by now, and a deload
// brings less because less is done; by sessions it brings a third.
func (p *Person) share(kind program.WeekKind, w *Week) float64 {
	if p.ByWork {
		return min(1.15, math.Sqrt(w.work/min(300, 80+1.4*p.age)))
	}
	share := bySessions[min(w.sessions, len(bySessions)-1)]
	if kind == program.WeekDeload || kind == program.WeekTest {
		share /= 3
	}
	return share
}

// end ends a week: it brings its gain, or takes what a week off costs.
func (p *Person) end(kind program.WeekKind, w *Week) {
	d := p.dice(forEnd, p.week)
	p.week++
	share := p.share(kind, w)
	p.shares = append(p.shares, share)
	p.C += p.Drift * d.NormFloat64()
	switch {
	case share > 0:
		p.C += p.gain(p.C, p.age, share)
		p.age++
	case w.Ill:
		p.C -= 0.02
	default:
		p.C -= 0.01
	}
	p.best = max(p.best, p.C)
}

// gain is what a week brings to somebody of a strength and a training age.
func (p *Person) gain(c, age, share float64) float64 {
	back := min(0.012, max(0, p.best-c)/4)
	return share * (p.own*full(age) + back)
}

// Until is how many weeks from now a step can be held free for so many seconds, run on
// without noise in weeks like those behind; +Inf where that takes more than five years.
func (p *Person) Until(id string, seconds float64) float64 {
	need := math.Log(p.Load(id, program.Rig{}, 0)) + p.margin(seconds) - p.margin(12)
	share := 0.0
	for _, s := range p.shares {
		share += s / float64(len(p.shares))
	}
	c, age := p.C, p.age
	for week := range 260 {
		gain := p.gain(c, age, share)
		if c+gain >= need {
			return float64(week) + max(0, (need-c)/gain)
		}
		c, age = c+gain, age+share
	}
	return math.Inf(1)
}

// UntilUsual is the same at the median person's rate of gain: the best that can be said by
// somebody who knows all of a person but their own.
func (p *Person) UntilUsual(id string, seconds float64) float64 {
	usual := *p
	usual.own = 0.839 // median of a gamma distribution of shape 2 and mean 1
	return usual.Until(id, seconds)
}

// pain is how the joints feel.
func (p *Person) pain(d *rand.Rand) program.Pain {
	at := [3]int{}
	for i := range at {
		if d.Float64() < 0.05 {
			at[i] = 1
		}
	}
	if p.joint >= 0 {
		at[p.joint] = max(0, int(math.Round(1.2+0.8*d.NormFloat64())))
	}
	return program.Pain{Given: true, Wrists: at[0], Elbows: at[1], Shoulders: at[2], Other: -1}
}

// hurts writes the pain of a session beside its last set, or beside "done".
func (p *Person) hurts(d *rand.Rand, entries []program.Entry) {
	pain := p.pain(d)
	if !p.tells {
		return
	}
	e := &entries[len(entries)-1]
	if len(e.Sets) == 0 {
		e.Sets = []program.SetDone{{}}
	}
	e.Sets[len(e.Sets)-1].Pain = pain
}
