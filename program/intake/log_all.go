package intake

import (
	"slices"
	"strings"

	"gatepost/program"
)

// maxStudio is the largest file of a whole studio's lines: many years of hundreds of
// clients, in bytes.
const maxStudio = 8 << 20

// ClientLog is what a file for the whole studio has of one client.
type ClientLog struct {
	Client *program.Assessment
	Log    program.Log
}

// allBook is a file with the lines of several clients, and a log of each.
type allBook struct {
	*logBook
	studio *program.Studio
	unread []string         // clients whose assessment cannot be read
	whose  map[string][]int // folded names -> clients of the studio
	cells  map[string]int   // what was written in the column -> client; -1: nobody
	books  []*logBook       // of each client; nil: none
}

// ReadNewLinesOfAll reads lines of several clients that are to be added to their logs.
// A column client says whose a line is: by the folder's name, the client's, or the
// first name where only one has it. unread are folders of clients who are not in the
// studio, for want of a sound assessment.
func ReadNewLinesOfAll(studio *program.Studio, unread []string, from string, lines []byte) ([]ClientLog, program.Problems) {
	words := newLogWords(&studio.Library)
	src, at, wrong := textSource(from, lines, maxStudio)
	if src == nil {
		return nil, program.Problems{wrong.in(words.said(), at)}
	}
	b := &allBook{logBook: newLogBook(src, &logKnown{words: words, exercises: allExercises(&studio.Library)}), studio: studio, unread: unread,
		whose: clientNames(studio.Clients), cells: map[string]int{}, books: make([]*logBook, len(studio.Clients))}
	b.strict = true
	b.usual = append([]column{columnClient}, logColumns...)
	b.skipText(nil)
	first, ok := b.readHeader(nil)
	if ok && !slices.Contains(b.columns, columnClient) {
		b.say(b.place(first, 1), "no_client_column", "column", quote(columnClient.String()), "header", b.header())
		ok = false
	}
	if ok {
		b.choose = b.bookOf
		b.readLines(first)
	}
	var all []ClientLog
	for i, book := range b.books {
		if book != nil {
			book.checkAge()
			all = append(all, ClientLog{&studio.Clients[i], book.log})
		}
	}
	src.problems.Sort()
	return all, src.problems
}

// allExercises are the exercises and steps that any client may name.
func allExercises(lib *program.Library) *names {
	all := newNames("exercise or step")
	for i := range lib.Exercises {
		all.add(lib.Exercises[i].ID, lib.Exercises[i].Name)
	}
	for i := range lib.RoadMaps {
		for _, s := range lib.RoadMaps[i].Steps {
			all.add(s.ID, s.Name)
		}
	}
	return all
}

// clientNames are the folded names that clients go by. A first name may be several
// clients', what their phones sign with is not.
func clientNames(clients []program.Assessment) map[string][]int {
	names := map[string][]int{}
	for i := range clients {
		a := &clients[i].Athlete
		first := program.FirstName(a.Name, a.Called)
		for _, form := range []string{clients[i].Slug, fold(a.Name), fold(first), signature(&clients[i])} {
			if !slices.Contains(names[form], i) {
				names[form] = append(names[form], i)
			}
		}
	}
	return names
}

// bookOf is the log that a line belongs to; nil, with an error said, where nobody
// can tell.
func (b *allBook) bookOf(l *logLine) *logBook {
	written := l.cell(columnClient)
	i, known := b.cells[written]
	if !known {
		i = b.clientOf(l, written)
		if i >= 0 || written != "" {
			b.cells[written] = i // what is wrong with a name is said of its first line
		}
	}
	if i < 0 {
		return nil
	}
	if b.books[i] == nil {
		book := bookOf(b.source, knownWith(b.studio, b.words, &b.studio.Clients[i]), 0)
		book.columns, book.comma, book.strict = b.columns, b.comma, true
		b.books[i] = book
	}
	return b.books[i]
}

// clientOf finds a client by what was written; -1, with an error said: nobody.
func (b *allBook) clientOf(l *logLine, written string) int {
	found := b.whose[fold(written)]
	if i := slices.IndexFunc(b.studio.Clients, func(a program.Assessment) bool { return a.Slug == written }); i >= 0 {
		return i // the folder's name to the letter, whoever else is called so
	}
	if len(found) == 0 {
		if slug, err := Slug(written); err == nil {
			found = b.whose[slug]
		}
	}
	var slugs []string
	for _, i := range found {
		slugs = append(slugs, b.studio.Clients[i].Slug)
	}
	switch {
	case written == "":
		l.fault(l.at(columnClient), "no_whose")
	case len(found) == 1:
		return found[0]
	case len(found) > 1:
		l.fault(l.at(columnClient), "several_clients", "written", quote(written), "clients", strings.Join(slugs, ", "))
	case slices.Contains(b.unread, fold(written)):
		l.fault(l.at(columnClient), "unread_client", "client", fold(written))
	default:
		for i := range b.studio.Clients {
			slugs = append(slugs, b.studio.Clients[i].Slug)
		}
		l.fault(l.at(columnClient), "no_client", "written", quote(written), "offer", l.offer(written, append(slugs, b.unread...)))
	}
	return -1
}
