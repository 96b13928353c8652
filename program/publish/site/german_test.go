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
	for page, want := range map[string]string{
		"exercise-tuck-hold": "Erst hochdrücken, dann vorlehnen", "program-ropes-and-bands": "unter den Glockenseilen",
		"find-ropes-and-bands": "Gestreckte Arme mit Bändern", "level-ropes-and-bands-2": "schmal", "note-quiet-week": "Muskeln sind nach Tagen",
	} {
		if !strings.Contains(files["site/"+page+".html"], want) {
			t.Errorf("%s does not say %q", page, want)
		}
	}
	if dir := os.Getenv("GATEPOST_LOOK"); dir != "" { // to look at it in a browser
		save(t, dir+"/de", files)
	}
}
