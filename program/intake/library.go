package intake

import (
	"fmt"
	"slices"

	"gatepost/program"
)

// shelf is the library while it is read: each entry with its file.
type shelf struct {
	program.Library
	exerciseFiles map[string]*source
	roadMapFiles  map[string]*source
	exerciseNames *names
	roadMapNames  *names
	stepNames     map[string]*names // by road map
	removed       map[string]string // exercise id -> the empty file that takes it away
	broken        map[string]bool   // ids of road maps and exercises that could not be read
	sources       []*source
}

func (f *folder) readLibrary(lang string) *shelf {
	s := &shelf{
		exerciseFiles: map[string]*source{}, roadMapFiles: map[string]*source{},
		removed: map[string]string{}, broken: map[string]bool{},
		exerciseNames: newNames("exercise"), roadMapNames: newNames("road map"), stepNames: map[string]*names{},
	}
	s.readExercises(f)
	s.readRoadMaps(f)
	s.readPages(f)
	s.readWords(f, lang)
	return s
}

func (s *shelf) keep(src *source) { s.sources = append(s.sources, src) }

func (s *shelf) readExercises(f *folder) {
	for _, l := range f.library("content/exercises", ".md") {
		switch {
		case l.removed:
			s.removed[l.id] = l.source.file
		case l.source == nil:
			s.broken[l.id] = true
		default:
			s.keep(l.source)
			s.Exercises = append(s.Exercises, readExercise(l.source, l.id))
			s.exerciseFiles[l.id] = l.source
			s.broken[l.id] = !l.source.sound()
		}
	}
}

func (s *shelf) readRoadMaps(f *folder) {
	for _, l := range f.library("content/roadmaps", ".yaml") {
		switch {
		case l.removed:
		case l.source == nil:
			s.broken[l.id] = true
		default:
			s.keep(l.source)
			s.RoadMaps = append(s.RoadMaps, readRoadMap(l.source, l.id))
			s.roadMapFiles[l.id] = l.source
			s.broken[l.id] = !l.source.sound()
		}
	}
	if len(s.RoadMaps) == 0 {
		f.say("content/roadmaps", "there is no road map", "Keep one at least.")
	}
}

// pagesNeeded are pages that a site cannot do without.
var pagesNeeded = []string{"cautions", "home", "measure", "numbers"}

func (s *shelf) readPages(f *folder) {
	for _, l := range f.library("content/pages", ".md") {
		switch {
		case l.source == nil:
		case l.removed && slices.Contains(pagesNeeded, l.id):
			s.keep(l.source)
			l.source.say(program.Place{File: l.source.file}, "this page can be replaced, not taken away", "Write the page, or delete the empty file to have the built-in one.")
		case l.removed:
		default:
			s.keep(l.source)
			s.Pages = append(s.Pages, readPage(l.source, l.id))
		}
	}
}

// readPage reads a page of words.
func readPage(src *source, id string) program.Page {
	p := program.Page{ID: id, File: src.file}
	body, first := src.readFrontMatter("title: How to measure",
		group(must("title", "How to measure", text(&p.Title))))
	p.Line = first
	p.Body = section{lines: body}.text()
	if body != nil && p.Body == "" {
		src.say(src.place(first-1, 1), "the page has no text", "Write it below the line ---.")
	}
	return p
}

// readWords reads every words file, and takes the language's.
func (s *shelf) readWords(f *folder, lang string) {
	model := program.Words{}
	if src, ok := f.openIfThere(f.builtIn, "content/words/en.yaml", true); ok {
		src.readYAML("week: {build: build week}", words(model)) // its faults are reported below
	}
	for _, l := range f.library("content/words", ".yaml") {
		if l.source == nil || l.removed {
			continue
		}
		own := program.Words{}
		s.keep(l.source)
		l.source.readYAML("week: {build: build week}", words(own))
		if !l.source.builtIn && l.source.sound() && len(model) > 0 {
			compareWords(l.source, own, model)
		}
		if l.id == lang {
			s.Words = own
		}
	}
}

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
	}
	s.checkBackLinks()
}

// learnNames makes every name known, and notes where two entries share one.
func (s *shelf) learnNames() {
	for _, e := range s.Exercises {
		if taken := s.exerciseNames.add(e.ID, e.Name); taken != "" {
			s.sayTaken(s.exerciseFiles[e.ID], "name", taken)
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
	for i := range m.Rungs {
		m.Rungs[i].Exercise = need(fmt.Sprintf("rungs[%d].exercise", i), m.Rungs[i].Exercise)
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

// kit is every word that exercises use for what a gym may have; one spelling of
// each is kept. Parallettes and the wall are always known: grips and the marks of a
// lean ask for them without naming them as kit.
func kit(lib *program.Library) *names {
	known := newNames("kit")
	known.add("parallettes", "parallettes")
	known.add("wall", "wall")
	for _, e := range lib.Exercises {
		for _, entry := range e.Kit {
			for i, word := range entry {
				if id, ok := known.ids[fold(word)]; ok {
					entry[i] = id
				} else {
					known.add(word, word)
				}
			}
		}
	}
	return known
}
