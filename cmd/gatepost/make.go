package main

import (
	"io/fs"
	"path"
	"slices"

	"gatepost/program"
	"gatepost/program/ladder"
	"gatepost/program/planner"
	"gatepost/program/publish/paper"
	"gatepost/program/publish/site"
	"gatepost/program/publish/store"
	"gatepost/program/publish/view"
)

// output is a part of what can be made, and how.
type output struct{ site, print, bothSides bool }

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
		scope = append(scope, "print/")
	}
	return scope
}

func printFolder(client string) string { return path.Join("print", client) }

// made is everything made of a studio, not yet written.
type made struct {
	clients  []*client // in the studio's order
	publics  []site.Public
	pages    []store.File // of the site, that are no client's
	files    []store.File // all of them, but for clients with errors
	problems program.Problems
	sound    bool        // nothing that every client needs has an error
	left     []string    // clients with errors
	alone    store.Scope // their output, which stays as it is
}

// client is one client's program and what is printed of it.
type client struct {
	slug     string
	withheld []string // why there is no program yet
	program  program.Program
	view     *view.View   // nil where a problem stopped the planning
	review   *view.Review // nil where there is no log
	changed  []program.Change
	printNow []program.Date // cards of the coming week
	files    []store.File
	problems program.Problems
}

// forget lets go of all but the files: of hundreds of clients, all at once would
// fill the memory.
func (c *client) forget() {
	c.program, c.view, c.review, c.changed, c.printNow = program.Program{}, nil, nil, nil, nil
}

// makeAll plans every client, or the one named, and makes a part of the output.
// Of the website everything is made that is not kept from the last time.
func (j *job) makeAll(studio *program.Studio, part output, only string) made {
	chosen := pick(studio.Clients, only)
	m := made{clients: make([]*client, len(chosen))}
	waiting := slices.DeleteFunc(slices.Clone(studio.Waiting), func(slug string) bool { return only != "" && slug != only })
	var sheets map[string][]byte
	if part.print {
		sheets = testSheets(&m, studio, chosen, waiting)
	}
	look := j.templates()
	kept := j.kept.of(studio, look)
	var web *site.Site
	if part.site {
		web = j.website(&m, studio, look, kept)
	}
	j.sideBySide(len(chosen), "clients", func(i int) {
		if m.clients[i] = kept.client(chosen[i]); m.clients[i] == nil {
			m.clients[i] = makeClient(studio, chosen[i], part, web)
			m.clients[i].forget()
			if part.print { // a preview compares what was read with what is read next
				forgetLog(chosen[i])
			}
		}
	})
	for i, c := range m.clients {
		m.problems = append(m.problems, c.problems...)
		if c.problems.Stop() {
			continue
		}
		m.files = append(m.files, c.files...)
		if part.print {
			m.files = append(m.files, store.File{Path: printFolder(c.slug) + "/test-sheet.pdf", Bytes: sheets[chosen[i].Goal.Skill]})
		}
	}
	if part.print { // for those whose assessment nobody has filled in yet
		for _, slug := range waiting {
			m.files = append(m.files, store.File{Path: printFolder(slug) + "/test-sheet.pdf", Bytes: sheets[""]})
		}
	}
	if part.site {
		m.addPublic(web, kept)
	}
	return m
}

// website begins the site; its public programs are planned and printed first.
func (j *job) website(m *made, studio *program.Studio, look []fs.FS, kept *keepsake) *site.Site {
	if kept.public() {
		m.publics = kept.publics
	} else {
		publics, problems := j.publics(studio)
		m.publics, m.problems = publics, append(m.problems, problems...)
	}
	return site.New(site.Source{
		Coach: studio.Coach, Library: &studio.Library, Templates: look,
		References: references(&studio.Library), Illustrations: illustrations(&studio.Library),
		Notes: studio.Notes, Publics: m.publics,
	})
}

