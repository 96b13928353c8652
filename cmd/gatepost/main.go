// Gatepost plans training blocks for straight-arm and hand-balance skills from
// a coach's folder, and prints them as a website and as PDFs.
//
// This package is the command: flags, exit codes and wiring. It is the only one
// with a clock and with a source of chance, and, beside the store that writes
// the output, the only one that touches the disk.
//
// Exit codes: 0 done; 1 a problem in what somebody wrote, or on disk; 2 wrong
// usage. Results go to standard output, everything else to standard error.
// Every problem of every file is reported. The output of a client whose files have
// one stays as it was; a problem of what every client needs, the studio's file, the
// library or the words, leaves everything as it was.
package main

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"runtime/debug"
	"time"
)

// surroundings are what the command is given from outside, so that a test can
// give something else.
type surroundings struct {
	in       io.Reader
	out, err io.Writer
	now      func() time.Time
	chance   io.Reader
	builtIn  fs.FS           // holds content/ and templates/
	until    context.Context // ends a preview; nil: an interrupt alone does
}

func main() {
	// Many short-lived pages and documents, little to keep: a larger target of
	// the garbage collector saves a quarter of the time (measured, 200 clients),
	// and the soft limit costs nearly none of it.
	debug.SetGCPercent(400)
	debug.SetMemoryLimit(160 << 20)
	os.Exit(run(os.Args[1:], surroundings{
		in: os.Stdin, out: os.Stdout, err: os.Stderr, now: time.Now, chance: rand.Reader, builtIn: builtIn,
	}))
}

// run carries out one command line and gives its exit code.
func run(args []string, around surroundings) int {
	root := commands(around)
	root.SetArgs(args)
	err := root.Execute()
	var usage usageError
	var failed failure
	switch {
	case err == nil:
		return 0
	case errors.As(err, &usage) || !errors.As(err, &failed): // the rest is from reading the command line
		fmt.Fprintf(around.err, "gatepost: %v\nSee gatepost --help.\n", err)
		return 2
	case !errors.Is(err, errReported):
		fmt.Fprintf(around.err, "gatepost: %v\n", err)
	}
	return 1
}

// usageError is a command line that can't be understood.
type usageError struct{ error }

func wrongUsage(format string, args ...any) error { return usageError{fmt.Errorf(format, args...)} }

// failure is what went wrong in a command that was understood.
type failure struct{ error }

func (f failure) Unwrap() error { return f.error }

// errReported ends a command whose problems have been reported already.
var errReported = errors.New("problems were reported")
