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

	return group(
		must("name", "Wall lean", text(&e.Name)),
		must("role", "second", choice(&e.Role, program.RolePrepare, program.RoleMain, program.RoleSecond,
			program.RoleStrength, program.RolePull, program.RolePush, program.RoleTrunk, program.RoleMobility)),
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
		may("figures", "[{floor: [feet], elbow: 0}, {elbow: 130}]", exerciseFigures(&e.Figures)),
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

// readExercise reads an exercise's file up to its body, which begins at its Line; 0
// where none was found.
func readExercise(src *source, id string) program.Exercise {
	e := program.Exercise{ID: id, File: src.file}
	_, e.Line = src.readFrontMatter("name: Wall lean", exercise(&e))
	return e
}

// readSections reads the body of an exercise, and says whether its sections are
// all there.
func (s *source) readSections(e *program.Exercise, body []string, first int, known headings) bool {
	parts := s.exerciseSections(body, first, known)
	if parts == nil {
		return false
	}
	e.SetUp, e.MakeEasier, e.MakeHarder = parts[0].text(), parts[3].text(), parts[4].text()
	e.Cues, e.Faults = s.items(parts[1]), s.items(parts[2])
	if n := len(e.Cues); n < 3 || n > 5 {
		s.say(s.place(parts[1].line, 1), fmt.Sprintf("%d cues are given", n), "Give three to five; the first one is printed large.")
	}
	if len(e.Faults) == 0 {
		s.say(s.place(parts[2].line, 1), "no faults are listed", "List at least one with what to do about it.")
	}
	return true
}

// headings are what the sections of an exercise may be headed by, in order; of
// each section the name that messages use comes first.
type headings [5][]string

var exerciseHeadings = headings{{"Set-up"}, {"Cues"}, {"Faults"}, {"Easier"}, {"Harder"}}

// with adds what a language calls the sections.
func (h headings) with(words program.Words) headings {
	for i, key := range []string{"exercise.set_up", "exercise.cues", "exercise.faults", "exercise.easier", "exercise.harder"} {
		if word := words[key]; word != "" && !slices.Contains(h[i], word) {
			h[i] = append(slices.Clone(h[i]), word)
		}
	}
	return h
}

// names are the sections as messages call them.
func (h headings) names() []string {
	var names []string
	for _, section := range h {
		names = append(names, section[0])
	}
	return names
}

// exerciseSections gives the five sections in order; nil where one is wrong.
func (s *source) exerciseSections(body []string, first int, known headings) []section {
	parts := s.sections(body, first)
	before := len(s.problems)
	for i, want := range known {
		name := want[0]
		at := slices.IndexFunc(parts, func(p section) bool { return slices.Contains(want, p.heading) })
		switch {
		case at < 0:
			s.say(s.place(first, 1), fmt.Sprintf("the section %s is missing", quote(name)), "Add a heading: ## "+want[len(want)-1])
		case parts[at].text() == "":
			s.say(s.place(parts[at].line, 1), fmt.Sprintf("the section %s is empty", quote(parts[at].heading)), "Write at least one line.")
		case at != i && len(parts) == len(known):
			s.say(s.place(parts[at].line, 1), fmt.Sprintf("the section %s is out of order", quote(parts[at].heading)), "The order is "+strings.Join(known.names(), ", ")+".")
		}
	}
	seen := map[int]bool{}
	for _, p := range parts {
		switch i := slices.IndexFunc(known[:], func(names []string) bool { return slices.Contains(names, p.heading) }); {
		case i < 0:
			s.say(s.place(p.line, 1), fmt.Sprintf("there is no section %s here", quote(p.heading)), offer(p.heading, slices.Concat(known[:]...)))
		case seen[i]:
			s.say(s.place(p.line, 1), fmt.Sprintf("there is a second section %s", quote(p.heading)), "Put both under one heading.")
		default:
			seen[i] = true
		}
	}
	if len(s.problems) > before || len(parts) != len(known) {
		return nil
	}
	return parts
}
