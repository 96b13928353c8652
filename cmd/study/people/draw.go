package people

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"time"

	"gatepost/program"
)

// Draw draws a client of a skill: any body, of a planche from somebody who holds three fifths
// of a tuck's load for twelve seconds to one who holds a straddle, with bands or none, one to
// four days a week, some with a sore joint, some who come back. Their coach has tested them on
// the first day.
func Draw(w World, lib *program.Library, skill string, seed, number uint64) *Person {
	seed = seed<<24 | number
	d := rand.New(rand.NewPCG(seed, 0))
	s := skillOf(skill)
	a := program.Assessment{Slug: fmt.Sprintf("person-%d", number), Measured: monday}
	a.Athlete, a.Health = body(d)
	a.Kit, a.Bands, a.Hanging = kit(d)
	level := d.Float64()
	a.Training = past(d, level)
	a.Goal = program.Goal{Skill: s.id, Step: s.goals[len(s.goals)-1], Hold: s.seconds, By: monday + program.Date(7*(40+d.IntN(60)))}
	a.Health = soreness(d, a.Health)
	if s.equip != nil {
		s.equip(d, &a)
	}

	p := Of(w, lib, a, 1, seed)
	if p.skill = s; p.repeats {
		p.Client.Goal.Reps = int(s.seconds / perRep)
	}
	p.first = s.first
	if ids := p.toTry(); !slices.Contains(ids, p.first) { // no block, or a body that does not fold so far
		p.first = ids[0]
	}
	low, high := math.Log(s.from*p.drawn(p.first)), math.Log(s.to*p.drawn(s.most))
	p.C = low + level*(high-low)
	p.began, p.best = p.C, p.C
	p.aim(d)
	if d.Float64() < 0.12 && level > 0.15 {
		p.comesBack(d)
	}
	p.test(d)
	return p
}

const monday = program.Date(20822) // 2027-01-04

func body(d *rand.Rand) (program.Athlete, program.Health) {
	b := program.Athlete{Name: "Some One", Sex: program.SexFemale, Height: 1.66, Born: monday - program.Date(366*(18+d.IntN(27)))}
	if d.IntN(2) == 0 {
		b.Sex, b.Height = program.SexMale, 1.78
	}
	var h program.Health
	switch d.IntN(20) {
	case 0:
		b.Born, h.Guardian = monday-program.Date(366*(14+d.IntN(4))), "Some Body"
	case 1, 2:
		b.Born = monday - program.Date(366*(45+d.IntN(15)))
	}
	b.Height = math.Round(100*(b.Height+0.065*d.NormFloat64())) / 100
	b.ArmSpan = math.Round(100*b.Height*(1+0.02*d.NormFloat64())) / 100
	b.Mass = math.Round(b.Height * b.Height * (20 + 6*d.Float64()))
	b.Straddle = (80 + 40*d.Float64()) * math.Pi / 180 // more is not believed before it was held
	return b, h
}

func soreness(d *rand.Rand, h program.Health) program.Health {
	h.Wrists, h.Elbows, h.Shoulders = program.JointFine, program.JointFine, program.JointFine
	switch d.IntN(15) {
	case 0:
		h.Wrists = program.JointSore
	case 1:
		h.Elbows = program.JointSore
	case 2:
		h.Shoulders = program.JointSore
	}
	return h
}

// kit draws what is there: of three bands none, one, two or all, and straps of fixed
// lengths or of any.
func kit(d *rand.Rand) (names []string, bands []program.Band, hang program.Hanging) {
	for _, k := range []struct {
		name  string
		share float64
	}{{"parallettes", 0.7}, {"wall", 0.9}, {"pull-up bar", 0.7}, {"rings", 0.3}, {"dumbbells", 0.4}, {"box", 0.4}, {"bathroom scale", 0.4}} {
		if d.Float64() < k.share {
			names = append(names, k.name)
		}
	}
	hang = program.Hanging{Anchor: 2.1 + float64(d.IntN(4))/10, Support: 0.1, Drops: []float64{0, 0.2, 0.4}}
	if d.IntN(3) == 0 {
		hang.Drops = nil
	}
	none := d.IntN(4) == 0
	for i, name := range []string{"narrow", "middle", "wide"} {
		a := []float64{9, 20, 33}[i] * (0.8 + 0.4*d.Float64()) // N, of a loop
		if has := d.IntN(10) < 7; none || !has {
			continue
		}
		b := program.Band{Name: name, Rest: 1}
		for _, at := range []float64{1.3, 1.6, 1.9} {
			force := (1.8*a + 0.9*a/at) * (at - 1/(at*at))
			b.Pulls = append(b.Pulls, program.Pull{At: at, Force: math.Round(force/0.980665) * 0.980665}) // a luggage scale, to 0.1 kg
		}
		bands = append(bands, b)
	}
	return names, bands, hang
}

func past(d *rand.Rand, level float64) program.Training {
	t := program.Training{
		Experience: math.Round((4 + 110*level) * math.Exp(0.5*d.NormFloat64())),
		Minutes:    []int{30, 45, 60, 60, 75}[d.IntN(5)],
	}
	days := []time.Weekday{time.Monday, time.Wednesday, time.Friday, time.Saturday}
	n := []int{1, 2, 2, 2, 3, 3, 3, 3, 4, 4}[d.IntN(10)]
	t.Days = [][]time.Weekday{days[:1], {time.Monday, time.Thursday}, days[:3], days}[n-1]
	return t
}

