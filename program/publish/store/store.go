package store

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"os"
	"slices"
	"strings"
)

// File is one file to be written. Path lies below the output folder, with
// forward slashes.
type File struct {
	Path  string
	Bytes []byte
}

// Result says what a Write did, as sorted paths.
type Result struct {
	Written   []string
	Unchanged []string
	Removed   []string
	Left      []string // stale, but changed by somebody since: left where they are
	Recovered bool     // an interrupted run was finished first
}

// Scope says which part of the output a Write stands for: folders, written with
// a slash at the end, and single files. The empty Scope is the whole output. What
// has a "!" before it is left alone, whatever else the Scope says.
type Scope []string

func (s Scope) has(path string) bool {
	in := !slices.ContainsFunc(s, func(part string) bool { return !strings.HasPrefix(part, "!") })
	for _, part := range s {
		part, alone := strings.CutPrefix(part, "!")
		if path == part || strings.HasSuffix(part, "/") && strings.HasPrefix(path, part) {
			if alone {
				return false
			}
			in = true
		}
	}
	return in
}

// ErrUnfinished is an error after the decision: part of the output is new, part
// still old, and the next Write or Recover finishes. Any other error means that
// nothing has changed.
var ErrUnfinished = errors.New("put this right and run the command again: it finishes what it began")

// Write makes the scope hold these files and nothing else of ours.
func Write(root *os.Root, files []File, scope Scope) (Result, error) {
	d := disk{root: root}
	return d.write(files, scope)
}

// Recover finishes an interrupted Write that had reached its decision, and says
// whether there was one. Where there was none it touches nothing.
func Recover(root *os.Root) (bool, error) {
	d := disk{root: root}
	if !d.exists(listPath) {
		return false, nil
	}
	unlock, err := d.lock()
	if err != nil {
		return false, err
	}
	defer unlock()
	return d.recover()
}

func (d *disk) write(files []File, scope Scope) (Result, error) {
	r, err := d.begin()
	if err != nil {
		return Result{}, err
	}
	defer r.Close()
	r.Add(Batch{}, files)
	return r.Commit(scope, "")
}

// hash is the SHA-256 of a file's bytes, in hex.
func hash(b []byte) string {
	sum := sha256.Sum256(b)
	return hex.EncodeToString(sum[:])
}
