package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"regexp"
	"time"
)

// Keep writes a new file, whole or not at all: beside its place first, and then
// under its name. One that is there already is never overwritten; the error is
// then fs.ErrExist. When Keep returns, the bytes are on the disk.
func Keep(root *os.Root, file string, b []byte) error {
	d := disk{root: root}
	return d.keep(file, b)
}

func (d *disk) keep(file string, b []byte) error {
	if d.exists(file) {
		return fmt.Errorf("cannot write %s: %w", d.name(file), fs.ErrExist)
	}
	if err := d.makeFolder(path.Dir(file)); err != nil {
		return err
	}
	beside := path.Join(path.Dir(file), fmt.Sprintf(".%s.%d", path.Base(file), os.Getpid()))
	if err := d.create(beside, b); err != nil {
		return errors.Join(err, d.remove(beside))
	}
	d.clearKilled(beside)
	if err := d.christen(beside, file); err != nil {
		return errors.Join(err, d.remove(beside))
	}
	return d.syncFolder(path.Dir(file))
}

// christen gives a new file its name. A second name that takes the place of none, and
// then the first taken away: unlike a move, this cannot overwrite. Where a disk
// knows no second names, a move has to do.
func (d *disk) christen(beside, file string) error {
	err := d.root.Link(beside, file)
	switch {
	case errors.Is(err, fs.ErrExist):
		return fmt.Errorf("cannot write %s: %w", d.name(file), fs.ErrExist)
	case err != nil:
		return d.move(beside, file)
	}
	return d.remove(beside)
}

// killed is how long before a file another one has to be begun to be taken for the rest of
// a command that was killed: writing one takes no second (our judgement).
const killed = time.Hour

var besideForm = regexp.MustCompile(`^\..+\.json\.[0-9]+$`)

// clearKilled takes away what killed commands left beside a file that was just made, by
// the disk's own clock. What stays does no harm.
func (d *disk) clearKilled(beside string) {
	mine, err := d.root.Stat(beside)
	if err != nil {
		return
	}
	entries, _ := fs.ReadDir(d.root.FS(), path.Dir(beside))
	for _, e := range entries {
		if info, err := e.Info(); err == nil && besideForm.MatchString(e.Name()) && info.Mode().IsRegular() && mine.ModTime().Sub(info.ModTime()) > killed {
			_ = d.remove(path.Join(path.Dir(beside), e.Name()))
		}
	}
}
