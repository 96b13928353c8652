package people

import (
	"fmt"
	"math"
	"slices"

	"gatepost/program"
	"gatepost/program/mechanics"
)

var sexes = map[program.Sex]mechanics.Sex{program.SexFemale: mechanics.Female, program.SexMale: mechanics.Male}

// embody gives the person a body, and steps and bands that are not quite those which
// were drawn and measured.
func (p *Person) embody(lib *program.Library) {
	a := &p.Client
	p.frame, _ = mechanics.NewBody(sexes[a.Athlete.Sex], a.Athlete.Mass, a.Athlete.Height, a.Athlete.ArmSpan, a.Athlete.BalancePoint)
	road, _ := lib.RoadMap(a.Goal.Skill)
	p.repeats = road.Load.Repeats()
	switch {
	case road.Hands == program.HandsHang:
		p.support.Hang, p.support.Height = true, a.Hanging.Bar
	case slices.Contains(a.Kit, "parallettes"):
		p.support = mechanics.Support{Grip: true, Height: a.Hanging.Support, Clear: true}
	default:
		p.support.Clear = true
	}
	if road.Load == program.LoadLift {
		p.lean *= liftedLean / 0.15
	}
	p.steps, p.loads, p.bands = map[string]step{}, map[string]float64{}, map[string]mechanics.Curve{}
	for i := range road.Steps {
		s := &road.Steps[i]
		p.steps[s.ID] = step{
			Step: s, pose: p.pose(&s.Pose), allowance: max(1, s.Allowance),
			off: p.Step * p.dice(append([]int{forStep}, letters(s.ID)...)...).NormFloat64(),
		}
	}
	p.aids()
}

// liftedLean is how far a lean is off as a measure of lifts: the distance is read as badly as
// for a planche, .15, and strengths go together by .7, of .35 each (our judgement).
const liftedLean = 0.31

// aids are all that can be hung, stood on or laid below.
func (p *Person) aids() {
	hang := &p.Client.Hanging
	for _, h := range hang.Pads {
		p.rigs = append(p.rigs, program.Rig{Pad: h})
	}
	for _, h := range hang.Blocks {
		p.rigs = append(p.rigs, program.Rig{Block: h})
	}
	bands := p.Client.Bands
	for i := range bands {
		p.bands[bands[i].Name] = p.band(&bands[i])
		for _, drop := range hang.Lengths() {
			p.rigs = append(p.rigs, program.Rig{Bands: []string{bands[i].Name}, Drop: drop})
			for j := range i {
				p.rigs = append(p.rigs, program.Rig{Bands: []string{bands[j].Name, bands[i].Name}, Drop: drop})
			}
		}
	}
}

func letters(s string) []int {
	var out []int
	for _, b := range []byte(s) {
		out = append(out, int(b))
	}
	return out
}

// pose is a step's pose with half of the person's own straddle.
func (p *Person) pose(of *program.Pose) mechanics.Pose {
	pose := mechanics.Pose{Rounding: of.Rounding, Depression: of.Depression}
	for i, leg := range of.Legs {
		pose.Legs[i] = mechanics.Leg{Hip: leg.Hip, Abduction: leg.Abduct, Knee: leg.Knee}
		if straddle := p.Client.Athlete.Straddle; leg.Straddle && straddle > 0 {
			pose.Legs[i].Abduction = straddle / 2
		} else if leg.Straddle {
			pose.Legs[i].Abduction = program.DefaultStraddle / 2
		}
	}
	return pose
}

// band is a band as it pulls in truth: its measured curve, stiffer or softer.
func (p *Person) band(b *program.Band) mechanics.Curve {
	var pulls []mechanics.Pull
	for _, pull := range b.Pulls {
		pulls = append(pulls, mechanics.Pull{Length: pull.At, Force: pull.Force})
	}
	curve, _, _ := mechanics.FitCurve(b.Rest, pulls)
	off := math.Exp(p.Band * p.dice(append([]int{forBand}, letters(b.Name)...)...).NormFloat64())
	if curve.A, curve.B = off*curve.A, off*curve.B; b.Folded {
		return curve.Folded()
	}
	return curve
}

// Load is what a step asks of this person in truth, N·m, or N of a press, with an aid and
// with a force of so many newtons under the toes.
func (p *Person) Load(id string, rig program.Rig, toes float64) float64 {
	key := fmt.Sprint(id, rig, toes)
	if load, ok := p.loads[key]; ok {
		return load
	}
	s, ok := p.steps[id]
	if !ok {
		return math.Inf(1)
	}
	demand := p.torque
	if p.repeats {
		demand = p.repeated
	}
	load := demand(&s, rig, toes) * s.allowance * math.Exp(s.off)
	p.loads[key] = load
	return load
}

// torque is what a step asks that is held, N·m.
func (p *Person) torque(s *step, rig program.Rig, toes float64) float64 {
	var hung *mechanics.Rig
	if !rig.Free() {
		hang := &p.Client.Hanging
		hung = &mechanics.Rig{Drop: rig.Drop, Height: hang.Anchor, Offset: hang.Offset}
		for _, name := range rig.Bands {
			hung.Bands = append(hung.Bands, p.bands[name])
		}
	}
	torque := mechanics.Solve(p.frame, s.pose, p.support, hung).Torque
	if toes > 0 { // it lifts behind the shoulder, so it takes torque off
		j := p.frame.ToesCarried(s.pose, p.support, toes)
		torque -= toes * (j.Shoulder.X - (j.Toes[0].X+j.Toes[1].X)/2)
	}
	return torque
}

// LeanLoad is what a lean of some distance, m, asks of this person in truth, N·m.
func (p *Person) LeanLoad(ahead float64) float64 {
	return p.frame.PlancheLean(ahead, p.support).Torque * math.Exp(p.lean)
}
