package intake

import (
	"fmt"
	"maps"
	"slices"

	"gatepost/program"
)

// A translation says in another language what a file of the library says. It
// lies below a folder named after the language, at the same path, and holds
// words alone; numbers, poses, links and kit stay in the one original.
//
//	content/de/exercises/tuck-hold.md    name, and the five sections
//	content/de/pages/home.md             title and text
//	content/de/roadmaps/planche.yaml     name, body, and a name for each step
//	content/de/programs/open-hours.yaml  title, blurb, and the bands' names
//	content/de/notes/quiet-week.md       title and text
//
// Only the studio's own language is read. A translation that came with the
// program leaves a coach's own exercise, page or road map as it stands. What is
// built in and has no translation is named, and stays in English. Programs and
// notes are the coach's own, in whatever language: who has translated one of them
// is told which of the others is not.

// original is the language the library is written in.
const original = "en"

func (s *shelf) translate(f *folder, lang string) {
	if lang == original || s.Words == nil { // without words there is nothing to read on
		return
	}
	s.overlay(f, lang, "exercises", ".md", "exercise", s.exerciseFiles, s.translateExercise)
	s.overlay(f, lang, "pages", ".md", "page", s.pageFiles, s.translatePage)
	s.overlay(f, lang, "roadmaps", ".yaml", "road map", s.roadMapFiles, s.translateRoadMap)
}

// translateOwn does the same for the coach's own programs and notes.
func (s *shelf) translateOwn(f *folder, lang string, programs []*client, notes []program.CoachNote) {
	if lang == original || s.Words == nil {
		return
	}
	files := map[string]*source{}
	for _, c := range programs {
		files[c.Slug] = c.source
	}
	s.overlay(f, lang, "programs", ".yaml", "program", files, func(src *source, id string) {
		translateProgram(src, programs[slices.IndexFunc(programs, func(c *client) bool { return c.Slug == id })].public)
	})
	s.overlay(f, lang, "notes", ".md", "note", s.noteFiles, func(src *source, id string) {
		n := &notes[slices.IndexFunc(notes, func(n program.CoachNote) bool { return n.ID == id })]
		own := readPage(src, id)
		n.Title, n.Body, n.File, n.Line = own.Title, own.Body, own.File, own.Line
	})
}

func (s *shelf) overlay(f *folder, lang, kind, extension, noun string, originals map[string]*source, merge func(*source, string)) {
	t := translation{shelf: s, dir: "content/" + lang + "/" + kind, extension: extension, noun: noun, originals: originals, merge: merge}
	t.read(f)
	t.sayMissing()
}

// translation is the translated files of one kind.
type translation struct {
	*shelf
	dir, extension, noun string
	originals            map[string]*source // by id
	merge                func(src *source, id string)
	there                map[string]bool // ids that have a file
	begun                bool            // a coach's own original has one
}

func (t *translation) read(f *folder) {
	t.there = map[string]bool{}
	for _, l := range f.library(t.dir, t.extension) {
		t.there[l.id] = true
		from, known := t.originals[l.id]
		switch {
		case l.source == nil || l.removed:
		case known && l.source.builtIn && !from.builtIn: // the coach's own words stand
		case known:
			t.begun = t.begun || !from.builtIn
			t.keep(l.source)
			t.merge(l.source, l.id)
		case !l.source.builtIn && !t.broken[l.id]:
			t.keep(l.source)
			l.source.say(program.Place{File: l.source.file}, fmt.Sprintf("there is no %s %s to translate", t.noun, quote(l.id)),
				offer(l.id, slices.Sorted(maps.Keys(t.originals))))
		}
	}
}

// sayMissing names what is built in and has no translation, and programs and notes
// that have none beside others that do.
func (t *translation) sayMissing() {
	for _, id := range slices.Sorted(maps.Keys(t.originals)) {
		from, stays := t.originals[id], "in English"
		if own := t.noun == "program" || t.noun == "note"; own {
			stays = "as it is"
			if !t.begun {
				continue
			}
		} else if !from.builtIn {
			continue
		}
		if t.there[id] {
			continue
		}
		at := from.at("title")
		if t.noun == "exercise" || t.noun == "road map" {
			at = from.at("name")
		}
		from.doubt(at, fmt.Sprintf("this %s has no translation and stays %s", t.noun, stays), fmt.Sprintf("Write %s/%s%s", t.dir, id, t.extension))
	}
}

