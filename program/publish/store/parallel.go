package store

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// sideBySide does n pieces of work, several at once: a disk reads and syncs
// many files in little more than the time of one. Four for each processor, for
// most of the time is spent waiting (our judgement; measured at 0.4 ms a file
// one by one, 0.2 ms with eight).
func sideBySide(n int, work func(i int)) {
	var next atomic.Int64
	var wait sync.WaitGroup
	for range min(n, 4*runtime.NumCPU()) {
		wait.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				work(i)
			}
		})
	}
	wait.Wait()
}
