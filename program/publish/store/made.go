package store

import (
	"bytes"
	"os"
	"strings"
	"sync/atomic"
)

// madePath holds what the output was last made from, and a note.
const madePath = ownPath + "/made"

// Remember notes that the output was made from a source, in one line, and keeps
// a note for who asks again. The next Write that changes anything forgets it.
func Remember(root *os.Root, source string, note []byte) error {
	d := disk{root: root}
	unlock, err := d.lock()
	if err != nil {
		return err
	}
	defer unlock()
	if old, err := root.ReadFile(madePath); err == nil && bytes.Equal(old, madeOf(source, note)) {
		return nil
	}
	return d.create(madePath, madeOf(source, note))
}

func madeOf(source string, note []byte) []byte { return append([]byte(source+"\n"), note...) }

// Fresh says whether a Write of the scope would change nothing: it was made from
// this source, nothing was written since, and every file of it is there with its
// bytes. It gives how many those are, and the note that was kept.
func Fresh(root *os.Root, scope Scope, source string) (note []byte, files int, fresh bool) {
	d := disk{root: root}
	b, err := root.ReadFile(madePath)
	first, rest, _ := strings.Cut(string(b), "\n")
	if err != nil || first != source || d.exists(listPath) {
		return nil, 0, false
	}
	m, err := d.readManifest()
	if err != nil {
		return nil, 0, false
	}
	var paths []string
	for _, path := range m.paths() {
		if scope.has(path) {
			paths = append(paths, path)
		}
	}
	var changed atomic.Bool
	sideBySide(len(paths), func(i int) {
		if !changed.Load() {
			if there, err := d.read(paths[i]); err != nil || hash(there) != m[paths[i]] {
				changed.Store(true)
			}
		}
	})
	return []byte(rest), len(paths), !changed.Load()
}
