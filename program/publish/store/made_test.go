package store

import (
	"os"
	"testing"
)

func TestFresh(t *testing.T) {
	dir := t.TempDir()
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	scope := Scope{"site/"}
	write := func(text string, more ...File) {
		t.Helper()
		if _, err := Write(root, append(more, File{Path: "site/a.html", Bytes: []byte(text)}), scope); err != nil {
			t.Fatal(err)
		}
	}
	fresh := func(source string) bool {
		_, _, ok := Fresh(root, scope, source)
		return ok
	}
	write("one", File{Path: "site/b.html", Bytes: []byte("b")})
	if fresh("first") {
		t.Error("fresh, though nobody said from what")
	}
	if err := Remember(root, "first", []byte("said\nso")); err != nil {
		t.Fatal(err)
	}
	if note, n, ok := Fresh(root, scope, "first"); !ok || n != 2 || string(note) != "said\nso" {
		t.Errorf("%q, %d files, %v", note, n, ok)
	}
	if fresh("second") || fresh("") {
		t.Error("fresh from another source")
	}
	write("one", File{Path: "site/b.html", Bytes: []byte("b")})
	if !fresh("first") {
		t.Error("forgotten, though nothing changed")
	}
	for _, spoil := range []func() error{
		func() error { return os.WriteFile(dir+"/site/a.html", []byte("mine"), 0o644) },
		func() error { return os.Remove(dir + "/site/a.html") },
	} {
		if err := spoil(); err != nil {
			t.Fatal(err)
		}
		if fresh("first") {
			t.Error("fresh, though a file is not as it was written")
		}
	}
	write("one")
	if fresh("first") {
		t.Error("fresh, though something was written since")
	}
}
