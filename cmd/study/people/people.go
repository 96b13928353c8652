// Gatepost people are simulated clients, who do what a program prints and write it
// down as clients do. They are for the study of cmd/study and for tests; nothing
// that is printed comes from here.
//
// A person has a truth that nobody sees: the torque held for twelve seconds on a
// usual day, an endurance, an own rate of gain, and how each step, lean and band
// differs from what was drawn or measured. The bodies are those of package mechanics;
// everything else is written here once more and shares nothing with package strength,
// so that a mistake there can't hide behind the same mistake here.
//
// # Endurance
//
// A share f of the maximum lasts t = −ln f / (k f) minutes (Ma, Chablat, Bennis, Zhang
// 2009), k being spread as in the shoulders of 40 men: mean 1.02, sd 0.49 a minute
// (Ma and others, Ergonomics, arXiv 1402.1713).
//
// # Repetitions
//
// What is pressed or lifted is counted, three seconds a repetition (common practice), by
// Wathan's equation; people differ by a quarter in how many they do of a share (our
// judgement). A pad or a block helps a little more or less than measured, as a band does.
// A lean held tells of lifts as far as strengths go together by .7, of .35 each.
//
// # Gain
//
// A full week of three sessions adds 0.024/(1 + age/21) to ln of the torque, age in
// weeks: 1.7, 0.83 and 0.33 per cent after 8, 40 and 130 weeks (our judgement of what
// novices, intermediates and advanced people gain: 1.5 to 2.5, 0.7 to 1.2, 0.2 to 0.5),
// and 18 to 20 per cent in a newcomer's first twelve with their easy weeks and some
// missed (published means are 16 to 22 per cent: Hubal 2005, from memory). The own rate
// is a multiple of it with a mean of one, spread as a gamma distribution of shape 2,
// whose sd is 0.71 of its mean (in 585 people the sd of isometric gains was about the
// mean: Hubal 2005). Gain follows the sessions done, or where the World says so the
// square root of the work done. What was once held comes back by a quarter of the gap a
// week, 1.2 per cent at most; a week off takes one per cent, one ill two (our judgement).
//
// # Ratings
//
// RPE is said as people say it (Zourdos and others 2021): at 9 there are 3.1 ± 1.7 of
// sixteen repetitions left, at 7 6.7 ± 2.5, at 5 10.2 ± 2.9; the sixteen, from memory,
// were the set's length. Sixteenths of the longest hold stand for repetitions. Half of
// the variance is a habit of the person, the other half is of the set.
package people

import (
	"math"
	"math/rand/v2"

	"gatepost/program"
	"gatepost/program/mechanics"
)

// World is how unruly people and their days are. Spreads are standard deviations, of
// ln of a load unless it says otherwise; the zero World has none at all.
type World struct {
	Name string

	Day, Set float64 // of a day's form, and of one set
	Step     float64 // of how much harder or easier than drawn a person holds a step
	Lean     float64 // the same of leans
	Band     float64 // of a band's pull: it ages, and its hook moves
	Stop     float64 // s, of the moment a hold ends
	Tires    float64 // ln lost by a set held to the end; half is back in under three minutes
	Rating   float64 // of RPE, as a multiple of what was published
	Drift    float64 // of a week's gain
	Slips    float64 // share of the numbers written wrong
	Skips    float64 // most of the sessions that a person leaves out, as a share
	Ill      float64 // chance a week of being ill
	ByWork   bool    // gain follows the work done and not the sessions
}

// Base is the usual world. Values are our judgement where no source is named.
func Base() World {
	return World{
		Name: "base", Day: 0.03, Set: 0.015, Step: 0.02, Lean: 0.15, Band: 0.05, Stop: 0.5,
		Tires: 0.01, Rating: 1, Drift: 0.006, Slips: 0.005, Skips: 0.2, Ill: 0.02,
	}
}

// Worlds are those of the study: one thing at a time off, then all at once.
func Worlds() []World {
	all := Base()
	all.Day, all.Step, all.ByWork, all.Tires, all.Rating, all.Slips = 0.045, 0.055, true, 0.04, 1.5, 0.01
	return []World{
		Base(),
		named("noisy days", func(w *World) { w.Day = 0.045 }),
		named("steps 5.5 % off", func(w *World) { w.Step = 0.055 }), // ten degrees of hip bend in a tuck
		named("gain by work", func(w *World) { w.ByWork = true }),
		named("tired sets", func(w *World) { w.Tires = 0.04 }),
		named("all of it", func(w *World) { name := w.Name; *w = all; w.Name = name }),
	}
}

