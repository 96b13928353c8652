package store

import (
	"errors"
	"fmt"
	"os"
	"path"
	"slices"
	"strings"
	"sync"
)

// Run is one writing of output. What is made is added as soon as it is made and waits in
// the staging folder; nothing of the output changes before Commit. A Run may be added to
// from several goroutines at a time.
type Run struct {
	disk
	before    manifest
	prints    prints // of earlier runs
	unlock    func()
	locked    error // why the folder can't be written to; nil: it can
	recovered bool

	mutex   sync.Mutex // guards what follows
	change  change
	batches prints           // of this run
	folded  map[string]bool  // paths in small letters: some disks hold them to be the same
	folders map[string]error // what should be folders and is none
	sound   map[string]bool  // folders that can be written to, or made
	stage   *os.Root         // nil: nothing was staged yet
	refused []error          // why the output can't be as it shall
	failed  error            // the first file that could not be staged: a full disk is said once
}

// Begin takes the lock, finishes what an interrupted run had decided, and reads what earlier
// runs left. Close must follow.
func Begin(root *os.Root) (*Run, error) { return (&disk{root: root}).begin() }

func (d *disk) begin() (*Run, error) {
	r := &Run{disk: *d, unlock: func() {}, batches: prints{}, folded: map[string]bool{}, folders: map[string]error{}, sound: map[string]bool{}}
	unlock, err := d.lock()
	switch {
	case errors.Is(err, errBusy) || err != nil && d.exists(listPath):
		return nil, err
	case err != nil:
		r.locked = err // who changes nothing need not write
	default:
		r.unlock = unlock
		r.recovered, err = d.recover()
	}
	if err == nil || r.locked != nil {
		err = d.checkForm()
	}
	if err == nil {
		r.before, err = d.readManifest()
	}
	if err != nil {
		r.unlock()
		return nil, err
	}
	r.prints = d.readPrints()
	r.change = change{before: r.before, after: manifest{}}
	return r, nil
}

// Look reads what earlier runs left, for who asks what stands and writes nothing: only
// Standing may follow. Where a run was interrupted nothing stands.
func Look(root *os.Root) *Run {
	r := &Run{disk: disk{root: root}, unlock: func() {}}
	var err error
	if r.before, err = r.readManifest(); err == nil && !r.exists(listPath) && r.checkForm() == nil {
		r.prints = r.readPrints()
	}
	return r
}

// Close gives up what was not committed, and lets go of the lock.
func (r *Run) Close() {
	if r.stage != nil {
		r.stage.Close()
	}
	if r.stage != nil && !r.exists(listPath) { // else it was decided, and somebody finishes it
		r.remove(stagePath) // best effort: the next run clears it too
	}
	r.unlock()
}

// Add takes in what was made together. That something can't be is said by Commit.
func (r *Run) Add(b Batch, files []File) {
	verdicts := make([]verdict, len(files))
	sideBySide(len(files), func(i int) {
		if verdicts[i] = r.enter(files[i]); verdicts[i].fresh() {
			verdicts[i].staged = r.put(files[i])
		}
	})
	r.mutex.Lock()
	defer r.mutex.Unlock()
	for i, f := range files {
		r.change.add(f.Path, verdicts[i])
		if err := verdicts[i].err; err != nil && err != errFolder {
			r.refused = append(r.refused, err)
		}
	}
	if b.Name != "" && b.Source != "" {
		r.batches[b.Name] = printOf(b, files, r.change.after)
	}
}

// enter looks at one new file, and at what stands where it goes.
func (r *Run) enter(f File) verdict {
	if err := r.take(f.Path); err != nil {
		return verdict{err: err}
	}
	if err := r.checkFolder(f.Path); err != nil {
		return verdict{err: err}
	}
	return r.judge(f, r.before)
}

// take refuses mistakes of the caller: a path that may not be written, or one that is there
// twice.
func (r *Run) take(path string) error {
	r.mutex.Lock()
	defer r.mutex.Unlock()
	folded := strings.ToLower(path)
	switch {
	case !plainPath(path):
		return fmt.Errorf("store: %q is not a path below the output folder", path)
	case r.folded[folded]:
		return fmt.Errorf("store: %q is written twice", path)
	}
	r.folded[folded] = true
	return nil
}

// put stages a file, and gives its name there.
func (r *Run) put(f File) string {
	stage, name := r.next()
	if stage == nil {
		return ""
	}
	if err := r.createIn(stage, name, path.Join(stagePath, name), f.Bytes); err != nil {
		r.fail(err)
	}
	return name
}

// next is the staging folder and a name in it that nobody has; nil: there is none.
func (r *Run) next() (*os.Root, string) {
	r.mutex.Lock()
	defer r.mutex.Unlock()
	if r.failed == nil && r.stage == nil {
		r.failed = r.openStage()
	}
	if r.failed != nil {
		return nil, ""
	}
	r.change.staged++
	return r.stage, fmt.Sprintf("%05d", r.change.staged)
}

// openStage opens the staging folder once, so that no path is walked for each file.
func (r *Run) openStage() error {
	if r.locked != nil {
		return r.locked
	}
	if err := r.makeFolder(stagePath); err != nil {
		return err
	}
	stage, err := r.root.OpenRoot(stagePath)
	r.stage = stage
	return r.explain("open", stagePath, err)
}

func (r *Run) fail(err error) {
	r.mutex.Lock()
	defer r.mutex.Unlock()
	if r.failed == nil {
		r.failed = err
	}
}

// Commit makes the scope hold what was added or kept, and nothing else of ours. Of the
// batches of earlier runs those are forgotten of which a file was changed, and those whose
// names begin with the part and that this run neither added nor kept; the empty part is
// none.
func (r *Run) Commit(scope Scope, part string) (Result, error) {
	if err := r.finish(scope); err != nil {
		return Result{}, err
	}
	c := &r.change
	c.result.Recovered = r.recovered
	after := r.prints.over(r.batches, c.after, part)
	switch {
	case c.empty() && after.equal(r.prints):
		return c.result, nil
	case c.empty():
		r.writePrints(after) // lost, it is made again: no harm
		return c.result, nil
	}
	return c.result, r.apply(after)
}

// finish compares what was added with all that earlier runs wrote, and gives every reason
// why it can't be.
func (r *Run) finish(scope Scope) error {
	c := &r.change
	for _, path := range c.after.paths() {
		if !scope.has(path) {
			r.refused = append(r.refused, fmt.Errorf("store: %q is outside what is being written", path))
		}
	}
	for _, path := range r.before.paths() {
		switch {
		case !scope.has(path):
			c.after[path] = r.before[path]
		case !r.folded[strings.ToLower(path)]:
			r.compareStale(c, path)
		}
	}
	if len(c.removes) > 0 {
		r.fail(r.locked)
	}
	for _, dir := range sortedKeys(r.folders) {
		r.refused = append(r.refused, r.folders[dir])
	}
	slices.SortFunc(r.refused, func(a, b error) int { return strings.Compare(a.Error(), b.Error()) })
	c.sort()
	return errors.Join(r.failed, errors.Join(r.refused...), r.checkWritable(c))
}

// apply decides and carries out.
func (r *Run) apply(after prints) error {
	if r.stage == nil {
		if err := r.openStage(); err != nil {
			return err
		}
	}
	list := r.change.list(after)
	if err := r.decide(list, after); err != nil {
		return err
	}
	return r.carryOut(list)
}
