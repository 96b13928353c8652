package site

import "html/template"

// textView is a page of the coach's words.
type textView struct {
	frame
	On       string // the day of a note
	Body     template.HTML
	Programs []link // home only
	RoadMaps []link // home only
}

// home is the front page: the coach's words and the ways in.
func (b *builder) home() {
	p, ok := b.page("home")
	if !ok {
		p.Title, p.File = b.Coach.Studio, "content/pages/home.md"
	}
	v := textView{frame: b.frame(p.Title, homePage, "")}
	v.Body = b.html(passage{text: p.Body, file: p.File, line: p.Line, ids: newHeadingIDs()})
	for _, p := range b.Publics {
		v.Programs = append(v.Programs, link{Text: p.View.Title, Href: publicPage(p.View.ID)})
	}
	for _, m := range b.Library.RoadMaps {
		v.RoadMaps = append(v.RoadMaps, link{Text: m.Name, Href: roadMapPage(m.ID)})
	}
	b.write(homePage, "home.html", v)
}

// texts are the other pages of the coach's words.
func (b *builder) texts() {
	for _, p := range b.Library.Pages {
		if p.ID == "home" {
			continue
		}
		v := textView{frame: b.frame(p.Title, textPage(p.ID), "")}
		v.Body = b.html(passage{text: p.Body, file: p.File, line: p.Line, ids: newHeadingIDs()})
		b.write(textPage(p.ID), "page.html", v)
	}
}
