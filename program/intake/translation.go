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
//
// Only the studio's own language is read. A translation that came with the
// program leaves a coach's own exercise, page or road map as it stands. What is
// built in and has no translation is named, and stays in English.

// original is the language the library is written in.
const original = "en"

func (s *shelf) translate(f *folder, lang string) {
	if lang == original || s.Words == nil { // without words there is nothing to read on
		return
	}
	overlay := func(kind, extension, noun string, originals map[string]*source, merge func(*source, string)) {
		t := translation{shelf: s, dir: "content/" + lang + "/" + kind, extension: extension, noun: noun, originals: originals, merge: merge}
		t.read(f)
		t.sayMissing()
	}
	overlay("exercises", ".md", "exercise", s.exerciseFiles, s.translateExercise)
	overlay("pages", ".md", "page", s.pageFiles, s.translatePage)
	overlay("roadmaps", ".yaml", "road map", s.roadMapFiles, s.translateRoadMap)
}

// translation is the translated files of one kind.
type translation struct {
	*shelf
	dir, extension, noun string
	originals            map[string]*source // by id
	merge                func(src *source, id string)
	there                map[string]bool // ids that have a file
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
			t.keep(l.source)
			t.merge(l.source, l.id)
		case !l.source.builtIn && !t.broken[l.id]:
			t.keep(l.source)
			l.source.say(program.Place{File: l.source.file}, fmt.Sprintf("there is no %s %s to translate", t.noun, quote(l.id)),
				offer(l.id, slices.Sorted(maps.Keys(t.originals))))
		}
	}
}

// sayMissing names what is built in and has no translation.
func (t *translation) sayMissing() {
	for _, id := range slices.Sorted(maps.Keys(t.originals)) {
		if from := t.originals[id]; from.builtIn && !t.there[id] {
			at := from.at("name")
			if t.noun == "page" {
				at = from.at("title")
			}
			from.doubt(at, fmt.Sprintf("this %s has no translation and stays in English", t.noun), fmt.Sprintf("Write %s/%s%s", t.dir, id, t.extension))
		}
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
