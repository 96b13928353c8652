package people

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"gatepost/program"
)

// skill is what people are drawn for. Their strength lies between a share of the first step's
// load and one of another's; they have shown the entry. Who does fifteen push-ups, of two
// thirds of body weight, is not far from a pike, and who leans for lifts not far from a high
// block (our judgement).
type skill struct {
	id          string
	first, most string // the first is what the weakest try
	from, to    float64
	goals       []string // the first that lies a tenth beyond, now and then the next
	seconds     float64  // of the goal
	entry       []program.Hold
	equip       func(*rand.Rand, *program.Assessment) // what the skill asks for beside what is there
}

var skills = []skill{
	{id: "planche", first: "tuck", from: 0.6, most: "straddle", to: 1.02,
		goals: []string{"advanced-tuck", "straddle", "full"}, seconds: 10},
	{id: "front-lever", first: "tuck", from: 0.6, most: "straddle", to: 1.02,
		goals: []string{"advanced-tuck", "straddle", "full"}, seconds: 10, equip: hangs,
		entry: []program.Hold{{Exercise: "still-hang", Seconds: 45}, {Exercise: "shoulder-blade-pull", Reps: 12}, {Exercise: "chin-up", Reps: 9}}},
	{id: "handstand-push-up", first: "pike", from: 0.9, most: "wall", to: 1.02,
		goals: []string{"box-pike", "wall", "chest-to-wall"}, seconds: 9, equip: presses,
		entry: []program.Hold{{Exercise: "wall-handstand-line", Seconds: 60}, {Exercise: "push-up", Reps: 20}}},
	{id: "press-to-handstand", first: "block-40", from: 0.8, most: "straddle", to: 1.02,
		goals: []string{"block-10", "straddle", "together"}, seconds: 6, equip: lifts,
		entry: []program.Hold{{Exercise: "wall-handstand-line", Seconds: 45}, {Exercise: "straddle-support", Seconds: 10},
			{Exercise: leanOf, Ahead: entryLean, Seconds: entryHold, Stopped: true}}},
}

// The lean that lifts ask for first.
const (
	leanOf    = "planche-lean"
	entryLean = 0.18 // m
	entryHold = 15   // s
)

// Skills are the names of those that people can be drawn for, the usual one first.
func Skills() []string {
	var all []string
	for _, s := range skills {
		all = append(all, s.id)
	}
	return all
}

func skillOf(id string) *skill {
	i := slices.IndexFunc(skills, func(s skill) bool { return s.id == id })
	if i < 0 {
		panic(fmt.Sprintf("people: nobody is drawn for %q", id))
	}
	return &skills[i]
}

func have(a *program.Assessment, kit ...string) {
	for _, k := range kit {
		if !slices.Contains(a.Kit, k) {
			a.Kit = append(a.Kit, k)
		}
	}
}

// hangs has a bar and the loops laid double over it, on little strap or none.
func hangs(d *rand.Rand, a *program.Assessment) {
	have(a, "pull-up bar")
	a.Hanging.Bar = 2.2 + float64(d.IntN(3))/10
	a.Hanging.Anchor, a.Hanging.Drops = a.Hanging.Bar, []float64{0, 0.1}
	for i := range a.Bands {
		a.Bands[i].Folded = true
	}
}

// presses has a wall, a box and three pads, two of four people.
func presses(d *rand.Rand, a *program.Assessment) {
	have(a, "wall", "box")
	a.Bands = nil
	for _, pad := range []float64{0.05, 0.10, 0.15} {
		if d.IntN(4) > 0 {
			a.Hanging.Pads = append(a.Hanging.Pads, pad)
		}
	}
}

// lifts has a wall, a fold from what the entry asks for to a deep one, and blocks in steps of
// five or ten centimetres.
func lifts(d *rand.Rand, a *program.Assessment) {
	have(a, "wall")
	a.Bands = nil
	a.Athlete.Fold = float64(130+d.IntN(20)) * math.Pi / 180
	step := 5 + 5*d.IntN(2)
	for cm := step; cm <= 45; cm += step {
		a.Hanging.Blocks = append(a.Hanging.Blocks, float64(cm)/100)
	}
}
