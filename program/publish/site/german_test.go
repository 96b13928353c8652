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
	t.Run("narrow", func(t *testing.T) { // its words are longer
		const client = "c/k7v2qm9xw4tdhz3p/"
		narrow(t, written(t, files), "index.html programs.html find-ropes-and-bands.html find-off-the-wall.html find-off-the-block.html find-up-the-wall.html"+
			" level-ropes-and-bands-6.html level-up-the-wall-2.html level-off-the-wall-3-week-1-day-1.html exercises.html roadmap-press-to-handstand.html note-quiet-week.html "+
			client+"index.html "+client+"day-2027-02-22.html "+client+"exercises.html "+client+"phone.html")
	})
	if dir := os.Getenv("GATEPOST_LOOK"); dir != "" { // to look at it in a browser
		save(t, dir+"/de", files)
	}
}
