package intake

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"gatepost/program"
)

// names that a blank may be for.
var blankNames = []string{"Maren", `Zoë "Z" O'Hara #1: yes`, "12", "null"}

// A blank that nobody has filled in is no problem: the client waits, and is said to.
func TestBlankWaits(t *testing.T) {
	studio, _ := Read(sound(t), library(t), nil)
	for _, name := range blankNames {
		blank := string(Blank(name, &studio.Library, program.NewDate(2027, 1, 4)))
		for _, text := range []string{blank, strings.ReplaceAll(blank, "\n", "\r\n"), strings.Replace(blank, "share: print", "share: site", 1)} {
			folder := with(with(sound(t), "content/clients/oda/assessment.yaml", text), "content/clients/oda/log.csv", "nonsense")
			studio, problems := Read(folder, library(t), zeros{})
			want := "content/clients/oda/assessment.yaml: warning: waiting: nobody has filled it in yet\n    Fill in what stands empty. Until then this client is left out.\n\n1 warning\n"
			if got := reported(problems); got != want || len(studio.Clients) != 1 || len(studio.Waiting) != 1 || studio.Waiting[0] != "oda" {
				t.Errorf("%s: %d clients, %v wait\n%s", name, len(studio.Clients), studio.Waiting, got)
			}
		}
	}
}

// What a gym may have is offered once each, in the words that pages and sheets have for
// it; bands have a list of their own.
func TestBlankOffersKit(t *testing.T) {
	for lang, want := range map[string]string{
		"en": "what there is: parallettes, wall, bathroom scale, blocks, box, dumbbells, low bar, pull-up bar, rings, table, towel\n",
		"de": "what there is: Parallettes, Wand, Personenwaage, Blöcke, Kasten, Kurzhanteln, niedrige Stange, Klimmzugstange, Ringe, Tisch, Handtuch\n",
	} {
		folder := sound(t)
		folder["content/studio.yaml"].Data = append(folder["content/studio.yaml"].Data, "language: "+lang+"\n"...)
		studio, _ := Read(folder, os.DirFS("../.."), nil)
		if blank := string(Blank("Maren", &studio.Library, program.NewDate(2027, 1, 4))); !strings.Contains(blank, want) {
			t.Errorf("%q is not in the blank in %s", want, lang)
		}
	}
}

// A blank that somebody began asks for what is missing, one problem each, in
// words that say to fill it in.
func TestBlankAsksToBeFilledIn(t *testing.T) {
	studio, _ := Read(sound(t), library(t), nil)
	for _, name := range blankNames {
		blank := string(Blank(name, &studio.Library, program.NewDate(2027, 1, 4)))
		blank = strings.Replace(blank, "  minutes: ", "  minutes: 60 ", 1)
		_, problems := Read(with(sound(t), "content/clients/maren/assessment.yaml", blank), library(t), nil)
		var asked []string
		for _, p := range problems {
			key, _, _ := strings.Cut(strings.TrimSpace(p.Text), ":")
			asked = append(asked, key)
			if !strings.Contains(p.Message, "has no value yet") || !strings.HasPrefix(p.Advice, "Fill it in") {
				t.Errorf("%v", p)
			}
		}
		want := "born mass height experience days wrists elbows shoulders skill step hold by"
		if got := strings.Join(asked, " "); got != want {
			t.Errorf("%s: asked for %s\nwant %s", name, got, want)
		}
	}
}

// Filled in, and with every commented line in force, the blank is a sound
// assessment: what its comments show can be written.
func TestBlankFilledIn(t *testing.T) {
	studio, _ := Read(sound(t), library(t), nil)
	var lines []string
	for line := range strings.Lines(string(Blank("Maren", &studio.Library, program.NewDate(2027, 1, 4)))) {
		trimmed := strings.TrimLeft(line, " ")
		indent := line[:len(line)-len(trimmed)]
		if after, ok := strings.CutPrefix(trimmed, "# "); ok && commentedField.MatchString(after) {
			line = indent + after
		}
		key, _, _ := strings.Cut(strings.TrimSpace(line), ":")
		if value, ok := filledIn[key]; ok {
			line = indent + key + ": " + value + "\n"
		}
		lines = append(lines, line)
	}
	text := strings.Join(lines, "")
	studio, problems := Read(with(sound(t), "content/clients/maren/assessment.yaml", text), library(t), nil)
	if len(problems) > 0 || len(studio.Clients) != 1 {
		t.Fatalf("%s\n%s", reported(problems), text)
	}
	c := studio.Clients[0]
	if c.Athlete.Mass != 58 || len(c.Bands) != 1 || len(c.Tests) != 4 || c.Training.Best == nil || c.Goal.Step != "straddle" {
		t.Errorf("%+v", c)
	}
}

// filledIn is what a coach writes into the blank.
var filledIn = map[string]string{
	"born": "1991-04-02", "mass": "58 kg", "height": "166 cm", "experience": "8 months", "days": "[mon]", "minutes": "60",
	"wrists": "fine", "elbows": "fine", "shoulders": "fine", "skill": "planche", "step": "straddle", "hold": "10 s", "by": "2027-11-30",
}

// commentedField is a field that the blank shows as a comment.
var commentedField = regexp.MustCompile(`^(arm_span|straddle|balance_point|since|best|other|away|start|weeks|bands|rig|tests):|^  - \{`)
