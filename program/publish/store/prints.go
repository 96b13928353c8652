package store

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strconv"
	"strings"
	"sync/atomic"
)

// Batch is what was made together, of one source.
type Batch struct {
	Name   string // of the part and whose it is
	Source string // stands for all that it was made from; empty: nobody can tell
	Note   string // for who asks again
}

// print is what is kept of a batch: the manifest's word for its files as they were then.
type print struct {
	Name, Source, Note string
	Files              []string // by path
	Sum                string   // of the manifest's lines of these
}

// prints are those of a file, by name.
type prints map[string]print

func printOf(b Batch, files []File, m manifest) print {
	p := print{Name: b.Name, Source: b.Source, Note: b.Note, Files: []string{}}
	for _, f := range files {
		p.Files = append(p.Files, f.Path)
	}
	slices.Sort(p.Files)
	p.Sum = m.sumOf(p.Files)
	return p
}

// sumOf is a hash of the lines of some files.
func (m manifest) sumOf(paths []string) string {
	var b bytes.Buffer
	for _, path := range paths {
		fmt.Fprintf(&b, "%s  %s\n", m[path], path)
	}
	return hash(b.Bytes())
}

// printsForm is the first line of the file, before the hash of all below it.
const printsForm = "gatepost prints 1 "

func (p prints) bytes() []byte {
	var b bytes.Buffer
	for _, name := range sortedKeys(p) {
		line, _ := json.Marshal(p[name]) // strings: nothing can fail
		b.Write(append(line, '\n'))
	}
	return append([]byte(printsForm+hash(b.Bytes())+"\n"), b.Bytes()...)
}

func (p prints) equal(other prints) bool { return bytes.Equal(p.bytes(), other.bytes()) }

// readPrints reads what earlier runs kept. A file that is damaged or of another version is
// as good as none.
func (d *disk) readPrints() prints {
	all := prints{}
	b, err := d.root.ReadFile(printsPath)
	first, rest, _ := strings.Cut(string(b), "\n")
	if err != nil || first != printsForm+hash([]byte(rest)) {
		return all
	}
	for _, line := range lines([]byte(rest)) {
		var p print
		if json.Unmarshal([]byte(line), &p) != nil {
			return prints{}
		}
		all[p.Name] = p
	}
	return all
}

func (d *disk) writePrints(p prints) error {
	return errors.Join(d.create(newPrintsPath, p.bytes()), d.move(newPrintsPath, printsPath))
}

// over are the prints after a run: its own, and of the earlier ones those that still say
// what is there.
func (p prints) over(made prints, after manifest, part string) prints {
	all := prints{}
	for name, old := range p {
		if forgotten := part != "" && strings.HasPrefix(name, part); !forgotten && after.sumOf(old.Files) == old.Sum {
			all[name] = old
		}
	}
	for name, fresh := range made {
		all[name] = fresh
	}
	return all
}

// Standing are the notes of those batches whose source is the same as it was, and all of
// whose files are there as they were written; sources are by name.
func (r *Run) Standing(sources map[string]string) map[string]string {
	var names, files []string
	for _, name := range sortedKeys(sources) {
		p, ok := r.prints[name]
		if ok && sources[name] != "" && p.Source == sources[name] && r.before.sumOf(p.Files) == p.Sum {
			names, files = append(names, name), append(files, p.Files...)
		}
	}
	slices.Sort(files)
	files = slices.Compact(files)
	changed := make([]atomic.Bool, len(files))
	sideBySide(len(files), func(i int) {
		there, err := r.read(files[i])
		changed[i].Store(err != nil || hash(there) != r.before[files[i]])
	})
	notes := map[string]string{}
	for _, name := range names {
		if !slices.ContainsFunc(r.prints[name].Files, func(path string) bool {
			i, _ := slices.BinarySearch(files, path)
			return changed[i].Load()
		}) {
			notes[name] = r.prints[name].Note
		}
	}
	return notes
}

// Keep takes a batch that stands as it is.
func (r *Run) Keep(name string) {
	p := r.prints[name]
	for _, path := range p.Files {
		err := r.take(path)
		r.mutex.Lock()
		if err != nil {
			r.refused = append(r.refused, err)
		} else {
			r.change.add(path, verdict{sum: r.before[path], same: true})
		}
		r.mutex.Unlock()
	}
	r.mutex.Lock()
	defer r.mutex.Unlock()
	r.batches[name] = p
}

// Forget takes back that a batch may be kept.
func (r *Run) Forget(name string) {
	r.mutex.Lock()
	defer r.mutex.Unlock()
	delete(r.batches, name)
}

// form is the version of what this package keeps below .gatepost.
const form = 1

// checkForm refuses an output of a newer version, whose manifest may say more than is
// understood here.
func (d *disk) checkForm() error {
	b, err := d.root.ReadFile(formPath)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	written, wrong := strconv.Atoi(strings.TrimSpace(string(b)))
	switch {
	case err != nil:
		return d.explain("read", formPath, err)
	case wrong != nil:
		return fmt.Errorf("%s is damaged; move the output folder away and run the command again", d.name(formPath))
	case written > form:
		return fmt.Errorf("%s was written by a newer version of this program; use that one, or move the output folder away", cmp.Or(d.name("."), "the output"))
	}
	return nil
}

// writeForm says which version wrote.
func (d *disk) writeForm() error {
	if d.exists(formPath) {
		return nil
	}
	return d.create(formPath, fmt.Appendf(nil, "%d\n", form))
}
