package site

import (
	"bytes"
	"encoding/xml"
	"regexp"
	"slices"
	"strings"
)

// machines adds what is written for other programs to read: once the public
// address is known, a map of the public pages and where crawlers find it.
func (b *builder) machines() {
	if b.Coach.Site == "" {
		return
	}
	b.add("sitemap.xml", b.sitemap())
	// Shared programs are not barred here: naming them would give them away, and
	// a crawler that may not read a page never sees that it asks not to be indexed.
	b.add("robots.txt", []byte("User-agent: *\nDisallow:\nSitemap: "+b.Coach.Site+"sitemap.xml\n"))
}

// ofLevel are the weeks and sessions of levels: a level's page stands for them.
var ofLevel = regexp.MustCompile(`^level-.*-[0-9]+-week-[0-9]+(-day-[0-9]+)?\.html$`)

// sitemap lists the public pages that stand for themselves (the Sitemaps protocol 0.9;
// only <loc> is required).
func (b *builder) sitemap() []byte {
	var pages []string
	for _, f := range b.files {
		if strings.HasSuffix(f.Path, ".html") && !strings.HasPrefix(f.Path, clientFolder) && !ofLevel.MatchString(f.Path) {
			pages = append(pages, b.public(f.Path))
		}
	}
	slices.Sort(pages)
	var out bytes.Buffer
	out.WriteString(xml.Header + `<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">` + "\n")
	for _, page := range pages {
		out.WriteString("<url><loc>")
		_ = xml.EscapeText(&out, []byte(page)) // a buffer takes everything
		out.WriteString("</loc></url>\n")
	}
	out.WriteString("</urlset>\n")
	return out.Bytes()
}

// public is the address of a page on the web; empty where none is known.
func (b *builder) public(page string) string {
	switch {
	case b.Coach.Site == "":
		return ""
	case page == homePage:
		return b.Coach.Site
	}
	return b.Coach.Site + page
}
