package site

import (
	"cmp"
	"html/template"
	"io/fs"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"gatepost/program"
	"gatepost/program/publish/view"
)

// Source is what a website is made from.
type Source struct {
	Coach      program.Coach
	Library    *program.Library
	Templates  []fs.FS             // later ones lie over earlier ones: the built-in look, then the coach's
	References []Reference         // bodies whose step loads the road maps show; none: no shares
	Notes      []program.CoachNote // the newest first
	Clients    []*view.View        // only those who share to the site are published
	Publics    []Public            // public programs
	// Illustrations are the stances that pages show: of each step, and of what
	// Markdown names by ![title](figure:name).
	Illustrations []program.Illustration
	// Pictures are those of an exercise: of a hold one, else its start and its end; nil: no
	// exercise is drawn.
	Pictures func(exercise string) []program.Picture
}

// Reference is a body of the published tables and what each step asks of it.
type Reference struct {
	RoadMap string // id
	Name    string // its words are "reference.<name>": "female", "male"
	Steps   []program.StepLoad
}

// File is one file of the site. Path is below the output folder, with slashes:
// "site/index.html".
type File struct {
	Path  string
	Bytes []byte
}

// Site is a site being made: what its pages share is there, the pages are made
// when they are asked for. Clients may be asked for side by side.
type Site struct {
	Source
	words     *words
	addresses addresses
	look      look
	poses     map[string]*program.Illustration // by name
	figures   map[figureKey]template.HTML
	pictures  map[string]func() pictureFiles // by exercise
	problems  program.Problems               // of what is shared
	taken     sync.Map                       // address of a client's pages to the client's slug
}

// New begins a site. Clients of the source mean nothing to it.
func New(s Source) *Site {
	site := &Site{Source: s, words: newWords(s.Library.Words, s.Coach.Lang), addresses: newAddresses(s.Library, s.Coach.Lang)}
	site.addresses.addNotes(s.Notes, s.Coach.Lang)
	site.addresses.addPublics(s.Publics, s.Coach.Lang)
	site.look, site.problems = readLook(s.Templates, site.words.word)
	b := builder{Site: site}
	b.draw()
	site.gather()
	site.problems = append(site.problems, b.problems...)
	return site
}

// Client makes the pages of one shared program; none where it is not shared or
// waits for clearance: even the waiting is private.
// Documents are what can be downloaded there, made from Average.
func (s *Site) Client(v *view.View, documents ...Document) ([]File, program.Problems) {
	b := builder{Site: s}
	switch {
	case !Shows(v):
	case s.claim(v):
		b.client(s.Average(v), documents)
	default:
		b.report(unclaimed(v))
	}
	return b.done()
}

// Shows reports whether a client has pages.
func Shows(v *view.View) bool { return v.Public && len(v.Withheld) == 0 }

// Average is a client's view as everybody may print it who has the page's address: an
// average body does it, as everywhere on the site.
func (s *Site) Average(v *view.View) *view.View {
	return v.Shared(func(id string) program.Stance {
		if pose, ok := s.poses[v.SkillID+"/"+id]; ok {
			return pose.Stance
		}
		return program.Stance{}
	})
}

// claim says whether a client's address is one, and no other client's.
func (s *Site) claim(v *view.View) bool {
	if !Shows(v) || !safePage.MatchString(v.Page) {
		return false
	}
	owner, _ := s.taken.LoadOrStore(v.Page, v.Slug)
	return owner == v.Slug
}

// Public makes all pages that are not a client's. Asked for last, its problems
// hold the words that any page lacked.
func (s *Site) Public() ([]File, program.Problems) {
	b := builder{Site: s}
	b.home()
	b.exercises()
	b.roadMaps()
	b.texts()
	b.notes()
	for i := range s.Library.RoadMaps {
		b.roadMap(&s.Library.RoadMaps[i])
	}
	b.publics()
	b.render()
	b.covers()
	b.machines()
	b.writePictures()
	b.files = append(b.files, b.look.assets...)
	b.problems = append(b.problems, s.problems...)
	files, problems := b.done()
	problems = append(problems, s.words.problems()...)
	problems.Sort()
	return files, problems
}

// Lacking are the words that the pages lacked that were made so far, for who does not ask
// for the public ones.
func (s *Site) Lacking() program.Problems { return s.words.problems() }

// Build makes the whole site, sorted by path. Where the problems stop the work
// the files are not complete and must not be published.
func Build(s Source) ([]File, program.Problems) {
	site := New(s)
	files := make([][]File, len(s.Clients))
	found := make([]program.Problems, len(s.Clients))
	for _, v := range s.Clients {
		site.claim(v) // in order, so that the second is always the one refused
	}
	sideBySide(len(s.Clients), func(i int) { files[i], found[i] = site.Client(s.Clients[i]) })
	all, problems := site.Public()
	for i := range files {
		all = append(all, files[i]...)
		for _, p := range found[i] {
			if !slices.Contains(problems, p) { // one broken template, many pages
				problems = append(problems, p)
			}
		}
	}
	slices.SortFunc(all, func(a, b File) int { return cmp.Compare(a.Path, b.Path) })
	problems.Sort()
	return all, problems
}

// builder gathers pages, files and problems while a site is made.
type builder struct {
	*Site
	pages    []func() // pages still to be made, each on its own
	mutex    sync.Mutex
	files    []File           // behind the mutex
	problems program.Problems // behind the mutex
}

// done gives files with their whole path.
func (b *builder) done() ([]File, program.Problems) {
	for i := range b.files {
		b.files[i].Path = "site/" + b.files[i].Path
	}
	return b.files, b.problems
}

// later puts off a page, or a few that belong together, to be made beside others.
func (b *builder) later(page func()) { b.pages = append(b.pages, page) }

// render makes all pages that were put off, on all processors.
func (b *builder) render() {
	sideBySide(len(b.pages), func(i int) { b.pages[i]() })
}

// write renders one page to a path below the site's folder.
func (b *builder) write(path, kind string, page any) {
	text, problem := b.look.render(kind, page)
	if problem != nil {
		b.report(*problem)
	} else {
		b.add(path, text)
	}
}

func (b *builder) add(path string, text []byte) {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	b.files = append(b.files, File{Path: path, Bytes: text})
}

// report keeps each problem once: one broken template, many pages.
func (b *builder) report(problems ...program.Problem) {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	for _, p := range problems {
		if !slices.Contains(b.problems, p) {
			b.problems = append(b.problems, p)
		}
	}
}

// sideBySide does n pieces of work on all processors.
func sideBySide(n int, work func(i int)) {
	var next atomic.Int64
	var wait sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		wait.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				work(i)
			}
		})
	}
	wait.Wait()
}
