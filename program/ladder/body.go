package ladder

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"

	"gatepost/program"
	"gatepost/program/mechanics"
	"gatepost/program/strength"
)

// Rung is one step of the ladder: a step of the road map on this body.
type Rung struct {
	*program.Step
	pose     mechanics.Pose
	FreeHold mechanics.Hold
	Load     float64 // N·m, effective: torque × allowance
	body     *Body
	hung     []Aid // see Aids
	site     int   // of body.sites: held free
	toes     int   // of body.sites: with the toes on a scale
}

// Aid is one way to do a step: with bands hung, or with the toes on a scale; or, of
// no step, a lean. The zero option's rig is none.
type Aid struct {
	Rig   program.Rig
	Scale float64 // N on the toes
	Ahead float64 // m, shoulder ahead of the wrist crease in a lean
	Hold  mechanics.Hold
	Help  int     // tenths of a newton, vertical, so that comparing is exact
	Load  float64 // N·m, effective
	Site  int     // of body.sites: where it is held, for what the model is off by there

	until program.Date // the first day on which one of its bands is retired; 0: none is
}

// Body is the client as mechanics sees them, with the ladder of their steps.
type Body struct {
	mechanics.Body
	load    program.Load
	fold    float64 // rad the hips bend
	lifts   map[liftFrom]mechanics.Lift
	support mechanics.Support
	Hanging program.Hanging
	Curves  []mechanics.Curve // as in the assessment's bands; of one that was never measured no pull at all
	Bands   []program.Band
	All     []Rung           // every step of the road map, in its order
	Steps   []Rung           // by torque, no further than the goal
	Alike   []string         // step ids left out because they load like the step below
	NoBlock []Rung           // steps below the goal's that begin on a block which is not there
	full    float64          // N·m of the hardest step, the full position
	Weight  float64          // N
	sites   *[]strength.Site // the same of every copy, so that a number means one place
	leanID  string           // exercise id of the road map's lean
	toesID  string           // of its step with the toes on a scale
}

// New measures the client against a road map; problems are said in these words. Heights in
// an assessment are from the floor, in mechanics from the hands' support.
func New(a *program.Assessment, m *program.RoadMap, words program.Words) (*Body, program.Problems) {
	who := a.Body()
	segments, err := mechanics.NewBody(sexes[who.Sex], who.Mass, who.Height, who.ArmSpan, who.BalancePoint)
	var problems program.Problems
	if err != nil {
		problems = append(problems, balanceProblem(words, a, err))
		segments, _ = mechanics.NewBody(sexes[who.Sex], who.Mass, who.Height, who.ArmSpan, 0)
	}
	b := &Body{
		Body:    segments,
		load:    m.Load,
		fold:    cmp.Or(who.Fold, program.DefaultFold),
		lifts:   map[liftFrom]mechanics.Lift{},
		support: supportOf(a, m),
		Hanging: a.Hanging,
		Bands:   a.Bands,
		Weight:  Newtons(who.Mass),
	}
	problems = append(problems, b.lowBar(words, a)...)
	problems = append(problems, b.fitBands(words, a)...)
	steps, unfit := b.stands(words, a, m)
	if problems = append(problems, unfit...); !unfit.Stop() {
		problems = append(problems, b.unfit(words, a, steps)...)
		b.climb(a, m, steps)
	}
	return b, problems
}

// Newtons are what so many kilograms weigh.
func Newtons(kg float64) float64 { return kg * mechanics.Gravity }

var sexes = map[program.Sex]mechanics.Sex{
	program.SexUnspecified: mechanics.Unspecified, "": mechanics.Unspecified,
	program.SexFemale: mechanics.Female, program.SexMale: mechanics.Male,
}

// Parallettes are the kit that gives a neutral wrist.
const Parallettes = "parallettes"

func supportOf(a *program.Assessment, m *program.RoadMap) mechanics.Support {
	return mechanics.Support{
		Grip:   slices.Contains(a.Kit, Parallettes),
		Hang:   m.Hands == program.HandsHang,
		Height: supportHeight(a, m),
		Clear:  m.Hands != program.HandsHang,
	}
}

// supportHeight is how high the hands are above the floor, in m: on it nothing.
func supportHeight(a *program.Assessment, m *program.RoadMap) float64 {
	if m.Hands == program.HandsHang {
		return a.Hanging.Bar
	}
	if !slices.Contains(a.Kit, Parallettes) {
		return 0
	}
	return a.Hanging.Support
}

func balanceProblem(words program.Words, a *program.Assessment, err error) program.Problem {
	at := a.Places.At("body.balance_point")
	var far *mechanics.BalanceError
	if errors.As(err, &far) {
		return words.Problem(at, "unfit.balance_far", "written", program.Centimetres(a.Athlete.BalancePoint), "model", program.Centimetres(far.Model))
	}
	return words.Problem(at, "unfit.balance")
}

// lowBar warns of a bar under which a body cannot hang straight.
func (b *Body) lowBar(words program.Words, a *program.Assessment) program.Problems {
	reach := b.Reach()
	if !b.support.Hang || b.support.Height == 0 || b.support.Height >= reach {
		return nil
	}
	return program.Problems{words.Problem(a.Places.At("rig.bar"), "unfit.bar", "reach", program.Centimetres(reach)).AsWarning()}
}

