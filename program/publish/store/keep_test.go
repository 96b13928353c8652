package store

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
	"time"
)

func openRoot(t *testing.T) *os.Root {
	t.Helper()
	root, err := os.OpenRoot(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Close() })
	return root
}

func TestKeepNeverOverwrites(t *testing.T) {
	root := openRoot(t)
	if err := Keep(root, "a/plans/1.json", []byte("first")); err != nil {
		t.Fatal(err)
	}
	if err := Keep(root, "a/plans/1.json", []byte("second")); !errors.Is(err, fs.ErrExist) {
		t.Errorf("the second time: %v", err)
	}
	// Somebody was quicker, between the look and the name.
	d := disk{root: root}
	d.stop = func(verb, path string) error {
		if verb == "write" {
			return root.WriteFile("a/plans/2.json", []byte("theirs"), 0o644)
		}
		return nil
	}
	if err := d.keep("a/plans/2.json", []byte("ours")); !errors.Is(err, fs.ErrExist) {
		t.Errorf("a race: %v", err)
	}
	for file, want := range map[string]string{"a/plans/1.json": "first", "a/plans/2.json": "theirs"} {
		if got, err := root.ReadFile(file); string(got) != want {
			t.Errorf("%s: %q, %v", file, got, err)
		}
	}
	left, _ := filepath.Glob(filepath.Join(root.Name(), "a/plans/.*"))
	if len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

// Stopped before any of its steps, Keep leaves the whole file or none.
func TestKeepIsAllOrNothing(t *testing.T) {
	stopped := errors.New("stopped")
	for steps := range 8 {
		root := openRoot(t)
		d := disk{root: root}
		n := 0
		d.stop = func(string, string) error {
			if n++; n > steps {
				return stopped
			}
			return nil
		}
		err := d.keep("plans/1.json", []byte("whole"))
		got, missing := root.ReadFile("plans/1.json")
		if missing == nil && string(got) != "whole" || err == nil && missing != nil {
			t.Errorf("stopped after %d steps: %q, %v, %v", steps, got, missing, err)
		}
		if err == nil {
			return
		}
	}
	t.Error("it never came to an end")
}

// What a killed command left beside a plan goes with the next that is kept; what another
// is writing just now stays, and so does what is not ours.
func TestKeepClearsWhatAKilledOneLeft(t *testing.T) {
	root := openRoot(t)
	if err := Keep(root, "plans/1.json", []byte("first")); err != nil {
		t.Fatal(err)
	}
	yesterday := time.Now().Add(-24 * time.Hour)
	for name, old := range map[string]bool{".2.json.4711": true, ".2.json.4712": false, ".hidden": true} {
		if err := root.WriteFile("plans/"+name, []byte("half"), 0o644); err != nil {
			t.Fatal(err)
		}
		if old {
			if err := root.Chtimes("plans/"+name, yesterday, yesterday); err != nil {
				t.Fatal(err)
			}
		}
	}
	if err := Keep(root, "plans/2.json", []byte("second")); err != nil {
		t.Fatal(err)
	}
	for name, stays := range map[string]bool{".2.json.4711": false, ".2.json.4712": true, ".hidden": true, "1.json": true, "2.json": true} {
		if _, err := root.Stat("plans/" + name); (err == nil) != stays {
			t.Errorf("%s: %v", name, err)
		}
	}
}
