package store

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
)

// action is one line of the list: a staged file that moves to its path, or,
// with no staged name, a stale file that is removed while its bytes are ours.
type action struct {
	staged string
	sum    string
	path   string
}

// list is everything decided, in order; the manifest and the prints are last.
func (c *change) list(after prints) []action {
	list := slices.Clone(c.writes)
	for _, path := range c.removes {
		list = append(list, action{sum: c.before[path], path: path})
	}
	return append(list, action{staged: "manifest", sum: hash(c.after.bytes()), path: manifestPath},
		action{staged: "prints", sum: hash(after.bytes()), path: printsPath})
}

// The list is a text of one line an action: verb, staged name, SHA-256, path.
func encode(list []action) []byte {
	var b strings.Builder
	for _, a := range list {
		if a.staged == "" {
			fmt.Fprintf(&b, "remove - %s %s\n", a.sum, a.path)
		} else {
			fmt.Fprintf(&b, "move %s %s %s\n", a.staged, a.sum, a.path)
		}
	}
	return []byte(b.String())
}

func decode(b []byte) ([]action, error) {
	var list []action
	for number, line := range lines(b) {
		part := strings.SplitN(line, " ", 4)
		if len(part) != 4 || !plainPath(part[3]) && part[3] != manifestPath && part[3] != printsPath {
			return nil, fmt.Errorf("line %d is damaged", number+1)
		}
		if part[0] == "remove" {
			part[1] = ""
		}
		list = append(list, action{staged: part[1], sum: part[2], path: part[3]})
	}
	return list, nil
}

// decide writes the list beside what is staged. Once it has its name, the change is
// decided.
func (r *Run) decide(list []action, after prints) error {
	for name, b := range map[string][]byte{"manifest": r.change.after.bytes(), "prints": after.bytes()} {
		if err := r.createIn(r.stage, name, path.Join(stagePath, name), b); err != nil {
			return err
		}
	}
	if err := errors.Join(r.writeForm(), r.syncFolder(stagePath)); err != nil {
		return err
	}
	if err := r.create(newListPath, encode(list)); err != nil {
		return err
	}
	if err := r.move(newListPath, listPath); err != nil {
		return err
	}
	return r.syncFolder(ownPath)
}

// recover carries out a decided list, and clears away what an undecided run
// left. It says whether there was a list.
func (d *disk) recover() (bool, error) {
	b, err := d.root.ReadFile(listPath)
	if errors.Is(err, fs.ErrNotExist) {
		return false, errors.Join(d.remove(newListPath), d.remove(newPrintsPath), d.remove(stagePath))
	}
	if err != nil {
		return false, d.explain("read", listPath, err)
	}
	list, err := decode(b)
	if err != nil {
		return false, fmt.Errorf("%s: %w; move the output folder away and run the command again", d.name(listPath), err)
	}
	return true, d.carryOut(list)
}

// carryOut does what the list says. Done twice, or again from any point, it
// comes to the same.
func (d *disk) carryOut(list []action) error {
	if err := d.checkTargets(list); err != nil {
		return err
	}
	touched, ready := map[string]bool{}, map[string]bool{}
	for _, a := range list {
		if err := d.do(a, ready); err != nil {
			return fmt.Errorf("%w; %w (the new files wait in %s)", err, ErrUnfinished, d.name(stagePath))
		}
		touched[path.Dir(a.path)] = true
	}
	for _, dir := range sortedKeys(touched) {
		if err := d.syncFolder(dir); err != nil {
			return err
		}
	}
	return errors.Join(d.remove(listPath), d.remove(stagePath))
}

// checkTargets sees that what moves will replace is still what the run that decided them
// found: between the two a machine may have been off for a day, and somebody at work.
func (d *disk) checkTargets(list []action) error {
	before, err := d.readManifest()
	if err != nil {
		return err
	}
	errs := make([]error, len(list))
	sideBySide(len(list), func(i int) {
		if a := list[i]; a.staged != "" && plainPath(a.path) {
			if err := d.checkTarget(a, before); err != nil && d.exists(path.Join(stagePath, a.staged)) {
				errs[i] = err
			}
		}
	})
	if err := errors.Join(errs...); err != nil {
		return fmt.Errorf("%w; %w (the new files wait in %s)", err, ErrUnfinished, d.name(stagePath))
	}
	return nil
}

func (d *disk) checkTarget(a action, before manifest) error {
	there, err := d.read(a.path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case hash(there) == before[a.path] || hash(there) == a.sum:
		return nil
	}
	return d.changed(a.path)
}

// do carries out one action. Ready are the folders known to be there; a removal
// may take folders away, and then none is known.
func (d *disk) do(a action, ready map[string]bool) error {
	if a.staged == "" {
		clear(ready)
		if b, err := d.read(a.path); err == nil && hash(b) == a.sum {
			if err := d.remove(a.path); err != nil {
				return err
			}
		}
		return d.prune(a.path)
	}
	if dir := path.Dir(a.path); !ready[dir] {
		if err := d.makeFolder(dir); err != nil {
			return err
		}
		ready[dir] = true
	}
	from := path.Join(stagePath, a.staged)
	err := d.move(from, a.path)
	if errors.Is(err, fs.ErrNotExist) && !d.exists(from) {
		return nil // moved before the run was interrupted
	}
	return err
}

func sortedKeys[of any](set map[string]of) []string {
	keys := make([]string, 0, len(set))
	for key := range set {
		keys = append(keys, key)
	}
	slices.Sort(keys)
	return keys
}
