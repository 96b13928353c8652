package main

import (
	"encoding/json"
	"io/fs"
	"path"
	"reflect"
	"slices"

	"gatepost/program"
	"gatepost/program/publish/store"
)

// unkept warns of clients of whose block, once it begins in a week, something has changed
// what was printed while no plan was kept: what hangs is not known then, and no review can
// name the cards to print.
func (j *job) unkept(m *made, week program.Date) (all program.Problems) {
	for _, c := range m.clients {
		if !c.kept && j.differs(c, week) {
			all = append(all, program.Problem{Place: program.Place{File: j.wished(c.slug)}, Warning: true,
				Message: terminal(j.words(), "unkept"), Advice: terminal(j.words(), "unkept_do", "client", c.slug)})
		}
	}
	return all
}

// differs reports whether a block that has begun by a week is made otherwise than it was
// printed.
func (j *job) differs(c *client, week program.Date) bool {
	name := printFolder(c.slug) + "/program.json"
	i := slices.IndexFunc(c.files, func(f store.File) bool { return f.Path == name })
	if i < 0 {
		return false
	}
	before, _ := fs.ReadFile(j.root.FS(), path.Join(outputFolder, name)) // none: nothing was printed
	hangs, made := weeksOf(before), weeksOf(c.files[i].Bytes)
	return len(hangs) > 0 && hangs[0].Start <= week.String() && !reflect.DeepEqual(hangs, made)
}

// printedWeek is a week as other software reads it, as far as it tells weeks apart.
type printedWeek struct {
	Start    string
	Sessions any
}

func weeksOf(b []byte) []printedWeek {
	var p struct{ Weeks []printedWeek }
	_ = json.Unmarshal(b, &p) // what is none of ours has no weeks
	return p.Weeks
}

// wished is the file that most likely was changed: the coach's wishes, else the assessment.
func (j *job) wished(slug string) string {
	name := path.Join(clientsFolder, slug, coachFile)
	if _, err := fs.Stat(j.root.FS(), name); err == nil {
		return name
	}
	return path.Join(clientsFolder, slug, assessmentFile)
}
