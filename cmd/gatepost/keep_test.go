package main

import (
	"bytes"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// A preview that keeps what it made must show what making everything would.
func TestKeepingChangesNothing(t *testing.T) {
	t.Parallel()
	folder := copyOfDemo(t, oneProgram)
	shorten(t, folder, everyClient)
	shorten(t, folder, everyProgram)
	rewrite(t, filepath.Join(folder, "content/programs/bare-floor.yaml"), "step: advanced tuck", "step: tuck")
	j := &job{path: folder, surroundings: surroundings{out: io.Discard, err: io.Discard, builtIn: builtIn}}
	if err := j.open(); err != nil {
		t.Fatal(err)
	}
	defer j.root.Close()
	look := func() map[string][]byte { // at every page
		kept, messages := j.remake()
		if kept == nil {
			t.Fatal(messages)
		}
		all := kept.files()
		for _, folder := range kept.later(j) {
			files, messages := folder()
			if messages != "" {
				t.Fatal(messages)
			}
			maps.Copy(all, files)
		}
		return all
	}
	before := look()
	for _, edit := range []struct{ file, old, new string }{
		{"content/clients/maren/assessment.yaml", "mass: 58 kg", "mass: 64 kg"},
		{"content/clients/maren/assessment.yaml", "share: site", "share: print"},
		{"content/studio.yaml", "coach: Tilda Roake", "coach: Tilda Roak"},
		{"content/pages/home.md", "title: ", "title: Our "},
		{"content/words/en.yaml", "  build: Build", "  build: Work"},
		{"templates/session.html", "<h1>", "<h1>Our "},
		{"content/notes/quiet-week.md", "title: ", "title: Our "},
		{"content/programs/bare-floor.yaml", "minutes: 45", "minutes: 40"},
	} {
		if _, err := os.Stat(filepath.Join(folder, edit.file)); err != nil {
			b, err := os.ReadFile("../../" + edit.file)
			if err != nil {
				t.Fatal(err)
			}
			put(t, folder, edit.file, string(b))
		}
		rewrite(t, filepath.Join(folder, edit.file), edit.old, edit.new)
		kept := look()
		j.kept = nil
		fresh := look()
		if !maps.EqualFunc(kept, fresh, bytes.Equal) {
			t.Errorf("%s => %s: what was kept differs from what is made anew", edit.old, edit.new)
		}
		if maps.EqualFunc(kept, before, bytes.Equal) {
			t.Errorf("%s => %s: nothing changed", edit.old, edit.new)
		}
		before = kept
	}
	if pages := slices.Collect(maps.Keys(before)); len(pages) < 150 {
		t.Errorf("only %d files", len(pages))
	}
}

func rewrite(t *testing.T, file, old, new string) {
	t.Helper()
	text, err := os.ReadFile(file)
	if err == nil {
		if !bytes.Contains(text, []byte(old)) {
			t.Fatalf("%s has no %q", file, old)
		}
		err = os.WriteFile(file, bytes.Replace(text, []byte(old), []byte(new), 1), 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
}

// Nothing is made again where nothing changed, and everything is said again.
func TestAgain(t *testing.T) {
	t.Parallel()
	folder := copyOfDemo(t, "")
	shorten(t, folder, everyClient)
	rewrite(t, filepath.Join(folder, "content/clients/joss/assessment.yaml"), "  elbows: fine", "  conditions: [hernia]\n  elbows: fine")
	run := func() (string, string) {
		var out, err bytes.Buffer
		if code := run([]string{"publish", "--folder", folder}, surroundings{out: &out, err: &err, builtIn: builtIn}); code != 0 {
			t.Fatalf("exit code %d: %s", code, err.String())
		}
		return out.String(), err.String()
	}
	run()
	made, reported := run()
	j := &job{path: folder, surroundings: surroundings{out: io.Discard, err: io.Discard, builtIn: builtIn}}
	if err := j.open(); err != nil {
		t.Fatal(err)
	}
	defer j.root.Close()
	fresh := func(part output) bool {
		w := j.writing(part)
		defer w.close()
		if err := w.begin(); err != nil {
			t.Fatal(err)
		}
		w.look()
		return w.whole()
	}
	if !fresh(siteOutput) {
		t.Error("the output is not held to be fresh")
	}
	if fresh(wholeOutput) {
		t.Error("the paper, never made, is held to be fresh")
	}
	again, reportedAgain := run()
	if again != made || reported != reportedAgain || !bytes.Contains([]byte(made), []byte("joss: no program yet")) {
		t.Errorf("said\n%s%s\nthen\n%s%s", made, reported, again, reportedAgain)
	}
	rewrite(t, filepath.Join(folder, "content/studio.yaml"), "Tilda Roake", "Tilda Roak")
	if fresh(siteOutput) {
		t.Error("fresh, though a file changed")
	}
}
