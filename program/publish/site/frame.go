package site

import (
	"cmp"
	"html/template"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"gatepost/program"
)

// frame is what every page has around its own matter.
type frame struct {
	Lang        string
	Title       string // of the document
	Heading     string // the page's only first-level heading
	Mark        string // whose site it is, at the top of each page
	Root        string // the way back to the site's folder: "" or "../../"
	Private     bool   // asks not to be indexed
	Nav         []link
	Cautions    string // address; empty: the coach took the page away
	Coach       program.Coach
	ContactLink string // empty: the contact is plain text
	Scripts     []string
	Canonical   string      // the page's public address; empty: private, or none is known
	Feed        string      // address of the feed; empty: there is none
	Plan        template.JS // an exercise plan for machines; empty: none
	PlanHash    string      // by which the policy knows it
}

// link is a text that leads somewhere.
type link struct {
	Text, Href string
	Here       bool // it is this page
}

// frame makes the surroundings of the page at an address below root.
func (b *builder) frame(heading, page, root string) frame {
	f := frame{
		Lang:    cmp.Or(b.Coach.Lang, "en"),
		Title:   heading,
		Heading: heading,
		Mark:    cmp.Or(b.Coach.Studio, b.Coach.Name),
		Root:    root,
		Private: root != "",
		Coach:   b.Coach,
	}
	if !f.Private {
		f.Nav = b.nav(page)
	}
	if b.Coach.Studio != "" && page != homePage {
		f.Title = b.words.fill("site.title", "page", heading, "studio", b.Coach.Studio)
	}
	if !f.Private {
		f.Canonical = b.public(page)
	}
	if !f.Private && len(b.Notes) > 0 && b.Coach.Site != "" {
		f.Feed = feedFile
	}
	if _, ok := b.page("cautions"); ok {
		f.Cautions = root + textPage("cautions")
	}
	if c := b.Coach.Contact; strings.Contains(c, "@") && !strings.ContainsAny(c, " ?&/:") {
		f.ContactLink = "mailto:" + c
	}
	return f
}

// nav lists the public programs, the road maps, the exercises and the coach's pages. The cautions
// stand at the foot of every page instead, and shared programs nowhere.
func (b *builder) nav(page string) []link {
	var links []link
	add := func(text, to string) {
		links = append(links, link{Text: text, Href: to, Here: to == page})
	}
	if len(b.Publics) > 0 {
		add(b.words.word("find.programs"), programsPage)
	}
	for _, m := range b.Library.RoadMaps {
		add(m.Name, roadMapPage(m.ID))
	}
	add(b.words.word("nav.exercises"), exercisesPage)
	for _, p := range b.Library.Pages {
		if p.ID != "home" && p.ID != "cautions" {
			add(p.Title, textPage(p.ID))
		}
	}
	if len(b.Notes) > 0 {
		add(b.words.word("nav.notes"), notesPage)
	}
	return links
}

func (b *builder) page(id string) (program.Page, bool) {
	i := slices.IndexFunc(b.Library.Pages, func(p program.Page) bool { return p.ID == id })
	if i < 0 {
		return program.Page{}, false
	}
	return b.Library.Pages[i], true
}

// html renders Markdown and keeps its problems.
func (b *builder) html(p passage) template.HTML {
	p.draw = b.illustrate
	text, problems := p.html(b.addresses.resolve)
	b.report(problems...)
	return text
}

// sentence gives a name that is written as within a sentence a capital.
func sentence(name string) string {
	if name == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(name)
	return string(unicode.ToTitle(first)) + name[size:]
}
