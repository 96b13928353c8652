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
	Private     bool   // asks not to be indexed, and is kept on the client's phone with the pages beside it
	Nav, More   []link
	Cautions    string // address; empty: the coach took the page away
	Coach       program.Coach
	ContactLink string // empty: the contact is plain text
	Scripts     []string
	Canonical   string     // the page's public address; empty: private, or none is known
	Feed        string     // address of the feed; empty: there is none
	Description string     // what the page is about, for who finds it; empty: private, or nothing to say
	Cover       string     // address of the picture that it is shared with; empty: none is known
	Touch       bool       // there is an icon of pixels
	Data        []dataView // for machines
}

// Frame is all of it, where a template finds quickly what in a page, in which it is embedded,
// it has to search for.
func (f frame) Frame() frame { return f }

// Foot is what the feet of pages need: they are alike on many.
func (f frame) Foot() frame {
	return frame{Root: f.Root, Private: f.Private, Cautions: f.Cautions, Coach: f.Coach, ContactLink: f.ContactLink, Scripts: f.Scripts}
}

// dataView is JSON-LD, and the hash by which the page's policy knows it.
type dataView struct {
	Text template.JS
	Hash string
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
		Mark:    b.mark(),
		Root:    root,
		Private: root != "",
		Coach:   b.Coach,
	}
	if b.Coach.Studio != "" && page != homePage {
		f.Title = b.words.fill("site.title", "page", heading, "studio", b.Coach.Studio)
	}
	if !f.Private {
		f.Nav, f.More = b.nav(page)
		f.Canonical, f.Cover, f.Touch = b.public(page), b.public(coverFile), b.look.builtInIcon
	}
	if !f.Private && len(b.Notes) > 0 && b.Coach.Site != "" {
		f.Feed = feedFile
	}
	if _, ok := b.page("cautions"); ok {
		f.Cautions = root + textPage("cautions")
	}
	if to := b.mailbox(); to != "" {
		f.ContactLink = "mailto:" + to
	}
	return f
}

// mark is whose site it is.
func (s *Site) mark() string { return cmp.Or(s.Coach.Studio, s.Coach.Name) }

// mailbox is the coach's mail address; empty where the contact is something else.
func (s *Site) mailbox() string {
	if c := s.Coach.Contact; strings.Contains(c, "@") && !strings.ContainsAny(c, " ?&/:") {
		return c
	}
	return ""
}

// nav lists the four ways in: a level for who trains alone, the road maps, the
// exercises, the words. All else is under More; the cautions stand at the foot of
// every page as well, and shared programs nowhere.
func (b *builder) nav(page string) (first, more []link) {
	add := func(to *[]link, text, href string) {
		*to = append(*to, link{Text: text, Href: href, Here: href == page})
	}
	if len(b.Publics) > 0 {
		add(&first, b.words.word("find.title"), programsPage)
	}
	add(&first, b.words.word("nav.roadmaps"), roadMapsPage)
	add(&first, b.words.word("nav.exercises"), exercisesPage)
	if _, ok := b.page(glossary); ok {
		add(&first, b.words.word("nav.words"), textPage(glossary))
	}
	for _, p := range b.Library.Pages {
		if p.ID != "home" && p.ID != glossary {
			add(&more, p.Title, textPage(p.ID))
		}
	}
	if len(b.Notes) > 0 {
		add(&more, b.words.word("nav.notes"), notesPage)
	}
	return first, more
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
