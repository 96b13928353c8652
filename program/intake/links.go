package intake

import (
	"cmp"
	"fmt"
	"slices"

	"gatepost/program"
)

// link resolves every name of one entry of the library by another.
func (s *shelf) link() {
	s.learnNames()
	for i := range s.Exercises {
		e := &s.Exercises[i]
		src := s.exerciseFiles[e.ID]
		e.Easier = s.resolve(src, "easier", e.Easier)
		e.Harder = s.resolve(src, "harder", e.Harder)
	}
	for i := range s.RoadMaps {
		s.linkRoadMap(&s.RoadMaps[i])
		s.linkKin(&s.RoadMaps[i])
	}
	s.checkBackLinks()
}

// learnNames makes every name known, and notes where two entries share one.
func (s *shelf) learnNames() {
	for _, e := range s.Exercises {
		if taken := s.exerciseNames.add(e.ID, e.Name); taken != "" {
			named := cmp.Or(s.translations[e.ID], s.exerciseFiles[e.ID])
			s.sayTaken(named, "name", taken)
		}
	}
	for _, m := range s.RoadMaps {
		src := s.roadMapFiles[m.ID]
		if taken := s.roadMapNames.add(m.ID, m.Name); taken != "" {
			s.sayTaken(src, "name", taken)
		}
		steps := newNames("step")
		for i, step := range m.Steps {
			if taken := steps.add(step.ID, step.Name); taken != "" {
				s.sayTaken(src, fmt.Sprintf("steps[%d].name", i), taken)
			}
		}
		steps.addAround(&m)
		s.stepNames[m.ID] = steps
	}
}

func (s *shelf) sayTaken(src *source, path, taken string) {
	src.say(src.at("%s", path), fmt.Sprintf("this name is that of %s too", quote(taken)), "Give each a name of its own.")
}

// resolve turns names of exercises into ids. One that a coach took away drops
// out of what is built in.
func (s *shelf) resolve(src *source, path string, written []string) []string {
	var found []string
	for i, w := range written {
		if id := s.resolveOne(src, fmt.Sprintf("%s[%d]", path, i), w); id != "" {
			found = append(found, id)
		}
	}
	return found
}

func (s *shelf) resolveOne(src *source, path, written string) string {
	id, message, advice := s.exerciseNames.resolve(written)
	empty := s.removed[fold(written)]
	switch {
	case written == "" || message == "":
		return id
	case s.broken[fold(written)]:
		return ""
	case empty != "" && src.builtIn:
		return ""
	case empty != "":
		advice = "It was taken away by the empty file " + empty + "."
	}
	src.say(src.at("%s", path), message, advice)
	return ""
}

func (s *shelf) linkRoadMap(m *program.RoadMap) {
	src := s.roadMapFiles[m.ID]
	need := func(path, written string) string {
		if empty := s.removed[fold(written)]; empty != "" && src.builtIn {
			src.say(program.Place{File: empty}, fmt.Sprintf("the road map %s cannot do without this exercise", quote(m.ID)), "Replace it, or delete the empty file to have the built-in one.")
			s.broken[fold(written)] = true
		}
		return s.resolveOne(src, path, written)
	}
	for i := range m.Entry {
		m.Entry[i].Exercise = need(fmt.Sprintf("entry[%d].exercise", i), m.Entry[i].Exercise)
	}
	for i := range m.Rungs {
		m.Rungs[i].Exercise = need(fmt.Sprintf("rungs[%d].exercise", i), m.Rungs[i].Exercise)
		if m.Rungs[i].Repeated != "" {
			m.Rungs[i].Repeated = need(fmt.Sprintf("rungs[%d].repeated", i), m.Rungs[i].Repeated)
		}
	}
	for i := range m.Steps {
		m.Steps[i].Exercise = need(fmt.Sprintf("steps[%d].exercise", i), m.Steps[i].Exercise)
		m.Steps[i].Drills = s.resolve(src, fmt.Sprintf("steps[%d].drills", i), m.Steps[i].Drills)
	}
}

// checkBackLinks sees that what is easier one way is harder the other way.
// Between an exercise of the coach's and a built-in one the link back is added,
// since nobody can edit what is built in.
func (s *shelf) checkBackLinks() {
	for i := range s.Exercises {
		e := &s.Exercises[i]
		s.checkBack(e, "easier", e.Easier, "harder", func(o *program.Exercise) *[]string { return &o.Harder })
		s.checkBack(e, "harder", e.Harder, "easier", func(o *program.Exercise) *[]string { return &o.Easier })
	}
}

func (s *shelf) checkBack(e *program.Exercise, key string, ids []string, back string, list func(*program.Exercise) *[]string) {
	src := s.exerciseFiles[e.ID]
	for _, id := range ids {
		other, ok := s.Exercise(id)
		if !ok || s.broken[id] || slices.Contains(*list(other), e.ID) {
			continue
		}
		switch theirs := s.exerciseFiles[id]; {
		case id == e.ID:
			src.say(src.at("%s", key), fmt.Sprintf("the exercise lists itself as %s", key), "Take it away.")
		case theirs.builtIn != src.builtIn:
			*list(other) = append(*list(other), e.ID)
		default:
			src.say(src.at("%s", key), fmt.Sprintf("%s is listed as %s, but does not list this one as %s", quote(id), key, back),
				fmt.Sprintf("Add to %s: %s: [%s]", theirs.file, back, e.ID))
		}
	}
}
