package main

import (
	"io/fs"
	"strings"

	"gatepost/content"
	"gatepost/templates"
)

// builtIn is what a coach's folder is laid over, in the same shape.
var builtIn = mounts{"content": content.Library, "templates": templates.FS}

// mounts shows several file systems as the top folders of one.
type mounts map[string]fs.FS

// Open opens a file or folder below one of the mounts.
func (m mounts) Open(name string) (fs.File, error) {
	top, rest, below := strings.Cut(name, "/")
	from, ok := m[top]
	if !ok || !fs.ValidPath(name) {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
	}
	if !below {
		rest = "."
	}
	return from.Open(rest)
}
