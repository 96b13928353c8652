package main

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"hash"
	"io"
	"io/fs"
	"os"
	"sync"

	"gatepost/program/publish/store"
)

// said is what a job said, to be said again where there is nothing to do.
type said struct {
	Withheld string // to standard output
	Reported string // to standard error
}

// fresh says whether a part of the output stands as it would be made, and then
// says what making it said.
func (j *job) fresh(part output, source string) bool {
	out, err := j.root.OpenRoot(outputFolder)
	if err != nil || source == "" {
		return false
	}
	defer out.Close()
	note, files, fresh := store.Fresh(out, part.scope(""), source)
	var s said
	if !fresh || json.Unmarshal(note, &s) != nil {
		return false
	}
	io.WriteString(j.err, s.Reported)
	io.WriteString(j.out, s.Withheld)
	j.tell(0, files, 0)
	return true
}

// remember keeps from what the output was made. That it can't be kept is no harm.
func (j *job) remember(source string, s said) {
	out, err := j.root.OpenRoot(outputFolder)
	if err != nil || source == "" {
		return
	}
	defer out.Close()
	note, _ := json.Marshal(s) // two strings: nothing can fail
	_ = store.Remember(out, source, note)
}

// source is a hash of all that a part of the output is made from: the program,
// what is built in, and every file that is read. Empty: it cannot be told.
func (j *job) source(part output) string {
	sum := sha256.New()
	fmt.Fprintf(sum, "%+v\n", part)
	if err := errors.Join(hashProgram(sum), hashFiles(sum, j.builtIn), hashFiles(sum, j.root.FS())); err != nil {
		return ""
	}
	return hex.EncodeToString(sum.Sum(nil))
}

// thisProgram is a hash of the program itself, which a run reads once: it is some
// thirty megabytes.
var thisProgram = sync.OnceValues(func() ([]byte, error) {
	name, err := os.Executable()
	if err != nil {
		return nil, err
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	sum := sha256.New()
	_, err = io.Copy(sum, f)
	return sum.Sum(nil), err
})

func hashProgram(sum hash.Hash) error {
	program, err := thisProgram()
	sum.Write(program)
	return err
}

// longestRead is more than is ever read of a file; of longer ones the size alone
// matters.
const longestRead = 2 << 20

// hashFiles takes in names and bytes below content/ and templates/.
func hashFiles(sum hash.Hash, from fs.FS) error {
	for _, top := range []string{contentFolder, templateFolder} {
		err := fs.WalkDir(from, top, func(name string, entry fs.DirEntry, err error) error {
			switch {
			case errors.Is(err, fs.ErrNotExist) && name == top:
				return nil
			case err != nil || entry.IsDir():
				return err
			case !entry.Type().IsRegular():
				return errors.New("what a link leads to may change unseen")
			}
			return hashFile(sum, from, name, entry)
		})
		if err != nil {
			return err
		}
	}
	return nil
}

func hashFile(sum hash.Hash, from fs.FS, name string, entry fs.DirEntry) error {
	info, err := entry.Info()
	if err != nil {
		return err
	}
	fmt.Fprintf(sum, "%q %d\n", name, info.Size())
	if info.Size() > longestRead {
		return nil
	}
	b, err := fs.ReadFile(from, name)
	sum.Write(b)
	return err
}
