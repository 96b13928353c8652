// Package site turns the library and the shared programs into a website: plain
// files that can be copied to any web host or opened from a file manager.
//
// What it promises, and its tests keep:
//
//   - Links are relative, and every link and fragment within the site resolves.
//   - No page asks anything of another host or carries an inline style or script;
//     a content security policy in each page says so to the browser. The
//     scripts are extras: without them nothing is missing, and each works
//     without a network.
//   - What a client writes on a phone stays there until the client sends it; all
//     that is stored is shown, and can be deleted, on phone.html. After the first
//     visit a client's pages open without signal.
//   - Only clients who share to the site appear, under the random part of the
//     address that the coach's folder keeps, by first name, on pages that ask
//     not to be indexed and that no public page links to.
//   - The package formats no number of a program: those strings come from the
//     view. It holds no reader's words: those come from the words file by key.
//   - Markdown is text: raw HTML in it is left out, a link to a file of the
//     content folder ("../exercises/planche-lean.md") becomes a link to its
//     page, and a link that leads nowhere is a problem with file and line.
//   - Same input, same bytes.
//
// Files are flat: index.html, roadmaps.html, roadmap-<id>.html, exercises.html,
// exercise-<id>.html, page-<id>.html, style.css, print.css, icon.svg, the scripts,
// figure-<exercise>.svg, cover.png, icon-<pixels>.png, manifest.webmanifest, and for a
// shared client c/<page>/index.html, c/<page>/week-<n>.html, c/<page>/day-<date>.html,
// c/<page>/exercises.html, c/<page>/phone.html, c/<page>/<document> to print, c/<page>/calendar.ics, and
// worker.js and manifest.webmanifest of these pages.
// Public programs are programs.html, program-<id>.html (the way in, which says who
// should see a professional first), find-<id>.html (the tests, to which only the way
// in and the levels lead), level-<id>-<n>.html with level-<id>-<n>-week-<n>.html and
// level-<id>-<n>-week-<n>-day-<n>.html, and level-<id>-<n>-<document> to download.
// The coach's notes are notes.html and note-<id>.html.
// Where the public address is known there are sitemap.xml, robots.txt and, with
// notes, the Atom feed feed.xml.
//
// Only this package imports goldmark; html/template only this one and preview.
package site
