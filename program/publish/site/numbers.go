package site

import (
	"math"
	"strconv"
	"strings"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// dose is how much of an exercise is usually done: "3 × 15 s, rest 90 s".
func (b *builder) dose(e *program.Exercise) string {
	d := e.Dose
	amount := b.words.fill("amount.reps", "sets", strconv.Itoa(d.Sets), "reps", strconv.Itoa(d.Reps))
	if d.Hold > 0 {
		amount = b.words.fill("amount.holds", "sets", strconv.Itoa(d.Sets), "hold", strconv.Itoa(d.Hold))
	}
	if d.Rest == 0 {
		return amount
	}
	return amount + b.words.word("site.comma") + b.words.fill("amount.rest", "rest", b.rest(d.Rest))
}

// rest is written in minutes from two on where they are whole, as on paper.
func (b *builder) rest(seconds int) string {
	if seconds >= 120 && seconds%60 == 0 {
		return b.words.fill("unit.minutes", "number", strconv.Itoa(seconds/60))
	}
	return b.words.fill("unit.seconds", "number", strconv.Itoa(seconds))
}

// allowance is a step's skill allowance in words.
func (b *builder) allowance(a float64) string {
	if a == 1 {
		return b.words.word("site.allowance_none")
	}
	percent := b.words.fill("unit.percent", "number", strconv.Itoa(int(math.Round(100*(a-1)))))
	return b.words.fill("site.allowance_more", "percent", percent)
}

// gate is the sets and seconds to show before the next step, in words.
func (b *builder) gate(g program.Gate, sides int) string {
	key, pairs := view.GateSets(g, sides)
	parts := []string{b.words.fill(key, pairs...)}
	if g.Single > 0 {
		parts = append(parts, b.words.fill("gate.single", "hold", strconv.Itoa(g.Single)))
	}
	return strings.Join(parts, b.words.word("site.comma"))
}

// conditions are how a gate's sets must look and feel to count, in words.
func (b *builder) conditions(g program.Gate) string {
	var all []string
	if g.Reached == 0 { // of tries nobody asks for the form, nor for the effort
		all = append(all, b.words.word("gate.clean"), b.words.fill("gate.rpe", "rpe", b.decimal(g.RPEMax)))
	}
	return strings.Join(append(all,
		b.words.fill(b.words.plural("gate.sessions", g.Sessions), "sessions", strconv.Itoa(g.Sessions), "hours", strconv.Itoa(g.Apart)),
		b.words.fill("gate.pain", "pain", strconv.Itoa(g.PainMax)),
	), b.words.word("site.comma"))
}

// decimal writes a number with the language's decimal sign.
func (b *builder) decimal(x float64) string {
	return strings.Replace(strconv.FormatFloat(x, 'f', -1, 64), ".", b.words.word("unit.decimal"), 1)
}

// joints lists what an exercise loads.
func (b *builder) joints(loads []string) string {
	if len(loads) == 0 {
		return b.words.word("joint.none")
	}
	names := make([]string, len(loads))
	for i, joint := range loads {
		names[i] = b.words.word("joint." + joint)
	}
	return strings.Join(names, b.words.word("site.comma"))
}
