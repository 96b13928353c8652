package store

import (
	"os"
	"syscall"
	"unsafe"
)

var lockFileEx = syscall.NewLazyDLL("kernel32.dll").NewProc("LockFileEx")

// lockFile locks one byte far beyond the end, so that the text stays readable.
// Flags and argument order as documented for LockFileEx.
func lockFile(f *os.File) error { return lockAs(f, failImmediately|exclusive) }

// waitForLock waits until nobody else holds the lock.
func waitForLock(f *os.File) error { return lockAs(f, exclusive) }

const failImmediately, exclusive = 1, 2

func lockAs(f *os.File, flags uintptr) error {
	at := syscall.Overlapped{OffsetHigh: 1}
	ok, _, err := lockFileEx.Call(f.Fd(), flags, 0, 1, 0, uintptr(unsafe.Pointer(&at)))
	if ok == 0 {
		return err
	}
	return nil
}

// writable is not asked on Windows, where a folder's read-only mark means
// something else: a move that is refused says so itself.
func writable(string) error { return nil }
