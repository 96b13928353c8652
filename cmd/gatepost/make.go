package main

import (
	"io/fs"
	"path"
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
	"gatepost/program/planner"
	"gatepost/program/posture"
	"gatepost/program/publish/site"
	"gatepost/program/publish/store"
	"gatepost/program/publish/view"
)

// output is a part of what can be made, and how.
type output struct {
	site, print, bothSides bool
	week                   program.Date // Monday of the week that messages are about
}

var (
	wholeOutput = output{site: true, print: true}
	siteOutput  = output{site: true}
	printOutput = output{print: true}
)

// scope is where the part lies below the output folder; of the paper, one
// client's only where one is named.
func (o output) scope(client string) store.Scope {
	var scope store.Scope
	if o.site {
		scope = append(scope, "site/")
	}
	switch {
	case o.print && client != "":
		scope = append(scope, printFolder(client)+"/")
	case o.print:
		scope = append(append(scope, "print/"), classSheets()...)
	}
	return scope
}

func printFolder(client string) string { return path.Join("print", client) }

// made is everything made of a studio.
type made struct {
	album    *posture.Album
	clients  []*client // in the studio's order
	publics  []site.Public
	pages    []store.File     // of the site, that are no client's
	shared   program.Problems // of all that is no client's
	problems program.Problems
	sound    bool        // nothing that every client needs has an error
	left     []string    // clients with errors
	alone    store.Scope // their output, which stays as it is
}

// client is one client's program and what is printed of it.
type client struct {
	slug     string
	page     string   // address of the pages; empty: there are none
	waits    bool     // nobody has filled in the assessment
	withheld []string // why there is no program yet
	kept     bool     // a plan was kept
	unkept   bool     // no plan was, and what hangs is not what is made
	program  program.Program
	view     *view.View // nil where a problem stopped the planning
	read     program.Review
	review   *view.Review // the same in words; nil where there is no log
	changed  []program.Change
	printNow []program.Date // cards of the coming week
	files    []store.File
	problems program.Problems
}

// forget lets go of all but the files: of hundreds of clients, all at once would
// fill the memory.
func (c *client) forget() {
	c.program, c.view, c.read, c.review, c.changed, c.printNow = program.Program{}, nil, program.Review{}, nil, nil, nil
}

// makeAll plans every client of a studio, or the one named, and makes a part of the output.
// What is made goes to the writing at once.
func (j *job) makeAll(studio *program.Studio, part output, only string, w *writing) made {
	chosen := pick(studio.Clients, only)
	m := made{album: posture.NewAlbum(&studio.Library), clients: make([]*client, len(chosen))}
	with := making{studio: studio, part: part, album: m.album, sheet: testSheets(studio, m.album)}
	if part.site {
		with.web = j.website(&m, studio, j.templates(), w.stands(""))
	}
	w.takeShared(&m)
	j.sideBySide(len(chosen), "clients", func(i int) {
		m.clients[i] = with.client(chosen[i])
		m.clients[i].unkept = part.print && j.differs(m.clients[i], part.week)
		m.clients[i].forget()
		w.take(m.clients[i])
		forgetLog(chosen[i])
	})
	if part.print {
		for _, slug := range studio.Waiting {
			if only == "" || slug == only {
				c := with.waiting(slug)
				m.problems = append(m.problems, c.problems...)
				w.take(c)
			}
		}
	}
	for _, c := range m.clients {
		m.problems = append(m.problems, c.problems...)
	}
	if part.site { // the clients' pages may lack words as well
		m.shared = append(m.shared, with.web.Lacking()...)
	}
	return m
}

// draw draws every exercise, which a website shows; what of one is not as its page says
// is a warning.
func (j *job) draw(m *made, lib *program.Library) {
	j.sideBySide(len(lib.Exercises), "drawings", func(i int) { m.album.Of(lib.Exercises[i].ID) })
	m.shared = append(m.shared, m.album.Problems()...)
}

// website begins the site and makes all that is no client's, unless it stands: the public
// programs are planned and printed first, where that is not done.
func (j *job) website(m *made, studio *program.Studio, look []fs.FS, stands bool) *site.Site {
	if stands {
		m.publics = named(studio.Public)
	} else {
		j.draw(m, &studio.Library)
	}
	if m.publics == nil {
		publics, problems := j.publics(studio, m.album)
		m.publics, m.shared = publics, append(m.shared, problems...)
	}
	web := site.New(site.Source{
		Coach: studio.Coach, Library: &studio.Library, Templates: look,
		References: references(&studio.Library), Illustrations: illustrations(&studio.Library), Pictures: m.album.Of,
		Notes: studio.Notes, Publics: m.publics,
	})
	if !stands && m.pages == nil {
		pages, problems := web.Public()
		m.pages, m.shared = filesOf(pages), append(m.shared, problems...)
	}
	return web
}

