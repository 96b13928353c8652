package viewtest

import (
	"bufio"
	"bytes"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"

	"gatepost/program"
)

// Library holds what the program names, with the words of content/words/en.yaml.
func Library() *program.Library {
	return &program.Library{
		RoadMaps: []program.RoadMap{{ID: "planche", Name: "Planche", Hands: program.HandsSupport, Steps: roadMap(),
			Rungs: []program.Rung{{Kind: program.RungLean, Exercise: "planche-lean"}},
			File:  "content/roadmaps/planche.yaml"}},
		Exercises: exercises(),
		Words:     Words(),
	}
}

// FixtureNote is a note of the program's own, which no words file need hold.
const FixtureNote = "fixture-no-time"

func roadMap() []program.Step {
	var all []program.Step
	for _, name := range []string{"tuck", "half-open tuck", "open tuck", "advanced tuck", "one-leg half lay",
		"open half lay", "straddle", "full"} {
		id := strings.ReplaceAll(name, " ", "-")
		all = append(all, program.Step{ID: id, Name: name, Exercise: id + "-hold", Gate: gate(3, 10, 0), Sides: sides(id)})
	}
	return all
}

func sides(id string) int {
	if id == "one-leg-half-lay" {
		return 2
	}
	return 0
}

func exercises() []program.Exercise {
	var all []program.Exercise
	add := func(id, name string, role program.Role, trains program.Purpose, cues ...string) {
		all = append(all, program.Exercise{ID: id, Name: name, Role: role, Trains: []program.Purpose{trains},
			Cues: cues, SetUp: "Set up as shown.", MakeEasier: "Less.", MakeHarder: "More.",
			Faults: []string{"Bent elbows."}, File: "content/exercises/" + id + ".md", Line: 12})
	}
	for _, s := range roadMap() {
		add(s.Exercise, strings.ToUpper(s.Name[:1])+s.Name[1:]+" hold", program.RoleMain, program.ForStep,
			"Push the floor away", "Elbows locked, pits forward", "Breathe out and count aloud")
	}
	add("planche-lean", "Planche lean", program.RoleSecond, program.ForLean, "Shoulders ahead of the hands")
	add("wrist-preparation", "Wrist preparation", program.RolePrepare, program.ForWrists, "Slow circles")
	add("elbow-preparation", "Elbow preparation", program.RolePrepare, program.ForElbows, "Slow down")
	add("scapular-push-up", "Scapular push-up", program.RolePrepare, program.ForBlades, "Only the shoulder blades move")
	add("pull-up", "Pull-up", program.RolePull, program.ForPullUp, "Elbows to the pockets")
	add("band-face-pull", "Band pull to the face", program.RolePull, program.ForRearShoulder, "Thumbs back")
	add("straight-arm-raise", "Straight-arm raise", program.RoleStrength, program.ForRaise, "Ribs down")
	add("hollow-hold", "Hollow hold", program.RoleTrunk, program.ForTrunk, "Low back into the floor")
	add("straddle-stretch", "Straddle stretch", program.RoleMobility, program.ForStraddle, "Knees to the ceiling")
	return all
}

// Words reads content/words/en.yaml of this repository: two levels, one text a
// line. An absent file gives no words.
func Words() program.Words {
	_, here, _, _ := runtime.Caller(0)
	data, err := os.ReadFile(filepath.Join(filepath.Dir(here), "../../../../content/words/en.yaml"))
	if err != nil {
		return program.Words{}
	}
	words, section := program.Words{"note." + FixtureNote: "No room for the {exercise} in {minutes} minutes."}, ""
	lines := bufio.NewScanner(bytes.NewReader(data))
	for lines.Scan() {
		name, text, ok := strings.Cut(lines.Text(), ":")
		switch {
		case !ok || strings.HasPrefix(strings.TrimSpace(name), "#"):
		case !strings.HasPrefix(name, " "):
			section = strings.TrimSpace(name)
		default:
			words[section+"."+strings.TrimSpace(name)] = unquote(strings.TrimSpace(text))
		}
	}
	return words
}

func unquote(s string) string {
	if text, err := strconv.Unquote(s); err == nil {
		return text
	}
	return strings.Trim(s, "'")
}
