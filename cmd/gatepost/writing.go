package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"slices"
	"sync"

	"gatepost/program"
	"gatepost/program/publish/site"
	"gatepost/program/publish/store"
	"gatepost/program/publish/view"
)

// writing is the output being written while it is made. It holds the lock from when there
// is an output folder, and what is made goes to the disk at once; nothing changes there
// before commit.
//
// Where it has sources, what stands as it was made from the same is not made again.
type writing struct {
	job      *job
	part     output
	sources  sources
	names    map[string]string // the sources by the store's names
	standing map[string]said   // what stands, by the client's slug; "": what is no client's
	found    program.Problems

	looks  bool // at what stands, and writes nothing
	mutex  sync.Mutex
	output *os.Root // nil: there is no such folder yet
	run    *store.Run
	made   bool // the folder is of this run's making
	failed error
}

// said is what was said when something was made, to be said again while it stands.
type said struct {
	Page     string           `json:",omitempty"`
	Waits    bool             `json:",omitempty"` // nobody has filled in the assessment
	Withheld []string         `json:",omitempty"`
	Problems program.Problems `json:",omitempty"`
}

func (j *job) writing(part output) *writing { return &writing{job: j, part: part} }

// looking is for who only wants to know what there is to say.
func (j *job) looking(part output) *writing {
	w := &writing{job: j, part: part, looks: true}
	if output, err := j.root.OpenRoot(outputFolder); err == nil { // else nothing stands
		w.output, w.run = output, store.Look(output)
	}
	return w
}

// of takes what was found in reading.
func (w *writing) of(problems program.Problems) *writing {
	w.found = problems
	return w
}

// begin takes the lock, where there is something to lock.
func (w *writing) begin() error {
	w.mutex.Lock()
	defer w.mutex.Unlock()
	if _, err := w.job.root.Stat(outputFolder); w.run != nil || errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return w.open()
}

// ready opens the output, if nobody has yet.
func (w *writing) ready() error {
	if w.run == nil && w.failed == nil {
		w.failed = w.open()
	}
	return w.failed
}

// open makes the output folder, if need be, and takes the lock.
func (w *writing) open() error {
	j := w.job
	err := j.root.Mkdir(outputFolder, 0o755)
	w.made = err == nil
	if err != nil && !errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("nothing was written: cannot make the folder %s: %w", j.shown(outputFolder), cause(err))
	}
	if w.output, err = j.root.OpenRoot(outputFolder); err != nil {
		return fmt.Errorf("nothing was written: cannot open the folder %s: %w", j.shown(outputFolder), cause(err))
	}
	if w.run, err = store.Begin(w.output); errors.Is(err, store.ErrUnfinished) {
		return err
	} else if err != nil {
		return fmt.Errorf("nothing was written:\n%w", err)
	}
	return nil
}

// close gives up what was not committed.
func (w *writing) close() {
	if w.run != nil {
		w.run.Close()
	}
	if w.output != nil {
		w.output.Close()
	}
	if w.made { // gone again, if nothing came of it
		_ = w.job.root.Remove(outputFolder)
	}
}

// look finds what stands as it would be made.
func (w *writing) look() {
	w.sources, w.standing = w.job.sources(w.part), map[string]said{}
	w.names = w.sources.named(w.part)
	if w.run == nil {
		return
	}
	for name, note := range w.run.Standing(w.names) {
		var s said
		if json.Unmarshal([]byte(note), &s) == nil {
			w.standing[name[len(w.part.name()):]] = s
		}
	}
}

// stands reports whether something need not be made.
func (w *writing) stands(slug string) bool {
	_, ok := w.standing[slug]
	return ok
}

// whole reports whether nothing need be made.
func (w *writing) whole() bool {
	return w.stands("") && !slices.ContainsFunc(w.sources.entries, func(name string) bool { return !w.stands(name) })
}

// keep takes over what stands, and gives it as clients of whom nothing need be made.
func (w *writing) keep() (clients []*client, problems program.Problems) {
	for _, slug := range slices.Sorted(maps.Keys(w.standing)) {
		s := w.standing[slug]
		if !w.looks {
			w.run.Keep(w.part.name() + slug)
		}
		problems = append(problems, s.Problems...)
		if slug != "" && !s.Waits {
			clients = append(clients, &client{slug: slug, page: s.Page, withheld: s.Withheld})
		}
	}
	return clients, problems
}

// take writes what was made of a client, unless there are errors.
func (w *writing) take(c *client) {
	problems := append(ofClient(w.found, c.slug), c.problems...)
	if !problems.Stop() {
		w.add(c.slug, said{c.page, c.waits, c.withheld, problems}, c.files)
	}
	c.files = nil
}

// takeShared writes what was made that is no client's, and lets go of it: while hundreds of
// clients are made, it would be most of what is held.
func (w *writing) takeShared(m *made) {
	if w.stands("") {
		return
	}
	w.add("", said{Problems: append(about(w.found, ""), m.shared...)}, m.pages)
	m.pages = nil
	for i := range m.publics { // the site has the same ones
		m.publics[i] = site.Public{View: &view.Public{ID: m.publics[i].View.ID}}
	}
}

// add writes what was made together.
func (w *writing) add(slug string, s said, files []store.File) {
	if w.looks {
		return
	}
	w.mutex.Lock()
	failed := w.ready()
	w.mutex.Unlock()
	if failed != nil {
		return
	}
	note, _ := json.Marshal(s) // texts: nothing can fail
	name := w.part.name() + slug
	w.run.Add(store.Batch{Name: name, Source: w.names[name], Note: string(note)}, files)
}

// forgetEdited forgets what was made while somebody changed what it is made from.
func (w *writing) forgetEdited() {
	if w.standing == nil || w.whole() {
		return
	}
	now := w.job.sources(w.part)
	for name, source := range now.named(w.part) {
		if source != w.names[name] {
			w.run.Forget(name)
		}
	}
}

// commit puts all that was made in its place, and says what changed.
func (w *writing) commit(scope store.Scope) error {
	if err := w.ready(); err != nil {
		return err
	}
	j := w.job
	w.forgetEdited()
	part := ""
	if w.standing != nil {
		part = w.part.name()
	}
	result, err := w.run.Commit(scope, part)
	switch {
	case errors.Is(err, store.ErrUnfinished):
		return err
	case err != nil:
		return fmt.Errorf("nothing was written:\n%w", err)
	}
	for _, path := range result.Left {
		fmt.Fprintf(j.err, "left where it is, for somebody changed it: %s\n", j.shown(outputFolder, path))
	}
	j.tell(len(result.Written), len(result.Unchanged), len(result.Removed))
	return nil
}
