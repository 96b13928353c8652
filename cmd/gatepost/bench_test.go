package main

import (
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// hall is the demo studio with 300 shared clients, who differ in mass, and its
// public programs.
func hall(b *testing.B) string {
	b.Helper()
	folder := copyOfDemo(b, "*")
	maren, err := os.ReadFile("../../content/clients/maren/assessment.yaml")
	if err != nil {
		b.Fatal(err)
	}
	for i := range 300 {
		text := strings.NewReplacer("page: k7v2qm9xw4tdhz3p", "page: q7m4xk9w"+strings.Map(func(r rune) rune { return r - '0' + 'a' }, fmt.Sprintf("%08d", i)),
			"mass: 58 kg", fmt.Sprintf("mass: %d kg", 50+i%30)).Replace(string(maren))
		file := filepath.Join(folder, "content/clients", fmt.Sprintf("client-%d", i), "assessment.yaml")
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			b.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			b.Fatal(err)
		}
	}
	return folder
}

// The site of 300 clients and the public programs, into an empty folder.
func BenchmarkSiteFirst(b *testing.B) {
	folder := hall(b)
	for b.Loop() {
		b.StopTimer()
		if err := os.RemoveAll(folder + "/output"); err != nil {
			b.Fatal(err)
		}
		b.StartTimer()
		build(b, folder, "publish")
	}
}

// The same where nothing has changed.
func BenchmarkSiteAgain(b *testing.B) {
	folder := hall(b)
	build(b, folder, "publish")
	for b.Loop() {
		build(b, folder, "publish")
	}
}

// The same in a preview, after an edit, until the edited thing and one client's pages can be
// seen. Asked for: 1 s.
func BenchmarkPreviewEdit(b *testing.B) {
	folder := hall(b)
	client := "content/clients/client-7/assessment.yaml"
	edit := func(file, old, new string) func(n int) {
		text, err := os.ReadFile(filepath.Join(folder, file))
		if err != nil {
			if text, err = os.ReadFile("../../" + file); err != nil {
				b.Fatal(err)
			}
		}
		return func(n int) { put(b, folder, file, strings.Replace(string(text), old, fmt.Sprintf(new, n), 1)) }
	}
	edits := map[string]func(n int){
		"client": edit(client, "mass: 57 kg", "mass: 60.%d kg"),
		"style":  edit("templates/style.css", "{", "{/* %d */"),
		"home":   edit("content/pages/home.md", "title: ", "title: %d "),
		"note":   edit("content/notes/quiet-week.md", "title: ", "title: %d "),
	}
	j := &job{path: folder, surroundings: surroundings{out: io.Discard, err: io.Discard, builtIn: builtIn}}
	if err := j.open(); err != nil {
		b.Fatal(err)
	}
	defer j.root.Close()
	if kept, messages := j.remake(); kept == nil {
		b.Fatal(messages)
	}
	for _, name := range slices.Sorted(maps.Keys(edits)) {
		b.Run(name, func(b *testing.B) {
			n := 0
			for b.Loop() {
				n++
				edits[name](n)
				kept, messages := j.remake()
				if kept == nil {
					b.Fatal(messages)
				}
				if files, messages := j.folder(kept, "client-7"); len(files) == 0 {
					b.Fatal(messages)
				}
			}
		})
	}
}
