package view

import (
	"cmp"
	"slices"
	"strconv"

	"gatepost/program"
)

// Picture is this client's own body in one of the block's positions, with the
// rig it is trained with, or in the goal's.
type Picture struct {
	ID     string // of the step, or of the floor exercise
	Stance program.Stance
	Step   string // "half-open tuck"
	When   string // "weeks 1 to 9", "goal"
	Help   string // "1.5 kg"; empty where nothing helps
	Raised string // "hips 4 cm above the shoulders"; empty where the floor leaves room
	Goal   bool
}

// pictures are the positions of the block in order, each as the first week on it
// has it, and the goal's. There is one for each stretch of weeks on one step, or
// of one floor exercise.
func (s *speech) pictures(p *program.Program) []Picture {
	var all []Picture
	first, on := 0, ""
	for _, w := range p.Weeks {
		key := w.Step + "/" + w.Exercise
		switch {
		case w.Sets == 0 || !w.Stance.Drawn() || s.offHandles(w):
			continue
		case key != on:
			first, on = w.Number, key
			v := Picture{ID: cmp.Or(w.Step, w.Exercise), Stance: w.Stance, Step: s.name(w), Help: s.kilograms(w.Stance.Help)}
			if w.Scale > 0 {
				v.Help = s.kilograms(w.Scale)
			}
			l, _ := load(p, w.Step)
			v.Raised = s.raised(l)
			all = append(all, v)
		}
		all[len(all)-1].When = s.stretch(first, w.Number)
	}
	if goal, ok := load(p, p.Goal.Step); ok && goal.Stance.Drawn() {
		all = append(all, Picture{ID: goal.ID, Stance: goal.Stance, Step: s.step(goal.ID), When: s.say("rung.goal"), Raised: s.raised(goal), Goal: true})
	}
	return all
}

// offHandles reports whether a week's figure stands on handles that are not where the client
// is all that week.
func (s *speech) offHandles(w program.Week) bool {
	return w.Stance.Grip && !w.Stance.Hang && len(w.Sessions) > 0 && !slices.ContainsFunc(w.Sessions, func(d program.Session) bool {
		at := s.placeOn(d.Date)
		return at == nil || slices.Contains(at.Kit, "parallettes")
	})
}

// Drawn gives the pictures of exercises with the kit there is on a day, and reports whether
// that draws a hold otherwise than where the client always is.
type Drawn func(on program.Date) (of func(exercise string) []program.Picture, otherwise bool)

// Show gives the cards drawings of exercises: of what the block has for the first time,
// and of what a session is about, each where the card's figure is not of it. Where the
// client has other kit the figure is no longer theirs, and what is drawn otherwise is drawn
// once more.
func (v *View) Show(drawn Drawn) {
	seen := map[*program.Picture]bool{}
	for i := range v.Cards {
		c := &v.Cards[i]
		of, otherwise := drawn(c.day)
		if otherwise && c.Figure.Drawn() {
			c.Figure, c.Items[c.Main].Shown = program.Stance{}, false
		}
		for j := range c.Items {
			item := &c.Items[j]
			pictures := of(item.ExerciseID)
			if len(pictures) == 0 {
				continue
			}
			if (!seen[&pictures[0]] || j == c.Main) && !item.Shown {
				item.Pictures = pictures
			}
			seen[&pictures[0]] = true
		}
	}
}

// name is what a week holds: its step, or the floor rung's exercise.
func (s *speech) name(w program.Week) string {
	switch {
	case w.Step != "":
		return s.step(w.Step)
	case w.Exercise != "":
		return s.exercise(w.Exercise)
	}
	return ""
}

// stretch names weeks: "week 3", "weeks 4 to 9".
func (s *speech) stretch(from, to int) string {
	if from == to {
		return s.say("figure.week", "number", strconv.Itoa(from))
	}
	return s.say("figure.weeks", "from", strconv.Itoa(from), "to", strconv.Itoa(to))
}
