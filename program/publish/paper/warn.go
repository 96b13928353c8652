package paper

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// warnings names each character that was replaced, and of letters that run from right to
// left the first, with the place that most likely has it.
func (ts *typesetter) warnings(v *view.View) program.Problems {
	var all program.Problems
	turned := false
	for _, r := range slices.Sorted(maps.Keys(ts.lost)) {
		if Regular.has(r) && rightToLeft(r) {
			if !turned {
				all = append(all, program.Problem{Place: placeOf(v, r), Message: "letters that run from right to left, such as " + string(r) + ", are printed from left to right and not joined",
					Advice: "for the print, write it in letters that run from left to right", Warning: true})
			}
			turned = true
			continue
		}
		all = append(all, program.Problem{
			Place:   placeOf(v, r),
			Message: "the print faces have no " + string(r) + "; □ is printed instead",
			Advice:  "write it with letters, or leave it out",
			Warning: true,
		})
	}
	return all
}

// placeOf guesses the place by what the character stands in: the line where it is
// known, else the file.
func placeOf(v *view.View, r rune) program.Place {
	switch {
	case strings.ContainsRune(v.Coach.Name+v.Coach.Studio+v.Coach.Contact, r):
		return placeIn(v.Coach.Places, r, "content/studio.yaml")
	case strings.ContainsRune(v.Client, r) || slices.ContainsFunc(v.Weeks, func(w view.Week) bool {
		return strings.ContainsRune(strings.Join(w.Bands, ""), r)
	}):
		return placeIn(v.Places, r, assessmentOf(v))
	case slices.ContainsFunc(v.Ladder, func(g view.Rung) bool { return strings.ContainsRune(g.Step, r) }):
		return program.Place{File: "content/roadmaps/" + v.SkillID + ".yaml"}
	}
	if id := exerciseWith(v, r); id != "" {
		return program.Place{File: "content/exercises/" + id + ".md"}
	}
	return program.Place{File: "content/words/" + v.Lang + ".yaml"}
}

func assessmentOf(v *view.View) string { return "content/clients/" + v.Slug + "/assessment.yaml" }

// placeIn is the first place of a file whose line has the character.
func placeIn(places program.Places, r rune, file string) program.Place {
	best := program.Place{File: file}
	for _, path := range slices.Sorted(maps.Keys(places)) {
		at := places[path]
		if strings.ContainsRune(at.Text, r) && (best.Line == 0 || cmp.Or(cmp.Compare(at.Line, best.Line), cmp.Compare(at.Column, best.Column)) < 0) {
			best = at
		}
	}
	return best
}

// exerciseWith is the exercise whose name or cue has the character.
func exerciseWith(v *view.View, r rune) string {
	for _, w := range v.Weeks {
		for _, s := range w.Sessions {
			for _, item := range s.Items {
				if strings.ContainsRune(item.Exercise+strings.Join(item.Cues, ""), r) {
					return item.ExerciseID
				}
			}
		}
	}
	return ""
}
