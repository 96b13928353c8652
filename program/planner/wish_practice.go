package planner

import (
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
)

// setStep is the step of a week of balance as the coach sets it, else the one planned.
func (p *practice) setStep(i, planned int) int {
	at := p.setFor(i)
	if at < 0 {
		return planned
	}
	w := &p.hand.wishes[at]
	step := slices.IndexFunc(p.body.Steps, func(r ladder.Rung) bool { return r.ID == w.Step })
	p.hand.weekly[at] = p.setAgainst(w, step, planned)
	if w.Step == "" || len(p.hand.weekly[at]) > 0 {
		return planned
	}
	return step
}

// setAgainst says what stands against a week of balance that is set by hand.
func (p *practice) setAgainst(w *program.Wish, step, planned int) []program.Note {
	if w.Step == "" {
		step = planned
	}
	switch {
	case len(p.open) > 0:
		return []program.Note{note(noteWishEntry)}
	case step < 0:
		return []program.Note{note(noteWishNoStep)}
	case step > planned && p.anySore():
		return []program.Note{note(noteWishSorePractice)}
	case p.body.Steps[step].Gate.Tried() && w.Hold > 0:
		return []program.Note{note(noteWishTries)}
	}
	e, ok := p.lib.Exercise(p.body.Steps[step].Exercise)
	if !ok {
		return nil
	}
	return p.cannot(e)
}

// setSets are the tries or sets of a day as the coach sets them: with a joint that is sore
// never more than planned, and no more than the minutes have room for.
func (p *practice) setSets(n, each int, d day) int {
	at := p.setFor(d.week)
	if at < 0 || len(p.hand.weekly[at]) > 0 || p.hand.wishes[at].Sets == 0 {
		return n
	}
	w := &p.hand.wishes[at]
	if p.anySore() && w.Sets > n {
		p.hand.weekly[at] = []program.Note{note(noteWishSorePractice)}
		return n
	}
	room := (60*p.minutesOn(d.date) - prepareTime - changeOver) / max(1, each)
	return max(1, min(w.Sets, room))
}

// setHeld is the length of a day's sets of a step that is held, as the coach sets it.
func (p *practice) setHeld(hold int, d day) int {
	at := p.setFor(d.week)
	if at < 0 || len(p.hand.weekly[at]) > 0 || p.hand.wishes[at].Hold == 0 {
		return hold
	}
	w := &p.hand.wishes[at]
	if p.anySore() && w.Hold > hold {
		p.hand.weekly[at] = []program.Note{note(noteWishSorePractice)}
		return hold
	}
	return w.Hold
}

// markByHand marks a week of balance that the coach has set.
func (p *practice) markByHand(w *program.Week) {
	at := p.setFor(w.Number - 1)
	if at < 0 || len(p.hand.weekly[at]) > 0 {
		return
	}
	for i := range w.Sessions {
		for j := range w.Sessions[i].Items {
			if item := &w.Sessions[i].Items[j]; isPractice(item) {
				item.ByCoach, w.ByCoach = true, true
			}
		}
	}
}
