// Package templates holds the built-in look of the website: one HTML template
// a kind of page, the frame around them, a stylesheet for them and one for
// picture files, the icon, and three small scripts that no page needs: the hold timer,
// the mark at the next session, and the days of a program without any.
//
// A coach's own templates/ is laid over these by file name. Templates compute
// nothing and contain no reader's words: words come by key from the words
// file, everything else from the page they are given.
package templates

import "embed"

// FS holds the files by name: "base.html", "style.css".
//
//go:embed *.html style.css figure.css icon.svg start.js timer.js today.js
var FS embed.FS