// addPublic adds the pages that are no client's.
func (m *made) addPublic(web *site.Site, kept *keepsake) {
	if kept.public() {
		m.pages = kept.pages
	} else {
		pages, problems := web.Public()
		m.pages, m.problems = filesOf(pages), append(m.problems, problems...)
	}
	m.files = append(m.files, m.pages...)
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

// makeClient makes one client's program, the one that hangs on the wall, prints
// it and makes its pages; without a website, none.
func makeClient(studio *program.Studio, a *program.Assessment, part output, web *site.Site) *client {
	c := &client{slug: a.Slug}
	wall, problems := planner.Wall(&studio.Library, a)
	c.program, c.changed, c.problems = wall.Program, wall.Changed, problems
	c.printNow = c.program.ToPrint(c.changed, a.Plans, c.program.Version-1)
	if c.problems.Stop() {
		return c
	}
	v, problems := view.New(studio.Coach, &studio.Library, &c.program, a.Plans...)
	v.Places = a.Places
	c.view, c.withheld, c.problems = v, v.Withheld, append(c.problems, problems...)
	if wall.Review.Last != 0 {
		c.readBack(studio, &wall)
	}
	if part.print {
		c.print(&studio.Library, part.bothSides)
	}
	if web != nil {
		pages, problems := web.Client(v)
		c.files, c.problems = append(c.files, filesOf(pages)...), append(c.problems, problems...)
	}
	return c
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

// print adds what goes on paper. Where no program may be made, the one page is a
// letter that says why, and there are no chart, no cards, no page for the coach.
func (c *client) print(lib *program.Library, bothSides bool) {
	one, problems := paper.OnePage(c.view)
	c.add("one-page.pdf", one, problems)
	if len(c.withheld) == 0 {
		chart, problems := paper.WallChart(c.view)
		c.add("wall-chart.pdf", chart, problems)
		cards, problems := paper.Cards(c.view, bothSides)
		c.add("cards.pdf", cards, problems)
		coach, problems := paper.CoachPage(c.view)
		c.add("coach-page.pdf", coach, problems)
		c.add("calendar.ics", view.OwnCalendar(c.view), nil)
		c.printReview(bothSides)
	}
	data, err := view.JSON(lib, &c.program)
	if err != nil { // a number that is none: a mistake in the planner
		c.problems = append(c.problems, program.Problem{
			Place:   program.Place{File: path.Join(clientsFolder, c.slug, assessmentFile)},
			Message: "the program cannot be written as JSON: " + err.Error(),
			Advice:  "Please report this with the file.",
		})
	}
	c.add("program.json", data, nil)
}

// printReview adds the log read back, and the cards that the plan on the wall
// changed of the one before it.
func (c *client) printReview(bothSides bool) {
	if c.review != nil {
		review, problems := paper.Review(c.view, c.review)
		c.add("review.pdf", review, problems)
	}
	if first, later := c.view.Changed(&c.program, c.changed, c.printNow); len(first) > 0 {
		cards, problems := paper.ChangedCards(c.view, bothSides, first, later)
		c.add("changed-cards.pdf", cards, problems)
	}
}

func (c *client) add(name string, b []byte, problems program.Problems) {
	c.files = append(c.files, store.File{Path: printFolder(c.slug) + "/" + name, Bytes: b})
	c.problems = append(c.problems, problems...)
}

// testSheets are the blank forms for the next assessment, one for each skill that
// somebody goes for, and under no name that of those who wait and have no goal yet.
func testSheets(m *made, studio *program.Studio, chosen []*program.Assessment, waiting []string) map[string][]byte {
	sheets := map[string][]byte{}
	add := func(skill string) {
		if sheets[skill] == nil {
			sheet, problems := blankSheet(studio, skill)
			sheets[skill], m.problems = sheet, append(m.problems, problems...)
		}
	}
	for _, a := range chosen {
		add(a.Goal.Skill)
	}
	if len(waiting) > 0 {
		add("")
	}
	return sheets
}

func blankSheet(studio *program.Studio, skill string) ([]byte, program.Problems) {
	banded, second := ladder.Shown(&studio.Library, skill)
	return paper.TestSheet(studio.Coach, &studio.Library, skill, paper.Shown{Banded: banded, Second: second})
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
