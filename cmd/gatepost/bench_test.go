package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
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
		text := strings.NewReplacer("page: k7v2qm9xw4tdhz3p", fmt.Sprintf("page: page%08d", i),
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

// The same in a preview, after one client's file was edited.
func BenchmarkPreviewEdit(b *testing.B) {
	folder := hall(b)
	j := &job{path: folder, surroundings: surroundings{out: io.Discard, err: io.Discard, builtIn: builtIn}}
	if err := j.open(); err != nil {
		b.Fatal(err)
	}
	defer j.root.Close()
	file := filepath.Join(folder, "content/clients/client-7/assessment.yaml")
	text, err := os.ReadFile(file)
	if err != nil {
		b.Fatal(err)
	}
	if files, messages := j.remake(); files == nil {
		b.Fatal(messages)
	}
	n := 0
	for b.Loop() {
		n++
		edited := bytes.Replace(text, []byte("mass: 57 kg"), fmt.Appendf(nil, "mass: %d kg", 60+n%20), 1)
		if err := os.WriteFile(file, edited, 0o644); err != nil {
			b.Fatal(err)
		}
		j.remake()
	}
}
