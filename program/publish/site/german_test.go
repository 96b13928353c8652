package site_test

import (
	"os"
	"strings"
	"testing"

	"gatepost/program/publish/view/viewtest"
)

// The demo's site in German is whole: its pages say so, and every link leads
// somewhere, those into the middle of a translated page too.
func TestGermanSite(t *testing.T) {
	root, err := os.OpenRoot("../../..")
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	files := build(t, studio(t, viewtest.Spoken{FS: root.FS(), Language: "de"}, nil))
	checkLinks(t, files, 1000)
	for path, text := range files {
		if isPage(path) && !strings.Contains(text, `<html lang="de"`) {
			t.Errorf("%s does not say that it is in German", path)
		}
		if strings.Contains(text, "Wdh..") { // the abbreviation has its stop already
			t.Errorf("%s: a sentence ends in two stops", path)
		}
	}
	if text := files["site/exercise-tuck-hold.html"]; !strings.Contains(text, "Erst hochdrücken, dann vorlehnen") {
		t.Error("the tuck's first cue is not in German")
	}
	if dir := os.Getenv("GATEPOST_LOOK"); dir != "" { // to look at it in a browser
		save(t, dir+"/de", files)
	}
}
