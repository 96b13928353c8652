package store

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"
)

// manifest is what we wrote: SHA-256 in hex by path.
type manifest map[string]string

func (m manifest) paths() []string {
	paths := make([]string, 0, len(m))
	for path := range m {
		paths = append(paths, path)
	}
	slices.Sort(paths)
	return paths
}

func (m manifest) bytes() []byte {
	var b strings.Builder
	for _, path := range m.paths() {
		fmt.Fprintf(&b, "%s  %s\n", m[path], path)
	}
	return []byte(b.String())
}

// readManifest reads what earlier runs wrote; none is an empty one.
func (d *disk) readManifest() (manifest, error) {
	b, err := d.root.ReadFile(manifestPath)
	if errors.Is(err, fs.ErrNotExist) {
		return manifest{}, nil
	}
	if err != nil {
		return nil, d.explain("read", manifestPath, err)
	}
	m := manifest{}
	for number, line := range lines(b) {
		sum, path, ok := strings.Cut(line, "  ")
		if !ok || len(sum) != 64 || !plainPath(path) {
			return nil, fmt.Errorf("%s:%d: is damaged; move the output folder away and run the command again",
				d.name(manifestPath), number+1)
		}
		m[path] = sum
	}
	return m, nil
}

// lines cuts a file into lines; a newline at the end starts no further one.
func lines(b []byte) []string {
	if len(b) == 0 {
		return nil
	}
	return strings.Split(strings.TrimSuffix(string(b), "\n"), "\n")
}

// plainPath says whether a path may be written: inside the output folder, not
// among the writer's own things, and of characters that fit on a line.
func plainPath(path string) bool {
	control := func(r rune) bool { return r < ' ' || r == 0x7f || r == '\\' }
	return fs.ValidPath(path) && path != "." && path != ownPath && !strings.HasPrefix(path, ownPath+"/") &&
		!strings.ContainsFunc(path, control)
}
