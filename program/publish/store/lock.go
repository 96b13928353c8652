package store

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
)

var errBusy = errors.New("another command is writing to")

// lock keeps other commands out until unlock. The system lets go of the lock
// when a command ends, however it ends, so that a killed one bars nobody; the
// file itself stays.
func (d *disk) lock() (unlock func(), err error) {
	if err := d.makeFolder(ownPath); err != nil {
		return nil, err
	}
	f, err := d.root.OpenFile(lockPath, os.O_RDWR|os.O_CREATE, 0o644)
	if err != nil {
		return nil, d.explain("write", lockPath, err)
	}
	if err := lockFile(f); err != nil {
		holder, _ := io.ReadAll(io.LimitReader(f, 64))
		f.Close()
		return nil, fmt.Errorf("%w %s%s; run this one again when it is done", errBusy, d.name("."), strings.TrimSuffix(string(holder), "\n"))
	}
	f.Truncate(0) // who holds it is only for the message above: errors do no harm
	f.WriteAt(fmt.Appendf(nil, " (process %d)\n", os.Getpid()), 0)
	return func() { f.Close() }, nil
}