// named are public programs as far as clients' pages know them: that they are there.
func named(programs []program.PublicProgram) []site.Public {
	var all []site.Public
	for i := range programs {
		all = append(all, site.Public{View: &view.Public{ID: programs[i].ID}})
	}
	return all
}

func filesOf(pages []site.File) []store.File {
	files := make([]store.File, len(pages))
	for i, page := range pages {
		files[i] = store.File(page)
	}
	return files
}

// templates are the built-in look and, over it, the coach's.
func (j *job) templates() []fs.FS {
	var layers []fs.FS
	for _, from := range []fs.FS{j.builtIn, j.root.FS()} {
		if layer, err := fs.Sub(from, templateFolder); err == nil {
			layers = append(layers, layer)
		}
	}
	return layers
}

// references are what each road map asks of the two bodies of the published
// tables.
func references(lib *program.Library) []site.Reference {
	var all []site.Reference
	for i := range lib.RoadMaps {
		road := &lib.RoadMaps[i]
		for _, sex := range []program.Sex{program.SexFemale, program.SexMale} {
			all = append(all, site.Reference{RoadMap: road.ID, Name: string(sex), Steps: ladder.Reference(road, sex)})
		}
	}
	return all
}

// illustrations are the stances that pages about the road maps can show.
func illustrations(lib *program.Library) []program.Illustration {
	var all []program.Illustration
	for i := range lib.RoadMaps {
		all = append(all, ladder.Illustrations(&lib.RoadMaps[i])...)
	}
	return all
}

// making is what clients are made with.
type making struct {
	studio *program.Studio
	part   output
	album  *posture.Album // nil: cards show no exercises
	web    *site.Site     // nil: no pages
	sheet  func(skill string) madeSheet
}

// client makes one client's program, the one that hangs on the wall, prints it and makes
// its pages.
func (m *making) client(a *program.Assessment) *client {
	c := &client{slug: a.Slug, page: a.Page, kept: len(a.Plans) > 0}
	wall, problems := planner.Wall(&m.studio.Library, a)
	c.program, c.changed, c.problems = wall.Program, wall.Changed, problems
	c.printNow = c.program.ToPrint(c.changed, a.Plans, c.program.Version-1)
	if c.problems.Stop() {
		return c
	}
	v, problems := view.New(m.studio.Coach, &m.studio.Library, &c.program, a.Plans...)
	v.Places = a.Places
	if m.album != nil {
		v.Show(m.pictures(a))
	}
	c.view, c.withheld, c.problems = v, v.Withheld, append(append(c.problems, problems...), tells(m.studio.Library.Words, a)...)
	c.read = wall.Review
	if wall.Review.Last != 0 {
		c.readBack(m.studio, &wall)
	}
	if m.part.print {
		m.print(c, a)
		m.addSheet(c, a.Goal.Skill)
	}
	if m.web != nil {
		var documents []site.Document
		if site.Shows(v) {
			documents, problems = printFor(m.web.Average(v), path.Join(clientsFolder, c.slug, assessmentFile))
			c.addNew(problems)
		}
		pages, problems := m.web.Client(v, documents...)
		c.files, c.problems = append(c.files, filesOf(pages)...), append(c.problems, problems...)
	}
	return c
}

// pictures are an album's of who has handles on a day, or has none.
func (m *making) pictures(a *program.Assessment) view.Drawn {
	return func(on program.Date) (func(exercise string) []program.Picture, bool) {
		there := a.KitOn(on)
		return drawnWith(m.album, there), handles(there) != handles(a.Kit)
	}
}

func drawnWith(album *posture.Album, kit []string) func(exercise string) []program.Picture {
	if handles(kit) {
		return album.Of
	}
	return album.Flat
}

func handles(kit []string) bool { return slices.Contains(kit, ladder.Parallettes) }

// addNew adds problems that are not known yet: what is printed twice has the same ones.
func (c *client) addNew(problems program.Problems) {
	for _, p := range problems {
		if !slices.Contains(c.problems, p) {
			c.problems = append(c.problems, p)
		}
	}
}

// readBack adds what the log says.
func (c *client) readBack(studio *program.Studio, wall *planner.OnWall) {
	r, problems := view.NewReview(studio.Coach, &studio.Library, &wall.Next, &wall.Review)
	if wall.Next.Version <= c.program.Version {
		r.Keep = "" // it hangs already
	}
	c.problems = append(c.problems, problems...)
	r.Progress, problems = view.NewProgress(studio.Coach, &studio.Library, &c.program, &wall.Review)
	c.problems = append(c.problems, problems...)
	c.review, c.view.Progress = r, r.Progress
}

// pick finds one client by slug, or all where none is named.
func pick(clients []program.Assessment, only string) []*program.Assessment {
	var chosen []*program.Assessment
	for i := range clients {
		if only == "" || clients[i].Slug == only {
			chosen = append(chosen, &clients[i])
		}
	}
	return chosen
}
