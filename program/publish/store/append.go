package store

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
)

// Append adds to the end of a file, or makes it. more is given what the file
// holds and says what to add; when it adds nothing, or fails, the file stays as
// it is. Nothing that was there is ever written again, so that a crash can at
// worst leave the end of the new bytes missing.
//
// Of several commands at once, each waits until the one before it is done, and
// more sees what that one added. When Append returns, the bytes are on the disk.
func Append(root *os.Root, file string, more func(text []byte) ([]byte, error)) error {
	d := disk{root: root}
	return d.append(file, more)
}

func (d *disk) append(file string, more func([]byte) ([]byte, error)) error {
	f, created, err := d.openLocked(file)
	if err != nil {
		return d.explain("write", file, err)
	}
	defer f.Close() // and lets go of the lock
	err = d.addTo(f, file, more)
	if info, failed := f.Stat(); created && failed == nil && info.Size() == 0 {
		d.root.Remove(file) // an empty file is not worth an error
	}
	return err
}

func (d *disk) addTo(f *os.File, file string, more func([]byte) ([]byte, error)) error {
	text, err := io.ReadAll(f)
	if err != nil {
		return d.explain("read", file, err)
	}
	add, err := more(text)
	if err != nil || len(add) == 0 {
		return err
	}
	err = d.step("write", file, func() error {
		_, err := f.Write(add)
		if err != nil {
			err = errors.Join(err, f.Truncate(int64(len(text)))) // as on a full disk
		}
		return err
	})
	if err == nil {
		err = d.step("sync", file, f.Sync)
	}
	if err == nil && len(text) == 0 {
		err = d.syncFolder(path.Dir(file))
	}
	return err
}

// openLocked opens a file for adding to it and waits for the lock. Editors put
// another file in the place of the one they read: the one locked must still be
// the one that is there.
func (d *disk) openLocked(file string) (f *os.File, created bool, err error) {
	const tries = 100
	for range tries {
		f, created, err := d.openToAdd(file)
		if err != nil {
			return nil, false, err
		}
		if err := waitForLock(f); err != nil {
			f.Close()
			return nil, false, fmt.Errorf("it cannot be locked: %w", err)
		}
		mine, err1 := f.Stat()
		there, err2 := d.root.Stat(file)
		if err1 == nil && err2 == nil && os.SameFile(mine, there) {
			return f, created, nil
		}
		f.Close()
	}
	return nil, false, errors.New("somebody keeps putting another file in its place")
}

func (d *disk) openToAdd(file string) (f *os.File, created bool, err error) {
	f, err = d.root.OpenFile(file, os.O_RDWR|os.O_APPEND, 0)
	if !errors.Is(err, fs.ErrNotExist) {
		return f, false, err
	}
	f, err = d.root.OpenFile(file, os.O_RDWR|os.O_APPEND|os.O_CREATE, 0o644)
	return f, true, err
}
