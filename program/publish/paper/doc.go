// Package paper prints: a program's wall chart, one-page plan and session cards,
// the coach's own pages and a log read back, the letter where no program may be
// made yet, and the blank test sheet, as PDF. It is the only package with ink, and
// writes the strings of a view.View as they are.
//
// A document is laid out first, as pages of plain marks (texts broken into
// lines, fills, hatchings, frames, strokes, pictures) in millimetres from the
// sheet's top-left corner, and drawn second. What does not fit is therefore known
// before there is ink: Page.Faults names texts that are wider or taller than their
// box, texts or pictures that overlap, marks in the free edge, letters too small.
//
// Rules of the print:
//   - Nothing within 5 mm of the edge: office printers do not print there.
//   - The wall chart's main figures have capitals of 10 mm and more on A3, which
//     is the reading distance of 2 m divided by 200 (common practice). The other
//     sheets carry the same chart, smaller; no text is under seven points.
//   - Ten points of text and never under eight on the one-page plan, the coach's
//     page and the test sheet; never under seven on cards.
//   - Figures come from package figure and are this client's own body, to scale. A
//     drawing is a picture that the document holds once; its labels are texts. Those of
//     exercises, which are nobody's body, are made once for all documents.
//   - The library has the pages, bookmarks and what is said about the file; what is on a page
//     is written by the pen, in a PDF's own operators.
//   - Two inks, the studio's or the built-in ones. Every meaning of a tone is also
//     a pattern, a line or a word, so that a black-and-white copy loses nothing.
//   - Only the coach's page says what only the coach may see (View.ForCoach).
//   - Every page says whose it is, of which block, which page of how many and
//     which version; every document has title, author, subject, language and
//     bookmarks.
//   - Real text in embedded fonts: Roboto Condensed, and DejaVu Sans Condensed
//     for the characters that it lacks. What neither has, or what lies above
//     U+FFFF, is printed as □, with a warning that names file and line.
//   - The same input gives the same bytes; the document's date is the day of the
//     measurements.
package paper
