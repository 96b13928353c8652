package store

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
)

// change is the difference between the output as it is and as it shall be.
type change struct {
	writes  []File
	removes []string
	before  manifest
	after   manifest
	result  Result
}

func (c *change) empty() bool {
	return len(c.writes) == 0 && len(c.removes) == 0 && bytes.Equal(c.before.bytes(), c.after.bytes())
}

// compare finds what has to be done, without doing anything, and every reason
// why it can't be.
func (d *disk) compare(files []File, scope Scope) (change, error) {
	if err := d.checkFolders(files); err != nil {
		return change{}, err
	}
	before, err := d.readManifest()
	if err != nil {
		return change{}, err
	}
	c := change{before: before, after: manifest{}}
	verdicts := make([]verdict, len(files))
	sideBySide(len(files), func(i int) { verdicts[i] = d.judge(files[i], before) })
	var refused []error
	for i, f := range files {
		refused = append(refused, c.add(f, verdicts[i]))
	}
	folded := map[string]bool{}
	for path := range c.after {
		folded[strings.ToLower(path)] = true
	}
	for _, path := range before.paths() {
		switch {
		case !scope.has(path):
			c.after[path] = before[path]
		case !folded[strings.ToLower(path)]:
			d.compareStale(&c, path)
		}
	}
	refused = append(refused, d.checkWritable(&c))
	c.sort()
	return c, errors.Join(refused...)
}

func (c *change) sort() {
	slices.SortFunc(c.writes, func(a, b File) int { return strings.Compare(a.Path, b.Path) })
	for _, paths := range [][]string{c.result.Written, c.result.Unchanged, c.result.Removed, c.result.Left} {
		slices.Sort(paths)
	}
}

// verdict is what was found about one new file.
type verdict struct {
	sum  string // of the new bytes
	same bool   // they are there already
	err  error  // they may not be written
}

// judge looks at what stands where a new file goes.
func (d *disk) judge(f File, before manifest) verdict {
	v := verdict{sum: hash(f.Bytes)}
	there, err := d.read(f.Path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil:
		v.err = err
	case bytes.Equal(there, f.Bytes):
		v.same = true
	case before[f.Path] == "":
		v.err = fmt.Errorf("%s is not ours and stands where a new file must go; move it away or give it another name",
			d.name(f.Path))
	case before[f.Path] != hash(there):
		v.err = d.changed(f.Path)
	}
	return v
}

func (d *disk) changed(path string) error {
	return fmt.Errorf("%s was changed by somebody after it was written; give your copy another name, or delete it", d.name(path))
}

// add enters one new file into the change.
func (c *change) add(f File, v verdict) error {
	c.after[f.Path] = v.sum
	switch {
	case v.err != nil:
		return v.err
	case v.same:
		c.result.Unchanged = append(c.result.Unchanged, f.Path)
	default:
		c.writes = append(c.writes, f)
		c.result.Written = append(c.result.Written, f.Path)
	}
	return nil
}

// compareStale decides on a file that an earlier run wrote and this one does not.
func (d *disk) compareStale(c *change, path string) {
	there, err := d.read(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil || hash(there) != c.before[path]:
		c.result.Left = append(c.result.Left, path)
	default:
		c.removes = append(c.removes, path)
		c.result.Removed = append(c.result.Removed, path)
	}
}

// read reads a plain file of the output. What is no plain file, such as a
// folder or a link, is somebody else's.
func (d *disk) read(path string) ([]byte, error) {
	info, err := d.root.Lstat(path)
	if err == nil && !info.Mode().IsRegular() {
		return nil, fmt.Errorf("%s is not a plain file; move it away", d.name(path))
	}
	var b []byte
	if err == nil {
		b, err = d.root.ReadFile(path)
	}
	return b, d.explain("read", path, err)
}

// checkFolders finds folders that are none, so that each is told once.
func (d *disk) checkFolders(files []File) error {
	var refused []error
	for _, dir := range d.folders(files) {
		info, err := d.root.Stat(dir)
		switch {
		case err != nil:
			refused = append(refused, d.explain("open", dir, err))
		case !info.IsDir():
			refused = append(refused, fmt.Errorf("%s is a file where a folder must be; move it away", d.name(dir)))
		}
	}
	return errors.Join(refused...)
}

// checkWritable finds folders that can't be changed, before anything is.
func (d *disk) checkWritable(c *change) error {
	changed := slices.Clone(c.writes)
	for _, path := range c.removes {
		changed = append(changed, File{Path: path})
	}
	var refused []error
	for _, dir := range d.folders(changed) {
		refused = append(refused, d.explain("write to", dir, writable(d.name(dir))))
	}
	return errors.Join(refused...)
}

// folders are the nearest folders that are there already, sorted.
func (d *disk) folders(files []File) []string {
	set := map[string]bool{}
	for _, f := range files {
		dir := path.Dir(f.Path)
		for dir != "." && !d.exists(dir) {
			dir = path.Dir(dir)
		}
		set[dir] = true
	}
	return sortedKeys(set)
}
