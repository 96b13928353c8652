package main

import (
	"context"
	"io/fs"
	"path/filepath"
	"strings"
	"time"

	"github.com/fsnotify/fsnotify"
)

// quiet is how long nothing may happen before a change counts as done: editors
// replace files in several steps (our judgement).
const quiet = 100 * time.Millisecond

// watch tells of changes in content/ and templates/ until the context ends.
// Folders are watched and not files, because editors put new files in the place
// of old ones.
func (j *job) watch(ctx context.Context) (<-chan struct{}, error) {
	watcher, err := fsnotify.NewWatcher()
	if err != nil {
		return nil, err
	}
	if err := watcher.Add(j.path); err != nil { // templates/ may come later
		watcher.Close()
		return nil, err
	}
	for _, folder := range []string{contentFolder, templateFolder} {
		watchBelow(watcher, filepath.Join(j.path, folder))
	}
	changes := make(chan struct{})
	go func() {
		defer close(changes)
		defer watcher.Close()
		j.forward(ctx, watcher, changes)
	}()
	return changes, nil
}

// forward gathers events until there is quiet, and passes one on.
func (j *job) forward(ctx context.Context, watcher *fsnotify.Watcher, changes chan<- struct{}) {
	calm := time.NewTimer(0)
	<-calm.C
	for {
		select {
		case <-ctx.Done():
			return
		case event, ok := <-watcher.Events:
			if !ok {
				return
			}
			if j.concerns(event) {
				if event.Has(fsnotify.Create) {
					watchBelow(watcher, event.Name)
				}
				calm.Reset(quiet)
			}
		case <-watcher.Errors: // too many events at once: some are lost, so look again
			calm.Reset(quiet)
		case <-calm.C:
			select {
			case changes <- struct{}{}:
			case <-ctx.Done():
				return
			}
		}
	}
}

// concerns says whether an event is about what is read: below content/ or
// templates/, not hidden, not an editor's backup.
func (j *job) concerns(event fsnotify.Event) bool {
	below, err := filepath.Rel(j.path, event.Name)
	top, _, _ := strings.Cut(filepath.ToSlash(below), "/")
	name := filepath.Base(event.Name)
	return err == nil && (top == contentFolder || top == templateFolder) && !event.Has(fsnotify.Chmod) &&
		!strings.HasPrefix(name, ".") && !strings.HasSuffix(name, "~")
}

// watchBelow watches a folder and all below it. What is no folder, or is gone
// again, needs no watch.
func watchBelow(watcher *fsnotify.Watcher, folder string) {
	_ = filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
		if err == nil && entry.IsDir() {
			_ = watcher.Add(path)
		}
		return nil
	})
}