// drawn is a step's load as it is drawn, N·m.
func (p *Person) drawn(id string) float64 {
	return p.Load(id, program.Rig{}, 0) / math.Exp(p.steps[id].off)
}

// aim sets a goal that lies at least a tenth beyond, now and then one further.
func (p *Person) aim(d *rand.Rand) {
	goals := p.skill.goals
	i := 0
	for i < len(goals)-1 && p.drawn(goals[i]) < 1.1*math.Exp(p.C) {
		i++
	}
	if d.Float64() < 0.4 && i < len(goals)-1 {
		i++
	}
	p.Client.Goal.Step = goals[i]
}

// comesBack gives the person years of training, and a best that lies a tenth to a
// quarter above what is left.
func (p *Person) comesBack(d *rand.Rand) {
	t := &p.Client.Training
	t.Experience += float64(60 + d.IntN(140))
	t.Since = monday - program.Date(7*(1+d.IntN(8)))
	p.age = t.Experience
	p.best = p.C + 0.1 + 0.15*d.Float64()
	margin := p.best + p.margin(12)
	for _, id := range p.inOrder() {
		held := math.Floor(p.lasts(margin - math.Log(p.Load(id, program.Rig{}, 0))))
		if held >= 5 {
			t.Best = &program.Hold{Step: id, Seconds: min(20, held)}
		}
	}
}

// inOrder are the steps by what they ask of this person, the lightest first.
func (p *Person) inOrder() []string {
	var ids []string
	for id := range p.steps {
		ids = append(ids, id)
	}
	slices.Sort(ids)
	slices.SortStableFunc(ids, func(a, b string) int {
		return cmp.Compare(p.Load(a, program.Rig{}, 0), p.Load(b, program.Rig{}, 0))
	})
	return ids
}

// test is the first day: the entry; the hardest step that is held five seconds, or done
// twice, or in one case of seven merely the first step for as long as it goes; the next step
// with the aid that leaves about ten seconds; of a planche at times a lean. Who holds nothing
// has tried, or has not.
func (p *Person) test(d *rand.Rand) {
	a := &p.Client
	form := p.Day * d.NormFloat64()
	tried := func(h program.Hold, load float64) {
		seconds := max(0, p.Longest(load, form+p.Set*d.NormFloat64())+p.Stop*d.NormFloat64())
		if h.Seconds = math.Floor(seconds); p.repeats {
			h.Reps = int((seconds + halfRep) / perRep)
			h.Seconds = float64(perRep * h.Reps)
		}
		a.Tests = append(a.Tests, h)
	}
	p.enter()
	ids := p.toTry()
	hardest, least := -1, 5.0
	if p.repeats {
		least = 2 * perRep
	}
	for i, id := range ids {
		if p.Longest(p.Load(id, program.Rig{}, 0), form) >= least {
			hardest = i
		}
	}
	switch {
	case hardest < 0 && d.IntN(2) == 0:
		tried(program.Hold{Step: p.first}, p.Load(p.first, program.Rig{}, 0))
	case hardest >= 0 && d.IntN(7) == 0:
		tried(program.Hold{Step: p.first}, p.Load(p.first, program.Rig{}, 0))
		return
	case hardest >= 0:
		tried(program.Hold{Step: ids[hardest]}, p.Load(ids[hardest], program.Rig{}, 0))
	}
	if next := hardest + 1; next < len(ids) {
		if rig, off := p.nearTen(ids[next], form); off < 6 {
			tried(program.Hold{Step: ids[next], Rig: rig}, p.Load(ids[next], rig, 0))
		}
	}
	if d.IntN(5) < 2 && len(p.skill.entry) == 0 {
		p.leans(d, form)
	}
}

// enter writes the entry down; who lifts is somebody whose lean lasts as long as it asks.
func (p *Person) enter() {
	for _, h := range p.skill.entry {
		if h.Ahead > 0 {
			p.lean = min(p.lean, p.C+Margin(12, p.held)-Margin(h.Seconds, p.held)-math.Log(p.LeanLoad(h.Ahead)/math.Exp(p.lean)))
		}
		p.Client.Tests = append(p.Client.Tests, h)
	}
}

// leans tests a lean, for half a minute at the most.
func (p *Person) leans(d *rand.Rand, form float64) {
	ahead := 0.06 + 0.02*float64(d.IntN(7))
	h := program.Hold{Exercise: leanOf, Ahead: ahead}
	if load := p.LeanLoad(ahead); p.LongestLean(load, form) >= 30 {
		h.Seconds, h.Stopped = 30, true
	} else if load > 0 {
		h.Seconds = math.Floor(max(0, p.LongestLean(load, form+p.Set*d.NormFloat64())+p.Stop*d.NormFloat64()))
	} else {
		return
	}
	p.Client.Tests = append(p.Client.Tests, h)
}

// toTry are the steps in order that there is what is needed for: no block, no lift from it.
func (p *Person) toTry() []string {
	return slices.DeleteFunc(p.inOrder(), func(id string) bool {
		block := p.steps[id].Lift.Block
		return math.IsInf(p.Load(id, program.Rig{}, 0), 1) || block > 0 && !p.Client.Hanging.HasBlock(block)
	})
}

// nearTen is the band, with the strap, or the pad or block, that leaves about ten seconds, and how far off.
func (p *Person) nearTen(id string, form float64) (best program.Rig, off float64) {
	off = math.Inf(1)
	for _, rig := range p.rigs {
		if o := math.Abs(p.Longest(p.Load(id, rig, 0), form) - 10); o < off && len(rig.Bands) < 2 {
			best, off = rig, o
		}
	}
	return best, off
}
