package strength

import "math"

// Path is where capacity goes from a state on: at the start of week w
//
//	ln C12 = C + e^Rho · Gains[w] − Lost[w]
//
// with the state's doubts, a drift of 0.008 a week (sd), and what this package
// adds for a step not trained now. Make one with [NewPath].
type Path struct {
	State State

	// Gains is the gain at own gain 1, in ln C, summed up to the start of week w;
	// Lost what weeks off have taken by then and training has not yet brought back.
	Gains, Lost []float64

	K float64 // endurance constant, per minute; 0 = State.K()
}

// Chances at which a date is called early, likely and late.
const (
	earlyChance  = 0.10
	likelyChance = 0.50
	lateChance   = 0.90
)

// Nodes of the integral over the own gain: the trapezoid rule in its standard
// score, which for a normal density converges faster than any power of the step.
const (
	nodes    = 81
	nodeStep = 0.125
)

var nodeWeight = func() (w [nodes]float64) {
	sum := 0.0
	for i := range w {
		w[i] = density(nodeStep * float64(i-nodes/2))
		sum += w[i]
	}
	for i := range w {
		w[i] /= sum
	}
	return w
}()

// Chance is the chance (0 to 1) that at that many weeks from now a load in N·m
// can be held for those seconds. Weeks past the end of the path count as its end.
func (p Path) Chance(load, seconds, weeks float64) float64 {
	if !(load > 0) || !(seconds > 0) {
		return 1
	}
	return p.chance(p.need(load, seconds), weeks)
}

// need is ln of the C12 that the hold asks for, with the sensitivity of the
// surplus to ln k.
func (p Path) need(load, seconds float64) need {
	k := p.k()
	n12, n := margin(Reference, k), margin(seconds, k)
	return need{
		c:     math.Log(load) + n - n12,
		kappa: bend(n12) - bend(n),
		doubt: elsewhere * elsewhere,
	}
}

// need is a demand on capacity: ln C12 at least c.
type need struct {
	c     float64
	kappa float64 // how the surplus moves with ln k
	doubt float64 // variance to add, ln C
}

func (p Path) k() float64 {
	if p.K > 0 {
		return p.K
	}
	return p.State.K()
}

// chance integrates over the own gain: given Rho, the surplus is normal.
func (p Path) chance(n need, weeks float64) float64 {
	m := p.mixture(n, weeks)
	if m.gain == 0 {
		return below((m.mean - n.c) / math.Hypot(m.sd, m.slope))
	}
	sum, growth := 0.0, math.Exp(m.rho-nodeStep*(nodes/2)*m.rhoSD)*m.gain
	ratio := math.Exp(nodeStep * m.rhoSD)
	at := m.mean - n.c - nodeStep*(nodes/2)*m.slope
	for i := range nodes {
		z := (at + growth) / m.sd
		switch {
		case z > 6:
			sum += nodeWeight[i]
		case z > -6:
			sum += nodeWeight[i] * below(z)
		}
		growth *= ratio
		at += nodeStep * m.slope
	}
	return math.Min(sum, 1)
}

// mixture is the law of ln C12 at one moment: normal with sd given Rho, its mean
// rising by slope for each standard deviation of Rho, plus gain·e^Rho.
type mixture struct {
	mean, sd, slope  float64
	rho, rhoSD, gain float64
}

func (p Path) mixture(n need, weeks float64) mixture {
	s := p.State
	gain, lost, w := p.at(weeks)
	cRho := s.P[iC][iRho] + n.kappa*s.P[iKappa][iRho]
	variance := s.P[iC][iC] + 2*n.kappa*s.P[iC][iKappa] + n.kappa*n.kappa*s.P[iKappa][iKappa]
	m := mixture{mean: s.C - lost, rho: s.Rho, gain: gain}
	if v := s.P[iRho][iRho]; v > 0 {
		m.rhoSD = math.Sqrt(v)
		m.slope = cRho / m.rhoSD
	}
	variance += n.doubt + w*weekSpread*weekSpread - m.slope*m.slope
	m.sd = math.Sqrt(math.Max(variance, 1e-8))
	return m
}

// at reads the path at a moment, straight between the starts of two weeks.
func (p Path) at(weeks float64) (gain, lost, w float64) {
	last := len(p.Gains) - 1
	if last < 0 || !(weeks > 0) {
		return 0, 0, 0
	}
	w = math.Min(weeks, float64(last))
	i := min(int(w), max(last-1, 0))
	f := w - float64(i)
	j := min(i+1, last)
	gain = p.Gains[i] + f*(p.Gains[j]-p.Gains[i])
	if j < len(p.Lost) {
		lost = p.Lost[i] + f*(p.Lost[j]-p.Lost[i])
	}
	return gain, lost, w
}

// Quantile is the C12, N·m, that capacity lies below with chance q at that many
// weeks from now, at a step that is being trained; the model's own doubt of two
// per cent is included. q = 0.3 is what a printed block is planned on.
func (p Path) Quantile(weeks, q float64) float64 {
	n := need{doubt: modelSpread * modelSpread}
	m := p.mixture(n, weeks)
	z := quantile(q)
	if m.gain == 0 {
		return math.Exp(m.mean + z*math.Hypot(m.sd, m.slope))
	}
	reach := math.Abs(z) + 1
	low := m.mean - reach*8*(m.sd+math.Abs(m.slope))
	high := m.mean + reach*8*(m.sd+math.Abs(m.slope)) + m.gain*math.Exp(m.rho+8*m.rhoSD)
	goal := 1 - below(z)
	n.c = root(low, high, func(c float64) float64 {
		n.c = c
		return p.chance(n, weeks) - goal
	})
	return math.Exp(n.c)
}

// Arrival gives the weeks from now at which a load in N·m can be held for those
// seconds with a chance of 10, 50 and 90 %. A week that lies beyond the path is
// +Inf: not forecast.
func (p Path) Arrival(load, seconds float64) (early, likely, late float64) {
	if !(load > 0) || !(seconds > 0) {
		return 0, 0, 0
	}
	n := p.need(load, seconds)
	early = p.arrival(n, earlyChance, 0)
	likely = p.arrival(n, likelyChance, early)
	late = p.arrival(n, lateChance, likely)
	return early, likely, late
}

// arrival is the first moment from a week on at which the chance is reached. It
// strides a month at a time and then halves, so that a chance that only touches
// the mark for a week or two between may go unseen.
func (p Path) arrival(n need, chance, from float64) float64 {
	const stride = 4
	end := float64(len(p.Gains) - 1)
	if math.IsInf(from, 1) || p.chance(n, from) >= chance {
		return from
	}
	for before := from; before < end; {
		after := math.Min(before+stride, end)
		if p.chance(n, after) >= chance {
			return root(before, after, func(w float64) float64 { return chance - p.chance(n, w) })
		}
		before = after
	}
	return math.Inf(1)
}

// root finds where a function that is positive at low and not at high crosses
// zero, by false position with Illinois' correction.
func root(low, high float64, f func(float64) float64) float64 {
	fl, fh := f(low), f(high)
	for range 60 {
		if high-low < 1e-6 || fl <= 0 || fh >= 0 {
			break
		}
		mid := low + (high-low)*fl/(fl-fh)
		switch fm := f(mid); {
		case math.Abs(fm) < 1e-9:
			return mid
		case fm > 0:
			low, fl, fh = mid, fm, fh/2
		default:
			high, fh, fl = mid, fm, fl/2
		}
	}
	return (low + high) / 2
}
