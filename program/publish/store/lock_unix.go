//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package store

import (
	"os"
	"syscall"
)

func lockFile(f *os.File) error {
	return syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
}

// waitForLock waits until nobody else holds the lock.
func waitForLock(f *os.File) error {
	for {
		err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX)
		if err != syscall.EINTR {
			return err
		}
	}
}

// writable asks the system whether this user may change a folder's entries.
func writable(dir string) error {
	const mayWrite = 2 // W_OK in unistd.h (POSIX)
	return syscall.Access(dir, mayWrite)
}
