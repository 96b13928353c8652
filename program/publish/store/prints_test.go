package store

import (
	"bytes"
	"errors"
	"os"
	"path"
	"strings"
	"sync"
	"syscall"
	"testing"
)

// batches writes one batch a folder of the files, each from the same source.
func batches(t *testing.T, d *disk, of map[string]string, source, part string) (Result, error) {
	t.Helper()
	r, err := d.begin()
	if err != nil {
		return Result{}, err
	}
	defer r.Close()
	for name, some := range byFolder(of) {
		r.Add(Batch{Name: part + name, Source: source, Note: "made from " + source}, some)
	}
	return r.Commit(nil, part)
}

func byFolder(of map[string]string) map[string][]File {
	all := map[string][]File{}
	for _, f := range files(of) {
		name := path.Dir(f.Path)
		all[name] = append(all[name], f)
	}
	return all
}

// standing are the notes of what stands of the folders of before and after, if it was made
// from a source.
func standing(t *testing.T, root *os.Root, source, part string) map[string]string {
	t.Helper()
	r, err := Begin(root)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	sources := map[string]string{}
	for name := range byFolder(with(before, after)) {
		sources[part+name] = source
	}
	return r.Standing(sources)
}

func TestStanding(t *testing.T) {
	root := folder(t, foreign)
	d := &disk{root: root}
	if _, err := batches(t, d, before, "old", "all: "); err != nil {
		t.Fatal(err)
	}
	note := "made from old"
	all := map[string]string{"all: site": note, "all: site/c": note, "all: print": note}
	same(t, standing(t, root, "old", "all: "), all)
	same(t, standing(t, root, "new", "all: "), map[string]string{})
	same(t, standing(t, root, "", "all: "), map[string]string{})
	same(t, standing(t, root, "old", "site: "), map[string]string{})

	put(t, root, "site/b.html", "by hand")
	same(t, standing(t, root, "old", "all: "), map[string]string{"all: site/c": note, "all: print": note})
	put(t, root, "site/b.html", "b")
	if err := root.Remove("print/x.pdf"); err != nil {
		t.Fatal(err)
	}
	same(t, standing(t, root, "old", "all: "), map[string]string{"all: site": note, "all: site/c": note})
	write(t, root, before) // by somebody who keeps nothing
	same(t, standing(t, root, "old", "all: "), all)

	// Another part leaves of it what is still so, and the other way round.
	if _, err := batches(t, d, after, "new", "other: "); err != nil {
		t.Fatal(err)
	}
	same(t, standing(t, root, "old", "all: "), map[string]string{})
	same(t, len(standing(t, root, "new", "other: ")), 3)
	if _, err := batches(t, d, after, "new", "all: "); err != nil {
		t.Fatal(err)
	}
	same(t, len(standing(t, root, "new", "other: ")), 3)
	same(t, len(standing(t, root, "new", "all: ")), 3)
}

// What stands is taken over as it is, and what nobody makes or keeps any more goes.
func TestKeep(t *testing.T) {
	root := folder(t, foreign)
	d := &disk{root: root}
	if _, err := batches(t, d, before, "old", "all: "); err != nil {
		t.Fatal(err)
	}
	r, err := Begin(root)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	r.Keep("all: site")
	r.Keep("all: print")
	result, err := r.Commit(nil, "all: ")
	if err != nil {
		t.Fatal(err)
	}
	same(t, result, Result{Unchanged: []string{"print/x.pdf", "site/a.html", "site/b.html"}, Removed: []string{"site/c/old.html"}})
	r.Close()
	same(t, len(standing(t, root, "old", "all: ")), 2)
}

// However the file is damaged, nothing stands, and nothing else comes of it.
func TestDamagedPrints(t *testing.T) {
	root := folder(t, foreign)
	d := &disk{root: root}
	if _, err := batches(t, d, before, "old", "all: "); err != nil {
		t.Fatal(err)
	}
	whole, err := root.ReadFile(printsPath)
	if err != nil {
		t.Fatal(err)
	}
	for at := range whole {
		flipped := bytes.Clone(whole)
		flipped[at] ^= 1
		for _, damaged := range [][]byte{flipped, whole[:at]} {
			put(t, root, printsPath, string(damaged))
			if got := d.readPrints(); len(got) > 0 {
				t.Fatalf("at byte %d of %d: %v", at, len(whole), got)
			}
		}
	}
	if _, err := batches(t, d, after, "new", "all: "); err != nil {
		t.Fatal(err)
	}
	same(t, len(standing(t, root, "new", "all: ")), 3)
	same(t, seen(t, root), with(after, foreign))
}