func named(name string, but func(*World)) World {
	w := Base()
	w.Name = name
	but(&w)
	return w
}

// Person is one simulated client. It belongs to one goroutine.
type Person struct {
	World
	Client program.Assessment // what their coach measured; the log is the caller's to keep

	C float64 // ln of the torque, N·m, or of a press the force, N, that is held twelve seconds or done four times on a usual day
	K float64 // endurance, per minute; of what is repeated, repetitions over the usual ones

	skill   *skill
	first   string  // step that is tried first
	repeats bool    // counted, three seconds a repetition
	held    float64 // endurance of what is held, per minute
	seed    uint64
	frame   mechanics.Body
	support mechanics.Support
	steps   map[string]step
	bands   map[string]mechanics.Curve // as they pull in truth
	rigs    []program.Rig              // all that can be hung
	loads   map[string]float64         // N·m in truth, by step and rig
	lean    float64                    // ln by which leans are harder than drawn
	own     float64                    // rate of gain over that of the law
	age     float64                    // weeks of training
	began   float64                    // C on the first day
	best    float64                    // the highest C so far, before a lay-off too
	week    int
	shares  []float64 // of a full week's gain, week by week
	sick    bool
	habits
}

// habits are how a person writes.
type habits struct {
	keeps   float64 // share of the sessions that are done
	rates   float64 // share of the sets with an RPE
	plain   float64 // share of the days that go as printed and are written as "done"
	clean   bool    // says whether the form held
	careful bool    // stops with a second and a half left, as the card says, or goes on
	tells   bool    // writes pain
	rises   bool    // writes mornings
	bias    float64 // of RPE, in standard deviations
	joint   int     // that complains: wrists, elbows, shoulders; −1: none
}

// step is a step of the road map as this body holds it.
type step struct {
	*program.Step
	pose      mechanics.Pose
	allowance float64
	off       float64 // ln by which it is harder than drawn
}

// What dice are thrown for.
const (
	forBody = iota
	forStep
	forBand
	forHabit
	forTest
	forWeek
	forSession
	forMorning
	forEnd
)

// dice are thrown anew for every occasion, so that the same person meets the same
// days whatever is printed for them.
func (p *Person) dice(occasion ...int) *rand.Rand {
	h := uint64(14695981039346656037)
	for _, v := range occasion {
		h = (h ^ uint64(v+1)) * 1099511628211
	}
	return rand.New(rand.NewPCG(p.seed, h))
}

// Of gives an assessed client a truth: so much torque held twelve seconds, N·m, and
// the rest as the dice fall.
func Of(w World, lib *program.Library, a program.Assessment, held12 float64, seed uint64) *Person {
	p := &Person{World: w, Client: a, seed: seed, C: math.Log(held12)}
	d := p.dice(forBody)
	p.age = a.Training.Experience
	p.own = -0.5 * (math.Log(1-d.Float64()) + math.Log(1-d.Float64()))
	k := d.NormFloat64()
	p.held = 0.92 * math.Exp(0.455*k) // mean 1.02, sd 0.49
	p.lean = w.Lean * d.NormFloat64()
	p.embody(lib)
	if p.K = p.held; p.repeats {
		p.K = math.Exp(repsSpread * k)
	}
	p.began, p.best = p.C, p.C
	if best := a.Training.Best; best != nil {
		p.best = max(p.C, math.Log(p.Load(best.Step, best.Rig, 0))+p.margin(best.Seconds)-p.margin(12))
	}
	p.habits = p.drawHabits()
	return p
}

func (p *Person) drawHabits() habits {
	d := p.dice(forHabit)
	h := habits{keeps: 1 - p.Skips*d.Float64(), rates: 0.4 + 0.6*d.Float64(), joint: -1}
	if d.Float64() < 0.3 {
		h.plain = 0.7
	}
	h.clean, h.careful = d.Float64() < 0.7, d.Float64() < 0.5
	h.tells, h.rises = d.Float64() < 0.4, d.Float64() < 0.3
	h.bias = d.NormFloat64()
	for i, joint := range []program.Joint{p.Client.Health.Wrists, p.Client.Health.Elbows, p.Client.Health.Shoulders} {
		if joint == program.JointSore {
			h.joint = i
		}
	}
	return h
}
