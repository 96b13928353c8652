package site

import (
	"cmp"
	"encoding/xml"
	"html/template"
	"time"

	"gatepost/program"
)

const (
	feedFile = "feed.xml"
	longFeed = 20 // notes, the newest (common practice)
)

// feed is the coach's notes as an Atom feed (RFC 4287). Addresses stand for
// themselves as ids, so that they must not change; a note's day is both when it
// came out and when it was last changed.
type feed struct {
	XMLName xml.Name    `xml:"http://www.w3.org/2005/Atom feed"`
	Lang    string      `xml:"xml:lang,attr"`
	ID      string      `xml:"id"`
	Title   string      `xml:"title"`
	Updated string      `xml:"updated"`
	Author  feedAuthor  `xml:"author"`
	Links   []feedLink  `xml:"link"`
	Entries []feedEntry `xml:"entry"`
}

type feedAuthor struct {
	Name string `xml:"name"`
}

type feedLink struct {
	Rel  string `xml:"rel,attr,omitempty"`
	Href string `xml:"href,attr"`
}

type feedEntry struct {
	ID      string      `xml:"id"`
	Title   string      `xml:"title"`
	Updated string      `xml:"updated"`
	Link    feedLink    `xml:"link"`
	Content feedContent `xml:"content"`
}

// feedContent is HTML as text; links in it are relative to the site.
type feedContent struct {
	Type string `xml:"type,attr"`
	Base string `xml:"xml:base,attr"`
	HTML string `xml:",chardata"`
}

func (b *builder) feedEntry(n program.CoachNote, body template.HTML) feedEntry {
	address := b.public(notePage(n.ID))
	return feedEntry{ID: address, Title: n.Title, Updated: n.On.Time().Format(time.RFC3339),
		Link: feedLink{Href: address}, Content: feedContent{Type: "html", Base: b.Coach.Site, HTML: string(body)}}
}

func (b *builder) feed(entries []feedEntry) []byte {
	entries = entries[:min(len(entries), longFeed)]
	f := feed{
		Lang: cmp.Or(b.Coach.Lang, "en"), ID: b.public(notesPage), Title: b.mark(),
		Updated: entries[0].Updated, Author: feedAuthor{b.Coach.Name}, Entries: entries,
		Links: []feedLink{{Rel: "self", Href: b.public(feedFile)}, {Href: b.public(notesPage)}},
	}
	text, _ := xml.MarshalIndent(f, "", " ") // strings only: nothing can fail
	return append([]byte(xml.Header), append(text, '\n')...)
}
