package intake

import (
	"path"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"gatepost/program"
)

// thin reads a folder in which one file is another, over a library with little of
// everything: all of it is read for every input. The words for faults are read once. A
// studio speaks the language of its translations.
func thin(f *testing.F) func(file, text string) (program.Studio, program.Problems) {
	mine, builtIn := fstest.MapFS{}, fstest.MapFS{}
	for name, file := range files(f, "testdata/thin.txtar") {
		if built, ok := strings.CutPrefix(name, "library "); ok {
			builtIn[built] = file
		} else {
			mine[name] = file
		}
	}
	translated := with(mine, studioFile, string(mine[studioFile].Data)+"language: nl\n")
	english := wordsFrom(library(f), original)
	return func(file, text string) (program.Studio, program.Problems) {
		folder := newFolder(with(mine, file, text), builtIn)
		if strings.Contains(file, "/nl") {
			folder.coach = with(translated, file, text)
		}
		folder.english = func() program.Words { return english }
		return folder.read(zeros{}, "")
	}
}

// Whatever stands in an assessment, reading ends, without a panic, with a client
// or with a problem that says why not; and every problem has a place in a file
// and an advice. Shrinking is slow here: run with -fuzzminimizetime 1x.
func FuzzAssessment(f *testing.F) {
	const file = "content/clients/maren/assessment.yaml"
	good := string(sound(f)[file].Data)
	f.Add(good)
	f.Add(string(files(f, "testdata/thin.txtar")[file].Data)) // short: a slip hits a value more often
	f.Add(strings.ReplaceAll(good, "\n", "\r\n"))
	f.Add("name: [\nborn: {}\n? a\n: b\n")
	f.Add("a: &a [*a]\n---\n- x\n...\n")
	f.Add("bands:\n - {pulls: [{}, {at: 1 cm}]}\n - 3\n - null\ntests: [{}, {step: tuck, bands: [a, a]}]\nrig:\n")
	f.Add(strings.Replace(good, "hold: 10 s, by", "reps: 5, by", 1) + "  - {step: tuck, reps: 3, pad: 5 cm}\n")
	read := thin(f)
	f.Fuzz(func(t *testing.T, text string) {
		studio, problems := read(file, text)
		checkOutcome(t, len(studio.Clients)+len(studio.Waiting) == 1, problems)
	})
}

// The same for an exercise, front matter and body.
func FuzzExercise(f *testing.F) {
	const file = "content/exercises/planche-lean.md"
	good := string(library(f)[file].Data)
	f.Add(good)
	f.Add(strings.Replace(good, "---", "", 1))
	f.Add("---\nname: x\n---\n## Set-up\n## Cues\n- *a*\n```\n## Faults\n```\n")
	f.Add("---\r\n\r\n---\r\n")
	read := thin(f)
	f.Fuzz(func(t *testing.T, text string) {
		studio, problems := read(file, text)
		e, ok := studio.Library.Exercise("planche-lean")
		checkOutcome(t, ok && len(e.Cues) >= 3 && e.SetUp != "", problems)
	})
}

// The same for a road map.
func FuzzRoadMap(f *testing.F) {
	const file = "content/roadmaps/planche.yaml"
	good := string(library(f)[file].Data)
	f.Add(good)
	f.Add(strings.Replace(good, "  - {kind: scale, exercise: tuck-on-scale}\n", "", 1))
	f.Add("load: lift\nentry: [{exercise: x, fold: 130 deg}, {exercise: y, hold: 15 s, ahead: 18 cm}]\nsteps: [{id: a, lift: {stance: 60 deg, open: 100 deg, block: 40 cm}, gate: {sets: 3, reps: 3}}, {lift: {stance: 0 deg, lower: yes}, press: {}, gate: {hold: 1 s}}]\n")
	f.Add("load: press\nsteps: [{id: a, press: {rest: wall, gap: 15 cm}, gate: {sets: 3, reps: 5}}, {press: {rest: toes, trunk: 90 deg}, pose: {}, gate: {hold: 1 s}}]\n")
	f.Add("steps: [{id: a, pose: {legs: [{}, {}]}}, {gate: {hold: 1 s}}]\n")
	read := thin(f)
	f.Fuzz(func(t *testing.T, text string) {
		studio, problems := read(file, text)
		m, ok := studio.Library.RoadMap("planche")
		checkOutcome(t, ok && len(m.Steps) >= 2, problems)
	})
}

// others are the files that no other target reads.
var others = []string{"content/studio.yaml", "content/rules.yaml", "content/clients/maren/coach.yaml", "content/programs/open-hours.yaml",
	"content/notes/a.md", "content/pages/home.md", "content/words/en.yaml", "content/words/nl.yaml", "content/nl/exercises/planche-lean.md",
	"content/nl/roadmaps/planche.yaml", "content/nl/pages/home.md", "content/clients/maren/plans/2027-01-04-1.json"}

// The same for each of the others.
func FuzzOthers(f *testing.F) {
	known := strings.NewReplacer("wall line", "planche lean", "ring row", "tuck hold", "Ring row", "tuck hold", "ring-row", "tuck-hold", "middle, narrow", "narrow")
	for _, name := range []string{"studio", "wishes-sound", "program", "notes", "words", "words-own", "translation", "plans-sound"} {
		for file, at := range files(f, "testdata/cases/"+name+".txtar") {
			which := slices.IndexFunc(others, func(o string) bool { return o == file || path.Dir(o) == path.Dir(file) && path.Dir(o) != "content" })
			if which >= 0 {
				f.Add(uint8(which), known.Replace(string(at.Data)))
			}
		}
	}
	read := thin(f)
	f.Fuzz(func(t *testing.T, which uint8, text string) {
		_, problems := read(others[int(which)%len(others)], text)
		checkOutcome(t, true, problems)
	})
}

func checkOutcome(t *testing.T, read bool, problems program.Problems) {
	t.Helper()
	if !read && !problems.Stop() {
		t.Error("nothing was read, and nothing is wrong")
	}
	for _, p := range problems {
		if p.File == "" || p.Message == "" || p.Advice == "" {
			t.Errorf("a problem without place, message or advice: %+v", p)
		}
	}
	reported(problems)
}
