package site

import (
	"net/url"
	"path"
	"strings"

	"gatepost/program"
)

// addresses maps what Markdown may link to, files of the coach's folder and
// pages of the site, to the page's address from the site's own folder.
type addresses map[string]string

// Names of pages. Flat, so that a page costs a file and not a folder.
const (
	homePage      = "index.html"
	exercisesPage = "exercises.html"
	roadMapsPage  = "roadmaps.html"
)

// glossary is the page of the words, measuring that for coaches.
const (
	glossary  = "words"
	measuring = "measure"
)

// builtIn marks the name of a file that came with the program and that a coach
// may replace by one of the same path.
const builtIn = "built-in "

func exercisePage(id string) string { return "exercise-" + id + ".html" }
func roadMapPage(id string) string  { return "roadmap-" + id + ".html" }

func textPage(id string) string {
	if id == "home" {
		return homePage
	}
	return "page-" + id + ".html"
}

// newAddresses knows each file at its own path and at that of its translation.
func newAddresses(lib *program.Library, lang string) addresses {
	a := addresses{homePage: homePage, exercisesPage: exercisesPage, roadMapsPage: roadMapsPage}
	for _, m := range lib.RoadMaps {
		a.add("roadmaps/"+m.ID+".yaml", lang, roadMapPage(m.ID))
	}
	for _, e := range lib.Exercises {
		a.add("exercises/"+e.ID+".md", lang, exercisePage(e.ID))
	}
	for _, p := range lib.Pages {
		a.add("pages/"+p.ID+".md", lang, textPage(p.ID))
	}
	return a
}

func (a addresses) add(file, lang, page string) {
	a["content/"+file], a["content/"+lang+"/"+file], a[page] = page, page, page
}

// addNotes lets texts lead to the coach's notes.
func (a addresses) addNotes(notes []program.CoachNote, lang string) {
	for _, n := range notes {
		a.add("notes/"+n.ID+".md", lang, notePage(n.ID))
		a[notesPage] = notesPage
	}
}

// addPublics lets texts lead to the public programs.
func (a addresses) addPublics(all []Public, lang string) {
	for _, p := range all {
		a.add("programs/"+p.View.ID+".yaml", lang, publicPage(p.View.ID))
		a[findPage(p.View.ID)] = findPage(p.View.ID)
		a[programsPage] = programsPage
	}
}

// resolve gives the address for a link written in a file of the coach's folder.
// Links to other hosts are for readers to follow; a page never loads them.
func (a addresses) resolve(from, link string) (string, bool) {
	u, err := url.Parse(link)
	if err != nil || link == "" {
		return "", false
	}
	switch u.Scheme {
	case "https", "http":
		return link, u.Host != ""
	case "mailto", "tel":
		return link, true
	case "":
		if u.Host != "" {
			return "", false
		}
	default:
		return "", false
	}
	if u.Path == "" {
		return link, strings.HasPrefix(link, "#")
	}
	to, ok := a[u.Path]
	if !ok {
		to, ok = a[path.Join(path.Dir(strings.TrimPrefix(from, builtIn)), u.Path)]
	}
	if u.Fragment != "" {
		to += "#" + u.EscapedFragment()
	}
	return to, ok
}
