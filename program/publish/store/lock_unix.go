//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package store

import (
	"os"
	"syscall"
)

func lockFile(f *os.File) error {
	return syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
}

// writable asks the system whether this user may change a folder's entries.
func writable(dir string) error {
	const mayWrite = 2 // W_OK in unistd.h (POSIX)
	return syscall.Access(dir, mayWrite)
}
