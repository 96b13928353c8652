package strength

import (
	"math"
	"slices"
)

// Model says how a load was worked out, and so how far it may be off for one
// person.
type Model int

const (
	NoModel    Model = iota // nothing that may be off by itself: a change of position adds doubt instead
	StepModel               // a step of a road map, from its drawn angles
	ToesModel               // a step with part of the weight on the toes, from a scale
	PressModel              // a push or raise, from what could be held when it was first done
	LeanModel               // a lean, from how far the shoulder is ahead
)

// Spreads of offsets before anything was held, in ln load. Our judgement: ten
// degrees of hip bend are 5.5 % of a tuck's torque; the distance of a lean is read
// to a centimetre or two and the feet can help unseen; knots slip and rubber warms.
var modelSpreads = [...]float64{StepModel: 0.05, ToesModel: 0.10, PressModel: 0.10, LeanModel: 0.15}

const hangSpread = 0.03 // of one rig of bands

// spread of a model's offset; 0 where it has none.
func (m Model) spread() float64 {
	if m < 0 || int(m) >= len(modelSpreads) {
		return 0
	}
	return modelSpreads[m]
}

// Site is where something is held: what the model may be off by there.
type Site struct {
	Model    Model
	Position string // the step or exercise
	Rig      string // bands and strap; "" = none

	// More is how far the load may be off beside its model, for a position that was
	// never met: sd in ln, 0 = none. A centimetre is half of a short lean's load.
	More float64
}

// Site of an observation.
func (o Observation) Site() Site { return Site{o.Model, o.Position, o.Rig, o.More} }

// key of an offset: that of a position, or of a rig.
type key struct {
	name string
	rig  bool
}

// offset is how far the model is off at one position or rig: ln of the load
// felt over the load worked out.
type offset struct {
	key
	model Model
	prior float64 // sd before anything was held there
	mean  float64
	with  vector // covariance with C, Rho, Kappa, Day
}

// keys of the offsets at a site, with their priors.
func (at Site) keys() (list [2]key, prior [2]float64, n int) {
	p := at.Model.spread()
	if p == 0 {
		return
	}
	list[0], prior[0], n = key{name: at.Position}, math.Hypot(p, at.More), 1
	if at.Rig != "" {
		list[1], prior[1], n = key{at.Rig, true}, hangSpread, 2
	}
	return
}

// find is the place of an offset in the list, −1 where it was not met.
func (s *State) find(k key) int {
	for i := range s.offsets {
		if s.offsets[i].key == k {
			return i
		}
	}
	return -1
}

// meet adds the offsets of a site that were not met before, and notes which they are.
func (s State) meet(at Site) State {
	list, prior, n := at.keys()
	s.here, s.heres = [2]int{}, n
	for i := range n {
		l := s.find(list[i])
		if l < 0 {
			l = len(s.offsets)
			s = s.add(offset{key: list[i], model: at.Model, prior: prior[i]}, prior[i]*prior[i], nil)
		}
		s.here[i] = l
	}
	return s
}

// add puts an offset at the end of the list, with its variance and its covariance
// with those before it, nil where that is none. Lists are copied: states share
// nothing that changes.
func (s State) add(o offset, variance float64, before []float64) State {
	n := len(s.offsets)
	s.offsets = append(slices.Clip(slices.Clone(s.offsets)), o)
	among := make([]float64, len(s.among), len(s.among)+n+1)
	copy(among, s.among)
	if before == nil {
		before = make([]float64, n)
	}
	s.among = append(append(among, before...), variance)
	return s
}

// covariance of two offsets.
func (s *State) covariance(i, j int) float64 {
	i, j = max(i, j), min(i, j)
	return s.among[i*(i+1)/2+j]
}

// Anchor begins the offset of a load that nobody can work out, only by what could
// be held when it was first done: b = C − C now + e, with e of the model's spread.
// Nothing is learned by it; later sets tell by how C − b has grown since. A
// position met before stays as it is.
func (s State) Anchor(at Site) State {
	list, prior, n := at.keys()
	if n == 0 || s.find(list[0]) >= 0 {
		return s
	}
	o := offset{key: list[0], model: at.Model, prior: prior[0], with: s.P[iC]}
	before := make([]float64, len(s.offsets))
	for l := range before {
		before[l] = s.offsets[l].with[iC]
	}
	return s.add(o, s.P[iC][iC]+prior[0]*prior[0], before)
}

// At is the belief as seen from a site: its C is C − b, the ln of the load, as the
// model works it out there, that can be held twelve seconds. What was held there
// counts in full; what never was has the model's doubt. It is for predicting:
// observe with the state itself.
func (s State) At(at Site) State {
	list, prior, n := at.keys()
	var met []int
	for i := range n {
		if l := s.find(list[i]); l >= 0 {
			met = append(met, l)
		} else {
			s.P[iC][iC] += prior[i] * prior[i]
		}
		s.sited = true
	}
	row, variance := s.P[iC], s.P[iC][iC]
	for _, l := range met {
		o := &s.offsets[l]
		s.C -= o.mean
		variance -= 2 * o.with[iC]
		for _, m := range met {
			variance += s.covariance(l, m)
		}
		for j := range parts {
			row[j] -= o.with[j]
		}
	}
	row[iC] = math.Max(variance, 1e-8)
	for j := range parts {
		s.P[iC][j], s.P[j][iC] = row[j], row[j]
	}
	s.offsets, s.among, s.heres = nil, nil, 0
	return s
}

// Offset is what is known of one position's offset.
type Offset struct {
	Model        Model
	Position     string
	Mean, Spread float64 // of ln of the load felt over the load worked out
	Prior        float64 // the spread before anything was held there
}

// Offsets are those of positions, in the order in which they were first held.
func (s State) Offsets() []Offset {
	var out []Offset
	for i, o := range s.offsets {
		if !o.rig {
			out = append(out, Offset{o.model, o.name, o.mean, math.Sqrt(s.covariance(i, i)), o.prior})
		}
	}
	return out
}
