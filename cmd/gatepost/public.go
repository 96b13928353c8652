package main

import (
	"slices"
	"strings"

	"gatepost/program"
	"gatepost/program/planner"
	"gatepost/program/posture"
	"gatepost/program/publish/paper"
	"gatepost/program/publish/site"
	"gatepost/program/publish/view"
)

// documents are what a reader downloads at a level of a public program.
var documents = []struct {
	name string // its words are "document.<name>", without the ending
	make func(*view.View) ([]byte, program.Problems)
}{
	{"wall-chart.pdf", paper.WallChart},
	{"one-page.pdf", paper.OnePage},
	{"cards.pdf", func(v *view.View) ([]byte, program.Problems) { return paper.Cards(v, false) }},
}

// publics plans the public programs and prints what there is to download.
func (j *job) publics(studio *program.Studio, album *posture.Album) ([]site.Public, program.Problems) {
	views := make([]*view.Public, len(studio.Public))
	found := make([]program.Problems, len(studio.Public))
	j.sideBySide(len(views), "programs", func(i int) { views[i], found[i] = planPublic(studio, album, &studio.Public[i]) })
	var all []site.Public
	for _, v := range views {
		if v != nil {
			all = append(all, site.Public{View: v, Documents: make([][]site.Document, len(v.Levels))})
		}
	}
	return all, append(slices.Concat(found...), j.printLevels(all)...)
}

// planPublic plans a program for each level; nil where a problem stops it.
func planPublic(studio *program.Studio, album *posture.Album, from *program.PublicProgram) (*view.Public, program.Problems) {
	levels, problems := planner.Levels(&studio.Library, from)
	if problems.Stop() {
		return nil, problems
	}
	v, found := view.NewPublic(studio.Coach, &studio.Library, from, levels)
	for i := range v.Levels {
		v.Levels[i].Show(func(program.Date) (func(string) []program.Picture, bool) { return drawnWith(album, from.Kit), false })
	}
	return v, append(problems, found...)
}

// printLevels makes the documents of every level.
func (j *job) printLevels(all []site.Public) program.Problems {
	type level struct{ public, number int }
	var levels []level
	for i := range all {
		for n := range all[i].View.Levels {
			levels = append(levels, level{i, n})
		}
	}
	found := make([]program.Problems, len(levels))
	j.sideBySide(len(levels), "levels", func(i int) {
		p := &all[levels[i].public]
		p.Documents[levels[i].number], found[i] = printFor(p.View.Levels[levels[i].number].View, "content/programs/"+p.View.ID+".yaml")
	})
	return slices.Concat(found...)
}

// printFor makes the documents of a level, or of a client's page. What paper takes for a
// client's file is the one that they come from.
func printFor(v *view.View, file string) (made []site.Document, problems program.Problems) {
	for _, d := range documents {
		b, found := d.make(v)
		for i := range found {
			if strings.HasPrefix(found[i].File, clientsFolder) {
				found[i].File = file
			}
		}
		problems = append(problems, found...)
		if len(b) > 0 {
			made = append(made, site.Document{Name: d.name, Bytes: b})
		}
	}
	return made, problems
}
