package intake

import (
	"io/fs"
	"slices"
	"strings"
	"sync"

	"gatepost/program"
)

// shelf is the library while it is read: each entry with its file.
type shelf struct {
	program.Library
	exerciseFiles map[string]*source
	roadMapFiles  map[string]*source
	pageFiles     map[string]*source
	noteFiles     map[string]*source
	translations  map[string]*source // by exercise
	headings      headings           // of an exercise's sections
	exerciseNames *names
	roadMapNames  *names
	stepNames     map[string]*names // by road map
	removed       map[string]string // exercise id -> the empty file that takes it away
	broken        map[string]bool   // ids of road maps and exercises that could not be read
	sources       []*source
}

func (f *folder) readLibrary(lang string) *shelf {
	s := &shelf{headings: exerciseHeadings,
		exerciseFiles: map[string]*source{}, roadMapFiles: map[string]*source{}, pageFiles: map[string]*source{}, noteFiles: map[string]*source{},
		translations: map[string]*source{},
		removed:      map[string]string{}, broken: map[string]bool{},
		exerciseNames: newNames("exercise"), roadMapNames: newNames("road map"), stepNames: map[string]*names{},
	}
	// The exercises are half of what there is to read, so they are read beside the rest;
	// their sections wait for the words, which say how they may be headed.
	found := f.library("content/exercises", ".md")
	var exercises []program.Exercise
	var beside sync.WaitGroup
	beside.Go(func() { exercises = readExercises(found) })
	s.readRoadMaps(f)
	s.readPages(f)
	s.readWords(f, lang)
	beside.Wait()
	s.shelve(found, exercises)
	s.readBodies()
	s.translate(f, lang)
	return s
}

func (s *shelf) keep(src *source) { s.sources = append(s.sources, src) }

// readExercises reads what stands above the sections; what cannot be read stays empty.
func readExercises(found []listed) []program.Exercise {
	exercises := make([]program.Exercise, len(found))
	for i, l := range found {
		if l.source != nil && !l.removed {
			exercises[i] = readExercise(l.source, l.id)
		}
	}
	return exercises
}

func (s *shelf) shelve(found []listed, exercises []program.Exercise) {
	for i, l := range found {
		switch {
		case l.removed:
			s.removed[l.id] = l.source.file
		case l.source == nil:
			s.broken[l.id] = true
		default:
			s.keep(l.source)
			s.Exercises = append(s.Exercises, exercises[i])
			s.exerciseFiles[l.id] = l.source
		}
	}
}

// readBodies reads the sections of the exercises.
func (s *shelf) readBodies() {
	for i := range s.Exercises {
		e := &s.Exercises[i]
		src := s.exerciseFiles[e.ID]
		if e.Line > 0 {
			src.readSections(e, src.lines[e.Line-1:], e.Line, s.headings)
		}
		s.broken[e.ID] = !src.sound()
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
			s.pageFiles[l.id] = l.source
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

// readWords reads the words file of the language, and every one that a coach wrote.
// A coach's file is compared with the built-in one of the same language, or else
// with the English.
func (s *shelf) readWords(f *folder, lang string) {
	for _, l := range f.library("content/words", ".yaml") {
		if l.source == nil || l.removed || l.source.builtIn && l.id != lang {
			continue
		}
		own := program.Words{}
		s.keep(l.source)
		l.source.readYAML("week: {build: build week}", words(own))
		model := own
		if !l.source.builtIn {
			if model = f.modelWords(l.id); l.source.sound() && len(model) > 0 {
				compareWords(l.source, own, model)
			}
		}
		if l.id == lang {
			s.Words = own
			s.headings = exerciseHeadings.with(model).with(own)
		}
	}
}

// modelWords are the built-in words that a coach's file stands in for.
func (f *folder) modelWords(lang string) program.Words {
	if model := wordsFrom(f.builtIn, lang); len(model) > 0 {
		return model
	}
	return f.english()
}

// wordsFrom are the words of a language, their faults left for the reading of the
// file itself; none: there is no such file.
func wordsFrom(from fs.FS, lang string) program.Words {
	there := program.Words{}
	if src, ok := openIfThere(from, "content/words/"+lang+".yaml", true); ok {
		src.readYAML("week: {build: build week}", words(there))
	}
	return there
}

// kit is every word that exercises use for what a gym may have; one spelling of
// each is kept. Parallettes and the wall are always known: grips and the marks of a
// lean ask for them without naming them as kit. What the words file calls a thing
// is as good a name for it.
func kit(lib *program.Library) *names {
	known := newNames("kit")
	known.add("parallettes", "parallettes")
	known.add("wall", "wall")
	for _, key := range sortedKeys(lib.Words) {
		if id, ok := strings.CutPrefix(key, "kit."); ok {
			known.add(id, lib.Words[key])
		}
	}
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
