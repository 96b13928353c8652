package main

import (
	"encoding/json"
	"io/fs"
	"path"
	"reflect"
	"regexp"
	"slices"

	"gatepost/program"
	"gatepost/program/publish/store"
)

// unkept warns of clients of whose block, once it begins in a week, something has changed
// what was printed while no plan was kept: what hangs is not known then, and no review can
// name the cards to print.
func (j *job) unkept(m *made) (all program.Problems) {
	for _, c := range m.clients {
		if c.unkept {
			all = append(all, program.Problem{Place: program.Place{File: j.wished(c.slug)}, Warning: true,
				Message: terminal(j.words(), "unkept"), Advice: terminal(j.words(), "unkept_do", "client", c.slug)})
		}
	}
	return all
}

// differs reports whether a block that has begun by a week, and of which no plan was kept, is
// made otherwise than it was printed.
func (j *job) differs(c *client, week program.Date) bool {
	if c.kept {
		return false
	}
	before, after := j.printed(c, "program.json")
	hangs := weeksOf(before)
	if len(hangs) == 0 || hangs[0].Start > week.String() {
		return false
	}
	made := weeksOf(after)
	before, after = j.printed(c, "calendar.ics")
	return made != nil && (!reflect.DeepEqual(hangs, made) || !reflect.DeepEqual(clock.FindAll(before, -1), clock.FindAll(after, -1)))
}

// clock is when a calendar's days begin.
var clock = regexp.MustCompile(`\nDTSTART:\d{8}T\d{6}`)

// printed is a file of a client as it was printed, none where it was not, and as it is
// made now.
func (j *job) printed(c *client, name string) (before, after []byte) {
	name = path.Join(printFolder(c.slug), name)
	before, _ = fs.ReadFile(j.root.FS(), path.Join(outputFolder, name))
	if i := slices.IndexFunc(c.files, func(f store.File) bool { return f.Path == name }); i >= 0 {
		after = c.files[i].Bytes
	}
	return before, after
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
