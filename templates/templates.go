// Package templates holds the built-in look of the website: one HTML template
// a kind of page, the frame around them, a stylesheet for them and one for
// picture files, the icon, and small scripts that no page needs: the hold timer, the
// mark at the next session, the days of a program without any, what a phone keeps of a
// client's sessions, and what keeps a client's pages on it.
//
// A coach's own templates/ is laid over these by file name. Templates compute
// nothing and contain no reader's words: words come by key from the words
// file, everything else from the page they are given.
package templates

import "embed"

// FS holds the files by name: "base.html", "style.css".
//
//go:embed *.html *.js style.css print.css figure.css icon.svg
var FS embed.FS
