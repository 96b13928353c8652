package view

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"gatepost/program"
)

// speech turns keys and values into the reader's words, and remembers the keys
// that had none.
type speech struct {
	lib     *program.Library
	road    *program.RoadMap
	program *program.Program
	lang    string
	coach   string            // whose words are said
	twins   []string          // of its keys
	turns   turns             // of the odd sets, in the plans before this one
	missing map[string]string // key to what is wrong with it
}

func newSpeech(coach program.Coach, lib *program.Library, p *program.Program) *speech {
	s := &speech{lib: lib, program: p, lang: coach.Lang, coach: coach.Name, missing: map[string]string{}}
	if s.lang == "" {
		s.lang = "en"
	}
	if road, ok := lib.RoadMap(p.Skill); ok {
		s.road = road
	} else {
		s.road = &program.RoadMap{ID: p.Skill, Name: p.Skill}
	}
	s.twins = twins(s.road)
	return s
}

// twins are how the keys of a road map's own words end, those that count first: of a lift,
// of repetitions, of balance, and where the body hangs.
func twins(road *program.RoadMap) []string {
	var all []string
	if road.Load == program.LoadLift {
		all = append(all, "_lift")
	}
	if road.Load.Repeats() {
		all = append(all, "_reps")
	}
	if road.Load == program.LoadBalance {
		all = append(all, "_balance")
	}
	if road.Hands == program.HandsHang {
		all = append(all, "_hang")
	}
	return all
}

// say gives the words of a key with its {placeholders} filled from pairs of name and text;
// where the road map has words of its own for it, those. A key without words is said as the
// key itself.
func (s *speech) say(key string, pairs ...string) string {
	for _, twin := range s.twins {
		if _, ok := s.lib.Words[key+twin]; ok {
			return s.plain(key+twin, pairs...)
		}
	}
	return s.plain(key, pairs...)
}

// plain is say without the road map's own words, for what is in seconds in every skill.
func (s *speech) plain(key string, pairs ...string) string {
	text, ok := s.lib.Words[key]
	if !ok {
		s.missing[key] = fmt.Sprintf("there are no words for %q", key)
		return key
	}
	text, left := program.Fill(text, pairs...)
	if left != "" {
		s.missing[key] = fmt.Sprintf("%q has a placeholder {%s} that nothing fills", key, left)
	}
	return text
}

// plural is the key of a text about n things.
func (s *speech) plural(key string, n int) string { return s.lib.Words.Plural(key, n) }

// problems lists what the words file lacks, in order.
func (s *speech) problems() program.Problems {
	var all program.Problems
	for _, key := range slices.Sorted(maps.Keys(s.missing)) {
		section, name, _ := strings.Cut(key, ".")
		all = append(all, program.Problem{
			Place:   program.Place{File: "content/words/" + s.lang + ".yaml"},
			Message: s.missing[key],
			Advice:  fmt.Sprintf("write it under %s:, as %s: \"…\"", section, name),
		})
	}
	return all
}

func (s *speech) skill() string { return s.road.Name }

// step is a step's name as used within a sentence.
func (s *speech) step(id string) string {
	if step, ok := s.road.Step(id); ok {
		return step.Name
	}
	return strings.ReplaceAll(id, "-", " ")
}

// exercise is an exercise's name.
func (s *speech) exercise(id string) string {
	if e, ok := s.lib.Exercise(id); ok {
		return e.Name
	}
	return strings.ReplaceAll(id, "-", " ")
}

// thing is a thing of the kit; what a coach added to the library is in the coach's own
// words already.
func (s *speech) thing(id string) string { return cmp.Or(s.lib.Words["kit."+id], id) }

// noted is a week's note of one code; empty where it has none.
func (s *speech) noted(w program.Week, code string) string {
	if i := slices.IndexFunc(w.Notes, func(n program.Note) bool { return n.Code == code }); i >= 0 {
		return s.notes(w.Notes[i : i+1])[0]
	}
	return ""
}

// notes writes the planner's notes. Values of one name, one after the other, are a list.
func (s *speech) notes(notes []program.Note) []string {
	var all []string
	for _, n := range notes {
		key, pairs := "note."+n.Code, []string(nil)
		for _, value := range n.Values {
			if value.Kind == program.ValueCount {
				key = s.plural(key, round(value.Number))
			}
			if last := len(pairs) - 2; last >= 0 && pairs[last] == value.Name {
				pairs[last+1] += s.between(value) + s.value(value)
				continue
			}
			pairs = append(pairs, value.Name, s.value(value))
		}
		all = append(all, s.say(key, pairs...))
	}
	return all
}

// between stands before a value that goes on with a list: of kit any one thing will do.
func (s *speech) between(v program.Value) string {
	if v.Kind == program.ValueKit {
		return s.say("exercise.any_of")
	}
	return ", "
}

// private are the notes for the coach alone: those that speak of the client's joints, age, slips
// or other skills, and of what only the coach can measure, hang, buy or sign. They are never
// for page or paper that a client is handed.
var private = []string{"no-hands", "elbows-sore", "shoulders-sore", "youth", "older", "joint-eased", "fell-back", "tests-disagree", "tests-disagree-both", "kin", "practice-sore", "left-out-wrists",
	"typical-endurance", "entry-unasked", "kit-would-open", "mend-strap", "mend-band", "no-work-no-gain", "test-not-used", "band-beyond-measured", "band-slant",
	"gate-open", "set-unplaced", "strap-unsaid", "pull-unsaid", "band-gone",
	"flag-morning-up", "flag-morning-high", "flag-morning-twice", "flag-morning-old", "flag-morning-other"}

// public leaves the private notes out.
func public(notes []program.Note) []program.Note {
	return slices.DeleteFunc(slices.Clone(notes), func(n program.Note) bool { return slices.Contains(private, n.Code) })
}

func (s *speech) value(v program.Value) string {
	switch v.Kind {
	case program.ValueSeconds:
		return s.length(round(v.Number))
	case program.ValueTime:
		return s.seconds(round(v.Number))
	case program.ValueMetres:
		return s.centimetres(v.Number)
	case program.ValueNewtons:
		if v.Number <= 0 {
			return s.say("rig.none")
		}
		return s.kilograms(v.Number)
	case program.ValueShare:
		return s.percent(v.Number)
	case program.ValueCount:
		return fmt.Sprint(round(v.Number))
	case program.ValueDate:
		return s.date(program.Date(round(v.Number)))
	case program.ValueStep:
		return s.step(v.Text)
	case program.ValueExercise:
		return s.exercise(v.Text)
	case program.ValueKit:
		return s.thing(v.Text)
	case program.ValueWord:
		return s.say(v.Text)
	case program.ValueList:
		return s.things(v.Text)
	}
	return v.Text
}

// things are those of a list, each with its words where it has some.
func (s *speech) things(list string) string {
	things := strings.Split(list, "\n")
	for i, key := range things {
		_, own, _ := strings.Cut(key, ".")
		things[i] = cmp.Or(s.lib.Words[key], own, key)
	}
	return join(things...)
}

// capital makes the first letter a large one, to begin a line with.
func capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}

// sentence is a phrase with a large first letter and a full stop.
func sentence(s string) string {
	if s == "" {
		return ""
	}
	return capital(s) + "."
}

// first is what a client is called.
func first(p *program.Program) string {
	return program.FirstName(p.Client.Name, p.Client.Called)
}
