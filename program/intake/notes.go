package intake

import (
	"cmp"
	"slices"

	"gatepost/program"
)

const notesFolder = "content/notes"

// readNotes reads the coach's notes, the newest first. None are built in, and
// most folders have none.
func (f *folder) readNotes(library *shelf) []program.CoachNote {
	var all []program.CoachNote
	for _, id := range f.ids(f.coach, notesFolder, ".md", false) {
		src, ok := f.open(f.coach, notesFolder+"/"+id+".md", false)
		if !ok {
			continue
		}
		library.keep(src)
		library.noteFiles[id] = src
		all = append(all, readNote(src, id))
	}
	slices.SortStableFunc(all, func(a, b program.CoachNote) int {
		return cmp.Or(cmp.Compare(b.On, a.On), cmp.Compare(a.ID, b.ID))
	})
	return all
}

func readNote(src *source, id string) program.CoachNote {
	n := program.CoachNote{ID: id, File: src.file}
	body, first := src.readFrontMatter("title: The hall is closed in Lent, date: 2027-02-10", group(
		must("title", "The hall is closed in Lent", text(&n.Title)),
		must("date", "2027-02-10", date(&n.On, 2000, 2150)),
	))
	n.Line = first
	n.Body = section{lines: body}.text()
	if body != nil && n.Body == "" {
		src.say(src.place(first-1, 1), "the note has no text", "Write it below the line ---.")
	}
	return n
}