func (s *shelf) translateExercise(src *source, id string) {
	e, _ := s.Exercise(id)
	own := program.Exercise{}
	body, first := src.readFrontMatter("name: Wall lean", group(must("name", e.Name, text(&own.Name))))
	if body == nil || !src.readSections(&own, body, first, s.headings) || own.Name == "" {
		return
	}
	e.Name, e.SetUp, e.Cues, e.Faults = own.Name, own.SetUp, own.Cues, own.Faults
	e.MakeEasier, e.MakeHarder, e.File, e.Line = own.MakeEasier, own.MakeHarder, src.file, first
	s.translations[id] = src
}

func (s *shelf) translatePage(src *source, id string) {
	i := slices.IndexFunc(s.Pages, func(p program.Page) bool { return p.ID == id })
	s.Pages[i] = readPage(src, id)
}

func (s *shelf) translateRoadMap(src *source, id string) {
	m, _ := s.RoadMap(id)
	own, steps := program.RoadMap{}, map[string]string{}
	src.readYAML("name: My skill", group(
		must("name", m.Name, text(&own.Name)),
		may("body", "|", prose(&own.Body)),
		must("steps", "{tuck: tuck, straddle: straddle}", stepNames(steps, m)),
	))
	if m.Body != "" && own.Body == "" {
		src.doubt(src.at(""), `"body" is left out and stays in English`, "Add: body: |")
	} else {
		m.Body, m.File = own.Body, src.file
	}
	if own.Name != "" {
		m.Name = own.Name
	}
	for i := range m.Steps {
		if name := steps[m.Steps[i].ID]; name != "" {
			m.Steps[i].Name = name
		}
	}
}

// stepNames reads a name for each step of a road map.
func stepNames(into map[string]string, m *program.RoadMap) read {
	return func(v value) {
		var ids []string
		for _, s := range m.Steps {
			ids = append(ids, s.ID)
		}
		v.open(func(id string, child value) {
			var name string
			if text(&name)(child); !slices.Contains(ids, id) {
				v.say(child.here(), fmt.Sprintf("there is no step %s", quote(id)), offer(id, ids))
			}
			into[id] = name
		}, "{tuck: tuck, straddle: straddle}")
		for _, id := range ids {
			if _, ok := into[id]; !ok {
				v.say(v.here(), fmt.Sprintf("the step %s has no name here", quote(id)), fmt.Sprintf("Add: %s: …", id))
			}
		}
	}
}

// translateProgram says a public program in another language. Nobody's log names its
// bands, so that they may be called anything.
func translateProgram(src *source, p *program.PublicProgram) {
	own := program.PublicProgram{}
	src.readYAML("title: "+p.Title, group(
		must("title", p.Title, text(&own.Title)),
		must("blurb", "Three days a week.", paragraph(&own.Blurb)),
		may("bands", "[narrow, middle]", bandsCalled(&own.Bands, p.Bands)),
	))
	if !src.sound() {
		return
	}
	p.Title, p.Blurb = own.Title, own.Blurb
	for i := range own.Bands {
		p.Bands[i].Name = own.Bands[i].Name
	}
}

// bandsCalled reads a name for each band of a program, in their order.
func bandsCalled(into *[]program.Band, bands []program.Band) read {
	return func(v value) {
		var called []string
		each(&called, text)(v)
		for i, name := range called {
			if slices.Contains(called[:i], name) {
				v.say(v.here(), fmt.Sprintf("two bands are called %s", quote(name)), "Give each a name of its own.")
			}
			*into = append(*into, program.Band{Name: name})
		}
		if v.sound() && len(called) != len(bands) {
			v.say(v.here(), fmt.Sprintf("there are %d names, and the program has %d bands", len(called), len(bands)), "Write one name a band, in the order of the program.")
		}
	}
}