// Stopped anywhere, a run never leaves word of what is not so.
func TestPrintsOfAStoppedRun(t *testing.T) {
	for n := 1; ; n++ {
		root := folder(t, foreign)
		if _, err := batches(t, &disk{root: root}, before, "old", "all: "); err != nil {
			t.Fatal(err)
		}
		_, err := batches(t, &disk{root: root, stop: killer(root, n)}, after, "new", "all: ")
		for _, s := range []struct {
			source string
			files  map[string]string
		}{{"old", before}, {"new", after}} {
			now := standing(t, root, s.source, "all: ") // and finishes what was decided
			there := seen(t, root)
			for name, files := range byFolder(s.files) {
				for _, f := range files {
					if _, ok := now["all: "+name]; ok && there[f.Path] != string(f.Bytes) {
						t.Fatalf("step %d: %s is held to stand as made from %s", n, f.Path, s.source)
					}
				}
			}
		}
		if err == nil {
			return
		}
		if !errors.Is(err, errKilled) {
			t.Fatal(err)
		}
	}
}

// What a newer version of this program keeps may mean what this one does not know.
func TestNewerForm(t *testing.T) {
	root := folder(t, foreign)
	write(t, root, before)
	same(t, string(must(root.ReadFile(formPath))), "1\n")
	for text, want := range map[string]string{"2\n": "was written by a newer version of this program", "\x00": "form is damaged"} {
		put(t, root, formPath, text)
		_, err := Write(root, files(after), nil)
		if err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), "move the output folder away") {
			t.Errorf("%q: %v", text, err)
		}
		same(t, seen(t, root), with(before, foreign))
	}
}

func must(b []byte, err error) []byte {
	if err != nil {
		panic(err)
	}
	return b
}

// A folder of the output may lie on another disk, which no move reaches.
func TestAnotherDisk(t *testing.T) {
	other := func(root *os.Root) func(from, to string) error {
		return func(from, to string) error {
			if strings.HasPrefix(to, "site/") {
				return &os.LinkError{Op: "rename", Old: from, New: to, Err: syscall.EXDEV}
			}
			return root.Rename(from, to)
		}
	}
	for n := 1; ; n++ {
		root := folder(t, foreign)
		write(t, root, before)
		d := &disk{root: root, rename: other(root), stop: killer(root, n)}
		_, err := d.write(files(after), nil)
		d.stop = nil
		if _, again := d.write(files(after), nil); again != nil {
			t.Fatal(again)
		}
		same(t, seen(t, root), with(after, foreign))
		if err == nil {
			return
		}
	}
}

// Files that are added at once from many sides are all there, and one that two bring is
// refused.
func TestAddTogether(t *testing.T) {
	root := folder(t, foreign)
	r, err := Begin(root)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	var wait sync.WaitGroup
	for name, some := range byFolder(after) {
		wait.Go(func() { r.Add(Batch{Name: name, Source: "s"}, some) })
	}
	wait.Wait()
	same(t, seen(t, root), foreign) // nothing yet
	if _, err := r.Commit(nil, ""); err != nil {
		t.Fatal(err)
	}
	same(t, seen(t, root), with(after, foreign))
	r.Close()

	if r, err = Begin(root); err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	r.Add(Batch{}, []File{{Path: "site/a.html", Bytes: []byte("1")}})
	r.Add(Batch{}, []File{{Path: "site/A.html", Bytes: []byte("2")}})
	if _, err := r.Commit(nil, ""); err == nil || !strings.Contains(err.Error(), "written twice") {
		t.Errorf("got: %v", err)
	}
	same(t, seen(t, root), with(after, foreign))
}