// poorFit is the residual from which a measured pull is doubted.
const poorFit = 0.10

// fitBands fits every band's curve and warns of points that miss it.
func (b *Body) fitBands(words program.Words, a *program.Assessment) program.Problems {
	var problems program.Problems
	for i, band := range a.Bands {
		if !band.Measured() {
			b.Curves = append(b.Curves, mechanics.Curve{})
			continue
		}
		pulls := make([]mechanics.Pull, len(band.Pulls))
		for j, p := range band.Pulls {
			pulls[j] = mechanics.Pull{Length: p.At, Force: p.Force}
		}
		curve, residuals, err := mechanics.FitCurve(band.Rest, pulls)
		if err != nil {
			problems = append(problems, words.Problem(a.Places.At(fmt.Sprintf("bands[%d]", i)), "unfit.band", "band", strconv.Quote(band.Name)))
		}
		if band.Folded {
			curve = curve.Folded()
		}
		b.Curves = append(b.Curves, curve)
		for _, r := range residuals {
			if math.Abs(r.Share) > poorFit {
				problems = append(problems, words.Problem(a.Places.At(fmt.Sprintf("bands[%d].pulls[%d]", i, r.Pull)), "unfit.pull",
					"band", strconv.Quote(band.Name), "share", strconv.Itoa(int(math.Round(100*math.Abs(r.Share))))).AsWarning())
			}
		}
	}
	return problems
}

// sameLoad is how close two steps may be before the upper one is dropped.
const sameLoad = 1.015

// climb puts the road map in this body's order: by torque, steps within 1.5 % of
// the one below, everything at or above the goal, and what begins on a block that is not
// there left out.
func (b *Body) climb(a *program.Assessment, m *program.RoadMap, steps []*program.Step) {
	if b.load == program.LoadBalance {
		b.balance(a, steps)
		return
	}
	var goal Rung
	apart := straddle(a, m)
	b.rungs(m)
	for _, s := range steps {
		r := b.rung(s, apart)
		b.settle(&r)
		b.All = append(b.All, r)
		b.full = max(b.full, b.hardness(&r))
		switch {
		case r.ID == a.Goal.Step:
			goal = r
		case s.Lift.Block == 0 || b.Hanging.HasBlock(s.Lift.Block):
			b.Steps = append(b.Steps, r)
		default:
			b.NoBlock = append(b.NoBlock, r)
		}
	}
	b.NoBlock = slices.DeleteFunc(b.NoBlock, func(r Rung) bool { return b.hardness(&r)*sameLoad >= b.hardness(&goal) })
	slices.SortStableFunc(b.Steps, func(x, y Rung) int { return cmp.Compare(b.hardness(&x), b.hardness(&y)) })
	var kept []Rung
	for _, r := range b.Steps {
		below := 0.0
		if len(kept) > 0 {
			below = b.hardness(&kept[len(kept)-1])
		}
		switch {
		case b.hardness(&r)*sameLoad >= b.hardness(&goal): // as hard as the goal
		case b.hardness(&r) <= below*sameLoad:
			b.Alike = append(b.Alike, r.ID)
		default:
			kept = append(kept, r)
		}
	}
	b.Steps = append(kept, goal)
}

// hardness is what rungs are sorted by: the torque of a hold, and of what is repeated the
// load, whose allowance tells a lowering from a press.
func (b *Body) hardness(r *Rung) float64 {
	if b.Repeats() {
		return r.Load
	}
	return r.FreeHold.Torque
}

func (b *Body) rung(s *program.Step, straddle float64) Rung {
	if b.Repeats() {
		return b.repeated(s)
	}
	r := Rung{Step: s, pose: poseOf(s.Pose, straddle), body: b}
	r.FreeHold = mechanics.Solve(b.Body, r.pose, b.support, nil)
	r.Load = r.FreeHold.Torque * allowance(s)
	return r
}

func allowance(s *program.Step) float64 {
	if s.Allowance == 0 {
		return 1
	}
	return s.Allowance
}

// widestStraddle is as far as a straddle is believed before one was held.
const widestStraddle = 120 * math.Pi / 180

// poseOf turns a step's pose into numbers, with half the client's own straddle
// where the step asks for it.
func poseOf(p program.Pose, straddle float64) mechanics.Pose {
	pose := mechanics.Pose{Rounding: p.Rounding, Depression: p.Depression}
	for i, leg := range p.Legs {
		pose.Legs[i] = mechanics.Leg{Hip: leg.Hip, Abduction: leg.Abduct, Knee: leg.Knee}
		if leg.Straddle {
			pose.Legs[i].Abduction = straddle / 2
		}
	}
	return pose
}

// straddle is the client's own angle between the legs.
func straddle(a *program.Assessment, m *program.RoadMap) float64 {
	s := a.Athlete.Straddle
	if s == 0 {
		s = program.DefaultStraddle
	}
	if straddleHeld(a, m) {
		return s
	}
	return min(s, widestStraddle)
}

// straddleHeld says whether a test held a step with the legs apart.
func straddleHeld(a *program.Assessment, m *program.RoadMap) bool {
	return slices.ContainsFunc(a.Tests, func(t program.Hold) bool {
		s, ok := m.Step(t.Step)
		return ok && t.Seconds > 0 && s.Pose.Legs[0].Straddle
	})
}
