package intake

import (
	"testing"
	"testing/fstest"

	"gatepost/program"
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

// A public program and a note are read in the studio's language, bands and all; what
// they ask for, and their day, stays.
func TestOwnProgramsAndNotesAreTranslated(t *testing.T) {
	folder, built := dutch(t)
	for file, text := range map[string]string{
		"programs/open-hours.yaml": openHours + "bands: [{name: narrow, rest: 100 cm, pulls: [{at: 130 cm, force: 1.6 kg}, {at: 190 cm, force: 3.0 kg}]}]\nrig: {anchor: 215 cm}\n",
		"notes/quiet.md":           "---\ntitle: Quiet\ndate: 2027-01-18\n---\nRest.\n",
	} {
		folder["content/"+file] = &fstest.MapFile{Data: []byte(text)}
	}
	before, _ := Read(folder, built, zeros{})
	if p, n := before.Public[0], before.Notes[0]; p.Title != "Open hours" || n.Title != "Quiet" {
		t.Errorf("without a translation: %q, %q", p.Title, n.Title)
	}
	for file, text := range map[string]string{
		"programs/open-hours.yaml": "title: Open uren\nblurb: |\n  Drie dagen\n  per week.\nbands: [smal]\n",
		"notes/quiet.md":           "---\ntitle: Stil\n---\nRust.\n",
	} {
		folder["content/nl/"+file] = &fstest.MapFile{Data: []byte(text)}
	}
	studio, problems := Read(folder, built, zeros{})
	if problems.Stop() {
		t.Fatal(reported(problems))
	}
	p, n := studio.Public[0], studio.Notes[0]
	if p.Title != "Open uren" || p.Blurb != "Drie dagen per week." || p.Bands[0].Name != "smal" || p.Goal != before.Public[0].Goal {
		t.Errorf("%+v", p)
	}
	if n.Title != "Stil" || n.Body != "Rust." || n.On != program.NewDate(2027, 1, 18) || n.File != "content/nl/notes/quiet.md" || n.Line != 4 {
		t.Errorf("%+v", n)
	}
}
