package site_test

import (
	"io/fs"
	"os"
	"strings"
	"testing"
	"testing/fstest"
)

// inGerman is a coach's folder whose studio asks for German.
type inGerman struct{ fs.FS }

func (f inGerman) Open(name string) (fs.File, error) {
	if name != "content/studio.yaml" {
		return f.FS.Open(name)
	}
	text, err := fs.ReadFile(f.FS, name)
	if err != nil {
		return nil, err
	}
	return fstest.MapFS{name: {Data: append(text, "\nlanguage: de\n"...)}}.Open(name)
}

// The demo's site in German is whole: its pages say so, and every link leads
// somewhere, those into the middle of a translated page too.
func TestGermanSite(t *testing.T) {
	root, err := os.OpenRoot("../../..")
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	files := build(t, studio(t, inGerman{root.FS()}, nil))
	checkLinks(t, files, 1000)
	for path, text := range files {
		if isPage(path) && !strings.Contains(text, `<html lang="de"`) {
			t.Errorf("%s does not say that it is in German", path)
		}
	}
	if text := files["site/exercise-tuck-hold.html"]; !strings.Contains(text, "Erst hochdrücken, dann vorlehnen") {
		t.Error("the tuck's first cue is not in German")
	}
	if dir := os.Getenv("GATEPOST_LOOK"); dir != "" { // to look at it in a browser
		save(t, dir+"/de", files)
	}
}
