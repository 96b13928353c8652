package strength

import "math"

// Path is where capacity goes from a state on: at the start of week w
//
//	ln C12 = C + Σ e^Rho(u) (Gains[u+1] − Gains[u]) − Lost[w]
//
// over the weeks u before w, with the state's doubts, an own rate Rho(u) that drifts
// back to the law's, and a drift of 0.008 a week (sd). Make one with [NewPath]; a Path
// without weeks stays where the state is.
type Path struct {
	State State

	// Gains is the gain at own gain 1, in ln C, summed up to the start of week w;
	// Lost what weeks off have taken by then and training has not yet brought back;
	// below zero where it brings back what was lost before week 0.
	Gains, Lost []float64

	K float64 // endurance constant, per minute; 0 = State.K()

	grown []grown // what Gains come to at the own rate, by the start of each week
}

// At is the same path as seen from a site, see [State.At].
func (p Path) At(at Site) Path {
	p.State = p.State.At(at)
	return p
}

// Chances at which a week is called early, likely and late.
const (
	earlyChance  = 0.10
	likelyChance = 0.50
	lateChance   = 0.90
)

// Chance is the chance (0 to 1) that so many weeks from now a load in N·m can be
// held for those seconds: at the path's site, or without one at a step that is not
// trained yet. Weeks past the end of the path count as its end. A load or a time of
// nothing has chance 1, one that is not a number 0.
func (p Path) Chance(load, seconds, weeks float64) float64 {
	if load <= 0 || seconds <= 0 {
		return 1
	}
	return p.moment(p.need(load, seconds), weeks).above()
}

// Quantile is the C12, N·m, that capacity lies below with chance q so many weeks
// from now, at the path's site, or without one at a step that is being trained;
// then the model's own doubt of two per cent is included. q = 0.3 is what a printed
// block is planned on.
func (p Path) Quantile(weeks, q float64) float64 {
	return math.Exp(p.now(weeks).quantile(q))
}

// now is ln C12 so many weeks from now.
func (p Path) now(weeks float64) mixture {
	return p.moment(need{doubt: p.State.unless(modelSpread)}, weeks)
}

// Factors are, for each site, what a load there is to be multiplied by, so that the
// quantile q of C12 (see [Path.Quantile]) answers for that site: its offsets' means,
// and their doubt against that of C12. They are reckoned for now and without the
// skew of gains; within a twelve-week block they are good to one per cent.
func (p Path) Factors(sites []Site, q float64) []float64 {
	z, here := quantile(q), p.now(0)
	spread := math.Hypot(here.sd, here.slope)
	out := make([]float64, len(sites))
	for i, site := range sites {
		there := p.At(site).now(0)
		out[i] = math.Exp(here.mean - there.mean - z*(math.Hypot(there.sd, there.slope)-spread))
	}
	return out
}

// Arrival gives the weeks from now at which a load in N·m can be held for those
// seconds with a chance of 10, 50 and 90 %, to a hundredth of a week. A week that
// lies beyond the path is +Inf: not forecast.
func (p Path) Arrival(load, seconds float64) (early, likely, late float64) {
	if load <= 0 || seconds <= 0 {
		return 0, 0, 0
	}
	n := p.need(load, seconds)
	early = p.arrival(n, earlyChance, 0)
	likely = p.arrival(n, likelyChance, early)
	late = p.arrival(n, lateChance, likely)
	return early, likely, late
}

// arrival is a moment, from a week on, at which the chance comes to be reached.
// Chances rise but for weeks away and the slow drift of doubt; only when the
// end is below the mark is the way there searched, a quarter at a time.
func (p Path) arrival(n need, chance, from float64) float64 {
	const quarter = 13
	short := func(w float64) float64 { return chance - p.moment(n, w).above() }
	end := float64(len(p.Gains) - 1)
	if math.IsInf(from, 1) || short(from) <= 0 {
		return from
	}
	if end > from && short(end) <= 0 {
		return root(from, end, short(from), short(end), 0.01, short)
	}
	for w := from + quarter; w < end; w += quarter {
		if short(w) <= 0 {
			return root(w-quarter, w, short(w-quarter), short(w), 0.01, short)
		}
	}
	return math.Inf(1)
}

// need is a demand on capacity: that ln C12 be at least c.
type need struct {
	c     float64
	kappa float64 // how the surplus moves with ln k
	doubt float64 // variance to add, ln C
}

// need of holding a load for those seconds; without end if they are not numbers.
func (p Path) need(load, seconds float64) need {
	k := p.K
	if !(k > 0) {
		k = p.State.K()
	}
	n12, n := margin(Reference, k), margin(seconds, k)
	c := math.Log(load) + n - n12
	if math.IsNaN(c) || math.IsNaN(seconds) {
		c = math.Inf(1)
	}
	return need{c: c, kappa: bend(n12) - bend(n), doubt: p.State.unless(elsewhere)}
}

// moment is the surplus over a need at one time, as a mixture over the own gain.
func (p Path) moment(n need, weeks float64) mixture {
	s := p.State
	own, lost, w := p.at(weeks)
	m := mixture{mean: s.C - lost - n.c}
	variance := s.P[iC][iC] + n.doubt + w*weekSpread*weekSpread +
		n.kappa*(2*s.P[iC][iKappa]+n.kappa*s.P[iKappa][iKappa])
	if m.gain, m.gainSD = own.logNormal(); m.gainSD > 0 {
		m.slope = (s.P[iC][iRho] + n.kappa*s.P[iKappa][iRho]) * own.moved / own.sum / m.gainSD
	}
	m.sd = math.Sqrt(math.Max(variance-m.slope*m.slope, 1e-8))
	return m
}

// at reads the path at a moment, straight between the starts of two weeks.
func (p Path) at(weeks float64) (own grown, lost, w float64) {
	last := len(p.Gains) - 1
	if last < 1 || !(weeks > 0) {
		return grown{}, 0, 0
	}
	w = math.Min(weeks, float64(last))
	i := min(int(w), last-1)
	f := w - float64(i)
	own = p.grown[i].week(f * (p.Gains[i+1] - p.Gains[i]))
	if i+1 < len(p.Lost) {
		lost = p.Lost[i] + f*(p.Lost[i+1]-p.Lost[i])
	}
	return own, lost, w
}
