package site

import (
	"html/template"
	"slices"
	"strings"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// howToPage is how a client's exercises are done, on a page beside the sessions: those of
// the site are out of a worker's reach, and a hall without signal has no other.
const howToPage = "exercises.html"

// howToView is that page. Its parts have the exercises' ids.
type howToView struct {
	frame
	Program link
	Lead    string
	Guides  []guideView
}

// guideView is one exercise of it.
type guideView struct {
	ID, Name               string
	Picture                *pictureView // nil: it is not drawn
	Cues, Faults           []string
	SetUp                  template.HTML
	MakeEasier, MakeHarder template.HTML
}

// exercisesOf are the exercises of sessions, each where it first plays the earliest of its
// parts.
func (b *builder) exercisesOf(all []day) []string {
	var ids []string
	for _, role := range view.SessionOrder {
		for _, d := range all {
			for _, item := range d.session.Items {
				if _, ok := b.Library.Exercise(item.ExerciseID); ok && item.RoleKey == role && !slices.Contains(ids, item.ExerciseID) {
					ids = append(ids, item.ExerciseID)
				}
			}
		}
	}
	return ids
}

func (b *builder) howTo(at place) howToView {
	v := howToView{frame: b.frame(b.words.word("howto.title"), howToPage, at.root), Program: at.program, Lead: b.words.word("howto.lead")}
	ids := newHeadingIDs()
	for _, id := range at.exercises {
		ids.Put([]byte(id))
	}
	for _, id := range at.exercises {
		e, _ := b.Library.Exercise(id)
		v.Guides = append(v.Guides, b.guide(e, at, ids))
	}
	return v
}

func (b *builder) guide(e *program.Exercise, at place, ids headingIDs) guideView {
	section := func(text string) template.HTML {
		return b.html(passage{text: text, file: e.File, top: 4, ids: ids, root: at.root})
	}
	return guideView{
		ID: e.ID, Name: e.Name, Picture: b.picture(e.ID, at.root), Cues: e.Cues, Faults: e.Faults,
		SetUp: section(e.SetUp), MakeEasier: section(e.MakeEasier), MakeHarder: section(e.MakeHarder),
	}
}

// exercise is where a program's pages lead for an exercise; empty: there is none.
func (p place) exercise(lib *program.Library, id string) string {
	if _, ok := lib.Exercise(id); !ok {
		return ""
	}
	if slices.Contains(p.exercises, id) {
		return howToPage + "#" + id
	}
	return p.root + exercisePage(id)
}

// below leads from a folder below the site's to an address of the site.
func below(root, address string) string {
	if root == "" || strings.HasPrefix(address, "#") || strings.Contains(address, ":") {
		return address
	}
	return root + address
}
