package intake

import (
	"testing"
	"testing/fstest"
)

// dutch is a built-in library with a word of another language in each place
// that a translation has, and a studio that asks for it.
func dutch(t *testing.T) (folder, built fstest.MapFS) {
	folder, built = sound(t), library(t)
	folder["content/studio.yaml"].Data = append(folder["content/studio.yaml"].Data, "language: nl\nsite: https://example.org/\n"...)
	for file, text := range map[string]string{
		"words/nl.yaml":             "week: {build: opbouwweek, number: \"week {number}\"}\nrole: {main: hoofdwerk}\nkit: {wall: muur}\nexercise: {faults: Fouten}\n",
		"nl/exercises/tuck-hold.md": "---\nname: Hurk\n---\n## Set-up\nHanden.\n## Cues\n- duw\n- leun\n- tel\n## Fouten\n- krom\n## Easier\nMinder.\n## Harder\nVerder.\n",
		"nl/pages/home.md":          "---\ntitle: Begin\n---\nWelkom.\n",
		"nl/roadmaps/planche.yaml":  "name: Planche\nbody: Lees.\nsteps: {tuck: hurk, advanced-tuck: open hurk, one-leg-half-lay: half, straddle: spreid}\n",
	} {
		built["content/"+file] = &fstest.MapFile{Data: []byte(text)}
	}
	return folder, built
}

// A translation changes words, and nothing else: numbers, kit and links are
// those of the original.
func TestTranslationChangesWordsOnly(t *testing.T) {
	folder, built := dutch(t)
	studio, problems := Read(folder, built, zeros{})
	if problems.Stop() {
		t.Fatal(reported(problems))
	}
	english, _ := Read(sound(t), library(t), zeros{})
	got, _ := studio.Library.Exercise("tuck-hold")
	want, _ := english.Library.Exercise("tuck-hold")
	if got.Name != "Hurk" || got.Faults[0] != "krom" || got.Dose != want.Dose || len(got.Easier) != len(want.Easier) || got.Role != want.Role {
		t.Errorf("%+v", got)
	}
	step, _ := studio.Library.RoadMaps[0].Step("advanced-tuck")
	same, _ := english.Library.RoadMaps[0].Step("advanced-tuck")
	if step.Name != "open hurk" || step.Pose != same.Pose || step.Gate != same.Gate {
		t.Errorf("%+v", step)
	}
	if studio.Library.RoadMaps[0].Body != "Lees." {
		t.Errorf("%q", studio.Library.RoadMaps[0].Body)
	}
	if page := studio.Library.Pages[1]; page.Title != "Begin" || page.File != "built-in content/nl/pages/home.md" || page.Line != 4 {
		t.Errorf("%+v", page)
	}
}

// What the coach wrote stands, whatever translation of the built-in came along;
// the coach's own translation of it counts.
func TestOwnWordsStand(t *testing.T) {
	folder, built := dutch(t)
	own := built["content/exercises/tuck-hold.md"].Data
	folder["content/exercises/tuck-hold.md"] = &fstest.MapFile{Data: own}
	folder["content/exercises/planche-lean.md"] = built["content/exercises/planche-lean.md"]
	folder["content/nl/exercises/planche-lean.md"] = built["content/nl/exercises/tuck-hold.md"]
	studio, problems := Read(folder, built, zeros{})
	if problems.Stop() {
		t.Fatal(reported(problems))
	}
	for id, name := range map[string]string{"tuck-hold": "Tuck hold", "planche-lean": "Hurk"} {
		if e, _ := studio.Library.Exercise(id); e.Name != name {
			t.Errorf("%s is called %s", id, e.Name)
		}
	}
}

// Names in an assessment may be those of the language, or the English ids.
func TestNamesOfTheLanguage(t *testing.T) {
	folder, built := dutch(t)
	file := folder["content/clients/maren/assessment.yaml"]
	file.Data = changed(t, file, "kit: [parallettes, wall] => kit: [parallettes, Muur]\n{step: tuck, hold: 14 s} => {step: Hurk, hold: 14 s}\n")
	studio, problems := Read(folder, built, zeros{})
	if problems.Stop() {
		t.Fatal(reported(problems))
	}
	maren := studio.Clients[0]
	if maren.Kit[1] != "wall" || maren.Tests[0].Step != "tuck" || maren.Tests[1].Step != "advanced-tuck" {
		t.Errorf("%v %+v", maren.Kit, maren.Tests)
	}
}
