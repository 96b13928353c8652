package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"runtime"
	"syscall"
)

// Where the writer keeps its own things, below the output folder.
const (
	ownPath       = ".gatepost"
	formPath      = ownPath + "/form"
	lockPath      = ownPath + "/lock"
	manifestPath  = ownPath + "/manifest"
	printsPath    = ownPath + "/prints"
	newPrintsPath = ownPath + "/prints.new"
	stagePath     = ownPath + "/staged"
	listPath      = ownPath + "/moves"
	newListPath   = ownPath + "/moves.new"
)

// disk is the output folder. Every change to it goes through step, so that a
// test can stop a run between any two of them.
type disk struct {
	root   *os.Root
	stop   func(step, path string) error // called before each change; nil outside tests
	rename func(from, to string) error   // nil outside tests: the root's
}

func (d *disk) step(verb, path string, change func() error) error {
	if d.stop != nil {
		if err := d.stop(verb, path); err != nil {
			return err
		}
	}
	return d.explain(verb, path, change())
}

// explain names the file as the coach knows it, and leaves out the system call.
func (d *disk) explain(verb, path string, err error) error {
	if err == nil {
		return nil
	}
	var pathError *fs.PathError
	var linkError *os.LinkError
	switch {
	case errors.As(err, &pathError):
		err = pathError.Err
	case errors.As(err, &linkError):
		err = linkError.Err
	}
	return fmt.Errorf("cannot %s %s: %w", verb, d.name(path), err)
}

// name is the path as seen from where the command runs.
func (d *disk) name(path string) string {
	return filepath.ToSlash(filepath.Join(d.root.Name(), path))
}

func (d *disk) exists(path string) bool {
	_, err := d.root.Lstat(path)
	return err == nil
}

func (d *disk) makeFolder(path string) error {
	if info, err := d.root.Stat(path); err == nil && info.IsDir() {
		return nil
	}
	return d.step("make the folder", path, func() error { return d.root.MkdirAll(path, 0o755) })
}

// create writes a new file and syncs it.
func (d *disk) create(path string, b []byte) error { return d.createIn(d.root, path, path, b) }

// createIn creates a file of a folder that is open; path is its whole name.
func (d *disk) createIn(folder *os.Root, name, path string, b []byte) error {
	return d.step("write", path, func() error {
		f, err := folder.Create(name)
		if err != nil {
			return err
		}
		_, err = f.Write(b)
		return errors.Join(err, f.Sync(), f.Close())
	})
}

func (d *disk) move(from, to string) error {
	return d.step("write", to, func() error {
		rename := d.rename
		if rename == nil {
			rename = d.root.Rename
		}
		err := rename(from, to)
		if errors.Is(err, syscall.EXDEV) { // a folder of the output lies on another disk
			err = d.carry(from, to)
		}
		return err
	})
}

// carry moves a file to another disk: beside its place first, and then under its name.
// Interrupted, it begins anew.
func (d *disk) carry(from, to string) error {
	b, err := d.root.ReadFile(from)
	if err != nil {
		return err
	}
	beside := path.Join(path.Dir(to), ".gatepost-"+path.Base(to))
	f, err := d.root.Create(beside)
	if err != nil {
		return err
	}
	_, err = f.Write(b)
	if err = errors.Join(err, f.Sync(), f.Close()); err == nil {
		err = d.root.Rename(beside, to)
	}
	if err != nil {
		return errors.Join(err, d.root.Remove(beside))
	}
	return d.root.Remove(from)
}

// remove takes a file or a whole folder away; one that is not there is no error.
func (d *disk) remove(path string) error {
	if !d.exists(path) {
		return nil
	}
	return d.step("remove", path, func() error { return d.root.RemoveAll(path) })
}

// prune removes the folder of a removed file and those above it, as far as they
// are empty.
func (d *disk) prune(file string) error {
	for dir := path.Dir(file); dir != "."; dir = path.Dir(dir) {
		info, err := d.root.Lstat(dir)
		if err != nil {
			continue
		}
		if !info.IsDir() || !d.empty(dir) {
			return nil
		}
		if err := d.step("remove", dir, func() error { return d.root.Remove(dir) }); err != nil {
			return err
		}
	}
	return nil
}

func (d *disk) empty(dir string) bool {
	entries, err := fs.ReadDir(d.root.FS(), dir)
	return err == nil && len(entries) == 0
}

// syncFolder makes the names in a folder last. Windows cannot and need not.
func (d *disk) syncFolder(path string) error {
	if runtime.GOOS == "windows" || !d.exists(path) {
		return nil
	}
	return d.step("sync", path, func() error {
		f, err := d.root.Open(path)
		if err != nil {
			return err
		}
		return errors.Join(f.Sync(), f.Close())
	})
}
