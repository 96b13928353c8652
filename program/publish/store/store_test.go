package store

import (
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// folder opens a new output folder that already holds these files.
func folder(t *testing.T, files map[string]string) *os.Root {
	t.Helper()
	root, err := os.OpenRoot(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Close() })
	for path, text := range files {
		put(t, root, path, text)
	}
	return root
}

func put(t *testing.T, root *os.Root, path, text string) {
	t.Helper()
	if err := root.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := root.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// seen is what a visitor finds: every file but the writer's own.
func seen(t *testing.T, root *os.Root) map[string]string {
	t.Helper()
	found := map[string]string{}
	err := fs.WalkDir(root.FS(), ".", func(path string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case path == ownPath:
			return fs.SkipDir
		case entry.IsDir():
			return nil
		}
		b, err := root.ReadFile(path)
		found[path] = string(b)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return found
}

func files(of map[string]string) []File {
	var list []File
	for _, path := range slices.Sorted(maps.Keys(of)) {
		list = append(list, File{path, []byte(of[path])})
	}
	return list
}

func write(t *testing.T, root *os.Root, of map[string]string, scope ...string) Result {
	t.Helper()
	result, err := Write(root, files(of), scope)
	if err != nil {
		t.Fatal(err)
	}
	return result
}

func same(t *testing.T, got, want any) {
	t.Helper()
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

func TestWriteMakesTheOutputWhatWasAsked(t *testing.T) {
	root := folder(t, nil)
	first := map[string]string{"site/index.html": "home", "site/c/x/week-1.html": "w", "print/maren/plan.pdf": "pdf"}
	same(t, write(t, root, first).Written, []string{"print/maren/plan.pdf", "site/c/x/week-1.html", "site/index.html"})
	same(t, seen(t, root), first)

	second := map[string]string{"site/index.html": "new home", "print/maren/plan.pdf": "pdf"}
	same(t, write(t, root, second), Result{
		Written: []string{"site/index.html"}, Unchanged: []string{"print/maren/plan.pdf"}, Removed: []string{"site/c/x/week-1.html"},
	})
	same(t, seen(t, root), second)
	if _, err := root.Stat("site/c"); err == nil {
		t.Error("a folder that became empty stays")
	}
}

func TestWriteAgainTouchesNothing(t *testing.T) {
	root := folder(t, nil)
	of := map[string]string{"site/index.html": "home", "site/style.css": "css"}
	write(t, root, of)
	long := time.Date(2020, 1, 1, 0, 0, 0, 0, time.UTC)
	for _, path := range []string{"site/index.html", manifestPath} {
		if err := root.Chtimes(path, long, long); err != nil {
			t.Fatal(err)
		}
	}
	d := disk{root: root, stop: func(verb, path string) error {
		t.Errorf("%s %s, with nothing to do", verb, path)
		return nil
	}}
	if _, err := d.write(files(of), nil); err != nil {
		t.Fatal(err)
	}
	of["site/style.css"] = "other css"
	write(t, root, of)
	if info, _ := root.Stat("site/index.html"); !info.ModTime().Equal(long) {
		t.Error("an unchanged file was written again")
	}
}

func TestWriteKeepsToItsScope(t *testing.T) {
	root := folder(t, nil)
	all := map[string]string{"site/index.html": "home", "print/maren/a.pdf": "a", "print/maren/b.pdf": "b", "print/joss/a.pdf": "j"}
	write(t, root, all)
	write(t, root, map[string]string{"print/maren/a.pdf": "a2"}, "print/maren/")
	want := map[string]string{"site/index.html": "home", "print/maren/a.pdf": "a2", "print/joss/a.pdf": "j"}
	same(t, seen(t, root), want)
	write(t, root, map[string]string{"print/anselm/test-sheet.pdf": "t"}, "print/anselm/test-sheet.pdf")
	want["print/anselm/test-sheet.pdf"] = "t"
	same(t, seen(t, root), want)
	for _, scope := range []Scope{{"print/"}, {"site/", "!site/index.html"}, {"!site/"}} {
		if _, err := Write(root, files(map[string]string{"site/index.html": "x"}), scope); err == nil {
			t.Errorf("%v: a file outside the scope was taken", scope)
		}
	}
	write(t, root, map[string]string{"print/maren/a.pdf": "a3"}, "print/", "!print/joss/") // Anselm's is stale, Joss's is left alone
	want["print/maren/a.pdf"] = "a3"
	delete(want, "print/anselm/test-sheet.pdf")
	same(t, seen(t, root), want)
	same(t, write(t, root, want).Unchanged, slices.Sorted(maps.Keys(want)))
}

func TestForeignFilesStay(t *testing.T) {
	root := folder(t, map[string]string{"site/CNAME": "bells.example", "notes.txt": "mine"})
	write(t, root, map[string]string{"site/index.html": "home", "site/old.html": "old", "site/edited.html": "as made"})
	put(t, root, "site/edited.html", "as edited")
	result := write(t, root, map[string]string{"site/index.html": "home"})
	same(t, result.Removed, []string{"site/old.html"})
	same(t, result.Left, []string{"site/edited.html"})
	same(t, seen(t, root), map[string]string{
		"site/CNAME": "bells.example", "notes.txt": "mine", "site/index.html": "home", "site/edited.html": "as edited"})
}

func TestWhatIsNotOursIsNeverReplaced(t *testing.T) {
	root := folder(t, map[string]string{"site/index.html": "a page of the coach's own", "site/same.html": "same"})
	write(t, root, map[string]string{"print/plan.pdf": "plan"}, "print/")
	put(t, root, "print/plan.pdf", "plan with pencil notes")
	before := seen(t, root)
	_, err := Write(root, files(map[string]string{
		"site/index.html": "home", "site/same.html": "same", "site/new.html": "new", "print/plan.pdf": "new plan"}), nil)
	if err == nil {
		t.Fatal("somebody's file was replaced")
	}
	for _, part := range []string{"site/index.html is not ours", "print/plan.pdf was changed by somebody"} {
		if !strings.Contains(err.Error(), part) {
			t.Errorf("the message lacks %q:\n%v", part, err)
		}
	}
	same(t, seen(t, root), before)
}

func TestWhatStandsInTheWayIsNamedOnce(t *testing.T) {
	root := folder(t, map[string]string{"site": "a file", "print/plan.pdf/note.txt": "a folder"})
	_, err := Write(root, files(map[string]string{"site/a.html": "", "site/b.html": ""}), nil)
	if err == nil || strings.Count(err.Error(), "site is a file where a folder must be") != 1 {
		t.Errorf("got: %v", err)
	}
	if _, err := Write(root, files(map[string]string{"print/plan.pdf": ""}), nil); err == nil {
		t.Error("a folder was replaced by a file")
	}
}

func TestNothingLeavesTheFolder(t *testing.T) {
	root := folder(t, nil)
	for _, path := range []string{"../x", "/x", "a/../../x", "", ".", ".gatepost/manifest", "a\nb", `a\b`} {
		if _, err := Write(root, []File{{Path: path}}, nil); err == nil {
			t.Errorf("%q was taken", path)
		}
	}
	if _, err := Write(root, []File{{Path: "a.html"}, {Path: "A.html"}}, nil); err == nil {
		t.Error("two paths that some disks hold to be one were taken")
	}
	outside := t.TempDir()
	if err := os.Symlink(outside, filepath.Join(root.Name(), "site")); err != nil {
		t.Skip("no symbolic links here")
	}
	if _, err := Write(root, []File{{Path: "site/index.html"}}, nil); err == nil {
		t.Error("a link led out of the folder")
	}
	if entries, _ := os.ReadDir(outside); len(entries) > 0 {
		t.Error("something was written outside")
	}
}

func TestDamagedManifest(t *testing.T) {
	root := folder(t, map[string]string{manifestPath: "rubbish\n", "site/index.html": "home"})
	_, err := Write(root, nil, nil)
	if err == nil || !strings.Contains(err.Error(), "manifest:1: is damaged") {
		t.Errorf("got: %v", err)
	}
}

// The manifest is what the sha256sum tool of the GNU core utilities reads.
func TestManifestAgainstSha256sum(t *testing.T) {
	tool, err := exec.LookPath("sha256sum")
	if err != nil {
		if os.Getenv("GATEPOST_REQUIRE_TOOLS") == "1" {
			t.Fatal(err)
		}
		t.Skip("left out: sha256sum is not installed")
	}
	root := folder(t, nil)
	write(t, root, map[string]string{"site/index.html": "home", "print/übung plan.pdf": "pdf"})
	command := exec.Command(tool, "--check", "--strict", manifestPath)
	command.Dir = root.Name()
	out, err := command.CombinedOutput()
	if err != nil || strings.Count(string(out), ": OK") != 2 {
		t.Errorf("%v\n%s", err, out)
	}
}
