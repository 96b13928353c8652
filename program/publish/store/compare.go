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
	writes  []action
	removes []string
	staged  int // files so far
	before  manifest
	after   manifest
	result  Result
}

func (c *change) empty() bool {
	return len(c.writes) == 0 && len(c.removes) == 0 && bytes.Equal(c.before.bytes(), c.after.bytes())
}

func (c *change) sort() {
	slices.SortFunc(c.writes, func(a, b action) int { return strings.Compare(a.path, b.path) })
	for _, paths := range [][]string{c.result.Written, c.result.Unchanged, c.result.Removed, c.result.Left} {
		slices.Sort(paths)
	}
}

// verdict is what was found about one new file.
type verdict struct {
	sum    string // of the new bytes
	same   bool   // they are there already
	staged string // the name under which they wait
	err    error  // they may not be written
}

// fresh reports whether the bytes have to be written.
func (v verdict) fresh() bool { return v.err == nil && !v.same }

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
func (c *change) add(path string, v verdict) {
	c.after[path] = v.sum
	switch {
	case v.err != nil:
	case v.same:
		c.result.Unchanged = append(c.result.Unchanged, path)
	default:
		c.writes = append(c.writes, action{staged: v.staged, sum: v.sum, path: path})
		c.result.Written = append(c.result.Written, path)
	}
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

// checkFolder finds a folder that is none. It is told once, with all that go there.
func (r *Run) checkFolder(file string) error {
	r.mutex.Lock()
	sound := r.sound[path.Dir(file)]
	r.mutex.Unlock()
	if sound {
		return nil
	}
	dir := r.nearest(path.Dir(file))
	info, err := r.root.Stat(dir)
	r.mutex.Lock()
	defer r.mutex.Unlock()
	switch {
	case err != nil:
		err = r.explain("open", dir, err)
	case !info.IsDir():
		err = fmt.Errorf("%s is a file where a folder must be; move it away", r.name(dir))
	default:
		r.sound[path.Dir(file)] = true
		return nil
	}
	r.folders[dir] = err
	return errFolder
}

// errFolder is the error of a file whose folder is told of.
var errFolder = errors.New("its folder is none")

// checkWritable finds folders that can't be changed, before anything is.
func (d *disk) checkWritable(c *change) error {
	set := map[string]bool{}
	for _, a := range c.writes {
		set[d.nearest(path.Dir(a.path))] = true
	}
	for _, file := range c.removes {
		set[d.nearest(path.Dir(file))] = true
	}
	var refused []error
	for _, dir := range sortedKeys(set) {
		refused = append(refused, d.explain("write to", dir, writable(d.name(dir))))
	}
	return errors.Join(refused...)
}

// nearest is a folder, or the nearest one above it that is there already.
func (d *disk) nearest(dir string) string {
	for dir != "." && !d.exists(dir) {
		dir = path.Dir(dir)
	}
	return dir
}
