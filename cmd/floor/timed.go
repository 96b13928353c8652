//go:build floor

package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"os/exec"
	"path/filepath"
	"syscall"
)

// cost is what a process took.
type cost struct {
	seconds float64 // of all processors, the system's for it as well
	peak    float64 // bytes held at once
}

func timed(program string, args ...string) (cost, error) {
	command := exec.Command(program, args...)
	var said bytes.Buffer
	command.Stderr = &said
	if err := command.Run(); err != nil {
		return cost{}, fmt.Errorf("%s: %w\n%.2000s", program, err, said.String())
	}
	state := command.ProcessState
	c := cost{seconds: (state.UserTime() + state.SystemTime()).Seconds()}
	if usage, ok := state.SysUsage().(*syscall.Rusage); ok {
		c.peak = 1024 * float64(usage.Maxrss) // Linux counts in kibibytes: getrusage(2)
	}
	return c, nil
}

// sizeOf counts the files of an output, but for the writer's own.
func sizeOf(folder string) (files int, size int64, err error) {
	err = filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			if entry != nil && entry.Name() == ".gatepost" {
				return fs.SkipDir
			}
			return err
		}
		info, err := entry.Info()
		if err == nil {
			files, size = files+1, size+info.Size()
		}
		return err
	})
	return files, size, err
}
