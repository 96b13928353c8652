// Package intake reads what a coach wrote, and says what is wrong with it.
//
// A coach's folder holds content/studio.yaml, one folder a client below
// content/clients, and whatever of the library (content/exercises, roadmaps,
// pages, words) the coach wants otherwise than built in. A file there replaces
// the built-in one of the same path, whole; an empty one takes it away. The
// studio, the clients and the public programs (content/programs, one file each)
// are never taken from what is built in.
//
// The library is in English. Where the studio names another language, the files
// of content/<language> are laid over it: words alone, see translation.go.
//
// Reading is strict. An unknown key, a key written twice, a number without its
// unit, a name nobody knows, an impossible body: each is a Problem with file,
// line, column, the line itself and what to write instead. All problems of all
// files come at once, sorted. What is possible but unusual is a warning, and
// does not stop the work. What is wrong with the athlete's prospects or health
// is not a problem of reading: the planner says that.
//
// A client appears in the Studio only when nothing in the assessment was wrong. A
// blank that nobody has filled in is no problem: that client waits.
// Steps and exercises may be written by id or by name, in any case, with spaces
// or hyphens; here they become ids. Units become kg, m, N, s and radians; weeks
// for the experience.
//
// A client's log, log.csv, is CSV as spreadsheets of any country save it; log.go
// says what stands in its columns. A line with an error is left out of the Log,
// and the others are read; whether a day has come yet is asked by NotYet, for
// Read knows no clock. ReadNewLines, or ReadNewLinesOfAll for several clients, and
// AddToLog take more lines in, checked in the same way; what a log has already is not
// added again. What is wrong with a log or an assessment is said in the studio's language,
// by its words under fault:; what is wrong with the library, or is no YAML, in English.
//
// Every file format reads as a list of its fields, one line a key: see
// assessment.go, exercise.go, programs.go, roadmap.go, studio.go. YAML is taken as nodes, not
// decoded into structs, since decoding is silent about lost fractions, octal
// numbers, swallowed comments, second documents and keys written twice.
// Anchors, aliases and tags are refused: nothing here needs them.
package intake
