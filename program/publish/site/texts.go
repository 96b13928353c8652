package site

import "html/template"

// textView is a page of the coach's words.
type textView struct {
	frame
	On    string // the day of a note
	Body  template.HTML
	Parts []link // its second-level headings; none where they are few
}

// homeView is the front page: what it is about in figures, a door for each kind of
// reader, and the coach's words.
type homeView struct {
	textView
	Strip stripView
	Doors []doorView
}

type doorView struct {
	link
	Line string
}

// home is the front page.
func (b *builder) home() {
	p, ok := b.page("home")
	if !ok {
		p.Title, p.File = b.Coach.Studio, "content/pages/home.md"
	}
	v := homeView{textView: textView{frame: b.frame(p.Title, homePage, "")}}
	v.Description = summary(p.Body)
	v.Body = b.html(passage{text: p.Body, file: p.File, line: p.Line, ids: newHeadingIDs()})
	if len(b.Library.RoadMaps) > 0 {
		v.Strip = b.strip(b.shownFirst())
	}
	v.Doors = b.doors()
	if len(b.Publics) > 0 {
		v.Scripts = []string{startScript}
	}
	b.write(homePage, "home.html", v)
}

// doors are for who has a coach here, who trains alone, and who coaches.
func (b *builder) doors() []doorView {
	door := func(name, to string) doorView {
		return doorView{link{Text: b.words.word("home." + name), Href: to}, b.words.word("home." + name + "_line")}
	}
	page := func(id string) string {
		if _, ok := b.page(id); ok {
			return textPage(id)
		}
		return roadMapsPage
	}
	alone := roadMapsPage
	if len(b.Publics) > 0 {
		alone = programsPage
	}
	return []doorView{door("coached", page(glossary)), door("alone", alone), door("coaching", page(measuring))}
}

// fewParts is how many headings a page may have before it lists them (our judgement).
const fewParts = 3

// texts are the other pages of the coach's words.
func (b *builder) texts() {
	for _, p := range b.Library.Pages {
		if p.ID == "home" {
			continue
		}
		v := textView{frame: b.frame(p.Title, textPage(p.ID), "")}
		v.Description = summary(p.Body)
		b.way(&v.frame)
		v.Body = b.html(passage{text: p.Body, file: p.File, line: p.Line, ids: newHeadingIDs(), parts: &v.Parts})
		if len(v.Parts) < fewParts {
			v.Parts = nil
		}
		b.write(textPage(p.ID), "page.html", v)
	}
}
