package intake

import (
	"fmt"
	"slices"
	"strings"

	"gatepost/program"

	"gopkg.in/yaml.v3"
)

// exercise is the front matter of an exercise's file.
func exercise(e *program.Exercise) read {
	joint := func(j *string) read { return choice(j, "wrists", "elbows", "shoulders") }
	purpose := func(p *program.Purpose) read { return choice(p, program.Purposes...) }
	return group(
		must("name", "Wall lean", text(&e.Name)),
		must("role", "second", choice(&e.Role, program.RolePrepare, program.RoleMain, program.RoleSecond,
			program.RoleStrength, program.RolePull, program.RoleTrunk, program.RoleMobility)),
		must("trains", "[lean]", each(&e.Trains, purpose)),
		may("kit", "[wall]", each(&e.Kit, anyOneOf)),
		must("grip", "support", choice(&e.Grip, program.GripNone, program.GripFlat, program.GripSupport, program.GripNeutral, program.GripHang)),
		must("loads", "[wrists, elbows, shoulders]", each(&e.Loads, joint)),
		must("dose", "{sets: 3, hold: 15 s, rest: 90 s}", dose(&e.Dose)),
		may("straight_arm", "true", yesNo(&e.StraightArm)),
		may("rank", "10", whole(&e.Rank, 0, 1000)),
		may("each_side", "true", yesNo(&e.EachSide)),
		may("easier", "[scapular-push-up]", each(&e.Easier, text)),
		may("harder", "[tuck-hold]", each(&e.Harder, text)),
	)
}

// anyOneOf reads an entry of the kit such as "pull-up bar or rings".
func anyOneOf(into *[]string) read {
	return func(v value) {
		var s string
		if text(&s)(v); s == "" {
			return
		}
		for _, word := range strings.Split(s, " or ") {
			*into = append(*into, strings.ToLower(strings.Join(strings.Fields(word), " ")))
		}
	}
}

func dose(d *program.Dose) read {
	return func(v value) {
		group(
			must("sets", "3", whole(&d.Sets, 1, 20)),
			may("hold", "15 s", duration.between(1, 600).usually(1, 180).whole(&d.Hold)),
			may("reps", "8", whole(&d.Reps, 1, 100)),
			must("rest", "60 s", duration.between(0, 600).whole(&d.Rest)),
		)(v)
		if v.node.Kind == yaml.MappingNode && v.has("hold") == v.has("reps") {
			v.wrong("needs hold or reps, one of the two", "Write, for example: %s", v.example())
		}
	}
}

// readExercise reads an exercise's file, body and all.
func readExercise(src *source, id string) program.Exercise {
	e := program.Exercise{ID: id, File: src.file}
	body, first := src.readFrontMatter("name: Wall lean", exercise(&e))
	e.Line = first
	if body == nil {
		return e
	}
	parts := src.exerciseSections(body, first)
	if parts == nil {
		return e
	}
	e.SetUp, e.MakeEasier, e.MakeHarder = parts[0].text(), parts[3].text(), parts[4].text()
	e.Cues, e.Faults = src.items(parts[1]), src.items(parts[2])
	if n := len(e.Cues); n < 3 || n > 5 {
		src.say(src.place(parts[1].line, 1), fmt.Sprintf("%d cues are given", n), "Give three to five; the first one is printed large.")
	}
	if len(e.Faults) == 0 {
		src.say(src.place(parts[2].line, 1), "no faults are listed", "List at least one with what to do about it.")
	}
	return e
}

var exerciseHeadings = []string{"Set-up", "Cues", "Faults", "Easier", "Harder"}

// exerciseSections gives the five sections in order; nil where one is wrong.
func (s *source) exerciseSections(body []string, first int) []section {
	parts := s.sections(body, first)
	before := len(s.problems)
	for i, want := range exerciseHeadings {
		at := slices.IndexFunc(parts, func(p section) bool { return p.heading == want })
		switch {
		case at < 0:
			s.say(s.place(first, 1), fmt.Sprintf("the section %s is missing", quote(want)), "Add a heading: ## "+want)
		case parts[at].text() == "":
			s.say(s.place(parts[at].line, 1), fmt.Sprintf("the section %s is empty", quote(want)), "Write at least one line.")
		case at != i && len(parts) == len(exerciseHeadings):
			s.say(s.place(parts[at].line, 1), fmt.Sprintf("the section %s is out of order", quote(want)), "The order is "+strings.Join(exerciseHeadings, ", ")+".")
		}
	}
	for _, p := range parts {
		if !slices.Contains(exerciseHeadings, p.heading) {
			s.say(s.place(p.line, 1), fmt.Sprintf("there is no section %s here", quote(p.heading)), offer(p.heading, exerciseHeadings))
		}
	}
	if len(s.problems) > before || len(parts) != len(exerciseHeadings) {
		return nil
	}
	return parts
}
