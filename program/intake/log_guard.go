package intake

import "strings"

// runs are the signs that make a spreadsheet run a cell as a formula. Numbers and names
// never begin with one; a note may, and a client's must not run on a coach's machine. A
// hyphen is left out: notes begin with it as with a bullet, and nothing worse than an error
// comes of it in words.
const runs = "=+@"

// guarded is a note with an apostrophe before such a sign, which spreadsheets take for
// "this is text" (common practice); unguarded is what was meant.
func guarded(note string) string {
	if text := strings.TrimLeft(note, "'"); text != "" && strings.Contains(runs, text[:1]) {
		return "'" + note
	}
	return note
}

func unguarded(note string) string {
	if below, ok := strings.CutPrefix(note, "'"); ok && guarded(below) != below {
		return below
	}
	return note
}
