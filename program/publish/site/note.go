package site

import (
	"strconv"
	"strings"

	"gatepost/program"
)

// notesView lists the coach's notes, the newest first.
type notesView struct {
	frame
	Notes []noteEntry
}

type noteEntry struct {
	link
	On string
}

const notesPage = "notes.html"

func notePage(id string) string { return "note-" + id + ".html" }

// notes writes the coach's notes, where there are any, and their feed.
func (b *builder) notes() {
	if len(b.Notes) == 0 {
		return
	}
	index := notesView{frame: b.frame(b.words.word("nav.notes"), notesPage, "")}
	var entries []feedEntry
	for _, n := range b.Notes {
		v := textView{frame: b.frame(n.Title, notePage(n.ID), ""), On: b.day(n.On)}
		v.Description = summary(n.Body)
		b.way(&v.frame, link{Text: b.words.word("nav.notes"), Href: notesPage})
		v.Body = b.html(passage{text: n.Body, file: n.File, line: n.Line, ids: newHeadingIDs()})
		b.write(notePage(n.ID), "page.html", v)
		index.Notes = append(index.Notes, noteEntry{link{Text: n.Title, Href: notePage(n.ID)}, v.On})
		entries = append(entries, b.feedEntry(n, v.Body))
	}
	b.write(notesPage, "notes.html", index)
	if b.Coach.Site != "" {
		b.add(feedFile, b.feed(entries))
	}
}

// day writes a day in full.
func (b *builder) day(d program.Date) string {
	year, month, day := d.Time().Date()
	return b.words.fill("date.long", "day", strconv.Itoa(day),
		"month", b.words.word("month."+strings.ToLower(month.String())), "year", strconv.Itoa(year))
}
