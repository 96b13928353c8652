package main

import (
	"fmt"
	"os"
	"runtime"
	"sync"
)

// sideBySide does n pieces of work on all processors. Each must keep to its own
// data. On a terminal a line counts them; it is gone when all are done.
func (j *job) sideBySide(n int, noun string, work func(i int)) {
	var wait sync.WaitGroup
	var mutex sync.Mutex
	next, done := 0, 0
	counts := n > 10 && isTerminal(j.err)
	take := func(finished int) int {
		mutex.Lock()
		defer mutex.Unlock()
		if done += finished; counts {
			fmt.Fprintf(j.err, "\r%d of %d %s", done, n, noun)
		}
		next++
		return next - 1
	}
	for range min(n, runtime.GOMAXPROCS(0)) {
		wait.Go(func() {
			for i := take(0); i < n; i = take(1) {
				work(i)
			}
		})
	}
	wait.Wait()
	if counts {
		fmt.Fprint(j.err, "\r\x1b[K") // back to the start of the line, and clear it
	}
}

// isTerminal says whether somebody may be watching.
func isTerminal(w any) bool {
	file, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := file.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
