package site

import (
	"cmp"
	"html/template"
	"slices"
	"strings"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// exerciseView is the page of one exercise.
type exerciseView struct {
	frame
	Role       string
	Trains     []link // into the index by purpose
	Dose       string
	Kit        string
	Grip       string
	Loads      string
	Straight   bool // straight arms under load
	EachSide   bool
	SetUp      template.HTML
	Cues       []string
	Faults     []string
	MakeEasier template.HTML
	MakeHarder template.HTML
	Easier     []link
	Harder     []link
	Used       []link        // steps that hold it or drill it
	Figure     template.HTML // of a step, with its marks
	Picture    *pictureView  // of what is no step
}

// indexView lists the exercises by what they are for.
type indexView struct {
	frame
	Groups []group
}

// group is the exercises of one purpose, the one taken first on top.
type group struct {
	ID, Name  string
	Exercises []entry
}

// entry is an exercise in a list.
type entry struct {
	link
	Kit     string
	Picture *pictureView
}

// exercises writes the index and a page for each exercise.
func (b *builder) exercises() {
	index := indexView{frame: b.frame(b.words.word("nav.exercises"), exercisesPage, "")}
	for _, purpose := range program.Purposes {
		if g := b.group(purpose); len(g.Exercises) > 0 {
			index.Groups = append(index.Groups, g)
		}
	}
	b.write(exercisesPage, "exercises.html", index)
	for i := range b.Library.Exercises {
		e := &b.Library.Exercises[i]
		b.later(func() { b.write(exercisePage(e.ID), "exercise.html", b.exercise(e)) })
	}
}

func (b *builder) group(purpose program.Purpose) group {
	g := group{ID: fragment(purpose), Name: b.words.word("purpose." + string(purpose))}
	var those []*program.Exercise
	for i := range b.Library.Exercises {
		if e := &b.Library.Exercises[i]; slices.Contains(e.Trains, purpose) {
			those = append(those, e)
		}
	}
	slices.SortStableFunc(those, func(x, y *program.Exercise) int {
		return cmp.Or(y.Rank-x.Rank, b.stage(x.ID)-b.stage(y.ID))
	})
	for _, e := range those {
		g.Exercises = append(g.Exercises, entry{link{Text: e.Name, Href: exercisePage(e.ID)}, sentence(b.kit(e.Kit)), b.thumbnail(e.ID)})
	}
	return g
}

func (b *builder) exercise(e *program.Exercise) exerciseView {
	v := exerciseView{
		frame:    b.frame(e.Name, exercisePage(e.ID), ""),
		Role:     b.words.word("role." + string(e.Role)),
		Dose:     b.dose(e),
		Kit:      sentence(b.kit(e.Kit)),
		Grip:     b.words.word("grip." + string(cmp.Or(e.Grip, program.GripNone))),
		Loads:    b.joints(e.Loads),
		Straight: e.StraightArm,
		EachSide: e.EachSide,
		Cues:     e.Cues,
		Faults:   e.Faults,
		Easier:   b.exerciseLinks(e.Easier),
		Harder:   b.exerciseLinks(e.Harder),
		Used:     b.used(e.ID),
		Figure:   b.figureOf(e.ID),
	}
	if p := b.picture(e.ID, ""); p != nil && (p.End != "" || len(e.Figures) > 0 || v.Figure == "") {
		v.Figure, v.Picture = "", p
	}
	v.Description = summary(e.SetUp)
	b.way(&v.frame, link{Text: b.words.word("nav.exercises"), Href: exercisesPage})
	ids := newHeadingIDs()
	section := func(text string) template.HTML {
		return b.html(passage{text: text, file: e.File, top: 3, ids: ids})
	}
	v.SetUp, v.MakeEasier, v.MakeHarder = section(e.SetUp), section(e.MakeEasier), section(e.MakeHarder)
	for _, purpose := range e.Trains {
		v.Trains = append(v.Trains, link{Text: b.words.word("purpose." + string(purpose)), Href: exercisesPage + "#" + fragment(purpose)})
	}
	return v
}

// stage is where along the road maps an exercise holds a step; those that hold
// none come first.
func (b *builder) stage(exercise string) int {
	n := 0
	for _, m := range b.Library.RoadMaps {
		for _, s := range m.Steps {
			if n++; s.Exercise == exercise {
				return n
			}
		}
	}
	return 0
}

// exerciseLinks leads to exercises; one that is not in the library has no page,
// and intake has said so.
func (b *builder) exerciseLinks(ids []string) []link {
	var links []link
	for _, id := range ids {
		if e, ok := b.Library.Exercise(id); ok {
			links = append(links, link{Text: e.Name, Href: exercisePage(id)})
		}
	}
	return links
}

// used leads to the steps of the road maps that hold or drill an exercise, and to
// the public programs that have it.
func (b *builder) used(id string) []link {
	var links []link
	for _, m := range b.Library.RoadMaps {
		for _, s := range m.Steps {
			if s.Exercise == id || slices.Contains(s.Drills, id) {
				links = append(links, link{Text: b.words.fill("site.step_of", "roadmap", m.Name, "step", s.Name),
					Href: roadMapPage(m.ID) + "#" + s.ID})
			}
		}
	}
	for _, p := range b.Publics {
		if trains(p.View, id) {
			links = append(links, link{Text: p.View.Title, Href: publicPage(p.View.ID)})
		}
	}
	return links
}

// trains says whether any session of a public program has an exercise.
func trains(p *view.Public, id string) bool {
	return slices.ContainsFunc(p.Levels, func(l view.Level) bool {
		return slices.ContainsFunc(l.Weeks, func(w view.Week) bool {
			return slices.ContainsFunc(w.Sessions, func(s view.Session) bool {
				return slices.ContainsFunc(s.Items, func(i view.Item) bool { return i.ExerciseID == id })
			})
		})
	})
}

// kit lists what is needed, each with what would do instead.
func (b *builder) kit(kit [][]string) string {
	var needs []string
	for _, any := range kit {
		var names []string
		for _, thing := range any {
			names = append(names, cmp.Or(b.words.table["kit."+thing], thing)) // a coach's own kit is in the coach's own words
		}
		needs = append(needs, strings.Join(names, b.words.word("exercise.any_of")))
	}
	if len(needs) == 0 {
		return b.words.word("exercise.no_kit")
	}
	return strings.Join(needs, b.words.word("site.comma"))
}

// fragment is a purpose as an id in the index.
func fragment(p program.Purpose) string { return strings.ReplaceAll(string(p), " ", "-") }
