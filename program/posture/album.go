package posture

import (
	"slices"
	"sync"

	"gatepost/program"
	"gatepost/program/ladder"
	"gatepost/program/mechanics"
)

// The body that pages show: the mean of the published average bodies (de Leva 1996,
// Table 4), as in package ladder.
const (
	shownMass   = 67.5
	shownHeight = 1.738
)

// Album holds the pictures of a library's exercises. Each is drawn when it is first asked
// for, and once; many may ask at a time. The body is nobody's.
type Album struct {
	lib         *program.Library
	pages, flat map[string]page // by exercise; flat of who has no handles
}

type page func() ([]program.Picture, program.Problems)

// NewAlbum is one in which nothing is drawn yet.
func NewAlbum(lib *program.Library) *Album {
	a := &Album{lib, map[string]page{}, map[string]page{}}
	b, _ := mechanics.NewBody(mechanics.Unspecified, shownMass, shownHeight, 0, 0)
	of := func(e *program.Exercise, figures []program.Figure, stances func() map[string]program.Stance) page {
		return sync.OnceValues(func() ([]program.Picture, program.Problems) {
			if len(figures) == 0 {
				return onRoadMap(lib, e.ID, stances()), nil
			}
			return placed(&b, figures)
		})
	}
	stances := sync.OnceValue(func() map[string]program.Stance { return stancesOf(lib, ladder.Illustrations) })
	flat := sync.OnceValue(func() map[string]program.Stance { return stancesOf(lib, ladder.OnFlatHands) })
	for i := range lib.Exercises {
		e := &lib.Exercises[i]
		a.pages[e.ID] = of(e, e.Figures, stances)
		if a.flat[e.ID] = a.pages[e.ID]; len(e.Figures) == 0 || onHandles(e.Figures) {
			a.flat[e.ID] = of(e, withoutHandles(e.Figures), flat)
		}
	}
	return a
}

func onHandles(figures []program.Figure) bool {
	return slices.ContainsFunc(figures, func(f program.Figure) bool {
		return slices.ContainsFunc(f.Things, func(t program.Thing) bool { return t.Kind == program.ThingHandles })
	})
}

// withoutHandles has flat hands on the floor where a figure has them on handles.
func withoutHandles(figures []program.Figure) []program.Figure {
	all := slices.Clone(figures)
	for i := range all {
		all[i].Things = slices.Clone(all[i].Things)
		for j := range all[i].Things {
			if t := &all[i].Things[j]; t.Kind == program.ThingHandles {
				t.Kind = program.ThingFloor
			}
		}
	}
	return all
}

// Of are the pictures of an exercise: as its page says, or else as the road map draws the
// step that it holds. One is a hold; two are start and end; none: it is not drawn.
func (a *Album) Of(exercise string) []program.Picture { return shown(a.pages[exercise]) }

// Flat are the same for who has no handles.
func (a *Album) Flat(exercise string) []program.Picture { return shown(a.flat[exercise]) }

func shown(page page) []program.Picture {
	if page == nil {
		return nil
	}
	pictures, _ := page()
	return pictures
}

// Problems are what in any page's drawing is not as the page says: warnings, with where
// it is written.
func (a *Album) Problems() program.Problems { return a.problemsOf(a.pages) }

// FlatProblems are those with flat hands where the page has handles.
func (a *Album) FlatProblems() program.Problems { return a.problemsOf(a.flat) }

func (a *Album) problemsOf(pages map[string]page) (all program.Problems) {
	for i := range a.lib.Exercises {
		_, problems := pages[a.lib.Exercises[i].ID]()
		all = append(all, problems...)
	}
	return all
}

func placed(b *mechanics.Body, figures []program.Figure) (pictures []program.Picture, problems program.Problems) {
	all, problems := Place(b, figures)
	for _, p := range all {
		pictures = append(pictures, program.Picture{Placed: p})
	}
	return pictures, problems
}

// stancesOf are those of all road maps, by their names.
func stancesOf(lib *program.Library, of func(*program.RoadMap) []program.Illustration) map[string]program.Stance {
	stances := map[string]program.Stance{}
	for i := range lib.RoadMaps {
		for _, s := range of(&lib.RoadMaps[i]) {
			stances[s.Name] = s.Stance
		}
	}
	return stances
}

// onRoadMap are the stances of the step or floor rung that an exercise holds; of a press
// also its lowest point, of a lift its middle.
func onRoadMap(lib *program.Library, exercise string, stances map[string]program.Stance) []program.Picture {
	for i := range lib.RoadMaps {
		m := &lib.RoadMaps[i]
		names := []string{m.ID + "/" + exercise}
		for _, s := range m.Steps {
			if s.Exercise == exercise {
				names = append(names, m.ID+"/"+s.ID, m.ID+"/"+s.ID+"/low", m.ID+"/"+s.ID+"/middle")
				break
			}
		}
		var pictures []program.Picture
		for _, name := range names {
			s := stances[name]
			if p := (program.Picture{Stance: s}); p.Drawn() && (len(pictures) == 0 || pictures[len(pictures)-1].Stance != s) {
				pictures = append(pictures, p)
			}
		}
		if pictures != nil {
			return pictures
		}
	}
	return nil
}
