package main

import (
	"testing"
	"testing/fstest"
)

// The file systems shown as one obey the rules of package io/fs, as its own
// test knows them; a folder's own listing of the top is not needed.
func TestMounts(t *testing.T) {
	for top, file := range map[string]string{"content": "words/en.yaml", "templates": "base.html"} {
		if err := fstest.TestFS(builtIn[top], file); err != nil {
			t.Errorf("%s: %v", top, err)
		}
		if f, err := builtIn.Open(top + "/" + file); err != nil {
			t.Error(err)
		} else {
			f.Close()
		}
	}
	for _, name := range []string{".", "..", "content/../templates/base.html", "studio.yaml", "content/studio.yaml", "content/clients"} {
		if _, err := builtIn.Open(name); err == nil {
			t.Errorf("%s can be opened", name)
		}
	}
}
